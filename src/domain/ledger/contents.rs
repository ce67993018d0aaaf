//! Fold: what is in each pan and where its oil is, one state for every guide; and so which pans must not be lit.

use crate::domain::entry::Entry;
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobFact};
use crate::domain::facts::run::{Contents, Place, RunEvent};
use crate::domain::facts::setup::Route;
use crate::domain::ids::{EntryId, PanId};
use crate::domain::procedure::StepId;
use crate::domain::sorted::SortedMap;
use crate::domain::time::Millis;

/// What the log says last of one pan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InPan {
    /// The entry since which it stands so.
    pub id: EntryId,
    /// When.
    pub at: Millis,
    /// Where its oil is; in the pan where it has none of its own any more.
    pub place: Place,
    /// What is in the pan. Seen dry means wiped, dry and its valve shut.
    pub contents: Contents,
    /// Whether the tag was seen hung on it.
    pub tagged: bool,
    /// The way its oil went in the run heard of last.
    pub went: Option<Route>,
    /// When it was last heard of.
    heard: Millis,
}

impl InPan {
    /// Whether the pan holds all its oil.
    #[must_use]
    pub const fn is_home(&self) -> bool {
        is_oil(self.contents) && matches!(self.place, Place::InPan)
    }
}

/// Whether it is what a pan is fried with, liquid or set.
pub(super) const fn is_oil(contents: Contents) -> bool {
    match contents {
        Contents::Oil | Contents::SetFat => true,
        Contents::CleaningWater | Contents::EmptyWet | Contents::EmptyDry => false,
    }
}

/// What is in every pan, in order of cause.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct PanContents(SortedMap<PanId, InPan>);

impl PanContents {
    /// Takes in one entry; entries come in order of cause.
    pub(super) fn apply(&mut self, entry: &Entry) {
        if let Fact::Run(run) = &entry.fact {
            // Left to set is set: what the run's end says of it stands until somebody looks.
            self.set(run.pan, entry, (run.place, run.contents));
            if let Some(left) = self.0.get_mut(&run.pan) {
                left.went = Some(run.route);
            }
            self.tag(run.pan, run.evidence.word(Item::Tag), run.event == RunEvent::Ended);
        } else if let Fact::Job(job) = &entry.fact {
            self.job(entry, job);
        } else if let Fact::Fill(fill) = &entry.fact {
            // A fill written late, of a time before the oil went out, says nothing about the pan now.
            if !self.is_after(fill.pan, entry) {
                let fat = if fill.fat.is_solid() && self.was(fill.pan, Contents::SetFat) {
                    Contents::SetFat
                } else {
                    Contents::Oil
                };
                self.set(fill.pan, entry, (Place::InPan, fat));
            }
        } else if let Fact::OilChange(change) = &entry.fact {
            if !self.is_after(change.pan, entry) {
                let contents = match self.0.get(&change.pan).map(|left| left.contents) {
                    Some(Contents::CleaningWater) => Contents::CleaningWater,
                    Some(Contents::Oil | Contents::SetFat | Contents::EmptyWet | Contents::EmptyDry) | None => {
                        Contents::EmptyWet
                    }
                };
                self.set(change.pan, entry, (Place::InPan, contents));
            }
        } else if let Fact::Move(moved) = &entry.fact
            && let Some(to) = moved.to.pan()
            && !self.is_after(to, entry)
        {
            self.set(to, entry, (Place::InPan, Contents::Oil));
        }
    }

    fn job(&mut self, entry: &Entry, job: &JobFact) {
        let Some(pan) = job.pan else { return };
        let place = self.0.get(&pan).map_or(Place::InPan, |left| left.place);
        // What begins to leave by hand stands in its container, some of it still in the pan, until it was seen out.
        let leaving = job.step == Some(StepId::Container) && job.what.is_of_pan();
        let taken_out = job.what.is_of_pan() && matches!(job.step, Some(StepId::EmptyByHand | StepId::CutOut));
        if leaving {
            self.set(pan, entry, (Place::InContainer, Contents::Oil));
        } else if let Some(contents) = job.contents.filter(|_| job.event != JobEvent::Opened) {
            let place = if taken_out { Place::InPan } else { place };
            self.set(pan, entry, (place, contents));
        }
        self.tag(pan, job.evidence.word(Item::Tag), false);
    }

    fn set(&mut self, pan: PanId, entry: &Entry, (place, contents): (Place, Contents)) {
        let before = self.0.get(&pan);
        let since = before.filter(|left| left.place == place && left.contents == contents);
        let (id, at) = since.map_or((entry.id, entry.at), |left| (left.id, left.at));
        let tagged = before.is_some_and(|left| left.tagged);
        let went = before.and_then(|left| left.went);
        self.0.insert(
            pan,
            InPan {
                id,
                at,
                place,
                contents,
                tagged,
                went,
                heard: entry.at,
            },
        );
    }

    /// A tag hangs until it was seen gone, or a run ended with the oil home and said nothing of it.
    fn tag(&mut self, pan: PanId, seen: Option<Word>, ended: bool) {
        if let Some(left) = self.0.get_mut(&pan) {
            left.tagged = match seen {
                Some(word) => word == Word::Hung,
                None => left.tagged && !(ended && left.is_home()),
            };
        }
    }

    /// Whether the pan was heard of after the time an entry speaks of.
    fn is_after(&self, pan: PanId, entry: &Entry) -> bool {
        self.0.get(&pan).is_some_and(|left| left.heard > entry.at)
    }

    fn was(&self, pan: PanId, contents: Contents) -> bool {
        self.0.get(&pan).is_some_and(|left| left.contents == contents)
    }

    pub(super) fn of(&self, pan: PanId) -> Option<&InPan> {
        self.0.get(&pan)
    }

    pub(super) fn pans(&self) -> impl Iterator<Item = PanId> {
        self.0.keys().copied()
    }
}
