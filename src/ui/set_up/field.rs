//! One field of a form, drawn as it is answered.

use crate::domain::facts::setup::OutBy;
use crate::domain::fat::Fat;
use crate::domain::ids::PersonId;
use crate::domain::setting_up::{self, Answers, Field as Asked, MYSELF, NO, YES, limit_said};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Element, Node, Tell, el};
use crate::ui::parts::{Choice, Field, FieldKind, check_row, error_line};
use crate::words::forms::{self, Control};
use crate::words::{Lang, oil, setup};

/// One field, as it stands now.
pub(super) struct FormField<'a> {
    /// Which.
    pub field: Asked,
    /// The form.
    pub answers: &'a Answers,
    /// The person the form is about, who cannot sign themselves off.
    pub id: u128,
    /// What is wrong with it.
    pub error: Option<String>,
    /// Called with the new answer.
    pub on_answer: Tell<String>,
}

impl FormField<'_> {
    /// Draws it. Its test id is its key with hyphens.
    pub fn draw(self, bench: Bench) -> Element {
        let Self { field, answers, .. } = self;
        let lang = bench.lang;
        let testid = field.key().replace('_', "-");
        let hint = forms::hint(field, lang);
        let hint_under = |asked: Node| nodes![asked, hint.map(|words| el("p").class("hint").text(words))];
        let note = note(field, answers, lang)
            .map(|words| el("p").class("form-note").testid(format!("{testid}-note")).text(words));
        let place = el("div")
            .class("form-field")
            .attr("data-field", testid.clone())
            .key(field.key());
        let asked = match forms::control(field, answers.get(Asked::AcidUnit)) {
            Control::Words => self.line(FieldKind::Text, "", testid, lang),
            Control::Number(unit) => self.line(FieldKind::Decimal, unit, testid, lang),
            Control::Time => self.line(FieldKind::Time, "", testid, lang),
            Control::Day => self.line(FieldKind::Date, "", testid, lang),
            Control::Listed => hint_under(self.listed(testid, bench).into()),
            Control::One => hint_under(self.one(testid, bench).into()),
            Control::Many => hint_under(self.many(testid, bench).into()),
            Control::Tick => hint_under(self.tick(testid, lang)),
        };
        place.child(asked).child(note)
    }

    /// Typed on one line.
    fn line(self, kind: FieldKind, unit: &'static str, testid: String, lang: Lang) -> Node {
        let line = Field {
            label: forms::label(self.field, lang).into(),
            value: self.answers.get(self.field).to_owned(),
            on_typed: self.on_answer,
            kind,
            unit: Some(unit.into()).filter(|_| !unit.is_empty()),
            hint: forms::hint(self.field, lang).map(Into::into),
            error: self.error,
            testid: testid.into(),
        };
        line.draw().into()
    }

    fn tick(self, testid: String, lang: Lang) -> Node {
        let on_answer = self.on_answer;
        let ticked = Tell::new(move |on| on_answer.run((if on { YES } else { NO }).to_owned()));
        let label = forms::label(self.field, lang);
        nodes![
            check_row(label, self.answers.yes(self.field), testid, ticked),
            error_line(self.error),
        ]
    }

    /// Keys and words.
    fn options(&self, bench: Bench) -> Vec<(String, String)> {
        match self.field {
            Asked::SignedBy => people(PersonId(self.id), bench),
            _ => forms::options(self.field, self.answers.get(Asked::PanHeat), bench.lang),
        }
    }

    /// One among a few.
    fn one(self, testid: String, bench: Bench) -> Element {
        let choice = Choice {
            legend: forms::label(self.field, bench.lang).into(),
            options: self.options(bench),
            chosen: Some(self.answers.get(self.field).to_owned()),
            on_choose: self.on_answer,
            error: self.error,
            testid: testid.into(),
        };
        choice.draw()
    }

    /// One of a long list.
    fn listed(self, testid: String, bench: Bench) -> Element {
        let id = format!("field-{testid}");
        let value = self.answers.get(self.field);
        let option = |key: String, words| {
            let chosen = key == value;
            el("option").attr("value", key).flag("selected", chosen).text(words)
        };
        let select = el("select")
            .attr("id", id.clone())
            .testid(testid)
            .on_change(self.on_answer.clone())
            .child(option(String::new(), String::new()))
            .children(self.options(bench).into_iter().map(|(key, words)| option(key, words)));
        el("div")
            .class("field")
            .child(el("label").attr("for", id).text(forms::label(self.field, bench.lang)))
            .child(
                el("div")
                    .class("field-box")
                    .class_if("wrong", self.error.is_some())
                    .child(select),
            )
            .child(error_line(self.error))
    }

    /// Any among a few. Each option's test id is `testid-key`; the answer is the set as it is then.
    fn many(self, testid: String, bench: Bench) -> Element {
        let buttons = self.options(bench).into_iter().map(|(key, words)| {
            let pressed = self.answers.has(self.field, &key);
            let toggled = self.answers.toggled(self.field, &key);
            let on_answer = self.on_answer.clone();
            el("button")
                .attr("type", "button")
                .attr("aria-pressed", if pressed { "true" } else { "false" })
                .testid(format!("{testid}-{key}"))
                .on("click", move |_| on_answer.run(toggled.clone()))
                .text(words)
        });
        let row = el("div")
            .class("choice-row any-of")
            .class_if(
                "days-row",
                matches!(self.field, Asked::TradingDays | Asked::RhythmWeekdays),
            )
            .children(buttons);
        el("fieldset")
            .class("choice field")
            .child(el("legend").text(forms::label(self.field, bench.lang)))
            .child(row)
            .child(error_line(self.error))
            .testid(testid)
    }
}

/// What the answer given means, where it needs saying.
fn note(field: Asked, answers: &Answers, lang: Lang) -> Option<String> {
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
fn people(but: PersonId, bench: Bench) -> Vec<(String, String)> {
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
