//! House rules of everything on screen, over every key there is.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use panward::domain::claim::{ClaimKind, Exposure};
use panward::domain::evidence::{Item, Word};
use panward::domain::facts::run::Fault;
use panward::domain::facts::setup::{FilterKind, HeatKind, Heater, Held, Machine, OffSign, OutBy};
use panward::domain::fat::Fat;
use panward::domain::ids::MachineId;
use panward::domain::oil_life::{Knob, Lacking, Lever};
use panward::domain::procedure::{Block, Hazard, Hold, StepId};
use panward::domain::quick::Kind;
use panward::domain::setting_up::Field;
use panward::domain::time::{Day, Millis};
use panward::domain::units::{Share, Temp, Volume};
use panward::words::Lang;
use panward::words::{
    answers, cards, faults, forms, hazards, holds, kept_for, log, make_safe, office, oil, own_words, pan, proposed,
    questions, rhythm, run, setup, steps, what_if, whys,
};

const EN: Lang = Lang::En;

/// Every fixed sentence that can stand on a screen, with the key that leads to it.
fn everything() -> Vec<(String, String)> {
    let mut all: Vec<(String, String)> = Vec::new();
    let mut put = |key: String, text: &str| all.push((key, text.to_owned()));
    for step in StepId::ALL {
        put(format!("line {step:?}"), steps::step_line(*step, EN));
        put(format!("detail {step:?}"), steps::step_detail(*step, EN));
        put(format!("title {step:?}"), steps::step_title(*step, EN));
        put(format!("why {step:?}"), whys::why(*step, EN).reason);
        for out_by in OutBy::ALL {
            let line = steps::step_line_for(*step, *out_by, EN);
            put(format!("line {step:?} {out_by:?}"), line);
        }
        for item in Item::ALL {
            let asked = questions::question(*step, *item, EN);
            put(format!("question {step:?} {item:?}"), asked);
        }
    }
    for item in Item::ALL {
        for word in Word::ALL {
            put(format!("label {item:?} {word:?}"), &answers::label(*item, *word, EN));
        }
    }
    for hazard in Hazard::ALL {
        put(format!("{hazard:?}"), hazards::hazard_line(*hazard, EN));
    }
    for hold in Hold::ALL {
        put(format!("name {hold:?}"), holds::hold_name(*hold, EN));
        put(format!("opens {hold:?}"), holds::hold_opens(*hold, EN));
        put(format!("meanwhile {hold:?}"), holds::hold_meanwhile(*hold, EN));
    }
    for fault in Fault::ALL {
        put(format!("name {fault:?}"), faults::fault_name(*fault, EN));
        put(format!("first {fault:?}"), faults::fault_first(*fault, EN));
        put(format!("then {fault:?}"), faults::fault_then(*fault, EN));
    }
    for line in cards::fire_card("999", EN).iter().chain(&cards::burn_card("999", EN)) {
        put("card".to_owned(), &line.text);
    }
    for block in Block::ALL {
        put(format!("{block:?}"), steps::block_name(*block, EN));
        put(format!("{block:?} complete"), steps::block_complete(*block, EN));
    }
    for fat in Fat::ALL {
        put(format!("{fat:?}"), oil::fat_name(*fat, EN));
    }
    for claim in ClaimKind::ALL {
        put(format!("{claim:?}"), setup::claim_asks(*claim, EN));
        let told = kept_for::tell("2", *claim, "13:05", EN).join(" ");
        put(format!("{claim:?} lost"), &told);
    }
    for exposure in Exposure::ALL {
        put(format!("{exposure:?}"), setup::exposure_name(*exposure, EN));
    }
    for quick in Kind::ALL {
        put(format!("{quick:?}"), log::quick_question(*quick, EN));
    }
    for out_by in OutBy::ALL {
        put(format!("{out_by:?}"), setup::out_by_text(*out_by, EN));
    }
    for field in Field::ALL {
        put(format!("{field:?}"), forms::label(*field, EN));
        if let Some(words) = proposed::proposed(*field, EN) {
            put(format!("proposed {field:?}"), words);
        }
        if let Some(hint) = forms::hint(*field, EN) {
            put(format!("hint {field:?}"), hint);
        }
        for (key, option) in forms::options(*field, "", EN) {
            put(format!("{field:?} {key}"), &option);
        }
    }
    for again in [false, true] {
        put(format!("question of a group {again}"), questions::of_group(again, EN));
    }
    let page = what_if::Say::ALL.map(|say| what_if::say(say, EN)).into_iter();
    let page = page.chain(rhythm::Say::ALL.map(|what| rhythm::say(what, EN)));
    let page = page.chain(Knob::ALL.map(|knob| what_if::knob_name(knob, EN)));
    let page = page.chain(Lever::ALL.map(|lever| what_if::limits_most(lever, EN)));
    let page = page.chain(Lacking::ALL.map(|lacks| what_if::lacking(lacks, EN)));
    let unfit = [pan::ask_of_reading, pan::does_not_fit, pan::kept_all_the_same];
    for text in page.chain(unfit.map(|words| words(EN))) {
        put("a pan's page".to_owned(), text);
    }
    put("a chance".to_owned(), pan::as_days_left(EN));
    put("the rest".to_owned(), proposed::rest_title(EN));
    put("ask the rest".to_owned(), proposed::ask_the_rest(EN));
    for text in office::numbers(EN) {
        put("numbers".to_owned(), text);
    }
    all
}

/// Words of a text without the marks around them.
fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !(c.is_alphanumeric() || c == '\''))
        .filter(|w| !w.is_empty())
}

#[test]
fn a_step_line_has_at_most_eight_words() {
    for step in StepId::ALL {
        for out_by in OutBy::ALL {
            for line in [steps::step_line(*step, EN), steps::step_line_for(*step, *out_by, EN)] {
                let n = line.split_whitespace().count();
                assert!((2..=8).contains(&n), "{step:?} has {n} words: {line}");
                assert!(line.ends_with('.'), "{step:?}: {line}");
            }
        }
    }
}

#[test]
fn a_step_line_fits_the_smallest_phone_without_breaking_a_word() {
    // 42 px at 360 wide: 328 px inside the margins, about 0.55 em a letter, so 14 letters a row at most.
    for step in StepId::ALL {
        for out_by in OutBy::ALL {
            let line = steps::step_line_for(*step, *out_by, EN);
            assert!(
                line.split_whitespace().all(|w| w.chars().count() <= 13),
                "{step:?}: {line}"
            );
        }
    }
}

#[test]
fn a_step_line_begins_with_what_to_do() {
    let verbs = [
        "Say", "Look", "Choose", "Listen", "Switch", "Compare", "Turn", "Scrape", "Skim", "Take", "Stir", "Connect",
        "Start", "Drain", "See", "Pour", "Read", "Hang", "Run", "Lift", "Put", "Set", "Probe", "Spread", "Secure",
        "Lock", "Open", "Shut", "Pack", "Scrub",
    ];
    for step in StepId::ALL {
        for out_by in OutBy::ALL {
            let line = steps::step_line_for(*step, *out_by, EN);
            let first = words(line).next().unwrap();
            assert!(verbs.contains(&first), "{step:?}: {line}");
        }
    }
}

#[test]
fn no_two_steps_say_the_same_in_the_log() {
    let mut titles: Vec<&str> = StepId::ALL.iter().map(|s| steps::step_title(*s, EN)).collect();
    titles.sort_unstable();
    titles.dedup();
    assert_eq!(titles.len(), StepId::ALL.len());
}

#[test]
fn a_label_fits_its_button_and_says_a_state() {
    for item in Item::ALL {
        let mut labels: Vec<String> = Vec::new();
        for word in Word::ALL {
            let label = answers::label(*item, *word, EN);
            let n = label.chars().count();
            assert!((3..=28).contains(&n), "{item:?} {word:?} has {n} letters: {label}");
            assert!(label.starts_with(char::is_uppercase), "{label}");
            assert!(label.split_whitespace().count() <= 6, "{label}");
            for never in ["done", "checked", "okay", "i"] {
                assert!(
                    !words(&label).any(|w| w.to_lowercase() == never),
                    "{item:?} {word:?}: {label}"
                );
            }
            labels.push(label);
        }
        assert!(
            labels.iter().any(|l| l.starts_with(answers::noun(*item, EN))),
            "{item:?} never names itself"
        );
    }
}

#[test]
fn answers_grouped_at_one_place_read_as_one() {
    let seen = [
        (Item::Knob, Word::Off),
        (Item::Flame, Word::Out),
        (Item::Smoke, Word::None),
    ];
    assert_eq!(answers::together(&seen, EN), "Knob at off, flame out, no smoke");
    assert_eq!(answers::together(&[], EN), "");
    let lit = [
        (Item::Lid, Word::Off),
        (Item::InPan, Word::None),
        (Item::Tag, Word::None),
    ];
    assert_eq!(
        answers::together(&lit, EN),
        "Lid off, set aside, no tool in the pan, no tag"
    );
    for again in [false, true] {
        assert!(questions::of_group(again, EN).ends_with('?'));
    }
    assert_eq!(answers::phrase(Item::Knob, Word::Off, EN), "knob at off");
}

#[test]
fn a_question_has_no_negative_and_ends_as_one() {
    for step in StepId::ALL {
        for item in Item::ALL {
            let question = questions::question(*step, *item, EN);
            assert!(question.ends_with('?'), "{question}");
            assert!(question.chars().count() <= 44, "{question}");
            // It stands as the step line once its step is begun.
            assert!(words(question).count() <= 8, "{question}");
            for word in words(question) {
                let word = word.to_lowercase();
                assert!(
                    !["not", "no", "never", "nothing", "none"].contains(&word.as_str()),
                    "{question}"
                );
                assert!(!word.ends_with("n't"), "{question}");
            }
        }
    }
}

#[test]
fn capitals_shout_only_what_must_be_shouted() {
    let allowed = [
        "STOP", "OFF", "EMPTY", "PAN", "DO", "NOT", "LIGHT", "HEAT", "C", "A", "I", "L", "UK", "HSE", "JSON", "NHS",
    ];
    for (key, text) in everything() {
        for word in words(&text) {
            let shouted = word.chars().any(char::is_alphabetic) && word.chars().all(|c| !c.is_lowercase());
            assert!(!shouted || allowed.contains(&word), "{key}: {text}");
        }
    }
}

#[test]
fn words_that_mislead_are_nowhere() {
    let never = [
        "hold the",
        "hold it",
        "hold a ",
        "hold your",
        "controller",
        "controlled",
        "hot work",
        "extraction",
        "medium",
        "controls the machine",
        "compliant",
        "safe to eat",
        "please",
        "oops",
        "switched off",
        "simply",
    ];
    for (key, text) in everything() {
        let low = text.to_lowercase();
        for word in never {
            assert!(!low.contains(word), "{key} says \"{word}\": {text}");
        }
        assert!(!text.contains('!'), "{key}: {text}");
        assert!(
            !text.contains("  ") && text.trim() == text && !text.is_empty(),
            "{key}: {text:?}"
        );
    }
}

#[test]
fn a_hazard_line_is_one_short_sentence() {
    for hazard in Hazard::ALL {
        let line = hazards::hazard_line(*hazard, EN);
        assert!(line.split_whitespace().count() <= 14, "{line}");
        assert_eq!(line.matches('.').count(), 1, "{line}");
    }
}

#[test]
fn every_reason_is_at_most_two_sentences_and_names_its_source() {
    for step in StepId::ALL {
        let why = whys::why(*step, EN);
        assert!(
            (1..=2).contains(&why.reason.matches(['.', '?']).count()),
            "{step:?}: {}",
            why.reason
        );
        assert!(!why.source.is_empty(), "{step:?}");
    }
}

#[test]
fn the_twelve_holds_are_numbered_one_to_twelve() {
    let mut numbers: Vec<u8> = Hold::ALL.iter().filter_map(|h| holds::hold_number(*h)).collect();
    numbers.sort_unstable();
    assert_eq!(numbers, (1..=12).collect::<Vec<u8>>());
    assert_eq!(holds::hold_title(Hold::HeatOff, EN), "Hold 8 · Heat off, seen twice");
    assert_eq!(holds::hold_title(Hold::Melt, EN), "Hold · All liquid before full heat");
}

#[test]
fn the_fire_card_keeps_water_off_and_people_out() {
    // OSHA restaurant eTool; Bedfordshire and Cornwall fire and rescue services.
    let card: Vec<String> = cards::fire_card("999", EN).into_iter().map(|l| l.text).collect();
    let at = |part: &str| {
        card.iter()
            .position(|l| l.contains(part))
            .unwrap_or_else(|| panic!("no line says {part}"))
    };
    assert_eq!(at("only if you need not reach over the pan"), 0);
    assert!(at("No water. Do not move the pan.") < at("wet chemical"));
    assert!(at("Everyone out") < at("wet chemical"));
    assert!(card[at("wet chemical")].contains("Trained") && card[at("wet chemical")].contains("exit behind you"));
    assert!(card[at("Call ")].contains("999"));
}

#[test]
fn the_burn_card_says_twenty_minutes_of_cool_running_water() {
    // NHS, Burns and scalds; ANZCOR Guideline 9.1.3.
    let card: Vec<String> = cards::burn_card("111", EN).into_iter().map(|l| l.text).collect();
    assert!(card.iter().any(|l| l.starts_with("Cool running water, 20 minutes")));
    assert!(card.iter().any(|l| l.starts_with("No ice, cream, butter or oil")));
    assert!(card.iter().any(|l| l.contains("never wrapped round")));
    // Cooling first; whoever stands by calls while it runs.
    let at = |part: &str| card.iter().position(|l| l.contains(part)).expect("on the card");
    assert_eq!((at("Cool running water"), at("Call 111")), (1, 2));
    let page = include_str!("../public/index.html");
    let (_, page) = page.split_once("id=\"start-burn\"").expect("the page's own card");
    let nth = |part: &str| page.split("<li>").position(|l| l.contains(part)).expect("on the page");
    assert_eq!((nth("Cool running water"), nth("Call ")), (2, 3));
}

#[test]
fn a_pan_has_two_different_signs_of_off_to_choose() {
    for heat in HeatKind::ALL {
        let choices = setup::off_sign_choices(*heat);
        assert!(choices.len() >= 2, "{heat:?}");
        assert_eq!(choices.contains(&OffSign::Flame), *heat == HeatKind::Gas);
        assert_eq!(choices.contains(&OffSign::Plug), *heat == HeatKind::Electric);
    }
    assert!(
        OffSign::ALL
            .iter()
            .all(|s| HeatKind::ALL.iter().any(|h| setup::off_sign_choices(*h).contains(s)))
    );
}

#[test]
fn nobody_is_told_to_dry_a_hot_bare_pan() {
    // A pan just emptied is wet with its own oil; water in it waits until the pan is cold.
    let said = holds::hold_meanwhile(Hold::ClearDry, EN);
    let at = |part: &str| said.find(part).unwrap_or_else(|| panic!("{part}: {said}"));
    assert!(at("Heat stays off") < at("stop") && at("cold") < at("dry it"));
    assert!(!said.contains("ipe"), "{said}");
    for word in [Word::ClearDry, Word::Wet] {
        let label = answers::label(Item::PanInside, word, EN);
        assert!(label.to_lowercase().contains("water"), "{label}");
    }
}

#[test]
fn the_end_of_a_flow_is_named_by_what_the_hand_did() {
    assert_eq!(answers::moving_ends(OutBy::Nozzle, false, EN), "Pump is off");
    assert_eq!(answers::moving_ends(OutBy::Drain, false, EN), "Flow has stopped");
    assert_eq!(answers::moving_ends(OutBy::BuiltIn, true, EN), "Pump is off");
}

#[test]
fn the_first_wanted_language_there_is_wins() {
    assert_eq!(Lang::best(&["pl".to_owned(), "en-GB".to_owned()]), Lang::En);
    assert_eq!(Lang::best(&[]), Lang::En);
}

#[test]
fn make_safe_names_the_pan_that_stands_empty_as_every_screen_does() {
    use panward::domain::facts::run::{Heat, Place, Pump};
    let standing = run::pan_empty("3", EN);
    let lines = make_safe::make_safe(Place::Split, Pump::Drawing, Heat::On, "3", OutBy::Drain, EN);
    assert!(lines.iter().any(|l| l.starts_with(&standing)), "{lines:?}");
}

#[test]
fn a_pan_to_choose_says_whether_it_is_due_or_filtered() {
    use panward::domain::facts::run::Left;
    use panward::words::screens::job::{Today, pan_line};
    let line = |today, done, out| pan_line(Fat::Rapeseed, today, done, out, false, EN);
    assert_eq!(line(None, None, false), "Rapeseed");
    assert_eq!(line(Some(Today::Due), None, false), "Rapeseed, due today");
    let filtered = line(Some(Today::Filtered), Some(Left::Off), false);
    assert_eq!(filtered, "Rapeseed, filtered today, left off");
    assert_eq!(line(None, None, true), "Rapeseed, its oil comes back");
}

#[test]
fn an_extinguisher_is_named_by_its_kind() {
    for said in [
        questions::question(StepId::Floor, Item::Extinguisher, EN),
        steps::step_detail(StepId::Floor, EN),
        holds::hold_opens(Hold::Floor, EN),
    ] {
        assert!(said.contains("wet chemical"), "{said}");
    }
}

#[test]
fn a_label_is_compared_with_fat_and_promises() {
    use panward::domain::facts::setup::Claim;
    use panward::words::screens::job::label_says;
    assert_eq!(label_says("1", Fat::Rapeseed, &[], EN), "Pan 1: Rapeseed.");
    let claim = |what| Claim {
        what,
        from: Day::of(Millis(0), 0, 0),
        basis: String::new(),
        until: None,
    };
    let both = [claim(ClaimKind::GlutenFree), claim(ClaimKind::Halal)];
    assert_eq!(
        label_says("Chips", Fat::Rapeseed, &both, EN),
        "Pan Chips: Rapeseed. Kept for: gluten-free, halal."
    );
}

#[test]
fn the_guide_speaks_the_owners_words_where_a_hand_is_on_the_machine() {
    let machine = Machine {
        filters: vec!["mesh".into(), "paper".into()],
        powder: None,
        words: vec![("draw".into(), "Lift".into()), ("off".into(), "Rest".into())],
        machine: MachineId(1),
        name: "Machine".into(),
        out_by: OutBy::Nozzle,
        tank: Volume::from_ml(40_000).unwrap(),
        free: Share::from_cpc(1_000).unwrap(),
        heater: Heater::None,
        takes_solid: false,
        filter: FilterKind::Single,
        low: Temp::celsius(100),
        high: Temp::celsius(180),
        target: Temp::celsius(150),
        rinse_max_s: Some(30),
        rinse_min_s: None,
        held: Held::Unknown,
    };
    let said = |step, item| own_words::own_words(step, item, &machine, EN).unwrap_or_default();
    assert!(said(StepId::Dry, Some(Item::Filter)).contains("mesh, then paper"));
    assert!(said(StepId::AwayFilter, Some(Item::SpentFilter)).contains("mesh, then paper"));
    let draw = said(StepId::Draw, Some(Item::Pump));
    assert!(draw.contains("“Lift”") && draw.contains("“Rest”"));
    let back = said(StepId::Returning, Some(Item::Pump));
    assert!(back.contains("“Rest”") && !back.contains("“Lift”"));
    assert!(said(StepId::AwayOff, Some(Item::Heater)).contains("“Rest”"));
    for (step, item) in [
        (StepId::Dry, Item::Hose),
        (StepId::AwayOff, Item::MachinePlug),
        (StepId::Level, Item::Level),
    ] {
        assert_eq!(said(step, Some(item)), "", "{step:?}");
    }
}

#[test]
fn a_question_fits_where_the_step_line_stands() {
    // Once a step is begun its questions stand there, beside a sign.
    for item in Item::ALL {
        let question = questions::question(StepId::Floor, *item, EN);
        assert!(question.split_whitespace().count() <= 8, "{question}");
        assert!(
            question.split_whitespace().all(|w| w.chars().count() <= 12),
            "{question}"
        );
    }
}
