//! Five weeks of trading, invented day by day: services, top-ups, readings, changes, and how each night was filtered.

use crate::domain::facts::job::Grade;
use crate::domain::facts::oil::{Age, Fill, Load, Measured, Note, OilChange, Reading, Service, Sign, SignKind, TopUp};
use crate::domain::facts::{Fact, RunNoted};
use crate::domain::fat::Fat;
use crate::domain::ids::{MachineId, PanId, PersonId};
use crate::domain::units::{Amount, Share, Temp, Typed, Unit};

use super::kitchen::{PANS, PanKind, minutes, volume};
use super::rng::Rng;
use super::{Demo, DemoNight, Moment};

/// Millilitres of oil at 20 °C for a kilogram of dripping, near enough for an invented kitchen.
const DRIPPING_ML_PER_KG: i64 = 1_090;
/// Trading days before the last on whose morning each pan's oil was changed: one fresh, one near its end.
const CHANGED: [[i64; 2]; 4] = [[5, 15], [8, 19], [2, 13], [9, 21]];
/// The night nobody filtered, in trading days before the last.
const MISSED: i64 = 10;
/// The night pan 3 was filtered without the guide.
const UNGUIDED: i64 = 6;
/// Polar compounds of fresh oil, in hundredths of a percent.
const FRESH_CPC: i64 = 500;

/// One pan through the weeks: its true oil, which the log only samples.
struct Story {
    pan: PanId,
    kind: &'static PanKind,
    /// Minutes after the first pan that its own entries are made.
    step: i64,
    changed: [i64; 2],
    /// Polar compounds now, in hundredths of a percent.
    polar_cpc: i64,
    /// What it gains in an hour hot, in hundredths of a percent.
    gain_cpc: i64,
}

pub(super) struct Season {
    rng: Rng,
}

impl Season {
    pub(super) const fn new(rng: Rng) -> Self {
        Self { rng }
    }

    /// Plays every day into the demo.
    pub(super) fn play(mut self, demo: &mut Demo, days: &[Moment]) {
        let pans = demo.cast.pans.into_iter().zip(&PANS).zip(CHANGED).zip(0..);
        let mut stories: Vec<Story> = pans
            .map(|(((pan, kind), changed), step)| Story {
                pan,
                kind,
                step,
                changed,
                polar_cpc: FRESH_CPC,
                gain_cpc: self.rng.between(36, 46),
            })
            .collect();
        for (day, left) in days.iter().rev().zip(0..).collect::<Vec<_>>().into_iter().rev() {
            for story in &mut stories {
                let who = self.who(demo);
                if story.changed.contains(&left) {
                    story.empty(demo, *day, who);
                    story.fill(demo, *day, who);
                } else if demo.drafts.iter().all(|d| !is_fill_of(&d.draft.fact, story.pan)) {
                    story.fill(demo, *day, who);
                }
                self.serve(demo, *day, story, who);
                if left % 3 == 0 {
                    self.read(demo, *day, story, who);
                }
                self.top_up(demo, *day, story, who);
            }
            self.filter(demo, *day, left);
        }
    }

    fn who(&mut self, demo: &Demo) -> Option<PersonId> {
        let pick = usize::try_from(self.rng.between(0, 2)).unwrap_or(0);
        demo.cast.people.get(pick).copied()
    }

    fn serve(&mut self, demo: &mut Demo, day: Moment, story: &mut Story, who: Option<PersonId>) {
        let busy = matches!(day.day.weekday_index(), 4 | 5);
        let usual = story.kind.fry_min + if busy { 60 } else { 0 };
        let fry = self.rng.between(usual - 30, usual + 30);
        story.polar_cpc += story.gain_cpc * fry / 60;
        let fact = Fact::Service(Service {
            pan: story.pan,
            fry: minutes(u16::try_from(fry).unwrap_or(0)),
            load: if busy { Load::Heavy } else { Load::Normal },
            temp: Some(Temp::celsius(175)),
            food_g: None,
        });
        demo.write(day.at(22, 2 + story.step), who, fact);
    }

    /// A reading in steps of half a percent that scatters about one percent.
    fn read(&mut self, demo: &mut Demo, day: Moment, story: &Story, who: Option<PersonId>) {
        let seen = (story.polar_cpc + self.rng.between(-90, 90)).max(300) / 50 * 50;
        let Some(share) = u16::try_from(seen).ok().and_then(Share::from_cpc) else {
            return;
        };
        let fact = Fact::Reading(Reading {
            pan: story.pan,
            value: Measured::Polar(share),
            instrument: Some(demo.cast.tester),
            oil: Some(Temp::celsius(if story.kind.gluten_free { 60 } else { 160 })),
        });
        demo.write(day.at(22, 10 + story.step), who, fact);
    }

    /// What left with the food comes back fresh, after the filter job.
    fn top_up(&mut self, demo: &mut Demo, day: Moment, story: &mut Story, who: Option<PersonId>) {
        let (least, most) = story.kind.top_up_l;
        let litres = self.rng.between(least, most);
        story.polar_cpc += (FRESH_CPC - story.polar_cpc) * litres * 1_000 / i64::from(story.kind.full_ml);
        let fact = Fact::TopUp(TopUp {
            pan: story.pan,
            fat: story.kind.fat,
            amount: amount(story.kind.fat, litres),
            batch: None,
        });
        demo.write(day.at(24, 30 + story.step), who, fact);
    }

    fn filter(&mut self, demo: &mut Demo, day: Moment, left: i64) {
        let [one, two, three, four] = demo.cast.pans;
        let who = self.who(demo);
        if left == MISSED {
            for (pan, minute) in demo.cast.pans.into_iter().zip(0..) {
                let fact = noted(pan, Grade::NotDone, "Power cut at closing", None);
                demo.write(day.at(23, minute), who, fact);
            }
            let text = "Power came back after midnight".into();
            demo.write(day.at(23, 10), who, Fact::Note(Note { pan: None, text }));
            return;
        }
        let mut shared = vec![one, two];
        if left == UNGUIDED {
            let fact = noted(three, Grade::Unguided, "Phone was flat", Some(demo.cast.machine));
            demo.write(day.at(24, 20), who, fact);
        } else {
            shared.push(three);
        }
        // Pan 4 was last fried in at lunch and is cold enough for its hand kit by closing.
        let jobs = [
            (day.at(22, 20), demo.cast.hand_kit, vec![four]),
            (day.at(22, 50), demo.cast.machine, shared),
        ];
        for ((at, off_min), machine, pans) in jobs {
            demo.nights.extend(who.map(|by| DemoNight {
                day: day.day,
                at,
                off_min,
                pans,
                machine,
                by,
            }));
        }
    }
}

impl Story {
    /// Old oil out, cold, in the morning.
    fn empty(&self, demo: &mut Demo, day: Moment, who: Option<PersonId>) {
        let sign = Fact::Sign(Sign {
            pan: Some(self.pan),
            sign: SignKind::Dark,
            text: None,
        });
        demo.write(day.at(9, self.step), who, sign);
        let change = Fact::OilChange(OilChange {
            pan: self.pan,
            amount: amount(self.kind.fat, i64::from(self.kind.full_ml / 1_000) - 2),
            reason: "Near the limit".into(),
            temp: (!self.kind.fat.is_solid()).then_some(Temp::celsius(28)),
            container: Some("Collection drum".into()),
        });
        demo.write(day.at(9, 10 + self.step), who, change);
    }

    fn fill(&mut self, demo: &mut Demo, day: Moment, who: Option<PersonId>) {
        self.polar_cpc = FRESH_CPC;
        let fact = Fact::Fill(Fill {
            pan: self.pan,
            fat: self.kind.fat,
            amount: amount(self.kind.fat, i64::from(self.kind.full_ml / 1_000)),
            batch: None,
            age: Age::Fresh,
        });
        demo.write(day.at(9, 30 + self.step), who, fact);
    }
}

fn is_fill_of(fact: &Fact, pan: PanId) -> bool {
    if let Fact::Fill(fill) = fact {
        fill.pan == pan
    } else {
        false
    }
}

fn noted(pan: PanId, how: Grade, why: &str, machine: Option<MachineId>) -> Fact {
    let why = Some(why.into());
    Fact::RunNoted(RunNoted { pan, machine, how, why })
}

/// Litres of oil; dripping is counted in whole kilograms.
fn amount(fat: Fat, litres: i64) -> Amount {
    let (count, ml, unit) = if fat.is_solid() {
        (litres * 1_000 / DRIPPING_ML_PER_KG, DRIPPING_ML_PER_KG, Unit::Kilograms)
    } else {
        (litres, 1_000, Unit::Litres)
    };
    Amount {
        volume: volume(u32::try_from(count * ml).unwrap_or(0)),
        typed: Typed {
            thousandths: u32::try_from(count * 1_000).unwrap_or(0),
            unit,
        },
    }
}
