//! The parts screens are made of. A part takes words already chosen and says back what was touched: it knows neither
//! the run nor the language, keeps no truth of its own, and carries the test id its caller gives.

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
mod undo;

pub use buttons::{AnswerButton, Button, Emergency, GoOn, Rank, StopBar};
pub use choice::Choice;
pub use clock::{Bar, BigClock, Countdown, minutes_seconds};
pub use field::{CheckRow, Field, FieldKind};
pub use forecast::{Band, ForecastDrawing, ForecastWords, Reading};
pub use pad::{Pad, PadWords};
pub use pan_drawing::{PanDrawing, Shade};
pub use panels::{Card, Notice, Tone};
pub use run_drawing::{RunDrawing, Vessel};
pub use sheet::Sheet;
pub use shell::{EmptyBanners, Shell, Tab};
pub use sign::{Sign, SignKind};
pub use step_screen::{StepScreen, StepWords};
pub use undo::Undo;
