//! "Not done, because": one touch opens it, one on a reason writes it. For the whole job, or for one pan.

use crate::browser::clock;
use crate::domain::facts::job::JobKind;
use crate::domain::ids::{JobId, PanId};
use crate::kitchen::Order;
use crate::kitchen::nights::{self, Told};
use crate::kitchen::today::{Next, Today as Shown};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Act, Element, Held, Tell, el, live};
use crate::ui::parts::{Choice, Rank, Sheet, Tone, button, notice};
use crate::ui::screens::last_night::tell;
use crate::ui::screens::why_not::why_not;
use crate::words::today::{Line, line};
use crate::words::{rhythm, run};

/// The key of "all that are due".
const ALL: &str = "all";

/// The job it is about, while it could begin.
fn job(shown: &Shown) -> Option<JobKind> {
    match shown.next() {
        Next::Begin(kind) => Some(kind),
        Next::Resume(_) | Next::Look | Next::Closed(_) | Next::Nothing => None,
    }
}

/// Of a filter job the pans that are due; of the others nobody but the job itself.
fn due(shown: &Shown) -> Vec<(PanId, String)> {
    if job(shown) != Some(JobKind::Filter) {
        return Vec::new();
    }
    let due = shown.pans.iter().filter(|p| p.due);
    due.map(|p| (p.pan, p.name.clone())).collect()
}

/// The sheet of reasons, over `shown`, while `open`.
pub fn not_done(bench: Bench, shown: Held<Shown>, open: Held<bool>) -> Element {
    let lang = bench.lang;
    let about = Held::new(ALL.to_owned());
    let close = move || {
        about.set(ALL.to_owned());
        open.set(false);
    };
    let tell_pans = move |told: &Told| {
        let about = about.get_untracked();
        let (day, due) = shown.with_untracked(|shown| (shown.day, due(shown)));
        let meant = due.into_iter().filter(|(_, name)| about == ALL || about == *name);
        tell(bench, day, &meant.map(|(pan, _)| pan).collect::<Vec<_>>(), told);
    };
    let because = Tell::new(move |reason: String| {
        let Some(kind) = shown.with_untracked(job) else { return };
        if kind == JobKind::Filter {
            tell_pans(&Told::NotDone(reason));
        } else {
            let id = JobId(u128::from_le_bytes(clock::random_bytes()));
            let draft = nights::job_not_done(id, kind, reason, bench.me());
            bench.send(Order::Write(vec![draft]));
        }
        close();
    });
    let which = live(move || {
        let due = shown.with(due);
        let all = (ALL.to_owned(), line(Line::AllDue, lang).to_owned());
        let any = !due.is_empty();
        let each = due
            .into_iter()
            .map(|(_, name)| (name.clone(), run::pan_title(&name, lang)));
        any.then(|| {
            let choice = Choice {
                legend: line(Line::WhichPans, lang).into(),
                options: std::iter::once(all).chain(each).collect(),
                chosen: Some(about.get()),
                on_choose: Tell::new(move |key| about.set(key)),
                error: None,
                testid: "not-done-pans".into(),
            };
            choice.draw()
        })
    });
    // Once is a night moved; again is said before it is written.
    let again = live(move || {
        let about = about.get();
        shown.with(|shown| {
            let asked = shown.pans.iter().filter(|p| p.due && (about == ALL || about == p.name));
            let again = asked.filter_map(|p| Some(rhythm::once_more(&p.name, p.put_off.as_ref()?, lang)));
            let again: Vec<String> = again.collect();
            let title = rhythm::say(rhythm::Say::Again, lang);
            (!again.is_empty()).then(|| notice(Tone::Quiet, title, again.join(" "), "again"))
        })
    });
    let unguided = live(move || {
        let unguided = move || {
            tell_pans(&Told::Unguided);
            close();
        };
        let any = shown.with(|shown| !due(shown).is_empty());
        any.then(|| button(Rank::Second, line(Line::Unguided, lang), "unguided", unguided))
    });
    let sheet = Sheet {
        open: Box::new(move || open.get()),
        on_close: Act::new(close),
        title: line(Line::WhyNot, lang).into(),
        sign: None,
        close: line(Line::Close, lang).into(),
        testid: "not-done-sheet",
        holds: nodes![
            which,
            again,
            why_not(lang, because),
            unguided,
            el("p").class("soft").text(run::unguided_note(lang)),
        ],
    };
    sheet.draw()
}
