//! The form that puts an entry right, or says that it did not happen.

use super::detail::worded;
use crate::browser::clock;
use crate::domain::entry::{Draft, Entry};
use crate::domain::facts::Fact;
use crate::domain::ids::EntryId;
use crate::domain::quick::{self, Amendment, Quick, QuickRefusal, Retype, moment, retype, retyped};
use crate::domain::time::Day;
use crate::kitchen::{Order, said};
use crate::nodes;
use crate::ui::asked_once::Asked;
use crate::ui::bench::Bench;
use crate::ui::node::{Act, Element, Held, Node, Tell, el, follow, live};
use crate::ui::parts::{Field, FieldKind, Rank, button};
use crate::words::log::{Office, office};
use crate::words::screens::add::{self, add, gauge_unit};
use crate::words::screens::log::{self, log};
use crate::words::setup::unit_name;
use crate::words::{format, quick_refusals};

/// What is typed to put an entry right.
#[derive(Clone, Copy)]
struct Righting {
    bench: Bench,
    id: EntryId,
    open: Held<Option<EntryId>>,
    typed: Held<String>,
    date: Held<String>,
    time: Held<String>,
    why: Held<String>,
    refused: Held<Option<String>>,
    /// What is asked once of a number that is unusual.
    doubt: Held<Option<Asked>>,
}

/// Why nothing was sent.
enum Unsent {
    Refused(String),
    Asked(Asked),
}

/// The form that puts an entry right, or says that it did not happen. Either needs a reason.
pub(super) fn right(bench: Bench, id: EntryId, open: Held<Option<EntryId>>) -> Option<Element> {
    let entry = bench.look(|kitchen, _| kitchen.ledger().line(id).and_then(|line| line.standing()).cloned())?;
    let anew = retype(&entry.fact);
    let typed_now = match &anew {
        Some(Retype::Amount(_, text) | Retype::Reading(_, text) | Retype::Hours(text) | Retype::Words(text)) => {
            text.clone()
        }
        None => String::new(),
    };
    let form = Righting {
        bench,
        id,
        open,
        typed: Held::new(typed_now),
        date: Held::new(Day::of(entry.at, entry.off_min, 0).date().to_string()),
        time: Held::new(format::time_of_day(entry.at, entry.off_min)),
        why: Held::new(String::new()),
        refused: Held::new(None),
        doubt: Held::new(None),
    };
    // What was asked about is not what stands there any more.
    follow(move || {
        form.typed.track();
        form.doubt.set(None);
    });
    let when_was = (form.date.get_untracked(), form.time.get_untracked());
    let fields = live(move || form.fields(anew.as_ref()));
    let save = Tell::new(move |sure| form.send(form.amended(&entry, &when_was, sure)));
    let ways = live(move || {
        let Some(asked) = form.doubt.get() else {
            return form.ways(save.clone()).into();
        };
        let save = save.clone();
        let no = Act::new(move || form.doubt.set(None));
        nodes![asked.draw(Act::new(move || save.run(true)), no)]
    });
    let typing = el("div").class("typing").testid("log-righting");
    Some(typing.child(fields).child(ways))
}

impl Righting {
    /// Save, it did not happen, leave it.
    fn ways(self, save: Tell<bool>) -> Element {
        let lang = self.bench.lang;
        el("div")
            .class("log-ways")
            .child(button(
                Rank::First,
                log(log::Log::SaveRight, lang),
                "log-save-right",
                move || save.run(false),
            ))
            .child(button(
                Rank::Second,
                office(Office::Void, lang),
                "log-void",
                move || self.void(),
            ))
            .child(button(
                Rank::Plain,
                log(log::Log::Close, lang),
                "log-close",
                move || self.open.set(None),
            ))
    }

    fn fields(self, anew: Option<&Retype>) -> Node {
        let lang = self.bench.lang;
        let typed = anew.map(|anew| {
            let (label, unit, kind) = match anew {
                Retype::Amount(unit, _) => (log::Log::RightNumber, unit_name(*unit, lang), FieldKind::Decimal),
                Retype::Reading(what, _) => (log::Log::RightNumber, gauge_unit(*what), FieldKind::Decimal),
                Retype::Hours(_) => (log::Log::RightNumber, "h", FieldKind::Decimal),
                Retype::Words(_) => (log::Log::RightWords, "", FieldKind::Text),
            };
            let field = Field {
                kind,
                unit: Some(unit.into()),
                ..Field::of(log(label, lang), self.typed, "log-number")
            };
            field.draw()
        });
        let date = Field {
            kind: FieldKind::Date,
            ..Field::of(add(add::Add::Date, lang), self.date, "log-date")
        };
        let time = Field {
            kind: FieldKind::Time,
            ..Field::of(add(add::Add::Time, lang), self.time, "log-time")
        };
        let why = Field {
            error: self.refused.get(),
            ..Field::of(log(log::Log::WhyPutRight, lang), self.why, "log-why")
        };
        let when = el("div").class("when").child(date.draw()).child(time.draw());
        nodes![typed, when, why.draw()]
    }

    /// Why it is put right; without a reason nothing is.
    fn reason(self) -> Result<String, String> {
        let why = self.why.get_untracked();
        if why.trim().is_empty() {
            return Err(quick_refusals::gap(quick::Gap::Words, self.bench.lang).to_owned());
        }
        Ok(why)
    }

    fn void(self) {
        self.send(self.voided().map_err(Unsent::Refused));
    }

    fn amended(self, entry: &Entry, (date_was, time_was): &(String, String), sure: bool) -> Result<Draft, Unsent> {
        let lang = self.bench.lang;
        let gap = |gap| Unsent::Refused(quick_refusals::gap(gap, lang).to_owned());
        let why = self.reason().map_err(Unsent::Refused)?;
        let fact = retyped(&entry.fact, &self.typed.get_untracked()).map_err(gap)?;
        let (day, minute) = (self.date.get_untracked(), self.time.get_untracked());
        let at = if (&day, &minute) == (date_was, time_was) {
            None
        } else {
            let at = moment(&day, &minute, clock::offset).ok_or_else(|| gap(quick::Gap::When))?;
            Some((at, clock::offset(at)))
        };
        let amendment = Amendment { why, at, fact };
        let who = self.bench.me();
        self.bench.look(|kitchen, now| {
            let reading = match &amendment.fact {
                Some(Fact::Reading(reading)) => Some(Quick::Reading(reading.clone())),
                _ => None,
            };
            said::amend(kitchen.ledger(), self.id, amendment, sure, who, *now).map_err(|why| match (why, reading) {
                (QuickRefusal::Doubt(doubt), Some(reading)) => Unsent::Asked(Asked::of(doubt, &reading, lang)),
                (why, _) => Unsent::Refused(worded(&why, kitchen, now.off_min, lang)),
            })
        })
    }

    fn voided(self) -> Result<Draft, String> {
        let (why, who) = (self.reason()?, self.bench.me());
        self.bench.look(|kitchen, now| {
            quick::void(kitchen.ledger(), self.id, why, who)
                .map_err(|why| worded(&why, kitchen, now.off_min, self.bench.lang))
        })
    }

    fn send(self, draft: Result<Draft, Unsent>) {
        match draft {
            Ok(draft) => self
                .bench
                .send_then(Order::Write(vec![draft]), move |_| self.open.set(None)),
            Err(Unsent::Refused(words)) => self.refused.set(Some(words)),
            Err(Unsent::Asked(asked)) => self.doubt.set(Some(asked)),
        }
    }
}
