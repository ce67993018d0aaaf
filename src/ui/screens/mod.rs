//! The screens, one a file. They read the kitchen and send orders; they decide nothing.

pub mod add;
pub mod allergens;
pub mod care;
pub mod edit;
pub mod filter;
pub mod first;
pub mod kept_for;
pub mod last_night;
pub mod light_up;
pub mod lock_up;
pub mod log;
pub mod office;
pub mod pan;
pub mod set_up;
pub mod today;
pub mod why_not;
