//! The invented kitchen itself: four pans, three fats, a filter machine and a hand kit, four people.

use crate::domain::claim::{ClaimKind, Exposure, Exposures};
use crate::domain::facts::Fact;
use crate::domain::facts::setup::{
    Claim, FilterKind, HeatKind, Held, Instrument, Kitchen, LimitBasis, Machine, Measures, OffSign, OutBy, Pan, Person,
    Route, Span,
};
use crate::domain::fat::Fat;
use crate::domain::ids::{InstrumentId, KitchenId, MachineId, PanId, PersonId};
use crate::domain::time::Day;
use crate::domain::units::{Minutes, Share, Temp, Volume};

use super::rng::Rng;

/// The ids of everything in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cast {
    /// The kitchen.
    pub kitchen: KitchenId,
    /// Fish pans 1 and 2 (rapeseed), 3 (dripping), and the gluten-free chip pan 4 (high-oleic rapeseed).
    pub pans: [PanId; 4],
    /// The shared pumped machine.
    pub machine: MachineId,
    /// The hand kit that belongs to the gluten-free pan.
    pub hand_kit: MachineId,
    /// The owner, two friers and a starter.
    pub people: [PersonId; 4],
    /// What measures polar compounds.
    pub tester: InstrumentId,
    /// The probe.
    pub probe: InstrumentId,
}

impl Cast {
    pub(super) fn new(rng: &mut Rng) -> Self {
        Self {
            kitchen: KitchenId(rng.id()),
            pans: std::array::from_fn(|_| PanId(rng.id())),
            machine: MachineId(rng.id()),
            hand_kit: MachineId(rng.id()),
            people: std::array::from_fn(|_| PersonId(rng.id())),
            tester: InstrumentId(rng.id()),
            probe: InstrumentId(rng.id()),
        }
    }
}

/// Trading days, Monday to Sunday: closed on Mondays.
pub(super) const TRADING: [bool; 7] = [false, true, true, true, true, true, true];

/// What sets one pan apart from another.
pub(super) struct PanKind {
    pub(super) fat: Fat,
    pub(super) full_ml: u32,
    /// Usual minutes hot on an ordinary day.
    pub(super) fry_min: i64,
    /// Litres of its top-up, from and to.
    pub(super) top_up_l: (i64, i64),
    /// The pan of the gluten-free claim, fried in at lunch only and cold again by closing.
    pub(super) gluten_free: bool,
}

const FISH: PanKind = PanKind {
    fat: Fat::Rapeseed,
    full_ml: 42_000,
    fry_min: 300,
    top_up_l: (2, 3),
    gluten_free: false,
};

/// The four pans.
pub(super) const PANS: [PanKind; 4] = [
    FISH,
    FISH,
    PanKind {
        fat: Fat::Dripping,
        full_ml: 36_000,
        ..FISH
    },
    PanKind {
        fat: Fat::HighOleicRapeseed,
        full_ml: 30_000,
        fry_min: 150,
        top_up_l: (1, 2),
        gluten_free: true,
    },
];

pub(super) fn volume(ml: u32) -> Volume {
    Volume::from_ml(ml).unwrap_or(Volume::MAX)
}

pub(super) fn minutes(min: u16) -> Minutes {
    Minutes::new(min).unwrap_or_default()
}

/// Every set-up fact, in the order an owner would type them.
pub(super) fn facts(cast: &Cast, first: Day) -> Vec<Fact> {
    let kitchen = Fact::Kitchen(Box::new(Kitchen {
        kitchen: cast.kitchen,
        name: "Harbour Lane Fish Bar".into(),
        country: "GB".into(),
        zone: super::ZONE.into(),
        day_start_min: 300,
        trading_days: TRADING,
        fry_min: minutes(300),
        closing_min: Some(minutes(1320)),
        quiet: Some(Span {
            from_min: minutes(1410),
            to_min: minutes(480),
        }),
        emergency_number: "999".into(),
        polar_limit: Share::from_cpc(2_500),
        acid_limit: None,
        limit_basis: LimitBasis::Own,
        languages: vec!["en".into()],
        second_person: true,
    }));
    let pans = cast.pans.into_iter().zip(&PANS).zip(1..);
    let pans = pans.map(|((id, kind), number)| Fact::Pan(Box::new(pan(id, kind, number, first))));
    let machines = [pumped(cast), hand_kit(cast)].into_iter().flatten();
    std::iter::once(kitchen)
        .chain(people(cast).map(Fact::Person))
        .chain(pans)
        .chain(machines.map(|m| Fact::Machine(Box::new(m))))
        .chain(instruments(cast).map(Fact::Instrument))
        .collect()
}

fn people(cast: &Cast) -> impl Iterator<Item = Person> {
    let [owner, ..] = cast.people;
    let rows = [
        ("HL", true, true),
        ("BO", true, true),
        ("TW", true, false),
        ("NS", false, false),
    ];
    let people = cast.people.into_iter().zip(rows);
    people.map(move |(person, (initials, signed_off, may_supervise))| Person {
        person,
        initials: initials.into(),
        adult: true,
        routes: if signed_off {
            vec![Route::Hot, Route::Cold]
        } else {
            Vec::new()
        },
        may_supervise,
        by: signed_off.then_some(owner),
        until: None,
    })
}

fn pan(pan: PanId, kind: &PanKind, number: u8, first: Day) -> Pan {
    let claim = Claim {
        what: ClaimKind::GlutenFree,
        from: first,
        basis: "Own pan, own hand kit, chips only".into(),
        until: None,
    };
    let free = kind.gluten_free;
    Pan {
        pan,
        name: number.to_string(),
        full: volume(kind.full_ml),
        min: volume(kind.full_ml / 10 * 8),
        mark: "The line stamped in the back wall".into(),
        heat: if free { HeatKind::Electric } else { HeatKind::Gas },
        off_signs: [OffSign::Knob, if free { OffSign::Light } else { OffSign::Flame }],
        fat: kind.fat,
        claims: if free { vec![claim] } else { Vec::new() },
        food: if free {
            Exposures::NONE
        } else {
            Exposures::of(&[Exposure::Gluten, Exposure::Fish])
        },
        rhythm: None,
        usual_days: Some(if free { 14 } else { 10 }),
        end_sign: Some("Foam that stays".into()),
        in_use: true,
    }
}

fn pumped(cast: &Cast) -> Option<Machine> {
    Some(Machine {
        machine: cast.machine,
        name: "Filter machine".into(),
        out_by: OutBy::Nozzle,
        tank: volume(60_000),
        free: Share::from_cpc(1_000)?,
        heater_w: 500,
        takes_solid: true,
        filter: FilterKind::Single,
        low: Temp::celsius(100),
        high: Temp::celsius(180),
        target: Temp::celsius(150),
        rinse_max_s: Some(30),
        rinse_min_s: None,
        filters: vec!["mesh".into(), "paper".into()],
        powder: None,
        words: [("off", "stop"), ("draw", "out"), ("return", "back")]
            .map(|(slot, said)| (slot.to_owned(), said.to_owned()))
            .to_vec(),
        held: Held::Known(Exposures::of(&[Exposure::Gluten, Exposure::Fish])),
    })
}

fn hand_kit(cast: &Cast) -> Option<Machine> {
    Some(Machine {
        machine: cast.hand_kit,
        name: "Hand kit for pan 4".into(),
        out_by: OutBy::Hand,
        tank: volume(40_000),
        heater_w: 0,
        takes_solid: false,
        low: Temp::celsius(20),
        high: Temp::celsius(40),
        target: Temp::celsius(35),
        rinse_max_s: None,
        words: Vec::new(),
        filters: vec!["strainer".into(), "cloth".into()],
        held: Held::Known(Exposures::NONE),
        ..pumped(cast)?
    })
}

fn instruments(cast: &Cast) -> impl Iterator<Item = Instrument> {
    let tester = Instrument {
        instrument: cast.tester,
        name: "Oil tester".into(),
        measures: Measures::Polar,
        spread: Share::from_cpc(100),
    };
    let probe = Instrument {
        instrument: cast.probe,
        name: "Probe".into(),
        measures: Measures::Temp,
        spread: None,
    };
    [tester, probe].into_iter()
}
