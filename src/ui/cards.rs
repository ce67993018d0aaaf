//! The fire card and the burn card: one touch from every screen, before set-up too.

use std::cell::Cell;
use std::time::Duration;

use leptos::prelude::{expect_context, on_cleanup, provide_context, set_interval_with_handle};

use super::node::{Act, Element, Held, Node, Text, el, follow, live};
use super::parts::{Bar, BigClock, Rank, Sheet, SignKind, button, emergency};
use super::prefs;
use crate::browser::clock;
use crate::domain::facts::trouble::TroubleKind;
use crate::domain::procedure::StepId;
use crate::domain::time::Millis;
use crate::nodes;
use crate::words::cards::{self, Line};
use crate::words::today::{Line as Word, line};
use crate::words::wrong_days::{self, Say};
use crate::words::{Lang, helper};

/// How long a burn is cooled, in seconds (NHS, Burns and scalds).
const COOL_S: i64 = 20 * 60;
/// A clock as old as this belongs to an earlier burn.
const STALE_S: i64 = 60 * 60;
/// So does that of a card which stood closed for as long as this (project default): cooling anew harms nobody, cooling
/// too short does.
const CLOSED_S: i64 = 60;

/// Which card is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Card {
    /// Fire.
    Fire,
    /// Burn.
    Burn,
    /// Something else is wrong; [`CardDesk::wrong`] says what.
    Wrong,
}

/// The cards of the whole app.
#[derive(Clone, Copy)]
pub struct CardDesk {
    /// The card shown.
    pub open: Held<Option<Card>>,
    /// The number they show; the owner's once there is a kitchen.
    pub number: Held<String>,
    /// The day that goes wrong whose card is shown; the list of them where there is none.
    pub wrong: Held<Option<TroubleKind>>,
    /// The step whose helper's card is shown.
    pub helper: Held<Option<StepId>>,
}

impl CardDesk {
    /// Opens the fire card.
    #[must_use]
    pub fn fire(self) -> Act {
        Act::new(move || self.open.set(Some(Card::Fire)))
    }

    /// Opens the burn card.
    #[must_use]
    pub fn burn(self) -> Act {
        Act::new(move || self.open.set(Some(Card::Burn)))
    }

    /// Opens the list of days that go wrong, or one of their cards.
    #[must_use]
    pub fn wrong(self, what: Option<TroubleKind>) -> Act {
        Act::new(move || {
            self.wrong.set(what);
            self.open.set(Some(Card::Wrong));
        })
    }

    /// The two buttons that open them, and the one that opens the list of days that go wrong.
    #[must_use]
    pub fn three_buttons(self, lang: Lang) -> Element {
        self.buttons(lang).child(button(
            Rank::Second,
            wrong_days::say(Say::Open, lang),
            "wrong",
            self.wrong(None),
        ))
    }

    /// The two buttons that open them.
    #[must_use]
    pub fn buttons(self, lang: Lang) -> Element {
        emergency(
            [cards::fire_button(lang), cards::burn_button(lang)],
            self.fire(),
            self.burn(),
        )
    }
}

/// Puts the desk where every screen finds it.
pub fn provide() -> CardDesk {
    let desk = CardDesk {
        open: Held::new(None),
        number: Held::new(cards::DEFAULT_EMERGENCY_NUMBER.to_owned()),
        wrong: Held::new(None),
        helper: Held::new(None),
    };
    provide_context(desk);
    desk
}

/// The desk.
#[must_use]
pub fn use_cards() -> CardDesk {
    expect_context::<CardDesk>()
}

/// Both cards, over everything.
#[must_use]
pub fn both(desk: CardDesk) -> Node {
    let lang = Lang::En;
    let number = desk.number;
    // Their lines are drawn as they open: a start is spared them.
    let is_open = move |card| desk.open.get() == Some(card);
    let fire = nodes![
        el("p").class("card-first").text(cards::smoke_line(lang)),
        live(move || is_open(Card::Fire).then(|| listed(cards::fire_card(&number.get(), lang)))),
    ];
    let burn = nodes![
        burn_clock(desk),
        live(move || is_open(Card::Burn).then(|| listed(cards::burn_card(&number.get(), lang)))),
    ];
    let sheet = |card, title: &'static str, sign, other: Element, testid, holds| {
        let sheet = Sheet {
            open: Box::new(move || is_open(card)),
            on_close: Act::new(move || desk.open.set(None)),
            title: title.into(),
            sign: Some(sign),
            emergency: other.into(),
            close: cards::close_card(lang).into(),
            testid,
            holds,
        };
        sheet.draw()
    };
    // The fire card lies over the way to the burn card, and the other way round.
    let other = |words, testid, open| {
        el("div")
            .class("emergency")
            .child(button(Rank::Second, words, testid, open))
    };
    let (fire_says, burn_says) = (cards::fire_button(lang), cards::burn_button(lang));
    let to_burn = other(burn_says, "burn", desk.burn());
    let to_fire = other(fire_says, "fire", desk.fire());
    nodes![
        sheet(Card::Fire, fire_says, SignKind::Fire, to_burn, "card-fire", fire),
        sheet(Card::Burn, burn_says, SignKind::FirstAid, to_fire, "card-burn", burn),
        helper_sheet(desk),
    ]
}

/// The helper's card: place, one job and shout, read at two metres. It answers nothing of the step beneath.
fn helper_sheet(desk: CardDesk) -> Element {
    let lang = Lang::En;
    let sheet = Sheet {
        open: Box::new(move || desk.helper.get().is_some()),
        on_close: Act::new(move || desk.helper.set(None)),
        title: helper::title(lang).into(),
        sign: None,
        emergency: desk.buttons(lang).into(),
        close: cards::close_card(lang).into(),
        testid: "card-helper",
        holds: live(move || {
            let card = helper::card(desk.helper.get()?, lang);
            let said = helper::heads(lang).into_iter().zip([card.place, card.job, card.shout]);
            let said = said.map(|(head, words)| nodes![el("dt").text(head), el("dd").text(words)]);
            Some(el("dl").class("helper").children(said))
        }),
    };
    sheet.draw()
}

fn listed(said: Vec<Line>) -> Element {
    let said = said.into_iter().map(|Line { text, source }| one(text.into(), source));
    el("ol").class("card-lines").children(said)
}

/// What to do, large, and who says so, small.
#[must_use]
pub fn lines(said: &'static [(&'static str, &'static str)]) -> Element {
    let said = said.iter().map(|(text, source)| one((*text).into(), source));
    el("ol").class("card-lines").children(said)
}

fn one(text: Text, source: &'static str) -> Element {
    let source = el("small").class("source").text(source);
    el("li").text(text).text(" ").child(source)
}

/// Counts up to 20 minutes from when the card was opened, across a reload and across a look at something else.
fn burn_clock(desk: CardDesk) -> Element {
    let lang = Lang::En;
    let started = Held::new(prefs::burn_started());
    let wall = Held::new(clock::wall());
    let start = move || {
        let now = clock::wall();
        wall.set(now);
        started.set(Some(now));
        prefs::set_burn_started(now);
    };
    let opened = Cell::new(false);
    follow(move || {
        if desk.open.get() != Some(Card::Burn) {
            if opened.replace(false) {
                prefs::set_burn_closed(Some(clock::wall()));
            }
            return;
        }
        opened.set(true);
        // An own clock, since a burn does not wait for a kitchen to be open.
        let seconds = set_interval_with_handle(move || wall.set(clock::wall()), Duration::from_secs(1));
        on_cleanup(move || {
            if let Ok(seconds) = seconds {
                seconds.clear();
            }
        });
        let now = clock::wall();
        wall.set(now);
        let gone_s = started.get_untracked().map(|at| now.since(at) / Millis::SECOND);
        let stale = !gone_s.is_some_and(|gone| (0..STALE_S).contains(&gone));
        let closed_s = prefs::burn_closed().map(|at| now.since(at) / Millis::SECOND);
        if stale || closed_s.is_some_and(|closed| !(0..CLOSED_S).contains(&closed)) {
            start();
        }
        prefs::set_burn_closed(None);
    });
    let big = live(move || {
        let now = wall.get();
        let gone = started.get().map_or(0, |at| (now.since(at) / Millis::SECOND).max(0));
        let usual = if gone < COOL_S {
            cards::burn_clock_label(lang)
        } else {
            cards::burn_clock_over(lang)
        };
        let clock = BigClock {
            seconds: gone,
            gone,
            over: false,
            bar: Some(Bar {
                full: 1_200,
                usual: None,
            }),
            usual: usual.into(),
            until: "".into(),
            label: cards::burn_clock_label(lang).into(),
            testid: "burn-clock",
        };
        clock.draw()
    });
    let again = button(Rank::Second, line(Word::ClockAgain, lang), "burn-clock-again", start);
    el("div").class("burn-clock").child(big).child(again)
}
