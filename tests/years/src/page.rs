//! The steps the page's own script calls, and times: what is done before a timed step is a step of its own.

use std::cell::RefCell;

use panward::domain::time::Now;
use panward::kitchen::Kitchen;
use panward::store::Loaded;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::held::Held;
use crate::log::{Years, ten_years};
use crate::timed::{fold, moment, one_more};
use crate::views::{Look, VIEWS};

/// What stands between two steps.
struct Stand {
    years: Loaded,
    laid_out: Loaded,
    kitchen: Option<Kitchen<Held>>,
    at: Now,
}

thread_local! {
    static STAND: RefCell<Option<Stand>> = const { RefCell::new(None) };
}

fn stand<T>(work: impl FnOnce(&mut Stand) -> Result<T, String>) -> Result<T, String> {
    STAND.with_borrow_mut(|stand| work(stand.as_mut().ok_or("write the log first")?))
}

/// Works out everything the screens show.
fn look(kitchen: &Kitchen<Held>, at: &Now) -> usize {
    let look = Look::at(kitchen, at);
    VIEWS.iter().map(|(_, view)| view(&look)).sum()
}

/// Writes the ten years and gives the text of their export.
#[wasm_bindgen]
pub fn write() -> Result<String, String> {
    let years = ten_years()?;
    let at = moment(&years);
    let Years { loaded, text, .. } = years;
    let laid_out = Loaded::default();
    STAND.set(Some(Stand {
        years: loaded,
        laid_out,
        kitchen: None,
        at,
    }));
    Ok(text)
}

/// How many entries that is.
#[wasm_bindgen]
pub fn entries() -> Result<usize, String> {
    stand(|stand| Ok(stand.years.records.len()))
}

/// Lays out the decoded entries for the next fold, which takes them.
#[wasm_bindgen]
pub fn lay_out() -> Result<(), String> {
    stand(|stand| {
        stand.kitchen = None;
        stand.laid_out = stand.years.clone();
        Ok(())
    })
}

/// Folds what is laid out, to everything the screens show.
#[wasm_bindgen]
pub fn refold() -> Result<usize, String> {
    stand(|stand| {
        let kitchen = stand
            .kitchen
            .insert(fold(std::mem::take(&mut stand.laid_out), &stand.at)?);
        Ok(look(kitchen, &stand.at))
    })
}

/// One new entry, to everything the screens show.
#[wasm_bindgen]
pub fn add_one() -> Result<usize, String> {
    stand(|stand| {
        let kitchen = stand.kitchen.as_mut().ok_or("fold first")?;
        one_more(kitchen, &stand.at, None)?;
        Ok(look(kitchen, &stand.at))
    })
}
