//! One thing of the set-up: the kitchen, a person, a pan, a machine or an instrument, new or to be changed.

use leptos::prelude::*;

use crate::domain::setting_up::Subject;
use crate::ui::bench::use_bench;
use crate::ui::old_frame::Frame;
use crate::ui::old_parts::{Button, Rank};
use crate::ui::screen::{self, Screen};
use crate::ui::set_up::{Form, drafts};
use crate::words::forms;
use crate::words::log::{Office, office};

/// One thing of the set-up.
#[component]
pub fn Edit(
    /// What it is.
    subject: Subject,
    /// Its id.
    id: u128,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let draft = drafts::key(bench.world, subject, &format!("{id:032x}"));
    let given_up = draft.clone();
    let leave = Callback::new(move |()| {
        drafts::forget(&given_up);
        screen::go(Screen::Office);
    });
    view! {
        <div data-testid="screen-edit">
            <Frame title=forms::subject(subject, lang) screen=Screen::Edit(subject, id)>
                <Form subject id draft on_saved=|()| screen::go(Screen::Office)/>
                <Button label=office(Office::Cancel, lang) rank=Rank::Plain on_press=leave testid="form-leave"/>
            </Frame>
        </div>
    }
}
