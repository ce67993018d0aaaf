//! Every screen there is, and the `#address` it stands at. Reload and Back work on all of them; the steps of a job
//! have no addresses of their own, so Back never changes a step.

use leptos::prelude::{on_cleanup, window_event_listener};

use super::node::Held;
use crate::domain::facts::job::JobKind;
use crate::domain::ids::{EntryId, PanId};
use crate::domain::setting_up::Subject;

/// A screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Screen {
    /// Before anything is set up.
    First,
    /// What is now and what is next.
    Today,
    /// One pan and its oil.
    Pan(PanId),
    /// What happened; with an entry, open at its line.
    Log(Option<EntryId>),
    /// A quick entry about a pan.
    Add(PanId),
    /// What a pan is kept for, lost and restored.
    KeptFor(PanId),
    /// The filter job.
    Filter,
    /// Light-up.
    LightUp,
    /// Lock-up.
    LockUp,
    /// Oil change of one pan.
    OilChange(PanId),
    /// Boil-out of one pan.
    BoilOut(PanId),
    /// Old oil of one pan, on its way out of the kitchen.
    Waste(PanId),
    /// "Last night: which pans?"
    LastNight,
    /// The allergen sheet.
    Allergens,
    /// The owner's page.
    Office,
    /// Set-up of the kitchen, its people, pans and machines.
    SetUp,
    /// One thing of the set-up, by its id; a new one for an id nothing has yet.
    Edit(Subject, u128),
}

impl Screen {
    /// Its address, without the `#`.
    #[must_use]
    pub fn address(self) -> String {
        match self {
            Self::First => "first".to_owned(),
            Self::Today => "today".to_owned(),
            Self::Pan(pan) => format!("pan/{:032x}", pan.0),
            Self::Log(None) => "log".to_owned(),
            Self::Log(Some(entry)) => format!("log/{:032x}", entry.0),
            Self::Add(pan) => format!("add/{:032x}", pan.0),
            Self::KeptFor(pan) => format!("kept/{:032x}", pan.0),
            Self::Filter => "filter".to_owned(),
            Self::LightUp => "light-up".to_owned(),
            Self::LockUp => "lock-up".to_owned(),
            Self::OilChange(pan) => format!("oil-change/{:032x}", pan.0),
            Self::BoilOut(pan) => format!("boil-out/{:032x}", pan.0),
            Self::Waste(pan) => format!("waste/{:032x}", pan.0),
            Self::LastNight => "last-night".to_owned(),
            Self::Allergens => "allergens".to_owned(),
            Self::Office => "office".to_owned(),
            Self::SetUp => "set-up".to_owned(),
            Self::Edit(subject, id) => format!("edit/{}/{id:032x}", subject.key()),
        }
    }

    /// The screen an address names; Today for an address nobody knows.
    #[must_use]
    pub fn at(address: &str) -> Self {
        let (head, rest) = address
            .trim_start_matches('#')
            .split_once('/')
            .unwrap_or((address.trim_start_matches('#'), ""));
        let id = u128::from_str_radix(rest, 16).ok();
        let thing = rest
            .split_once('/')
            .and_then(|(subject, id)| Some((Subject::from_key(subject)?, u128::from_str_radix(id, 16).ok()?)));
        if let ("edit", Some((subject, id))) = (head, thing) {
            return Self::Edit(subject, id);
        }
        match (head, id) {
            ("first", _) => Self::First,
            ("pan", Some(id)) => Self::Pan(PanId(id)),
            ("add", Some(id)) => Self::Add(PanId(id)),
            ("oil-change", Some(id)) => Self::OilChange(PanId(id)),
            ("boil-out", Some(id)) => Self::BoilOut(PanId(id)),
            ("waste", Some(id)) => Self::Waste(PanId(id)),
            ("kept", Some(id)) => Self::KeptFor(PanId(id)),
            ("allergens", _) => Self::Allergens,
            ("log", entry) => Self::Log(entry.map(EntryId)),
            ("filter", _) => Self::Filter,
            ("light-up", _) => Self::LightUp,
            ("lock-up", _) => Self::LockUp,
            ("last-night", _) => Self::LastNight,
            ("office", _) => Self::Office,
            ("set-up", _) => Self::SetUp,
            _ => Self::Today,
        }
    }

    /// Whether it is a screen of a job: always on the night ground, one step at a time, no tabs.
    #[must_use]
    pub const fn is_job(self) -> bool {
        matches!(
            self,
            Self::Filter | Self::LightUp | Self::LockUp | Self::OilChange(_) | Self::BoilOut(_) | Self::Waste(_)
        )
    }
}

/// The screen of an open job, or of one to begin; those about one pan need to know which.
#[must_use]
pub const fn of_job(job: JobKind, pan: Option<PanId>) -> Screen {
    match (job, pan) {
        (JobKind::LightUp, _) => Screen::LightUp,
        (JobKind::Filter, _) => Screen::Filter,
        (JobKind::LockUp, _) => Screen::LockUp,
        (JobKind::OilChange, Some(pan)) => Screen::OilChange(pan),
        (JobKind::BoilOut, Some(pan)) => Screen::BoilOut(pan),
        (JobKind::OilChange | JobKind::BoilOut, None) => Screen::Today,
    }
}

/// The screen shown now.
#[must_use]
pub fn current() -> Screen {
    web_sys::window()
        .and_then(|w| w.location().hash().ok())
        .map_or(Screen::Today, |hash| Screen::at(&hash))
}

/// Goes to a screen; Back leads here again.
pub fn go(screen: Screen) {
    if let Some(window) = web_sys::window() {
        // A hash is always a legal address.
        let _ = window.location().set_hash(&screen.address());
    }
}

/// The screen shown, following the address.
#[must_use]
pub fn follow() -> Held<Screen> {
    let screen = Held::new(current());
    let handle = window_event_listener(leptos::ev::hashchange, move |_| screen.set(current()));
    on_cleanup(move || handle.remove());
    screen
}
