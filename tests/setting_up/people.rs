//! The form of a person: who is signed off for what, and by whom.

use panward::domain::facts::Fact;
use panward::domain::facts::setup::{Person, Route};
use panward::domain::ledger::Book;
use panward::domain::setting_up::{Answers, Fault, Field, MYSELF, Subject};

use crate::{blank, book, check, fact, right};

fn person(answers: &Answers) -> Person {
    match fact(Subject::Person, answers) {
        Fact::Person(person) => person,
        other => panic!("{other:?}"),
    }
}

#[test]
fn the_owner_of_a_one_person_kitchen_vouches_for_themselves() {
    let owner = person(&right(Subject::Person));
    assert_eq!(owner.by, Some(owner.person));
    assert_eq!(owner.routes, [Route::Hot, Route::Cold]);
    assert!(
        owner.may_supervise,
        "else the vouching would lapse with the second person"
    );
}

#[test]
fn nobody_under_eighteen_is_signed_off_for_hot_oil_or_stands_beside_a_starter() {
    let form = right(Subject::Person).after(Field::Adult, "no");
    assert_eq!(
        check(Subject::Person, 7, &form, &Book::default()),
        Err(vec![
            (Field::Routes, Fault::UnderAge),
            (Field::MaySupervise, Fault::UnderAge),
            (Field::Vouched, Fault::UnderAge)
        ])
    );
}

#[test]
fn later_people_are_signed_off_by_somebody_else() {
    let book = book(&[fact(Subject::Person, &right(Subject::Person))]);
    let starter = blank(Subject::Person, &book)
        .after(Field::Initials, "NS")
        .after(Field::Adult, "yes");
    let said = check(Subject::Person, 8, &starter, &book).unwrap();
    let Fact::Person(person) = &said[0] else {
        panic!("{said:?}")
    };
    assert!(
        person.routes.is_empty() && person.by.is_none(),
        "a starter is signed off for nothing"
    );

    let frier = starter.after(Field::Routes, "hot");
    assert_eq!(
        check(Subject::Person, 8, &frier, &book),
        Err(vec![(Field::SignedBy, Fault::NobodySigned)])
    );
    let alone = frier
        .clone()
        .after(Field::SignedBy, MYSELF)
        .after(Field::Vouched, "yes");
    assert_eq!(
        check(Subject::Person, 8, &alone, &book),
        Err(vec![(Field::SignedBy, Fault::NotAlone)])
    );
    let signed = frier.after(Field::SignedBy, &format!("{:032x}", 7));
    assert!(check(Subject::Person, 8, &signed, &book).is_ok());
    assert_eq!(
        check(Subject::Person, 8, &signed.after(Field::Initials, "HL"), &book),
        Err(vec![(Field::Initials, Fault::NameTaken)])
    );
}
