//! What was worked out and still holds: kept beside what it was worked out of, for as long as its print is the same.
//!
//! It changes no answer, only how soon it is there: what is kept is no part of what a log comes to, so two of them are
//! always equal, and an empty one is as good as any.

use std::any::{Any, TypeId};
use std::cell::RefCell;
use std::fmt;
use std::rc::Rc;

use super::print::Print;
use super::sorted::SortedMap;

/// Values of any type by the id of what they are about, one of a type for each id.
#[derive(Clone, Default)]
pub struct Memo(RefCell<SortedMap<(u128, TypeId), Kept>>);

#[derive(Clone)]
struct Kept {
    print: Print,
    value: Rc<dyn Any>,
}

impl Memo {
    /// What `make` makes of the thing `id`, made only where nothing is kept of it under this print. Everything that
    /// `make` looks at must be in the print. It may ask the same memo for something else.
    pub fn of<T: 'static>(&self, id: u128, print: Print, make: impl FnOnce() -> T) -> Rc<T> {
        let key = (id, TypeId::of::<T>());
        if let Some(Ok(value)) = self.kept(key, print).map(Rc::downcast) {
            return value;
        }
        let made = Rc::new(make());
        self.keep(key, print, Rc::<T>::clone(&made));
        made
    }

    #[inline(never)]
    fn kept(&self, key: (u128, TypeId), print: Print) -> Option<Rc<dyn Any>> {
        let kept = self.0.borrow();
        let kept = kept.get(&key).filter(|kept| kept.print == print)?;
        Some(Rc::clone(&kept.value))
    }

    #[inline(never)]
    fn keep(&self, key: (u128, TypeId), print: Print, value: Rc<dyn Any>) {
        self.0.borrow_mut().insert(key, Kept { print, value });
    }
}

impl fmt::Debug for Memo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Memo")
    }
}

impl PartialEq for Memo {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl Eq for Memo {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_is_made_once_for_each_thing_type_and_print() {
        let memo = Memo::default();
        let made = std::cell::Cell::new(0_u8);
        let ask = |id, print| {
            *memo.of(id, print, || {
                made.set(made.get() + 1);
                made.get()
            })
        };
        let (first, second) = (Print::NONE.with(1), Print::NONE.with(2));
        assert_eq!([ask(1, first), ask(1, first), ask(2, first)], [1, 1, 2]);
        assert_eq!(
            [ask(1, second), ask(2, first)],
            [3, 2],
            "what changed is made again, and nothing else"
        );
        assert_eq!(*memo.of(1, second, || "of another type"), "of another type");
        assert_eq!(
            *memo.of(9, first, || ask(1, second)),
            3,
            "made of something else that is kept"
        );
    }
}
