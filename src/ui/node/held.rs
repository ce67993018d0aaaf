//! What a screen remembers between two drawings: values that draw again what read them, and handles on elements.

use std::any::Any;
use std::cell::RefCell;
use std::marker::PhantomData;
use std::rc::Rc;

use leptos::prelude::{
    ArcTrigger, Effect, LocalStorage, Notify, ReadValue, RenderEffect, SetValue, StoredValue, Track,
};
use web_sys::HtmlElement;

/// A value on screen. What reads it inside [`super::live`] or [`follow`] runs again after each change. Copies are
/// handles on the same value, which lives as long as the part of the screen that made it.
///
/// One compiled store serves every type: Leptos's own signals are compiled anew for each.
pub struct Held<T> {
    store: Store,
    holds: PhantomData<fn() -> T>,
}

type Store = StoredValue<Rc<Kept<dyn Any>>, LocalStorage>;

/// A value, and who is told of its changes.
struct Kept<T: ?Sized> {
    changed: ArcTrigger,
    /// A cell with the value.
    cell: T,
}

impl Kept<dyn Any> {
    #[inline(never)]
    fn cell<T: 'static>(&self) -> &RefCell<T> {
        self.cell.downcast_ref().unwrap_or_else(|| gone())
    }
}

impl<T> Clone for Held<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Held<T> {}

impl<T: 'static> Held<T> {
    /// Holds `value`.
    #[must_use]
    pub fn new(value: T) -> Self {
        let cell = RefCell::new(value);
        let changed = ArcTrigger::new();
        Self::of(keep(Rc::new(Kept { changed, cell })))
    }

    const fn of(store: Store) -> Self {
        Self {
            store,
            holds: PhantomData,
        }
    }

    /// Reads it, and runs the reader again after each change.
    pub fn with<U>(self, read: impl FnOnce(&T) -> U) -> U {
        read(&followed(self.store).cell().borrow())
    }

    /// Reads it once.
    ///
    /// # Panics
    /// When the part of the screen that made it is gone: nothing that is drawn then may read it.
    pub fn with_untracked<U>(self, read: impl FnOnce(&T) -> U) -> U {
        read(&there(self.store).cell().borrow())
    }

    /// Changes it. After its screen is gone nothing happens.
    pub fn update<U>(self, change: impl FnOnce(&mut T) -> U) {
        if let Some(held) = fetch(self.store) {
            change(&mut held.cell().borrow_mut());
            held.changed.notify();
        }
    }

    /// Puts another value in its place.
    pub fn set(self, value: T) {
        self.update(|held| *held = value);
    }

    /// Runs the reader again after each change, without reading.
    pub fn track(self) {
        follow_changes(self.store);
    }
}

impl<T: Clone + 'static> Held<T> {
    /// A copy of it, followed.
    #[must_use]
    pub fn get(self) -> T {
        self.with(T::clone)
    }

    /// A copy of it, once.
    #[must_use]
    pub fn get_untracked(self) -> T {
        self.with_untracked(T::clone)
    }
}

#[inline(never)]
fn keep(value: Rc<Kept<dyn Any>>) -> Store {
    StoredValue::new_local(value)
}

#[expect(
    clippy::panic,
    reason = "a reader outlives its screen by a fault in the code only: then nothing goes on"
)]
fn gone() -> ! {
    panic!("a value was read whose screen is gone")
}

#[inline(never)]
fn fetch(store: Store) -> Option<Rc<Kept<dyn Any>>> {
    store.try_read_value().map(|held| Rc::clone(&held))
}

#[inline(never)]
fn there(store: Store) -> Rc<Kept<dyn Any>> {
    fetch(store).unwrap_or_else(|| gone())
}

#[inline(never)]
fn followed(store: Store) -> Rc<Kept<dyn Any>> {
    let held = there(store);
    held.changed.track();
    held
}

#[inline(never)]
fn follow_changes(store: Store) {
    if let Some(held) = fetch(store) {
        held.changed.track();
    }
}

/// A handle on an element, empty until it is in the page.
#[derive(Clone, Copy)]
pub struct Reach(StoredValue<Option<HtmlElement>, LocalStorage>);

impl Reach {
    /// An empty handle.
    #[must_use]
    #[expect(
        clippy::new_without_default,
        reason = "it is made on a screen, not as a default of anything"
    )]
    pub fn new() -> Self {
        Self(StoredValue::new_local(None))
    }

    /// The element, once it is there.
    #[must_use]
    pub fn get(self) -> Option<HtmlElement> {
        self.0.try_read_value().and_then(|held| held.clone())
    }

    pub(super) fn put(self, element: HtmlElement) {
        self.0.set_value(Some(element));
    }
}

/// Runs `does` once what is drawn now is in the page, and again after each change of what it read.
pub fn follow(does: impl FnMut() + 'static) {
    let mut does: Box<dyn FnMut()> = Box::new(does);
    Effect::new(move |_: Option<()>| does());
}

/// A value worked out from others, now and again after each change of what `work` read; what reads it runs again only
/// where it came out differently.
pub fn worked_out<T: PartialEq + 'static>(work: impl Fn() -> T + 'static) -> Held<T> {
    // Nothing is worked out yet, and nobody has asked.
    let (changed, cell) = (ArcTrigger::new(), ());
    let store = keep(Rc::new(Kept { changed, cell }));
    keep_working(Box::new(move || {
        let next = work();
        let Some(held) = fetch(store) else { return };
        match held.cell.downcast_ref::<RefCell<T>>() {
            None => {
                let (changed, cell) = (held.changed.clone(), RefCell::new(next));
                store.set_value(Rc::new(Kept { changed, cell }));
            }
            Some(cell) if *cell.borrow() == next => {}
            Some(cell) => {
                *cell.borrow_mut() = next;
                held.changed.notify();
            }
        }
    }));
    Held::of(store)
}

/// Runs `work` at once and again after each change, for as long as the part of the screen that asked for it lives.
fn keep_working(work: Box<dyn Fn()>) {
    StoredValue::new_local(RenderEffect::new(move |_: Option<()>| work()));
}
