//! One gate as a person goes through it: questions one screen at a time, and the rules that keep a stray touch out.
//!
//! Ticks live only here until Go on; a kill forgets them, and the gate is asked again. An answer or Go on within
//! [`SETTLE_MS`] of its screen first showing is ignored.

use super::gate::{Gate, Question, QuestionKind};
use super::state::Run;
use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::procedure::{StepId, Verdict};
use crate::domain::time::Now;

/// How long a screen must have stood before it takes an answer, in milliseconds.
pub const SETTLE_MS: i64 = 400;

/// A gate being answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Asking {
    gate: Gate,
    /// Groups taken apart after "something is not so".
    apart: Vec<StepId>,
    seen: Evidence,
    read: Option<Now>,
    shown_at: i64,
    not_yet: Option<(Item, Word)>,
}

/// What a touch led to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Touched {
    /// Too soon after the screen showed, or nothing there to answer.
    Ignored,
    /// Kept; more is asked.
    Kept,
    /// Kept; Go on is awake.
    AllAnswered,
    /// Kept, and a soft step needs no Go on.
    GoesOn,
    /// Not as it must be: the screen says what to put right.
    NotYet,
}

impl Asking {
    /// A gate that shows its first screen now.
    #[must_use]
    pub const fn new(gate: Gate, now: &Now) -> Self {
        Self {
            gate,
            apart: Vec::new(),
            seen: Evidence::new(),
            read: None,
            shown_at: now.mono,
            not_yet: None,
        }
    }

    /// The gate.
    #[must_use]
    pub const fn gate(&self) -> &Gate {
        &self.gate
    }

    /// What was seen so far.
    #[must_use]
    pub const fn seen(&self) -> &Evidence {
        &self.seen
    }

    /// When a temperature was read.
    #[must_use]
    pub const fn read(&self) -> Option<Now> {
        self.read
    }

    /// What was answered that is not as it must be.
    #[must_use]
    pub const fn not_yet(&self) -> Option<(Item, Word)> {
        self.not_yet
    }

    /// The questions as they stand, groups apart where one was not so and unneeded ones left out.
    #[must_use]
    pub fn questions(&self, run: Option<&Run>) -> Vec<Question> {
        let mut out = Vec::new();
        for question in &self.gate.questions {
            match &question.kind {
                QuestionKind::Together(parts) if self.apart.contains(&question.step) => {
                    out.extend(parts.iter().map(|(q, _)| q.clone()));
                }
                QuestionKind::Together(_)
                | QuestionKind::Look { .. }
                | QuestionKind::Probe { .. }
                | QuestionKind::Person
                | QuestionKind::Machine => out.push(question.clone()),
            }
        }
        out.retain(|q| q.only_if.holds(run, &self.seen));
        out
    }

    /// The question on screen: the first without an answer; the last once all have one.
    #[must_use]
    pub fn current(&self, run: Option<&Run>) -> Option<Question> {
        let questions = self.questions(run);
        questions
            .iter()
            .find(|q| !self.is_answered(q))
            .or(questions.last())
            .cloned()
    }

    /// Which question that is, from 1, and how many there are.
    #[must_use]
    pub fn progress(&self, run: Option<&Run>) -> (usize, usize) {
        let questions = self.questions(run);
        let at = questions
            .iter()
            .position(|q| !self.is_answered(q))
            .unwrap_or(questions.len().saturating_sub(1));
        (at + 1, questions.len())
    }

    /// Whether every question has its answer.
    #[must_use]
    pub fn all_answered(&self, run: Option<&Run>) -> bool {
        self.not_yet.is_none() && self.questions(run).iter().all(|q| self.is_answered(q))
    }

    fn is_answered(&self, question: &Question) -> bool {
        match &question.kind {
            QuestionKind::Look { item, .. } | QuestionKind::Probe { item } => self.seen.get(*item).is_some(),
            QuestionKind::Together(parts) => parts.iter().all(|(q, _)| self.is_answered(q)),
            QuestionKind::Person => self.seen.get(Item::SignOff).is_some(),
            QuestionKind::Machine => self.seen.get(Item::Machine).is_some(),
        }
    }

    const fn settled(&self, now: &Now) -> bool {
        now.mono - self.shown_at >= SETTLE_MS
    }

    /// Answers a look.
    pub fn look(&mut self, item: Item, word: Word, run: Option<&Run>, now: &Now) -> Touched {
        // Only what is on the screen can be answered: a touch meant for the screen before must not land.
        let verdict = self.current(run).and_then(|q| match q.kind {
            QuestionKind::Look { item: asked, answers } if asked == item => {
                answers.iter().find(|a| a.word == word).map(|a| a.verdict)
            }
            QuestionKind::Look { .. }
            | QuestionKind::Together(_)
            | QuestionKind::Probe { .. }
            | QuestionKind::Person
            | QuestionKind::Machine => None,
        });
        let (Some(verdict), true) = (verdict, self.settled(now)) else {
            return Touched::Ignored;
        };
        if verdict == Verdict::NotYet {
            self.forget(item);
            self.not_yet = Some((item, word));
            self.shown_at = now.mono;
            return Touched::NotYet;
        }
        self.not_yet = None;
        self.seen.put(item, Seen::Is(word));
        if item == Item::PlaceAgain && !self.seen.is(Item::Place, word) {
            // Two looks that differ: neither is believed, and it is asked anew.
            self.forget(Item::Place);
            self.forget(Item::PlaceAgain);
        }
        self.after(run, now)
    }

    /// Answers a whole group as it must be.
    pub fn all_so(&mut self, run: Option<&Run>, now: &Now) -> Touched {
        let Some(Question {
            kind: QuestionKind::Together(parts),
            ..
        }) = self.current(run)
        else {
            return Touched::Ignored;
        };
        if !self.settled(now) {
            return Touched::Ignored;
        }
        for (question, word) in &parts {
            if let QuestionKind::Look { item, .. } = &question.kind {
                self.seen.put(*item, Seen::Is(*word));
            }
        }
        self.after(run, now)
    }

    /// Something of the group is not so: ask it one by one.
    pub fn one_by_one(&mut self, run: Option<&Run>, now: &Now) -> Touched {
        let on_screen = self.current(run).filter(|_| self.settled(now));
        let Some(question) = on_screen.filter(|q| matches!(q.kind, QuestionKind::Together(_))) else {
            return Touched::Ignored;
        };
        self.apart.push(question.step);
        self.shown_at = now.mono;
        Touched::Kept
    }

    /// Enters a number that was read now.
    pub fn number(&mut self, item: Item, value: i32, run: Option<&Run>, now: &Now) -> Touched {
        let asked = self
            .current(run)
            .is_some_and(|q| matches!(q.kind, QuestionKind::Probe { item: asked } if asked == item));
        if !asked || !self.settled(now) {
            return Touched::Ignored;
        }
        self.seen.put(item, Seen::Number(value));
        self.read = Some(*now);
        self.after(run, now)
    }

    /// Keeps what a person or machine screen answered.
    pub fn named(&mut self, item: Item, word: Word, run: Option<&Run>, now: &Now) -> Touched {
        let asked = self.current(run).is_some_and(|q| match q.kind {
            QuestionKind::Person => item == Item::SignOff,
            QuestionKind::Machine => item == Item::Machine,
            QuestionKind::Look { .. } | QuestionKind::Together(_) | QuestionKind::Probe { .. } => false,
        });
        if !asked || !self.settled(now) {
            return Touched::Ignored;
        }
        self.seen.put(item, Seen::Is(word));
        self.after(run, now)
    }

    /// Forgets an answer, to give another.
    pub fn again(&mut self, item: Item, now: &Now) {
        self.forget(item);
        self.not_yet = None;
        self.shown_at = now.mono;
    }

    fn forget(&mut self, item: Item) {
        self.seen = self.seen.iter().filter(|(i, _)| *i != item).cloned().collect();
    }

    /// Whether Go on is taken now.
    #[must_use]
    pub fn goes_on(&self, run: Option<&Run>, now: &Now) -> bool {
        self.all_answered(run) && self.settled(now)
    }

    fn after(&mut self, run: Option<&Run>, now: &Now) -> Touched {
        self.shown_at = now.mono;
        if !self.all_answered(run) {
            Touched::Kept
        } else if self.needs_go_on() {
            Touched::AllAnswered
        } else {
            Touched::GoesOn
        }
    }

    /// A hard hold takes its answers and Go on. A probe's own accept is its Go on.
    fn needs_go_on(&self) -> bool {
        let only_probe =
            self.gate.questions.iter().all(|q| {
                matches!(q.kind, QuestionKind::Probe { .. }) || q.only_if == super::gate::Condition::OffTarget
            });
        // Leaving a full pan unlit opens nothing. Lighting it, or leaving it low under a tag, does.
        let leaves_unlit = self.gate.id() == StepId::Leave
            && self.seen.get(Item::Tag).is_none()
            && !self.seen.is(Item::Left, Word::Relit);
        self.gate.is_hold() && !only_probe && !leaves_unlit
    }
}
