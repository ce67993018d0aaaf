//! An independent judge: it reads only what was written and when, and knows nothing of the machine.

use panward::domain::entry::Entry;
use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::{JobEvent, JobFact, JobKind};
use panward::domain::facts::run::{Contents, Heat, Place};
use panward::domain::fat::Fat;
use panward::domain::guide::Scene;
use panward::domain::procedure::Hold;
use panward::domain::time::{Millis, Now};

const MINUTE: i64 = 60_000;

#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct Auditor {
    level: Option<(Word, Now)>,
    melt: Option<(Word, Now)>,
    low_seen: bool,
    heat: Option<Heat>,
    heap: Option<(i32, Clocks)>,
    proof: Option<Proof>,
    floor: bool,
    pan: bool,
    left_open: bool,
    /// Whoever was last said to light is fit for it.
    fit: bool,
}

/// How long a wait has counted, as a cautious person with two clocks would count it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
struct Clocks {
    from: Now,
    credit: i64,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
enum Proof {
    NoneTonight,
    ColdTwice,
    Outdoors(Option<Millis>),
    LookedCold,
}

type Verdict = Result<(), String>;

fn must(so: bool, what: &str) -> Verdict {
    if so { Ok(()) } else { Err(what.to_owned()) }
}

fn off_twice(e: &Evidence) -> bool {
    e.is(Item::Knob, Word::Off) && e.is(Item::Flame, Word::Out)
}

/// Seen in this page life, at most five minutes ago by both clocks.
fn just_now(seen: &Now, now: &Now) -> bool {
    let span = 0..=5 * MINUTE;
    seen.life == now.life && span.contains(&now.wall.since(seen.wall)) && span.contains(&(now.mono - seen.mono))
}

impl Auditor {
    pub fn read(&mut self, entry: &Entry, scene: &Scene, now: &Now) -> Verdict {
        let Fact::Job(fact) = &entry.fact else { return Ok(()) };
        if fact.what == JobKind::LightUp && matches!(fact.event, JobEvent::Opened | JobEvent::Proved) {
            self.who(fact, entry, scene);
        }
        match fact.what {
            JobKind::LightUp => self.light(fact, scene, now),
            JobKind::LockUp => self.lock(fact, scene, now),
            JobKind::Filter | JobKind::OilChange | JobKind::BoilOut => Err("another job".into()),
        }
    }

    /// Hold 1, worked out afresh: a signed-off adult, or an adult beside one who may supervise.
    fn who(&mut self, fact: &JobFact, entry: &Entry, scene: &Scene) {
        if fact.event == JobEvent::Opened {
            self.fit = false;
        } else if fact.hold == Some(Hold::Person) && fact.evidence.word(Item::SignOff).is_some() {
            let person = |id| scene.people.iter().map(|(p, _)| p).find(|p| Some(p.person) == id);
            let who = person(entry.who);
            let beside = person(fact.supervisor).filter(|b| Some(b.person) != entry.who);
            self.fit = who.is_some_and(|w| {
                w.adult && (!w.routes.is_empty() || beside.is_some_and(|b| b.adult && b.may_supervise))
            });
        }
    }

    fn light(&mut self, fact: &JobFact, scene: &Scene, now: &Now) -> Verdict {
        let e = &fact.evidence;
        must(
            self.fit || !matches!(fact.heat, Some(Heat::On | Heat::Low)),
            "heat on by somebody not fit for it",
        )?;
        if let Some(word) = e.word(Item::Level) {
            self.level = Some((word, *now));
            if e.word(Item::Fan).is_some() {
                // A pan is looked at afresh.
                (self.melt, self.low_seen) = (None, false);
                for (item, word) in [
                    (Item::Fan, Word::On),
                    (Item::Lid, Word::Off),
                    (Item::InPan, Word::None),
                    (Item::Tag, Word::None),
                    (Item::Valve, Word::Shut),
                ] {
                    must(e.is(item, word), "a look at the pan is missing")?;
                }
            }
        }
        if let Some(word) = e.word(Item::Melt) {
            self.melt = Some((word, *now));
        }
        if e.is(Item::Warming, Word::Crackling) {
            must(
                fact.heat == Some(Heat::Unknown),
                "water, and heat is not to be seen off",
            )?;
            self.level = None;
        }
        let pan = scene.pans.first().unwrap();
        let high = self
            .level
            .is_some_and(|(w, _)| matches!(w, Word::Enough | Word::JustAbove));
        let filled = pan.place == Place::InPan && matches!(pan.contents, Contents::Oil | Contents::SetFat);
        match fact.heat {
            Some(Heat::On) => {
                must(filled, "full heat with oil out of the pan")?;
                must(high, "full heat below the mark")?;
                let sets = pan.pan.fat.is_solid() || pan.pan.fat == Fat::PalmOlein;
                let liquid = self.melt.is_some_and(|(w, _)| w == Word::AllLiquid);
                must(!sets || liquid, "full heat on set fat not seen all liquid")?;
                let fresh = self.level.is_some_and(|(_, at)| just_now(&at, now));
                must(fresh, "full heat on a look too old")?;
                must(e.is(Item::HeatSetting, Word::On), "heat on, unseen")?;
            }
            Some(Heat::Low) => {
                must(filled, "low heat with oil out of the pan")?;
                must(high, "low heat below the mark")?;
                must(e.is(Item::HeatSetting, Word::Low), "low heat not seen")?;
                must(
                    matches!(e.word(Item::Crust), Some(Word::Open | Word::None)),
                    "crust not seen open",
                )?;
                must(e.is(Item::Thermostat, Word::Clear), "bulb not seen clear")?;
                // The first look has just seen the lid off.
                must(self.low_seen == e.is(Item::Lid, Word::Off), "low heat under a lid")?;
                let packed = matches!(e.word(Item::InPan), Some(Word::InPlace | Word::Gone));
                must(
                    self.low_seen || !pan.blocks || packed,
                    "heat under blocks nobody saw packed",
                )?;
                must(
                    fact.next_look == Some(now.wall.plus(5 * MINUTE)),
                    "no look in five minutes",
                )?;
                must(fact.looker.is_some(), "nobody stays")?;
                self.low_seen = true;
            }
            Some(Heat::OffSeen) => {
                must(off_twice(e), "heat off not seen in two ways")?;
                let low = self.level.is_some_and(|(w, _)| w == Word::Below) || !filled;
                must(!low || e.is(Item::Tag, Word::Hung), "low or empty, and no tag")?;
            }
            Some(Heat::Unknown) | None => {}
        }
        self.heat = fact.heat.or(self.heat);
        if fact.event == JobEvent::Ended {
            must(
                !matches!(self.heat, Some(Heat::Low | Heat::Unknown)),
                "light-up ended with heat nobody saw off",
            )?;
        }
        Ok(())
    }

    fn lock(&mut self, fact: &JobFact, scene: &Scene, now: &Now) -> Verdict {
        let e = &fact.evidence;
        if let Some(dc) = e.number(Item::Heap) {
            self.heap = Some((dc, Clocks { from: *now, credit: 0 }));
            self.proof = None;
        }
        if let (Some(word), Some((_, clocks))) = (e.word(Item::Clock), self.heap.as_mut()) {
            let trusted = (now.wall.since(clocks.from.wall)).max(0) + clocks.credit;
            *clocks = Clocks {
                from: *now,
                credit: if word == Word::Yes { trusted } else { 0 },
            };
        }
        if let Some(again) = e.number(Item::HeapAgain) {
            let (first, clocks) = self.heap.ok_or("a second probe without a first")?;
            must(clocks.from.life == now.life, "a wait ended across a reload, unasked")?;
            let wall = now.wall.since(clocks.from.wall);
            let mono = now.mono - clocks.from.mono;
            must((wall - mono).abs() <= 2_000, "a wait ended while the clocks disagreed")?;
            must(
                clocks.credit + wall.min(mono) >= 10 * MINUTE,
                "a minimum wait ended early",
            )?;
            self.heap = None;
            if first < 400 && again < 400 && again <= first {
                self.proof = Some(Proof::ColdTwice);
            }
        }
        if e.is(Item::Scraps, Word::None) && e.is(Item::SpentFilter, Word::None) && e.is(Item::Cloths, Word::None) {
            self.proof = Some(Proof::NoneTonight);
        }
        if e.is(Item::Scraps, Word::ThinOutdoors) {
            let laid = e.is(Item::Way, Word::Clear) && e.is(Item::Wetted, Word::Wet);
            let named = fact.looker.and_then(|who| scene.person(who)).is_some();
            let ahead = fact.next_look.is_some_and(|at| at > now.wall);
            if laid && named && ahead {
                self.proof = Some(Proof::Outdoors(fact.next_look));
            }
        }
        if e.is(Item::Found, Word::Cold) && self.left_open {
            self.proof = Some(Proof::LookedCold);
        }
        self.floor |= e.is(Item::Floor, Word::Dry);
        let empty = scene.pans.first().is_some_and(|p| p.place != Place::InPan);
        self.pan |= off_twice(e) && e.is(Item::Lid, Word::InPlace) && (!empty || e.is(Item::Tag, Word::Hung));
        match fact.event {
            JobEvent::Ended => {
                let proved = matches!(
                    self.proof,
                    Some(Proof::NoneTonight | Proof::ColdTwice | Proof::LookedCold)
                );
                must(proved, "lock-up ended without hold 12")?;
                must(self.floor, "lock-up ended on a wet floor")?;
                must(self.pan, "lock-up ended with a pan not seen off, lidded and tagged")
            }
            JobEvent::LeftOpen => {
                self.left_open = true;
                let Some(Proof::Outdoors(next_look)) = self.proof else {
                    return Err("lock-up left open without hold 12".into());
                };
                must(
                    fact.next_look == next_look,
                    "left open with another look than the named",
                )?;
                must(fact.looker.is_some(), "left open with nobody named")?;
                must(self.floor && self.pan, "left open with floor or pan unseen")
            }
            _ => Ok(()),
        }
    }
}
