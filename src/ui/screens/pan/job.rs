//! What the pan is for today: another pan's job in one touch, and one to confirm.

use crate::domain::claim::Exposures;
use crate::domain::ids::PanId;
use crate::domain::quick::{self, Quick, QuickRefusal, Said};
use crate::domain::time::Day;
use crate::kitchen::Order;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Held, Node, Tell, el, live};
use crate::ui::parts::{Choice, Rank, button};
use crate::ui::screen::{self, Screen};
use crate::words::{Lang, quick_refusals, rhythm, run};

/// The choice as it is being made. Copies are handles on the same one.
#[derive(Clone, Copy)]
pub struct Doing {
    bench: Bench,
    pan: PanId,
    day: Held<Day>,
    /// Whose job is about to be taken.
    chosen: Held<Option<PanId>>,
    /// Why it was refused, and whether a promise stands against it.
    refused: Held<Option<(String, bool)>>,
}

/// A pan whose job can be taken.
struct Offered {
    pan: PanId,
    name: String,
    food: Exposures,
}

impl Doing {
    /// Nothing is chosen yet.
    pub fn begin(bench: Bench, pan: PanId, day: Held<Day>) -> Self {
        Self {
            bench,
            pan,
            day,
            chosen: Held::new(None),
            refused: Held::new(None),
        }
    }

    /// Whose job it does today, and those it could do; nothing where there is no other pan.
    pub fn section(self, lang: Lang) -> Node {
        live(move || {
            let (now, offered) = self.bench.read(|kitchen, _| {
                let book = &kitchen.ledger().book;
                let others = book.pans_in_use().into_iter().filter(|other| other.pan != self.pan);
                let offered = others.map(|other| Offered {
                    pan: other.pan,
                    name: other.name.clone(),
                    food: other.food,
                });
                let now = book.pan_job(self.pan, self.day.get()).map(|job| job.of);
                (now, offered.collect::<Vec<_>>())
            });
            let own = |id: PanId| offered.iter().find(|one| one.pan == id);
            if offered.is_empty() {
                return Node::Nothing;
            }
            let words = now.and_then(own).map_or_else(
                || rhythm::say(rhythm::Say::OwnJob, lang).to_owned(),
                |of| rhythm::job_of(&run::pan_title(&of.name, lang), of.food, lang),
            );
            let title = el("h2").text(rhythm::say(rhythm::Say::JobToday, lang));
            let stands = el("p").testid("job-now").text(words);
            let section = el("section").testid("pan-job").child(title).child(stands);
            if now.is_some() {
                let back = button(
                    Rank::Second,
                    rhythm::say(rhythm::Say::OwnAgain, lang),
                    "job-own",
                    move || {
                        let own = self
                            .bench
                            .look(|kitchen, _| quick::own_job(kitchen.ledger(), self.pan, self.day.get_untracked()));
                        self.say(own);
                    },
                );
                return section.child(back).into();
            }
            let (chosen, refused) = (self.chosen.get(), self.refused.get());
            let pan = self.pan;
            let lose = refused.as_ref().is_some_and(|(_, promise)| *promise).then(|| {
                let words = rhythm::say(rhythm::Say::LoseFirst, lang);
                button(Rank::Second, words, "job-lose", move || screen::go(Screen::Add(pan)))
            });
            let choice = Choice {
                legend: rhythm::say(rhythm::Say::AnotherJob, lang).into(),
                options: offered
                    .iter()
                    .map(|one| (format!("{:032x}", one.pan.0), rhythm::offered(&one.name, lang)))
                    .collect(),
                chosen: chosen.map(|pan| format!("{:032x}", pan.0)),
                on_choose: Tell::new(move |key: String| {
                    self.refused.set(None);
                    self.chosen.set(u128::from_str_radix(&key, 16).ok().map(PanId));
                }),
                error: refused.as_ref().map(|(why, _)| why.clone()),
                testid: "job".into(),
            };
            section
                .child(choice.draw())
                .child(lose)
                .child(chosen.and_then(own).map(|of| self.confirm(of, lang)))
                .into()
        })
    }

    /// What it brings, and the two ways to do it.
    fn confirm(self, of: &Offered, lang: Lang) -> Node {
        let other = of.pan;
        let swap = button(Rank::Second, rhythm::swap(&of.name, lang), "job-swap", move || {
            self.say(
                self.bench
                    .look(|kitchen, _| quick::swap(kitchen.ledger(), self.pan, other, self.day.get_untracked())),
            );
        });
        let alone = button(Rank::Second, rhythm::alone(&of.name, lang), "job-alone", move || {
            let job = self
                .bench
                .look(|kitchen, _| quick::take_job(kitchen.ledger(), self.pan, other, self.day.get_untracked()));
            self.say(job.map(|job| Quick::PanJobs(vec![job])));
        });
        let food = rhythm::job_of(&run::pan_title(&of.name, lang), of.food, lang);
        let meets = rhythm::say(rhythm::Say::JobMeets, lang);
        let meets = (!of.food.is_empty()).then(|| el("p").class("soft").text(meets));
        nodes![el("p").text(food), meets, swap, alone]
    }

    /// Writes it, or says why not and what to do.
    fn say(self, what: Option<Quick>) {
        let (Some(what), bench) = (what, self.bench) else {
            return;
        };
        let who = bench.me();
        let said = Said {
            what,
            who,
            at: None,
            sure: false,
        };
        let drafts = bench.look(|kitchen, now| {
            let ledger = kitchen.ledger();
            quick::drafts(ledger, said, *now).map_err(|why| {
                let words = quick_refusals::refusal(&why, &ledger.book, now.off_min, bench.lang);
                (words, matches!(why, QuickRefusal::ClaimMet { .. }))
            })
        });
        match drafts {
            Ok(drafts) => bench.send_then(Order::Write(drafts), move |entries| {
                bench.just_logged.set(entries.first().cloned());
                self.chosen.set(None);
            }),
            Err(why) => self.refused.set(Some(why)),
        }
    }
}
