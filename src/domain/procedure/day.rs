//! The steps of light-up and lock-up as one value: tests explore the day with a table that lacks one hold.

use super::{Step, light, lock};

/// The steps the day's two jobs run by.
#[derive(Clone, Copy, Debug)]
pub struct DayTables {
    /// Who lights.
    pub who: &'static Step,
    /// What the morning found of scraps left out.
    pub found: &'static Step,
    /// Before a pan of oil is lit.
    pub look: &'static Step,
    /// The same for a fat that may have set.
    pub look_solid: &'static Step,
    /// The level now.
    pub level: &'static Step,
    /// The tag on a pan found low.
    pub low_tag: &'static Step,
    /// Full heat.
    pub on: &'static Step,
    /// Low heat on set fat.
    pub melt_low: &'static Step,
    /// The same where fresh blocks lie in it.
    pub melt_blocks: &'static Step,
    /// One look at the melt.
    pub melt_look: &'static Step,
    /// Before full heat on fat that was set.
    pub melt_full: &'static Step,
    /// Heat off after trouble.
    pub off: &'static Step,
    /// The same on a pan that stands low or empty.
    pub off_tagged: &'static Step,
    /// No scraps tonight.
    pub no_scraps: &'static Step,
    /// The first probe of the heap.
    pub scraps: &'static Step,
    /// The second.
    pub scraps_again: &'static Step,
    /// Warm scraps laid out.
    pub scraps_out: &'static Step,
    /// The floor.
    pub floor: &'static Step,
    /// A pan off and lidded.
    pub pans: &'static Step,
    /// The same, standing empty.
    pub pans_tagged: &'static Step,
}

impl DayTables {
    /// The tables as they are.
    pub const REAL: Self = Self {
        who: &light::WHO,
        found: &light::FOUND,
        look: &light::LOOK,
        look_solid: &light::LOOK_SOLID,
        level: &light::LEVEL,
        low_tag: &light::LOW_TAG,
        on: &light::ON,
        melt_low: &light::MELT_LOW,
        melt_blocks: &light::MELT_BLOCKS,
        melt_look: &light::MELT_LOOK,
        melt_full: &light::MELT_FULL,
        off: &light::OFF,
        off_tagged: &light::OFF_TAGGED,
        no_scraps: &lock::NO_SCRAPS,
        scraps: &lock::SCRAPS,
        scraps_again: &lock::SCRAPS_AGAIN,
        scraps_out: &lock::SCRAPS_OUT,
        floor: &lock::FLOOR,
        pans: &lock::PANS,
        pans_tagged: &lock::PANS_TAGGED,
    };

    /// The same tables with every step changed by `change`.
    #[must_use]
    pub fn each(self, change: impl Fn(&'static Step) -> &'static Step) -> Self {
        Self {
            who: change(self.who),
            found: change(self.found),
            look: change(self.look),
            look_solid: change(self.look_solid),
            level: change(self.level),
            low_tag: change(self.low_tag),
            on: change(self.on),
            melt_low: change(self.melt_low),
            melt_blocks: change(self.melt_blocks),
            melt_look: change(self.melt_look),
            melt_full: change(self.melt_full),
            off: change(self.off),
            off_tagged: change(self.off_tagged),
            no_scraps: change(self.no_scraps),
            scraps: change(self.scraps),
            scraps_again: change(self.scraps_again),
            scraps_out: change(self.scraps_out),
            floor: change(self.floor),
            pans: change(self.pans),
            pans_tagged: change(self.pans_tagged),
        }
    }
}
