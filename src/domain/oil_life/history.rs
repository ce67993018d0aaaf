//! What is known of one fill: how it began and what happened to it since. Pure input; the ledger makes it.

use crate::domain::facts::oil::{Load, Measured, SignKind};
use crate::domain::fat::Fat;
use crate::domain::ids::{Dev, EntryId, InstrumentId};
use crate::domain::sorted::in_order;
use crate::domain::time::Millis;
use crate::domain::units::{Minutes, Share, Temp, Volume};

/// Where an event stands in the order of oil: when it happened, when it was written, which store, which place there.
pub type OilOrder = (Millis, Millis, Dev, u32);

/// How worn the oil was when the log first met it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// Fresh from its container.
    Fresh,
    /// Fresh this many worked services earlier, none of them logged.
    Worked {
        /// Services it was fried in before the log begins.
        services: u16,
    },
    /// Nobody knows.
    Unknown,
}

/// What is believed of oil that comes from another pan: normal, in % m/m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Incoming {
    /// Mean and standard deviation of polar compounds.
    pub polar: (f64, f64),
    /// Mean and standard deviation of free fatty acids.
    pub ffa: (f64, f64),
}

/// Something that happened to the oil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum What {
    /// It stood at frying temperature.
    Fried {
        /// For how long.
        fry: Minutes,
        /// How hot; 175 °C where nobody says.
        temp: Option<Temp>,
        /// How busy. Kept for a model that knows what it does; no figure was found for it, and this one uses none.
        load: Load,
    },
    /// It was fried in, for how long nobody logged: usual hours, with their spread.
    Unlogged {
        /// How hot, where somebody says.
        temp: Option<Temp>,
    },
    /// Fresh oil was added.
    Topped {
        /// The fat added.
        fat: Fat,
        /// How much.
        added: Volume,
        /// What is in the pan after it.
        after: Volume,
    },
    /// Some went out and fresh oil came in: thins like a top-up, and counts apart in what is usual.
    PartChanged {
        /// The fat added.
        fat: Fat,
        /// How much.
        added: Volume,
        /// What is in the pan after it.
        after: Volume,
    },
    /// Oil from another pan was added.
    MovedIn {
        /// What is believed of it.
        oil: Incoming,
        /// How much arrived.
        added: Volume,
        /// What is in the pan after it.
        after: Volume,
    },
    /// It was measured.
    Read {
        /// What the instrument said.
        value: Measured,
        /// Which instrument.
        instrument: Option<InstrumentId>,
        /// The spread its owner knows it has (one standard deviation, points).
        spread: Option<Share>,
    },
    /// Something was seen, smelt or tasted.
    Sign(SignKind),
    /// It was filtered: takes out crumb, changes none of the quantities (CV11).
    Filtered,
    /// It was filtered with a powder that takes polar matter, acids and colour out of it (an adsorbent).
    Adsorbed {
        /// How much powder, % of the oil's mass.
        dose: Share,
    },
}

/// One event and the entry it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Event {
    /// Where it stands in the order of oil.
    pub order: OilOrder,
    /// The entry.
    pub entry: EntryId,
    /// What happened.
    pub what: What,
}

/// One fill, from its beginning to now.
#[derive(Clone, Debug, PartialEq)]
pub struct FillHistory {
    fat: Fat,
    start: Start,
    events: Vec<Event>,
}

impl FillHistory {
    /// A fill of `fat`. The events may come in any order; they are put in the order of oil.
    #[must_use]
    pub fn new(fat: Fat, start: Start, mut events: Vec<Event>) -> Self {
        in_order(&mut events, |e| (e.order, e.entry));
        Self { fat, start, events }
    }

    /// The fat it was filled with.
    #[must_use]
    pub const fn fat(&self) -> Fat {
        self.fat
    }

    /// How it began.
    #[must_use]
    pub const fn start(&self) -> Start {
        self.start
    }

    /// Everything since, oldest first.
    #[must_use]
    pub fn events(&self) -> &[Event] {
        &self.events
    }

    /// The first sign that means change whatever the number says, and the entry that holds it.
    #[must_use]
    pub fn change_sign(&self) -> Option<(EntryId, SignKind)> {
        self.events.iter().find_map(|e| match e.what {
            What::Sign(kind) if kind.means_change() => Some((e.entry, kind)),
            What::Sign(_)
            | What::Fried { .. }
            | What::Unlogged { .. }
            | What::Topped { .. }
            | What::PartChanged { .. }
            | What::MovedIn { .. }
            | What::Read { .. }
            | What::Filtered
            | What::Adsorbed { .. } => None,
        })
    }

    /// The largest dose of powder it was filtered with; `None` where none was used.
    #[must_use]
    pub fn powder(&self) -> Option<Share> {
        let doses = self.events.iter().filter_map(|e| match e.what {
            What::Adsorbed { dose } => Some(dose),
            What::Fried { .. }
            | What::Unlogged { .. }
            | What::Topped { .. }
            | What::PartChanged { .. }
            | What::MovedIn { .. }
            | What::Read { .. }
            | What::Sign(_)
            | What::Filtered => None,
        });
        doses.max()
    }
}

/// The share (0–1) of a pan that was just added; `None` for an impossible pair, which is folded around.
pub(super) fn share_of(added: Volume, after: Volume) -> Option<f64> {
    (after.ml() > 0 && added <= after).then(|| f64::from(added.ml()) / f64::from(after.ml()))
}
