//! Mass balance: over any sequence of fills, top-ups, moves, part-changes, parking, runs and changes, what went in is
//! what stands in all vessels and what was taken out, and nothing else.
//!
//! The same is booked here by hand, in millilitres, for two pans, one machine and two fats: what is above a pan's full
//! mark left with the food.

use proptest::prelude::*;

use panward::domain::facts::Fact;
use panward::domain::facts::oil::{Age, Fill, Move, PartChange, TopUp, Vessel};
use panward::domain::facts::run::{Contents, Left, Place, RunEvent, RunFact};
use panward::domain::fat::Fat;
use panward::domain::ids::PanId;
use panward::domain::ledger::Ledger;
use panward::domain::quick::{Quick, Said, drafts};
use panward::domain::time::Millis;
use panward::domain::units::{Amount, Volume};

use crate::given::*;

const FULL: u32 = 40_000;

/// Books of the small world.
#[derive(Clone, Debug, Default)]
struct Books {
    in_pan: [u32; 2],
    /// Where a run has a pan's oil out, it is in the machine, and still that pan's.
    out: [bool; 2],
    in_machine: u32,
    went_in: u32,
    went_out: u32,
    with_food: u32,
}

impl Books {
    fn pour(&mut self, pan: usize, ml: u32) {
        let room = FULL.max(self.in_pan[pan]) - self.in_pan[pan];
        self.in_pan[pan] += ml.min(room);
        self.with_food += ml - ml.min(room);
    }

    fn draw(&mut self, pan: usize, ml: u32) -> u32 {
        let taken = ml.min(self.in_pan[pan]);
        self.in_pan[pan] -= taken;
        taken
    }

    fn book(&mut self, fact: &Fact) {
        let ml = |amount: Amount| amount.volume.ml();
        match fact {
            Fact::Fill(f) => {
                let pan = place(f.pan);
                if self.out[pan] {
                    // What a run left in the machine stays there.
                    self.in_machine += std::mem::take(&mut self.in_pan[pan]);
                    self.out[pan] = false;
                }
                self.went_in += ml(f.amount);
                self.in_pan[pan] = ml(f.amount);
            }
            Fact::TopUp(f) => {
                self.went_in += ml(f.amount);
                self.pour(place(f.pan), ml(f.amount));
            }
            Fact::PartChange(f) => {
                self.went_out += self.draw(place(f.pan), ml(f.out));
                self.went_in += ml(f.fresh);
                self.pour(place(f.pan), ml(f.fresh));
            }
            Fact::OilChange(f) => {
                let pan = place(f.pan);
                self.went_out += std::mem::take(&mut self.in_pan[pan]);
                self.out[pan] = false;
            }
            Fact::Move(f) => {
                let taken = match f.from {
                    Vessel::Pan(pan) => self.draw(place(pan), ml(f.out)),
                    Vessel::Machine(_) => {
                        for pan in 0..2 {
                            if std::mem::take(&mut self.out[pan]) {
                                self.in_machine += std::mem::take(&mut self.in_pan[pan]);
                            }
                        }
                        let taken = ml(f.out).min(self.in_machine);
                        self.in_machine -= taken;
                        taken
                    }
                };
                let arrived = ml(f.arrived).min(taken);
                self.went_out += taken - arrived;
                match f.to {
                    Vessel::Pan(pan) => self.pour(place(pan), arrived),
                    Vessel::Machine(_) => self.in_machine += arrived,
                }
            }
            _ => {}
        }
    }
}

fn place(pan: PanId) -> usize {
    usize::from(pan == CHIPS)
}

/// Something said: which of it, of which pan, how much, how much less arrives.
type Row = (u8, bool, u32, u32);

fn said(row: Row) -> Option<Quick> {
    let (pick, chips, ml, less) = row;
    let (pan, other) = if chips { (CHIPS, FISH) } else { (FISH, CHIPS) };
    let fat = if ml % 5 == 0 { Fat::Dripping } else { Fat::Rapeseed };
    let of = |ml: u32| Amount {
        volume: Volume::from_ml(ml).unwrap(),
        ..litres(1)
    };
    let (amount, arrived) = (of(ml), of(ml - less.min(ml - 1)));
    let way = |from, to| {
        Quick::Move(Move {
            from,
            to,
            out: amount,
            arrived,
        })
    };
    let (batch, age) = (None, Age::Fresh);
    let Fact::OilChange(out) = change(pan) else { return None };
    Some(match pick % 9 {
        0 => Quick::Fill(Fill {
            pan,
            fat,
            amount,
            batch,
            age,
        }),
        1 => Quick::TopUp(TopUp {
            pan,
            fat,
            amount: of(1 + ml / 8),
            batch,
        }),
        2 => Quick::PartChange(PartChange {
            pan,
            out: of(1 + ml / 3),
            fresh: of(1 + ml / 4),
        }),
        3 => way(Vessel::Pan(pan), Vessel::Pan(other)),
        4 => way(Vessel::Pan(pan), Vessel::Machine(SHARED)),
        5 => way(Vessel::Machine(SHARED), Vessel::Pan(pan)),
        6 if ml % 3 == 0 => Quick::OilChange { out, fill: None },
        _ => return None,
    })
}

/// The same with all there is, which is what a person moves most.
fn all_of(ledger: &Ledger, what: Quick) -> Quick {
    let Quick::Move(moved) = what else { return what };
    let ml = match moved.from {
        Vessel::Pan(pan) => ledger.fill(pan).map_or(0, |fill| fill.volume.ml()),
        Vessel::Machine(machine) => ledger
            .tank(machine)
            .iter()
            .filter_map(|p| p.volume)
            .map(Volume::ml)
            .sum(),
    };
    let volume = Volume::from_ml(ml).unwrap();
    let all = Amount { volume, ..litres(1) };
    Quick::Move(Move {
        out: all,
        arrived: all,
        ..moved
    })
}

/// A run that is left with its oil out, or that brings it back.
fn guided(log: &mut Log, books: &mut Books, n: usize, pan: PanId, when: Millis) {
    let ledger = log.ledger();
    let at = place(pan);
    let home = ledger.fill(pan).is_some() && ledger.oil_left(pan).is_none();
    if home && !ledger.tank(SHARED).is_empty() {
        return;
    }
    let out = (Place::InMachine, Contents::EmptyWet);
    let back = (Place::InPan, Contents::Oil);
    let ways = if home { [back, out, out] } else { [out, back, back] };
    if home {
        books.out[at] = true;
    } else if !ledger.tank(SHARED).is_empty() {
        // The machine is empty then: all that stood in it is in this pan.
        let own = ledger.oil_left(pan).is_some() && books.out[at];
        books.out[at] = false;
        for other in 0..2 {
            if !own && std::mem::take(&mut books.out[other]) {
                books.in_machine += std::mem::take(&mut books.in_pan[other]);
            }
        }
        let all = std::mem::take(&mut books.in_machine);
        books.pour(at, all);
    } else {
        return;
    }
    for (event, (place, contents)) in [RunEvent::Began, RunEvent::Pump, RunEvent::Ended].into_iter().zip(ways) {
        let left = (event == RunEvent::Ended).then_some(if home { Left::OilOut } else { Left::Off });
        let fact = RunFact {
            event,
            place,
            contents,
            left,
            ..run(n as u128 + 1, pan, SHARED)
        };
        log.say(when, Fact::Run(Box::new(fact)));
    }
}

fn check(books: &Books, ledger: &Ledger) -> Result<(), TestCaseError> {
    for pan in [FISH, CHIPS] {
        let booked = ledger.fill(pan).map_or(0, |fill| fill.volume.ml());
        prop_assert_eq!(booked, books.in_pan[place(pan)], "in pan {:?}, {:?}", pan, books);
    }
    let parked: u32 = ledger
        .tank(SHARED)
        .iter()
        .filter_map(|p| p.volume)
        .map(Volume::ml)
        .sum();
    let by_run: u32 = (0..2).filter(|pan| books.out[*pan]).map(|pan| books.in_pan[pan]).sum();
    prop_assert_eq!(parked, books.in_machine + by_run);
    let stands = books.in_pan[0] + books.in_pan[1] + books.in_machine;
    prop_assert_eq!(books.went_in, stands + books.went_out + books.with_food);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn nothing_appears_and_nothing_vanishes(
        rows in prop::collection::vec((any::<u8>(), any::<bool>(), 1_u32..30_000, 0_u32..2_000), 1..40),
        seed in any::<u64>(),
    ) {
        let mut log = Log::kitchen();
        log.say(at(0, 8), Fact::Pan(Box::new(pan(CHIPS, "2", panward::domain::claim::Exposures::NONE, Vec::new()))));
        let mut books = Books::default();
        for (n, row) in rows.into_iter().enumerate() {
            let when = at(0, 9).plus(n as i64 * Millis::HOUR);
            let pan = if row.1 { CHIPS } else { FISH };
            if row.0 % 9 > 6 {
                guided(&mut log, &mut books, n, pan, when);
            } else if let Some(what) = said(row) {
                let ledger = log.ledger();
                let what = if row.2 % 2 == 0 { all_of(&ledger, what) } else { what };
                let said = Said { what, who: None, at: None, sure: true };
                for draft in drafts(&ledger, said, now(when)).unwrap_or_default() {
                    // What an oil change takes out of parked oil stands in the machine.
                    if let Fact::OilChange(f) = &draft.fact
                        && ledger.fill(f.pan).is_none()
                    {
                        let its = ledger.fills(f.pan).iter().rev().find(|fill| fill.ended.is_none()).unwrap();
                        let gone = ledger.tank(SHARED).into_iter().filter(|p| p.fill == its.began);
                        let gone: u32 = gone.filter_map(|p| p.volume).map(Volume::ml).sum();
                        books.in_machine -= gone;
                        books.went_out += gone;
                    }
                    books.book(&draft.fact);
                    log.say(when, draft.fact);
                }
            }
            check(&books, &log.ledger())?;
        }
        let mut shuffled = log.entries.clone();
        let mut state = seed;
        for i in (1..shuffled.len()).rev() {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            shuffled.swap(i, (state >> 33) as usize % (i + 1));
        }
        prop_assert!(Ledger::replay(&shuffled) == log.ledger());
    }
}
