//! The owner's page: what is set up, export and import, the state of storage, the app itself.

use leptos::prelude::*;

use crate::ui::bench::use_bench;
use crate::ui::office::{AboutTheApp, AtThisPhone, ExportCard, ImportButton, Limits, StorageCard, Things};
use crate::ui::old_frame::Frame;
use crate::ui::old_parts::{Button, Card, Rank};
use crate::ui::screen::{self, Screen};
use crate::words::log::{Office as Words, office};
use crate::words::office::{Line, line};
use crate::words::screens::{Screen as Titles, screen as titles};

/// The owner's page.
#[component]
pub fn Office() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let set_up = move || bench.read(|kitchen, _| kitchen.ledger().book.kitchen.is_some());
    let body = move || {
        if set_up() {
            view! {
                <AtThisPhone/>
                <Limits/>
                <Things/>
                <ExportCard/>
            }
            .into_any()
        } else {
            view! {
                <Card testid="not-set-up">
                    <Button label=titles(Titles::StartSetUp, lang) rank=Rank::First on_press=|()| screen::go(Screen::SetUp) testid="to-set-up"/>
                    <p>{office(Words::ImportText, lang)}</p>
                    <ImportButton label=office(Words::Import, lang)/>
                </Card>
            }
            .into_any()
        }
    };
    view! {
        <div data-testid="screen-office">
            <Frame title=line(Line::Title, lang) screen=Screen::Office>
                {body}
                <StorageCard/>
                <AboutTheApp/>
            </Frame>
        </div>
    }
}
