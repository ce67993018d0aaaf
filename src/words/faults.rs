//! What can go wrong in a run, by name, and what to do about it after the make-safe steps.

use crate::domain::facts::run::{Fault, Place};
use crate::domain::fat::Fat;

use super::Lang;

/// A fault's name, as the button that reports it says.
#[must_use]
pub const fn fault_name(fault: Fault, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match fault {
        Fault::SlowDraw => "Oil comes slowly",
        Fault::WillNotStart => "Pump will not start",
        Fault::WillNotStop => "Pump will not stop",
        Fault::Leak => "Leak or damage",
        Fault::Spill => "Oil on the floor",
        Fault::Smoke => "Oil is smoking",
        Fault::HeatStaysOn => "Heat stays on",
        Fault::Water => "Foam, crackle, spitting",
        Fault::Other => "Something else",
    }
}

/// What to do first, said before the make-safe steps.
#[must_use]
pub const fn fault_first(fault: Fault, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match fault {
        Fault::SlowDraw => "Switch the pump off. Fat has set or the filter is full; unclip nothing under pressure.",
        Fault::WillNotStart => "Leave it off. Look at plug and trip; open nothing.",
        Fault::WillNotStop => "Pull its plug at the wall, or the breaker.",
        Fault::Leak => "Switch the pump off. Step back from the hose; nobody touches the leak.",
        Fault::Spill => "Switch the pump off. Keep everybody off the oil until it is cool.",
        Fault::Smoke => "Heat off if you need not reach over the pan. Stand back and open the Fire card.",
        Fault::HeatStaysOn => "Shut the isolator or gas tap. Stand back and call the engineer.",
        Fault::Water => "Heat off, pump off. Stand back until it lies quiet.",
        Fault::Other => "Switch the pump off and turn the heat off.",
    }
}

/// What may follow, once it is safe.
#[must_use]
pub const fn fault_then(fault: Fault, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match fault {
        Fault::SlowDraw => "Warm the machine again if the fat is solid; change the filter when it is cold.",
        Fault::WillNotStart => "Oil stays where it is. Filter this pan cold, at 40 °C or under, or another day.",
        Fault::WillNotStop => "Machine out of service until it is repaired. Tag it.",
        Fault::Leak => "Machine out of service until it is repaired. What is in it stays in it, lid shut.",
        Fault::Spill => "Cool: dry absorbent, sweep, wipe dry. Then floor and way are asked again.",
        Fault::Smoke => "Let it cool with the lid near. Read the temperature before anything else.",
        Fault::HeatStaysOn => "No emptying. The pan stays out of use until the engineer has seen it.",
        Fault::Water => "Find where the water came from. Everything dry before you go on.",
        Fault::Other => "Say what it is in your own words. Look again before you go on.",
    }
}

/// What may follow for the fat in hand, after a fault or a plain stop. A fat set at 40 °C is never offered the way out by
/// hand.
#[must_use]
pub fn then(fault: Option<Fault>, fat: Fat, place: Place, lang: Lang) -> Vec<&'static str> {
    let Lang::En = lang;
    let sets = fat.is_set_at_40c();
    let by_hand = matches!(fault, Some(Fault::WillNotStart)) && sets;
    let said = fault.filter(|_| !by_hand).map(|fault| fault_then(fault, lang));
    let path: &[&str] = match (sets, place) {
        (false, _) => &[],
        (true, Place::InPan) if fault.is_some() => set_fat_path(lang),
        (true, Place::InPan | Place::InContainer | Place::Gone) => set_fat_path(lang).get(..1).unwrap_or_default(),
        (true, Place::Split | Place::InMachine) => set_in_machine(lang),
    };
    said.into_iter().chain(path.iter().copied()).collect()
}

/// Fat that stands in the machine while nothing moves.
#[must_use]
pub const fn set_in_machine(lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    &[
        "What is in machine and hose may set there. It has no way out by hand.",
        "Before any pump: heater on as its manual says, hose and lid sound.",
        "Never a flame, never boiling water.",
    ]
}

/// Set fat and no machine: the only path there is.
#[must_use]
pub const fn set_fat_path(lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    &[
        "This fat is set at 40 °C, so it has no way out by hand.",
        "Leave it in the pan to set. Lid on, tag on the control.",
        "Tonight: not filtered. Carry on with it, or close the pan.",
        "Never carry it hot in an open pot because the machine is down.",
        "Then wait for the repair or another machine, or cut it out cold and set, heat isolated.",
    ]
}
