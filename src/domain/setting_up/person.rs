//! A person's form: initials, age, what they are signed off for, and by whom.

use super::read::{NAME_MOST, Reader, as_set};
use super::{Answers, Around, Fault, Field, MYSELF, NO, Wrong};
use crate::domain::facts::Fact;
use crate::domain::facts::setup::{Person, Route};
use crate::domain::ids::PersonId;
use crate::domain::ledger::Book;

/// Who may sign somebody off: adults signed off themselves who may stand beside a starter.
pub fn signers(book: &Book, but: PersonId) -> impl Iterator<Item = &Person> {
    book.people
        .values()
        .filter(move |p| p.person != but && p.adult && p.may_supervise && !p.routes.is_empty())
}

/// Whether this person may vouch for themselves: nobody else can, or they did already.
fn may_vouch(person: PersonId, book: &Book) -> bool {
    let did = book.person(person).is_some_and(|p| p.by == Some(person));
    did || signers(book, person).next().is_none()
}

pub(super) fn blank(book: &Book) -> Answers {
    let mut answers = Answers::default();
    if signers(book, PersonId(0)).next().is_none() {
        answers.put(Field::Routes, as_set(Route::ALL.iter().map(|r| r.key())));
        answers.tick(Field::MaySupervise, true);
    }
    answers
}

pub(super) fn of(person: &Person) -> Answers {
    let by = match person.by {
        Some(by) if by == person.person => MYSELF.to_owned(),
        Some(by) => hex(by),
        None => String::new(),
    };
    let mut answers = Answers::default()
        .with(Field::Initials, &*person.initials)
        .with(Field::Routes, as_set(person.routes.iter().map(|r| r.key())))
        .with(Field::SignedBy, by)
        .with(
            Field::SignedUntil,
            person.until.map(|d| d.date().to_string()).unwrap_or_default(),
        );
    answers.tick(Field::Adult, person.adult);
    answers.tick(Field::MaySupervise, person.may_supervise);
    answers.tick(Field::Vouched, person.by == Some(person.person));
    answers
}

fn hex(person: PersonId) -> String {
    format!("{:032x}", person.0)
}

pub(super) fn pages(id: PersonId, answers: &Answers, book: &Book) -> Vec<Vec<Field>> {
    let mut page = vec![Field::Initials, Field::Adult, Field::Routes];
    if answers.set(Field::Routes).next().is_some() {
        page.push(Field::MaySupervise);
        let others = signers(book, id).next().is_some();
        if others {
            page.push(Field::SignedBy);
        }
        if may_vouch(id, book) && (!others || answers.get(Field::SignedBy) == MYSELF) {
            page.push(Field::Vouched);
        }
        if others {
            page.push(Field::SignedUntil);
        }
    }
    vec![page]
}

pub(super) fn check(id: PersonId, answers: &Answers, around: Around, wrongs: &mut Vec<Wrong>) -> Option<Vec<Fact>> {
    let mut read = Reader { answers, wrongs };
    let initials = read.words(Field::Initials, NAME_MOST);
    if let Some(initials) = &initials
        && around
            .book
            .people
            .values()
            .any(|p| p.person != id && p.initials == *initials)
    {
        read.refuse::<()>(Field::Initials, Fault::NameTaken);
    }
    if answers.get(Field::Adult).is_empty() {
        read.refuse::<()>(Field::Adult, Fault::Missing);
    }
    let (adult, minor) = (answers.yes(Field::Adult), answers.get(Field::Adult) == NO);
    let routes = read.set(Field::Routes, Route::from_key);
    let may_supervise = answers.yes(Field::MaySupervise);
    if minor && routes.contains(&Route::Hot) {
        read.refuse::<()>(Field::Routes, Fault::UnderAge);
    }
    if minor && may_supervise {
        read.refuse::<()>(Field::MaySupervise, Fault::UnderAge);
    }
    let by = if routes.is_empty() {
        Some(None)
    } else {
        signed(&mut read, id, around.book)
    };
    let until = read.day_if_any(Field::SignedUntil);
    Some(vec![Fact::Person(Person {
        person: id,
        initials: initials?,
        adult,
        routes,
        may_supervise,
        by: by?,
        until: until?,
    })])
}

fn signed(read: &mut Reader, id: PersonId, book: &Book) -> Option<Option<PersonId>> {
    let chosen = read.answers.get(Field::SignedBy);
    if let Some(by) = signers(book, id).find(|p| hex(p.person) == chosen) {
        return Some(Some(by.person));
    }
    if !may_vouch(id, book) {
        let why = if chosen == MYSELF {
            Fault::NotAlone
        } else {
            Fault::NobodySigned
        };
        return read.refuse(Field::SignedBy, why);
    }
    if signers(book, id).next().is_some() && chosen != MYSELF {
        return read.refuse(Field::SignedBy, Fault::NobodySigned);
    }
    // Nobody under eighteen can be the one person a kitchen has.
    if read.answers.get(Field::Adult) == NO {
        return read.refuse(Field::Vouched, Fault::UnderAge);
    }
    if read.answers.yes(Field::Vouched) {
        Some(Some(id))
    } else {
        read.refuse(Field::Vouched, Fault::NobodySigned)
    }
}
