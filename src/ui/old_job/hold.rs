//! A refusal as one calm page: what is wrong, what clears it, what to do meanwhile, the way out.

use leptos::prelude::*;

use super::page::JobPage;
use crate::domain::guide::{Command, Refusal};
use crate::kitchen::{Order, Refused};
use crate::ui::bench::{Trouble, use_bench};
use crate::ui::old_parts::{Button, Rank};
use crate::words::refusals;
use crate::words::screens::job::{JobSay, say};

/// What was refused, in words, with its ways out.
#[component]
pub fn HoldPage(
    /// What was refused, and why.
    trouble: Trouble,
    /// Called once it has been read.
    #[prop(into)]
    on_read: Callback<()>,
    /// Stops the run, while a pan is in hand.
    #[prop(optional_no_strip)]
    on_stop: Option<Callback<()>>,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let Trouble { why, .. } = trouble;
    let said = match &why {
        Refused::Guide(refusal) => refusals::refusal(refusal, lang),
        Refused::Day(refusal) => {
            let name = |id| bench.look(|kitchen, _| kitchen.ledger().book.pan(id).map(|pan| pan.name.clone()));
            refusals::day_refusal(refusal, |id| name(id).unwrap_or_default(), lang)
        }
        _ => return ().into_any(),
    };
    let again = move |order: Order| {
        Callback::new(move |()| {
            bench.trouble.set(None);
            bench.send(order.clone());
        })
    };
    // The one thing that may help at once, where there is one.
    let cure = match why {
        Refused::Guide(Refusal::WarmUpNotBegun | Refusal::WarmUpExpired) => Some((
            JobSay::HeaterIsOn,
            "heater-on",
            again(Order::Guide(Command::Heater(true))),
        )),
        _ => None,
    };
    let rank = if cure.is_some() { Rank::Second } else { Rank::First };
    let cure = cure.map(|(label, testid, on_press)| {
        view! { <Button label=say(label, lang) rank=Rank::First on_press testid /> }
    });
    let ways = view! {
        {cure}
        <Button label=say(JobSay::Back, lang) rank on_press=on_read testid="refusal-back" />
    }
    .into_any();
    let lines = [
        (JobSay::Clears, Some(said.clears)),
        (JobSay::Meanwhile, Some(said.meanwhile)),
        (JobSay::WhoCan, said.who),
    ];
    let lines = lines
        .into_iter()
        .filter_map(|(head, words)| Some(view! { <dt>{say(head, lang)}</dt> <dd>{words?}</dd> }))
        .collect_view();
    view! {
        <JobPage title=said.wrong testid="refusal" on_stop ways>
            <dl class="job-hold">{lines}</dl>
        </JobPage>
    }
    .into_any()
}
