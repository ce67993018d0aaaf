//! The helper's card: every step has one, short enough to be read from afar, and none sends a hand to hot oil.

use panward::domain::procedure::StepId;
use panward::words::Lang;
use panward::words::helper::{card, heads};

/// What holds oil, moves it or is hot: no helper's job touches it, whatever the step.
const KEPT_FROM: [&str; 18] = [
    "pan",
    "pans",
    "hose",
    "machine",
    "nozzle",
    "valve",
    "oil",
    "tank",
    "lid",
    "filter",
    "scraper",
    "ladle",
    "tap",
    "drain",
    "container",
    "skimmer",
    "probe",
    "basket",
];

/// What a hand does.
const HANDS_ON: [&str; 10] = [
    "hold", "lift", "carry", "pour", "wipe", "clean", "empty", "tilt", "open the", "shut the",
];

fn words(text: &str) -> impl Iterator<Item = String> {
    text.split(|c: char| !c.is_alphanumeric()).map(str::to_lowercase)
}

#[test]
fn every_step_has_a_place_one_job_and_a_shout() {
    for step in StepId::ALL {
        let card = card(*step, Lang::En);
        for (part, most) in [(card.place, 9), (card.job, 9), (card.shout, 8)] {
            let n = part.split_whitespace().count();
            assert!((2..=most).contains(&n) && part.ends_with('.'), "{step:?}: {part}");
            assert!(
                part.split_whitespace().all(|w| w.chars().count() <= 13),
                "{step:?}: {part}"
            );
        }
        let loud = |w: &str| w.len() > 1 && w.chars().all(char::is_uppercase);
        let shouts = card
            .shout
            .split(|c: char| !c.is_alphabetic())
            .filter(|w| loud(w))
            .count();
        assert!((1..=2).contains(&shouts), "{step:?}: {}", card.shout);
    }
    assert!(heads(Lang::En).iter().all(|head| !head.is_empty()));
}

#[test]
fn no_helper_is_sent_to_hot_oil() {
    for step in StepId::ALL {
        let card = card(*step, Lang::En);
        for word in words(card.job) {
            assert!(
                !KEPT_FROM.contains(&word.as_str()),
                "{step:?} sends a helper to: {}",
                card.job
            );
        }
        let low = card.job.to_lowercase();
        for hand in HANDS_ON {
            assert!(!low.contains(hand), "{step:?} puts a helper's hand on: {}", card.job);
        }
        let near = ["beside", "at the range", "at the pan", "next to"];
        assert!(
            near.iter().all(|near| !card.place.contains(near)),
            "{step:?}: {}",
            card.place
        );
    }
}
