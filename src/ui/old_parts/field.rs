//! Fields of a form: a line of text or a number with its label, hint and error, and a row to tick.

use leptos::prelude::*;

/// What is typed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FieldKind {
    /// Words.
    #[default]
    Text,
    /// Whole numbers.
    Whole,
    /// Numbers with a fraction.
    Decimal,
    /// A day of the calendar.
    Date,
    /// A time of day.
    Time,
}

impl FieldKind {
    /// The input's type. Numbers stay text, since a number input drops what it cannot read.
    const fn html_type(self) -> &'static str {
        match self {
            Self::Text | Self::Whole | Self::Decimal => "text",
            Self::Date => "date",
            Self::Time => "time",
        }
    }

    /// Which keyboard a phone should bring.
    const fn keyboard(self) -> Option<&'static str> {
        match self {
            Self::Whole => Some("numeric"),
            Self::Decimal => Some("decimal"),
            Self::Text | Self::Date | Self::Time => None,
        }
    }
}

/// A line to type in. What is typed is handed over as it is; the caller reads it and says what is wrong.
#[component]
pub fn Field(
    /// What is asked.
    #[prop(into)]
    label: String,
    /// What is typed so far.
    #[prop(into)]
    value: Signal<String>,
    /// Called at each change.
    #[prop(into)]
    on_input: Callback<String>,
    /// What kind of thing it is.
    #[prop(optional)]
    kind: FieldKind,
    /// The unit, after the value.
    #[prop(optional, into)]
    unit: Option<String>,
    /// A line of help, always there.
    #[prop(optional, into)]
    hint: Option<String>,
    /// The error in words, if any.
    #[prop(optional, into)]
    error: Signal<Option<String>>,
    /// Its test id, unique on the page: the label is tied to it.
    #[prop(into)]
    testid: String,
) -> impl IntoView {
    let id = format!("field-{testid}");
    let about = format!("{id}-about");
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <div class="field-box" class:wrong=move || error.with(Option::is_some)>
                <input
                    id=id
                    type=kind.html_type()
                    inputmode=kind.keyboard()
                    autocomplete="off"
                    prop:value=value
                    aria-invalid=move || error.with(Option::is_some).then_some("true")
                    aria-describedby=about.clone()
                    data-testid=testid
                    on:input=move |event| on_input.run(event_target_value(&event))
                />
                {unit.map(|unit| view! { <span class="field-unit">{unit}</span> })}
            </div>
            <div id=about>
                {hint.map(|hint| view! { <p class="hint">{hint}</p> })}
                {move || error.get().map(|words| view! { <p class="field-error" role="alert">{words}</p> })}
            </div>
        </div>
    }
}

/// A row to tick. Starts as the caller says; never ticked of itself.
#[component]
pub fn CheckRow(
    /// What is ticked.
    #[prop(into)]
    label: String,
    /// Whether it is.
    #[prop(into)]
    checked: Signal<bool>,
    /// Called with the new state.
    #[prop(into)]
    on_change: Callback<bool>,
    /// Its test id.
    #[prop(into)]
    testid: String,
) -> impl IntoView {
    view! {
        <label class="check">
            <input
                type="checkbox"
                prop:checked=checked
                data-testid=testid
                on:change=move |event| on_change.run(event_target_checked(&event))
            />
            <span>{label}</span>
        </label>
    }
}
