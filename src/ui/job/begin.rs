//! Who does a job that is no filter job: the first named opens it, another goes on with it; and STOP with nothing in
//! hand.

use super::page::{JobPage, to_today};
use super::people::{everybody, named};
use crate::domain::day_jobs::may_light;
use crate::domain::facts::job::JobKind;
use crate::domain::guide::Refusal;
use crate::domain::ids::{PanId, PersonId};
use crate::kitchen::day as day_now;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Act, Element, Held, Tell, el};
use crate::ui::parts::{Rank, button};
use crate::ui::screen::{self, Screen};
use crate::words::Lang;
use crate::words::run::{job_name, pan_title};
use crate::words::screens::day::{self, DaySay};
use crate::words::screens::job::{self, JobSay};

/// The page that opens a job, or with a way `back` names who goes on with it: a press on a name goes on, so none is drawn
/// as pressed already.
#[must_use]
pub fn begin_day(bench: Bench, what: JobKind, back: Option<Act>, on_named: Tell<PersonId>) -> Element {
    let asked = day::say(DaySay::WhoDoesIt, bench.lang);
    begin_by(bench, (what, None), asked, back, everybody(bench, None, on_named))
}

/// Who has heat in hand: alone where they may, else a starter with somebody beside, who is asked for next.
#[derive(Clone, Copy)]
pub struct AtTheHeat {
    bench: Bench,
    what: JobKind,
    /// The pan the job is about.
    pan: Option<PanId>,
    /// A starter who was named and waits for somebody to stand beside.
    starter: Held<Option<PersonId>>,
}

impl AtTheHeat {
    /// Nobody named yet.
    #[must_use]
    pub fn new(bench: Bench, what: JobKind, pan: Option<PanId>) -> Self {
        let starter = Held::new(None);
        Self {
            bench,
            what,
            pan,
            starter,
        }
    }

    /// The page that names them.
    #[must_use]
    pub fn draw(self, back: Option<Act>, on_named: Tell<(PersonId, Option<PersonId>)>) -> Element {
        let Self {
            bench,
            what,
            pan,
            starter,
        } = self;
        let Some(waits) = starter.get() else {
            let named = Tell::new(move |who| {
                if self.needs_somebody(who) {
                    starter.set(Some(who));
                } else {
                    on_named.run((who, None));
                }
            });
            let asked = day::say(DaySay::WhoDoesIt, bench.lang);
            return begin_by(bench, (what, pan), asked, back, everybody(bench, None, named));
        };
        let fit = bench.look(|kitchen, now| day_now::may_stand_beside(&kitchen.scene(now), waits));
        let beside = Tell::new(move |beside| {
            starter.set(None);
            on_named.run((waits, Some(beside)));
        });
        let asked = job::say(JobSay::WhoBeside, bench.lang);
        begin_by(bench, (what, pan), asked, back, named(fit, None, beside))
    }

    /// Nobody waits any more.
    pub fn forget(self) {
        self.starter.set(None);
    }

    fn needs_somebody(self, who: PersonId) -> bool {
        self.bench.look(|kitchen, now| {
            let scene = kitchen.scene(now);
            let alone = may_light(&scene, who, None);
            matches!(alone, Err(Refusal::NotSignedOff { .. })) && !day_now::may_stand_beside(&scene, who).is_empty()
        })
    }
}

/// `of`: the job, and the pan it is about, where it is about one: that is said before anybody answers for it.
fn begin_by(
    bench: Bench,
    of: (JobKind, Option<PanId>),
    asked: &'static str,
    back: Option<Act>,
    names: Element,
) -> Element {
    let (what, pan) = of;
    let lang = bench.lang;
    let way = match back {
        Some(back) => button(Rank::Plain, job::say(JobSay::Back, lang), "back", back),
        None => to_today(lang),
    };
    let holds = nodes![
        el("p").class("job-text").text(day::begin_text(what, lang)),
        el("h2").text(asked),
        names,
        el("p").class("soft").text(job::say(JobSay::WrongName, lang)),
    ];
    let name = pan.map(|pan| pan_title(&bench.look(|kitchen, _| day_now::pan_name(kitchen, pan)), lang));
    let page = JobPage {
        name: name.unwrap_or_default().into(),
        ..JobPage::new("begin", job_name(what, lang), way, holds)
    };
    page.draw(bench)
}

/// The quiet way to name somebody else.
#[must_use]
pub fn another_person(lang: Lang, rank: Rank, other: Act) -> Element {
    button(rank, job::say(JobSay::AnotherPerson, lang), "another-person", other)
}

/// STOP while no heat is in hand: nothing is to be made safe, and there are ways out.
#[must_use]
pub fn paused_day(bench: Bench, back: Act, other: Act) -> Element {
    let lang = bench.lang;
    let ways = nodes![
        button(Rank::First, job::say(JobSay::Back, lang), "back", back),
        another_person(lang, Rank::Second, other),
        button(Rank::Second, job::say(JobSay::LeaveOpen, lang), "leave-open", || {
            screen::go(Screen::Today)
        }),
    ];
    let holds = el("p").class("job-text").text(day::say(DaySay::PausedText, lang));
    JobPage::new("paused", job::say(JobSay::Paused, lang), ways, holds).draw(bench)
}
