//! A gate on screen: one question at a time, its answers, Go on where no answer stood.

use leptos::prelude::*;

use super::desk::AskDesk;
use super::draft;
use super::frame::{Around, Lines, Step};
use super::signs;
use crate::domain::evidence::{Item, Word};
use crate::domain::guide::asking::{Asking, Touched};
use crate::domain::guide::gate::{Gate, Question, QuestionKind};
use crate::domain::procedure::Step as TableStep;
use crate::domain::procedure::{Answer, Hold, StepId};
use crate::domain::units::Temp;
use crate::ui::old_parts::{AnswerButton, GoOn, Pad, PadWords};
use crate::words::run::{Say, say};
use crate::words::screens::job::{self, JobSay};
use crate::words::{Lang, answers, hazards, holds, questions, steps};

/// What a screen gives to the gate it shows.
pub struct AskParts {
    /// What stands around it.
    pub around: Around,
    /// The stretch of the work and how far in it.
    pub progress: String,
    /// Quiet buttons at the top.
    pub aside: AnyView,
    /// The buttons of a question answered by naming a person or a machine.
    pub picks: Option<AnyView>,
    /// Stops the job.
    pub on_stop: Callback<()>,
}

/// The question on screen now.
#[must_use]
pub fn ask(desk: AskDesk, asking: &Asking, parts: AskParts) -> AnyView {
    let run = desk.run.get_value();
    let lang = desk.bench.lang;
    let Some(question) = asking.current(run.as_ref()) else {
        return ().into_any();
    };
    let shown = Shown {
        desk,
        all: asking.all_answered(run.as_ref()),
        hold: asking.gate().is_hold(),
        lang,
    };
    let lines = lines(asking, &question, &parts, lang);
    let AskParts {
        around,
        aside,
        picks,
        on_stop,
        ..
    } = parts;
    let step = table_step(asking.gate(), question.step);
    let hazard_sign = step.map_or(crate::ui::old_parts::SignKind::Warning, |s| signs::of_hazard(s.hazard));
    let item = match &question.kind {
        QuestionKind::Look { item, .. } | QuestionKind::Probe { item } => Some(*item),
        QuestionKind::Together(_) | QuestionKind::Person | QuestionKind::Machine => None,
    };
    let sign = signs::of_question(question.step, item).filter(|_| asking.not_yet().is_none());
    let out_by = around.out_by;
    let (middle, answers) = match question.kind {
        QuestionKind::Look { item, answers } => (None, shown.looks(asking, question.step, item, &answers, out_by)),
        QuestionKind::Together(group) => (None, shown.together(asking, &group)),
        QuestionKind::Probe { item } => (Some(shown.pad(question.step, item)), ().into_any()),
        QuestionKind::Person | QuestionKind::Machine => {
            let picks = view! { <div class="picks">{picks}</div> }.into_any();
            (Some(picks), shown.go_on())
        }
    };
    view! {
        <Step around lines hazard_sign sign middle aside=Some(aside) on_stop>
            {answers}
        </Step>
    }
    .into_any()
}

fn table_step(gate: &Gate, id: StepId) -> Option<&'static TableStep> {
    gate.steps.iter().copied().find(|s| s.id == id)
}

/// The hold an answer is evidence for, else the step's own.
fn hold_of(step: &TableStep, item: Item) -> Option<Hold> {
    let asked = step.asks.iter().find(|ask| ask.item == item).and_then(|ask| ask.hold);
    asked.or_else(|| step.holds.first().copied())
}

fn lines(asking: &Asking, question: &Question, parts: &AskParts, lang: Lang) -> Lines {
    let around = &parts.around;
    let step = table_step(asking.gate(), question.step);
    if let Some((item, word)) = asking.not_yet() {
        let hold = step.and_then(|step| hold_of(step, item));
        let put_right = hold.map_or_else(
            || steps::step_detail(question.step, lang),
            |hold| holds::hold_meanwhile(hold, lang),
        );
        return Lines {
            progress: parts.progress.clone(),
            say: format!(
                "{}: {}",
                job::say(JobSay::NotYet, lang),
                answers::phrase(item, word, lang)
            ),
            hazard: Some(put_right.to_owned()),
            sub: Some(questions::question(question.step, item, lang).to_owned()),
        };
    }
    let hazard = step.map(|step| hazards::hazard_line(step.hazard, lang).to_owned());
    let (hazard, sub) = match &question.kind {
        QuestionKind::Probe { .. } => (None, around.window.clone()),
        QuestionKind::Look { item: Item::Level, .. } => {
            let asked = questions::question(question.step, Item::Level, lang);
            let level = around.level.as_deref().unwrap_or_default();
            // How much is enough is worth more here than what can hurt, which the step line's why tells.
            (None, Some(format!("{asked} {level}")))
        }
        QuestionKind::Look { item, .. } => (hazard, Some(questions::question(question.step, *item, lang).to_owned())),
        QuestionKind::Person => (None, None),
        QuestionKind::Together(_) | QuestionKind::Machine => (hazard, None),
    };
    Lines {
        progress: parts.progress.clone(),
        say: steps::step_line_for(question.step, around.out_by, lang).to_owned(),
        hazard: around.note.clone().or(hazard),
        sub,
    }
}

/// What the answers of a question need to draw themselves.
#[derive(Clone, Copy)]
struct Shown {
    desk: AskDesk,
    all: bool,
    hold: bool,
    lang: Lang,
}

impl Shown {
    fn go_on(self) -> AnyView {
        let Self { desk, all, lang, .. } = self;
        let label = say(if all { Say::GoOn } else { Say::AnswerAllFirst }, lang);
        view! { <GoOn label awake=all on_press=Callback::new(move |()| desk.go_on()) /> }.into_any()
    }

    fn looks(
        self,
        asking: &Asking,
        step: StepId,
        item: Item,
        answers: &[Answer],
        out_by: crate::domain::facts::setup::OutBy,
    ) -> AnyView {
        let Self { desk, lang, .. } = self;
        let given = asking.seen().word(item);
        let alone = answers.len() == 1;
        let button = move |word: Word, whole: bool| {
            let label = match step {
                StepId::EmptyByHand if alone => answers::moving_ends(out_by, false, lang).to_owned(),
                StepId::Pouring if alone => answers::moving_ends(out_by, true, lang).to_owned(),
                _ => answers::label(item, word, lang),
            };
            let on_press = Callback::new(move |()| {
                desk.touch(|asking, run, now| asking.look(item, word, run, now));
            });
            let testid = format!("answer-{}-{}", item.key(), word.key());
            view! { <AnswerButton label chosen={given == Some(word)} strong=alone whole on_press testid /> }
        };
        if answers.len() < 3 || !self.hold {
            let whole = |n: usize| alone || n == 2;
            let buttons = answers
                .iter()
                .enumerate()
                .map(|(n, a)| button(a.word, whole(n)))
                .collect_view();
            let go_on = self.hold.then(|| self.go_on());
            return view! { {buttons} {go_on} }.into_any();
        }
        // Three answers leave no place for Go on: it follows on its own, in the corner where no answer stood.
        match given.filter(|_| self.all) {
            None => answers.iter().map(|a| button(a.word, false)).collect_view().into_any(),
            Some(word) => {
                let label = answers::label(item, word, lang);
                let again = Callback::new(move |()| {
                    desk.touch(|asking, _, now| {
                        asking.again(item, now);
                        Touched::Kept
                    });
                });
                let testid = format!("answer-{}-{}", item.key(), word.key());
                view! {
                    <AnswerButton label chosen=true whole=true on_press=again testid />
                    <div class="fourth">{self.go_on()}</div>
                }
                .into_any()
            }
        }
    }

    fn together(self, asking: &Asking, group: &[(Question, Word)]) -> AnyView {
        let Self { desk, lang, .. } = self;
        let parts: Vec<(Item, Word)> = group
            .iter()
            .filter_map(|(question, word)| match &question.kind {
                QuestionKind::Look { item, .. } => Some((*item, *word)),
                _ => None,
            })
            .collect();
        let chosen = parts.iter().all(|(item, word)| asking.seen().is(*item, *word));
        let label = answers::together(&parts, lang);
        let all_so = Callback::new(move |()| desk.touch(|asking, run, now| asking.all_so(run, now)));
        let apart = Callback::new(move |()| desk.touch(|asking, run, now| asking.one_by_one(run, now)));
        let go_on = self.hold.then(|| self.go_on());
        view! {
            <AnswerButton label chosen on_press=all_so testid="answer-together" />
            <AnswerButton label=job::say(JobSay::OneByOne, lang) on_press=apart testid="one-by-one" />
            {go_on}
        }
        .into_any()
    }

    fn pad(self, step: StepId, item: Item) -> AnyView {
        let Self { desk, lang, .. } = self;
        let value = draft::open(desk.scope(), item);
        let odd = RwSignal::new(false);
        let accept = Callback::new(move |text: String| match celsius_dc(&text) {
            Some(dc) => {
                desk.touch(|asking, run, now| asking.number(item, dc, run, now));
                let taken = desk.asking_untracked().and_then(|a| a.seen().number(item));
                if let (Some(dc), Some(told)) = (taken, desk.on_number.get_value()) {
                    told.run(dc);
                }
            }
            None => {
                odd.set(true);
                value.update(String::clear);
            }
        });
        let [back, clear, sign, point] = job::pad_keys(lang).map(str::to_owned);
        let words = PadWords {
            accept: say(Say::Accept, lang).to_owned(),
            back,
            clear,
            sign,
            point,
        };
        let testid = format!("pad-{}", item.key());
        view! {
            {move || odd.get().then(|| view! { <p class="job-note" role="alert">{say(Say::NumberAgain, lang)}</p> })}
            <Pad value label=questions::question(step, item, lang) unit="°C" words most=3 on_accept=accept testid />
        }
        .into_any()
    }
}

/// Whole degrees as typed, in tenths; `None` for what no probe in oil reads.
fn celsius_dc(text: &str) -> Option<i32> {
    let whole: i16 = text.parse().ok()?;
    Temp::from_dc(whole.checked_mul(10)?).map(|temp| i32::from(temp.dc()))
}
