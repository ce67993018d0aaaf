//! Small invented kitchens for light-up and lock-up, and the clock in hand.

use panward::domain::claim::Exposures;
use panward::domain::day_jobs::DayJobs;
use panward::domain::entry::{Draft, Entry};
use panward::domain::facts::run::{Contents, Place};
use panward::domain::facts::setup::{HeatKind, OffSign, Pan, Person, Route};
use panward::domain::fat::Fat;
use panward::domain::guide::Scene;
use panward::domain::guide::scene::PanNow;
use panward::domain::ids::{Dev, EntryId, JobId, PanId, PersonId};
use panward::domain::procedure::{DayTables, Hold, Step};
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::domain::units::Volume;

pub const LIGHT: JobId = JobId(1);
pub const LOCK: JobId = JobId(2);
pub const NEXT_LIGHT: JobId = JobId(3);
pub const PAN: PanId = PanId(10);
pub const ANN: PersonId = PersonId(30);
pub const BOB: PersonId = PersonId(31);
/// Grown up, and signed off by nobody yet.
pub const STARTER: PersonId = PersonId(32);
/// Under eighteen.
pub const YOUNG: PersonId = PersonId(33);
pub const NOBODY: PersonId = PersonId(99);

pub const fn start() -> Now {
    Now {
        wall: Millis(1_700_000_000_000),
        mono: 1_000_000,
        life: PageLife(1),
        off_min: 0,
    }
}

pub const fn later(now: Now, ms: i64) -> Now {
    Now {
        wall: now.wall.plus(ms),
        mono: now.mono + ms,
        ..now
    }
}

pub const fn reloaded(now: Now) -> Now {
    Now {
        mono: 5_000,
        life: PageLife(now.life.0 + 1),
        ..now
    }
}

/// A kitchen with one pan.
pub fn scene(fat: Fat, place: Place, contents: Contents) -> Scene {
    let ml = |ml| Volume::from_ml(ml).unwrap();
    let person = |person| Person {
        person,
        initials: "AB".into(),
        adult: true,
        routes: vec![Route::Hot],
        may_supervise: true,
        by: Some(ANN),
        until: None,
    };
    let unsigned = |who, adult| Person {
        adult,
        routes: Vec::new(),
        may_supervise: false,
        by: None,
        ..person(who)
    };
    Scene {
        people: vec![
            (person(ANN), 0),
            (person(BOB), 0),
            (unsigned(STARTER, true), 0),
            (unsigned(YOUNG, false), 0),
        ],
        pans: vec![PanNow {
            pan: Pan {
                pan: PAN,
                name: "1".into(),
                full: ml(20_000),
                min: ml(14_000),
                mark: "line".into(),
                heat: HeatKind::Gas,
                off_signs: [OffSign::Knob, OffSign::Flame],
                fat,
                claims: Vec::new(),
                food: Exposures::NONE,
                rhythm: None,
                usual_days: None,
                end_sign: None,
                in_use: true,
            },
            claims: Vec::new(),
            place,
            contents,
            went: None,
            blocks: false,
        }],
        machines: Vec::new(),
        bare: Vec::new(),
        day: Day::of(start().wall, 0, 300),
        winter: false,
        second_person: true,
        troubles: Vec::new(),
    }
}

/// The tables with one hold taken out of every step.
pub fn without(hold: Hold) -> DayTables {
    DayTables::REAL.each(|step| {
        let holds: Vec<Hold> = step.holds.iter().copied().filter(|h| *h != hold).collect();
        let mutated: &'static Step = Box::leak(Box::new(Step {
            holds: Box::leak(holds.into_boxed_slice()),
            ..*step
        }));
        mutated
    })
}

/// What a store makes of a draft.
pub fn written(draft: Draft, seq: u32, now: &Now, last: Option<&Entry>) -> Entry {
    let rec = last.map_or(now.wall, |l| now.wall.max(l.rec.plus(1)));
    Entry {
        id: EntryId(u128::from(seq)),
        dev: Dev(7),
        seq,
        at: draft.at.unwrap_or(rec),
        rec,
        clk: (rec != now.wall).then_some(now.wall),
        off_min: 0,
        who: draft.who,
        fact: draft.fact,
    }
}

/// A machine that reads its log after a kill.
pub fn replayed(tables: DayTables, log: &[Entry]) -> DayJobs {
    let mut jobs = DayJobs::new(tables);
    for entry in log {
        jobs.apply(entry, None);
    }
    jobs
}
