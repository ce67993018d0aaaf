//! Each kind of log entry by name, for the log's list and its filter.

use crate::domain::facts::Fact;
use crate::domain::facts::job::JobEvent;
use crate::domain::facts::run::RunEvent;

use super::Lang;

/// What kind of entry it is.
#[must_use]
pub const fn fact_name(fact: &Fact, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match fact {
        Fact::Kitchen(_) => "Kitchen set up",
        Fact::Person(_) => "Person set up",
        Fact::Pan(_) => "Pan set up",
        Fact::Machine(_) => "Machine set up",
        Fact::Instrument(_) => "Instrument set up",
        Fact::Fill(_) => "Fresh oil in",
        Fact::TopUp(_) => "Top-up",
        Fact::PartChange(_) => "Part-change",
        Fact::Move(_) => "Oil moved",
        Fact::OilChange(_) => "Oil change",
        Fact::Service(_) => "Service worked",
        Fact::PanJob(_) => "Job for the day",
        Fact::Closed(_) => "Closed",
        Fact::Reading(_) => "Reading",
        Fact::Sign(_) => "Sign",
        Fact::Note(_) => "Note",
        Fact::ClaimLost(_) => "Kept-for lost",
        Fact::ClaimRestored(_) => "Kept-for restored",
        Fact::Correct(_) => "Correction",
        Fact::Job(_) => "Job",
        Fact::Run(_) => "Run",
        Fact::RunNoted(_) => "Run, without the guide",
        Fact::MachineCleaned(_) => "Machine strip-cleaned",
        Fact::AllergensChecked(_) => "Allergen sheet gone through",
        Fact::Practised(_) => "Practice",
        Fact::Trouble(_) => "Something went wrong",
        Fact::Newer(_) => "From a newer app",
    }
}

/// What happened in a job.
#[must_use]
pub const fn job_event_name(event: JobEvent, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match event {
        JobEvent::Opened => "begun",
        JobEvent::Proved => "hold proved",
        JobEvent::Broken => "asked again",
        JobEvent::Answered => "answered",
        JobEvent::HeaterOn => "heater seen on",
        JobEvent::HeaterOff => "heater seen off",
        JobEvent::Away => "putting away begun",
        JobEvent::LeftOpen => "left with a look owed",
        JobEvent::Looked => "looked",
        JobEvent::Ended => "ended",
        JobEvent::Noted => "noted",
    }
}

/// What happened in a run.
#[must_use]
pub const fn run_event_name(event: RunEvent, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match event {
        RunEvent::Began => "begun",
        RunEvent::Answered => "answered",
        RunEvent::Pump => "pump",
        RunEvent::Stopped => "stopped",
        RunEvent::Resumed => "made safe, resumed",
        RunEvent::Reverified => "looked at again",
        RunEvent::Fault => "fault",
        RunEvent::Ended => "ended",
    }
}
