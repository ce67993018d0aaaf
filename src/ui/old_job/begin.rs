//! Before a light-up or a lock-up: who does it opens it; and STOP while nothing is in hand.

use leptos::prelude::*;

use super::page::JobPage;
use super::people::everybody;
use crate::domain::facts::job::JobKind;
use crate::domain::ids::PersonId;
use crate::ui::bench::Bench;
use crate::ui::old_parts::{Button, Rank};
use crate::ui::screen::{self, Screen};
use crate::words::run::job_name;
use crate::words::screens::day::{self, DaySay};
use crate::words::screens::job::{self, JobSay};

/// The page that opens one of the day's two jobs.
#[must_use]
pub fn begin_day(bench: Bench, what: JobKind, on_open: Callback<PersonId>) -> AnyView {
    let lang = bench.lang;
    let ways = view! {
        <Button
            label=job::say(JobSay::ToToday, lang)
            rank=Rank::Plain
            on_press=Callback::new(|()| screen::go(Screen::Today))
            testid="to-today"
        />
    }
    .into_any();
    view! {
        <JobPage title=job_name(what, lang) testid="begin" ways>
            <p class="job-text">{day::begin_text(what, lang)}</p>
            <h2>{day::say(DaySay::WhoDoesIt, lang)}</h2>
            {everybody(bench, bench.me(), on_open)}
        </JobPage>
    }
    .into_any()
}

/// STOP while no heat is in hand: nothing is to be made safe, and there are ways out.
#[must_use]
pub fn paused_day(bench: Bench, back: Callback<()>) -> AnyView {
    let lang = bench.lang;
    let leave = Callback::new(|()| screen::go(Screen::Today));
    let ways = view! {
        <Button label=job::say(JobSay::Back, lang) rank=Rank::First on_press=back testid="back" />
        <Button label=job::say(JobSay::LeaveOpen, lang) on_press=leave testid="leave-open" />
    }
    .into_any();
    view! {
        <JobPage title=job::say(JobSay::Paused, lang) testid="paused" ways>
            <p class="job-text">{day::say(DaySay::PausedText, lang)}</p>
        </JobPage>
    }
    .into_any()
}
