//! Old oil that waits to be put by, as its tag says it, with its way on.

use crate::domain::ids::PanId;
use crate::kitchen::care;
use crate::ui::bench::Bench;
use crate::ui::node::{Node, live, several};
use crate::ui::parts::{Rank, Tone, button, notice};
use crate::ui::screen::{self, Screen};
use crate::words::screens::care::{CareSay, say, waste_of};

/// All of it, or that of one pan.
pub fn waste(bench: Bench, of: Option<PanId>) -> Node {
    let lang = bench.lang;
    live(move || {
        let waits = bench.read(|kitchen, _| care::waste(kitchen)).into_iter();
        several(
            waits
                .filter(|waste| of.is_none_or(|pan| waste.pan == pan))
                .map(|waste| {
                    let pan = waste.pan;
                    let title = waste_of(&waste.name, waste.machine.as_deref(), waste.since, lang);
                    let put_by = button(
                        Rank::Second,
                        say(CareSay::PutBy, lang),
                        format!("waste-{}", waste.name),
                        move || {
                            screen::go(Screen::Waste(pan));
                        },
                    );
                    notice(Tone::Danger, title, say(CareSay::WasteText, lang), "waste").child(put_by)
                }),
        )
    })
}
