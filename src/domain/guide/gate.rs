//! What is asked now: one step in the long form, one stop of several steps in the short form.

use super::state::{FilterJob, Phase, Run};
use super::{Guide, TARGET_SLACK_DC};
use crate::domain::evidence::{Evidence, Item, Word};
use crate::domain::facts::run::{Form, Heat, Place};
use crate::domain::facts::setup::{OffSign, Pan, Route};
use crate::domain::procedure::{Answer, Ask, Hold, How, Part, Step, StepId, Stop, Timer, Verdict};
use crate::domain::time::Now;

/// Everything asked before the guide goes on, and where that leaves it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gate {
    /// The steps, in order; never empty.
    pub steps: Vec<&'static Step>,
    /// The questions, in order.
    pub questions: Vec<Question>,
    /// The holds checked on going on.
    pub holds: Vec<Hold>,
}

/// One question: a screen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    /// The step it belongs to.
    pub step: StepId,
    /// What is asked.
    pub kind: QuestionKind,
    /// When it is asked at all.
    pub only_if: Condition,
}

/// When a question is asked at all, by what was answered before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Condition {
    /// Always.
    Always,
    /// Only when the oil is off its target.
    OffTarget,
    /// Only when the level was seen below the mark.
    LevelBelow,
    /// Only when the oil was said to be elsewhere than the log has it.
    Elsewhere,
}

/// How a question is answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum QuestionKind {
    /// By looking: which of up to three.
    Look {
        /// What is looked at.
        item: Item,
        /// The answers.
        answers: Vec<Answer>,
    },
    /// Up to three things seen at one place, named in one answer; otherwise one by one. In the long form only looks this
    /// run has given already.
    Together(Vec<(Question, Word)>),
    /// By a probe reading.
    Probe {
        /// The item the number becomes.
        item: Item,
    },
    /// By naming a person.
    Person,
    /// By naming a machine.
    Machine,
}

impl Gate {
    /// The step that names it in the log: the last one.
    #[must_use]
    pub fn id(&self) -> StepId {
        self.steps.last().map_or(StepId::Who, |s| s.id)
    }

    /// Whether it is a hard hold, which takes its answers and Go on; a soft step goes on as it is answered.
    #[must_use]
    pub fn is_hold(&self) -> bool {
        !self.holds.is_empty()
    }

    /// Its clock.
    #[must_use]
    pub fn timer(&self) -> Option<Timer> {
        self.steps.iter().find_map(|s| s.timer)
    }

    /// Each single look of the gate with its answers, groups taken apart.
    #[must_use]
    pub fn looks(&self) -> Vec<(StepId, Item, Vec<Answer>)> {
        let mut looks = Vec::new();
        for question in &self.questions {
            question.looks_into(&mut looks);
        }
        looks
    }
}

impl Question {
    /// Where the oil is: what the log has stands first. Asked once more it stands last, so that no answer stands where
    /// it stood, and a hand that presses the same place again has not said the same again.
    fn in_order(&mut self, place: Place) {
        if let QuestionKind::Look {
            item: item @ (Item::Place | Item::PlaceAgain),
            answers,
        } = &mut self.kind
            && let Some(at) = answers.iter().position(|a| a.word == place_word(place))
        {
            let known = answers.remove(at);
            let to = if *item == Item::Place { 0 } else { answers.len() };
            answers.insert(to, known);
        }
    }

    fn looks_into(&self, looks: &mut Vec<(StepId, Item, Vec<Answer>)>) {
        match &self.kind {
            QuestionKind::Look { item, answers } => looks.push((self.step, *item, answers.clone())),
            QuestionKind::Together(parts) => parts.iter().for_each(|(q, _)| q.looks_into(looks)),
            QuestionKind::Probe { .. } | QuestionKind::Person | QuestionKind::Machine => {}
        }
    }
}

/// The item and the good word of one of a pan's signs of heat off.
#[must_use]
pub const fn off_answer(sign: OffSign) -> (Item, Word, Word) {
    match sign {
        OffSign::Knob => (Item::Knob, Word::Off, Word::On),
        OffSign::Flame => (Item::Flame, Word::Out, Word::Lit),
        OffSign::Light => (Item::Light, Word::Out, Word::Lit),
        OffSign::Thermostat => (Item::Thermostat, Word::Off, Word::On),
        OffSign::Isolator => (Item::Isolator, Word::Off, Word::On),
        OffSign::GasTap => (Item::GasTap, Word::Shut, Word::Open),
        OffSign::Plug => (Item::Plug, Word::Out, Word::InPlace),
    }
}

impl Guide {
    /// What is asked now, if anything is.
    #[must_use]
    pub fn gate(&self, now: &Now) -> Option<Gate> {
        let job = self.job()?;
        match &job.run {
            Some(run) => self.run_gate(job, run, now),
            None if job.away > 0 => {
                let tables = self.tables();
                let step = tables.away.get(job.away - 1)?;
                let sets = step.id == tables.line_solid.id && job.held_solid();
                Some(single(if sets { tables.line_solid } else { step }, None))
            }
            None => self.ready_gate(job, now),
        }
    }

    /// The first hold of Ready that does not stand.
    fn ready_gate(&self, job: &FilterJob, now: &Now) -> Option<Gate> {
        self.tables()
            .ready
            .iter()
            .find(|step| match step.holds.first() {
                Some(hold) => job.lacks(*hold, now),
                None => step.id == StepId::SoundCheck && !job.sound_checked,
            })
            .map(|step| {
                if job.is_short(step.id) {
                    at_one_place(step)
                } else {
                    single(step, None)
                }
            })
    }

    /// The steps of the run in hand, optional parts left out.
    #[must_use]
    pub fn run_steps(&self, run: &Run) -> Vec<&'static Step> {
        let steps = self.tables().run(run.route, run.machine.0.out_by);
        steps
            .iter()
            .filter(|s| match s.part {
                Part::Always => true,
                Part::Samples => run.plan.samples,
                Part::Wipe => run.plan.wipe,
                Part::Rinse => run.plan.rinse,
            })
            .collect()
    }

    fn run_gate(&self, job: &FilterJob, run: &Run, now: &Now) -> Option<Gate> {
        let pan = &run.pan.pan;
        match self.phase(job, run, now) {
            Phase::Stopped => None,
            Phase::LookAgain => {
                let table = if run.route == Route::Cold {
                    self.tables().again_hand
                } else {
                    self.tables().again
                };
                let step = table.first()?;
                let mut gate = single(step, Some(pan));
                if !run.fault && !run.came_out {
                    gate.questions
                        .retain(|q| !matches!(&q.kind, QuestionKind::Look { item: Item::Sound, .. }));
                }
                gate.questions.iter_mut().for_each(|q| q.in_order(run.place));
                Some(gate)
            }
            // Oil comes back only to somebody who is known and dressed for it; asked again only when broken.
            Phase::Asking => self
                .line_between(job, run)
                .or_else(|| self.unproved(job, run, now))
                .or_else(|| {
                    let steps = self.run_steps(run);
                    let rest = steps.get(run.at..)?;
                    let count = gate_len(run.form, rest);
                    let asked = rest.get(..count)?;
                    // A reading that went stale on the way is taken again; nothing else of the pan is.
                    let stale = needs_reading(asked) && !run.reading.is_some_and(|r| r.counts(now));
                    let probe = steps.iter().filter(|s| stale && s.id == StepId::OilTemp);
                    let probe: Vec<_> = probe.copied().collect();
                    Some(gather(if probe.is_empty() { asked } else { &probe }, run))
                }),
        }
    }

    /// Between a fat that sets and another one: the line, while what is in it is still liquid.
    fn line_between(&self, job: &FilterJob, run: &Run) -> Option<Gate> {
        let asked = job.held_solid() && job.held != Some(run.pan.pan.fat) && job.line.is_none() && !run.drawn;
        asked.then(|| single(self.tables().line_solid, None))
    }

    /// The gate of a Ready hold that broke while the run waits for it, if what is asked next needs it.
    fn unproved(&self, job: &FilterJob, run: &Run, now: &Now) -> Option<Gate> {
        let steps = self.run_steps(run);
        let rest = steps.get(run.at..)?;
        let asked = rest.get(..gate_len(run.form, rest))?;
        let needed = |hold: &Hold| asked.iter().any(|step| step.holds.contains(hold));
        self.tables()
            .ready
            .iter()
            .find(|s| s.holds.iter().any(|h| needed(h) && job.lacks(*h, now)))
            .map(|s| single(s, None))
    }

    /// What stands before the run's next step.
    #[must_use]
    pub fn phase(&self, job: &FilterJob, run: &Run, now: &Now) -> Phase {
        if run.phase == Phase::Asking && run.silent(&job.touched, now) {
            Phase::LookAgain
        } else {
            run.phase
        }
    }

    /// The gate of leaving with oil out of the pan.
    #[must_use]
    pub fn leave_out_gate(&self) -> Option<Gate> {
        let run = self.job()?.run.as_ref()?;
        let table = if run.route == Route::Cold {
            self.tables().again_hand
        } else {
            self.tables().again
        };
        table
            .iter()
            .find(|s| s.id == StepId::LeaveOut)
            .map(|s| single(s, Some(&run.pan.pan)))
    }

    /// The gate of leaving a pan of solid fat to set after a fault, its fat in it and never out: there is no way out by
    /// hand.
    #[must_use]
    pub fn leave_set_gate(&self) -> Option<Gate> {
        let run = self.job()?.run.as_ref()?;
        let sets = run.fault && run.phase != Phase::Stopped && run.pan.pan.fat.is_solid();
        let in_it = run.place == Place::InPan && !run.drawn;
        (sets && in_it).then(|| single(self.tables().leave_set, Some(&run.pan.pan)))
    }
}

/// Whether these steps rest on a reading taken before them.
fn needs_reading(steps: &[&'static Step]) -> bool {
    steps.iter().any(|s| s.holds.contains(&Hold::Temperature)) && !steps.iter().any(|s| s.id == StepId::OilTemp)
}

/// How many steps from here are asked as one.
fn gate_len(form: Form, rest: &[&'static Step]) -> usize {
    let Some(first) = rest.first() else { return 0 };
    let more = rest.iter().skip(1).take_while(|s| match form {
        Form::Long => s.joins,
        Form::Short => s.joins || (s.stop == first.stop && first.stop != Stop::Alone),
    });
    1 + more.count()
}

pub(crate) fn single(step: &'static Step, pan: Option<&Pan>) -> Gate {
    let questions = step.asks.iter().filter_map(|ask| question(step.id, ask, pan)).collect();
    Gate {
        steps: vec![step],
        questions,
        holds: step.holds.to_vec(),
    }
}

/// A step of no pan whose looks of one place are one answer.
fn at_one_place(step: &'static Step) -> Gate {
    let asks = step.asks.iter();
    let plain = asks.filter_map(|ask| Some((ask.together, question(step.id, ask, None)?)));
    Gate {
        questions: grouped(plain.collect()),
        ..single(step, None)
    }
}

fn gather(steps: &[&'static Step], run: &Run) -> Gate {
    let mut plain: Vec<(u8, Question)> = Vec::new();
    let mut holds = Vec::new();
    for step in steps {
        for ask in step.asks {
            if let Some(q) = question(step.id, ask, Some(&run.pan.pan)) {
                let group = match run.form {
                    Form::Short => ask.together,
                    Form::Long if ask.still && q.stands_as_seen(run) => ask.together,
                    Form::Long => 0,
                };
                plain.push((group, allowed(q, run)));
            }
        }
        for hold in step.holds {
            if !holds.contains(hold) {
                holds.push(*hold);
            }
        }
    }
    Gate {
        steps: steps.to_vec(),
        questions: grouped(plain),
        holds,
    }
}

/// Puts questions that share a number into one, where the first of them stands.
pub(crate) fn grouped(plain: Vec<(u8, Question)>) -> Vec<Question> {
    let mut out: Vec<(u8, Question)> = Vec::new();
    for (group, q) in plain {
        let Some(good) = q.first_good().filter(|_| group > 0) else {
            out.push((0, q));
            continue;
        };
        let open = out.iter_mut().find_map(|(g, first)| match &mut first.kind {
            QuestionKind::Together(parts) if *g == group && parts.len() < 3 => Some(parts),
            QuestionKind::Together(_)
            | QuestionKind::Look { .. }
            | QuestionKind::Probe { .. }
            | QuestionKind::Person
            | QuestionKind::Machine => None,
        });
        match open {
            Some(parts) => parts.push((q, good)),
            None => out.push((
                group,
                Question {
                    step: q.step,
                    kind: QuestionKind::Together(vec![(q, good)]),
                    only_if: Condition::Always,
                },
            )),
        }
    }
    out.into_iter().map(|(_, q)| q.ungrouped()).collect()
}

impl Question {
    /// The first answer that is as it must be: what a grouped answer says.
    fn first_good(&self) -> Option<Word> {
        match &self.kind {
            QuestionKind::Look { answers, .. } => answers.iter().find(|a| a.verdict == Verdict::Good).map(|a| a.word),
            QuestionKind::Together(_) | QuestionKind::Probe { .. } | QuestionKind::Person | QuestionKind::Machine => {
                None
            }
        }
    }

    /// Whether this run saw it last just as it must be now.
    fn stands_as_seen(&self, run: &Run) -> bool {
        match &self.kind {
            QuestionKind::Look { item, .. } => self.first_good().is_some_and(|good| run.looked.is(*item, good)),
            QuestionKind::Together(_) | QuestionKind::Probe { .. } | QuestionKind::Person | QuestionKind::Machine => {
                false
            }
        }
    }

    /// A group of one is just its question.
    fn ungrouped(mut self) -> Self {
        if let QuestionKind::Together(parts) = &mut self.kind
            && parts.len() == 1
            && let Some((alone, _)) = parts.pop()
        {
            return alone;
        }
        self
    }
}

fn question(step: StepId, ask: &Ask, pan: Option<&Pan>) -> Option<Question> {
    let look = |answers: &[Answer]| QuestionKind::Look {
        item: ask.item,
        answers: answers.to_vec(),
    };
    let (kind, only_if) = match ask.how {
        How::Look(answers) => (look(answers), Condition::Always),
        How::OffSign(which) => {
            let (item, off, on) = off_answer(*pan?.off_signs.get(which)?);
            let answers = vec![
                Answer {
                    word: off,
                    verdict: Verdict::Good,
                },
                Answer {
                    word: on,
                    verdict: Verdict::NotYet,
                },
            ];
            (QuestionKind::Look { item, answers }, Condition::Always)
        }
        How::Probe => (QuestionKind::Probe { item: ask.item }, Condition::Always),
        How::OffTarget(answers) => (look(answers), Condition::OffTarget),
        How::TagIfLow(answers) => (look(answers), Condition::LevelBelow),
        How::IfElsewhere(answers) => (look(answers), Condition::Elsewhere),
        How::Person => (QuestionKind::Person, Condition::Always),
        How::Machine => (QuestionKind::Machine, Condition::Always),
    };
    Some(Question { step, kind, only_if })
}

/// Leaves out the answer this pan cannot give: only solid fat is left to set.
fn allowed(mut question: Question, run: &Run) -> Question {
    if let QuestionKind::Look {
        item: Item::Left,
        answers,
    } = &mut question.kind
    {
        answers.retain(|a| a.word != Word::Set || run.pan.pan.fat.is_solid());
    }
    question
}

impl Condition {
    /// Whether the question is asked, by what was answered so far.
    #[must_use]
    pub fn holds(self, run: Option<&Run>, seen: &Evidence) -> bool {
        match self {
            Self::Always => true,
            Self::OffTarget => run
                .zip(seen.number(Item::OilTemp))
                .is_some_and(|(r, dc)| off_target(r, dc)),
            Self::Elsewhere => run
                .zip(seen.word(Item::Place))
                .is_some_and(|(r, word)| word != place_word(r.place)),
            Self::LevelBelow => seen.is(Item::Level, Word::Below) || run.is_some_and(|r| r.level == Some(Word::Below)),
        }
    }
}

/// What somebody says who sees the oil there.
const fn place_word(place: Place) -> Word {
    match place {
        Place::InPan => Word::InPan,
        Place::Split => Word::Split,
        Place::InMachine => Word::InMachine,
        Place::InContainer => Word::InContainer,
        Place::Gone => Word::Gone,
    }
}

/// Whether a reading inside the window is so far off its target that a reason is asked for.
#[must_use]
pub fn off_target(run: &Run, dc: i32) -> bool {
    run.route == Route::Hot && (dc - i32::from(run.limits.target.dc())).abs() > i32::from(TARGET_SLACK_DC)
}

/// Whether the guide may say that heat goes on under the pan in hand: all its oil is in it, the return was seen to
/// end, and it stands high enough to do so cold.
#[must_use]
pub fn may_be_lit(run: &Run) -> bool {
    run.phase == Phase::Asking
        && run.place == Place::InPan
        && run.heat == Heat::OffSeen
        && run.level == Some(Word::Enough)
}
