//! What screens, the guide and oil life ask of the ledger.

use crate::domain::claim::Exposures;
use crate::domain::entry::Entry;
use crate::domain::evidence::{self, Item};
use crate::domain::facts::Fact;
use crate::domain::facts::job::JobKind;
use crate::domain::facts::run::Contents;
use crate::domain::facts::setup::{Claim, Pan};
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, JobId, MachineId, PanId, PersonId, RunId};
use crate::domain::print::Print;
use crate::domain::procedure::StepId;
use crate::domain::time::{Day, Millis};
use crate::domain::trouble::Standing;

use super::Ledger;
use super::allergens::Checked;
use super::claims::{Evening, Lost};
use super::contents::{InPan, is_oil};
use super::exposures::Met;
use super::fill::PanFill;
use super::lines::Line;
use super::runs::{JobState, RunState};
use super::sheet::{FilterDone, NotDone, PanDay, PutOff, Word};
use super::tanks::Parked;

impl Ledger {
    /// Every entry with what became of it, in order of cause.
    pub fn lines(&self) -> impl DoubleEndedIterator<Item = Line<'_>> {
        self.lines.all()
    }

    /// One entry with what became of it.
    #[must_use]
    pub fn line(&self, id: EntryId) -> Option<Line<'_>> {
        self.lines.find(id)
    }

    /// Entries of a kind or version this app does not know.
    #[must_use]
    pub const fn newer(&self) -> usize {
        self.newer
    }

    /// Every fill of a pan, in oil order.
    #[must_use]
    pub fn fills(&self, pan: PanId) -> &[PanFill] {
        self.fills.pan(pan).map_or(&[], |oil| &oil.fills)
    }

    /// The oil in a pan now; `None` when the log knows of none.
    #[must_use]
    pub fn fill(&self, pan: PanId) -> Option<&PanFill> {
        self.fills.open(pan)
    }

    /// The print of every fill that ended, and of the set-up: what finished fills can teach rests on nothing else.
    #[must_use]
    pub fn ended_print(&self) -> Print {
        self.book.print.and(self.fills.ended)
    }

    /// The print of all that the life of a pan's oil can rest on: its own fill, every fill of the kitchen that ended,
    /// and the set-up. It is the same for as long as they are.
    #[must_use]
    pub fn oil_print(&self, pan: PanId) -> Print {
        let now = self.fill(pan).map_or(Print::NONE, |fill| fill.print);
        let out = self.fills.pan(pan).and_then(|oil| oil.out);
        let now = out.map_or(now, |out| now.with(out.since.0.cast_unsigned()));
        self.ended_print().and(now)
    }

    /// When a run took a pan's oil out, while it is not all back.
    #[must_use]
    pub fn out_since(&self, pan: PanId) -> Option<Millis> {
        self.fills.pan(pan)?.out.map(|out| out.since)
    }

    /// What stands in a machine: oil that was parked there, and oil that runs have in it.
    #[must_use]
    pub fn tank(&self, machine: MachineId) -> Vec<Parked> {
        let mut all = self.parked();
        all.retain(|parked| parked.machine == machine);
        all
    }

    /// Oil that stands in any machine.
    #[must_use]
    pub fn parked(&self) -> Vec<Parked> {
        self.fills.parked()
    }

    /// The oil that was in a pan at a moment.
    #[must_use]
    pub fn fill_at(&self, pan: PanId, at: Millis) -> Option<&PanFill> {
        let fill = self.fills(pan).iter().rev().find(|f| f.at <= at)?;
        Some(fill).filter(|f| f.ended.is_none_or(|end| at < end.at))
    }

    /// Entries about a pan's oil at a time when the log knows of no oil in it.
    #[must_use]
    pub fn loose(&self, pan: PanId) -> &[EntryId] {
        self.fills.pan(pan).map_or(&[], |oil| &oil.loose)
    }

    /// When fills and oil changes of a pan happened, in oil order.
    #[must_use]
    pub fn change_marks(&self, pan: PanId) -> &[(Millis, EntryId)] {
        self.fills.pan(pan).map_or(&[], |oil| &oil.marks)
    }

    /// What a machine has met since its last strip-clean.
    #[must_use]
    pub fn machine_exposures(&self, machine: MachineId) -> Exposures {
        self.meetings.of_machine(machine, &self.book)
    }

    /// Each meeting of a machine since its last strip-clean, so that a refusal can name its cause.
    #[must_use]
    pub fn machine_met(&self, machine: MachineId) -> &[Met] {
        self.meetings.met(machine)
    }

    /// The fat that last went through a machine since its last strip-clean; a blend where two met.
    #[must_use]
    pub fn last_fat(&self, machine: MachineId) -> Option<Fat> {
        self.meetings.last_fat(machine)
    }

    /// Whether a fat that sets went through a machine last, and nobody saw hose and line run empty since.
    #[must_use]
    pub fn set_in_line(&self, machine: MachineId) -> bool {
        self.meetings.set_in_line(machine)
    }

    /// Whether blocks of fat went into a pan since it was last seen liquid.
    #[must_use]
    pub fn has_blocks(&self, pan: PanId) -> bool {
        self.blocks.has(pan)
    }

    /// What a pan and the oil in it carry: its food, its fat, and what came with oil or through machines.
    #[must_use]
    pub fn pan_exposures(&self, pan: PanId) -> Exposures {
        self.meetings.of_pan(pan, &self.book)
    }

    /// What came with the oil that is in a pan, whatever else is fried in it.
    #[must_use]
    pub fn oil_exposures(&self, pan: PanId) -> Exposures {
        self.meetings.of_oil(pan)
    }

    /// The claims of a pan that stand on a day, by all that is said up to its end: set up for it or begun in it, and
    /// not lost since. One begun for an evening counts for all of its day, so this is what to refuse by.
    #[must_use]
    pub fn claims_standing(&self, pan: PanId, day: Day) -> Vec<Claim> {
        self.standing(pan, day, None)
    }

    /// The claims of a pan that stood at a moment of a day, to the minute.
    #[must_use]
    pub fn claims_at(&self, pan: PanId, day: Day, at: Millis) -> Vec<Claim> {
        self.standing(pan, day, Some(at))
    }

    /// The claims of a pan to be shown as standing now. A clock that runs behind the log brings no lost claim back.
    #[must_use]
    pub fn claims_now(&self, pan: PanId, day: Day, now: Millis) -> Vec<Claim> {
        let mut claims = self.claims_standing(pan, day);
        let over = |what| self.claims.evenings(pan).any(|e| e.what == what && e.until < now);
        let listed = |what| {
            self.book
                .pan(pan)
                .is_some_and(|p| p.claims_on(day).any(|c| c.what == what))
        };
        claims.retain(|claim| !over(claim.what) || listed(claim.what));
        claims
    }

    fn standing(&self, pan: PanId, day: Day, at: Option<Millis>) -> Vec<Claim> {
        let pan = self.book.pan(pan);
        pan.map_or_else(Vec::new, |pan| self.claims.standing(pan, day, at))
    }

    /// The claims of a pan that are lost on a day, with when and by what.
    #[must_use]
    pub fn claims_lost(&self, pan: PanId, day: Day) -> Vec<Lost> {
        let pan = self.book.pan(pan);
        pan.map_or_else(Vec::new, |pan| self.claims.lost(pan, day))
    }

    /// The claims of a pan begun for an evening and not lost since, over or not.
    pub fn evenings(&self, pan: PanId) -> impl Iterator<Item = Evening> {
        self.claims.evenings(pan)
    }

    /// The ends of all evenings there were, so that a screen knows when one is over.
    #[must_use]
    pub fn evening_ends(&self) -> Vec<Millis> {
        let pans = self.book.pans.keys();
        pans.flat_map(|pan| self.evenings(*pan)).map(|e| e.until).collect()
    }

    /// The fat last put in a pan, else what it is kept with.
    #[must_use]
    pub fn fat_in(&self, pan: &Pan) -> Fat {
        self.allergens.fat(pan)
    }

    /// The allergen sheet as it was last gone through.
    #[must_use]
    pub const fn allergens_checked(&self) -> Option<&Checked> {
        self.allergens.checked.as_ref()
    }

    /// The first entry since then that asks for another look.
    #[must_use]
    pub const fn allergens_opened(&self) -> Option<EntryId> {
        self.allergens.opened
    }

    /// Guided runs a person did alone from begin to end, filtered, without fault or stop.
    #[must_use]
    pub fn clean_runs(&self, person: PersonId) -> u32 {
        self.runs.clean(person)
    }

    /// One run.
    #[must_use]
    pub fn run(&self, id: RunId) -> Option<&RunState> {
        self.runs.run(id)
    }

    /// Runs that were begun and not ended, in order of cause.
    pub fn open_runs(&self) -> impl DoubleEndedIterator<Item = &RunState> {
        self.runs.open_runs()
    }

    /// The runs of one job, the newest first.
    pub fn runs_of(&self, job: JobId) -> impl Iterator<Item = &RunState> {
        self.runs.runs().rev().filter(move |run| run.job == job)
    }

    /// One job.
    #[must_use]
    pub fn job(&self, id: JobId) -> Option<&JobState> {
        self.runs.job(id)
    }

    /// The last job of a kind, open or not.
    #[must_use]
    pub fn last_job(&self, kind: JobKind) -> Option<&JobState> {
        self.runs.last_job(kind)
    }

    /// The job of a kind that is open: not ended, and nobody has left it with a look owed.
    #[must_use]
    pub fn open_job(&self, kind: JobKind) -> Option<JobId> {
        let open = |job: &&JobState| job.what == kind && job.ended.is_none() && job.owed.is_none();
        self.runs.jobs().rev().find(open).map(|job| job.job)
    }

    /// Who put a machine away dry and built, the last time it was put away with the guide; nobody where it was left
    /// otherwise.
    #[must_use]
    pub fn left_ready_by(&self, machine: MachineId) -> Option<PersonId> {
        let mut jobs = self.runs.jobs().rev();
        let last =
            jobs.find(|job| job.what == JobKind::Filter && job.machine == Some(machine) && job.ended.is_some())?;
        let mut lines = last.lines.iter().rev().filter_map(|place| self.lines.at(*place));
        lines.find_map(|line| how_left(line.written()))?
    }

    /// The lock-ups that people left with a look still owed, in order of cause.
    pub fn looks_owed(&self) -> impl Iterator<Item = &JobState> {
        self.runs.jobs().filter(|job| job.owed.is_some())
    }

    /// The pans that stand empty or without all of their oil and must not be lit, in name order, pans out of use last.
    #[must_use]
    pub fn empties(&self) -> Vec<PanId> {
        let stands = |pan: &PanId| self.oil_left(*pan).is_some() || self.emptied(*pan);
        let named: Vec<PanId> = self.book.pans_in_use().iter().map(|p| p.pan).filter(stands).collect();
        let rest = self.book.pans.keys().copied().chain(self.contents.pans());
        let mut all = named;
        for pan in rest.filter(stands) {
            if !all.contains(&pan) {
                all.push(pan);
            }
        }
        all
    }

    /// What the log says last of a pan and of its oil: what is in it, since when, and whether its tag hangs. `None`
    /// where no run, job, fill or oil change has said anything yet.
    #[must_use]
    pub fn in_pan(&self, pan: PanId) -> Option<&InPan> {
        self.contents.of(pan)
    }

    /// The same, while the pan does not hold all of its oil.
    #[must_use]
    pub fn oil_left(&self, pan: PanId) -> Option<&InPan> {
        self.in_pan(pan).filter(|left| !left.is_home())
    }

    /// What is in a pan, for every guide: an oil change dated back is believed over a run that brought its oil home.
    #[must_use]
    pub fn contents(&self, pan: PanId) -> Contents {
        let said = self.in_pan(pan).map_or(Contents::Oil, |left| left.contents);
        if is_oil(said) && self.emptied(pan) {
            Contents::EmptyWet
        } else {
            said
        }
    }

    /// Whether the last of fills and oil changes was an oil change.
    fn emptied(&self, pan: PanId) -> bool {
        self.fills.pan(pan).is_some_and(|oil| oil.emptied)
    }

    /// Whether a pan was last seen with its oil below the mark and nothing went in since, or a move left it under that.
    #[must_use]
    pub fn is_low(&self, pan: PanId) -> bool {
        let min = self.book.pan(pan).map(|p| p.min);
        let under = || {
            min.zip(self.fill(pan))
                .is_some_and(|(min, fill)| fill.is_left_under(min))
        };
        self.lows.has(pan) || under()
    }

    /// The troubles nobody has said are over, oldest first.
    #[must_use]
    pub fn troubles(&self) -> &[Standing] {
        self.troubles.standing()
    }

    /// The sheet of one pan on one trading day, if anything was logged for it.
    #[must_use]
    pub fn pan_day(&self, pan: PanId, day: Day) -> Option<&PanDay> {
        self.days.sheet(pan, day)
    }

    /// What the log says of a pan's filtering on a day.
    #[must_use]
    pub fn word(&self, pan: PanId, day: Day) -> Word {
        self.book.pan(pan).map_or(Word::Silent, |pan| self.days.word(pan, day))
    }

    /// Somebody's word that a pan was not filtered on a day.
    #[must_use]
    pub fn not_done(&self, pan: PanId, day: Day) -> Option<&NotDone> {
        self.days.not_done(pan, day)
    }

    /// That a pan's filtering was put off to `day`; `None` when it was filtered since, or nobody said so.
    #[must_use]
    pub fn put_off(&self, pan: PanId, day: Day) -> Option<PutOff> {
        self.days.put_off(&self.book, self.book.pan(pan)?, day)
    }

    /// The pans in use that were used on a day, are not filtered in it and not noted as not done, rhythm respected.
    #[must_use]
    pub fn due(&self, day: Day) -> Vec<PanId> {
        let due = |pan: &&Pan| self.days.word(pan, day) == Word::Due;
        self.book.pans_in_use().into_iter().filter(due).map(|p| p.pan).collect()
    }

    /// Trading days before `today`, oldest first, on which the morning still has to ask about some pan.
    #[must_use]
    pub fn unanswered_nights(&self, today: Day) -> Vec<Day> {
        self.days.unanswered(&self.book, today)
    }

    /// The pans in use the morning has to ask about for a day, in name order.
    #[must_use]
    pub fn unanswered_pans(&self, day: Day) -> Vec<PanId> {
        let pans = self.book.pans_in_use().into_iter();
        pans.filter(|p| self.days.is_open(&self.book, p, day))
            .map(|p| p.pan)
            .collect()
    }

    /// Days of use in a row, back from `today`, on which the pan was filtered whenever it was due.
    #[must_use]
    pub fn filter_streak(&self, pan: PanId, today: Day) -> u32 {
        self.book
            .pan(pan)
            .map_or(0, |pan| self.days.streak(&self.book, pan, today))
    }

    /// The last filtering of a pan.
    #[must_use]
    pub fn last_filtered(&self, pan: PanId) -> Option<&FilterDone> {
        self.days.last_filtered(pan)
    }
}

/// For the entry that says how a machine was put away: who left it ready, if it was.
fn how_left(entry: &Entry) -> Option<Option<PersonId>> {
    let Fact::Job(fact) = &entry.fact else {
        return None;
    };
    let ready = fact.evidence.is(Item::Machine, evidence::Word::Ready);
    (fact.step == Some(StepId::AwayMachine)).then(|| entry.who.filter(|_| ready))
}
