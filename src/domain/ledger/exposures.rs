//! Fold: what every machine and every pan's oil has met, in oil order.
//!
//! Filtering takes out crumbs, not allergens, and carries them on: oil takes with it what its pan fries, leaves it in
//! the machine, and takes on what the machine held. Only a strip-clean empties a machine's set, only an oil change
//! a pan's. Whatever the log cannot tell counts as unknown, which meets every claim.

use crate::domain::claim::{Exposure, Exposures};
use crate::domain::entry::Entry;
use crate::domain::evidence::{Evidence, Item, Word};
use crate::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use crate::domain::facts::oil::Vessel;
use crate::domain::facts::setup::{Held, Pan};
use crate::domain::facts::{Fact, RunNoted};
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, MachineId, PanId};
use crate::domain::time::{Day, Millis};

use super::book::Book;
use super::runs::oil_out;
use crate::domain::sorted::SortedMap;

/// One thing a machine met, and the entry that says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Met {
    /// The entry.
    pub id: EntryId,
    /// When.
    pub at: Millis,
    /// The pan whose oil it was, where one is named.
    pub pan: Option<PanId>,
    /// What came with it.
    pub set: Exposures,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct MachineMet {
    held: Option<Held>,
    met: Vec<Met>,
    last_fat: Option<Fat>,
    /// Whether hose and line were seen run empty since.
    line_empty: bool,
}

impl MachineMet {
    fn set(&self) -> Exposures {
        self.met.iter().fold(Exposures::NONE, |set, met| set.and(met.set))
    }

    /// One line a pan is enough, however many steps its run has; so is one for each thing no pan is named for.
    fn meet(&mut self, new: Met) {
        let same = |m: &&mut Met| m.pan == new.pan && (new.pan.is_some() || m.set == new.set);
        match self.met.iter_mut().find(same) {
            Some(met) => met.set = met.set.and(new.set),
            None => self.met.push(new),
        }
    }
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct PanMet {
    /// What its set-up said at the moment the fold has come to.
    own: Option<Exposures>,
    fat: Option<Fat>,
    /// Whether anything was filled in since it was last emptied.
    filled: bool,
    /// What the oil in it brought or took on since the pan was last emptied.
    oil: Exposures,
    /// What it fries on one day, for another pan.
    job: Option<(Day, Exposures)>,
}

/// What machines and pans have met.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Meetings {
    machines: SortedMap<MachineId, MachineMet>,
    pans: SortedMap<PanId, PanMet>,
}

const UNKNOWN: Exposures = Exposures::NONE.with(Exposure::Unknown);

impl Meetings {
    /// What a machine has met since its last strip-clean. A pan that ran through it counts with what it fries now
    /// as well as with what it fried then; a machine nobody set up has met everything.
    pub(super) fn of_machine(&self, id: MachineId, book: &Book) -> Exposures {
        let Some(machine) = self.machines.get(&id).filter(|m| m.held.is_some()) else {
            return UNKNOWN;
        };
        let pans = machine.met.iter().filter_map(|m| m.pan).filter_map(|pan| book.pan(pan));
        pans.fold(machine.set(), |set, pan| set.and(pan.exposures()))
    }

    /// Each meeting since the last strip-clean, so that a refusal can name its cause.
    pub(super) fn met(&self, id: MachineId) -> &[Met] {
        self.machines.get(&id).map_or(&[], |m| &m.met)
    }

    pub(super) fn last_fat(&self, id: MachineId) -> Option<Fat> {
        self.machines.get(&id)?.last_fat
    }

    /// Whether a fat that sets went through last, and nobody saw the line run empty since.
    pub(super) fn set_in_line(&self, id: MachineId) -> bool {
        let machine = self.machines.get(&id);
        machine.is_some_and(|m| !m.line_empty && m.last_fat.is_some_and(Fat::is_solid))
    }

    /// What a pan and the oil in it carry: its food, its fat, and what arrived in the oil.
    pub(super) fn of_pan(&self, id: PanId, book: &Book) -> Exposures {
        let now = book.pan(id).map(Pan::exposures);
        self.carried(id).and(now.unwrap_or(UNKNOWN))
    }

    /// What came with the oil in a pan since the pan was last emptied, whatever else is fried in it.
    pub(super) fn of_oil(&self, id: PanId) -> Exposures {
        self.pans.get(&id).map_or(UNKNOWN, |p| p.oil)
    }

    /// The same with its food and its fat as set up at the moment the fold has come to.
    pub(super) fn carried(&self, id: PanId) -> Exposures {
        self.pans
            .get(&id)
            .map_or(UNKNOWN, |p| p.oil.and(p.own.unwrap_or(UNKNOWN)))
    }

    /// Takes in one entry; entries come in oil order.
    pub(super) fn apply(&mut self, entry: &Entry, book: &Book) {
        match &entry.fact {
            Fact::Pan(pan) => {
                let met = self.pans.or_default(pan.pan);
                // Oil does not forget what it fried because something else is fried in it from now on.
                if let Some(before) = met.own.filter(|_| met.filled) {
                    met.oil = met.oil.and(before);
                }
                met.own = Some(pan.exposures());
                met.fat = met.fat.or(Some(pan.fat));
            }
            Fact::Machine(machine) => {
                // Set-up repeats what was held with every change of a name; only a new word on it says something.
                let met = self.machines.or_default(machine.machine);
                if met.held != Some(machine.held) {
                    met.held = Some(machine.held);
                    met.meet(meeting(entry, None, machine.held.exposures()));
                }
            }
            Fact::Fill(fill) => {
                let pan = self.pans.or_default(fill.pan);
                (pan.fat, pan.filled) = (Some(fill.fat), true);
                pan.oil = pan.oil.and(fill.fat.exposures());
            }
            Fact::TopUp(topup) => {
                let pan = self.pans.or_default(topup.pan);
                pan.oil = pan.oil.and(topup.fat.exposures());
            }
            Fact::OilChange(change) => {
                let pan = self.pans.or_default(change.pan);
                // What it fries today goes into the next oil as well.
                let today = book.day_of(entry.at, entry.off_min);
                pan.filled = false;
                pan.oil = pan
                    .job
                    .filter(|(day, _)| *day == today)
                    .map_or(Exposures::NONE, |(_, food)| food);
            }
            Fact::PanJob(job) => {
                let pan = self.pans.or_default(job.pan);
                pan.oil = pan.oil.and(job.food);
                pan.job = Some((job.day, job.food));
            }
            Fact::Move(moved) => match (moved.from, moved.to) {
                (Vessel::Pan(from), Vessel::Pan(to)) => self.moved(from, to),
                (Vessel::Pan(from), Vessel::Machine(machine)) => self.parked(entry, from, machine),
                (Vessel::Machine(machine), Vessel::Pan(to)) => self.unparked(machine, to),
                (Vessel::Machine(_), Vessel::Machine(_)) => {}
            },
            Fact::Run(run) => {
                if let Some(machine) = run.machine.filter(|_| oil_out(run)) {
                    self.through(entry, run.pan, machine);
                }
                self.used_since(entry, run.machine, &run.evidence);
            }
            Fact::RunNoted(noted) => self.noted(entry, noted),
            Fact::Job(job) => self.job(entry, job),
            Fact::MachineCleaned(cleaned) => {
                let machine = self.machines.or_default(cleaned.machine);
                machine.met.clear();
                machine.last_fat = None;
            }
            Fact::Kitchen(_)
            | Fact::Person(_)
            | Fact::Instrument(_)
            | Fact::PartChange(_)
            | Fact::Service(_)
            | Fact::Closed(_)
            | Fact::Reading(_)
            | Fact::Sign(_)
            | Fact::Note(_)
            | Fact::ClaimLost(_)
            | Fact::ClaimRestored(_)
            | Fact::Correct(_)
            | Fact::AllergensChecked(_)
            | Fact::Practised(_)
            | Fact::Trouble(_)
            | Fact::Newer(_) => {}
        }
    }

    fn moved(&mut self, from: PanId, to: PanId) {
        let brought = self.carried(from);
        let fat = self.pans.get(&from).and_then(|p| p.fat);
        self.took_in(to, brought, fat);
    }

    /// Parked oil leaves what it carries in the machine. What the machine held it meets there, and has with it when it
    /// comes out again.
    fn parked(&mut self, entry: &Entry, pan: PanId, machine: MachineId) {
        let brought = self.carried(pan);
        let fat = self.pans.get(&pan).and_then(|p| p.fat);
        let met = self.machines.or_default(machine);
        met.meet(meeting(entry, Some(pan), brought));
        met.last_fat = Some(fat.unwrap_or(Fat::Blend));
    }

    fn unparked(&mut self, machine: MachineId, to: PanId) {
        let met = self.machines.or_default(machine);
        let unknown = if met.held.is_some() { Exposures::NONE } else { UNKNOWN };
        let (brought, fat) = (met.set().and(unknown), met.last_fat);
        self.took_in(to, brought, fat);
    }

    fn took_in(&mut self, pan: PanId, brought: Exposures, fat: Option<Fat>) {
        let to = self.pans.or_default(pan);
        (to.oil, to.filled) = (to.oil.and(brought), true);
        if to.fat != fat {
            to.fat = Some(Fat::Blend);
        }
    }

    /// A pan's oil went through a machine: each takes on what the other held.
    fn through(&mut self, entry: &Entry, pan: PanId, machine: MachineId) {
        let brought = self.carried(pan);
        let fat = self.pans.get(&pan).and_then(|p| p.fat);
        let met = self.machines.or_default(machine);
        let took = met.set();
        met.meet(meeting(entry, Some(pan), brought));
        met.last_fat = Some(fat.unwrap_or(Fat::Blend));
        met.line_empty = false;
        let oil = &mut self.pans.or_default(pan).oil;
        *oil = oil.and(took);
    }

    fn noted(&mut self, entry: &Entry, noted: &RunNoted) {
        match (noted.how, noted.machine) {
            (Grade::NotDone, _) => {}
            (Grade::Unguided, Some(machine)) => self.through(entry, noted.pan, machine),
            (Grade::Unguided, None) => {
                self.somewhere(entry, None);
                let oil = &mut self.pans.or_default(noted.pan).oil;
                *oil = oil.and(UNKNOWN);
            }
        }
    }

    fn job(&mut self, entry: &Entry, job: &JobFact) {
        self.used_since(entry, job.machine, &job.evidence);
        if let (Some(machine), Some(line)) = (job.machine, job.evidence.word(Item::Line)) {
            self.machines.or_default(machine).line_empty = line == Word::RunEmpty;
        }
        let unguided = job.event == JobEvent::Noted && job.how == Some(Grade::Unguided);
        if unguided && job.what == JobKind::Filter {
            match (job.pan, job.machine) {
                (Some(pan), Some(machine)) => self.through(entry, pan, machine),
                (Some(_) | None, _) => self.somewhere(entry, job.machine),
            }
        }
    }

    /// "Did it run without me?" answered yes, or by nobody.
    fn used_since(&mut self, entry: &Entry, machine: Option<MachineId>, evidence: &Evidence) {
        if evidence.is(Item::UsedSince, Word::Yes) || evidence.is(Item::UsedSince, Word::NotKnown) {
            self.somewhere(entry, machine);
        }
    }

    /// Something unknown went through this machine, or, when nobody says which, through any of them.
    fn somewhere(&mut self, entry: &Entry, machine: Option<MachineId>) {
        let met = meeting(entry, None, UNKNOWN);
        match machine {
            Some(id) => self.machines.or_default(id).meet(met),
            None => self.machines.values_mut().for_each(|m| m.meet(met)),
        }
    }
}

const fn meeting(entry: &Entry, pan: Option<PanId>, set: Exposures) -> Met {
    Met {
        id: entry.id,
        at: entry.at,
        pan,
        set,
    }
}
