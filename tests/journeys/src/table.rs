//! What the step tables call a good answer, so that a walker need not be told step by step.

use panward::domain::evidence::Item;
use panward::domain::facts::setup::{OffSign, OutBy, Route};
use panward::domain::guide::gate::off_answer;
use panward::domain::procedure::{Ask, DayTables, How, PanTables, Step, Tables, Verdict};
use std::cell::RefCell;

/// Every step of every table; the runs of other machine kinds are left out, for they may want a valve the other way.
fn all_steps(out_by: OutBy) -> Vec<&'static Step> {
    let Tables {
        ready,
        again,
        again_hand,
        away,
        line_solid,
        leave_set,
        ..
    } = Tables::REAL;
    let run = Tables::REAL.run(Route::Hot, out_by);
    let lists = [ready, run, again, again_hand, away];
    let alone = [line_solid, leave_set];
    let steps = RefCell::new(lists.into_iter().flatten().chain(alone).collect::<Vec<_>>());
    let _ = DayTables::REAL.each(|step| {
        steps.borrow_mut().push(step);
        step
    });
    let _ = PanTables::REAL.each(|step| {
        steps.borrow_mut().push(step);
        step
    });
    steps.into_inner()
}

/// The good words for an item, best first, at a step; at any step where that one does not ask it.
#[must_use]
pub fn good_words(out_by: OutBy, step: &str, item: &str) -> Vec<&'static str> {
    let steps = all_steps(out_by);
    let of = |here: bool| -> Vec<&'static str> {
        let steps = steps.iter().filter(|s| (s.id.key() == step) == here);
        let mut words = Vec::new();
        // Two tables may ask the same at steps of one id: it is one answer.
        for word in steps.flat_map(|s| s.asks).flat_map(|ask| good_of(ask, item)) {
            if !words.contains(&word) {
                words.push(word);
            }
        }
        words
    };
    let here = of(true);
    if here.is_empty() { of(false) } else { here }
}

fn good_of(ask: &Ask, item: &str) -> Vec<&'static str> {
    match ask.how {
        How::OffSign(_) => OffSign::ALL
            .iter()
            .map(|sign| off_answer(*sign))
            .filter(|(asked, ..)| asked.key() == item)
            .map(|(_, off, _)| off.key())
            .collect(),
        How::Look(answers) | How::OffTarget(answers) | How::TagIfLow(answers) | How::IfElsewhere(answers)
            if ask.item.key() == item =>
        {
            answers
                .iter()
                .filter(|answer| answer.verdict == Verdict::Good)
                .map(|answer| answer.word.key())
                .collect()
        }
        How::Look(_)
        | How::OffTarget(_)
        | How::TagIfLow(_)
        | How::IfElsewhere(_)
        | How::Probe
        | How::Person
        | How::Machine => Vec::new(),
    }
}

/// The item and the word of an answer's test id, "answer-tank_place-in_place".
#[must_use]
pub fn answer_of(id: &str) -> Option<(Item, &str)> {
    let (item, word) = id.strip_prefix("answer-")?.split_once('-')?;
    Some((Item::from_key(item)?, word))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_tables_say_which_answer_is_good_and_where() {
        assert_eq!(good_words(OutBy::Nozzle, "out.connect", "valve"), ["shut"]);
        assert_eq!(
            good_words(OutBy::Nozzle, "out.heat_off", "gas_tap").first(),
            Some(&"shut")
        );
        assert_eq!(good_words(OutBy::Nozzle, "light.look", "tag"), ["none"]);
        assert_eq!(
            good_words(OutBy::Nozzle, "again.leave_out", "tag").first(),
            Some(&"hung")
        );
        assert_eq!(good_words(OutBy::Nozzle, "return.leave", "lid"), ["in_place"]);
        assert_eq!(
            answer_of("answer-tank_place-in_place"),
            Some((Item::TankPlace, "in_place"))
        );
        assert_eq!(answer_of("answer-together"), None);
    }
}
