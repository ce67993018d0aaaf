//! A line unfolded: what was written and what stands, what was seen, a note beside it.

use super::right::right;
use super::rows::Unfolds;
use crate::browser::clock;
use crate::domain::entry::Entry;
use crate::domain::facts::{Fact, oil};
use crate::domain::ids::{EntryId, PanId};
use crate::domain::ledger::is_evidence;
use crate::domain::quick::{self, Quick, QuickRefusal, Said, is_quick};
use crate::kitchen::Order;
use crate::kitchen::filter;
use crate::nodes;
use crate::ui::bench::{Bench, LiveKitchen};
use crate::ui::node::{Element, Held, Node, el, live};
use crate::ui::parts::{Field, Rank, button};
use crate::words::log::{Office, office};
use crate::words::screens::log::{self, log};
use crate::words::{Lang, dates, format, log_lines, quick_refusals};

/// What a line unfolds into.
pub fn detail(bench: Bench, what: &Unfolds, open: Held<Option<EntryId>>) -> Element {
    match what {
        Unfolds::Entry(id) => one_entry(bench, *id, open),
        Unfolds::Entries { entries, pan } => steps(bench, entries, *pan, open),
    }
}

/// One entry: both versions, what was said of it later, and the ways on.
fn one_entry(bench: Bench, id: EntryId, open: Held<Option<EntryId>>) -> Element {
    let lang = bench.lang;
    let righting = Held::new(false);
    let versions = live(move || bench.read(|kitchen, _| versions(kitchen, id, lang)));
    let ways = live(move || {
        let can = bench.read(|kitchen, _| {
            let standing = kitchen.ledger().line(id).and_then(|line| line.standing());
            standing.is_some_and(|entry| is_quick(&entry.fact))
        });
        match (can, righting.get()) {
            (false, _) => Node::Nothing,
            (true, false) => {
                let right = move || righting.set(true);
                button(Rank::Second, office(Office::CorrectIt, lang), "log-right", right).into()
            }
            (true, true) => right(bench, id, open).into(),
        }
    });
    el("div")
        .class("log-open")
        .testid("log-open")
        .child(versions)
        .child(ways)
}

fn versions(kitchen: &LiveKitchen, id: EntryId, lang: Lang) -> Option<Node> {
    let line = kitchen.ledger().line(id)?;
    let heading = |words| el("h3").text(log(words, lang));
    let shown = |entry: &Entry, testid: &'static str| el("p").testid(testid).text(version(kitchen, entry, lang));
    let now = line.is_amended().then(|| line.standing()).flatten();
    let now = now.map(|entry| nodes![heading(log::Log::Now), shown(entry, "log-now")]);
    let later: Vec<_> = line
        .corrections()
        .iter()
        .filter_map(|id| said_later(kitchen, *id, lang))
        .map(|words| el("li").text(words))
        .collect();
    let later = (!later.is_empty()).then(|| {
        let list = el("ul").class("log-steps").testid("log-corrections");
        nodes![heading(log::Log::Corrections), list.children(later)]
    });
    let newer = matches!(line.written().fact, Fact::Newer(_)).then(|| el("p").text(log(log::Log::NewerText, lang)));
    Some(nodes![
        heading(log::Log::Before),
        shown(line.written(), "log-before"),
        now,
        later,
        newer,
    ])
}

/// An entry as one version says it: when and what.
fn version(kitchen: &LiveKitchen, entry: &Entry, lang: Lang) -> String {
    let said = log_lines::line(&entry.fact, &kitchen.ledger().book, lang);
    let at = dates::moment(entry.at, entry.off_min, lang);
    if entry.is_late() {
        let written = dates::moment(entry.rec, clock::offset(entry.rec), lang);
        format!("{at}: {said} ({})", log::written(&written, lang))
    } else {
        format!("{at}: {said}")
    }
}

fn said_later(kitchen: &LiveKitchen, id: EntryId, lang: Lang) -> Option<String> {
    let ledger = kitchen.ledger();
    let written = ledger.line(id)?.written();
    let Fact::Correct(correct) = &written.fact else {
        return None;
    };
    let who = written
        .who
        .map(|id| log_lines::who(&ledger.book, id))
        .unwrap_or_default();
    let at = dates::moment(written.rec, written.off_min, lang);
    Some(format!(
        "{at}, {who}: {}",
        log_lines::correction(correct, &ledger.book, lang)
    ))
}

pub(super) fn worded(why: &QuickRefusal, kitchen: &LiveKitchen, off_min: i16, lang: Lang) -> String {
    quick_refusals::refusal(why, &kitchen.ledger().book, off_min, lang)
}

/// The entries of a run or job with what was seen; a note can be put beside them.
fn steps(bench: Bench, entries: &[EntryId], pan: Option<PanId>, open: Held<Option<EntryId>>) -> Element {
    let lang = bench.lang;
    let last = entries.last().copied();
    let list = el("ol").class("log-steps").testid("log-steps");
    let list = bench.look(|kitchen, _| {
        let lines = entries.iter().filter_map(|id| kitchen.ledger().line(*id));
        let mut before = None;
        list.children(lines.map(|line| {
            let entry = line.written();
            let ran = before.replace(entry).and_then(|before| filter::ran_s(before, entry));
            let seen = log_lines::evidence(&entry.fact, lang).join(", ");
            let seen = (!seen.is_empty()).then(|| el("span").class("seen").text(" · ").text(seen));
            el("li")
                .child(el("time").text(format::time_of_day(entry.at, entry.off_min)))
                .text(log_lines::step(&entry.fact, lang))
                .text(ran.map_or_else(String::new, |s| log_lines::ran(s, lang)))
                .child(seen)
        }))
    });
    let text = Held::new(String::new());
    let refused = Held::new(None::<String>);
    let save = move || {
        let who = bench.me();
        let drafts = bench.look(|kitchen, now| {
            let ledger = kitchen.ledger();
            // A note on what was seen is dated to it, so that it stands beside it and shows as late when it is.
            let seen = last.and_then(|id| ledger.line(id)).map(|line| line.written());
            let at = seen.filter(|entry| is_evidence(&entry.fact)).map(|entry| entry.at);
            let text = text.get_untracked();
            let what = Quick::Note(oil::Note { pan, text });
            let said = Said {
                what,
                who,
                at,
                sure: false,
            };
            quick::drafts(ledger, said, *now).map_err(|why| worded(&why, kitchen, now.off_min, lang))
        });
        match drafts {
            Ok(drafts) => bench.send_then(Order::Write(drafts), move |entries| {
                bench.just_logged.set(entries.first().cloned());
                open.set(None);
            }),
            Err(words) => refused.set(Some(words)),
        }
    };
    let note = live(move || {
        let field = Field {
            hint: Some(log(log::Log::EvidenceStays, lang).into()),
            error: refused.get(),
            ..Field::of(log(log::Log::AddNote, lang), text, "log-note")
        };
        field.draw()
    });
    el("div")
        .class("log-open")
        .testid("log-open")
        .child(list)
        .child(note)
        .child(button(
            Rank::Second,
            log(log::Log::SaveNote, lang),
            "log-save-note",
            save,
        ))
}
