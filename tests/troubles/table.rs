//! The table of troubles and their words, complete.

use std::collections::BTreeSet;

use panward::domain::facts::trouble::TroubleKind;
use panward::domain::procedure::Verdict;
use panward::domain::trouble::row;
use panward::words::Lang;
use panward::words::wrong_days::{self, Say};

const EN: Lang = Lang::En;

#[test]
fn each_stops_what_it_must_and_ends_only_on_something() {
    for (what, draw, heat) in super::STOPS {
        let row = row(what);
        assert_eq!((row.draw, row.heat), (draw, heat), "{what:?}");
        assert!(!row.safe.is_empty(), "{what:?} is made safe by looking at something");
        assert!(
            !row.over.is_empty() || row.mended_by,
            "{what:?} ends on a look or a name"
        );
        for look in row.safe.iter().chain(row.over) {
            assert!((2..=3).contains(&look.answers.len()), "{what:?} {:?}", look.item);
            let verdicts = || look.answers.iter().map(|a| a.verdict);
            assert!(verdicts().any(|v| v == Verdict::Good), "{what:?} {:?}", look.item);
            assert!(verdicts().all(|v| matches!(v, Verdict::Good | Verdict::NotYet)));
        }
        for looks in [row.safe, row.over] {
            let items: BTreeSet<_> = looks.iter().map(|l| l.item).collect();
            assert_eq!(items.len(), looks.len(), "{what:?} asks something twice");
        }
    }
    let kinds: BTreeSet<_> = super::STOPS.iter().map(|row| row.0).collect();
    assert_eq!(kinds, TroubleKind::ALL.iter().copied().collect());
}

#[test]
fn each_card_says_its_lines_plainly_and_who_says_so() {
    let mut names = BTreeSet::new();
    for what in TroubleKind::ALL {
        let name = wrong_days::name(*what, EN);
        assert!(names.insert(name) && name.chars().count() <= 26, "{name}");
        let stands = wrong_days::standing(*what, "2", EN);
        assert!((2..=9).contains(&stands.split_whitespace().count()), "{stands}");
        let (card, over) = (wrong_days::card(*what, EN), wrong_days::over(*what, EN));
        assert!((3..=8).contains(&card.len()) && !over.is_empty(), "{what:?}");
        for (text, source) in card.iter().chain(over) {
            let plain = text.ends_with(['.', '?']) && !text.contains('!') && !text.contains("please");
            assert!(plain && text.split_whitespace().count() <= 20, "{what:?}: {text}");
            assert!(source.len() > 8, "{what:?}: {text}");
            for word in text.split_whitespace() {
                let shouts = word.len() > 1 && word.chars().all(|c| c.is_uppercase());
                assert!(!shouts, "{what:?} shouts {word}");
            }
        }
    }
    for what in Say::ALL {
        assert!(!wrong_days::say(what, EN).is_empty());
    }
}

#[test]
fn what_hurt_people_is_forbidden_in_so_many_words() {
    let says = |what, words: &str| {
        let card = wrong_days::card(what, EN);
        assert!(
            card.iter().any(|(text, _)| text.contains(words)),
            "{what:?} lacks {words:?}"
        );
    };
    // WorkSafe Victoria, 2023.
    says(TroubleKind::MachineDown, "Never carry hot oil");
    says(TroubleKind::MachineDown, "leave it in its pan to set");
    // HSE Catering Information Sheet 17: by hand at 40 °C or under.
    says(TroubleKind::MachineDown, "40 °C or under, by probe");
    says(TroubleKind::MachineDown, "Tonight: not filtered");
    says(TroubleKind::CutOut, "Do not reset it");
    // HSE, Stop slips in kitchens.
    says(TroubleKind::Spill, "Do not wet-mop");
    // Bedfordshire Fire and Rescue Service.
    says(TroubleKind::Smoke, "Add nothing");
    says(TroubleKind::Alone, "The machine stays off");
    says(TroubleKind::PowerCut, "start by themselves");
}
