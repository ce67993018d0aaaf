//! What would make the oil last, when to measure next, what to log for a better answer.

use super::shown::Shown;
use crate::domain::oil_life::{Lacking, OilLife};
use crate::domain::setting_up::Subject;
use crate::ui::node::{Element, Node, el};
use crate::ui::screen::Screen;
use crate::words::Lang;
use crate::words::what_if::{Say, lacking, lever, limits_most, measure, measure_again, say};

/// Each in a line or two.
pub fn helps(shown: &Shown, life: &OilLife, lang: Lang) -> Element {
    let advice = &shown.advice;
    let limited = shown.limit.is_some();
    let most = advice.levers.first().map(|most| limits_most(most.lever, lang));
    let most = most.or(life.days_left.map(|days| {
        let nothing = days.median.map_or(Say::LastsAnyway, |_| Say::NothingHelps);
        say(nothing, lang)
    }));
    let levers = advice.levers.iter();
    let levers = levers.map(|lift| el("li").text(lever(*lift, shown.full, lang)));
    let next = match advice.measure {
        Some(next) if next.again => {
            let words = measure_again(shown.with.as_deref(), lang);
            Some(el("p").child(el("b").text(words)))
        }
        Some(next) => {
            let words = measure(next.after, shown.today, shown.with.as_deref(), lang);
            Some(
                el("p")
                    .child(el("b").text(words))
                    .text(" ")
                    .text(say(Say::WhyThen, lang)),
            )
        }
        None => limited.then(|| el("p").text(say(Say::NoReading, lang))),
    };
    let wanted = life.lacking.iter().map(|what| {
        let link = match what {
            Lacking::Limit => choose_limit(shown, lang),
            Lacking::Hours | Lacking::Reading | Lacking::FreshValue => Node::Nothing,
        };
        el("li").text(lacking(*what, lang)).text(" ").child(link)
    });
    let wanted = (!life.lacking.is_empty()).then(|| el("ul").testid("lacking").children(wanted));
    el("section")
        .testid("helps")
        .child(el("h2").text(say(Say::Helps, lang)))
        .child(most.map(|words| el("p").text(words)))
        .child((!advice.levers.is_empty()).then(|| el("ul").testid("levers").children(levers)))
        .child(next.map(|next| next.testid("measure-next")))
        .child(wanted)
}

/// The way to where a limit is chosen.
fn choose_limit(shown: &Shown, lang: Lang) -> Node {
    let link = shown.kitchen.map(|kitchen| {
        let screen = Screen::Edit(Subject::Kitchen, kitchen.0);
        el("a")
            .attr("href", format!("#{}", screen.address()))
            .testid("choose-limit")
            .text(say(Say::ChooseLimit, lang))
    });
    link.into()
}
