//! A gate on screen: one question at a time, its answers, Go on where no answer stood.

use super::desk::AskDesk;
use super::draft;
use super::frame::{Around, Lines, Step};
use super::signs;
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::run::Form;
use crate::domain::facts::setup::OutBy;
use crate::domain::guide::asking::{Asking, Touched};
use crate::domain::guide::gate::{Gate, Question, QuestionKind};
use crate::domain::procedure::Step as TableStep;
use crate::domain::procedure::{Answer, Block, Hold, StepId, Verdict};
use crate::domain::quick::parts;
use crate::domain::units::Temp;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Act, Element, Held, Node, Tell, Text, el, live, several};
use crate::ui::parts::{Pad, PadWords, Rank, SignKind, answer_button, button, go_on};
use crate::words::run::{Say, say};
use crate::words::screens::job::{self, JobSay};
use crate::words::{Lang, answers, hazards, holds, questions, steps, wrong_days};

/// As many answers as stand large on one screen.
const ANSWERS_MOST: usize = 3;

/// What a screen gives to the gate it shows.
pub struct AskParts {
    /// What stands around it.
    pub around: Around,
    /// The stretch of the work and how far in it.
    pub progress: String,
    /// Quiet buttons at the top.
    pub aside: Node,
    /// The buttons of a question answered by naming a person or a machine.
    pub picks: Option<Node>,
    /// Stops the job.
    pub on_stop: Act,
}

/// The question on screen now.
#[must_use]
pub fn ask(desk: AskDesk, asking: &Asking, parts: AskParts) -> Node {
    let run = desk.run.get_untracked();
    let lang = desk.bench.lang;
    let Some(question) = asking.current(run.as_ref()) else {
        return Node::Nothing;
    };
    let shown = Shown {
        desk,
        all: asking.all_answered(run.as_ref()),
        hold: asking.gate().is_hold(),
        lang,
    };
    let again = run.as_ref().is_some_and(|run| run.form == Form::Long);
    let lines = lines(asking, &question, &parts, again, lang);
    let AskParts {
        around,
        aside,
        picks,
        on_stop,
        ..
    } = parts;
    let step = table_step(asking.gate(), question.step);
    let item = match &question.kind {
        QuestionKind::Look { item, .. } | QuestionKind::Probe { item } => Some(*item),
        QuestionKind::Together(_) | QuestionKind::Person | QuestionKind::Machine => None,
    };
    // Two groups of one step are two screens as well.
    let first = match &question.kind {
        QuestionKind::Together(group) => group.first().and_then(|(first, _)| match first.kind {
            QuestionKind::Look { item, .. } => Some(item),
            QuestionKind::Together(_) | QuestionKind::Probe { .. } | QuestionKind::Person | QuestionKind::Machine => {
                None
            }
        }),
        QuestionKind::Look { .. } | QuestionKind::Probe { .. } | QuestionKind::Person | QuestionKind::Machine => item,
    };
    let out_by = around.out_by;
    let rare = match &question.kind {
        QuestionKind::Look { item, answers } => shown.rare(*item, answers),
        QuestionKind::Together(_) | QuestionKind::Probe { .. } | QuestionKind::Person | QuestionKind::Machine => None,
    };
    // The gate too: a look again asks other steps' questions, and the gate after it may begin with the same one. And the
    // pan: lock-up asks the same of one pan after the other.
    let (gate, asked) = (asking.gate().id().key(), question.step.key());
    let pan = around.pan.as_deref().unwrap_or_default();
    let key = format!("{gate}.{asked}.{}.{pan}", first.map_or("", Item::key));
    let (middle, answers) = match question.kind {
        QuestionKind::Look { item, answers } => (
            Node::Nothing,
            shown.looks(asking, question.step, item, &answers, out_by),
        ),
        QuestionKind::Together(group) => (Node::Nothing, shown.together(asking, &group)),
        QuestionKind::Probe { item } => (shown.pad(question.step, item), Node::Nothing),
        QuestionKind::Person | QuestionKind::Machine => {
            let second = question.kind == QuestionKind::Person && asks_second(desk.bench);
            (
                el("div").class("picks").child(picks).into(),
                shown.go_on_as(second).into(),
            )
        }
    };
    let screen = Step {
        hazard_sign: step.map_or(SignKind::Warning, |s| signs::of_hazard(s.hazard)),
        sign: signs::of_question(question.step, item).filter(|_| asking.not_yet().is_none()),
        middle,
        aside: Some(nodes![rare, aside]),
        ..Step::new(around, lines, on_stop, answers)
    };
    screen.draw(desk.bench, key).into()
}

/// Whether who goes on says with it that somebody else is in the building.
#[must_use]
pub fn asks_second(bench: Bench) -> bool {
    bench.look(|kitchen, now| kitchen.scene(now).asks_second())
}

fn table_step(gate: &Gate, id: StepId) -> Option<&'static TableStep> {
    gate.steps.iter().copied().find(|s| s.id == id)
}

/// The hold an answer is evidence for, else the step's own.
fn hold_of(step: &TableStep, item: Item) -> Option<Hold> {
    let asked = step.asks.iter().find(|ask| ask.item == item).and_then(|ask| ask.hold);
    asked.or_else(|| step.holds.first().copied())
}

/// Whether something else of the step is answered already.
fn begun(step: &TableStep, item: Item, asking: &Asking) -> bool {
    let others = step.asks.iter().filter(|ask| ask.item != item);
    others.into_iter().any(|ask| asking.seen().get(ask.item).is_some())
}

/// Whether one of its answers says that something is wrong.
fn means_trouble(asking: &Asking) -> bool {
    let looks = asking.gate().looks();
    looks.iter().any(|(_, item, answers)| {
        let seen = answers.iter().find(|answer| asking.seen().is(*item, answer.word));
        seen.is_some_and(|answer| matches!(answer.verdict, Verdict::Fault(_)))
    })
}

/// `again`: a group is made of looks given before, as it is in the long form.
fn lines(asking: &Asking, question: &Question, parts: &AskParts, again: bool, lang: Lang) -> Lines {
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
    // What the label is compared with must be there to compare. On the smallest screen the line about what can hurt would
    // take its place, and the step line's why tells that, too.
    // Four quiet ways stand aside where samples are compared, and its why tells it as well.
    let hurts = step.filter(|step| !matches!(step.id, StepId::Match | StepId::Compare));
    let hazard = hurts.map(|step| hazards::hazard_line(step.hazard, lang).to_owned());
    let of_run = |step: &TableStep| !matches!(step.block, Block::LightUp | Block::OilChange | Block::BoilOut);
    // Where there is no pump: what must be seen is heat, and the moment something means heat off that is said first.
    let off_now = step.is_some_and(|step| !of_run(step) && (step.id == StepId::LookAgain || means_trouble(asking)));
    let line = if off_now {
        steps::heat_off_now(lang)
    } else {
        steps::step_line_for(question.step, around.out_by, lang)
    };
    let mut say = line;
    let (hazard, sub) = match &question.kind {
        QuestionKind::Probe { .. } => (None, around.window.clone()),
        QuestionKind::Look { item: Item::Level, .. } => {
            let asked = questions::question(question.step, Item::Level, lang);
            let level = around.level.as_deref().unwrap_or_default();
            // How much is enough is worth more here than what can hurt, which the step line's why tells.
            (None, Some(format!("{asked} {level}")))
        }
        QuestionKind::Look { item, .. } => {
            let asked = questions::question(question.step, *item, lang);
            // First what to do; then, question by question, what is to be looked at.
            let small = if !off_now && step.is_some_and(|step| begun(step, *item, asking)) {
                say = asked;
                line
            } else {
                asked
            };
            let words = around.own.as_ref().map(|own| format!("{small} {own}"));
            (hazard, Some(words.unwrap_or_else(|| small.to_owned())))
        }
        QuestionKind::Person => (None, None),
        QuestionKind::Together(_) => {
            let asked = questions::of_group(again, lang);
            let words = around.own.as_ref().map(|own| format!("{own} {asked}"));
            (hazard, Some(words.unwrap_or_else(|| asked.to_owned())))
        }
        QuestionKind::Machine => (hazard, None),
    };
    Lines {
        progress: parts.progress.clone(),
        say: say.to_owned(),
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
    fn go_on(self) -> Element {
        self.go_on_as(false)
    }

    /// Go on; beside a name, where the kitchen asks for it, it says that somebody else is in the building.
    fn go_on_as(self, second: bool) -> Element {
        let Self { desk, all, lang, .. } = self;
        let label = match (all, second) {
            (false, _) => say(Say::AnswerAllFirst, lang),
            (true, false) => say(Say::GoOn, lang),
            (true, true) => wrong_days::say(wrong_days::Say::NotAlone, lang),
        };
        go_on(label, all, move || desk.go_on())
    }

    /// An answer beyond three: seldom given, and kept aside.
    fn rare(self, item: Item, answers: &[Answer]) -> Option<Element> {
        let Self { desk, lang, .. } = self;
        let word = answers.get(ANSWERS_MOST)?.word;
        let press = move || desk.touch(|asking, run, now| asking.look(item, word, run, now));
        let testid = format!("rare-{}-{}", item.key(), word.key());
        Some(button(Rank::Plain, answers::label(item, word, lang), testid, press))
    }

    fn looks(self, asking: &Asking, step: StepId, item: Item, answers: &[Answer], out_by: OutBy) -> Node {
        let Self { desk, lang, .. } = self;
        let answers = answers.get(..ANSWERS_MOST).unwrap_or(answers);
        let given = asking.seen().word(item);
        let alone = answers.len() == 1;
        let testid = |word: Word| format!("answer-{}-{}", item.key(), word.key());
        let button = |word: Word, whole: bool| {
            let label: Text = match step {
                StepId::EmptyByHand if alone => answers::moving_ends(out_by, false, lang).into(),
                StepId::Pouring if alone => answers::moving_ends(out_by, true, lang).into(),
                _ => answers::label(item, word, lang).into(),
            };
            let press = move || desk.touch(|asking, run, now| asking.look(item, word, run, now));
            answer_button(label, given == Some(word), testid(word), press)
                .class_if("strong", alone)
                .class_if("whole", whole)
        };
        if answers.len() < 3 || !self.hold {
            let all = answers.iter().enumerate();
            let buttons = several(all.map(|(n, answer)| button(answer.word, alone || n == 2)));
            return nodes![buttons, self.hold.then(|| self.go_on())];
        }
        // Three answers leave no place for Go on: it follows on its own, in the corner where no answer stood.
        let Some(word) = given.filter(|_| self.all) else {
            return several(answers.iter().map(|answer| button(answer.word, false)));
        };
        let again = move || {
            desk.touch(|asking, _, now| {
                asking.again(item, now);
                Touched::Kept
            });
        };
        let chosen = answer_button(answers::label(item, word, lang), true, testid(word), again);
        nodes![chosen.class("whole"), el("div").class("fourth").child(self.go_on())]
    }

    fn together(self, asking: &Asking, group: &[(Question, Word)]) -> Node {
        let Self { desk, lang, .. } = self;
        let parts: Vec<(Item, Word)> = group
            .iter()
            .filter_map(|(question, word)| match &question.kind {
                QuestionKind::Look { item, .. } => Some((*item, *word)),
                _ => None,
            })
            .collect();
        let chosen = parts.iter().all(|(item, word)| asking.seen().is(*item, *word));
        let all_so = move || desk.touch(|asking, run, now| asking.all_so(run, now));
        let apart = move || desk.touch(|asking, run, now| asking.one_by_one(run, now));
        nodes![
            answer_button(answers::together(&parts, lang), chosen, "answer-together", all_so).class("many"),
            answer_button(job::say(JobSay::OneByOne, lang), false, "one-by-one", apart),
            self.hold.then(|| self.go_on()),
        ]
    }

    fn pad(self, step: StepId, item: Item) -> Node {
        let Self { desk, lang, .. } = self;
        let value = draft::open(desk.scope(), item);
        let odd = Held::new(false);
        let accept = Tell::new(move |text: String| match celsius_dc(&text) {
            Some(dc) => {
                desk.touch(|asking, run, now| asking.number(item, dc, run, now));
                let taken = desk.asking_untracked().and_then(|a| a.seen().number(item));
                if let (Some(dc), Some(told)) = (taken, desk.on_number.get_untracked()) {
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
        let pad = Pad {
            value,
            label: questions::question(step, item, lang).into(),
            unit: "°C".into(),
            words,
            fraction: false,
            below_zero: false,
            most: 3,
            prefilled: None,
            on_accept: accept,
            testid: format!("pad-{}", item.key()).into(),
        };
        let told = live(move || {
            let note = el("p").class("job-note").attr("role", "alert");
            odd.get().then(|| note.text(say(Say::NumberAgain, lang)))
        });
        nodes![told, pad.draw()]
    }
}

/// Degrees as typed, in tenths; `None` for what no probe in oil reads.
fn celsius_dc(text: &str) -> Option<i32> {
    let tenths = i16::try_from(parts(text, 1)?).ok()?;
    Temp::from_dc(tenths).map(|temp| i32::from(temp.dc()))
}
