//! Why a quick entry is not written, or not yet: what is missing, what cannot be, what is asked once.

use crate::domain::facts::oil::Vessel;
use crate::domain::ids::PanId;
use crate::domain::ledger::{Book, DateRefusal};
use crate::domain::quick::{Doubt, Gap, Quick, QuickRefusal};
use crate::domain::units::Volume;

use super::log_lines::measured;
use super::setup::{claim_name, exposure_name, measures_name};
use super::{Lang, dates, format, oil};

/// What a form still needs.
#[must_use]
pub const fn gap(gap: Gap, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match gap {
        Gap::Number => "Type the number first.",
        Gap::Range => "No such number can be. Look at the figure and its unit.",
        Gap::Block => "Say once what one block weighs; this phone remembers it.",
        Gap::Drum => "Say once what one drum holds; this phone remembers it.",
        Gap::Bag => "Say once what one bag holds; this phone remembers it.",
        Gap::Gauge => "Choose what was read.",
        Gap::Sign => "Choose what you notice.",
        Gap::To => "Choose where it went, or what it came out of.",
        Gap::Claim => "Choose which promise.",
        Gap::After => "Choose: fresh oil in, or the pan stands empty.",
        Gap::FreshOn => "Give the day it was fresh.",
        Gap::Words => "Say why, in a few words.",
        Gap::When => "Give both the day and the time, or neither for now.",
    }
}

/// Why it is not written: what stands against it and what to do. A doubt has its own words in [`doubt`].
#[must_use]
pub fn refusal(why: &QuickRefusal, book: &Book, off_min: i16, lang: Lang) -> String {
    let Lang::En = lang;
    let name = |pan: PanId| pan_in(book, pan, lang);
    match why {
        QuickRefusal::NoSuchPan { .. } => "This pan is not in use. Look at the set-up.".to_owned(),
        QuickRefusal::NoSuchMachine { .. } => "This machine is not set up here. Look at the set-up.".to_owned(),
        QuickRefusal::NoSuchPerson { .. } => "This person is not set up here. Look at the set-up.".to_owned(),
        QuickRefusal::WrongInstrument { measures: Some(is), .. } => {
            format!(
                "That instrument measures: {}. Choose another.",
                measures_name(*is, lang)
            )
        }
        QuickRefusal::WrongInstrument { measures: None, .. } => {
            "That instrument is not set up here. Choose another.".to_owned()
        }
        QuickRefusal::NoOil { pan } => format!("The log knows of no oil in {}. Log what went in first.", name(*pan)),
        QuickRefusal::StillOil { pan } => format!("There is oil in {}. Log the oil change first.", name(*pan)),
        QuickRefusal::OilOut { pan } => format!(
            "The oil of {} is not all in it: a run is open or was left. Finish that first.",
            name(*pan)
        ),
        QuickRefusal::WaterIn { pan } => format!(
            "There is water in {}. Drain it, wipe it dry and shut its valve first.",
            name(*pan)
        ),
        QuickRefusal::TooMuch { pan, full } => format!(
            "{} holds {} when full. Look at the figure and its unit.",
            format::first_up(&name(*pan)),
            format::litres(*full)
        ),
        QuickRefusal::MoreInThanOut => "More arrived than was taken out. Look at both figures.".to_owned(),
        QuickRefusal::NothingTyped => "Something is missing, or nothing is changed.".to_owned(),
        QuickRefusal::SamePan { .. } => "That is the same pan. Choose another.".to_owned(),
        QuickRefusal::NoSuchClaim { pan } => format!("That promise does not stand on {} now.", name(*pan)),
        QuickRefusal::ClaimMet { pan, claim, exposure } => format!(
            "{} is kept for: {}. This brings: {}. Leave it, or log the promise as lost first and tell the counter.",
            format::first_up(&name(*pan)),
            claim_name(*claim, lang),
            exposure_name(*exposure, lang)
        ),
        QuickRefusal::MoveMeets {
            pan,
            claim,
            exposure,
            from,
        } => format!(
            "{} is kept for: {}. {} has met: {}. Do not move it there. If it is in already, log the promise as lost \
             first and tell the counter.",
            format::first_up(&name(*pan)),
            claim_name(*claim, lang),
            match from {
                Vessel::Pan(pan) => format!("The oil of {}", name(*pan)),
                Vessel::Machine(_) => format!("What stands in {}", vessel(book, *from, lang)),
            },
            exposure_name(*exposure, lang)
        ),
        QuickRefusal::NoOilIn { machine } => {
            format!(
                "The log knows of no oil in {}.",
                vessel(book, Vessel::Machine(*machine), lang)
            )
        }
        QuickRefusal::NoTank { machine } => format!(
            "Oil does not stand in {}. Choose a machine with a tank.",
            vessel(book, Vessel::Machine(*machine), lang)
        ),
        QuickRefusal::MachineInRun { machine, pan } => format!(
            "{} is in use: the run of {} is open. Finish that first.",
            vessel(book, Vessel::Machine(*machine), lang),
            name(*pan)
        ),
        QuickRefusal::NoHose => "From machine to machine: not without a pan. Choose a pan.".to_owned(),
        QuickRefusal::MoreThanThere { from, has } => format!(
            "The log knows of {} in {}. Look at the figure, or put right what went in.",
            format::litres(*has),
            vessel(book, *from, lang)
        ),
        QuickRefusal::NoRoom { pan, room } => format!(
            "No room: at most {} more go into {}.",
            format::litres(*room),
            name(*pan)
        ),
        QuickRefusal::TankTooSmall {
            machine,
            needs_ml,
            has_ml,
        } => {
            let litres = |ml: u32| format::litres(Volume::from_ml(ml).unwrap_or(Volume::MAX));
            format!(
                "Hot, all of it needs {}; {} has room for {}. Leave it where it is.",
                litres(*needs_ml),
                vessel(book, Vessel::Machine(*machine), lang),
                litres(*has_ml)
            )
        }
        QuickRefusal::OtherFatIn { machine, fat } => format!(
            "{} holds {}. Only the same fat goes in with it.",
            vessel(book, Vessel::Machine(*machine), lang),
            format::first_low(oil::fat_name(*fat, lang))
        ),
        QuickRefusal::OtherClaimsIn { machine, pan } => format!(
            "{} holds the oil of {}, which is kept for other promises. They do not meet.",
            vessel(book, Vessel::Machine(*machine), lang),
            name(*pan)
        ),
        QuickRefusal::NotRestored {
            pan,
            claim,
            need,
            exposure,
        } => super::kept_for::not_restored(&name(*pan), *claim, *need, *exposure, lang),
        QuickRefusal::Nobody => "Say first who you are: this needs a name.".to_owned(),
        QuickRefusal::Impossible => "No frying oil reads so. Look at the figure and its unit.".to_owned(),
        QuickRefusal::Date(why) => date(why, book, off_min, lang),
        QuickRefusal::Doubt(_) => "Unusual. Look once more.".to_owned(),
        QuickRefusal::NoSuchEntry { .. } => "That entry does not stand any more.".to_owned(),
        QuickRefusal::Evidence { .. } => "What was seen stays as it was seen. Add a note to it.".to_owned(),
        QuickRefusal::OtherKind { .. } => "A correction keeps the kind. Void it and log it anew.".to_owned(),
        QuickRefusal::TooLate => "The ten seconds are over. Put it right in the log.".to_owned(),
    }
}

/// Why a date does not stand.
#[must_use]
pub fn date(why: &DateRefusal, book: &Book, off_min: i16, lang: Lang) -> String {
    let Lang::En = lang;
    let moment = |at| dates::moment(at, off_min, lang);
    let name = |pan: PanId| pan_in(book, pan, lang);
    match why {
        DateRefusal::Ahead { latest } => format!("That is yet to come. The latest is {}.", moment(*latest)),
        DateRefusal::Evidence => "What was seen belongs to its own moment and cannot be moved.".to_owned(),
        DateRefusal::BeforeLastChange { pan, earliest } => format!(
            "The oil of {} was changed after that. The earliest is {}.",
            name(*pan),
            moment(*earliest)
        ),
        DateRefusal::BeforeFill { pan, earliest } => format!(
            "This oil was not yet in {}. The earliest is {}.",
            name(*pan),
            moment(*earliest)
        ),
        DateRefusal::BeforeParked { machine, earliest } => format!(
            "This oil was not yet in {}. The earliest is {}.",
            vessel(book, Vessel::Machine(*machine), lang),
            moment(*earliest)
        ),
        DateRefusal::AfterNextChange { pan, latest } => format!(
            "The oil of {} was changed again before that. The latest is {}.",
            name(*pan),
            moment(*latest)
        ),
    }
}

/// The question asked once: what is unusual, and whether it is right.
#[must_use]
pub fn doubt(doubt: Doubt, said: &Quick, lang: Lang) -> String {
    let Lang::En = lang;
    let figure = figure(said, lang);
    match doubt {
        Doubt::High => format!("{figure} is far above what oil in use commonly reads. Right?"),
        Doubt::Low => format!("{figure} is below what even fresh oil commonly reads. Right?"),
        Doubt::Fell => format!("{figure} is lower than the last reading, yet nothing fresh went in. Right?"),
        Doubt::Unexpected { low, high } => format!(
            "{figure} is not what this oil should read. Expected {}. {}",
            super::pan::percents(low.percent(), high.percent()),
            super::pan::ask_of_reading(lang)
        ),
        Doubt::Hot => format!("{figure} is hotter than oil is fried in. Right?"),
        Doubt::LongService => format!("{figure} is a long time to be hot in one day. Right?"),
        Doubt::SecondService => "A service of this pan is logged for that day already. One more?".to_owned(),
        Doubt::BigTopUp => format!("{figure} is more than half the pan as a top-up. Right?"),
        Doubt::OtherFat { kept } => format!("This pan is kept with {}. Another fat?", oil::fat_name(kept, lang)),
        Doubt::UnderMark { min } => format!(
            "{figure} is less than the {} this pan may be heated with. Right?",
            format::litres(min)
        ),
        Doubt::NotSeenDry { kept } => {
            let other = kept.map_or_else(String::new, |kept| {
                format!(" And it is kept with {}.", oil::fat_name(kept, lang))
            });
            format!("The guide has not seen this pan wiped, dry and its valve shut.{other} Filled without the guide?")
        }
        Doubt::AlreadyFiltered => "This pan is logged as filtered on that day already. Once more?".to_owned(),
        Doubt::Mixes { held } => format!(
            "The pan holds {}. Mixed it is a blend: go through the allergen sheet again before serving. Right?",
            format::first_low(oil::fat_name(held, lang))
        ),
        Doubt::Melted { fat } => format!(
            "{} sets in a cold machine. Melt before use. Was all of it liquid?",
            oil::fat_name(fat, lang)
        ),
        Doubt::CannotGoBack { claim, exposure } => format!(
            "The machine has met: {}. This oil cannot go back into a pan kept for: {}. Right?",
            exposure_name(exposure, lang),
            claim_name(claim, lang)
        ),
    }
}

/// The two answers to it.
#[must_use]
pub const fn doubt_answers(doubt: Doubt, lang: Lang) -> [&'static str; 2] {
    let Lang::En = lang;
    match doubt {
        Doubt::Unexpected { .. } => ["Save it as it is", "Type it again"],
        Doubt::High
        | Doubt::Low
        | Doubt::Fell
        | Doubt::Hot
        | Doubt::LongService
        | Doubt::SecondService
        | Doubt::BigTopUp
        | Doubt::OtherFat { .. }
        | Doubt::UnderMark { .. }
        | Doubt::NotSeenDry { .. }
        | Doubt::AlreadyFiltered
        | Doubt::Mixes { .. }
        | Doubt::Melted { .. }
        | Doubt::CannotGoBack { .. } => ["Yes, that is right", "No, change it"],
    }
}

/// The figure of what was said, with its unit.
fn figure(said: &Quick, lang: Lang) -> String {
    match said {
        Quick::Reading(reading) => measured(reading.value),
        Quick::TopUp(top_up) => format::amount(top_up.amount, lang),
        Quick::Fill(fill) | Quick::OilChange { fill: Some(fill), .. } => format::amount(fill.amount, lang),
        Quick::OilChange { out, fill: None } => format::amount(out.amount, lang),
        Quick::PartChange(change) => format::amount(change.fresh, lang),
        Quick::Move(oil) => format::amount(oil.out, lang),
        Quick::Service(service) => format::hours(service.fry, lang),
        Quick::Sign(_)
        | Quick::Note(_)
        | Quick::ClaimLost(_)
        | Quick::ClaimRestored(_)
        | Quick::RunNoted(_)
        | Quick::MachineCleaned(_)
        | Quick::AllergensChecked(_)
        | Quick::PanJobs(_) => String::new(),
    }
}

/// A pan or a machine, inside a sentence.
fn vessel(book: &Book, of: Vessel, lang: Lang) -> String {
    match of {
        Vessel::Pan(pan) => pan_in(book, pan, lang),
        Vessel::Machine(id) => book.machine(id).map_or_else(|| "?".to_owned(), |m| m.name.clone()),
    }
}

fn pan_in(book: &Book, pan: PanId, lang: Lang) -> String {
    super::run::pan_name(book.pan(pan).map_or("?", |p| p.name.as_str()), lang)
}
