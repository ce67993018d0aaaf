//! The words and measures of the kitchen that is open: its country's, with what it named itself left as it is.

use crate::domain::ledger::Book;
use crate::ui::node::speak;
use crate::words::local::Local;

/// Everything from now on is drawn in this kitchen's words.
pub fn speak_as(book: &Book) {
    let country = book.kitchen.as_ref().map_or("", |kitchen| kitchen.country.as_str());
    let kitchen = book.kitchen.iter().map(|kitchen| &kitchen.name);
    let pans = book
        .pans
        .values()
        .flat_map(|pan| [&pan.name, &pan.mark].into_iter().chain(&pan.end_sign));
    let basis = book
        .pans
        .values()
        .flat_map(|pan| pan.claims.iter().map(|claim| &claim.basis));
    let machines = book.machines.values().flat_map(|machine| {
        let words = machine.words.iter().map(|(_, words)| words);
        [&machine.name].into_iter().chain(&machine.filters).chain(words)
    });
    let others = book.people.values().map(|person| &person.initials);
    let others = others.chain(book.instruments.values().map(|tool| &tool.name));
    let names = kitchen.chain(pans).chain(basis).chain(machines).chain(others);
    speak(Local::of(country, names.map(String::as_str)));
}
