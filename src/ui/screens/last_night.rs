//! "Last night: which pans?" One touch a pan, or one for all of them.

use leptos::prelude::*;

use crate::browser::clock;
use crate::domain::ids::PanId;
use crate::domain::time::Day;
use crate::kitchen::Order;
use crate::kitchen::nights::{self, Told};
use crate::ui::bench::{Bench, use_bench};
use crate::ui::old_frame::Frame;
use crate::ui::old_parts::{Button, Card, Rank};
use crate::ui::screen::{self, Screen};
use crate::ui::screens::why_not::WhyNot;
use crate::words::screens::{Screen as Title, screen as title};
use crate::words::today::{self as words, Line, line};
use crate::words::{Lang, dates, run};

/// Who is spoken of: one pan, or all that are open.
type About = (String, Vec<PanId>);

/// Writes what was told of some pans on a day.
pub fn tell(bench: Bench, day: Day, pans: &[PanId], told: &Told) {
    let off_min = clock::offset(day.begins(0, 12 * 60));
    let drafts = bench.look(|kitchen, now| {
        let at = nights::moment(kitchen.ledger(), day, off_min, now);
        let who = bench.me();
        let note = |pan: &PanId| nights::note(*pan, told.clone(), who, at);
        pans.iter().map(note).collect::<Vec<_>>()
    });
    bench.send(Order::Write(drafts));
}

/// "Last night: which pans?" The newest day without a word first, until none is left.
#[component]
pub fn LastNight() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let today = Memo::new(move |_| bench.read_each_second(|kitchen, now| kitchen.today(now)));
    let open = Memo::new(move |_| {
        let today = today.get();
        bench.read(|kitchen, _| {
            let ledger = kitchen.ledger();
            let day = ledger.unanswered_nights(today).last().copied()?;
            let name = |id| ledger.book.pan(id).map_or_else(String::new, |p| p.name.clone());
            let pans: Vec<(PanId, String)> = ledger
                .unanswered_pans(day)
                .into_iter()
                .map(|id| (id, name(id)))
                .collect();
            Some((day, pans))
        })
    });
    let heading = Signal::derive(move || match open.get() {
        Some((day, _)) => words::night_question(day, today.get(), lang),
        None => title(Title::LastNight, lang).to_owned(),
    });
    let date = Signal::derive(move || open.get().map_or_else(String::new, |(day, _)| dates::day(day, lang)));
    view! {
        <div data-testid="screen-last-night">
            <Frame title=heading eyebrow=date screen=Screen::LastNight>
                {move || match open.get() {
                    None => view! {
                        <p>{line(Line::NightAnswered, lang)}</p>
                        <Button
                            rank=Rank::First
                            label=line(Line::ToToday, lang).to_owned()
                            on_press=move |()| screen::go(Screen::Today)
                            testid="to-today"
                        />
                    }.into_any(),
                    Some((day, pans)) => view! {
                        <p class="soft">{line(Line::LateNote, lang)}</p>
                        {abouts(&pans, lang)
                            .into_iter()
                            .map(|(key, about)| view! { <Asked day about key/> })
                            .collect_view()}
                    }.into_any(),
                }}
            </Frame>
        </div>
    }
}

/// All pans together where there are several, then each.
fn abouts(pans: &[(PanId, String)], lang: Lang) -> Vec<(String, About)> {
    let all = (pans.len() > 1).then(|| {
        let ids = pans.iter().map(|(id, _)| *id).collect();
        ("all".to_owned(), (line(Line::AllPans, lang).to_owned(), ids))
    });
    let each = pans
        .iter()
        .map(|(id, name)| (name.clone(), (run::pan_title(name, lang), vec![*id])));
    all.into_iter().chain(each).collect()
}

/// One pan, or all of them, and what can be said.
#[component]
fn Asked(
    /// The day.
    day: Day,
    /// Who is spoken of.
    about: About,
    /// The stem of its test ids.
    key: String,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let (name, pans) = about;
    let pans = StoredValue::new(pans);
    let why = RwSignal::new(false);
    let say = move |told: Told| pans.with_value(|pans| tell(bench, day, pans, &told));
    view! {
        <Card testid=format!("night-{key}")>
            <h2>{name}</h2>
            <div class="choice-row">
                <Button
                    label=line(Line::Unguided, lang).to_owned()
                    on_press=move |()| say(Told::Unguided)
                    testid=format!("night-{key}-unguided")
                />
                <Button
                    label=line(Line::NotUsed, lang).to_owned()
                    on_press=move |()| say(Told::NotUsed)
                    testid=format!("night-{key}-not-used")
                />
                <Button
                    label=line(Line::NotDoneBecause, lang).to_owned()
                    on_press=move |()| why.update(|open| *open = !*open)
                    testid=format!("night-{key}-not-done")
                />
            </div>
            {move || why.get().then(|| view! {
                <WhyNot on_reason=move |reason| say(Told::NotDone(reason))/>
            })}
        </Card>
    }
}
