//! Before a filter job: the one button that opens it.

use leptos::prelude::*;

use super::Floor;
use crate::domain::guide::Command;
use crate::domain::ids::JobId;
use crate::ui::job::fresh_id;
use crate::ui::job::page::JobPage;
use crate::ui::old_parts::{Button, Rank};
use crate::ui::screen::{self, Screen};
use crate::words::run::job_name;
use crate::words::screens::job::{JobSay, say};

/// The page.
pub fn begin(floor: Floor) -> AnyView {
    let lang = floor.bench.lang;
    let open = Callback::new(move |()| floor.send(Command::Open(JobId(fresh_id()))));
    let ways = view! {
        <Button label=say(JobSay::BeginFilter, lang) rank=Rank::First on_press=open testid="begin-job" />
        <Button
            label=say(JobSay::ToToday, lang)
            rank=Rank::Plain
            on_press=Callback::new(|()| screen::go(Screen::Today))
            testid="to-today"
        />
    }
    .into_any();
    view! {
        <JobPage title=job_name(crate::domain::facts::job::JobKind::Filter, lang) testid="begin" ways>
            <p class="job-text">{say(JobSay::BeginFilterText, lang)}</p>
        </JobPage>
    }
    .into_any()
}
