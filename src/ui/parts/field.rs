//! Fields of a form: a line of text or a number with its label, hint and error, and a row to tick.

use crate::ui::node::{Element, Held, Node, Tell, Text, Words, el, typed_in};
use crate::words::local::from_field;

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
pub struct Field {
    /// What is asked.
    pub label: Text,
    /// What is typed so far.
    pub value: String,
    /// Called at each change.
    pub on_typed: Tell<String>,
    /// What kind of thing it is.
    pub kind: FieldKind,
    /// The unit, after the value.
    pub unit: Option<Text>,
    /// A line of help, always there.
    pub hint: Option<Text>,
    /// The error in words, if any.
    pub error: Option<String>,
    /// Its test id, unique on the page: the label is tied to it.
    pub testid: Text,
}

impl Field {
    /// A line of words held in `words`, followed, with no more to say about it.
    #[must_use]
    pub fn of(label: impl Words, words: Held<String>, testid: impl Words) -> Self {
        Self {
            label: label.text(),
            value: words.get(),
            on_typed: Tell::new(move |typed| words.set(typed)),
            kind: FieldKind::Text,
            unit: None,
            hint: None,
            error: None,
            testid: testid.text(),
        }
    }

    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let Self {
            label,
            value,
            on_typed,
            kind,
            unit,
            hint,
            error,
            testid,
        } = self;
        let id = format!("field-{testid}");
        let about = format!("{id}-about");
        let wrong = error.is_some();
        let measure = unit.as_deref().and_then(typed_in);
        let on_typed = match measure {
            Some(measure) => Tell::new(move |typed: String| on_typed.run(from_field(&typed, measure))),
            None => on_typed,
        };
        let input = el("input")
            .attr("id", id.clone())
            .attr("type", kind.html_type())
            .attr_if("inputmode", kind.keyboard())
            .attr("autocomplete", "off")
            .attr_if("aria-invalid", wrong.then_some("true"))
            .attr("aria-describedby", about.clone())
            .testid(testid)
            .value_in(value, measure)
            .on_typed(on_typed);
        let unit = unit.map(|unit| el("span").class("field-unit").text(unit));
        let hint = hint.map(|hint| el("p").class("hint").text(hint));
        el("div")
            .class("field")
            .child(el("label").attr("for", id).text(label))
            .child(
                el("div")
                    .class("field-box")
                    .class_if("wrong", wrong)
                    .child(input)
                    .child(unit),
            )
            .child(el("div").attr("id", about).child(hint).child(error_line(error)))
    }
}

/// The error of a field, said aloud when it appears.
#[must_use]
pub fn error_line(error: Option<String>) -> Node {
    error
        .map(|words| el("p").class("field-error").attr("role", "alert").text(words))
        .into()
}

/// A row to tick. Starts as the caller says; never ticked of itself.
pub fn check_row(label: impl Words, checked: bool, testid: impl Words, on_change: Tell<bool>) -> Element {
    let input = el("input")
        .attr("type", "checkbox")
        .testid(testid)
        .ticked(checked)
        .on_ticked(on_change);
    el("label").class("check").child(input).child(el("span").text(label))
}
