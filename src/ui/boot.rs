//! From a bare page to an open kitchen: which world, which log, and what to say when the log cannot be read.

use leptos::prelude::provide_context;
use leptos::task::spawn_local;

use super::bench::Bench;
use super::cards::CardDesk;
use super::node::{Element, Held, el, follow};
use super::parts::{Tone, notice};
use super::prefs;
use crate::browser::idb::IdbJournal;
use crate::browser::{clock, page};
use crate::domain::ids::Dev;
use crate::kitchen::{Kitchen, Outside};
use crate::store::{Journal, StoreFault, World};
use crate::words::{Lang, trouble};

/// How far the app has come.
#[derive(Clone)]
pub enum Boot {
    /// The log is being read.
    Opening,
    /// Nobody has chosen a world yet.
    Choose,
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
        boot.set(match open_world(world).await {
            Ok(kitchen) => {
                let set_up = kitchen.ledger().book.kitchen.as_ref();
                if let Some(number) = set_up.map(|k| k.emergency_number.clone()).filter(|n| !n.is_empty()) {
                    desk.number.set(number);
                }
                Boot::Open(Bench::new(kitchen, world))
            }
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

/// Opens the log of a world, and makes it when there is none.
///
/// # Errors
/// Why it could not be read.
pub async fn open_world(world: World) -> Result<Kitchen<IdbJournal>, StoreFault> {
    let fresh = Dev(u64::from_le_bytes(clock::random_bytes()));
    let journal = IdbJournal::open(world.database(), fresh).await?;
    let outside = Outside {
        off_min: Box::new(clock::offset),
        random: Box::new(clock::random_bytes),
    };
    let kitchen = Kitchen::open(journal, outside, &clock::now()).await?;
    if let Some(set_up) = &kitchen.ledger().book.kitchen {
        // A zone this browser does not know leaves the phone's own in force.
        let _ = clock::use_zone(&set_up.zone);
    }
    Ok(kitchen)
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
