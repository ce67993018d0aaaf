//! Everything the screens show, asked of a kitchen as they ask it; each gives back how much it found.

use panward::domain::guide::Scene;
use panward::domain::ids::PanId;
use panward::domain::quick::{Form, Kind};
use panward::domain::time::{Day, Now};
use panward::kitchen::filter::{PutOff, choices, shade, stage};
use panward::kitchen::glance::{Taken, taken};
use panward::kitchen::{Kitchen, alarm, day, log, oil, today};

use crate::held::Held;

/// Lines the log shows at first.
const PAGE: usize = 60;

/// The name of a view, and how much there is to see.
pub type View = (&'static str, fn(&Look) -> usize);

/// A kitchen being looked at.
pub struct Look<'a> {
    kitchen: &'a Kitchen<Held>,
    now: &'a Now,
    today: Day,
    scene: Scene,
    pans: Vec<PanId>,
}

impl<'a> Look<'a> {
    /// At this kitchen.
    #[must_use]
    pub fn at(kitchen: &'a Kitchen<Held>, now: &'a Now) -> Self {
        Self {
            kitchen,
            now,
            today: kitchen.today(now),
            scene: kitchen.scene(now),
            pans: kitchen.ledger().book.pans.keys().copied().collect(),
        }
    }

    fn of_pans(&self, of: impl Fn(PanId) -> usize) -> usize {
        self.pans.iter().map(|pan| of(*pan)).sum()
    }
}

/// All of them.
pub const VIEWS: &[View] = &[
    ("today, and its glance", |look| {
        let shown = today::of(look.kitchen.ledger(), look.today);
        let of = Taken {
            build: String::new(),
            dev: panward::domain::ids::Dev(0),
            entries: look.kitchen.entries_held(),
        };
        let glance = taken(look.kitchen, &shown, &of, look.now).map_or(0, |text| text.len());
        shown.pans.len() + glance
    }),
    ("the oil of each pan", |look| {
        let ledger = look.kitchen.ledger();
        look.of_pans(|pan| {
            let shown = today::of_pan(ledger, pan, look.today);
            shown.map_or(0, |(_, life)| (*life).as_ref().map_or(0, |life| life.because.len()))
        })
    }),
    ("the line of each pan", |look| {
        let ledger = look.kitchen.ledger();
        look.of_pans(|pan| {
            oil::line(ledger, pan, look.today)
                .as_ref()
                .as_ref()
                .map_or(0, |line| line.past.len())
        })
    }),
    ("the fills, filterings and rows of days", |look| {
        let ledger = look.kitchen.ledger();
        look.of_pans(|pan| {
            let streak = usize::try_from(ledger.filter_streak(pan, look.today)).unwrap_or(0);
            ledger.fills(pan).len() + streak + usize::from(ledger.last_filtered(pan).is_some())
        })
    }),
    ("the log of all pans", |look| {
        log::days(look.kitchen.ledger(), None, PAGE).0.len()
    }),
    ("the log of each pan", |look| {
        let ledger = look.kitchen.ledger();
        look.of_pans(|pan| log::days(ledger, Some(pan), PAGE).0.len())
    }),
    ("nights without a word, pans due", |look| {
        let ledger = look.kitchen.ledger();
        ledger.unanswered_nights(look.today).len() + ledger.due(look.today).len()
    }),
    ("claims and what was met", |look| {
        let ledger = look.kitchen.ledger();
        let met = ledger.book.machines.keys().map(|id| ledger.machine_met(*id).len());
        let pans = look.of_pans(|pan| {
            ledger.claims_standing(pan, look.today).len()
                + ledger.claims_lost(pan, look.today).len()
                + ledger.pan_exposures(pan).iter().count()
        });
        pans + met.sum::<usize>()
    }),
    ("the filter job", |look| {
        let guide = look.kitchen.guide();
        let stands = stage(guide, &look.scene, PutOff::default(), look.now);
        let shades = look.of_pans(|pan| shade(look.kitchen, pan, look.now).into());
        choices(guide, &look.scene, look.now).len() + shades + std::mem::size_of_val(&stands)
    }),
    ("light-up, lock-up and alarms", |look| {
        let jobs = look.kitchen.day_jobs();
        let lock = day::lock_now(jobs, &look.scene, day::Scraps::default(), look.now);
        let sounds = [
            alarm::of_filter(look.kitchen.guide(), look.now),
            alarm::of_day(jobs.state(), look.now),
        ];
        let rows = day::light_rows(jobs, &look.scene, look.now).len();
        rows + sounds.iter().flatten().count() + std::mem::size_of_val(&lock)
    }),
    ("the forms of quick entries", |look| {
        let ledger = look.kitchen.ledger();
        look.of_pans(|pan| {
            let kinds = Kind::offered(ledger, pan, look.today).into_iter();
            kinds
                .map(|kind| Form::open(ledger, pan, kind, look.today).pairs().len())
                .sum()
        })
    }),
    ("what stands on every screen, and the office", |look| {
        let ledger = look.kitchen.ledger();
        ledger.empties().len() + ledger.newer() + usize::from(look.kitchen.job_open())
    }),
];
