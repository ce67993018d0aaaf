//! Every reason the guide says no, in words: what is wrong, what would clear it, what to do meanwhile, and who can
//! change the limit. A refusal is calm: nothing has moved, and it says so by saying what comes next.

use crate::domain::day_jobs;
use crate::domain::facts::run::Contents;
use crate::domain::guide::Refusal;
use crate::domain::heat::cool_down::{self, KITCHEN_AIR_C};
use crate::domain::ids::PanId;
use crate::domain::limits::MANUAL_MAX;
use crate::domain::procedure::Hold;
use crate::domain::units::Temp;

use super::screens::job::{self, JobSay};
use super::{Lang, answers, format, holds, oil, run, setup, steps, wrong_days};

/// A refusal in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// What is wrong, short enough for a heading.
    pub wrong: String,
    /// What would clear it.
    pub clears: String,
    /// What to do meanwhile.
    pub meanwhile: String,
    /// Who can change the limit, where there is one.
    pub who: Option<String>,
}

impl Said {
    pub(super) fn new(wrong: impl Into<String>, clears: impl Into<String>, meanwhile: impl Into<String>) -> Self {
        Self {
            wrong: wrong.into(),
            clears: clears.into(),
            meanwhile: meanwhile.into(),
            who: None,
        }
    }

    /// A hold that is shut: nobody passes it, and its limits are the owner's.
    pub(super) fn of_hold(wrong: impl Into<String>, hold: Hold, lang: Lang) -> Self {
        Self {
            who: Some(holds::who_can_change(lang).to_owned()),
            ..Self::new(wrong, holds::hold_opens(hold, lang), holds::hold_meanwhile(hold, lang))
        }
    }
}

const OWNER_SIGNS: &str = "The owner signs people off in the office, under People, never during a run.";
const OWNER_SETS: &str = "The owner keeps people, pans and machines in set-up.";
pub(super) const NOTHING_MOVED: &str = "Nothing has moved. Go back and look at what is asked now.";

/// What a refusal says.
#[must_use]
pub fn refusal(refusal: &Refusal, lang: Lang) -> Said {
    let Lang::En = lang;
    match refusal {
        Refusal::NoJob => Said::new(
            "No filter job is open",
            "Begin one from Today.",
            "Nothing has moved. Leave the pans as they are.",
        ),
        Refusal::JobOpen => Said::new("A filter job is open already", "Go on with that one.", NOTHING_MOVED),
        Refusal::NoRun => Said::new("No pan is in hand", "Choose a pan first.", NOTHING_MOVED),
        Refusal::RunOpen => Said::new(
            "A pan is still in hand",
            "Finish that pan first, or stop it and leave it safe.",
            NOTHING_MOVED,
        ),
        Refusal::OtherStep { now_at } => Said::new(
            "Another step is asked now",
            now_at.map_or("Go back and look at the screen.", |step| steps::step_line(step, lang)),
            NOTHING_MOVED,
        ),
        Refusal::Unanswered { item } => Said::new(
            format!("Still to be seen: {}", answers::noun(*item, lang).to_ascii_lowercase()),
            "Look at it, then answer.",
            NOTHING_MOVED,
        ),
        Refusal::NotSo { item, word } => Said::new(
            word.map_or_else(
                || format!("{}: not as it must be", answers::noun(*item, lang)),
                |word| answers::label(*item, word, lang),
            ),
            "Put it right, look again, then answer.",
            "Nothing goes on until it is as it must be.",
        ),
        Refusal::NoOilInIt { contents } => Said::new(
            match contents {
                Contents::CleaningWater => "There is water in this pan",
                Contents::Oil | Contents::SetFat | Contents::EmptyWet | Contents::EmptyDry => {
                    "There is no oil in this pan"
                }
            },
            "Fresh oil in it, or its own back, into a dry pan.",
            "The tag stays on its control. Heat stays off.",
        ),
        Refusal::ReadyFirst { hold } => Said::of_hold(
            format!("{} is to be seen first", holds::hold_name(*hold, lang)),
            *hold,
            lang,
        ),
        Refusal::TooSmall { needs, has } => Said::of_hold(
            format!(
                "The tank is too small: hot, this pan needs {}, the tank takes {}",
                format::litres(*needs),
                format::litres(*has)
            ),
            Hold::Room,
            lang,
        ),
        Refusal::MachineHolds { .. } => Said::new(
            "The log says that oil stands in this machine",
            "Bring it back first. If it is gone, log the oil change of its pan.",
            holds::hold_meanwhile(Hold::Room, lang),
        ),
        Refusal::NothingParked => Said::new(
            "This pan has no oil, and none is parked in this machine",
            "Choose the machine that holds it, or log the fill.",
            "The pan stays EMPTY: do not light it.",
        ),
        Refusal::OtherFat { fat } => Said::new(
            format!(
                "Parked in the machine: {}",
                format::first_low(oil::fat_name(*fat, lang))
            ),
            "Choose a pan kept with that fat.",
            "The oil stays where it is.",
        ),
        Refusal::PanTooSmall { needs, has } => Said::new(
            format!(
                "{} stand in the machine; this pan holds {}",
                format::litres(*needs),
                format::litres(*has)
            ),
            "Choose a larger pan.",
            "The oil stays where it is.",
        ),
        Refusal::ClaimMeets { claim, exposure, .. } => Said::of_hold(
            format!(
                "{} would meet: {}",
                setup::claim_name(*claim, lang),
                setup::exposure_name(*exposure, lang).to_ascii_lowercase()
            ),
            Hold::Match,
            lang,
        ),
        Refusal::TooCool { .. }
        | Refusal::TooHot { .. }
        | Refusal::ReadingTooOld
        | Refusal::ReasonNeeded
        | Refusal::SetAtForty => temperature(refusal, lang),
        Refusal::WarmUpNotBegun | Refusal::WarmingUp { .. } | Refusal::WarmUpExpired | Refusal::NoSolidFat => {
            warm_up(refusal, lang)
        }
        Refusal::NoSuchPerson
        | Refusal::NotSignedOff { .. }
        | Refusal::UnderAge
        | Refusal::SupervisorNotFit
        | Refusal::NoShortForm => person(refusal, lang),
        Refusal::NoSuchPan => named("This pan is not in use", "Choose a pan that is in use."),
        Refusal::NoSuchMachine => named("This machine is not known here", "Choose a machine from the list."),
        Refusal::WrongMachine => named(
            "This machine does not work this way",
            "Oil goes back the way it came: choose the machine, or the hand kit, that holds it.",
        ),
        Refusal::AskTime => Said::new(
            "The clocks disagree",
            "Say whether the time shown is right.",
            "The wait counts as still running until somebody has looked.",
        ),
        Refusal::LookAgainFirst => Said::of_hold("Look again first", Hold::LookAgain, lang),
        Refusal::MakeSafeFirst => Said::new(
            "Make safe first",
            "Follow the lines on the screen, then say it is safe.",
            holds::hold_meanwhile(Hold::LookAgain, lang),
        ),
        Refusal::NothingToStop => Said::new("Nothing is running here", "Go back to the step.", NOTHING_MOVED),
        Refusal::OilOut => Said::new(
            "Oil is out of its pan",
            "Bring it back first, or leave it tagged.",
            "The heat of that pan stays off.",
        ),
        Refusal::HeaterOn => Said::new(
            "The machine's heater is still on",
            "Switch the heater off, say so, then end the job.",
            "Stay with the machine while it heats.",
        ),
        Refusal::OilInPan => Said::new("The oil is in its pan", "Go on from there.", NOTHING_MOVED),
        Refusal::LevelTooLow => Said::of_hold("Too low to be heated", Hold::Level, lang),
        Refusal::Trouble { what } => Said::new(
            wrong_days::refused(*what, lang),
            "Say that it is over, once you have seen it so: press Trouble.",
            "No oil goes out and no heat goes on. Oil that is out may come back.",
        ),
        Refusal::TroubleStands { what } => Said::new(
            wrong_days::name(*what, lang),
            "It stands in the log already: say that it is over.",
            NOTHING_MOVED,
        ),
        Refusal::NoTrouble => Said::new("That is over already", "Go on from there.", NOTHING_MOVED),
        Refusal::NameNeeded => Said::new(
            "Nobody was named",
            "Say who mended it.",
            "Leave it off and tagged till then.",
        ),
        Refusal::DoesNotSet => Said::new(
            "This fat does not set",
            "Say that the pan is left off, or lit again.",
            NOTHING_MOVED,
        ),
    }
}

/// How long a pan usually takes to cool so far, where it is worth saying.
fn usual_wait(read: Temp, to: Temp, lang: Lang) -> String {
    let Lang::En = lang;
    let celsius = |temp: Temp| f64::from(temp.dc()) / 10.0;
    let Some(wait) = cool_down::wait(celsius(read), celsius(to), KITCHEN_AIR_C, &[]) else {
        return String::new();
    };
    let about = |minutes: f64| {
        #[expect(clippy::cast_possible_truncation, reason = "some hours at most")]
        let whole = minutes.ceil() as i64;
        format::length(whole * 60, lang)
    };
    format!(" A usual pan takes {} to {}.", about(wait.soonest), about(wait.latest))
}

fn temperature(refusal: &Refusal, lang: Lang) -> Said {
    let Lang::En = lang;
    let shut = |wrong: String| Said::of_hold(wrong, Hold::Temperature, lang);
    match refusal {
        Refusal::TooCool { read, low } => {
            let (read, low) = (format::temp(*read), format::temp(*low));
            // Its heat was seen off earlier in this run: it may only go on again once the run is stopped.
            Said {
                clears: format!("A probe reading of at least {low}."),
                meanwhile: format!(
                    "STOP, then “{}”. Turn its heat on, stay by it, and begin it again once it is hot enough: heat off, probe again. \
                     Until then it is not emptied by machine, and over {} not by hand.",
                    job::say(JobSay::GiveUp, lang),
                    format::temp(MANUAL_MAX)
                ),
                ..shut(format!("Too cool: {read}. Pumped from {low}"))
            }
        }
        Refusal::TooHot { read, high } => {
            let usual = usual_wait(*read, *high, lang);
            let (read, high) = (format::temp(*read), format::temp(*high));
            Said {
                clears: format!("A probe reading of at most {high}."),
                meanwhile: format!(
                    "Heat stays off. Wait, stir, probe again.{usual} No time that passed says how hot oil is."
                ),
                ..shut(format!("Too hot: {read}. At most {high}"))
            }
        }
        Refusal::ReadingTooOld => Said {
            clears: "Probe the oil again: a reading counts for five minutes.".to_owned(),
            meanwhile: "The pump stays off. No time that passed says how hot oil is.".to_owned(),
            ..shut("The reading is too old".to_owned())
        },
        Refusal::ReasonNeeded => Said::new(
            "Off its target: say why",
            "One of the three reasons, or wait until it is nearer.",
            "The pump stays off.",
        ),
        _ => Said {
            who: Some("Nobody can: what sets cannot be poured.".to_owned()),
            ..Said::new(
                "This fat is set at 40 °C",
                "A pumped machine that takes solid fat, hot. There is no way out by hand.",
                "Leave it where it is, lid on, tag on the pan's control. Nobody carries it hot.",
            )
        },
    }
}

fn warm_up(refusal: &Refusal, lang: Lang) -> Said {
    let Lang::En = lang;
    let shut = |wrong: String| Said::of_hold(wrong, Hold::WarmUp, lang);
    match refusal {
        Refusal::WarmingUp { left_ms } => shut(format!(
            "The machine is still warming: {} more",
            format::length((left_ms + 999) / 1000, lang)
        )),
        Refusal::WarmUpExpired => shut("The machine has cooled again: its heater was off too long".to_owned()),
        Refusal::NoSolidFat => Said {
            clears:
                "A machine with a heater, or one whose manual takes solid fat. One that held it cold: strip-clean it."
                    .to_owned(),
            ..shut("This machine does not take solid fat".to_owned())
        },
        _ => shut("Fat may have set in the machine: its heater has not been on".to_owned()),
    }
}

fn person(refusal: &Refusal, lang: Lang) -> Said {
    let Lang::En = lang;
    let shut = |wrong: String| Said {
        who: Some(OWNER_SIGNS.to_owned()),
        ..Said::of_hold(wrong, Hold::Person, lang)
    };
    match refusal {
        Refusal::NotSignedOff { route } => Said {
            clears: "Somebody who is signed off takes over, or stands beside. In an open job: STOP, Another person."
                .to_owned(),
            ..shut(format!(
                "Not signed off for this route: {}",
                run::route_name(*route, lang).to_ascii_lowercase()
            ))
        },
        Refusal::UnderAge => shut("Under eighteen: never with hot oil".to_owned()),
        Refusal::SupervisorNotFit => shut("That person may not stand as supervisor here".to_owned()),
        Refusal::NoShortForm => Said::new(
            "The short form is not open here yet",
            "Ten clean guided runs, this fat, and nothing gone wrong in this job.",
            "Go on in the long form: same holds, every item asked.",
        ),
        _ => named("Nobody of that name works here", "Choose somebody from the list."),
    }
}

fn named(wrong: &str, clears: &str) -> Said {
    Said {
        who: Some(OWNER_SETS.to_owned()),
        ..Said::new(wrong, clears, NOTHING_MOVED)
    }
}

/// What light-up and lock-up say no with. `pan_name` gives a pan's own name.
#[must_use]
pub fn day_refusal(refused: &day_jobs::Refusal, pan_name: impl Fn(PanId) -> String, lang: Lang) -> Said {
    let Lang::En = lang;
    match refused {
        day_jobs::Refusal::Guide(why) => refusal(why, lang),
        day_jobs::Refusal::PanEmpty => Said::new(
            "This pan stands empty: do not light it",
            "Its oil back in it, above the mark.",
            "The tag stays on its control. Heat stays off.",
        ),
        day_jobs::Refusal::WaterInPan => Said::new(
            "There is water in this pan, and no oil: do not light it",
            "The boil-out finished, the pan dry, fresh oil in it above the mark.",
            "The tag stays on its control. Heat stays off.",
        ),
        day_jobs::Refusal::PanInJob => Said::new(
            "This pan is being changed or boiled out",
            "Finish that job first, or leave it as the job says.",
            "Heat stays off until then.",
        ),
        day_jobs::Refusal::PanInRun => Said::new(
            "This pan is in the filter job",
            "Finish its run first.",
            "Heat stays off until the run says how it is left.",
        ),
        day_jobs::Refusal::FoundFirst => Said::new(
            "Scraps were left outdoors",
            "Say what the look found, then light the pans.",
            "Look before you light anything.",
        ),
        day_jobs::Refusal::PanHalfLit { pan } => Said::new(
            format!("Pan {} is half lit", pan_name(*pan)),
            "Finish lighting it, or turn its heat off and see it off.",
            "Somebody stays with it.",
        ),
        day_jobs::Refusal::NotTenMinutes { left_ms } => Said::of_hold(
            format!(
                "The second probe is due in {}",
                format::length((left_ms + 999) / 1000, lang)
            ),
            Hold::Scraps,
            lang,
        ),
        day_jobs::Refusal::ScrapsSomewhere => Said::of_hold("There are scraps somewhere tonight", Hold::Scraps, lang),
        day_jobs::Refusal::LookerUnknown => Said::of_hold("Name who looks next", Hold::Scraps, lang),
        day_jobs::Refusal::LookNotAhead => Said::new(
            "The next look must lie ahead, within a day",
            "Give a time within the next day.",
            "Stay with the scraps until somebody is named.",
        ),
        day_jobs::Refusal::NoLookOwed => Said::new("No look is owed there", "Go back to Today.", NOTHING_MOVED),
        day_jobs::Refusal::WhyNot => Said::new("Say why it was not done", "A reason in a few words.", NOTHING_MOVED),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::domain::claim::{ClaimKind, Exposure};
    use crate::domain::ids::MachineId;
    use crate::domain::units::Volume;

    #[test]
    fn a_refusal_carries_the_figures_it_was_made_with() {
        let hot = Refusal::TooHot {
            read: Temp::celsius(191),
            high: Temp::celsius(180),
        };
        assert_eq!(
            refusal(&hot, Lang::En).wrong.replace(format::NBSP, " "),
            "Too hot: 191 °C. At most 180 °C"
        );
        // ln((191 − 25) / (180 − 25)) over 0.008 and 0.005 a minute: 8.6 and 13.7.
        let meanwhile = refusal(&hot, Lang::En).meanwhile.replace(format::NBSP, " ");
        assert!(meanwhile.contains("takes 9 min to 14 min."), "{meanwhile}");
        assert!(!meanwhile.contains("cool"));
        let cool = Refusal::TooCool {
            read: Temp::celsius(77),
            low: Temp::celsius(100),
        };
        let Said { clears, meanwhile, .. } = refusal(&cool, Lang::En);
        assert!(
            clears.replace(format::NBSP, " ").contains("at least 100 °C"),
            "{clears}"
        );
        assert!(
            !meanwhile.contains("hot:") && meanwhile.starts_with("STOP"),
            "{meanwhile}"
        );
        let small = Refusal::TooSmall {
            needs: Volume::from_ml(34_200).unwrap_or(Volume::NONE),
            has: Volume::from_ml(30_000).unwrap_or(Volume::NONE),
        };
        let wrong = refusal(&small, Lang::En).wrong;
        assert!(wrong.contains("34.2") && wrong.contains("30"), "{wrong}");
        let meets = Refusal::ClaimMeets {
            claim: ClaimKind::GlutenFree,
            exposure: Exposure::Gluten,
            machine: MachineId(1),
        };
        assert_eq!(
            refusal(&meets, Lang::En).wrong,
            "Gluten-free would meet: wheat or batter"
        );
    }
}
