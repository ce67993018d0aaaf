//! "Stop, make safe": what to do about the oil where it is right now, for every place, pump and heat.
//!
//! Always in the order of the danger: what moves oil, what heats it, the oil where it lies, then the people. Every
//! path ends in the one safe state: pump off, heat off, oil closed in, pan tagged if it may not be lit, nobody carrying.

use crate::domain::facts::run::{Heat, Place, Pump};
use crate::domain::facts::setup::OutBy;

use super::Lang;
use super::run::pan_empty;

/// The lines, first things first. `pan` is the pan's own name: "2", "fish".
#[must_use]
pub fn make_safe(place: Place, pump: Pump, heat: Heat, pan: &str, out_by: OutBy, lang: Lang) -> Vec<String> {
    let Lang::En = lang;
    let mut lines = Vec::new();
    lines.extend(stop_the_oil(pump, pan, out_by));
    lines.extend(stop_the_heat(place, heat, pan));
    if matches!(place, Place::InPan | Place::Split | Place::InMachine) {
        lines.extend(rests(pump, out_by).map(str::to_owned));
    }
    lines.extend(close_it_in(place, pan, out_by));
    if place != Place::InPan {
        lines.push(format!("{}. Hang the tag on its control.", pan_empty(pan, lang)));
    }
    lines.push("Nobody carries oil.".to_owned());
    lines.push("Then look again before you go on.".to_owned());
    lines
}

/// The lines while a filter job is open and no pan is in hand: `warms` while the machine's heater was seen on last, `out`
/// the names of the pans whose oil stands outside them.
#[must_use]
pub fn between_pans(warms: bool, out: &[&str], lang: Lang) -> Vec<String> {
    let Lang::En = lang;
    let mut lines = vec!["Leave the pump off.".to_owned()];
    if warms {
        lines.push("The machine's heater is on. Walking away? Switch it off and say so here.".to_owned());
    }
    for pan in out {
        lines.push(format!("{}. Its tag hangs on its control.", pan_empty(pan, lang)));
    }
    if !out.is_empty() {
        lines.push("That oil stays where it is, lid shut, tagged: hot oil inside.".to_owned());
    }
    lines.push("A lit pan is never left alone: somebody stands there, or it is turned off.".to_owned());
    lines.push("Nobody carries oil.".to_owned());
    lines
}

/// What moves oil is stopped first.
fn stop_the_oil(pump: Pump, pan: &str, out_by: OutBy) -> Vec<String> {
    match (pump, out_by) {
        (Pump::Off, OutBy::Nozzle | OutBy::Drain | OutBy::BuiltIn) => vec!["Leave the pump off.".to_owned()],
        (Pump::Off, OutBy::Hand) => vec!["Move no more oil.".to_owned()],
        (Pump::Drawing, OutBy::Nozzle) => vec![
            format!("Switch the pump off. Leave the nozzle in pan {pan}."),
            "Still running? Pull its plug at the wall.".to_owned(),
        ],
        (Pump::Drawing, OutBy::Drain | OutBy::BuiltIn) => vec![
            format!("Switch the pump off. Shut the drain valve of pan {pan}."),
            "Valve stuck? Keep clear and leave the pipe on.".to_owned(),
        ],
        (Pump::Drawing | Pump::Rinsing, OutBy::Hand) => {
            vec![format!("Shut the drain valve of pan {pan}. Let no more out.")]
        }
        (Pump::Rinsing, OutBy::Nozzle) => vec![
            format!("Switch the pump off. Leave the nozzle in pan {pan}."),
            "Still running? Pull its plug at the wall.".to_owned(),
        ],
        (Pump::Rinsing, OutBy::Drain | OutBy::BuiltIn) => vec![
            format!("Switch the pump off. Let pan {pan} drain, then shut its valve."),
            "Still running? Pull its plug at the wall.".to_owned(),
        ],
        (Pump::Returning, OutBy::Nozzle | OutBy::Drain | OutBy::BuiltIn) => vec![
            format!("Switch the pump off. Leave hose and nozzle at pan {pan}."),
            "Still running? Pull its plug at the wall.".to_owned(),
        ],
        (Pump::Returning, OutBy::Hand) => {
            vec!["Stop pouring. Set the container down low, lid on.".to_owned()]
        }
        (Pump::Unknown, OutBy::Nozzle) => {
            vec![format!(
                "Switch the pump off, whatever it seems to do. Leave the nozzle at pan {pan}."
            )]
        }
        (Pump::Unknown, OutBy::Drain | OutBy::BuiltIn) => {
            vec![format!(
                "Switch the pump off, whatever it seems to do. See the drain valve of pan {pan} shut."
            )]
        }
        (Pump::Unknown, OutBy::Hand) => vec![format!("Shut the drain valve of pan {pan}. Move no more oil.")],
    }
}

/// Then what heats it: worst when the wall is bare.
fn stop_the_heat(place: Place, heat: Heat, pan: &str) -> Vec<String> {
    let bare = place != Place::InPan;
    let first = match (heat, bare) {
        (Heat::OffSeen, false) => format!("Leave the heat of pan {pan} off."),
        (Heat::OffSeen, true) => format!("Leave the heat of pan {pan} off: its wall is bare."),
        (Heat::On, false) => format!("Turn the heat of pan {pan} off. See both its signs."),
        (Heat::On, true) => format!("Turn the heat of pan {pan} off now: a bare wall catches fire."),
        (Heat::Low, false) => format!("Turn the low heat of pan {pan} off. Keep back from the crust."),
        (Heat::Low, true) => format!("Turn the low heat of pan {pan} off now: low heat lights a bare wall too."),
        (Heat::Unknown, false) => format!("Look at the heat of pan {pan}. Turn it off. See both its signs."),
        (Heat::Unknown, true) => {
            format!("Look at the heat of pan {pan}. Turn it off now: a bare wall catches fire.")
        }
    };
    let reach = "Reach over nothing: use the isolator or gas tap if you must. Smoke? Stand back, Fire card.";
    match heat {
        Heat::OffSeen => vec![first],
        Heat::On | Heat::Low | Heat::Unknown => vec![first, reach.to_owned()],
    }
}

/// Then the oil, where it lies.
fn close_it_in(place: Place, pan: &str, out_by: OutBy) -> Vec<String> {
    let holder = match out_by {
        OutBy::Nozzle | OutBy::Drain | OutBy::BuiltIn => "machine",
        OutBy::Hand => "container",
    };
    match place {
        Place::InPan => vec![format!(
            "See the drain valve of pan {pan} shut. Lid on once nothing smokes or spits."
        )],
        Place::Split => vec![
            format!("Oil is in pan {pan} and in the {holder}. Lids on both."),
            format!("Hang a tag on the {holder}: hot oil inside."),
        ],
        Place::InMachine => vec![
            format!("The oil of pan {pan} stays in the {holder}. Lid shut, brake on."),
            format!("Hang a tag on the {holder}: hot oil inside."),
        ],
        Place::InContainer => vec![
            format!("The oil of pan {pan} stays in the container. Lid on, where it stands."),
            "Keep water, feet and trolleys away from it.".to_owned(),
        ],
        Place::Gone => vec![
            "Oil on the floor: everybody off it until it is cool. Then dry absorbent, never water.".to_owned(),
            format!("Taken away? Say where the oil of pan {pan} went."),
        ],
    }
}

/// Where the end of the line rests. While oil moves a nozzle stays where it is, which was said with the pump.
const fn rests(pump: Pump, out_by: OutBy) -> Option<&'static str> {
    match (out_by, pump) {
        (OutBy::Nozzle, Pump::Off) => Some("Leave the nozzle hooked in the pan, or over its drip tray."),
        (OutBy::Nozzle, Pump::Drawing | Pump::Rinsing | Pump::Returning | Pump::Unknown) => None,
        (OutBy::Drain, _) => Some("Leave the pipe locked on and the tank underneath."),
        (OutBy::BuiltIn, _) => Some("Leave the tank pushed home."),
        (OutBy::Hand, _) => Some("Leave the container where it stands."),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    #[test]
    fn every_place_pump_and_heat_has_its_own_way_to_safety() {
        for out_by in OutBy::ALL {
            let mut told: BTreeMap<Vec<String>, (Place, Pump, Heat)> = BTreeMap::new();
            for (place, pump, heat) in every() {
                let lines = make_safe(place, pump, heat, "seven", *out_by, Lang::En);
                let all = lines.join(" ");
                assert!(
                    all.contains("pan seven") || all.contains("PAN seven"),
                    "{place:?} {pump:?} {heat:?} names no pan"
                );
                assert!(all.contains("Nobody carries oil"), "{place:?} {pump:?} {heat:?}");
                let out = all.contains("PAN seven EMPTY, DO NOT LIGHT") && all.contains("Hang the tag on its control");
                assert_eq!(out, place != Place::InPan, "{place:?} {pump:?} {heat:?}");
                let off = all.contains("off. ") || all.contains("off now");
                assert!(
                    heat == Heat::OffSeen || (all.contains("urn ") && off),
                    "{place:?} {pump:?} {heat:?}"
                );
                // By hand no pump rinses: drawing and rinsing are the same open valve.
                let twin = *out_by == OutBy::Hand && matches!(pump, Pump::Drawing | Pump::Rinsing);
                // A pump that draws and one that rinses through a nozzle are stopped by the same hand movement.
                let twin = twin || (*out_by == OutBy::Nozzle && matches!(pump, Pump::Drawing | Pump::Rinsing));
                if let Some(other) = told.insert(lines, (place, pump, heat)) {
                    assert!(
                        twin && other.0 == place && other.2 == heat,
                        "{other:?} reads as {place:?} {pump:?} {heat:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_running_or_unseen_pump_is_switched_off_before_anything_else() {
        for out_by in [OutBy::Nozzle, OutBy::Drain, OutBy::BuiltIn] {
            for (place, pump, heat) in every().filter(|(_, pump, _)| *pump != Pump::Off) {
                let lines = make_safe(place, pump, heat, "2", out_by, Lang::En);
                assert!(
                    lines.iter().take(1).all(|l| l.starts_with("Switch the pump off")),
                    "{pump:?}: {lines:?}"
                );
            }
        }
    }

    #[test]
    fn heat_that_is_on_low_or_unseen_is_turned_off_before_the_oil_is_touched() {
        for (place, pump, heat) in every().filter(|(_, _, heat)| *heat != Heat::OffSeen) {
            for out_by in OutBy::ALL {
                let lines = make_safe(place, pump, heat, "2", *out_by, Lang::En);
                let off = lines
                    .iter()
                    .position(|l| l.contains("heat of pan 2") && l.to_lowercase().contains("turn"));
                let oil = lines
                    .iter()
                    .position(|l| l.starts_with("Leave the nozzle hooked") || l.contains("stays in"));
                assert!(off.is_some(), "{lines:?}");
                assert!(oil.is_none() || off < oil, "{lines:?}");
            }
        }
    }

    #[test]
    fn between_pans_a_warm_machine_and_oil_that_is_out_are_made_safe_too() {
        for (warms, out) in [(false, &[][..]), (true, &[]), (false, &["2", "fish"]), (true, &["2"])] {
            let lines = between_pans(warms, out, Lang::En);
            assert!(lines.iter().take(1).all(|l| l.starts_with("Leave the pump off")));
            assert_eq!(lines.iter().any(|l| l.contains("heater is on")), warms, "{lines:?}");
            let tagged = lines.iter().filter(|l| l.contains("DO NOT LIGHT") && l.contains("tag"));
            assert_eq!(tagged.count(), out.len(), "{lines:?}");
            for pan in out {
                assert!(lines.iter().any(|l| l.starts_with(&pan_empty(pan, Lang::En))));
            }
            assert_eq!(lines.iter().any(|l| l.contains("stays where it is")), !out.is_empty());
            assert!(lines.iter().any(|l| l.contains("lit pan is never left alone")));
            assert!(lines.iter().any(|l| l == "Nobody carries oil."));
        }
    }

    fn every() -> impl Iterator<Item = (Place, Pump, Heat)> {
        Place::ALL.iter().flat_map(|place| {
            Pump::ALL
                .iter()
                .flat_map(move |pump| Heat::ALL.iter().map(move |heat| (*place, *pump, *heat)))
        })
    }
}
