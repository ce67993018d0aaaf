//! From a bare page to an open kitchen: which world, which log, and what to say when the log cannot be read.

use leptos::prelude::provide_context;
use leptos::task::spawn_local;

use super::bench::{Bench, LiveKitchen};
use super::cards::CardDesk;
use super::node::{Element, Held, el, follow, speak};
use super::parts::{Tone, notice};
use super::prefs;
use super::screen::{self, Screen};
use crate::browser::idb::IdbJournal;
use crate::browser::{clock, page};
use crate::domain::ids::Dev;
use crate::kitchen::glance::{self, Glance, Taken};
use crate::kitchen::{Kitchen, Outside};
use crate::store::{Journal, StoreFault, World};
use crate::words::local::Local;
use crate::words::{Lang, trouble};

/// How far the app has come.
#[derive(Clone)]
pub enum Boot {
    /// The log is being read.
    Opening,
    /// Nobody has chosen a world yet.
    Choose,
    /// Today stands as it was shown last, and the log is being read.
    Glance(Glance, World),
    /// A kitchen is open.
    Open(Bench),
    /// The log could not be read. Nothing was written over it.
    Failed(StoreFault),
}

/// How the app is started anew: after choosing a world, or leaving one.
#[derive(Clone, Copy)]
pub struct Reboot(Held<Boot>, CardDesk);

impl Reboot {
    /// Opens the world this phone shows now.
    pub fn now(self) {
        page::set_unready();
        open(self.0, self.1);
    }
}

/// Begins; what comes of it stands in the signal.
pub fn begin(desk: CardDesk) -> Held<Boot> {
    let boot = Held::new(Boot::Opening);
    provide_context(Reboot(boot, desk));
    open(boot, desk);
    boot
}

fn open(boot: Held<Boot>, desk: CardDesk) {
    spawn_local(async move {
        let Some(world) = known_world().await else {
            boot.set(Boot::Choose);
            page::set_ready();
            return;
        };
        boot.set(match open_world(world, boot, desk).await {
            Ok(kitchen) => Boot::Open(Bench::new(kitchen, world)),
            Err(fault) => Boot::Failed(fault),
        });
    });
}

/// The world this phone shows: the one chosen last, else its own kitchen where there is one. A browser killed soon
/// after the choice forgets the choice, never the log.
async fn known_world() -> Option<World> {
    if let Some(world) = prefs::world() {
        return Some(world);
    }
    let own = World::Real.database();
    if !IdbJournal::exists(own).await {
        return None;
    }
    let fresh = Dev(u64::from_le_bytes(clock::random_bytes()));
    if let Ok(journal) = IdbJournal::open(own, fresh).await
        && let Ok(held) = journal.load().await
        && held.records.is_empty()
        && held.unreadable.is_empty()
    {
        return None;
    }
    prefs::set_world(Some(World::Real));
    Some(World::Real)
}

/// Opens the log of a world, and makes it when there is none. Where this very log was shown before, Today stands there
/// again while it is read.
async fn open_world(world: World, boot: Held<Boot>, desk: CardDesk) -> Result<LiveKitchen, StoreFault> {
    let fresh = Dev(u64::from_le_bytes(clock::random_bytes()));
    let journal = IdbJournal::open(world.database(), fresh).await?;
    page::passed("log-known");
    if let Some(glance) = glance_of(&journal, desk) {
        boot.set(Boot::Glance(glance, world));
        page::painted().await;
    }
    let outside = Outside {
        off_min: Box::new(clock::offset),
        random: Box::new(clock::random_bytes),
    };
    let kitchen = Kitchen::open(journal, outside, &clock::now()).await?;
    if let Some(set_up) = &kitchen.ledger().book.kitchen {
        // A zone this browser does not know leaves the phone's own in force.
        let _ = clock::use_zone(&set_up.zone);
        call(&set_up.emergency_number, desk);
    }
    Ok(kitchen)
}

/// What Today showed last, if it was this log as it is now, this day, and Today is what is to be shown.
fn glance_of(journal: &IdbJournal, desk: CardDesk) -> Option<Glance> {
    if screen::current() != Screen::Today {
        return None;
    }
    let taken = Taken {
        build: page::build(),
        dev: journal.dev(),
        entries: journal.entries_ahead()?,
    };
    let glance = glance::read(&prefs::glance()?, &taken)?;
    call(&glance.emergency_number, desk);
    let names = glance.today.pans.iter().map(|pan| pan.name.as_str());
    speak(Local::of(&glance.country, names));
    glance.holds_at(clock::wall()).then_some(glance)
}

/// Puts the kitchen's emergency number on the cards.
fn call(number: &str, desk: CardDesk) {
    if !number.is_empty() {
        desk.number.set(number.to_owned());
    }
}

/// The log could not be read: what is safe, and what to do.
#[must_use]
pub fn failed(fault: &StoreFault, desk: CardDesk) -> Element {
    follow(page::set_ready);
    let told = trouble::cannot_open(fault, Lang::En);
    el("main")
        .testid("screen-failed")
        .child(desk.buttons(Lang::En))
        .child(notice(Tone::Wrong, told.title, told.text, "failed"))
}
