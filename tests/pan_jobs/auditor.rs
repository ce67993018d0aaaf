//! An independent judge: it reads only what was written and when, and knows nothing of any machine.

use std::collections::BTreeMap;

use panward::domain::entry::Entry;
use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::{JobEvent, JobFact, JobKind};
use panward::domain::facts::run::{Contents, Heat, Left, Place, RunEvent, RunFact};
use panward::domain::fat::Fat;
use panward::domain::guide::Scene;
use panward::domain::ids::{JobId, PanId, PersonId};
use panward::domain::procedure::StepId;
use panward::domain::time::Now;

const FIVE_MIN: i64 = 5 * 60_000;
/// HSE guideline, floor, the smaller column, from memory: 7 kg.
const ALONE_MAX_G: i32 = 7_000;

pub type Verdict = Result<(), String>;

pub fn must(so: bool, what: &str) -> Verdict {
    if so { Ok(()) } else { Err(what.to_owned()) }
}

/// What a cautious person believes of a pan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum In {
    Oil,
    Set,
    /// Some of it taken out by hand.
    Some,
    /// In the machine, or nobody knows.
    Away,
    Nothing,
    Water,
}

#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Pan {
    pub holds: In,
    heat: Heat,
    off_seen: bool,
    tag: bool,
    exit: bool,
    chemical: bool,
    level: bool,
    blocks: bool,
    sheet: bool,
    liquid: bool,
    /// When water above the mark was last seen with somebody there.
    watched: Option<Now>,
    read: Option<(i32, Now)>,
    job: Option<JobId>,
    what: Option<JobKind>,
    /// The page life of the last word on it, once hands were on it.
    touched: Option<u64>,
    who: Option<PersonId>,
    fit: bool,
    kit: Option<Now>,
    floor: Option<Now>,
    last: Option<Now>,
    /// Its oil stands in the machine and may come back.
    away: bool,
    run: bool,
}

impl Pan {
    fn full(fat: Fat) -> Self {
        Self {
            holds: if fat.is_solid() { In::Set } else { In::Oil },
            heat: Heat::Unknown,
            off_seen: false,
            tag: false,
            exit: false,
            chemical: false,
            level: false,
            blocks: false,
            sheet: false,
            liquid: false,
            watched: None,
            read: None,
            job: None,
            what: None,
            touched: None,
            who: None,
            fit: false,
            kit: None,
            floor: None,
            last: None,
            away: false,
            run: false,
        }
    }
}

#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct Auditor {
    pub pans: BTreeMap<PanId, Pan>,
    /// Old oil in the machine, by its job.
    hot: BTreeMap<JobId, bool>,
    /// What the entry before said, for what is written in one breath.
    before: Option<(StepId, PanId)>,
}

fn off_twice(e: &Evidence) -> bool {
    e.is(Item::Knob, Word::Off) && e.is(Item::Flame, Word::Out)
}

fn within(then: &Now, now: &Now, ms: i64) -> bool {
    let span = 0..=ms;
    then.life == now.life && span.contains(&now.wall.since(then.wall)) && span.contains(&(now.mono - then.mono))
}

/// How long by the wall clock, which is all the log has of it; a clock put back counts as far as it was put back.
fn idle_ms(then: &Now, now: &Now) -> i64 {
    now.wall.since(then.wall).abs()
}

fn metal(e: &Evidence) -> bool {
    matches!(e.word(Item::Container), Some(Word::MetalDry | Word::OwnTin)) && e.is(Item::Room, Word::Enough)
}

fn carried(e: &Evidence) -> bool {
    match e.word(Item::Carry) {
        Some(Word::TwoPeople | Word::Trolley) => true,
        Some(Word::Alone) => e.number(Item::Load).is_some_and(|g| g <= ALONE_MAX_G),
        _ => false,
    }
}

impl Auditor {
    pub fn of(scene: &Scene) -> Self {
        Self {
            pans: scene.pans.iter().map(|p| (p.pan.pan, Pan::full(p.pan.fat))).collect(),
            ..Self::default()
        }
    }

    /// Whether a pan must say so itself.
    pub fn is_bare(&self, pan: PanId) -> bool {
        !matches!(self.pans[&pan].holds, In::Oil | In::Set)
    }

    pub fn read(&mut self, entry: &Entry, scene: &Scene, now: &Now) -> Verdict {
        let before = self.before.take();
        match &entry.fact {
            Fact::Job(fact) if fact.what.is_of_pan() => {
                self.pan_job(fact, entry, scene, now)?;
                self.before = fact.step.zip(fact.pan);
            }
            Fact::Job(fact) if fact.what == JobKind::LightUp => self.light(fact)?,
            Fact::Job(fact) => {
                if let (Some(pan), Some(Heat::OffSeen)) = (fact.pan, fact.heat) {
                    self.off(pan, &fact.evidence)?;
                }
            }
            Fact::Run(fact) => self.run(fact)?,
            Fact::OilChange(change) => {
                let written = matches!(before, Some((StepId::EmptyByHand | StepId::CutOut | StepId::InMachine, pan)) if pan == change.pan);
                must(written, "an oil change out of nothing")?;
            }
            Fact::Fill(fill) => {
                if before == Some((StepId::FreshLevel, fill.pan)) {
                    let claims = scene.pan(fill.pan).map(|p| p.claims.clone()).unwrap_or_default();
                    let met = claims.iter().any(|_| fill.fat == Fat::Lard);
                    must(!met, "a claim meets the fat that goes in")?;
                }
                let pan = self.pans.get_mut(&fill.pan).unwrap();
                must(pan.holds != In::Water, "oil onto water")?;
                pan.holds = if fill.fat.is_solid() { In::Set } else { In::Oil };
                (pan.liquid, pan.exit, pan.away) = (!fill.fat.is_solid(), false, false);
            }
            _ => {}
        }
        Ok(())
    }

    fn off(&mut self, pan: PanId, e: &Evidence) -> Verdict {
        let pan = self.pans.get_mut(&pan).unwrap();
        must(off_twice(e), "heat off not seen in two ways")?;
        (pan.heat, pan.off_seen, pan.watched) = (Heat::OffSeen, true, None);
        Ok(())
    }

    fn light(&mut self, fact: &JobFact) -> Verdict {
        let Some(id) = fact.pan else { return Ok(()) };
        let e = &fact.evidence;
        let pan = self.pans.get_mut(&id).unwrap();
        if let Some(level) = e.word(Item::Level) {
            pan.level = matches!(level, Word::Enough | Word::JustAbove);
        }
        if let Some(melt) = e.word(Item::Melt) {
            pan.liquid = melt == Word::AllLiquid;
        }
        match fact.heat {
            Some(heat @ (Heat::On | Heat::Low)) => {
                must(matches!(pan.holds, In::Oil | In::Set), "heat with no oil in the pan")?;
                must(pan.level, "heat below the mark")?;
                must(pan.job.is_none(), "the light-up lit a pan another job has in hand")?;
                let set = pan.holds == In::Set;
                must(
                    heat == Heat::Low || !set || pan.liquid,
                    "full heat on set fat not seen all liquid",
                )?;
                (pan.heat, pan.off_seen) = (heat, false);
            }
            Some(Heat::OffSeen) => self.off(id, e)?,
            Some(Heat::Unknown) => (pan.heat, pan.off_seen) = (Heat::Unknown, false),
            None => {}
        }
        Ok(())
    }

    fn run(&mut self, fact: &RunFact) -> Verdict {
        let pan = self.pans.get_mut(&fact.pan).unwrap();
        if fact.event == RunEvent::Began {
            must(pan.holds != In::Water, "a filter run of a pan with water in it")?;
            must(pan.holds != In::Nothing || pan.away, "a filter run of an empty pan")?;
            must(
                pan.holds != In::Some || fact.place != Place::InPan,
                "a filter run of a pan half emptied",
            )?;
        }
        pan.run = fact.event != RunEvent::Ended;
        pan.away = fact.place != Place::InPan;
        let tag = fact.evidence.word(Item::Tag);
        pan.tag = tag.map_or(pan.tag, |word| word == Word::Hung);
        pan.holds = match (fact.place, fact.contents) {
            (Place::InPan, Contents::SetFat) => In::Set,
            (Place::InPan, _) if pan.holds == In::Set && !matches!(fact.event, RunEvent::Pump) => In::Set,
            (Place::InPan, _) => In::Oil,
            (_, _) => In::Away,
        };
        if fact.left == Some(Left::Relit) {
            must(matches!(pan.holds, In::Oil | In::Set), "lit again with its oil out")?;
        }
        (pan.heat, pan.off_seen) = (fact.heat, fact.heat == Heat::OffSeen);
        Ok(())
    }

    fn pan_job(&mut self, fact: &JobFact, entry: &Entry, scene: &Scene, now: &Now) -> Verdict {
        let id = fact.pan.ok_or("a pan's job without a pan")?;
        let e = &fact.evidence;
        let pan = self.pans.get_mut(&id).unwrap();
        if pan.job == Some(fact.job) {
            // Twenty idle minutes and another person: asked again.
            if pan.last.is_some_and(|last| idle_ms(&last, now) >= 20 * 60_000) {
                (pan.kit, pan.floor) = (None, None);
            }
            pan.last = Some(*now);
        }
        if let Some(step @ (StepId::LetOut | StepId::Waste)) = fact.step {
            return self.waste(step, fact, now);
        }
        let pan = self.pans.get_mut(&id).unwrap();
        match fact.event {
            JobEvent::Opened => {
                must(pan.job.is_none(), "two jobs on one pan")?;
                must(!pan.run, "a job on a pan a run has in hand")?;
                must(pan.heat != Heat::Low, "a job on a pan half lit")?;
                let oil = matches!(pan.holds, In::Oil | In::Set);
                must(
                    fact.what == JobKind::OilChange || !oil,
                    "a boil-out of a pan with oil in it",
                )?;
                (pan.job, pan.what, pan.touched) = (Some(fact.job), Some(fact.what), None);
                (pan.fit, pan.kit, pan.floor, pan.exit) = (false, None, None, false);
                return Ok(());
            }
            JobEvent::Ended => {
                must(pan.job == Some(fact.job), "another job ended")?;
                pan.job = None;
                must(
                    !matches!(pan.heat, Heat::Low | Heat::Unknown) || pan.touched.is_none(),
                    "ended with heat nobody saw off",
                )?;
                must(pan.holds != In::Some, "ended with some of the oil taken out")?;
                let bare = !matches!(pan.holds, In::Oil | In::Set);
                must(!bare || pan.tag, "ended on a bare pan and no tag asked")?;
                return Ok(());
            }
            _ => must(pan.job == Some(fact.job), "a word on a job that is not open")?,
        }
        let Some(step) = fact.step else { return Ok(()) };
        if step == StepId::Who {
            let person = |id| scene.people.iter().map(|(p, _)| p).find(|p| Some(p.person) == id);
            let (who, beside) = (person(entry.who), person(fact.supervisor));
            let beside = beside.filter(|b| Some(b.person) != entry.who && b.adult && b.may_supervise);
            let known = e.word(Item::SignOff).is_some();
            pan.fit = known && who.is_some_and(|w| w.adult && (!w.routes.is_empty() || beside.is_some()));
            if pan.who != entry.who {
                pan.kit = None;
            }
            pan.who = entry.who;
            return Ok(());
        }
        if fact.event == JobEvent::Broken {
            // Heat off is never refused, and is a look still to be taken.
            (pan.heat, pan.off_seen, pan.watched) = (Heat::Unknown, false, None);
            return must(fact.heat == Some(Heat::Unknown), "heat off, and believed");
        }
        let looked = step == StepId::LookAgain || step == StepId::LeavePan;
        if let Some(life) = pan.touched {
            let seen = step == StepId::LookAgain && off_twice(e) && e.word(Item::PanHolds).is_some();
            must(
                life == now.life.0 || seen || step == StepId::LeavePan,
                "went on after an interruption without a look",
            )?;
        }
        // Before hands are on the pan nothing is interrupted.
        if !matches!(step, StepId::Kit | StepId::Floor | StepId::ChangeHow) || pan.touched.is_some() || looked {
            pan.touched = Some(now.life.0);
        }
        if let Some(word) = e.word(Item::Tag) {
            pan.tag = word == Word::Hung;
        }
        if let Some(heat) = fact.heat {
            match heat {
                Heat::OffSeen => {
                    must(off_twice(e), "heat off not seen in two ways")?;
                    (pan.heat, pan.off_seen, pan.watched) = (Heat::OffSeen, true, None);
                }
                Heat::Low => {}
                Heat::On => return Err("full heat in a pan's job".into()),
                Heat::Unknown => (pan.heat, pan.off_seen, pan.watched) = (Heat::Unknown, false, None),
            }
        }
        if fact.contents == Some(Contents::EmptyWet) && e.is(Item::PanHolds, Word::Empty) {
            pan.holds = In::Nothing;
        }
        self.step(step, fact, id, now)
    }

    fn step(&mut self, step: StepId, fact: &JobFact, id: PanId, now: &Now) -> Verdict {
        let e = &fact.evidence;
        let pan = self.pans.get_mut(&id).unwrap();
        let oil = matches!(pan.holds, In::Oil | In::Set);
        let ready = |pan: &Pan| pan.fit && pan.kit.is_some() && pan.floor.is_some();
        let cold = |pan: &Pan| pan.read.is_some_and(|(dc, at)| dc <= 400 && within(&at, now, FIVE_MIN));
        match step {
            StepId::Kit => {
                let worn = [Item::Gloves, Item::Face, Item::Apron, Item::Sleeves, Item::Shoes];
                pan.kit = worn.iter().all(|i| e.is(*i, Word::Worn)).then_some(*now);
                pan.sheet = e.is(Item::Sheet, Word::Read);
            }
            StepId::Floor => {
                let seen = e.is(Item::Floor, Word::Dry) && e.is(Item::Way, Word::Clear);
                pan.floor = (seen && e.is(Item::Extinguisher, Word::Seen)).then_some(*now);
            }
            StepId::OilTemp | StepId::BoilCool => {
                let dc = e.number(Item::OilTemp).or(e.number(Item::WaterTemp));
                // The entry says when the reading goes stale.
                let age = fact.deadline.map_or(i64::MAX, |due| FIVE_MIN - due.since(now.wall));
                pan.read = dc.filter(|_| (0..=FIVE_MIN).contains(&age)).map(|dc| {
                    let then = Now {
                        wall: now.wall.plus(-age),
                        mono: now.mono - age,
                        ..*now
                    };
                    (dc, then)
                });
            }
            StepId::Container => {
                must(oil, "oil taken out of a pan that holds none")?;
                must(ready(pan), "by hand without person, kit and floor")?;
                must(cold(pan), "hot oil by hand")?;
                must(pan.off_seen, "by hand with heat not seen off")?;
                must(metal(e), "oil into no dry metal container")?;
                must(carried(e), "a heavy container carried alone")?;
                must(pan.tag, "oil taken out and no tag asked")?;
                pan.holds = In::Some;
            }
            StepId::EmptyByHand | StepId::CutOut => {
                must(pan.holds == In::Some, "taken out before the container was seen")?;
                if e.is(Item::ByHand, Word::InContainer) {
                    pan.holds = In::Nothing;
                }
            }
            StepId::InMachine => {
                must(
                    (pan.holds == In::Away || pan.away) && !pan.run,
                    "shut in the machine, yet it is not there",
                )?;
                let tagged = e.is(Item::MachineTag, Word::Hung) && e.is(Item::Lid, Word::InPlace);
                must(tagged, "hot oil in a machine nobody tagged")?;
                must(pan.tag, "oil gone and no tag asked")?;
                (pan.holds, pan.away) = (In::Nothing, false);
                self.hot.insert(fact.job, true);
            }
            StepId::Clean => must(pan.off_seen && pan.tag, "hands into a pan not seen off and tagged")?,
            StepId::Exit => {
                must(pan.holds == In::Nothing, "wiped with something in it")?;
                pan.exit =
                    e.is(Item::Walls, Word::Wiped) && e.is(Item::PanInside, Word::Dry) && e.is(Item::Valve, Word::Shut);
            }
            StepId::FreshIn | StepId::PackIn => {
                must(pan.exit, "filled without wiped, dry and valve shut")?;
                must(e.is(Item::Valve, Word::Shut), "filled over an open valve")?;
                must(carried(e), "a heavy container carried alone")?;
                must(ready(pan), "filled without person, kit and floor")?;
                pan.blocks = e.is(Item::Blocks, Word::CutSmall) && e.is(Item::Packing, Word::Packed);
            }
            StepId::FreshLevel => {
                must(pan.exit, "filled without wiped, dry and valve shut")?;
                let solid = fact.contents == Some(Contents::SetFat);
                must(!solid || pan.blocks, "blocks bridging bare tubes")?;
                let level = e.word(Item::Level);
                must(level.is_some(), "filled and its level not read")?;
                let low = level == Some(Word::Below);
                must(low == e.is(Item::Tag, Word::Hung), "tag and level do not agree")?;
                pan.holds = if solid { In::Set } else { In::Oil };
                pan.liquid = !solid;
            }
            StepId::BoilEmpty => {
                let empty = matches!(e.word(Item::Remainder), Some(Word::Film | Word::None));
                must(empty && !oil, "water onto oil")?;
                must(pan.off_seen, "water into a pan not seen off")?;
                must(e.is(Item::Valve, Word::Shut), "water over an open valve")?;
                must(pan.tag, "a boil-out and no tag asked")?;
                must(
                    ready(pan) && pan.sheet,
                    "a boil-out without person, kit, sheet and floor",
                )?;
                (pan.holds, pan.exit) = (In::Water, false);
            }
            StepId::BoilChemical => {
                must(pan.sheet && pan.kit.is_some(), "chemical without its sheet")?;
                let cold = pan.heat == Heat::OffSeen;
                must(
                    cold && matches!(e.word(Item::Chemical), Some(Word::AsSheet | Word::None)),
                    "chemical not as its sheet says",
                )?;
            }
            StepId::BoilHeat | StepId::BoilLook if fact.heat == Some(Heat::Low) => {
                must(pan.holds == In::Water, "low heat on what is not water")?;
                let seen = e.is(Item::WaterLevel, Word::InBand) && e.is(Item::Attended, Word::Here);
                must(seen, "low heat, and no water above the mark or nobody there")?;
                let again = step == StepId::BoilLook;
                must(!again || e.is(Item::Foam, Word::Quiet), "low heat in foam")?;
                must(again || e.is(Item::HeatSetting, Word::Low), "low heat not seen")?;
                let watched = pan.watched.is_some_and(|at| within(&at, now, 2 * FIVE_MIN - 1));
                must(!again || watched, "went on boiling with nobody there")?;
                must(
                    fact.next_look == Some(now.wall.plus(FIVE_MIN)),
                    "no look in five minutes",
                )?;
                (pan.heat, pan.off_seen, pan.watched) = (Heat::Low, false, Some(*now));
            }
            StepId::BoilDrain => {
                must(cold(pan), "hot water drained")?;
                must(pan.off_seen, "drained with heat not seen off")?;
                must(ready(pan), "drained without person, kit and floor")?;
                must(e.is(Item::DrainedTo, Word::AsSheet), "drained where nobody knows")?;
                pan.holds = In::Nothing;
            }
            StepId::BoilRinse => must(e.is(Item::Rinse, Word::Clean), "chemical left in the pan")?,
            StepId::LeavePan => must(pan.off_seen && off_twice(e), "left with heat not seen off")?,
            _ => {}
        }
        Ok(())
    }

    fn waste(&mut self, step: StepId, fact: &JobFact, now: &Now) -> Verdict {
        let e = &fact.evidence;
        if step == StepId::LetOut {
            let age = fact.deadline.map_or(i64::MAX, |due| FIVE_MIN - due.since(now.wall));
            let cold = e.number(Item::OilTemp).is_some_and(|dc| dc <= 400) && (0..=FIVE_MIN).contains(&age);
            must(cold, "hot oil out of the machine")?;
            must(metal(e), "oil into no dry metal container")?;
            must(carried(e), "a heavy container carried alone")?;
            must(
                self.hot.remove(&fact.job).is_some(),
                "let out of a machine that holds none",
            )
        } else {
            must(!self.hot.contains_key(&fact.job), "put by while it is in the machine")?;
            let sealed = e.is(Item::Lid, Word::InPlace) && e.is(Item::WasteLabel, Word::Seen);
            must(
                sealed && e.is(Item::Stored, Word::DripTray),
                "waste not sealed, labelled and on its tray",
            )
        }
    }
}
