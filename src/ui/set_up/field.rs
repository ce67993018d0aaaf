//! One field of a form, drawn as it is answered.

use leptos::prelude::*;

use crate::domain::facts::setup::OutBy;
use crate::domain::fat::Fat;
use crate::domain::ids::PersonId;
use crate::domain::setting_up::{self, Answers, Field as Asked, MYSELF, NO, YES, limit_said};
use crate::ui::bench::use_bench;
use crate::ui::old_parts::{CheckRow, Choice, Field, FieldKind};
use crate::words::forms::{self, Control};
use crate::words::{oil, setup};

/// The test id of a field: its key with hyphens.
pub(super) fn testid(field: Asked) -> String {
    field.key().replace('_', "-")
}

/// One field.
#[component]
pub(super) fn FormField(
    /// Which.
    field: Asked,
    /// The form.
    answers: RwSignal<Answers>,
    /// The person the form is about, who cannot sign themselves off.
    id: u128,
    /// What is wrong with it.
    error: Signal<Option<String>>,
    /// Called with the new answer.
    on_answer: Callback<String>,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let label = forms::label(field, lang);
    let hint = forms::hint(field, lang);
    let id_of = testid(field);
    let value = Signal::derive(move || answers.with(|a| a.get(field).to_owned()));
    let control = Memo::new(move |_| answers.with(|a| forms::control(field, a.get(Asked::AcidUnit))));
    let heat = Memo::new(move |_| answers.with(|a| a.get(Asked::PanHeat).to_owned()));
    let options = move || match field {
        Asked::SignedBy => people(PersonId(id)),
        _ => forms::options(field, &heat.get(), lang),
    };
    let line = move |kind, unit: Option<&'static str>| {
        let hint = hint.unwrap_or_default();
        let unit = unit.unwrap_or_default();
        view! {
            <Field label value on_input=on_answer kind unit hint error testid=testid(field) />
        }
        .into_any()
    };
    let drawn = move || {
        match control.get() {
        Control::Words => line(FieldKind::Text, None),
        Control::Number(unit) => line(FieldKind::Decimal, Some(unit)),
        Control::Time => line(FieldKind::Time, None),
        Control::Day => line(FieldKind::Date, None),
        Control::Listed => view! { <Listed label options=options() value on_answer error testid=testid(field)/> }.into_any(),
        Control::One => view! {
            <Choice legend=label options=options() chosen=Signal::derive(move || Some(value.get())) on_choose=on_answer error testid=testid(field)/>
        }
        .into_any(),
        Control::Many => view! { <Many label options=options() answers field on_answer error testid=testid(field)/> }.into_any(),
        Control::Tick => view! {
            <CheckRow label checked=Signal::derive(move || answers.with(|a| a.yes(field))) on_change=Callback::new(move |on| on_answer.run((if on { YES } else { NO }).to_owned())) testid=testid(field)/>
            {move || error.get().map(|words| view! { <p class="field-error" role="alert">{words}</p> })}
        }
        .into_any(),
    }
    };
    let typed = move || {
        matches!(
            control.get(),
            Control::Words | Control::Number(_) | Control::Time | Control::Day
        )
    };
    let under = move || {
        (!typed())
            .then_some(hint)
            .flatten()
            .map(|words| view! { <p class="hint">{words}</p> })
    };
    let note = move || {
        answers.with(|a| note(field, a, lang)).map(|words| {
            view! { <p class="form-note" data-testid=format!("{}-note", testid(field))>{words}</p> }
        })
    };
    view! {
        <div class="form-field" data-field=id_of>
            {drawn}
            {under}
            {note}
        </div>
    }
}

/// What the answer given means, where it needs saying.
fn note(field: Asked, answers: &Answers, lang: crate::words::Lang) -> Option<String> {
    match field {
        Asked::LimitPolar => Some(forms::limit_text(limit_said(answers), lang)),
        Asked::PanFat => Fat::from_key(answers.get(field))
            .and_then(|fat| oil::fat_note(fat, lang))
            .map(str::to_owned),
        Asked::OutBy => OutBy::from_key(answers.get(field)).map(|out| setup::out_by_text(out, lang).to_owned()),
        Asked::Claims => {
            let kinds = answers.set(field).filter_map(crate::domain::claim::ClaimKind::from_key);
            let asks: Vec<&str> = kinds.map(|kind| setup::claim_asks(kind, lang)).collect();
            (!asks.is_empty()).then(|| asks.join(" "))
        }
        _ => None,
    }
}

/// The people who may sign somebody off.
fn people(but: PersonId) -> Vec<(String, String)> {
    let bench = use_bench();
    bench.look(|kitchen, _| {
        let book = &kitchen.ledger().book;
        let mut people: Vec<(String, String)> = setting_up::signers(book, but)
            .map(|p| (format!("{:032x}", p.person.0), p.initials.clone()))
            .collect();
        if book.person(but).is_some_and(|p| p.by == Some(but)) {
            people.push((MYSELF.to_owned(), forms::myself(bench.lang).to_owned()));
        }
        people
    })
}

/// One of a long list.
#[component]
fn Listed(
    /// What is asked.
    label: &'static str,
    /// Keys and words.
    options: Vec<(String, String)>,
    /// The key chosen.
    value: Signal<String>,
    /// Called with the key chosen.
    on_answer: Callback<String>,
    /// What is wrong.
    error: Signal<Option<String>>,
    /// Its test id.
    testid: String,
) -> impl IntoView {
    let id = format!("field-{testid}");
    let options = options
        .into_iter()
        .map(|(key, words)| {
            let this = key.clone();
            view! { <option value=key selected=move || value.get() == this>{words}</option> }
        })
        .collect_view();
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <div class="field-box" class:wrong=move || error.with(Option::is_some)>
                <select id=id data-testid=testid on:change=move |event| on_answer.run(event_target_value(&event))>
                    <option value="" selected=move || value.with(String::is_empty)></option>
                    {options}
                </select>
            </div>
            {move || error.get().map(|words| view! { <p class="field-error" role="alert">{words}</p> })}
        </div>
    }
}

/// Any among a few. Each option's test id is `testid-key`.
#[component]
fn Many(
    /// What is asked.
    label: &'static str,
    /// Keys and words.
    options: Vec<(String, String)>,
    /// The form.
    answers: RwSignal<Answers>,
    /// The field.
    field: Asked,
    /// Called with the set as it is then.
    on_answer: Callback<String>,
    /// What is wrong.
    error: Signal<Option<String>>,
    /// Its test id.
    testid: String,
) -> impl IntoView {
    let buttons = options
        .into_iter()
        .map(|(key, words)| {
            let option_testid = format!("{testid}-{key}");
            let this = key.clone();
            let pressed = move || {
                if answers.with(|a| a.has(field, &this)) {
                    "true"
                } else {
                    "false"
                }
            };
            view! {
                <button
                    type="button"
                    aria-pressed=pressed
                    data-testid=option_testid
                    on:click=move |_| on_answer.run(answers.with_untracked(|a| a.toggled(field, &key)))
                >
                    {words}
                </button>
            }
        })
        .collect_view();
    view! {
        <fieldset class="choice field" data-testid=testid.clone()>
            <legend>{label}</legend>
            <div class="choice-row" class:days-row=field == Asked::TradingDays>{buttons}</div>
            {move || error.get().map(|words| view! { <p class="field-error" role="alert">{words}</p> })}
        </fieldset>
    }
}
