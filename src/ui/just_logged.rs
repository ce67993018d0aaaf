//! "Saved", once the store has said so, with ten seconds to take it back, on whatever screen comes next.

use std::time::Duration;

use super::bench::Bench;
use super::node::{Act, Node, live};
use super::parts::Undo;
use crate::domain::entry::Entry;
use crate::domain::quick;
use crate::kitchen::Order;
use crate::words::log::{Office, office};
use crate::words::log_lines;
use crate::words::screens::add;

/// The offer, while there is one.
#[must_use]
pub fn just_logged(bench: Bench) -> Node {
    live(move || {
        let entry = bench.just_logged.get()?;
        let age = bench.look(|_, now| now.wall.since(entry.rec));
        if !(0..quick::TAKE_BACK_MS).contains(&age) {
            return None;
        }
        let line = bench.look(|kitchen, _| log_lines::line(&entry.fact, &kitchen.ledger().book, bench.lang));
        let back = Act::new(move || {
            bench.just_logged.set(None);
            take_back(bench, &entry);
        });
        let undo = Undo {
            text: add::saved(&line, bench.lang).into(),
            label: office(Office::TakeBack, bench.lang).into(),
            on_undo: back,
            age: Duration::from_millis(age.unsigned_abs()),
            on_over: Act::new(move || bench.just_logged.set(None)),
        };
        Some(undo.draw())
    })
}

/// Everything that was said together is taken back together: it was written at one moment.
fn take_back(bench: Bench, entry: &Entry) {
    let who = bench.me();
    let drafts = bench.look(|kitchen, now| {
        let ledger = kitchen.ledger();
        let lines = ledger.lines().rev().map(|line| line.written());
        let together: Vec<_> = lines
            .take_while(|written| written.rec >= entry.rec)
            .filter(|written| written.rec == entry.rec && written.dev == entry.dev)
            .map(|written| written.id)
            .collect();
        quick::take_back(ledger, &together, add::taken_back(bench.lang), who, *now)
    });
    // Too late by a blink: the offer has gone with it, and the log still puts it right.
    if let Ok(drafts) = drafts {
        bench.send(Order::Write(drafts));
    }
}
