//! The form of a filter machine: its defaults, its window, its rinse.

use panward::domain::facts::Fact;
use panward::domain::facts::setup::{FilterKind, Heater, Held, Machine, OutBy};
use panward::domain::fat::Fat;
use panward::domain::setting_up::{Answers, Around, Fault, Field, Subject};
use panward::domain::units::{Dose, Temp};

use crate::{book, check, fact, right, today};

fn machine(answers: &Answers) -> Machine {
    match fact(Subject::Machine, answers) {
        Fact::Machine(machine) => *machine,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_machine_starts_from_named_defaults() {
    let machine = machine(&right(Subject::Machine));
    assert_eq!((machine.low, machine.high), (Temp::celsius(100), Temp::celsius(180)));
    assert_eq!((machine.target, machine.free.cpc()), (Temp::celsius(150), 1_000));
    assert_eq!((machine.filter, machine.rinse_max_s), (FilterKind::Single, Some(30)));
    assert_eq!(machine.filters, ["mesh", "paper"]);
    assert_eq!((machine.heater, machine.held), (Heater::None, Held::Unknown));
}

#[test]
fn a_window_keeps_every_fat_used_here_liquid() {
    let dripping = right(Subject::Pan).after(Field::PanFat, "dripping");
    let book = book(&[fact(Subject::Pan, &dripping)]);
    let form = right(Subject::Machine).after(Field::WindowLow, "64");
    assert_eq!(
        check(Subject::Machine, 7, &form, &book),
        Err(vec![(
            Field::WindowLow,
            Fault::NotLiquid {
                fat: Fat::Dripping,
                from: Temp::celsius(65)
            }
        )])
    );
    assert!(check(Subject::Machine, 7, &form.after(Field::WindowLow, "65"), &book).is_ok());
}

#[test]
fn a_hand_kit_is_asked_little_and_never_goes_above_forty_degrees() {
    let kit = machine(&right(Subject::Machine).after(Field::OutBy, OutBy::Hand.key()));
    assert_eq!((kit.out_by, kit.high), (OutBy::Hand, Temp::celsius(40)));
    assert_eq!((kit.rinse_max_s, kit.heater), (None, Heater::None));
}

#[test]
fn watts_nobody_knows_are_left_empty_and_come_back_so() {
    let heated = right(Subject::Machine).after(Field::Heater, "yes");
    let unknown = machine(&heated);
    assert_eq!(unknown.heater, Heater::NotKnown);
    assert!(unknown.heater.is_there(), "its warm-up is asked like any other's");
    let known = machine(&heated.clone().after(Field::HeaterWatts, "900"));
    assert_eq!(known.heater, Heater::of_watts(900));
    for (machine, watts) in [(unknown, ""), (known, "900")] {
        let book = book(&[Fact::Machine(Box::new(machine))]);
        let around = Around {
            book: &book,
            today: today(),
        };
        let form = Subject::Machine.filled(7, around).unwrap();
        assert_eq!((form.get(Field::Heater), form.get(Field::HeaterWatts)), ("yes", watts));
    }
}

#[test]
fn powder_is_none_until_its_owner_says_how_much() {
    let form = right(Subject::Machine);
    assert_eq!(machine(&form).powder, None);
    assert_eq!(machine(&form.clone().after(Field::Powder, "0")).powder, None);
    let dosed = machine(&form.clone().after(Field::Powder, "18"));
    assert_eq!(dosed.powder, Dose::from_g_per_l(18));
    let kit = form.clone().after(Field::OutBy, OutBy::Hand.key());
    assert_eq!(machine(&kit.after(Field::Powder, "9")).powder, Dose::from_g_per_l(9));
    // Grams a run, typed for grams a litre.
    assert_eq!(
        check(Subject::Machine, 7, &form.after(Field::Powder, "400"), &book(&[])),
        Err(vec![(Field::Powder, Fault::OutOfRange { least: 0, most: 100 })])
    );
    // Opened again it stands there.
    let known = book(&[Fact::Machine(Box::new(dosed.clone()))]);
    let around = Around {
        book: &known,
        today: today(),
    };
    let again = Subject::Machine.filled(dosed.machine.0, around).unwrap();
    assert_eq!(again.get(Field::Powder), "18");
}

#[test]
fn a_recirculating_filter_has_a_least_rinse_and_no_longest() {
    let form = right(Subject::Machine)
        .after(Field::FilterKind, "recirculating")
        .after(Field::RinseMin, "120");
    let machine = machine(&form);
    assert_eq!((machine.rinse_min_s, machine.rinse_max_s), (Some(120), None));
}
