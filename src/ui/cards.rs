//! The fire card and the burn card: one touch from every screen, before set-up too.

use leptos::prelude::*;

use super::parts::{Bar, BigClock, Button, Sheet, SignKind};
use super::prefs;
use crate::browser::clock;
use crate::domain::time::Millis;
use crate::words::Lang;
use crate::words::cards::{self, Line};
use crate::words::today::{Line as Word, line};

/// How long a burn is cooled, in seconds (NHS, Burns and scalds).
const COOL_S: i64 = 20 * 60;
/// A clock as old as this belongs to an earlier burn.
const STALE_S: i64 = 60 * 60;

/// Which card is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Card {
    /// Fire.
    Fire,
    /// Burn.
    Burn,
}

/// The cards of the whole app.
#[derive(Clone, Copy)]
pub struct CardDesk {
    /// The card shown.
    pub open: RwSignal<Option<Card>>,
    /// The number they show; the owner's once there is a kitchen.
    pub number: RwSignal<String>,
}

impl CardDesk {
    /// Opens the fire card.
    #[must_use]
    pub fn fire(self) -> Callback<()> {
        Callback::new(move |()| self.open.set(Some(Card::Fire)))
    }

    /// Opens the burn card.
    #[must_use]
    pub fn burn(self) -> Callback<()> {
        Callback::new(move |()| self.open.set(Some(Card::Burn)))
    }
}

/// Puts the desk where every screen finds it.
pub fn provide() {
    provide_context(CardDesk {
        open: RwSignal::new(None),
        number: RwSignal::new(cards::DEFAULT_EMERGENCY_NUMBER.to_owned()),
    });
}

/// The desk.
#[must_use]
pub fn use_cards() -> CardDesk {
    expect_context::<CardDesk>()
}

/// Both cards, over everything.
#[component]
pub fn Cards() -> impl IntoView {
    let lang = Lang::En;
    let desk = use_cards();
    let close = Callback::new(move |()| desk.open.set(None));
    let is_open = move |card| Signal::derive(move || desk.open.get() == Some(card));
    let number = desk.number;
    view! {
        <Sheet
            open=is_open(Card::Fire)
            on_close=close
            title=cards::fire_button(lang)
            sign=SignKind::Fire
            close=cards::close_card(lang)
            testid="card-fire"
        >
            <p class="card-first">{cards::smoke_line(lang)}</p>
            <ol class="card-lines">{move || lines(cards::fire_card(&number.get(), lang))}</ol>
        </Sheet>
        <Sheet
            open=is_open(Card::Burn)
            on_close=close
            title=cards::burn_button(lang)
            sign=SignKind::FirstAid
            close=cards::close_card(lang)
            testid="card-burn"
        >
            <BurnClock open=is_open(Card::Burn)/>
            <ol class="card-lines">{move || lines(cards::burn_card(&number.get(), lang))}</ol>
        </Sheet>
    }
}

/// What to do, large, and who says so, small.
fn lines(lines: Vec<Line>) -> impl IntoView {
    lines
        .into_iter()
        .map(|Line { text, source }| view! { <li>{text} <small class="source">{source}</small></li> })
        .collect_view()
}

/// Counts up to 20 minutes from when the card was first opened, across closing it and across a reload.
#[component]
fn BurnClock(
    /// Whether the card is open.
    open: Signal<bool>,
) -> impl IntoView {
    let lang = Lang::En;
    let started = RwSignal::new(prefs::burn_started());
    let wall = RwSignal::new(clock::now().wall);
    let start = move || {
        let now = clock::now().wall;
        wall.set(now);
        started.set(Some(now));
        prefs::set_burn_started(now);
    };
    let gone_s = move |now: Millis| started.get_untracked().map(|at| now.since(at) / Millis::SECOND);
    Effect::new(move || {
        if !open.get() {
            return;
        }
        // An own clock, since a burn does not wait for a kitchen to be open.
        let seconds = set_interval_with_handle(move || wall.set(clock::now().wall), std::time::Duration::from_secs(1));
        on_cleanup(move || {
            if let Ok(seconds) = seconds {
                seconds.clear();
            }
        });
        let now = clock::now().wall;
        wall.set(now);
        if !gone_s(now).is_some_and(|gone| (0..STALE_S).contains(&gone)) {
            start();
        }
    });
    let gone = Signal::derive(move || {
        let now = wall.get();
        started.get().map_or(0, |at| (now.since(at) / Millis::SECOND).max(0))
    });
    let label = Signal::derive(move || {
        if gone.get() < COOL_S {
            cards::burn_clock_label(lang).to_owned()
        } else {
            cards::burn_clock_over(lang).to_owned()
        }
    });
    view! {
        <div class="burn-clock">
            <BigClock
                seconds=gone
                bar=Bar { full: 1_200, usual: None }
                usual=label
                label=cards::burn_clock_label(lang)
                testid="burn-clock"
            />
            <Button label=line(Word::ClockAgain, lang).to_owned() on_press=move |()| start() testid="burn-clock-again"/>
        </div>
    }
}
