//! What each hold of a finished hot run must have left in the log, by machine kind.

use journeys::{Outcome, fault, saw};
use panward::domain::facts::setup::OutBy;
use serde_json::Value;

type Seen = (&'static str, &'static str);

/// For each hold the answers that stand for it, whichever form the run took.
const EVERYWHERE: &[(&str, &[Seen])] = &[
    (
        "2 kit",
        &[
            ("gloves", "worn"),
            ("face", "worn"),
            ("apron", "worn"),
            ("sleeves", "worn"),
            ("shoes", "worn"),
        ],
    ),
    (
        "3 floor",
        &[("floor", "dry"), ("way", "clear"), ("extinguisher", "seen")],
    ),
    (
        "4 dry",
        &[
            ("filter", "dry"),
            ("tank_inside", "dry"),
            ("hose", "dry"),
            ("sound", "whole"),
        ],
    ),
    ("5 room", &[("tank", "empty")]),
    ("6 match", &[("used_since", "no"), ("label", "same")]),
    ("8 heat off", &[("knob", "off"), ("flame", "out"), ("smoke", "none")]),
    ("11 level", &[("level", "enough")]),
    ("clear and dry", &[("pan_inside", "clear_dry")]),
];

/// For hold 9 what must be seen before the pump starts.
const fn connected(out_by: OutBy) -> &'static [Seen] {
    match out_by {
        OutBy::Nozzle => &[("nozzle", "in_corner"), ("nozzle", "clamped"), ("valve", "shut")],
        OutBy::Drain => &[("pipe", "locked"), ("tank_place", "in_place"), ("valve", "shut")],
        OutBy::BuiltIn => &[("tank_place", "in_place"), ("valve", "shut")],
        OutBy::Hand => &[],
    }
}

/// Fails unless these entries of one job and its run hold what every hold asks for.
pub fn holds_left_their_evidence(entries: &[Value], out_by: OutBy) -> Outcome {
    let everywhere = EVERYWHERE.iter().copied();
    for (hold, items) in everywhere.chain([("9 connected", connected(out_by))]) {
        for (item, word) in items {
            if !saw(entries, item, word) {
                return fault(format!("hold {hold}: {item} was never seen {word}"));
            }
        }
    }
    let signed = entries.iter().any(|entry| {
        ["signed", "vouched", "supervised"]
            .contains(&entry["body"]["evidence"]["sign_off"].as_str().unwrap_or_default())
    });
    if !signed {
        return fault("hold 1 person: nobody was seen signed off");
    }
    if !entries
        .iter()
        .any(|entry| entry["body"]["evidence"]["oil_dc"].is_number())
    {
        return fault("hold 7 temperature: there is no reading");
    }
    Ok(())
}

/// The entries of the runs of one pan, told from the others by the run's id: each run's entries in order.
pub fn runs(entries: &[Value]) -> Vec<Vec<Value>> {
    let mut runs: Vec<(String, Vec<Value>)> = Vec::new();
    for entry in entries.iter().filter(|entry| entry["kind"] == "run") {
        let id = entry["body"]["run"].as_str().unwrap_or_default();
        match runs.iter_mut().find(|(run, _)| run == id) {
            Some((_, run)) => run.push(entry.clone()),
            None => runs.push((id.to_owned(), vec![entry.clone()])),
        }
    }
    runs.into_iter().map(|(_, run)| run).collect()
}

/// The entries of the job that are no run's.
pub fn of_the_job(entries: &[Value]) -> Vec<Value> {
    entries.iter().filter(|entry| entry["kind"] == "job").cloned().collect()
}
