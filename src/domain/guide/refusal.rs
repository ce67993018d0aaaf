//! Every reason the guide says no, carrying what its sentence will need.

use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::run::Contents;
use crate::domain::facts::setup::Route;
use crate::domain::facts::trouble::TroubleKind;
use crate::domain::fat::Fat;
use crate::domain::ids::{MachineId, PanId};
use crate::domain::procedure::{Hold, StepId};
use crate::domain::units::{Temp, Volume};

/// Why not.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Refusal {
    /// No job is open.
    NoJob,
    /// A job is open already.
    JobOpen,
    /// No pan's run is open.
    NoRun,
    /// A pan's run is open already.
    RunOpen,
    /// Another step is asked now.
    OtherStep {
        /// The one that is.
        now_at: Option<StepId>,
    },
    /// Something was not answered.
    Unanswered {
        /// What.
        item: Item,
    },
    /// Something is not as it must be.
    NotSo {
        /// What.
        item: Item,
        /// What it was seen to be.
        word: Option<Word>,
    },
    /// A hold of Ready has to be proved first.
    ReadyFirst {
        /// Which.
        hold: Hold,
    },
    /// Nobody of that id works here.
    NoSuchPerson,
    /// Not signed off for that route, and nobody named to stand beside.
    NotSignedOff {
        /// The route.
        route: Route,
    },
    /// Under eighteen: never in the hot route.
    UnderAge,
    /// The supervisor named may not supervise this, or is the same person.
    SupervisorNotFit,
    /// No such pan in use.
    NoSuchPan,
    /// No such machine.
    NoSuchMachine,
    /// That machine does not do that route.
    WrongMachine,
    /// The tank does not hold this pan when hot.
    TooSmall {
        /// Room needed.
        needs: Volume,
        /// Room there is.
        has: Volume,
    },
    /// The log knows of oil in the machine: it goes back, or is said to be gone, first.
    MachineHolds {
        /// The pan it is of.
        pan: PanId,
    },
    /// The pan has no oil, and none stands in the machine to be brought into it.
    NothingParked,
    /// What stands in the machine is another fat than the pan is kept with.
    OtherFat {
        /// The fat in the machine.
        fat: Fat,
    },
    /// The pan does not take all that stands in the machine.
    PanTooSmall {
        /// What stands there.
        needs: Volume,
        /// What the pan holds when full.
        has: Volume,
    },
    /// A claim would meet something the machine has met.
    ClaimMeets {
        /// The claim.
        claim: ClaimKind,
        /// What it must not meet.
        exposure: Exposure,
        /// The machine.
        machine: MachineId,
    },
    /// This fat is still set at 40 °C: there is no emptying by hand.
    SetAtForty,
    /// Cooler than the window.
    TooCool {
        /// What was read.
        read: Temp,
        /// The least.
        low: Temp,
    },
    /// Hotter than the window.
    TooHot {
        /// What was read.
        read: Temp,
        /// The most.
        high: Temp,
    },
    /// The reading is over five minutes old, or nobody can say how old.
    ReadingTooOld,
    /// Off target: a reason is needed.
    ReasonNeeded,
    /// Solid fat: the machine's heater has not been on.
    WarmUpNotBegun,
    /// Solid fat: still warming.
    WarmingUp {
        /// Milliseconds left.
        left_ms: i64,
    },
    /// The machine's heater was seen on in this job and not off since.
    HeaterOn,
    /// Solid fat: the heater has been off too long.
    WarmUpExpired,
    /// Solid fat in a machine with no heater, whose manual does not take it.
    NoSolidFat,
    /// The clocks disagree: somebody must say what time it is.
    AskTime,
    /// Heat, pump and place of the oil must be looked at first.
    LookAgainFirst,
    /// Stopped: make safe first.
    MakeSafeFirst,
    /// Nothing to stop.
    NothingToStop,
    /// Not while oil is out of its pan.
    OilOut,
    /// The oil is in its pan.
    OilInPan,
    /// There is water in the pan, or nothing: there is no oil to filter, and none goes onto water.
    NoOilInIt {
        /// What is in it.
        contents: Contents,
    },
    /// Too low to be heated.
    LevelTooLow,
    /// This fat does not set.
    DoesNotSet,
    /// A trouble stands that stops this.
    Trouble {
        /// Which.
        what: TroubleKind,
    },
    /// That trouble stands already.
    TroubleStands {
        /// Which.
        what: TroubleKind,
    },
    /// No such trouble stands.
    NoTrouble,
    /// Who mended it must be named.
    NameNeeded,
    /// The short form is not open to this person, pan or machine yet.
    NoShortForm,
}
