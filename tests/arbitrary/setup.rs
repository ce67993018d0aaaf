//! Arbitrary facts of set-up: kitchens, people, pans, machines, instruments.

use panward::domain::claim::ClaimKind;
use panward::domain::facts::Fact;
use panward::domain::facts::rhythm::{Rhythm, Weekdays};
use panward::domain::facts::setup::{
    AcidLimit, Claim, FilterKind, HeatKind, Held, Instrument, Kitchen, LimitBasis, Machine, Measures, OffSign, OutBy,
    Pan, Person, Route, Span,
};
use panward::domain::fat::Fat;
use panward::domain::ids::InstrumentId;
use panward::domain::units::{Dose, Temp};
use proptest::collection::{btree_map, vec};
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

use super::KITCHEN;
use super::values::{acid, day, exposures, machine, minutes, pan, person, share, temp, volume, words};

/// A fact of set-up of any kind.
pub(super) fn about_setup() -> impl Strategy<Value = Fact> {
    prop_oneof![kitchen(), a_person(), a_pan(), a_machine(), instrument()]
}

fn kitchen() -> impl Strategy<Value = Fact> {
    let limit = prop_oneof![share().prop_map(AcidLimit::Ffa), acid().prop_map(AcidLimit::AcidValue)];
    let span = (minutes(), minutes()).prop_map(|(from_min, to_min)| Span { from_min, to_min });
    let first = (
        words(),
        "[A-Z]{2}",
        words(),
        180..=660_u16,
        any::<[bool; 7]>(),
        minutes(),
        of(minutes()),
    );
    let second = (
        of(span),
        words(),
        of(share()),
        of(limit),
        select(LimitBasis::ALL),
        vec(words(), 0..3),
        any::<bool>(),
    );
    (first, second).prop_map(|(a, b)| {
        Fact::Kitchen(Box::new(Kitchen {
            kitchen: KITCHEN,
            name: a.0,
            country: a.1,
            zone: a.2,
            day_start_min: a.3,
            trading_days: a.4,
            fry_min: a.5,
            closing_min: a.6,
            quiet: b.0,
            emergency_number: b.1,
            polar_limit: b.2,
            acid_limit: b.3,
            limit_basis: b.4,
            languages: b.5,
            second_person: b.6,
        }))
    })
}

fn a_person() -> impl Strategy<Value = Fact> {
    let routes = vec(select(Route::ALL), 0..3);
    (
        person(),
        words(),
        any::<bool>(),
        routes,
        any::<bool>(),
        of(person()),
        of(day()),
    )
        .prop_map(|f| {
            Fact::Person(Person {
                person: f.0,
                initials: f.1,
                adult: f.2,
                routes: f.3,
                may_supervise: f.4,
                by: f.5,
                until: f.6,
            })
        })
}

fn a_pan() -> impl Strategy<Value = Fact> {
    let claim = (select(ClaimKind::ALL), day(), words(), of(day())).prop_map(|(what, from, basis, until)| Claim {
        what,
        from,
        basis,
        until,
    });
    let signs = [select(OffSign::ALL), select(OffSign::ALL)];
    let first = (
        pan(),
        words(),
        volume(),
        volume(),
        words(),
        select(HeatKind::ALL),
        signs,
    );
    let second = (select(Fat::ALL), vec(claim, 0..3), exposures());
    let turns = || any::<std::num::NonZeroU16>();
    let rhythm = prop_oneof![
        turns().prop_map(Rhythm::Days),
        turns().prop_map(Rhythm::Sessions),
        any::<[bool; 7]>()
            .prop_filter_map("at least one", Weekdays::of)
            .prop_map(Rhythm::Weekdays),
    ];
    let third = (of(rhythm), of(any::<u16>()), of(words()), any::<bool>());
    (first, second, third).prop_map(|(a, b, c)| {
        Fact::Pan(Box::new(Pan {
            pan: a.0,
            name: a.1,
            full: a.2,
            min: a.3,
            mark: a.4,
            heat: a.5,
            off_signs: a.6,
            fat: b.0,
            claims: b.1,
            food: b.2,
            rhythm: c.0,
            usual_days: c.1,
            end_sign: c.2,
            in_use: c.3,
        }))
    })
}

fn a_machine() -> impl Strategy<Value = Fact> {
    let held = prop_oneof![exposures().prop_map(Held::Known), Just(Held::Unknown)];
    let first = (
        machine(),
        words(),
        select(OutBy::ALL),
        volume(),
        share(),
        any::<u32>(),
        any::<bool>(),
    );
    let second = (
        select(FilterKind::ALL),
        -500..=2_000_i16,
        -500..=2_000_i16,
        temp(),
        of(any::<u16>()),
        of(any::<u16>()),
    );
    let powder = of((1..=100_u16).prop_map(|g_per_l| Dose::from_g_per_l(g_per_l).expect("in range")));
    let third = (vec(words(), 0..4), powder, btree_map(words(), words(), 0..4), held);
    (first, second, third).prop_map(|(a, b, c)| {
        Fact::Machine(Box::new(Machine {
            machine: a.0,
            name: a.1,
            out_by: a.2,
            tank: a.3,
            free: a.4,
            heater_w: a.5,
            takes_solid: a.6,
            filter: b.0,
            low: Temp::from_dc(b.1.min(b.2)).expect("in range"),
            high: Temp::from_dc(b.1.max(b.2)).expect("in range"),
            target: b.3,
            rinse_max_s: b.4,
            rinse_min_s: b.5,
            filters: c.0,
            powder: c.1,
            words: c.2.into_iter().collect(),
            held: c.3,
        }))
    })
}

fn instrument() -> impl Strategy<Value = Fact> {
    (any::<u128>(), words(), select(Measures::ALL), of(share())).prop_map(|(id, name, measures, spread)| {
        Fact::Instrument(Instrument {
            instrument: InstrumentId(id),
            name,
            measures,
            spread,
        })
    })
}
