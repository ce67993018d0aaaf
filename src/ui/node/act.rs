//! What a touch does, handed from a screen to its parts.

use std::rc::Rc;

/// What happens at a touch. Clones do the same thing.
#[derive(Clone)]
pub struct Act(Rc<dyn Fn()>);

impl Act {
    /// Does `does` at each touch.
    #[must_use]
    pub fn new(does: impl Fn() + 'static) -> Self {
        Self(Rc::new(does))
    }

    /// Does it.
    pub fn run(&self) {
        (self.0)();
    }
}

impl<F: Fn() + 'static> From<F> for Act {
    fn from(does: F) -> Self {
        Self::new(does)
    }
}

/// What happens with something typed or chosen. Clones do the same thing.
pub struct Tell<T>(Rc<dyn Fn(T)>);

impl<T> Clone for Tell<T> {
    fn clone(&self) -> Self {
        Self(Rc::clone(&self.0))
    }
}

impl<T> Tell<T> {
    /// Does `does` with each.
    #[must_use]
    pub fn new(does: impl Fn(T) + 'static) -> Self {
        Self(Rc::new(does))
    }

    /// Does it with `what`.
    pub fn run(&self, what: T) {
        (self.0)(what);
    }
}
