//! Arbitrary entries of every kind, for property tests.

use panward::domain::claim::{ClaimKind, Exposure, Exposures};
use panward::domain::entry::Entry;
use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use panward::domain::facts::run::{Contents, Fault, Form, Heat, Left, Limits, Place, Plan, Pump, RunEvent, RunFact};
use panward::domain::facts::setup::{
    AcidLimit, Claim, FilterKind, HeatKind, Held, Instrument, Kitchen, LimitBasis, Machine, Measures, OffSign, OutBy,
    Pan, Person, Route, Span,
};
use panward::domain::facts::{Correct, Correction, Fact, MachineCleaned, Practised, RunNoted, oil};
use panward::domain::fat::Fat;
use panward::domain::ids::{Dev, EntryId, InstrumentId, JobId, KitchenId, MachineId, PanId, PersonId, RunId};
use panward::domain::procedure::{Hold, StepId};
use panward::domain::time::{Day, Millis};
use panward::domain::units::{AcidValue, Amount, Minutes, Share, Temp, Typed, Unit, Volume};
use proptest::collection::{btree_map, vec};
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

/// The one kitchen all arbitrary entries belong to.
pub const KITCHEN: KitchenId = KitchenId(0x1234);

fn words() -> impl Strategy<Value = String> {
    prop_oneof!["[a-z ]{0,12}", any::<String>()]
}

fn person() -> impl Strategy<Value = PersonId> {
    any::<u128>().prop_map(PersonId)
}

fn pan() -> impl Strategy<Value = PanId> {
    any::<u128>().prop_map(PanId)
}

fn machine() -> impl Strategy<Value = MachineId> {
    any::<u128>().prop_map(MachineId)
}

/// Any moment from 1970 to 2100.
pub fn moment() -> impl Strategy<Value = Millis> {
    (0..4_102_444_800_000_i64).prop_map(Millis)
}

fn day() -> impl Strategy<Value = Day> {
    moment().prop_map(|at| Day::of(at, 0, 0))
}

fn volume() -> impl Strategy<Value = Volume> {
    (0..=Volume::MAX.ml()).prop_map(|ml| Volume::from_ml(ml).expect("in range"))
}

fn temp() -> impl Strategy<Value = Temp> {
    (Temp::MIN.dc()..=Temp::MAX.dc()).prop_map(|dc| Temp::from_dc(dc).expect("in range"))
}

fn share() -> impl Strategy<Value = Share> {
    (0..=10_000_u16).prop_map(|cpc| Share::from_cpc(cpc).expect("in range"))
}

fn acid() -> impl Strategy<Value = AcidValue> {
    (0..=5_000_u16).prop_map(|cav| AcidValue::from_cav(cav).expect("in range"))
}

fn minutes() -> impl Strategy<Value = Minutes> {
    (0..=1_440_u16).prop_map(|min| Minutes::new(min).expect("in range"))
}

fn amount() -> impl Strategy<Value = Amount> {
    (volume(), any::<u32>(), select(Unit::ALL)).prop_map(|(volume, thousandths, unit)| Amount {
        volume,
        typed: Typed { thousandths, unit },
    })
}

fn exposures() -> impl Strategy<Value = Exposures> {
    vec(select(Exposure::ALL), 0..5).prop_map(|list| Exposures::of(&list))
}

fn evidence() -> impl Strategy<Value = Evidence> {
    let one = (select(Item::ALL), select(Word::ALL), any::<i32>(), words()).prop_map(|(item, word, number, words)| {
        let seen = if item.is_number() {
            Seen::Number(number)
        } else if item.is_words() {
            Seen::Words(words)
        } else {
            Seen::Is(word)
        };
        (item, seen)
    });
    vec(one, 0..6).prop_map(|list| list.into_iter().collect())
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
    let third = (of(any::<u16>()), of(any::<u16>()), of(words()), any::<bool>());
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
    let third = (vec(words(), 0..4), btree_map(words(), words(), 0..4), held);
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
            words: c.1.into_iter().collect(),
            held: c.2,
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

fn about_oil() -> impl Strategy<Value = Fact> {
    let age = prop_oneof![
        Just(oil::Age::Fresh),
        day().prop_map(oil::Age::Since),
        Just(oil::Age::Unknown)
    ];
    let value = prop_oneof![
        share().prop_map(oil::Measured::Polar),
        share().prop_map(oil::Measured::Ffa),
        acid().prop_map(oil::Measured::Acid),
        temp().prop_map(oil::Measured::Temp),
        temp().prop_map(oil::Measured::Smoke),
    ];
    let claim = || {
        (pan(), select(ClaimKind::ALL), words(), of(words())).prop_map(|(pan, what, why, basis)| oil::ClaimChange {
            pan,
            what,
            why,
            basis,
        })
    };
    prop_oneof![
        (pan(), select(Fat::ALL), amount(), of(words()), age).prop_map(|(pan, fat, amount, batch, age)| Fact::Fill(
            oil::Fill {
                pan,
                fat,
                amount,
                batch,
                age
            }
        )),
        (pan(), select(Fat::ALL), amount(), of(words())).prop_map(|(pan, fat, amount, batch)| Fact::TopUp(
            oil::TopUp {
                pan,
                fat,
                amount,
                batch
            }
        )),
        (pan(), amount(), amount()).prop_map(|(pan, out, fresh)| Fact::PartChange(oil::PartChange { pan, out, fresh })),
        (pan(), amount(), amount()).prop_map(|(from, out, arrived)| {
            let to = PanId(from.0 ^ 1);
            Fact::Move(oil::Move { from, to, out, arrived })
        }),
        (pan(), amount(), words(), of(temp()), of(words())).prop_map(|(pan, amount, reason, temp, container)| {
            Fact::OilChange(oil::OilChange {
                pan,
                amount,
                reason,
                temp,
                container,
            })
        }),
        (pan(), minutes(), select(oil::Load::ALL), of(temp()), of(any::<u32>())).prop_map(
            |(pan, fry, load, temp, food_g)| Fact::Service(oil::Service {
                pan,
                fry,
                load,
                temp,
                food_g
            })
        ),
        (pan(), value, of(any::<u128>()), of(temp())).prop_map(|(pan, value, instrument, oil)| {
            Fact::Reading(oil::Reading {
                pan,
                value,
                instrument: instrument.map(InstrumentId),
                oil,
            })
        }),
        (of(pan()), select(oil::SignKind::ALL), of(words())).prop_map(|(pan, sign, text)| Fact::Sign(oil::Sign {
            pan,
            sign,
            text
        })),
        (of(pan()), words()).prop_map(|(pan, text)| Fact::Note(oil::Note { pan, text })),
        claim().prop_map(Fact::ClaimLost),
        claim().prop_map(Fact::ClaimRestored),
    ]
}

fn job() -> impl Strategy<Value = Fact> {
    let first = (
        any::<u128>(),
        select(JobKind::ALL),
        select(JobEvent::ALL),
        of(select(Grade::ALL)),
        of(words()),
    );
    let second = (
        of(machine()),
        of(pan()),
        of(select(StepId::ALL)),
        of(select(Hold::ALL)),
        of(person()),
    );
    let third = (
        evidence(),
        of(select(Heat::ALL)),
        of(select(Contents::ALL)),
        of(moment()),
        of(moment()),
        of(person()),
    );
    (first, second, third).prop_map(|(a, b, c)| {
        Fact::Job(Box::new(JobFact {
            job: JobId(a.0),
            what: a.1,
            event: a.2,
            how: a.3,
            why: a.4,
            machine: b.0,
            pan: b.1,
            step: b.2,
            hold: b.3,
            supervisor: b.4,
            evidence: c.0,
            heat: c.1,
            contents: c.2,
            deadline: c.3,
            next_look: c.4,
            looker: c.5,
        }))
    })
}

fn run() -> impl Strategy<Value = Fact> {
    let plan = any::<[bool; 3]>().prop_map(|[samples, wipe, rinse]| Plan { samples, wipe, rinse });
    let limits = (temp(), temp(), temp(), of(any::<u16>()), of(any::<u16>())).prop_map(|f| Limits {
        low: f.0,
        high: f.1,
        target: f.2,
        rinse_max_s: f.3,
        rinse_min_s: f.4,
    });
    let first = (
        any::<u128>(),
        any::<u128>(),
        pan(),
        of(machine()),
        select(Route::ALL),
        select(Form::ALL),
        plan,
    );
    let second = (
        of(person()),
        select(RunEvent::ALL),
        select(StepId::ALL),
        of(select(Fault::ALL)),
        evidence(),
    );
    let third = (
        select(Place::ALL),
        select(Contents::ALL),
        select(Pump::ALL),
        select(Heat::ALL),
    );
    (first, second, third, of(moment()), of(select(Left::ALL)), limits).prop_map(|(a, b, c, deadline, left, limits)| {
        Fact::Run(Box::new(RunFact {
            run: RunId(a.0),
            job: JobId(a.1),
            pan: a.2,
            machine: a.3,
            route: a.4,
            form: a.5,
            plan: a.6,
            supervisor: b.0,
            event: b.1,
            step: b.2,
            fault: b.3,
            evidence: b.4,
            place: c.0,
            contents: c.1,
            pump: c.2,
            heat: c.3,
            deadline,
            left,
            limits,
        }))
    })
}

fn others() -> impl Strategy<Value = Fact> {
    prop_oneof![
        (pan(), of(machine()), select(Grade::ALL), of(words()))
            .prop_map(|(pan, machine, how, why)| Fact::RunNoted(RunNoted { pan, machine, how, why })),
        (machine(), words(), person()).prop_map(|(machine, how, by)| Fact::MachineCleaned(MachineCleaned {
            machine,
            how,
            by
        })),
        (person(), any::<u128>(), words()).prop_map(|(person, run, result)| Fact::Practised(Practised {
            person,
            run: RunId(run),
            result
        })),
    ]
}

fn plain_fact() -> BoxedStrategy<Fact> {
    let setup = prop_oneof![kitchen(), a_person(), a_pan(), a_machine(), instrument()];
    prop_oneof![2 => setup, 4 => about_oil(), 1 => job(), 1 => run(), 1 => others()].boxed()
}

/// A fact of any kind this app can write.
pub fn fact() -> impl Strategy<Value = Fact> {
    let amend = (of(moment()), of(-720..=840_i16), of(plain_fact()))
        .prop_filter("amends something", |(at, off, fact)| {
            at.is_some() || off.is_some() || fact.is_some()
        })
        .prop_map(|(at, off_min, fact)| Correction::Amend {
            at,
            off_min,
            fact: fact.map(Box::new),
        });
    let correct = (any::<u128>(), words(), prop_oneof![Just(Correction::Void), amend]).prop_map(|(of, why, how)| {
        Fact::Correct(Correct {
            of: EntryId(of),
            why,
            how,
        })
    });
    prop_oneof![9 => plain_fact(), 1 => correct]
}

/// The UUID v7 made of any bits.
pub fn v7(bits: u128) -> EntryId {
    EntryId(bits & !(0xf << 76) & !(0b11 << 62) | 7 << 76 | 0b10 << 62)
}

/// An entry of any kind this app can write, from one of three stores.
pub fn entry() -> impl Strategy<Value = Entry> {
    let envelope = (
        any::<u128>(),
        0..3_u64,
        1..=u32::MAX,
        moment(),
        moment(),
        of(moment()),
        -720..=840_i16,
        of(person()),
    );
    (envelope, fact()).prop_map(|(e, fact)| Entry {
        id: v7(e.0),
        dev: Dev(e.1),
        seq: e.2,
        at: e.3,
        rec: e.4,
        clk: e.5.filter(|clk| *clk != e.4),
        off_min: e.6,
        who: e.7,
        fact,
    })
}

/// A log: entries with their own ids and places, in any order of arrival.
pub fn log() -> impl Strategy<Value = Vec<Entry>> {
    vec(entry(), 0..24).prop_map(|mut entries| {
        entries.sort_by_key(|e| e.id);
        entries.dedup_by_key(|e| e.id);
        entries.sort_by_key(|e| (e.dev, e.seq));
        entries.dedup_by_key(|e| (e.dev, e.seq));
        entries
    })
}
