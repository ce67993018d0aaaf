//! The big card: the one next job, the other jobs small beneath.

use leptos::prelude::*;

use crate::domain::facts::job::JobKind;
use crate::kitchen::today::{Next, Today as Shown};
use crate::ui::bench::use_bench;
use crate::ui::old_parts::{Button, Card, PanDrawing, Rank, Shade};
use crate::ui::screen::{self, Screen};
use crate::words::screens::{self, Screen as Title, screen as title};
use crate::words::today::{self as words, Line, line};
use crate::words::{Lang, run};

/// The screen of a job.
const fn screen_of(job: JobKind) -> Screen {
    match job {
        JobKind::LightUp => Screen::LightUp,
        JobKind::Filter => Screen::Filter,
        JobKind::LockUp => Screen::LockUp,
    }
}

/// Heading and sentence of the next thing.
fn told(shown: &Shown, next: Next, lang: Lang) -> (String, String) {
    let due = screens::pans_due(&shown.due_names(), lang);
    match next {
        Next::Resume(kind) => (words::open(kind, lang), line(Line::OpenText, lang).to_owned()),
        Next::Look => (
            run::job_name(JobKind::LightUp, lang).to_owned(),
            title(Title::LookOwed, lang).to_owned(),
        ),
        Next::Begin(JobKind::Filter) => (run::job_name(JobKind::Filter, lang).to_owned(), due),
        Next::Begin(kind @ JobKind::LightUp) => {
            let text = line(Line::LightUpText, lang).to_owned();
            (run::job_name(kind, lang).to_owned(), text)
        }
        Next::Begin(kind @ JobKind::LockUp) => {
            let text = line(Line::LockUpText, lang).to_owned();
            (run::job_name(kind, lang).to_owned(), text)
        }
        Next::Nothing => (
            line(Line::AllDone, lang).to_owned(),
            line(Line::AllDoneText, lang).to_owned(),
        ),
    }
}

/// The big card.
#[component]
pub fn NextJob(
    /// What is shown.
    shown: Memo<Shown>,
    /// Opens the reasons for not doing it.
    #[prop(into)]
    on_not_done: Callback<()>,
) -> impl IntoView {
    let lang = use_bench().lang;
    let next = Memo::new(move |_| shown.with(Shown::next));
    view! {
        <Card night=true testid="next">
            {move || {
                let next = next.get();
                let (heading, text) = shown.with(|s| told(s, next, lang));
                let label = next.job().map(|job| (job, match next {
                    Next::Resume(_) => words::resume(job, lang),
                    Next::Look | Next::Begin(_) | Next::Nothing => words::begin(job, lang),
                }));
                view! {
                    <h2>{heading}</h2>
                    <p>{text}</p>
                    {due_pans(&shown.get(), next)}
                    {label.map(|(job, label)| view! {
                        <Button
                            rank=Rank::First
                            label=label.to_owned()
                            on_press=move |()| screen::go(screen_of(job))
                            testid="begin"
                        />
                    })}
                }
            }}
            <div class="next-others">
                {move || others(&shown.get(), next.get(), lang)}
                {move || matches!(next.get(), Next::Begin(_)).then(|| view! {
                    <Button
                        rank=Rank::Plain
                        label=line(Line::NotDoneBecause, lang).to_owned()
                        on_press=move |()| on_not_done.run(())
                        testid="not-done"
                    />
                })}
            </div>
        </Card>
    }
}

/// The pans the next filter job is about, small, in the colour of their oil.
fn due_pans(shown: &Shown, next: Next) -> Option<impl IntoView + use<>> {
    let filter = next.job() == Some(JobKind::Filter);
    let due: Vec<_> = shown.pans.iter().filter(|p| filter && p.due).cloned().collect();
    (!due.is_empty()).then(|| {
        let pans = due.into_iter().map(|pan| {
            let shade = Shade::new(pan.shade.unwrap_or(1));
            view! { <PanDrawing shade level=pan.level number=super::row::number(&pan.name)/> }
        });
        view! { <div class="due-pans">{pans.collect_view()}</div> }
    })
}

/// The jobs that are not the next one: to be begun all the same, gone on with, or done.
fn others(shown: &Shown, next: Next, lang: Lang) -> impl IntoView + use<> {
    let (open, done) = (shown.open.clone(), shown.done.clone());
    let kinds = JobKind::ALL
        .iter()
        .copied()
        .filter(move |kind| next.job() != Some(*kind));
    let button = move |kind: JobKind| {
        let label = if open.iter().any(|(k, _)| *k == kind) {
            words::resume(kind, lang).to_owned()
        } else if done.contains(&kind) {
            words::recorded(kind, lang)
        } else {
            run::job_name(kind, lang).to_owned()
        };
        view! {
            <Button label on_press=move |()| screen::go(screen_of(kind)) testid=format!("job-{}", kind.key())/>
        }
    };
    kinds.map(button).collect_view()
}
