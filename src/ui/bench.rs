//! What every screen reads from and sends to: the kitchen inside a signal, its one clock, and what went wrong last.
//!
//! A screen never touches the journal. It reads the kitchen through [`Bench::read`], which follows every change, and
//! sends orders through [`Bench::send`]; the order is decided, written and only then believed.

use std::cell::RefCell;
use std::ops::Deref;
use std::rc::Rc;

use leptos::prelude::{GetValue, SetValue, UpdateValue, WithValue};
use leptos::prelude::{
    LocalStorage, StoredValue, expect_context, on_cleanup, set_interval_with_handle, window_event_listener,
};
use leptos::task::spawn_local;

use crate::browser::idb::IdbJournal;
use crate::browser::sound::{Sound, SoundState};
use crate::browser::wake::{Wake, WakeState};
use crate::browser::{clock, storage_health, update};
use crate::domain::entry::Entry;
use crate::domain::ids::PersonId;
use crate::domain::time::Now;
use crate::kitchen::{Kitchen, Order, Refused};
use crate::store::{Journal, World};
use crate::ui::local;
use crate::ui::node::Held;
use crate::ui::prefs;
use crate::words::Lang;

/// The kitchen as it lives in the browser.
pub type LiveKitchen = Kitchen<IdbJournal>;

/// The bench all screens work at. Copies are handles on the same one.
#[derive(Clone, Copy)]
pub struct Bench(&'static Handles);

impl Deref for Bench {
    type Target = Handles;

    fn deref(&self) -> &Handles {
        self.0
    }
}

/// What a bench leads to.
pub struct Handles {
    kitchen: StoredValue<Rc<RefCell<LiveKitchen>>, LocalStorage>,
    sound: StoredValue<Sound, LocalStorage>,
    wake: StoredValue<Wake, LocalStorage>,
    /// Changes with every entry believed.
    revision: Held<u64>,
    /// Changes once a second while the page is seen.
    tick: Held<Now>,
    busy: Held<bool>,
    /// What was to follow the order that was refused last.
    then: StoredValue<Option<Then>, LocalStorage>,
    /// The last refusal or fault, until somebody has read it.
    pub trouble: Held<Option<Trouble>>,
    /// The entry just written by a quick log, for the ten seconds in which it can be taken back.
    pub just_logged: Held<Option<Entry>>,
    /// Whether sound can play.
    pub sound_state: Held<SoundState>,
    /// Whether the screen stays on.
    pub wake_state: Held<WakeState>,
    /// Whether a newer version of the app waits.
    pub update: Held<Option<update::Update>>,
    /// Whether the phone promised never to clear the log by itself; `None` where it was not asked or cannot say.
    pub kept: Held<Option<bool>>,
    /// Whether another window has the log, so that this one only shows it.
    pub second: Held<bool>,
    /// Which world this log belongs to.
    pub world: World,
    /// The language on screen.
    pub lang: Lang,
}

/// What follows an order once its entries are on disk.
type Then = Box<dyn FnOnce(&[Entry])>;

/// Something that was refused or failed; shown in words, on top, until read.
#[derive(Clone, Debug)]
pub struct Trouble {
    /// Why.
    pub why: Refused,
    /// The order, to be sent again once a person has confirmed the date.
    pub order: Order,
}

impl Bench {
    /// Sets up the bench of a kitchen that was just opened.
    #[must_use]
    pub fn new(kitchen: LiveKitchen, world: World) -> Self {
        let sound_state = Held::new(SoundState::OffUntilTouch);
        let wake_state = Held::new(WakeState::Off);
        local::speak_as(&kitchen.ledger().book);
        let waiting = Held::new(None);
        update::watch(move |state| waiting.set(Some(state)));
        let kept = Held::new(None);
        // Before there is anything to keep nobody has been asked, so "no" would be no answer.
        let asked = kitchen.ledger().book.kitchen.is_some();
        spawn_local(async move { kept.set(storage_health::persisted().await.filter(|kept| *kept || asked)) });
        let second = Held::new(false);
        let journal = kitchen.journal_handle();
        spawn_local(async move { second.set(!journal.is_mine().await) });
        let handles = Handles {
            kitchen: StoredValue::new_local(Rc::new(RefCell::new(kitchen))),
            sound: StoredValue::new_local(Sound::new(move |state| sound_state.set(state))),
            wake: StoredValue::new_local(Wake::new(move |state| wake_state.set(state))),
            revision: Held::new(0),
            tick: Held::new(clock::now()),
            busy: Held::new(false),
            then: StoredValue::new_local(None),
            trouble: Held::new(None),
            just_logged: Held::new(None),
            sound_state,
            wake_state,
            update: waiting,
            kept,
            second,
            world,
            lang: Lang::En,
        };
        // The handles of a world stay for as long as the page: it opens few, and what they lead to ends with the world.
        Self(Box::leak(Box::new(handles)))
    }

    /// Reads the kitchen, and reads it again after every entry.
    pub fn read<T>(&self, look: impl FnOnce(&LiveKitchen, &Now) -> T) -> T {
        self.revision.track();
        self.look(look)
    }

    /// Reads the kitchen, and reads it again after every entry and every second.
    pub fn read_each_second<T>(&self, look: impl FnOnce(&LiveKitchen, &Now) -> T) -> T {
        self.tick.track();
        self.read(look)
    }

    /// Reads the kitchen once.
    pub fn look<T>(&self, look: impl FnOnce(&LiveKitchen, &Now) -> T) -> T {
        look(&self.kitchen().borrow(), &clock::now())
    }

    /// Not a part of every look: there are a hundred of them.
    #[inline(never)]
    fn kitchen(&self) -> Rc<RefCell<LiveKitchen>> {
        self.kitchen.get_value()
    }

    /// Sends an order; what comes back refused stands in [`Bench::trouble`].
    pub fn send(&self, order: Order) {
        self.send_then(order, |_| {});
    }

    /// Sends an order, and goes on once its entries are on disk. While one order is being written another is not
    /// taken: its screen has not been answered yet.
    pub fn send_then(&self, order: Order, then: impl FnOnce(&[Entry]) + 'static) {
        self.go(order, Box::new(then));
    }

    /// Sends what stands in [`Bench::trouble`] once more, with all that was to follow it; `confirmed` when a person
    /// looked at the clock and said that it is right.
    pub fn send_again(&self, confirmed: bool) {
        let Some(Trouble { order, .. }) = self.trouble.get_untracked() else {
            return;
        };
        let then = self.then.try_update_value(Option::take).flatten();
        self.trouble.set(None);
        let order = if confirmed {
            Order::TimeConfirmed(Box::new(order))
        } else {
            order
        };
        self.go(order, then.unwrap_or_else(|| Box::new(|_| {})));
    }

    fn go(&self, order: Order, then: Then) {
        if self.busy.get_untracked() {
            return;
        }
        self.busy.set(true);
        let bench = *self;
        spawn_local(async move {
            match bench.write(order.clone()).await {
                Ok(entries) => {
                    bench.busy.set(false);
                    bench.look(|kitchen, _| local::speak_as(&kitchen.ledger().book));
                    bench.revision.update(|n| *n += 1);
                    bench.after_first_entry();
                    then(&entries);
                }
                Err(why) => {
                    bench.busy.set(false);
                    bench.then.set_value(Some(then));
                    bench.trouble.set(Some(Trouble { why, order }));
                }
            }
        });
    }

    /// Asks the phone to keep the log, once there is something to keep. Asked again only until it has said yes.
    fn after_first_entry(&self) {
        if self.world == World::Real && self.kept.get_untracked() != Some(true) {
            self.ask_to_keep();
        }
    }

    /// Asks the phone never to clear the log by itself; its answer stands in [`Bench::kept`].
    pub fn ask_to_keep(&self) {
        let kept = self.kept;
        spawn_local(async move { kept.set(storage_health::persist().await) });
    }

    async fn write(&self, order: Order) -> Result<Vec<Entry>, Refused> {
        let Some(kitchen) = self.kitchen.try_get_value() else {
            return Ok(Vec::new());
        };
        let prepared = kitchen.borrow_mut().prepare(order, &clock::now())?;
        // Nobody else borrows it for writing meanwhile: `busy` lets in one order at a time.
        let journal = kitchen.borrow().journal_handle();
        journal.append(prepared.records()).await?;
        Ok(kitchen.borrow_mut().believe(prepared))
    }

    /// Who works at this phone now.
    #[must_use]
    pub fn me(&self) -> Option<PersonId> {
        let known = prefs::me();
        self.look(|kitchen, _| {
            let people = &kitchen.ledger().book.people;
            known
                .filter(|id| people.contains_key(id))
                .or_else(|| people.keys().next().copied())
        })
    }

    /// The journal, for export and import.
    #[must_use]
    pub fn journal(&self) -> Rc<IdbJournal> {
        self.kitchen().borrow().journal_handle()
    }

    /// The clock moved on: a second passed, or the page came back into sight.
    pub fn ticked(&self) {
        self.tick.set(clock::now());
    }

    /// Follows the clock in a reactive closure without reading the kitchen.
    #[must_use]
    pub fn now(&self) -> Now {
        self.tick.track();
        clock::now()
    }

    /// Uses the sound.
    pub fn with_sound(&self, play: impl FnOnce(&Sound)) {
        self.sound.with_value(play);
    }

    /// Uses the wake lock.
    pub fn with_wake(&self, ask: impl FnOnce(&Wake)) {
        self.wake.with_value(ask);
    }
}

/// The bench, as provided at the root.
///
/// Screens are only ever drawn under [`crate::ui::App`], which provides it first.
#[must_use]
pub fn use_bench() -> Bench {
    expect_context::<Bench>()
}

/// Ticks the bench on every whole second while the page is seen, and at once when it comes back into sight.
pub fn keep_time(bench: Bench) {
    let seconds = set_interval_with_handle(move || bench.ticked(), std::time::Duration::from_secs(1));
    let seen = window_event_listener(leptos::ev::visibilitychange, move |_| bench.ticked());
    on_cleanup(move || {
        if let Ok(handle) = seconds {
            handle.clear();
        }
        seen.remove();
    });
}
