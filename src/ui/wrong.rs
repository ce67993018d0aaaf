//! "Something is wrong": a list of days that go wrong, each with its card, over whatever screen is beneath. It answers
//! nothing of the job; what is said here goes into the log by itself.

use super::bench::Bench;
use super::cards::{Card, CardDesk, lines};
use super::node::{Act, Element, Held, Node, Tell, el, follow, live, several};
use super::parts::{Choice, Field, Rank, Sheet, SignKind, button};
use crate::domain::evidence::{Evidence, Word};
use crate::domain::facts::trouble::{TroubleEvent, TroubleFact, TroubleKind};
use crate::domain::procedure::StepId;
use crate::domain::trouble::{Look, Row, is_good, row};
use crate::kitchen::Order;
use crate::kitchen::wrong::{About, abouts, standing};
use crate::nodes;
use crate::words::wrong_days::{self as words, Say, say};
use crate::words::{answers, questions, run};

/// The sheet.
#[must_use]
pub fn sheet(bench: Bench, desk: CardDesk) -> Element {
    let lang = bench.lang;
    // What could not be written is told on the screen beneath.
    follow(move || {
        if bench.trouble.with(Option::is_some) && desk.open.get_untracked() == Some(Card::Wrong) {
            desk.open.set(None);
        }
    });
    let is_open = move || desk.open.get() == Some(Card::Wrong);
    let sheet = Sheet {
        open: Box::new(is_open),
        on_close: Act::new(move || desk.open.set(None)),
        title: say(Say::Title, lang).into(),
        sign: Some(SignKind::Warning),
        close: crate::words::cards::close_card(lang).into(),
        testid: "card-wrong",
        holds: live(move || -> Node {
            if !is_open() {
                return Node::Nothing;
            }
            match desk.wrong.get() {
                None => list(bench, desk).into(),
                Some(what) => card(bench, desk, what),
            }
        }),
    };
    sheet.draw()
}

/// Every trouble by name; what stands already says so.
fn list(bench: Bench, desk: CardDesk) -> Element {
    let lang = bench.lang;
    let stands: Vec<TroubleKind> =
        bench.read(|kitchen, _| standing(kitchen.ledger()).into_iter().map(|t| t.0).collect());
    // Where the owner has put the rule off, being alone stops nothing.
    let rule = bench.look(|kitchen, now| kitchen.scene(now).second_person);
    let listed = TroubleKind::ALL
        .iter()
        .filter(|what| rule || **what != TroubleKind::Alone);
    let buttons = listed.map(|what| {
        let stands = stands.contains(what).then(|| el("small").text(say(Say::Stands, lang)));
        let testid = format!("wrong-{}", what.key());
        button(Rank::Second, words::name(*what, lang), testid, move || {
            desk.wrong.set(Some(*what))
        })
        .child(stands)
    });
    el("div").class("job-list wrong-list").children(buttons)
}

/// One trouble: what to do, and what is said of it.
fn card(bench: Bench, desk: CardDesk, what: TroubleKind) -> Node {
    let lang = bench.lang;
    let about = bench.read(|kitchen, _| abouts(kitchen, what));
    let several_of_it = about.len() > 1;
    let said = (1..).zip(about).map(move |(n, about)| {
        let name = match about.pan {
            Some(_) => run::pan_title(&about.name, lang),
            None => about.name.clone(),
        };
        let head = several_of_it.then(|| el("h3").text(name));
        el("section")
            .class("wrong-about")
            .child(head)
            .child(of_one(bench, what, about, n))
    });
    let back = button(Rank::Plain, say(Say::Others, lang), "wrong-others", move || {
        desk.wrong.set(None)
    });
    nodes![
        el("h2").testid("wrong-name").text(words::name(what, lang)),
        lines(words::card(what, lang)),
        several_of_it.then(|| el("h2").text(say(Say::Which, lang))),
        several(said),
        back,
    ]
}

/// What is said of a trouble of the kitchen, a pan or a machine: that it is so; then that it is safe; then that it is over.
fn of_one(bench: Bench, what: TroubleKind, about: About, n: usize) -> Node {
    let lang = bench.lang;
    let Row {
        safe, over, mended_by, ..
    } = *row(what);
    let of = Held::new((about.pan, about.machine));
    let send = Tell::new(move |(event, evidence, text)| {
        let (pan, machine) = of.get_untracked();
        let fact = TroubleFact {
            what,
            event,
            pan,
            machine,
            evidence,
            text,
        };
        bench.send(Order::Trouble(fact, bench.me()));
    });
    let Some(looked) = about.looked else {
        let is_so = move || send.run((TroubleEvent::Began, Evidence::new(), None));
        return button(Rank::Second, say(Say::ItIsSo, lang), format!("wrong-so-{n}"), is_so).into();
    };
    let safe = (!looked && !safe.is_empty()).then(|| {
        nodes![
            el("h3").text(say(Say::MakeSafe, lang)),
            form(bench, (safe, false), Say::SafeSeen, TroubleEvent::Looked, send.clone()),
        ]
    });
    let first = words::over(what, lang);
    nodes![
        safe,
        el("h3").text(say(Say::WhenOver, lang)),
        lines(first),
        form(bench, (over, mended_by), Say::ItIsOver, TroubleEvent::Over, send),
    ]
}

/// Looks to be answered, who mended it where that is asked, and the button that says so once all is as it must be.
fn form(
    bench: Bench,
    (looks, mended_by): (&'static [Look], bool),
    done: Say,
    event: TroubleEvent,
    send: Tell<(TroubleEvent, Evidence, Option<String>)>,
) -> Node {
    let lang = bench.lang;
    let seen = Held::new(Evidence::new());
    let name = Held::new(String::new());
    live(move || {
        let now = seen.get();
        let looks_asked = looks.iter().map(|look| {
            let item = look.item;
            let options = look
                .answers
                .iter()
                .map(|a| (a.word.key().to_owned(), answers::label(item, a.word, lang)));
            let choice = Choice {
                legend: questions::question(StepId::LookAgain, item, lang).into(),
                options: options.collect(),
                chosen: now.word(item).map(|word| word.key().to_owned()),
                on_choose: Tell::new(move |key: String| {
                    if let Some(word) = Word::from_key(&key) {
                        seen.update(|seen| *seen = std::mem::take(seen).with(item, word));
                    }
                }),
                error: None,
                testid: format!("{}-{}", event.key(), item.key()).into(),
            };
            choice.draw()
        });
        let by = mended_by.then(|| Field::of(say(Say::MendedBy, lang), name, "mended-by").draw());
        let all = looks
            .iter()
            .all(|look| now.word(look.item).is_some_and(|word| is_good(look, word)));
        let named = !mended_by || name.with(|name| !name.trim().is_empty());
        let send = send.clone();
        let say_so = move || {
            let text = mended_by.then(|| name.get_untracked().trim().to_owned());
            send.run((event, seen.get_untracked(), text));
        };
        let button = button(
            Rank::Second,
            say(done, lang),
            format!("wrong-{}-done", event.key()),
            say_so,
        );
        nodes![several(looks_asked), by, button.flag("disabled", !(all && named))]
    })
}
