//! A refusal as one calm page: what is wrong, what clears it, what to do meanwhile, the way out.

use super::page::JobPage;
use crate::domain::guide::{Command, Refusal};
use crate::kitchen::{Order, Refused};
use crate::nodes;
use crate::ui::bench::{Bench, Trouble};
use crate::ui::node::{Act, Node, el, several};
use crate::ui::parts::{Rank, button};
use crate::words::screens::job::{JobSay, say};
use crate::words::{kept_for, pan_refusals, refusals};

/// What was refused, in words, with its ways out. `on_read` is called once it has been read; `on_stop` stops the run
/// while a pan is in hand.
#[must_use]
pub fn hold_page(bench: Bench, trouble: &Trouble, on_read: Act, on_stop: Option<Act>) -> Node {
    let lang = bench.lang;
    let said = match &trouble.why {
        Refused::Guide(refusal) => refusals::refusal(refusal, lang),
        Refused::Day(refusal) => {
            let name = |id| bench.look(|kitchen, _| kitchen.ledger().book.pan(id).map(|pan| pan.name.clone()));
            refusals::day_refusal(refusal, |id| name(id).unwrap_or_default(), lang)
        }
        Refused::Pan(refusal) => pan_refusals::pan_refusal(refusal, lang),
        _ => return Node::Nothing,
    };
    // The one thing that may help at once, where there is one.
    let heater = match trouble.why {
        Refused::Guide(Refusal::WarmUpNotBegun | Refusal::WarmUpExpired) => {
            Some((JobSay::HeaterIsOn, "heater-on", true))
        }
        Refused::Guide(Refusal::HeaterOn) => Some((JobSay::HeaterIsOff, "heater-off", false)),
        _ => None,
    };
    let cure = heater.map(|(words, testid, on)| {
        button(Rank::First, say(words, lang), testid, move || {
            bench.trouble.set(None);
            bench.send(Order::Guide(Command::Heater(on)));
        })
    });
    let rank = if heater.is_some() { Rank::Second } else { Rank::First };
    let ways = nodes![cure, button(rank, say(JobSay::Back, lang), "refusal-back", on_read)];
    let lines = [
        (JobSay::Clears, Some(said.clears)),
        (JobSay::Meanwhile, Some(said.meanwhile)),
        (JobSay::WhoCan, said.who),
    ];
    // What the machine met, entry by entry, where that is what shuts it.
    let met = if let Refused::Guide(Refusal::ClaimMeets { machine, .. }) = trouble.why {
        bench.look(|kitchen, now| kept_for::all_met(kitchen.ledger(), machine, now.off_min, lang))
    } else {
        Vec::new()
    };
    let met = (!met.is_empty()).then(|| {
        let head = el("dt").text(kept_for::line(kept_for::Line::MachineMet, lang));
        nodes![
            head,
            several(met.into_iter().map(|line| el("dd").testid("machine-met").text(line)))
        ]
    });
    let lines = lines.into_iter().filter_map(|(head, words)| {
        let words = el("dd").text(words?);
        Some(nodes![el("dt").text(say(head, lang)), words])
    });
    let page = JobPage::new(
        "refusal",
        said.wrong,
        ways,
        el("dl").class("job-hold").children(lines).child(met),
    );
    JobPage { on_stop, ..page }.draw(bench).into()
}
