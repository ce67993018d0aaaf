//! The wait between two looks at the boil: how long the heat is on, when to look, and the ways out of it.

use super::{Bay, asked};
use crate::domain::pan_jobs::{BOIL_LOOK_MS, Command};
use crate::domain::procedure::Block;
use crate::kitchen::care::{self, Turn};
use crate::nodes;
use crate::ui::job::frame::{Around, Lines, Step};
use crate::ui::node::{Node, el, live};
use crate::ui::parts::{Bar, BigClock, answer_button};
use crate::words::screens::care::{CareSay, say};
use crate::words::screens::day::next_look;
use crate::words::steps::block_name;

/// Seconds between two looks.
const LOOK_S: u32 = (BOIL_LOOK_MS / 1000).unsigned_abs() as u32;

/// The screen.
pub fn wait(bay: Bay) -> Node {
    let lang = bay.bench.lang;
    let clock = live(move || {
        let (gone, look) = seconds(bay).unwrap_or_default();
        let clock = BigClock {
            seconds: gone,
            gone: i64::from(LOOK_S) - look,
            over: false,
            bar: Some(Bar {
                full: LOOK_S,
                usual: None,
            }),
            usual: say(CareSay::SinceHeat, lang).into(),
            until: "".into(),
            label: say(CareSay::SinceHeat, lang).into(),
            testid: "clock",
        };
        clock.draw()
    });
    // On a small screen with a standing warning the words under a clock are left out; these never are.
    let due = live(move || {
        let words = el("p").class("job-left num").testid("next-look");
        seconds(bay).map(|(_, look)| words.text(next_look(look, lang)))
    });
    let lines = Lines {
        progress: block_name(Block::BoilOut, lang).to_owned(),
        say: say(CareSay::Boils, lang).to_owned(),
        hazard: None,
        sub: Some(say(CareSay::BoilsText, lang).to_owned()),
    };
    let off = move || bay.send(Command::HeatOff { pan: bay.pan });
    let answers = nodes![
        answer_button(say(CareSay::LookNow, lang), false, "look-now", move || bay
            .turn(Turn::Look)),
        answer_button(say(CareSay::HeatOff, lang), false, "heat-off", off),
    ];
    let around = Around {
        picture: Some(asked::picture(bay)),
        ..Around::bare(Some(bay.pan_name()))
    };
    let step = Step {
        middle: clock,
        aside: Some(due),
        ..Step::new(around, lines, bay.on_stop(), answers)
    };
    step.draw(bay.bench, "boil".to_owned()).into()
}

/// Seconds the heat has been on, and until the next look, each second.
pub fn seconds(bay: Bay) -> Option<(i64, i64)> {
    bay.bench.read_each_second(|kitchen, now| {
        let job = kitchen.pan_jobs().job(bay.pan)?;
        care::boil_s(job, now)
    })
}
