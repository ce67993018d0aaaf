//! What may be said of a trouble, and every way it may be refused.

use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::run::Form;
use panward::domain::facts::setup::OutBy;
use panward::domain::facts::trouble::{TroubleEvent, TroubleFact, TroubleKind};
use panward::domain::fat::Fat;
use panward::domain::guide::{Refusal, Scene};
use panward::domain::ids::PanId;
use panward::domain::trouble::{Standing, check, row};

use super::begins;
use super::world::{MACHINE, NONE, PAN, start, world};

fn scene(stands: &[TroubleFact]) -> Scene {
    let mut scene = world(OutBy::Nozzle, Fat::Dripping, Form::Long, NONE).scene;
    scene.troubles = stands
        .iter()
        .map(|t| Standing {
            what: t.what,
            pan: t.pan,
            machine: t.machine,
            since: start().wall,
            looked: false,
        })
        .collect();
    scene
}

/// Every look of it answered as it must be.
fn all_good(what: TroubleKind, event: TroubleEvent) -> TroubleFact {
    let looks = if event == TroubleEvent::Looked {
        row(what).safe
    } else {
        row(what).over
    };
    let evidence = looks
        .iter()
        .fold(Evidence::new(), |seen, l| seen.with(l.item, l.answers[0].word));
    TroubleFact {
        event,
        evidence,
        text: (event == TroubleEvent::Over && row(what).mended_by).then(|| "Ann".to_owned()),
        ..begins(what, PAN, MACHINE)
    }
}

#[test]
fn it_begins_once_is_seen_safe_and_is_over_once() {
    for what in TroubleKind::ALL {
        let began = begins(*what, PAN, MACHINE);
        assert_eq!(check(&scene(&[]), &began), Ok(()), "{what:?}");
        let stands = scene(std::slice::from_ref(&began));
        assert_eq!(check(&stands, &began), Err(Refusal::TroubleStands { what: *what }));
        for event in [TroubleEvent::Looked, TroubleEvent::Over] {
            let said = all_good(*what, event);
            assert_eq!(check(&stands, &said), Ok(()), "{what:?} {event:?}");
            assert_eq!(check(&scene(&[]), &said), Err(Refusal::NoTrouble), "{what:?} {event:?}");
        }
    }
}

#[test]
fn nothing_is_over_unseen() {
    for what in TroubleKind::ALL {
        let stands = scene(&[begins(*what, PAN, MACHINE)]);
        for (event, looks) in [
            (TroubleEvent::Looked, row(*what).safe),
            (TroubleEvent::Over, row(*what).over),
        ] {
            let good = all_good(*what, event);
            for look in looks {
                let mut seen: Vec<_> = good.evidence.iter().cloned().collect();
                seen.retain(|(item, _)| *item != look.item);
                let left_out = TroubleFact {
                    evidence: seen.into_iter().collect(),
                    ..good.clone()
                };
                assert_eq!(check(&stands, &left_out), Err(Refusal::Unanswered { item: look.item }));
                for answer in look
                    .answers
                    .iter()
                    .filter(|a| !panward::domain::trouble::is_good(look, a.word))
                {
                    let wrong = TroubleFact {
                        evidence: good.evidence.clone().with(look.item, answer.word),
                        ..good.clone()
                    };
                    let refused = Refusal::NotSo {
                        item: look.item,
                        word: Some(answer.word),
                    };
                    assert_eq!(check(&stands, &wrong), Err(refused));
                }
            }
            let more = TroubleFact {
                evidence: good.evidence.clone().with(Item::Clock, Word::Yes),
                ..good.clone()
            };
            assert!(check(&stands, &more).is_err(), "{what:?}: only what was asked is kept");
            for nobody in [None, Some("  ".to_owned())] {
                let unnamed = TroubleFact {
                    text: nobody,
                    ..good.clone()
                };
                let named = event == TroubleEvent::Over && row(*what).mended_by;
                assert_eq!(check(&stands, &unnamed) == Err(Refusal::NameNeeded), named, "{what:?}");
            }
        }
    }
}

#[test]
fn it_is_said_of_what_it_is_about() {
    let bare = |what, pan, machine| TroubleFact {
        pan,
        machine,
        ..begins(what, PAN, MACHINE)
    };
    let refused = |fact| check(&scene(&[]), &fact).unwrap_err();
    let (pan, machine) = (Some(PAN), Some(MACHINE));
    assert_eq!(refused(bare(TroubleKind::CutOut, None, None)), Refusal::NoSuchPan);
    assert_eq!(
        refused(bare(TroubleKind::CutOut, Some(PanId(999)), None)),
        Refusal::NoSuchPan
    );
    assert_eq!(refused(bare(TroubleKind::CutOut, pan, machine)), Refusal::NoSuchMachine);
    assert_eq!(
        refused(bare(TroubleKind::MachineDown, None, None)),
        Refusal::NoSuchMachine
    );
    assert_eq!(
        refused(bare(TroubleKind::MachineDown, pan, machine)),
        Refusal::NoSuchPan
    );
    assert_eq!(refused(bare(TroubleKind::PowerCut, pan, None)), Refusal::NoSuchPan);
    assert_eq!(
        refused(bare(TroubleKind::PowerCut, None, machine)),
        Refusal::NoSuchMachine
    );
}

#[test]
fn what_stands_is_seen_to_its_end_though_its_pan_went_out_of_use() {
    let mut scene = scene(&[begins(TroubleKind::CutOut, PAN, MACHINE)]);
    scene.pans.clear();
    assert_eq!(
        check(&scene, &all_good(TroubleKind::CutOut, TroubleEvent::Over)),
        Ok(())
    );
}
