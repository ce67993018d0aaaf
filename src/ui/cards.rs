//! The fire card and the burn card: one touch from every screen, before set-up too.

use leptos::prelude::*;

use super::parts::{Sheet, SignKind};
use crate::words::{Lang, cards};

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
        number: RwSignal::new("999 / 112".to_owned()),
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
    let desk = use_cards();
    let close = Callback::new(move |()| desk.open.set(None));
    let lines = move |card: Card| {
        let number = desk.number.get();
        let lines = match card {
            Card::Fire => cards::fire_card(&number, Lang::En),
            Card::Burn => cards::burn_card(&number, Lang::En),
        };
        lines
            .into_iter()
            .map(|line| view! { <li>{line.text}</li> })
            .collect_view()
    };
    view! {
        <Sheet open=Signal::derive(move || desk.open.get() == Some(Card::Fire)) on_close=close title=cards::fire_button(Lang::En) sign=SignKind::Fire close=cards::close_card(Lang::En) testid="card-fire">
            <ol>{move || lines(Card::Fire)}</ol>
        </Sheet>
        <Sheet open=Signal::derive(move || desk.open.get() == Some(Card::Burn)) on_close=close title=cards::burn_button(Lang::En) sign=SignKind::FirstAid close=cards::close_card(Lang::En) testid="card-burn">
            <ol>{move || lines(Card::Burn)}</ol>
        </Sheet>
    }
}
