//! Which world a log belongs to. Each has its own database; nothing passes from one into another.

use crate::domain::keyed::keyed;

keyed! {
    /// A world of entries.
    pub enum World {
        /// The kitchen's own log.
        Real = "real",
        /// The invented kitchen to look round in.
        Demo = "demo",
        /// Practice runs.
        Practice = "practice",
    }
}

impl World {
    /// The name of its database.
    #[must_use]
    pub const fn database(self) -> &'static str {
        match self {
            Self::Real => "panward",
            Self::Demo => "panward-demo",
            Self::Practice => "panward-practice",
        }
    }
}
