//! What a pan is kept for: what stands, what is lost and whom to tell, what restores it, and an evening begun.

mod restore;

use crate::domain::claim::ClaimKind;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::ClaimChange;
use crate::domain::ids::PanId;
use crate::domain::ledger::{Because, Ledger, Lost};
use crate::domain::quick::{self, Amendment, Quick, Said};
use crate::domain::time::{Day, Millis};
use crate::kitchen::Order;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::{eyebrow, frame};
use crate::ui::node::{Element, Node, el, live, several, worked_out};
use crate::ui::office::at_this_phone;
use crate::ui::parts::{Rank, button, card};
use crate::ui::screen::{self, Screen};
use crate::words::kept_for::{self as words, Line, line};
use crate::words::local::theirs;
use crate::words::{Lang, format, log_lines, run, setup};

use restore::Restoration;

/// What the page shows.
#[derive(Clone, Debug, Default, PartialEq)]
struct Shown {
    name: String,
    day: Option<Day>,
    /// What stands, and until when where it ends by itself.
    stands: Vec<(ClaimKind, Option<(Millis, i16)>)>,
    /// What is lost; why, as far as somebody said; of what the log lost itself, its entry.
    lost: Vec<(Lost, String)>,
}

fn look(ledger: &Ledger, pan: PanId, day: Day, now: Millis, lang: Lang) -> Shown {
    let why = |lost: &Lost| {
        let entry = ledger.line(lost.by).and_then(|line| line.standing());
        entry.map_or_else(String::new, |entry| match &entry.fact {
            Fact::ClaimLost(change) => change.why.clone(),
            fact => log_lines::line(fact, &ledger.book, lang),
        })
    };
    let stands = ledger.claims_now(pan, day, now).into_iter().map(|claim| {
        let mut evenings = ledger.evenings(pan);
        let evening = evenings.find(|e| e.what == claim.what && claim.until.is_some());
        (claim.what, evening.map(|e| (e.until, e.off_min)))
    });
    Shown {
        name: ledger.book.pan(pan).map_or_else(String::new, |p| p.name.clone()),
        day: Some(day),
        stands: stands.collect(),
        lost: ledger
            .claims_lost(pan, day)
            .into_iter()
            .map(|lost| (lost, why(&lost)))
            .collect(),
    }
}

/// What a pan is kept for.
#[must_use]
pub fn kept_for(bench: Bench, pan: PanId) -> Element {
    let lang = bench.lang;
    let shown = worked_out(move || {
        bench.read_each_second(|kitchen, now| look(kitchen.ledger(), pan, kitchen.today(now), now.wall, lang))
    });
    let told = Restoration::begin(bench, pan);
    let heading = live(move || shown.with(|shown| run::pan_title(&shown.name, lang)));
    let eyebrow = eyebrow(move || line(Line::ToHere, lang).to_owned());
    let lost =
        live(move || shown.with(|shown| several(shown.lost.iter().map(|one| lost_card(bench, told, shown, one)))));
    let stands = live(move || {
        shown.with(|shown| {
            let nothing = shown.stands.is_empty() && shown.lost.is_empty();
            let nothing = nothing.then(|| el("p").text(line(Line::Nothing, lang)));
            nodes![
                nothing,
                several(shown.stands.iter().map(|one| standing(bench, (pan, &shown.name), *one))),
            ]
        })
    });
    let holds = nodes![
        lost,
        told.form(true),
        stands,
        told.choice(),
        told.form(false),
        at_this_phone(bench)
    ];
    el("div")
        .testid("screen-kept")
        .child(frame(Screen::KeptFor(pan), heading, eyebrow, holds))
}

/// A promise that stands, with the one touch that loses it.
fn standing(bench: Bench, (pan, name): (PanId, &str), (what, until): (ClaimKind, Option<(Millis, i16)>)) -> Element {
    let lang = bench.lang;
    let kept = match until {
        Some((until, off_min)) => words::ends(what, &format::time_of_day(until, off_min), lang),
        None => setup::claim_name(what, lang).to_owned(),
    };
    let lose = button(
        Rank::Second,
        words::log_lost(name, what, lang),
        format!("lose-{}", what.key()),
        move || {
            lose(bench, pan, what);
        },
    );
    card(format!("stands-{}", what.key()))
        .child(el("h2").text(kept))
        .child(el("p").text(setup::claim_asks(what, lang)))
        .child(lose)
}

/// Writes a loss at once, then shows whom to tell. Why may be said afterwards.
pub fn lose(bench: Bench, pan: PanId, what: ClaimKind) {
    let said = Said {
        what: Quick::ClaimLost(ClaimChange {
            pan,
            what,
            why: String::new(),
            basis: None,
        }),
        who: bench.me(),
        at: None,
        sure: true,
    };
    let drafts = bench.look(|kitchen, now| quick::drafts(kitchen.ledger(), said, *now));
    // Refused only when it is lost already, and then its page says so.
    bench.send_then(Order::Write(drafts.unwrap_or_default()), move |entries| {
        bench.just_logged.set(entries.first().cloned());
        screen::go(Screen::KeptFor(pan));
    });
}

/// A promise that is lost: whom to tell, why, what restores it.
fn lost_card(bench: Bench, told: Restoration, shown: &Shown, (lost, why): &(Lost, String)) -> Element {
    let lang = bench.lang;
    let what = lost.what;
    let since = format::time_of_day(lost.at, lost.off_min);
    let lines = |lines: Vec<Node>| {
        el("ul")
            .class("lines")
            .children(lines.into_iter().map(|line| el("li").child(line)))
    };
    let tell = words::tell(&shown.name, what, &since, lang).map(Node::from);
    let restores = words::restores(what, lang).iter().map(|line| Node::from(*line));
    let by_itself = words::because(lost, lang).map(|words| {
        let words = el("p").testid("lost-by-log").text(words);
        words.text(" ").text(why.clone())
    });
    let by = lost.by;
    let entry = button(Rank::Plain, line(Line::ToEntry, lang), "lost-entry", move || {
        screen::go(Screen::Log(Some(by)));
    });
    let reasons = (lost.because == Because::Said).then(|| reasons(bench, *lost, why));
    let restore = button(
        Rank::Second,
        line(Line::Restore, lang),
        format!("restore-{}", what.key()),
        move || {
            told.choose(what);
        },
    );
    card(format!("lost-{}", what.key()))
        .class("lost")
        .child(el("h2").text(words::stands_lost(lost, lang)))
        .child(by_itself)
        .child(el("h3").text(line(Line::Tell, lang)))
        .child(lines(tell.into()).testid("tell"))
        .child(reasons)
        .child(el("h3").text(line(Line::Restores, lang)))
        .child(lines(restores.collect()))
        .child(el("p").text(line(Line::RestoresNot, lang)))
        .child(restore)
        .child(entry)
}

/// The reason as it was given, or the few it may be.
fn reasons(bench: Bench, lost: Lost, why: &str) -> Element {
    let lang = bench.lang;
    let given = el("div").class("choice-row").testid("lost-why");
    if !why.is_empty() {
        return given.child(el("p").text(format!("{}: {}", line(Line::WhyGiven, lang), theirs(why))));
    }
    let all = (1..).zip(words::lost_reasons(lang)).map(|(n, reason)| {
        button(Rank::Second, *reason, format!("lost-why-{n}"), move || {
            because(bench, lost, reason)
        })
    });
    el("div")
        .child(el("h3").text(line(Line::Why, lang)))
        .child(given.children(all))
}

/// Says why, after the counter was told.
fn because(bench: Bench, lost: Lost, reason: &str) {
    let who = bench.me();
    let draft = bench.look(|kitchen, now| {
        let ledger = kitchen.ledger();
        let entry = ledger.line(lost.by)?.standing()?;
        let Fact::ClaimLost(change) = &entry.fact else {
            return None;
        };
        let fact = Fact::ClaimLost(ClaimChange {
            why: reason.to_owned(),
            ..change.clone()
        });
        let amendment = Amendment {
            why: line(Line::WhyAfter, bench.lang).to_owned(),
            at: None,
            fact: Some(fact),
        };
        quick::amend(ledger, lost.by, amendment, who, *now).ok()
    });
    bench.send(Order::Write(draft.into_iter().collect()));
}
