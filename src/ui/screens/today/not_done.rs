//! "Not done, because": one touch opens it, one on a reason writes it. For the whole job, or for one pan.

use leptos::prelude::*;

use crate::browser::clock;
use crate::domain::facts::job::JobKind;
use crate::domain::ids::{JobId, PanId};
use crate::kitchen::Order;
use crate::kitchen::nights::{self, Told};
use crate::kitchen::today::{Next, Today as Shown};
use crate::ui::bench::use_bench;
use crate::ui::old_parts::{Button, Choice, Sheet};
use crate::ui::screens::last_night::tell;
use crate::ui::screens::why_not::WhyNot;
use crate::words::run;
use crate::words::today::{Line, line};

/// The key of "all that are due".
const ALL: &str = "all";

/// The sheet of reasons.
#[component]
pub fn NotDone(
    /// What is shown.
    shown: Memo<Shown>,
    /// Whether it is open.
    open: RwSignal<bool>,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let about = RwSignal::new(ALL.to_owned());
    let job = Memo::new(move |_| match shown.with(Shown::next) {
        Next::Begin(kind) => Some(kind),
        Next::Resume(_) | Next::Look | Next::Nothing => None,
    });
    // Of a filter job the pans that are due; of the others nobody but the job itself.
    let due = Memo::new(move |_| {
        let filter = job.get() == Some(JobKind::Filter);
        let due = |s: &Shown| {
            s.pans
                .iter()
                .filter(|p| p.due)
                .map(|p| (p.pan, p.name.clone()))
                .collect()
        };
        if filter {
            shown.with(due)
        } else {
            Vec::<(PanId, String)>::new()
        }
    });
    let close = move || {
        about.set(ALL.to_owned());
        open.set(false);
    };
    let pans = move || {
        let (about, due) = (about.get_untracked(), due.get_untracked());
        let meant = due.into_iter().filter(|(_, name)| about == ALL || about == *name);
        meant.map(|(pan, _)| pan).collect::<Vec<_>>()
    };
    let day = move || shown.with_untracked(|s| s.day);
    let because = move |reason: String| {
        let Some(kind) = job.get_untracked() else { return };
        if kind == JobKind::Filter {
            tell(bench, day(), &pans(), &Told::NotDone(reason));
        } else {
            let id = JobId(u128::from_le_bytes(clock::random_bytes()));
            let draft = nights::job_not_done(id, kind, reason, bench.me());
            bench.send(Order::Write(vec![draft]));
        }
        close();
    };
    let unguided = move |()| {
        tell(bench, day(), &pans(), &Told::Unguided);
        close();
    };
    let options = move || {
        let all = (ALL.to_owned(), line(Line::AllDue, lang).to_owned());
        let each = due
            .get()
            .into_iter()
            .map(|(_, name)| (name.clone(), run::pan_title(&name, lang)));
        std::iter::once(all).chain(each).collect::<Vec<_>>()
    };
    view! {
        <Sheet
            open
            on_close=move |()| close()
            title=line(Line::WhyNot, lang)
            close=line(Line::Close, lang)
            testid="not-done-sheet"
        >
            {move || (!due.with(Vec::is_empty)).then(|| view! {
                <Choice
                    legend=line(Line::WhichPans, lang)
                    options=options()
                    chosen=Signal::derive(move || Some(about.get()))
                    on_choose=move |key| about.set(key)
                    testid="not-done-pans"
                />
            })}
            <WhyNot on_reason=because/>
            {move || (!due.with(Vec::is_empty)).then(|| view! {
                <Button label=line(Line::Unguided, lang).to_owned() on_press=unguided testid="unguided"/>
            })}
            <p class="soft">{run::unguided_note(lang)}</p>
        </Sheet>
    }
}
