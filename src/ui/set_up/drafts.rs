//! Forms that are not finished: kept on the phone from the first letter, so that no reload loses one.

use std::collections::BTreeMap;

use gloo_storage::{LocalStorage, Storage};

use crate::domain::setting_up::{Answers, Field, Subject};
use crate::store::World;

/// Where the draft of a form is kept: `of` is the thing's id, or "new" for the first of its kind.
#[must_use]
pub fn key(world: World, subject: Subject, of: &str) -> String {
    format!("panward.draft.{}.{}.{of}", world.key(), subject.key())
}

/// The draft kept there, if there is one.
#[must_use]
pub fn kept(key: &str) -> Option<Answers> {
    let kept: BTreeMap<String, String> = LocalStorage::get(key).ok()?;
    let answers = kept
        .into_iter()
        .filter_map(|(field, value)| Some((Field::from_key(&field)?, value)));
    Some(answers.collect())
}

/// Keeps it. Where the browser keeps nothing, a reload loses what was typed and the log loses nothing.
pub fn keep(key: &str, answers: &Answers) {
    let typed: BTreeMap<&str, &str> = answers.iter().map(|(field, value)| (field.key(), value)).collect();
    let _ = LocalStorage::set(key, typed);
}

/// It was saved, or given up.
pub fn forget(key: &str) {
    LocalStorage::delete(key);
}
