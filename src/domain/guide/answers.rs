//! Whether everything asked was answered, and answered as it must be.

use super::gate::{Gate, QuestionKind};
use super::refusal::Refusal;
use super::state::Run;
use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::facts::run::Fault;
use crate::domain::procedure::Verdict;

/// What was answered: only what was asked, and the fault an answer named.
pub(crate) struct Checked {
    pub(crate) evidence: Evidence,
    pub(crate) fault: Option<Fault>,
}

/// Every question that is asked has an answer, every answer is one of those offered, none of them says "not yet".
pub(crate) fn answers(gate: &Gate, run: Option<&Run>, seen: &Evidence) -> Result<Checked, Refusal> {
    let mut checked = Checked {
        evidence: Evidence::new(),
        fault: None,
    };
    for question in &gate.questions {
        check_question(question, run, seen, &mut checked)?;
    }
    Ok(checked)
}

fn check_question(
    question: &super::gate::Question,
    run: Option<&Run>,
    seen: &Evidence,
    checked: &mut Checked,
) -> Result<(), Refusal> {
    if !question.only_if.holds(run, seen) {
        return Ok(());
    }
    match &question.kind {
        QuestionKind::Together(parts) => {
            for (part, _) in parts {
                check_question(part, run, seen, checked)?;
            }
        }
        QuestionKind::Probe { item } => {
            let number = seen.number(*item).ok_or(Refusal::Unanswered { item: *item })?;
            checked.evidence.put(*item, Seen::Number(number));
        }
        QuestionKind::Look { item, answers } => {
            let word = seen.word(*item).ok_or(Refusal::Unanswered { item: *item })?;
            match answers.iter().find(|a| a.word == word).map(|a| a.verdict) {
                Some(Verdict::Good | Verdict::Again) => {}
                Some(Verdict::Fault(fault)) => checked.fault = Some(fault),
                Some(Verdict::NotYet) | None => {
                    return Err(Refusal::NotSo {
                        item: *item,
                        word: Some(word),
                    });
                }
            }
            // Said the same twice, or not believed.
            if *item == Item::PlaceAgain && !seen.is(Item::Place, word) {
                return Err(Refusal::NotSo {
                    item: *item,
                    word: Some(word),
                });
            }
            checked.evidence.put(*item, Seen::Is(word));
            if *item == Item::Compared {
                // Who compared the second sample has taken it.
                let sample = if word == Word::None { Word::None } else { Word::Taken };
                checked.evidence.put(Item::Sample, Seen::Is(sample));
            }
        }
        QuestionKind::Person | QuestionKind::Machine => {}
    }
    Ok(())
}

pub(super) const fn is_off_sign(item: Item) -> bool {
    matches!(
        item,
        Item::Knob | Item::Flame | Item::Light | Item::Thermostat | Item::Isolator | Item::GasTap | Item::Plug
    )
}
