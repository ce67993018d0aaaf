//! What could not be written, in words over every screen: it hides neither Fire, Burn nor STOP.

use super::bench::Bench;
use super::node::{Act, Held, Node, el, live};
use super::parts::{Rank, Tone, button, notice};
use super::screen::Screen;
use crate::browser::clock;
use crate::kitchen::Refused;
use crate::nodes;
use crate::store::StoreFault;
use crate::words::Lang;
use crate::words::trouble::{self, Told, Way, way};

/// What can be done about a trouble.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Ways {
    /// The clock is right, or is set first.
    Clock,
    /// Send it again, or leave it.
    Again,
    /// Only leave it: the same would fail the same way.
    Leave,
}

fn told(why: &Refused, lang: Lang) -> (Told, Ways) {
    match why {
        Refused::Clock(doubt) => (trouble::clock(*doubt, clock::offset, lang), Ways::Clock),
        Refused::Stamp(why) => (trouble::stamp(why, clock::offset, lang), Ways::Leave),
        Refused::BadEntry(why) => (trouble::bad_entry(why, lang), Ways::Leave),
        Refused::Store(why) => {
            let ways = match why {
                StoreFault::Full | StoreFault::Closed | StoreFault::OtherWindow | StoreFault::Failed { .. } => {
                    Ways::Again
                }
                StoreFault::Blocked | StoreFault::Taken | StoreFault::Damaged { .. } => Ways::Leave,
            };
            (trouble::store(why, lang), ways)
        }
        Refused::Guide(_) | Refused::Day(_) | Refused::Pan(_) => (trouble::guide(lang), Ways::Leave),
    }
}

/// That this window only shows, while another has the log.
#[must_use]
pub fn second_window(bench: Bench) -> Node {
    live(move || {
        let Told { title, text } = trouble::second_window(bench.lang);
        bench
            .second
            .get()
            .then(|| notice(Tone::Wrong, title, text, "second-window"))
    })
}

/// The trouble, until somebody has read it, over whatever screen is beneath. The guide's own refusals are worded by the
/// job's screen.
#[must_use]
pub fn trouble_sheet(bench: Bench, screen: Held<Screen>) -> Node {
    let lang = bench.lang;
    live(move || {
        let trouble = bench.trouble.get()?;
        let on_job = screen.get().is_job();
        if on_job && matches!(trouble.why, Refused::Guide(_) | Refused::Day(_) | Refused::Pan(_)) {
            return None;
        }
        let (Told { title, text }, ways) = told(&trouble.why, lang);
        let [right, wrong] = trouble::clock_answers(lang);
        let again = move |confirmed| Act::new(move || bench.send_again(confirmed));
        let leave = |rank, label| button(rank, label, "trouble-leave", move || bench.trouble.set(None));
        let buttons = match ways {
            Ways::Clock => nodes![
                button(Rank::First, right, "trouble-confirm", again(true)),
                leave(Rank::Second, wrong),
            ],
            Ways::Again => nodes![
                button(Rank::First, way(Way::Again, lang), "trouble-again", again(false)),
                leave(Rank::Second, way(Way::Leave, lang)),
            ],
            Ways::Leave => leave(Rank::Second, way(Way::Leave, lang)).into(),
        };
        let sheet = el("section")
            .class("trouble")
            .class_if("on-job", on_job)
            .attr("role", "alert")
            .testid("trouble")
            .child(el("h2").text(title))
            .child(el("p").text(text))
            .child(buttons);
        Some(sheet)
    })
}
