//! What can go wrong in a run, by name, and what to do about it after the make-safe steps.

use crate::domain::facts::run::Fault;

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

/// Set fat and no machine: the only path there is.
#[must_use]
pub const fn set_fat_path(lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    &[
        "This fat is set at 40 °C, so it has no way out by hand.",
        "Leave it in the pan to set. Lid on, tag on the control.",
        "Tonight: not filtered. Carry on with it, or close the pan.",
        "Never carry it hot in an open pot because the machine is down.",
        "Cold and set, it can be cut out with the heat isolated, or wait for the repair.",
    ]
}
