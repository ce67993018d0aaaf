//! First set-up, one thing after the other, each saved as it is finished: kitchen, oneself, a pan, a machine.

use leptos::prelude::*;

use crate::domain::setting_up::Subject;
use crate::ui::bench::use_bench;
use crate::ui::office::Things;
use crate::ui::old_frame::Frame;
use crate::ui::old_parts::{Button, Rank};
use crate::ui::screen::{self, Screen};
use crate::ui::set_up::{Form, drafts, new_id};
use crate::words::forms;
use crate::words::screens::{Screen as Words, screen as words};

/// What is set up in this order.
const STEPS: [Subject; 4] = [Subject::Kitchen, Subject::Person, Subject::Pan, Subject::Machine];

/// First set-up. Where it stands is read from the log, so it goes on after any reload.
#[component]
pub fn SetUp() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let without_machine = RwSignal::new(false);
    let missing = Memo::new(move |_| {
        let missing = bench.read(|kitchen, _| Subject::first_missing(&kitchen.ledger().book));
        missing.filter(|subject| !(*subject == Subject::Machine && without_machine.get()))
    });
    let step = move || {
        missing
            .get()
            .and_then(|subject| STEPS.iter().position(|s| *s == subject))
            .map(|at| forms::step_of(at + 1, STEPS.len(), lang))
            .unwrap_or_default()
    };
    let shown = move || {
        match missing.get() {
        Some(subject) => {
            let page = RwSignal::new(0);
            let skip = move || {
                (subject == Subject::Machine && page.get() == 0).then(|| view! {
                    <Button label=words(Words::NoMachine, lang) rank=Rank::Plain on_press=move |()| without_machine.set(true) testid="no-machine"/>
                    <p class="hint">{forms::no_machine_text(lang)}</p>
                })
            };
            view! {
                <Form subject id=new_id() draft=drafts::key(bench.world, subject, "new") paged=true page on_saved=|()| {}/>
                {skip}
            }
            .into_any()
        }
        None => view! {
            <p data-testid="set-up-ready">{forms::ready(lang)}</p>
            <Things/>
            <Button label=words(Words::Finish, lang) rank=Rank::First on_press=|()| screen::go(Screen::Today) testid="finish"/>
        }
        .into_any(),
    }
    };
    view! {
        <div data-testid="screen-set-up">
            <Frame title=words(Words::SetUp, lang) eyebrow=Signal::derive(step) screen=Screen::SetUp>
                {shown}
            </Frame>
        </div>
    }
}
