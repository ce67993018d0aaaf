//! Everything the log can say, one variant a kind.

pub mod closed;
pub mod job;
pub mod oil;
pub mod pan_job;
pub mod rhythm;
pub mod run;
pub mod setup;
pub mod trouble;

use super::ids::{EntryId, MachineId, PanId, PersonId, RunId};
use super::time::Millis;

/// A fact, in the past tense: it happened, and applying it cannot fail.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fact {
    /// The kitchen as set up, whole.
    Kitchen(Box<setup::Kitchen>),
    /// A person as set up, whole.
    Person(setup::Person),
    /// A pan as set up, whole.
    Pan(Box<setup::Pan>),
    /// A filter machine or hand kit as set up, whole.
    Machine(Box<setup::Machine>),
    /// An instrument as set up, whole.
    Instrument(setup::Instrument),
    /// Oil put into an empty pan; a fill begins.
    Fill(oil::Fill),
    /// Fresh oil added.
    TopUp(oil::TopUp),
    /// Some out, fresh in; the fill goes on.
    PartChange(oil::PartChange),
    /// Oil from one pan or machine to another.
    Move(oil::Move),
    /// All oil out; the fill ends and the pan stands empty until a fill.
    OilChange(oil::OilChange),
    /// A service worked, or not.
    Service(oil::Service),
    /// A pan does another's job for a day.
    PanJob(pan_job::PanJob),
    /// Days without trade.
    Closed(closed::Closed),
    /// A measured number.
    Reading(oil::Reading),
    /// Something seen, smelt or tasted.
    Sign(oil::Sign),
    /// Words.
    Note(oil::Note),
    /// A claim lost.
    ClaimLost(oil::ClaimChange),
    /// A claim restored.
    ClaimRestored(oil::ClaimRestored),
    /// A later word on an earlier entry.
    Correct(Correct),
    /// Something in a light-up, filter job or lock-up.
    Job(Box<job::JobFact>),
    /// Something in a pan's run.
    Run(Box<run::RunFact>),
    /// A run done without the guide, or not done.
    RunNoted(RunNoted),
    /// A machine strip-cleaned by a named person.
    MachineCleaned(MachineCleaned),
    /// The allergen sheet gone through by a named person.
    AllergensChecked(AllergensChecked),
    /// A practice run went into somebody's training record.
    Practised(Practised),
    /// A day that goes wrong.
    Trouble(Box<trouble::TroubleFact>),
    /// An entry of a kind or version this app does not know; the store keeps its bytes.
    Newer(Newer),
}

/// Kind and version of an entry a newer app wrote.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Newer {
    /// The kind's name.
    pub kind: String,
    /// The version of its body.
    pub v: u32,
}

/// A later word on an earlier entry; the last in order of cause wins.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Correct {
    /// The entry it speaks of.
    pub of: EntryId,
    /// Why, in words.
    pub why: String,
    /// What it says.
    pub how: Correction,
}

/// What a correction says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Correction {
    /// It did not happen.
    Void,
    /// It happened, but otherwise: whichever is given replaces what stood there.
    Amend {
        /// The right moment.
        at: Option<Millis>,
        /// The zone's offset at that moment, in minutes.
        off_min: Option<i16>,
        /// The whole right body, of the same kind.
        fact: Option<Box<Fact>>,
    },
}

/// A run done without the guide, or not done, in one touch and a reason. It proves no hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RunNoted {
    /// The pan.
    pub pan: PanId,
    /// The machine used; when nobody says, every machine becomes unknown.
    pub machine: Option<MachineId>,
    /// Which of the two.
    pub how: job::Grade,
    /// Why not, or what was done.
    pub why: Option<String>,
}

/// A machine taken apart and cleaned: what it has met is forgotten.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MachineCleaned {
    /// The machine.
    pub machine: MachineId,
    /// How it was cleaned.
    pub how: String,
    /// Who did it.
    pub by: PersonId,
}

/// The allergen sheet as somebody went through it. It stands until what it says, or the oil it speaks of, changes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AllergensChecked {
    /// What it said, in its short form.
    pub sheet: String,
    /// Why it was gone through, or what was found.
    pub why: Option<String>,
}

/// A practice run that was counted for a person. No fold of oil, runs or day sheets reads it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Practised {
    /// The starter.
    pub person: PersonId,
    /// The practice run.
    pub run: RunId,
    /// How it went.
    pub result: String,
}
