//! The kitchen as it is set up now: the last fact about each thing, in order of cause, holds.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::closed::Closed;
use crate::domain::facts::pan_job::PanJob;
use crate::domain::facts::setup::{Instrument, Kitchen, Machine, Pan, Person};
use crate::domain::ids::{Dev, EntryId, InstrumentId, MachineId, PanId, PersonId};
use crate::domain::print::Print;
use crate::domain::sorted::{SortedMap, in_order};
use crate::domain::time::{Day, Millis};
use crate::domain::units::Dose;

/// Set-up as it stands.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Book {
    /// The kitchen, once it is set up.
    pub kitchen: Option<Kitchen>,
    /// Every pan ever set up, in use or not.
    pub pans: SortedMap<PanId, Pan>,
    /// Every filter machine and hand kit.
    pub machines: SortedMap<MachineId, Machine>,
    /// Everybody who works or worked here.
    pub people: SortedMap<PersonId, Person>,
    /// Every instrument.
    pub instruments: SortedMap<InstrumentId, Instrument>,
    /// The print of all that was set up: it changes with any of it.
    pub print: Print,
    /// Days closed, in order of cause, each with its entry.
    closed: Vec<(EntryId, Closed)>,
    /// The last word on each pan's job, on whatever day.
    jobs: SortedMap<PanId, PanJob>,
    /// Every word on a machine's powder, in order of cause.
    powders: Vec<PowderSaid>,
}

/// What a set-up of a machine said of its powder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct PowderSaid {
    machine: MachineId,
    /// Where it stands in the order of cause.
    cause: (Millis, Dev, u32),
    dose: Option<Dose>,
}

impl Book {
    /// The minute a trading day begins until the owner says otherwise: 05:00.
    pub const DAY_START_MIN: u16 = 300;

    /// Takes in one entry; entries come in order of cause.
    pub(super) fn apply(&mut self, entry: &Entry, print: Print) {
        match &entry.fact {
            Fact::Kitchen(kitchen) => self.kitchen = Some((**kitchen).clone()),
            Fact::Person(person) => drop(self.people.insert(person.person, person.clone())),
            Fact::Pan(pan) => drop(self.pans.insert(pan.pan, (**pan).clone())),
            Fact::Machine(machine) => {
                self.powders.push(PowderSaid {
                    machine: machine.machine,
                    cause: entry.cause(),
                    dose: machine.powder,
                });
                self.machines.insert(machine.machine, (**machine).clone());
            }
            Fact::Closed(closed) => self.closed.push((entry.id, closed.clone())),
            Fact::PanJob(job) => {
                // No set-up: what was worked out of that stands.
                self.jobs.insert(job.pan, job.clone());
                return;
            }
            Fact::Instrument(tool) => drop(self.instruments.insert(tool.instrument, tool.clone())),
            Fact::Fill(_)
            | Fact::TopUp(_)
            | Fact::PartChange(_)
            | Fact::Move(_)
            | Fact::OilChange(_)
            | Fact::Service(_)
            | Fact::Reading(_)
            | Fact::Sign(_)
            | Fact::Note(_)
            | Fact::ClaimLost(_)
            | Fact::ClaimRestored(_)
            | Fact::Correct(_)
            | Fact::Job(_)
            | Fact::Run(_)
            | Fact::RunNoted(_)
            | Fact::MachineCleaned(_)
            | Fact::AllergensChecked(_)
            | Fact::Practised(_)
            | Fact::Trouble(_)
            | Fact::Newer(_) => return,
        }
        self.print = self.print.and(print);
    }

    /// A pan.
    #[must_use]
    pub fn pan(&self, id: PanId) -> Option<&Pan> {
        self.pans.get(&id)
    }

    /// A filter machine or hand kit.
    #[must_use]
    pub fn machine(&self, id: MachineId) -> Option<&Machine> {
        self.machines.get(&id)
    }

    /// The powder that went into a machine when an entry was written: a later change of set-up says nothing of the runs
    /// before it.
    #[must_use]
    pub fn powder(&self, id: MachineId, entry: &Entry) -> Option<Dose> {
        let mut said = self.powders.iter().rev();
        said.find(|said| said.machine == id && said.cause < entry.cause())?.dose
    }

    /// A person.
    #[must_use]
    pub fn person(&self, id: PersonId) -> Option<&Person> {
        self.people.get(&id)
    }

    /// An instrument.
    #[must_use]
    pub fn instrument(&self, id: InstrumentId) -> Option<&Instrument> {
        self.instruments.get(&id)
    }

    /// The pans in use, in the order a person expects of their names: "2" before "10", numbers before words.
    #[must_use]
    pub fn pans_in_use(&self) -> Vec<&Pan> {
        let mut pans: Vec<&Pan> = self.pans.values().filter(|p| p.in_use).collect();
        in_order(&mut pans, |p| {
            (p.name.trim().parse::<u64>().unwrap_or(u64::MAX), p.name.as_str(), p.pan)
        });
        pans
    }

    /// The minute of the day at which a trading day begins.
    #[must_use]
    pub fn day_start_min(&self) -> u16 {
        self.kitchen.as_ref().map_or(Self::DAY_START_MIN, |k| k.day_start_min)
    }

    /// The trading day a moment belongs to; `off_min` is the zone's offset at that moment, in minutes.
    #[must_use]
    pub fn day_of(&self, at: Millis, off_min: i16) -> Day {
        Day::of(at, off_min, self.day_start_min())
    }

    /// Whether the kitchen trades on a day; every day does until the owner has said, but for days closed since.
    #[must_use]
    pub fn is_trading_day(&self, day: Day) -> bool {
        let usual = self
            .kitchen
            .as_ref()
            .and_then(|k| k.trading_days.get(day.weekday_index()));
        usual.copied().unwrap_or(true) && self.closed_on(day).is_none()
    }

    /// The days closed that a day is among; of several the one that ends last.
    #[must_use]
    pub fn closed_on(&self, day: Day) -> Option<&Closed> {
        let among = self
            .closed
            .iter()
            .map(|(_, closed)| closed)
            .filter(|closed| closed.has(day));
        among.max_by_key(|closed| closed.to())
    }

    /// Days closed that are not over on `day`, each with its entry, the first to come first.
    #[must_use]
    pub fn closed_from(&self, day: Day) -> Vec<&(EntryId, Closed)> {
        let mut coming: Vec<_> = self.closed.iter().filter(|(_, closed)| day <= closed.to()).collect();
        in_order(&mut coming, |(id, closed)| (closed.from(), *id));
        coming
    }

    /// Whose job a pan does on a day instead of its own.
    #[must_use]
    pub fn pan_job(&self, pan: PanId, day: Day) -> Option<&PanJob> {
        self.jobs.get(&pan).filter(|job| job.day == day && job.of != pan)
    }
}
