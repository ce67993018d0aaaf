//! Forms that are not finished: kept on the phone from the first letter, so that no reload loses one.

use std::borrow::Cow;

use crate::browser::shelf::Shelf;
use crate::domain::setting_up::{Answers, Field, Subject};
use crate::store::World;
use crate::store::json::{Json, Out};
use crate::store::wire::stored::{Stored, fields};

/// A form as it is kept: each field that was answered, with what was typed.
struct Draft(Answers);

impl Stored for Draft {
    fn blank() -> Self {
        Self(Answers::default())
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        let known = |(name, value): (Cow<'_, str>, Json<'_>)| {
            let field = Field::from_key(&name)?;
            Some(String::from_json(value).map(|value| (field, value)))
        };
        let answers: Result<Answers, String> = fields(json)?.into_pairs().filter_map(known).collect();
        answers.map(Self)
    }

    fn put(&self, out: &mut Out) {
        out.open('{');
        for (field, value) in self.0.iter() {
            out.name(field.key());
            out.word(value);
        }
        out.close('}');
    }
}

/// Where the draft of a form is kept: `of` is the thing's id, or "new" for the first of its kind.
#[must_use]
pub fn key(world: World, subject: Subject, of: &str) -> String {
    format!("panward.draft.{}.{}.{of}", world.key(), subject.key())
}

/// The draft kept there, if there is one.
#[must_use]
pub fn kept(key: &str) -> Option<Answers> {
    Shelf::Phone.kept(key).map(|Draft(answers)| answers)
}

/// Keeps it. Where the browser keeps nothing, a reload loses what was typed and the log loses nothing.
pub fn keep(key: &str, answers: &Answers) {
    Shelf::Phone.keep(key, &Draft(answers.clone()));
}

/// It was saved, or given up.
pub fn forget(key: &str) {
    Shelf::Phone.forget(key);
}
