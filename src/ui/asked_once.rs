//! A question asked once of something unusual, where it is typed and where it is put right: its words and two answers.

use super::node::{Act, Element};
use super::parts::{Rank, Tone, button, notice};
use crate::domain::quick::{Doubt, Quick};
use crate::words::{Lang, quick_refusals};

/// A question asked once.
#[derive(Clone)]
pub struct Asked {
    words: String,
    answers: [&'static str; 2],
    /// Whether it is likelier mistyped than so.
    likely_wrong: bool,
}

impl Asked {
    /// The question a doubt is, about what was said.
    #[must_use]
    pub fn of(doubt: Doubt, said: &Quick, lang: Lang) -> Self {
        Self {
            words: quick_refusals::doubt(doubt, said, lang),
            answers: quick_refusals::doubt_answers(doubt, lang),
            likely_wrong: matches!(doubt, Doubt::Unexpected { .. }),
        }
    }

    /// Draws it. What is offered first is what is likelier right.
    #[must_use]
    pub fn draw(self, yes: Act, no: Act) -> Element {
        let [yes_says, no_says] = self.answers;
        let (rank_of_yes, rank_of_no) = if self.likely_wrong {
            (Rank::Second, Rank::First)
        } else {
            (Rank::First, Rank::Second)
        };
        let yes = button(rank_of_yes, yes_says, "add-doubt-yes", yes);
        let no = button(rank_of_no, no_says, "add-doubt-no", no);
        let in_order = if self.likely_wrong { [no, yes] } else { [yes, no] };
        notice(Tone::Quiet, self.words, "", "add-doubt").children(in_order)
    }
}
