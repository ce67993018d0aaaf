//! What is timed: one fold of the ten years to all views, and one entry more.

use panward::domain::entry::Draft;
use panward::domain::facts::Fact;
use panward::domain::facts::oil::{Load, Service};
use panward::domain::time::{Millis, Now, PageLife};
use panward::domain::units::{Minutes, Temp};
use panward::kitchen::{Kitchen, Order, Outside};
use panward::store::Loaded;

use crate::held::{Held, now};
use crate::log::Years;

/// The moment everything is looked at: 22:00 on the day after the last.
#[must_use]
pub fn moment(years: &Years) -> Now {
    Now {
        wall: years.today.begins(0, 22 * 60),
        mono: 0,
        life: PageLife(1),
        off_min: 0,
    }
}

/// Folds a decoded log.
///
/// # Errors
/// Never: nothing is read.
pub fn fold(loaded: Loaded, at: &Now) -> Result<Kitchen<Held>, String> {
    let mut n = 0_u8;
    let outside = Outside {
        off_min: Box::new(|_| 0),
        random: Box::new(move || {
            n = n.wrapping_add(1);
            [n; 10]
        }),
    };
    now(Kitchen::open(Held(loaded.into()), outside, at))
}

/// A service in the first pan, as it is logged at the end of a day, or dated back.
///
/// # Errors
/// Why the kitchen did not take it.
pub fn one_more(kitchen: &mut Kitchen<Held>, at: &Now, dated: Option<Millis>) -> Result<(), String> {
    let pan = kitchen.ledger().book.pans.keys().next().copied().ok_or("no pan")?;
    let service = Service {
        pan,
        fry: Minutes::new(300).unwrap_or_default(),
        load: Load::Normal,
        temp: Some(Temp::celsius(175)),
        food_g: None,
    };
    let order = Order::Write(vec![Draft {
        at: dated,
        who: None,
        fact: Fact::Service(service),
    }]);
    now(kitchen.send(Order::TimeConfirmed(Box::new(order)), at)).map(drop)
}
