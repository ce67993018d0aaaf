//! A small invented kitchen of two pans, one machine and two fats, with the ledger that keeps what is in them.

use std::rc::Rc;

use panward::domain::claim::{ClaimKind, Exposures};
use panward::domain::entry::{Draft, Entry};
use panward::domain::facts::Fact;
use panward::domain::facts::oil::{Age, Fill};
use panward::domain::facts::setup::{Claim, FilterKind, HeatKind, Held, Machine, OffSign, OutBy, Pan, Person, Route};
use panward::domain::fat::Fat;
use panward::domain::guide::Scene;
use panward::domain::ids::{Dev, EntryId, JobId, MachineId, PanId, PersonId};
use panward::domain::ledger::Ledger;
use panward::domain::procedure::{Ask, Hold, PanTables, Step};
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::domain::units::{Amount, Share, Temp, Typed, Unit, Volume};
use panward::kitchen::scene;

/// Rapeseed.
pub const PAN: PanId = PanId(10);
/// Dripping, kept halal on no basis: lard is refused it.
pub const SOLID: PanId = PanId(11);
pub const MACHINE: MachineId = MachineId(20);
pub const ANN: PersonId = PersonId(30);
pub const STARTER: PersonId = PersonId(31);
pub const YOUNG: PersonId = PersonId(32);

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

pub fn day() -> Day {
    Day::of(start().wall, 0, 300)
}

pub fn litres(litres: u32) -> Amount {
    Amount {
        volume: Volume::from_ml(litres * 1000).unwrap(),
        typed: Typed {
            thousandths: litres * 1000,
            unit: Unit::Litres,
        },
    }
}

pub const fn job_id(n: usize) -> JobId {
    JobId(100 + n as u128)
}

/// The kitchen set up, and its pans filled, a day before it begins.
pub fn filled() -> Vec<Entry> {
    let mut log: Vec<Entry> = Vec::new();
    let mut then = start();
    then.wall = then.wall.plus(-24 * Millis::HOUR);
    let fill = |pan, fat| {
        Fact::Fill(Fill {
            pan,
            fat,
            amount: litres(18),
            batch: None,
            age: Age::Fresh,
        })
    };
    for fact in [
        Fact::Person(person(ANN, true)),
        Fact::Person(person(STARTER, false)),
        Fact::Person(Person {
            adult: false,
            ..person(YOUNG, false)
        }),
        Fact::Pan(Box::new(pan(PAN, Fat::Rapeseed))),
        Fact::Pan(Box::new(pan(SOLID, Fat::Dripping))),
        Fact::Machine(Box::new(machine())),
        fill(PAN, Fat::Rapeseed),
        fill(SOLID, Fat::Dripping),
    ] {
        let entry = written(Draft::now(None, fact), log.len() as u32 + 1, &then, log.last());
        log.push(entry);
    }
    log
}

fn person(person: PersonId, signed: bool) -> Person {
    Person {
        person,
        initials: "AB".into(),
        adult: true,
        routes: if signed { vec![Route::Hot] } else { Vec::new() },
        may_supervise: signed,
        by: signed.then_some(ANN),
        until: None,
    }
}

fn pan(pan: PanId, fat: Fat) -> Pan {
    let ml = |ml| Volume::from_ml(ml).unwrap();
    let halal = Claim {
        what: ClaimKind::Halal,
        from: day().plus(-10),
        basis: "supplier".into(),
        until: None,
    };
    Pan {
        pan,
        name: pan.0.to_string(),
        full: ml(20_000),
        min: ml(14_000),
        mark: "line".into(),
        heat: HeatKind::Gas,
        off_signs: [OffSign::Knob, OffSign::Flame],
        fat,
        claims: vec![halal],
        food: Exposures::NONE,
        rhythm: None,
        usual_days: None,
        end_sign: None,
        in_use: true,
    }
}

fn machine() -> Machine {
    let c = |c: i16| Temp::from_dc(c * 10).unwrap();
    Machine {
        machine: MACHINE,
        name: "Blue".into(),
        out_by: OutBy::Nozzle,
        tank: Volume::from_ml(40_000).unwrap(),
        free: Share::from_cpc(1_000).unwrap(),
        heater_w: 0,
        takes_solid: true,
        filter: FilterKind::Single,
        low: c(100),
        high: c(180),
        target: c(150),
        rinse_max_s: None,
        rinse_min_s: None,
        filters: Vec::new(),
        powder: None,
        words: Vec::new(),
        held: Held::Known(Exposures::NONE),
    }
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

/// What the guides know of the kitchen, by its own ledger.
pub fn scene_of(ledger: &Ledger) -> Rc<Scene> {
    Rc::new(scene::of(ledger, day()))
}

/// The tables with one hold taken out of every step: its check and its questions.
pub fn without(hold: Hold) -> PanTables {
    PanTables::REAL.each(|step| {
        let holds: Vec<Hold> = step.holds.iter().copied().filter(|h| *h != hold).collect();
        let asks: Vec<Ask> = step.asks.iter().copied().filter(|a| a.hold != Some(hold)).collect();
        Box::leak(Box::new(Step {
            holds: Box::leak(holds.into_boxed_slice()),
            asks: Box::leak(asks.into_boxed_slice()),
            ..*step
        }))
    })
}
