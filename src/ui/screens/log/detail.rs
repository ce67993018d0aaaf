//! A line unfolded: what was written and what stands, what was seen, and the way to put it right.

use leptos::prelude::*;

use super::rows::Unfolds;
use crate::browser::clock;
use crate::domain::entry::{Draft, Entry};
use crate::domain::facts::{Fact, oil};
use crate::domain::ids::{EntryId, PanId};
use crate::domain::ledger::is_evidence;
use crate::domain::quick::{self, Amendment, Quick, QuickRefusal, Retype, Said, is_quick, moment, retype, retyped};
use crate::domain::time::Day;
use crate::kitchen::Order;
use crate::ui::bench::{Bench, LiveKitchen, use_bench};
use crate::ui::old_parts::{Button, Field, FieldKind, Rank};
use crate::words::log::{Office, office};
use crate::words::screens::add::{self, add, gauge_unit};
use crate::words::screens::log::{self, log};
use crate::words::setup::unit_name;
use crate::words::{Lang, dates, format, log_lines, quick_refusals};

/// What a line unfolds into.
#[component]
pub fn Detail(what: Unfolds, open: RwSignal<Option<EntryId>>) -> impl IntoView {
    let bench = use_bench();
    match what {
        Unfolds::Entry(id) => view! { <OneEntry bench id open/> }.into_any(),
        Unfolds::Entries { entries, pan } => view! { <Steps bench entries pan open/> }.into_any(),
    }
}

/// One entry: both versions, what was said of it later, and the ways on.
#[component]
fn OneEntry(bench: Bench, id: EntryId, open: RwSignal<Option<EntryId>>) -> impl IntoView {
    let lang = bench.lang;
    let righting = RwSignal::new(false);
    let versions = move || {
        bench.read(|kitchen, _| {
            let line = kitchen.ledger().line(id)?;
            let shown = |entry: &Entry| version(kitchen, entry, lang);
            let written = shown(line.written());
            let now = line.is_amended().then(|| line.standing().map(shown)).flatten();
            let later: Vec<_> = line
                .corrections()
                .iter()
                .filter_map(|id| said_later(kitchen, *id, lang))
                .collect();
            let newer = matches!(line.written().fact, Fact::Newer(_));
            Some(view! {
                <h3>{log(log::Log::Before, lang)}</h3>
                <p data-testid="log-before">{written}</p>
                {now.map(|now| view! {
                    <h3>{log(log::Log::Now, lang)}</h3>
                    <p data-testid="log-now">{now}</p>
                })}
                {(!later.is_empty()).then(|| view! {
                    <h3>{log(log::Log::Corrections, lang)}</h3>
                    <ul class="log-steps" data-testid="log-corrections">
                        {later.into_iter().map(|words| view! { <li>{words}</li> }).collect_view()}
                    </ul>
                })}
                {newer.then(|| view! { <p>{log(log::Log::NewerText, lang)}</p> })}
            })
        })
    };
    let can = move || {
        bench.read(|kitchen, _| {
            let standing = kitchen.ledger().line(id).and_then(|line| line.standing());
            standing.is_some_and(|entry| is_quick(&entry.fact))
        })
    };
    view! {
        <div class="log-open" data-testid="log-open">
            {versions}
            {move || match (can(), righting.get()) {
                (false, _) => ().into_any(),
                (true, false) => view! {
                    <Button label=office(Office::CorrectIt, lang) on_press=move |()| righting.set(true) testid="log-right"/>
                }
                .into_any(),
                (true, true) => view! { <Right bench id open/> }.into_any(),
            }}
        </div>
    }
}

/// An entry as one version says it: when and what.
fn version(kitchen: &LiveKitchen, entry: &Entry, lang: Lang) -> String {
    let said = log_lines::line(&entry.fact, &kitchen.ledger().book, lang);
    let at = dates::moment(entry.at, entry.off_min, lang);
    if entry.is_late() {
        let written = dates::moment(entry.rec, clock::offset(entry.rec), lang);
        format!("{at}: {said} ({})", log::written(&written, lang))
    } else {
        format!("{at}: {said}")
    }
}

fn said_later(kitchen: &LiveKitchen, id: EntryId, lang: Lang) -> Option<String> {
    let ledger = kitchen.ledger();
    let written = ledger.line(id)?.written();
    let Fact::Correct(correct) = &written.fact else {
        return None;
    };
    let who = written
        .who
        .map(|id| log_lines::who(&ledger.book, id))
        .unwrap_or_default();
    let at = dates::moment(written.rec, written.off_min, lang);
    Some(format!(
        "{at}, {who}: {}",
        log_lines::correction(correct, &ledger.book, lang)
    ))
}

/// The form that puts an entry right, or says that it did not happen. Either needs a reason.
#[component]
fn Right(bench: Bench, id: EntryId, open: RwSignal<Option<EntryId>>) -> impl IntoView {
    let lang = bench.lang;
    let entry = bench.look(|kitchen, _| kitchen.ledger().line(id).and_then(|line| line.standing()).cloned())?;
    let anew = retype(&entry.fact);
    let local = Day::of(entry.at, entry.off_min, 0).date().to_string();
    let (date, time) = (
        RwSignal::new(local),
        RwSignal::new(format::time_of_day(entry.at, entry.off_min)),
    );
    let (date_was, time_was) = (date.get_untracked(), time.get_untracked());
    let typed = RwSignal::new(match &anew {
        Some(Retype::Amount(_, text) | Retype::Reading(_, text) | Retype::Hours(text) | Retype::Words(text)) => {
            text.clone()
        }
        None => String::new(),
    });
    let field = anew.map(|anew| {
        let (label, unit, kind) = match &anew {
            Retype::Amount(unit, _) => (log::Log::RightNumber, Some(unit_name(*unit, lang)), FieldKind::Decimal),
            Retype::Reading(what, _) => (log::Log::RightNumber, Some(gauge_unit(*what)), FieldKind::Decimal),
            Retype::Hours(_) => (log::Log::RightNumber, Some("h"), FieldKind::Decimal),
            Retype::Words(_) => (log::Log::RightWords, None, FieldKind::Text),
        };
        view! {
            <Field
                label=log(label, lang)
                kind
                unit=unit.unwrap_or_default().to_owned()
                value=typed
                on_input=move |text: String| typed.set(text)
                testid="log-number"
            />
        }
    });
    let why = RwSignal::new(String::new());
    let refused = RwSignal::new(None::<String>);
    let send = move |draft: Result<Draft, String>| match draft {
        Ok(draft) => bench.send_then(Order::Write(vec![draft]), move |_| open.set(None)),
        Err(words) => refused.set(Some(words)),
    };
    let wordless = move || why.with_untracked(|why| why.trim().is_empty());
    let say_why = move || refused.set(Some(quick_refusals::gap(quick::Gap::Words, lang).to_owned()));
    let save = move |()| {
        if wordless() {
            return say_why();
        }
        let fact = match retyped(&entry.fact, &typed.get_untracked()) {
            Ok(fact) => fact,
            Err(gap) => return send(Err(quick_refusals::gap(gap, lang).to_owned())),
        };
        let (day, minute) = (date.get_untracked(), time.get_untracked());
        let at = if (&day, &minute) == (&date_was, &time_was) {
            None
        } else {
            let Some(at) = moment(&day, &minute, clock::offset) else {
                return send(Err(quick_refusals::gap(quick::Gap::When, lang).to_owned()));
            };
            Some((at, clock::offset(at)))
        };
        let why = why.get_untracked();
        let who = bench.me();
        let amendment = Amendment { why, at, fact };
        send(bench.look(|kitchen, now| {
            quick::amend(kitchen.ledger(), id, amendment, who, *now)
                .map_err(|why| worded(&why, kitchen, now.off_min, lang))
        }));
    };
    let void = move |()| {
        if wordless() {
            return say_why();
        }
        let who = bench.me();
        send(bench.look(|kitchen, now| {
            quick::void(kitchen.ledger(), id, why.get_untracked(), who)
                .map_err(|why| worded(&why, kitchen, now.off_min, lang))
        }));
    };
    Some(view! {
        <div class="typing" data-testid="log-righting">
            {field}
            <div class="when">
                <Field
                    label=add(add::Add::Date, lang)
                    kind=FieldKind::Date
                    value=date
                    on_input=move |text: String| date.set(text)
                    testid="log-date"
                />
                <Field
                    label=add(add::Add::Time, lang)
                    kind=FieldKind::Time
                    value=time
                    on_input=move |text: String| time.set(text)
                    testid="log-time"
                />
            </div>
            <Field
                label=log(log::Log::WhyPutRight, lang)
                value=why
                on_input=move |text: String| why.set(text)
                error=refused
                testid="log-why"
            />
            <div class="log-ways">
                <Button label=log(log::Log::SaveRight, lang) rank=Rank::First on_press=save testid="log-save-right"/>
                <Button label=office(Office::Void, lang) on_press=void testid="log-void"/>
                <Button
                    label=log(log::Log::Close, lang)
                    rank=Rank::Plain
                    on_press=move |()| open.set(None)
                    testid="log-close"
                />
            </div>
        </div>
    })
}

fn worded(why: &QuickRefusal, kitchen: &LiveKitchen, off_min: i16, lang: Lang) -> String {
    quick_refusals::refusal(why, &kitchen.ledger().book, off_min, lang)
}

/// The entries of a run or job with what was seen; a note can be put beside them.
#[component]
fn Steps(bench: Bench, entries: Vec<EntryId>, pan: Option<PanId>, open: RwSignal<Option<EntryId>>) -> impl IntoView {
    let lang = bench.lang;
    let last = entries.last().copied();
    let steps = bench.look(|kitchen, _| {
        let lines = entries.iter().filter_map(|id| kitchen.ledger().line(*id));
        lines
            .map(|line| {
                let entry = line.written();
                let seen = log_lines::evidence(&entry.fact, lang).join(", ");
                view! {
                    <li>
                        <time>{format::time_of_day(entry.at, entry.off_min)}</time>
                        {log_lines::step(&entry.fact, lang)}
                        {(!seen.is_empty()).then(|| view! { <span class="seen">" · "{seen}</span> })}
                    </li>
                }
            })
            .collect_view()
    });
    let text = RwSignal::new(String::new());
    let refused = RwSignal::new(None::<String>);
    let save = move |()| {
        let who = bench.me();
        let drafts = bench.look(|kitchen, now| {
            let ledger = kitchen.ledger();
            // A note on what was seen is dated to it, so that it stands beside it and shows as late when it is.
            let seen = last.and_then(|id| ledger.line(id)).map(|line| line.written());
            let at = seen.filter(|entry| is_evidence(&entry.fact)).map(|entry| entry.at);
            let text = text.get_untracked();
            let what = Quick::Note(oil::Note { pan, text });
            let said = Said {
                what,
                who,
                at,
                sure: false,
            };
            quick::drafts(ledger, said, *now).map_err(|why| worded(&why, kitchen, now.off_min, lang))
        });
        match drafts {
            Ok(drafts) => bench.send_then(Order::Write(drafts), move |entries| {
                bench.just_logged.set(entries.first().cloned());
                open.set(None);
            }),
            Err(words) => refused.set(Some(words)),
        }
    };
    view! {
        <div class="log-open" data-testid="log-open">
            <ol class="log-steps" data-testid="log-steps">{steps}</ol>
            <Field
                label=log(log::Log::AddNote, lang)
                hint=log(log::Log::EvidenceStays, lang).to_owned()
                value=text
                on_input=move |words: String| text.set(words)
                error=refused
                testid="log-note"
            />
            <Button label=log(log::Log::SaveNote, lang) on_press=save testid="log-save-note"/>
        </div>
    }
}
