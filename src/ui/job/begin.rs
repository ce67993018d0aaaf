//! Before a job that is no filter job: who does it opens it; and STOP while nothing is in hand.

use super::page::{JobPage, to_today};
use super::people::{everybody, named};
use crate::domain::day_jobs::may_light;
use crate::domain::facts::job::JobKind;
use crate::domain::guide::Refusal;
use crate::domain::ids::PersonId;
use crate::kitchen::day as day_now;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Act, Element, Held, Tell, el};
use crate::ui::parts::{Rank, button};
use crate::ui::screen::{self, Screen};
use crate::words::run::job_name;
use crate::words::screens::day::{self, DaySay};
use crate::words::screens::job::{self, JobSay};

/// The page that opens a job: a press on a name goes on, so none is drawn as pressed already.
#[must_use]
pub fn begin_day(bench: Bench, what: JobKind, on_named: Tell<PersonId>) -> Element {
    let asked = day::say(DaySay::WhoDoesIt, bench.lang);
    begin_by(bench, what, asked, everybody(bench, None, on_named))
}

/// Who has heat in hand: alone where they may, else a starter with somebody beside, who is asked for next.
#[derive(Clone, Copy)]
pub struct AtTheHeat {
    bench: Bench,
    what: JobKind,
    /// A starter who was named and waits for somebody to stand beside.
    starter: Held<Option<PersonId>>,
}

impl AtTheHeat {
    /// Nobody named yet.
    #[must_use]
    pub fn new(bench: Bench, what: JobKind) -> Self {
        let starter = Held::new(None);
        Self { bench, what, starter }
    }

    /// The page that names them.
    #[must_use]
    pub fn draw(self, on_named: Tell<(PersonId, Option<PersonId>)>) -> Element {
        let Self { bench, what, starter } = self;
        let Some(waits) = starter.get() else {
            let named = Tell::new(move |who| {
                if self.needs_somebody(who) {
                    starter.set(Some(who));
                } else {
                    on_named.run((who, None));
                }
            });
            return begin_day(bench, what, named);
        };
        let fit = bench.look(|kitchen, now| day_now::may_stand_beside(&kitchen.scene(now), waits));
        let beside = Tell::new(move |beside| {
            starter.set(None);
            on_named.run((waits, Some(beside)));
        });
        let asked = job::say(JobSay::WhoBeside, bench.lang);
        begin_by(bench, what, asked, named(fit, None, beside))
    }

    fn needs_somebody(self, who: PersonId) -> bool {
        self.bench.look(|kitchen, now| {
            let scene = kitchen.scene(now);
            let alone = may_light(&scene, who, None);
            matches!(alone, Err(Refusal::NotSignedOff { .. })) && !day_now::may_stand_beside(&scene, who).is_empty()
        })
    }
}

fn begin_by(bench: Bench, what: JobKind, asked: &'static str, names: Element) -> Element {
    let lang = bench.lang;
    let holds = nodes![
        el("p").class("job-text").text(day::begin_text(what, lang)),
        el("h2").text(asked),
        names,
    ];
    JobPage::new("begin", job_name(what, lang), to_today(lang), holds).draw(bench)
}

/// STOP while no heat is in hand: nothing is to be made safe, and there are ways out.
#[must_use]
pub fn paused_day(bench: Bench, back: Act) -> Element {
    let lang = bench.lang;
    let ways = nodes![
        button(Rank::First, job::say(JobSay::Back, lang), "back", back),
        button(Rank::Second, job::say(JobSay::LeaveOpen, lang), "leave-open", || {
            screen::go(Screen::Today)
        }),
    ];
    let holds = el("p").class("job-text").text(day::say(DaySay::PausedText, lang));
    JobPage::new("paused", job::say(JobSay::Paused, lang), ways, holds).draw(bench)
}
