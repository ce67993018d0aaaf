//! A draw that ended early: the rest is looked at as ever, with a word about how short it was, and the log knows.

use panward::domain::evidence::Word;
use panward::domain::guide::SHORT_DRAW_MS;
use panward::domain::procedure::StepId;
use panward::domain::time::Millis;
use panward::kitchen::filter::{ran_s, short_draw_s};

use crate::node::Node;
use crate::resume::at;

/// A pump that ran this long, seen off.
fn drew(node: &mut Node, ms: i64) {
    assert_eq!(node.step(), StepId::Draw);
    node.now.wall = Millis(node.now.wall.0 + ms);
    node.now.mono += ms;
    node.answer(node.good());
}

#[test]
fn a_draw_of_half_a_second_leads_to_the_look_with_a_word() {
    let mut node = at(StepId::Draw);
    drew(&mut node, 500);
    assert_eq!(node.step(), StepId::Remainder);
    assert_eq!(short_draw_s(node.run_now()), Some(0));
    // It is nobody's hold: what is seen in the pan goes on as ever.
    node.answer(node.good());
    assert_eq!(node.step(), StepId::Wipe);
}

#[test]
fn a_draw_is_short_up_to_its_limit_and_not_from_there_on() {
    for (ms, short) in [(SHORT_DRAW_MS - 1, Some(14)), (SHORT_DRAW_MS, None), (75_000, None)] {
        let mut node = at(StepId::Draw);
        drew(&mut node, ms);
        assert_eq!(short_draw_s(node.run_now()), short, "{ms} ms");
    }
}

#[test]
fn bursts_after_a_long_draw_are_not_short() {
    let mut node = at(StepId::Draw);
    drew(&mut node, 60_000);
    node.answer(node.good().with(panward::domain::evidence::Item::Remainder, Word::Oil));
    node.to(&crate::resume::kitchen(), StepId::Draw);
    drew(&mut node, 3_000);
    assert_eq!(short_draw_s(node.run_now()), None);
}

#[test]
fn nobody_is_told_of_a_draw_that_a_kill_cut_short() {
    let mut node = at(StepId::Draw);
    node.now.wall = Millis(node.now.wall.0 + 2_000);
    node.now.mono += 2_000;
    let mut node = node.reload();
    node.looks(Word::Split);
    assert_eq!(node.step(), StepId::Remainder);
    assert_eq!(short_draw_s(node.run_now()), None);
}

#[test]
fn the_log_says_how_long_the_pump_ran() {
    let mut node = at(StepId::Draw);
    drew(&mut node, 4_000);
    let entries = node.entries();
    let pairs = entries.iter().zip(entries.iter().skip(1));
    let ran: Vec<_> = pairs.filter_map(|(began, ended)| ran_s(began, ended)).collect();
    assert_eq!(ran, [4]);
}
