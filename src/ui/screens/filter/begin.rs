//! Before a filter job: the one button that opens it.

use super::Floor;
use crate::domain::facts::job::JobKind;
use crate::domain::guide::Command;
use crate::domain::ids::JobId;
use crate::nodes;
use crate::ui::job::fresh_id;
use crate::ui::job::page::{JobPage, to_today};
use crate::ui::node::{Node, el};
use crate::ui::parts::{Rank, button};
use crate::words::run::job_name;
use crate::words::screens::job::{JobSay, say};

/// The page.
pub fn begin(floor: Floor) -> Node {
    let lang = floor.bench.lang;
    let open = move || floor.send(Command::Open(JobId(fresh_id())));
    let ways = nodes![
        button(Rank::First, say(JobSay::BeginFilter, lang), "begin-job", open),
        to_today(lang),
    ];
    let text = el("p").class("job-text").text(say(JobSay::BeginFilterText, lang));
    let page = JobPage::new("begin", job_name(JobKind::Filter, lang), ways, text);
    page.draw(floor.bench).into()
}
