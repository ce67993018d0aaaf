//! Restoring a lost promise, or beginning one for an evening: what the log knows of it, what is to be seen, who says so.

use crate::browser::clock;
use crate::domain::claim::ClaimKind;
use crate::domain::facts::oil::{ClaimRestored, Looked};
use crate::domain::ids::PanId;
use crate::domain::quick::{self, Need, Quick, Restoring, Said, moment, restoring};
use crate::domain::time::{Day, Millis};
use crate::domain::units::Minutes;
use crate::kitchen::Order;
use crate::kitchen::nights::CLOSING_MIN;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Held, Node, Tell, el, live, worked_out};
use crate::ui::parts::{Choice, Field, FieldKind, Rank, button, card, check_row};
use crate::words::kept_for::{self as words, Line, line};
use crate::words::{format, quick_refusals, setup};

/// What is seen and said so far.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Told {
    what: Option<ClaimKind>,
    /// Clean and dry, own utensils, only such food: as ticked.
    seen: [bool; 3],
    refused: Option<String>,
}

/// The desk it lies on. Copies are handles on the same one.
#[derive(Clone, Copy)]
pub struct Restoration {
    bench: Bench,
    pan: PanId,
    told: Held<Told>,
    basis: Held<String>,
    until: Held<String>,
}

impl Restoration {
    /// An empty desk.
    pub fn begin(bench: Bench, pan: PanId) -> Self {
        let closing = bench.look(|kitchen, _| kitchen.ledger().book.kitchen.as_ref().and_then(|k| k.closing_min));
        let closing = i64::from(closing.map_or(CLOSING_MIN, Minutes::get));
        Self {
            bench,
            pan,
            told: Held::new(Told::default()),
            basis: Held::new(String::new()),
            until: Held::new(format::minute_of_day(closing)),
        }
    }

    /// Turns to a promise.
    pub fn choose(self, what: ClaimKind) {
        self.told.set(Told {
            what: Some(what),
            ..Told::default()
        });
    }

    /// Which promise, where one can be begun.
    pub fn choice(self) -> Node {
        let Self { bench, pan, told, .. } = self;
        let lang = bench.lang;
        let open = worked_out(move || {
            bench.read(|kitchen, now| {
                let (ledger, day) = (kitchen.ledger(), kitchen.today(now));
                let free =
                    |what: &&ClaimKind| restoring(ledger, pan, **what, "", day).is_some_and(|now| now.lost.is_none());
                ClaimKind::ALL.iter().filter(free).copied().collect::<Vec<_>>()
            })
        });
        live(move || {
            let open = open.get();
            let options = open
                .iter()
                .map(|what| (what.key().to_owned(), setup::claim_name(*what, lang).to_owned()));
            let choice = Choice {
                legend: line(Line::Begin, lang).into(),
                options: options.collect(),
                chosen: told.with(|told| told.what.map(|what| what.key().to_owned())),
                on_choose: Tell::new(move |key: String| {
                    if let Some(what) = ClaimKind::from_key(&key) {
                        self.choose(what);
                    }
                }),
                error: None,
                testid: "begin-claim".into(),
            };
            (!open.is_empty()).then(|| {
                card("begin")
                    .child(choice.draw())
                    .child(el("p").class("soft").text(line(Line::BeginText, lang)))
            })
        })
    }

    /// What the promise turned to needs: one that is lost, or one to begin.
    pub fn form(self, lost: bool) -> Node {
        let Self {
            bench,
            pan,
            told,
            basis,
            ..
        } = self;
        let now = worked_out(move || {
            let what = told.with(|told| told.what)?;
            let basis = basis.get();
            bench.read(|kitchen, now| {
                let now = restoring(kitchen.ledger(), pan, what, &basis, kitchen.today(now))?;
                (now.lost.is_some() == lost).then_some((what, now))
            })
        });
        live(move || now.with(|now| now.as_ref().map(|(what, now)| self.needs(*what, now))))
    }

    fn needs(self, what: ClaimKind, now: &Restoring) -> Node {
        let lang = self.bench.lang;
        let evening = now.evening;
        let known = now.known.map(|(need, there)| {
            let word = line(if there { Line::There } else { Line::Missing }, lang);
            el("li")
                .testid(format!("need-{}", need.key()))
                .text(format!("{}: ", words::need(need, evening, lang)))
                .child(el("b").text(word))
        });
        let form = card("restoring")
            .child(el("h2").text(setup::claim_name(what, lang)))
            .child(el("h3").text(line(Line::LogKnows, lang)))
            .child(el("ul").class("lines").children(known));
        if now.missing().is_some() {
            return form.into();
        }
        let seen = [
            Some(words::need(Need::CleanDry, evening, lang)),
            Some(words::need(Need::OwnUtensils, evening, lang)),
            evening.then(|| words::only_such_food(lang)),
        ];
        let ticks = (0..).zip(seen).filter_map(|(n, label)| Some(self.tick(n, label?)));
        let basis = Field::of(line(Line::Basis, lang), self.basis, "restore-basis").draw();
        let until = evening.then(|| {
            let field = Field::of(line(Line::Until, lang), self.until, "restore-until");
            Field {
                kind: FieldKind::Time,
                ..field
            }
            .draw()
        });
        let label = line(if evening { Line::Begin } else { Line::Restore }, lang);
        let told = self.told;
        let save = live(move || {
            let refused = told.with(|told| told.refused.clone());
            let all = told.with(|told| told.seen[0] && told.seen[1] && (told.seen[2] || !evening));
            let save = button(Rank::First, label, "restore-save", move || self.send(what, evening));
            let refused = refused.map(|why| el("p").class("field-error").attr("role", "alert").text(why));
            nodes![refused, save.flag("disabled", !all)]
        });
        form.child(el("h3").text(line(Line::LookAtIt, lang)))
            .children(ticks)
            .child(basis)
            .child(until)
            .child(save)
            .into()
    }

    fn tick(self, n: usize, label: &'static str) -> Node {
        live(move || {
            let ticked = self.told.with(|told| told.seen.get(n).copied().unwrap_or_default());
            let change = Tell::new(move |seen| {
                self.told.update(|told| {
                    if let Some(tick) = told.seen.get_mut(n) {
                        *tick = seen;
                    }
                });
            });
            check_row(label, ticked, format!("seen-{n}"), change)
        })
    }

    /// The next time the clock shows what was typed.
    fn end(self, now: Millis) -> Option<Millis> {
        let time = self.until.get_untracked();
        let today = Day::of(now, clock::offset(now), 0);
        let on = |day: Day| moment(&day.date().to_string(), &time, clock::offset);
        on(today).filter(|at| *at > now).or_else(|| on(today.plus(1)))
    }

    fn send(self, what: ClaimKind, evening: bool) {
        let Self { bench, pan, told, .. } = self;
        let lang = bench.lang;
        let basis = self.basis.get_untracked().trim().to_owned();
        let who = bench.me();
        let drafts = bench.look(|kitchen, now| {
            let until = if evening { self.end(now.wall) } else { None };
            let ledger = kitchen.ledger();
            let said = Said {
                what: Quick::ClaimRestored(ClaimRestored {
                    pan,
                    what,
                    why: words::need(Need::CleanDry, evening, lang).to_owned(),
                    basis: Some(basis),
                    looked: Some(Looked { until }),
                }),
                who,
                at: None,
                sure: true,
            };
            quick::drafts(ledger, said, *now)
                .map_err(|why| quick_refusals::refusal(&why, &ledger.book, now.off_min, lang))
        });
        match drafts {
            Ok(drafts) => bench.send_then(Order::Write(drafts), move |entries| {
                bench.just_logged.set(entries.first().cloned());
                self.basis.set(String::new());
                told.set(Told::default());
            }),
            Err(why) => told.update(|told| told.refused = Some(why)),
        }
    }
}
