//! A small kitchen and short words for its entries.

use panward::domain::claim::{ClaimKind, Exposure, Exposures};
use panward::domain::entry::Entry;
use panward::domain::evidence::Evidence;
use panward::domain::facts::job::Grade;
use panward::domain::facts::oil::{Age, Fill, Load, Measured, Move, OilChange, Reading, Service, TopUp, Vessel};
use panward::domain::facts::run::{Contents, Form, Heat, Left, Limits, Place, Plan, Pump, RunEvent, RunFact};
use panward::domain::facts::setup::{
    Claim, FilterKind, HeatKind, Heater, Held, Kitchen, LimitBasis, Machine, OffSign, OutBy, Pan, Person, Route,
};
use panward::domain::facts::{Correct, Correction, Fact, MachineCleaned, RunNoted};
use panward::domain::fat::Fat;
use panward::domain::ids::{Dev, EntryId, JobId, KitchenId, MachineId, PanId, PersonId, RunId};
use panward::domain::ledger::Ledger;
use panward::domain::procedure::StepId;
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::domain::units::{Amount, Minutes, Share, Temp, Typed, Unit, Volume};

pub const FISH: PanId = PanId(1);
pub const CHIPS: PanId = PanId(2);
pub const SHARED: MachineId = MachineId(1);
pub const KIT: MachineId = MachineId(2);
pub const ANN: PersonId = PersonId(1);
pub const BEN: PersonId = PersonId(2);

/// Monday 5 January 2026, by the calendar.
pub fn day(n: i64) -> Day {
    Day::from_date(chrono::NaiveDate::from_ymd_opt(2026, 1, 5).unwrap()).plus(n)
}

/// Hour `h` of day `n`, UTC.
pub fn at(n: i64, h: i64) -> Millis {
    day(n).begins(0, 0).plus(h * Millis::HOUR)
}

pub fn now(wall: Millis) -> Now {
    Now {
        wall,
        mono: 0,
        life: PageLife(1),
        off_min: 0,
    }
}

/// A log being written; entry ids count from 1.
#[derive(Clone, Debug, Default)]
pub struct Log {
    pub entries: Vec<Entry>,
}

impl Log {
    /// The kitchen set up on day 0 at 08:00: a fish pan with the shared machine, a gluten-free pan with its kit.
    pub fn kitchen() -> Self {
        let mut log = Self::default();
        let gluten_free = Claim {
            what: ClaimKind::GlutenFree,
            from: day(0),
            basis: "own pan".into(),
            until: None,
        };
        let fish = Exposures::of(&[Exposure::Gluten, Exposure::Fish]);
        for fact in [
            Fact::Kitchen(Box::new(kitchen())),
            person(ANN),
            person(BEN),
            Fact::Pan(Box::new(pan(FISH, "10", fish, Vec::new()))),
            Fact::Pan(Box::new(pan(CHIPS, "2", Exposures::NONE, vec![gluten_free]))),
            Fact::Machine(Box::new(machine(SHARED, Held::Known(Exposures::NONE)))),
            Fact::Machine(Box::new(machine(KIT, Held::Known(Exposures::NONE)))),
        ] {
            log.say(at(0, 8), fact);
        }
        log
    }

    /// The same with both pans filled on day 0 at 09:00.
    pub fn filled() -> Self {
        let mut log = Self::kitchen();
        log.say(at(0, 9), fill(FISH, 40));
        log.say(at(0, 9), fill(CHIPS, 30));
        log
    }

    /// Writes a fact as it happens.
    pub fn say(&mut self, at: Millis, fact: Fact) -> EntryId {
        self.say_late(at, at, fact)
    }

    /// Writes at `rec` a fact that happened at `at`.
    pub fn say_late(&mut self, at: Millis, rec: Millis, fact: Fact) -> EntryId {
        let n = self.entries.len() + 1;
        let id = EntryId(n as u128);
        let who = Some(ANN);
        self.entries.push(Entry {
            id,
            dev: Dev(1),
            seq: n as u32,
            at,
            rec,
            clk: None,
            off_min: 0,
            who,
            fact,
        });
        id
    }

    /// Writes a fact as it happens, by who did it.
    pub fn say_as(&mut self, who: PersonId, at: Millis, fact: Fact) {
        self.say(at, fact);
        self.entries.last_mut().unwrap().who = Some(who);
    }

    /// A whole guided run, done by `who`, ending at `when`.
    pub fn run(&mut self, n: u128, pan: PanId, machine: MachineId, who: PersonId, when: Millis) {
        let mut run = run(n, pan, machine);
        for (event, place, contents, left) in [
            (RunEvent::Began, Place::InPan, Contents::Oil, None),
            (RunEvent::Pump, Place::Split, Contents::Oil, None),
            (RunEvent::Pump, Place::InMachine, Contents::EmptyWet, None),
            (RunEvent::Pump, Place::InPan, Contents::Oil, None),
            (RunEvent::Ended, Place::InPan, Contents::Oil, Some(Left::Off)),
        ] {
            run = RunFact {
                event,
                place,
                contents,
                left,
                ..run
            };
            self.say_as(who, when, Fact::Run(Box::new(run.clone())));
        }
    }

    pub fn ledger(&self) -> Ledger {
        Ledger::replay(&self.entries)
    }
}

pub fn litres(l: u32) -> Amount {
    let volume = Volume::from_ml(l * 1000).unwrap();
    Amount {
        volume,
        typed: Typed {
            thousandths: l * 1000,
            unit: Unit::Litres,
        },
    }
}

pub fn kitchen() -> Kitchen {
    Kitchen {
        kitchen: KitchenId(1),
        name: "K".into(),
        country: "GB".into(),
        zone: "Europe/London".into(),
        day_start_min: 300,
        trading_days: [true, true, true, true, true, true, false],
        fry_min: Minutes::new(300).unwrap(),
        closing_min: None,
        quiet: None,
        emergency_number: "999".into(),
        polar_limit: Share::from_cpc(2500),
        acid_limit: None,
        limit_basis: LimitBasis::Own,
        languages: vec!["en".into()],
        second_person: true,
    }
}

fn person(person: PersonId) -> Fact {
    let routes = vec![Route::Hot];
    Fact::Person(Person {
        person,
        initials: "A".into(),
        adult: true,
        routes,
        may_supervise: true,
        by: None,
        until: None,
    })
}

pub fn pan(pan: PanId, name: &str, food: Exposures, claims: Vec<Claim>) -> Pan {
    Pan {
        pan,
        name: name.into(),
        full: litres(40).volume,
        min: litres(25).volume,
        mark: "line".into(),
        heat: HeatKind::Gas,
        off_signs: [OffSign::Knob, OffSign::Flame],
        fat: Fat::Rapeseed,
        claims,
        food,
        rhythm: None,
        usual_days: None,
        end_sign: None,
        in_use: true,
    }
}

pub fn machine(machine: MachineId, held: Held) -> Machine {
    Machine {
        machine,
        name: "M".into(),
        out_by: OutBy::Nozzle,
        tank: litres(60).volume,
        free: Share::from_cpc(1000).unwrap(),
        heater: Heater::None,
        takes_solid: false,
        filter: FilterKind::Single,
        low: Temp::celsius(100),
        high: Temp::celsius(180),
        target: Temp::celsius(150),
        rinse_max_s: None,
        rinse_min_s: None,
        filters: Vec::new(),
        powder: None,
        words: Vec::new(),
        held,
    }
}

pub fn fill(pan: PanId, l: u32) -> Fact {
    Fact::Fill(Fill {
        pan,
        fat: Fat::Rapeseed,
        amount: litres(l),
        batch: None,
        age: Age::Fresh,
    })
}

pub fn change(pan: PanId) -> Fact {
    Fact::OilChange(OilChange {
        pan,
        amount: litres(30),
        reason: "dark".into(),
        temp: None,
        container: None,
    })
}

pub fn top_up(pan: PanId, l: u32) -> Fact {
    Fact::TopUp(TopUp {
        pan,
        fat: Fat::Rapeseed,
        amount: litres(l),
        batch: None,
    })
}

pub fn service(pan: PanId, min: u16) -> Fact {
    let fry = Minutes::new(min).unwrap();
    Fact::Service(Service {
        pan,
        fry,
        load: Load::Normal,
        temp: None,
        food_g: None,
    })
}

pub fn polar(pan: PanId, cpc: u16) -> Reading {
    Reading {
        pan,
        value: Measured::Polar(Share::from_cpc(cpc).unwrap()),
        instrument: None,
        oil: None,
    }
}

pub fn carried(from: PanId, to: PanId, l: u32) -> Move {
    moved(Vessel::Pan(from), Vessel::Pan(to), l)
}

pub fn moved(from: Vessel, to: Vessel, l: u32) -> Move {
    Move {
        from,
        to,
        out: litres(l),
        arrived: litres(l),
    }
}

pub fn parked(from: PanId, machine: MachineId, l: u32) -> Fact {
    Fact::Move(moved(Vessel::Pan(from), Vessel::Machine(machine), l))
}

pub fn brought(machine: MachineId, to: PanId, l: u32) -> Fact {
    Fact::Move(moved(Vessel::Machine(machine), Vessel::Pan(to), l))
}

pub fn noted(pan: PanId, machine: Option<MachineId>, how: Grade) -> Fact {
    Fact::RunNoted(RunNoted {
        pan,
        machine,
        how,
        why: Some("late".into()),
    })
}

pub fn cleaned(machine: MachineId) -> Fact {
    Fact::MachineCleaned(MachineCleaned {
        machine,
        how: "taken apart".into(),
        by: ANN,
    })
}

pub fn void(of: EntryId) -> Fact {
    Fact::Correct(Correct {
        of,
        why: String::from("a slip"),
        how: Correction::Void,
    })
}

pub fn moved_to(of: EntryId, at: Millis) -> Fact {
    Fact::Correct(Correct {
        of,
        why: String::from("a slip"),
        how: Correction::Amend {
            at: Some(at),
            off_min: None,
            fact: None,
        },
    })
}

pub fn says(of: EntryId, fact: Fact) -> Fact {
    Fact::Correct(Correct {
        of,
        why: String::from("a slip"),
        how: Correction::Amend {
            at: None,
            off_min: None,
            fact: Some(Box::new(fact)),
        },
    })
}

pub fn run(n: u128, pan: PanId, machine: MachineId) -> RunFact {
    RunFact {
        run: RunId(n),
        job: JobId(n),
        pan,
        machine: Some(machine),
        route: Route::Hot,
        form: Form::Long,
        plan: Plan::default(),
        supervisor: None,
        event: RunEvent::Began,
        step: StepId::Draw,
        fault: None,
        evidence: Evidence::new(),
        place: Place::InPan,
        contents: Contents::Oil,
        pump: Pump::Off,
        heat: Heat::OffSeen,
        deadline: None,
        left: None,
        limits: Limits {
            low: Temp::celsius(100),
            high: Temp::celsius(180),
            target: Temp::celsius(150),
            rinse_max_s: None,
            rinse_min_s: None,
        },
    }
}
