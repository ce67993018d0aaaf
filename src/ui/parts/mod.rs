//! The parts screens are made of. A part takes words already chosen and says back what was touched: it knows neither
//! the run nor the language, keeps no truth of its own, and carries the test id its caller gives.
//!
//! A part draws what it is given once; what changes is drawn again by the caller, inside [`super::node::live`].

mod buttons;
mod choice;
mod clock;
mod field;
mod forecast;
mod pad;
mod pan_drawing;
mod panels;
mod run_drawing;
mod sheet;
mod shell;
mod sign;
mod step_screen;
mod stepper;
mod undo;

pub use buttons::{Rank, answer_button, button, emergency, go_on, stop_bar};
pub use choice::Choice;
pub use clock::{Bar, BigClock, countdown, minutes_seconds};
pub use field::{Field, FieldKind, check_row, error_line};
pub use forecast::{Band, Forecast, ForecastWords, Reading};
pub use pad::{Pad, PadWords};
pub use pan_drawing::{Shade, pan_drawing};
pub use panels::{Tone, card, notice};
pub use run_drawing::{RunDrawing, Vessel};
pub use sheet::Sheet;
pub use shell::{Shell, Tab, empty_banners, wrong_banners};
pub use sign::{SignKind, sign};
pub use step_screen::{StepScreen, StepWords};
pub use stepper::Stepper;
pub use undo::Undo;
