//! What is now and what is next: the next job, each pan with its oil, what nobody answered, how this phone stands.

mod next;
mod not_done;
mod phone;
pub mod row;

pub use phone::NewVersion;

use leptos::prelude::*;

use crate::kitchen::today::{self, Today as Shown};
use crate::ui::bench::use_bench;
use crate::ui::old_frame::Frame;
use crate::ui::old_parts::{Button, Card, Rank};
use crate::ui::screen::{self, Screen};
use crate::words::dates;
use crate::words::screens::{Screen as Title, screen as title};
use crate::words::today::{self as words, Line, line};

/// What is now and what is next.
#[component]
pub fn Today() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    // Two memos: the second that ticks on changes the day only at its rollover, and only then, or after an entry, is
    // oil life worked out again.
    let day = Memo::new(move |_| bench.read_each_second(|kitchen, now| kitchen.today(now)));
    let shown = Memo::new(move |_| {
        let day = day.get();
        bench.read(|kitchen, _| today::of(kitchen.ledger(), day))
    });
    let set_up = Memo::new(move |_| bench.read(|kitchen, _| kitchen.ledger().book.kitchen.is_some()));
    let date = Signal::derive(move || dates::day(day.get(), lang));
    view! {
        <div data-testid="screen-today">
            <Frame title=title(Title::Today, lang).to_owned() eyebrow=date screen=Screen::Today>
                {move || if set_up.get() {
                    view! { <Day shown/> }.into_any()
                } else {
                    view! {
                        <Card night=true testid="not-set-up">
                            <h2>{line(Line::NotSetUp, lang)}</h2>
                            <p>{line(Line::NotSetUpText, lang)}</p>
                            <Button
                                rank=Rank::First
                                label=title(Title::StartSetUp, lang).to_owned()
                                on_press=move |()| screen::go(Screen::SetUp)
                                testid="start-set-up"
                            />
                        </Card>
                    }.into_any()
                }}
                <phone::ThisPhone/>
            </Frame>
        </div>
    }
}

/// The day of a kitchen that is set up.
#[component]
fn Day(
    /// What is shown.
    shown: Memo<Shown>,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let asking = RwSignal::new(false);
    let night = Memo::new(move |_| {
        let day = shown.with(|s| s.unanswered.first().copied())?;
        let names = bench.read(|kitchen, _| {
            let ledger = kitchen.ledger();
            let name = |id| ledger.book.pan(id).map(|p| p.name.clone());
            ledger
                .unanswered_pans(day)
                .into_iter()
                .filter_map(name)
                .collect::<Vec<_>>()
        });
        Some((day, names))
    });
    view! {
        <div class="today">
            <div class="today-now">
                {move || night.get().map(|(day, names)| view! {
                    <Card testid="night-question">
                        <h2>{words::night_question(day, shown.with(|s| s.day), lang)}</h2>
                        <p>{words::night_open(&names, lang)}</p>
                        <Button
                            label=line(Line::SayWhichPans, lang).to_owned()
                            on_press=move |()| screen::go(Screen::LastNight)
                            testid="last-night"
                        />
                    </Card>
                })}
                <next::NextJob shown on_not_done=move |()| asking.set(true)/>
            </div>
            <div class="pans" data-testid="pans">
                {move || shown.with(|s| s.pans.is_empty()).then(|| view! { <p>{line(Line::NoPans, lang)}</p> })}
                {move || shown.get().pans.into_iter().map(|pan| view! { <row::PanRow pan/> }).collect_view()}
            </div>
            <not_done::NotDone shown open=asking/>
        </div>
    }
}
