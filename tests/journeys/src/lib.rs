//! A phone, a site and a hand: what the journeys are told with.
//!
//! A journey is one `#[tokio::test]` that calls [`journey`] and speaks in the user's verbs:
//!
//! ```no_run
//! # use journeys::{Outcome, journey};
//! # async fn example() -> Outcome {
//! journey("opens_the_fire_card", async |stage| {
//!     stage.open().await?;
//!     stage.phone.tap("fire").await?;
//!     stage.phone.sees("card", "No water").await
//! })
//! .await
//! # }
//! ```
//!
//! Elements are found by `data-testid`. Every wait is a poll with a deadline; nothing sleeps, nothing is tried twice.

mod clock;
mod driver;
mod export;
mod eyes;
mod fault;
mod hand;
mod inspect;
mod kitchens;
mod phone;
mod screens;
mod stage;
mod table;
mod wait;
mod walk;

pub use export::{Export, saw, times_seen};
pub use eyes::{Size, Violation};
pub use fault::{Fault, Outcome, fault};
pub use inspect::{Look, no_complaints};
pub use kitchens::{EVENING, kitchen_with};
pub use phone::{Phone, SMALL, Screen, TALL};
pub use screens::{Known, Rest, SCREENS, none_forgotten};
pub use stage::{Stage, copy_of_dist, journey, journey_on, median, target_dir};
pub use wait::{PATIENCE, until};
pub use walk::{Sight, Walker};
