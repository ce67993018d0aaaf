//! A quick entry about a pan, in at most four touches and a number.

mod desk;
mod fields;

use leptos::prelude::*;

use crate::domain::ids::PanId;
use crate::domain::quick::{Kind, Slot};
use crate::ui::bench::use_bench;
use crate::ui::old_frame::Frame;
use crate::ui::old_parts::{Button, Notice, Rank, Tone};
use crate::ui::screen::Screen;
use crate::words::log::{Office, office, quick_caution, quick_name, quick_question};
use crate::words::quick_refusals::doubt_answers;
use crate::words::run;
use crate::words::screens::add::{self, add};

use desk::{Desk, Send};
use fields::{Afters, Ages, Claims, Fats, Gauges, Loads, NumberPad, Others, Pack, Reasons, Signs, Units, When, Words};

/// A quick entry about a pan, in at most four touches and a number.
#[component]
pub fn Add(
    /// The pan.
    pan: PanId,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let desk = Desk::open(bench, pan);
    let name = bench.look(|kitchen, _| kitchen.ledger().book.pan(pan).map(|p| p.name.clone()));
    let known = name.is_some();
    let name = StoredValue::new(name.unwrap_or_default());
    let kind = desk.kind();
    let title = move || name.with_value(|name| add::title(kind.get(), name, lang));
    let eyebrow = move || {
        kind.get()
            .map(|_| name.with_value(|name| run::pan_title(name, lang)))
            .unwrap_or_default()
    };
    view! {
        <div data-testid="screen-add">
            <Frame title=Signal::derive(title) eyebrow=Signal::derive(eyebrow) screen=Screen::Add(pan)>
                {move || match kind.get() {
                    _ if !known => {
                        view! { <p>{add(add::Add::NoPan, lang)}</p> }.into_any()
                    }
                    None => view! { <Kinds desk/> }.into_any(),
                    Some(kind) => view! { <Typing desk kind/> }.into_any(),
                }}
            </Frame>
        </div>
    }
}

/// The kinds, as large buttons.
#[component]
fn Kinds(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let buttons = move || {
        let kinds = desk.kinds().into_iter();
        kinds
            .map(|kind| {
                view! {
                    <Button
                        label=quick_name(kind, lang)
                        on_press=move |()| desk.begin(kind)
                        testid=format!("add-kind-{}", kind.key())
                    />
                }
            })
            .collect_view()
    };
    view! {
        <p>{add(add::Add::What, lang)}</p>
        <div class="kinds">{buttons}</div>
    }
}

/// The form of a kind.
#[component]
fn Typing(desk: Desk, kind: Kind) -> impl IntoView {
    let lang = desk.lang();
    let caution = quick_caution(kind, lang).map(|words| view! { <p class="caution">{words}</p> });
    let asked = match kind {
        Kind::TopUp | Kind::PartChange => view! { <Units desk/> }.into_any(),
        Kind::Fill => view! { <Ages desk/><Units desk/> }.into_any(),
        Kind::Service => view! { <Loads desk/> }.into_any(),
        Kind::Reading => view! { <Gauges desk/> }.into_any(),
        Kind::Sign => view! { <Signs desk/> }.into_any(),
        Kind::Move => view! { <Others desk/><Units desk/> }.into_any(),
        Kind::OilChange => view! {
            <Reasons desk kind/>
            <Afters desk/>
            {move || desk.asks_number().get().then(|| view! { <Units desk/> })}
        }
        .into_any(),
        Kind::Note => view! { <Words desk label=add(add::Add::Note, lang)/> }.into_any(),
        Kind::ClaimLost | Kind::ClaimRestored => view! { <Claims desk/><Reasons desk kind/> }.into_any(),
    };
    let more = match kind {
        Kind::TopUp | Kind::Fill | Kind::OilChange => view! { <Fats desk/> }.into_any(),
        Kind::Sign => view! { <Words desk label=add(add::Add::OwnWordsOptional, lang)/> }.into_any(),
        Kind::Service
        | Kind::Reading
        | Kind::PartChange
        | Kind::Move
        | Kind::Note
        | Kind::ClaimLost
        | Kind::ClaimRestored => ().into_any(),
    };
    view! {
        <div class="typing" data-testid=format!("add-form-{}", kind.key())>
            <h2>{quick_question(kind, lang)}</h2>
            {caution}
            {asked}
            <Answer desk kind/>
            <details class="more">
                <summary data-testid="add-more">{add(add::Add::More, lang)}</summary>
                <div class="more-in">{more} <When desk/></div>
            </details>
            <Button
                label=add(add::Add::OtherKind, lang)
                rank=Rank::Plain
                on_press=move |()| desk.leave()
                testid="add-other-kind"
            />
        </div>
    }
}

/// The number and the saving; in their place a question, when something is unusual.
#[component]
fn Answer(desk: Desk, kind: Kind) -> impl IntoView {
    let lang = desk.lang();
    let [yes, no] = doubt_answers(lang);
    let refused = move || {
        desk.refused
            .get()
            .map(|words| view! { <p class="field-error" role="alert" data-testid="add-refused">{words}</p> })
    };
    let asks_number = desk.asks_number();
    let save = move || {
        if asks_number.get() {
            view! { <Pack desk/><NumberPad desk/> }.into_any()
        } else {
            view! {
                <Button
                    label=office(Office::Save, lang)
                    rank=Rank::First
                    on_press=move |()| desk.send(Send::AsTyped)
                    testid="add-save"
                />
            }
            .into_any()
        }
    };
    let not_used = (kind == Kind::Service).then(|| {
        view! {
            <Button
                label=office(Office::NotUsed, lang)
                on_press=move |()| desk.send(Send::NotUsed)
                testid="add-not-used"
            />
        }
    });
    view! {
        {refused}
        {move || match desk.doubt.get() {
            Some(words) => view! {
                <Notice tone=Tone::Quiet title=words text="" testid="add-doubt">
                    <Button label=yes rank=Rank::First on_press=move |()| desk.stand_by() testid="add-doubt-yes"/>
                    <Button label=no on_press=move |()| desk.doubt.set(None) testid="add-doubt-no"/>
                </Notice>
            }
            .into_any(),
            None => save().into_any(),
        }}
        {not_used}
    }
}

/// Fields are named by what they set.
fn testid(slot: Slot) -> String {
    format!("add-{}", slot.key().replace('_', "-"))
}
