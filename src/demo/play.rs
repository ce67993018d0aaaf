//! Plays the demo: every entry of its log is written by a real command to a kitchen, the filter nights by the guide.

use super::rng::Rng;
use super::{Cast, DemoDraft, DemoNight, demo_drafts};
use crate::domain::allergen_sheet;
use crate::domain::entry::Draft;
use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::facts::run::{Form, Plan};
use crate::domain::facts::{AllergensChecked, Fact};
use crate::domain::fat::Fat;
use crate::domain::guide::gate::{Gate, QuestionKind};
use crate::domain::guide::{Command, Refusal, Run, Warm};
use crate::domain::ids::{Dev, JobId, PanId, PersonId, RunId};
use crate::domain::procedure::{StepId, Timer, Verdict};
use crate::domain::time::{Day, Millis, Now, PageLife};
use crate::domain::wait::Standing;
use crate::kitchen::{Kitchen, Order, Outside, Refused};
use crate::store::{Journal, MemoryJournal, Record};

/// The zone of the demo kitchen.
pub const ZONE: &str = "Europe/London";
/// More questions than a filter job can have: a guide that goes round in circles is left.
const QUESTIONS_MAX: usize = 400;

/// The demo's log and the store it belongs to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Played {
    /// The name of the store its entries are numbered in.
    pub dev: Dev,
    /// Its entries, in the order they were written.
    pub records: Vec<Record>,
    /// Who and what is in it.
    pub cast: Cast,
}

/// Plays the five weeks before `today`. `off_min` gives the minutes the demo's zone is ahead of UTC at a moment.
/// The same arguments give the same log.
///
/// # Errors
/// Why the kitchen refused a command; the demo is then not to be shown.
pub async fn play(seed: u64, today: Day, off_min: impl Fn(Millis) -> i16 + Clone + 'static) -> Result<Played, Refused> {
    let noon = |day: Day| day.begins(0, 12 * 60);
    let demo = demo_drafts(seed, today, |day| off_min(noon(day)));
    let mut rng = Rng::new(!seed);
    let dev = Dev(rng.next());
    let mut chance = rng.clone();
    let outside = Outside {
        off_min: Box::new(off_min),
        random: Box::new(move || std::array::from_fn(|_| chance.next().to_le_bytes()[0])),
    };
    let start = now_at(Millis(0), 0);
    let mut player = Player {
        kitchen: Kitchen::open(MemoryJournal::new(dev), outside, &start).await?,
        records: Vec::new(),
        now: start,
        rng,
    };
    let mut nights = demo.nights.iter().peekable();
    for draft in &demo.drafts {
        while let Some(night) = nights.next_if(|n| n.at <= draft.at) {
            player.night(night).await?;
        }
        player.write(draft).await?;
    }
    for night in nights {
        player.night(night).await?;
    }
    player.allergens(demo.cast.people.first().copied()).await?;
    Ok(Played {
        dev,
        records: player.records,
        cast: demo.cast,
    })
}

const fn now_at(wall: Millis, off_min: i16) -> Now {
    Now {
        wall,
        mono: wall.0,
        life: PageLife(1),
        off_min,
    }
}

/// The kitchen being played, and the hands at its pans.
struct Player {
    kitchen: Kitchen<MemoryJournal>,
    records: Vec<Record>,
    now: Now,
    rng: Rng,
}

impl Player {
    async fn send(&mut self, order: Order) -> Result<(), Refused> {
        let prepared = self.kitchen.prepare(order, &self.now)?;
        self.kitchen.journal_handle().append(prepared.records()).await?;
        self.records.extend_from_slice(prepared.records());
        self.kitchen.believe(prepared);
        Ok(())
    }

    async fn write(&mut self, draft: &DemoDraft) -> Result<(), Refused> {
        self.go_to(draft.at, draft.off_min);
        // Closed days make gaps of more than 24 hours, at which a person would confirm the date.
        let order = Order::Write(vec![draft.draft.clone()]);
        self.send(Order::TimeConfirmed(Box::new(order))).await
    }

    /// The owner goes through the allergen sheet when all is put away.
    async fn allergens(&mut self, who: Option<PersonId>) -> Result<(), Refused> {
        self.go_to(self.now.wall.plus(Millis::MINUTE), self.now.off_min);
        let (ledger, day) = (self.kitchen.ledger(), self.kitchen.today(&self.now));
        let checked = AllergensChecked {
            sheet: allergen_sheet::short(&allergen_sheet::sheet(ledger, day)),
            why: None,
        };
        let draft = Draft::now(who, Fact::AllergensChecked(checked));
        self.send(Order::Write(vec![draft])).await
    }

    async fn command(&mut self, command: Command) -> Result<(), Refused> {
        self.send(Order::Guide(command)).await
    }

    /// Never back: a job that ran over its time holds the next entry up a little.
    fn go_to(&mut self, wall: Millis, off_min: i16) {
        self.now = now_at(wall.max(self.now.wall), off_min);
    }

    fn wait(&mut self, ms: i64) {
        self.now = now_at(self.now.wall.plus(ms), self.now.off_min);
    }

    fn seconds(&mut self, least: i64, most: i64) {
        let waited = self.rng.between(least, most);
        self.wait(waited * Millis::SECOND);
    }

    /// One filter job, from opening it to the machine put away.
    async fn night(&mut self, night: &DemoNight) -> Result<(), Refused> {
        self.go_to(night.at, night.off_min);
        let job = JobId(self.rng.id());
        self.command(Command::Open(job)).await?;
        self.answer_all(night).await?;
        let solid = |player: &Self, pan: &PanId| {
            let book = &player.kitchen.ledger().book;
            book.pan(*pan).is_some_and(|p| p.fat.is_solid())
        };
        // What the machine held last may have set in it.
        let held = |player: &Self| {
            let last = player.kitchen.ledger().last_fat(night.machine);
            last.is_some_and(Fat::is_solid)
        };
        let warms = held(self) || night.pans.iter().any(|pan| solid(self, pan));
        if warms {
            self.heater_on().await?;
        }
        for pan in &night.pans {
            if solid(self, pan) || held(self) {
                self.wait_for_the_machine();
            }
            self.seconds(20, 90);
            self.begin(*pan).await?;
            self.answer_all(night).await?;
        }
        if warms {
            self.seconds(5, 15);
            self.command(Command::Heater(false)).await?;
        }
        self.seconds(10, 30);
        self.command(Command::PutAway).await?;
        self.answer_all(night).await
    }

    /// Begins a pan's run in the short form where the guide offers it.
    async fn begin(&mut self, pan: PanId) -> Result<(), Refused> {
        let run = RunId(self.rng.id());
        let begin = |form| Command::Begin {
            run,
            pan,
            form,
            plan: Plan::default(),
        };
        match self.command(begin(Form::Short)).await {
            Err(Refused::Guide(Refusal::NoShortForm)) => self.command(begin(Form::Long)).await,
            other => other,
        }
    }

    async fn heater_on(&mut self) -> Result<(), Refused> {
        if self.kitchen.guide().job().is_some_and(|job| job.warm == Warm::Cold) {
            self.seconds(5, 15);
            self.command(Command::Heater(true)).await?;
        }
        Ok(())
    }

    fn wait_for_the_machine(&mut self) {
        if let Some(Warm::On(wait)) = self.kitchen.guide().job().map(|j| j.warm)
            && let Standing::Running { left_ms } = wait.standing(&self.now)
        {
            self.wait(left_ms + Millis::SECOND);
        }
    }

    /// Answers everything that is asked, as it must be, until nothing is.
    async fn answer_all(&mut self, night: &DemoNight) -> Result<(), Refused> {
        for _ in 0..QUESTIONS_MAX {
            let Some(gate) = self.kitchen.guide().gate(&self.now) else {
                return Ok(());
            };
            if gate.id() == StepId::WarmUp {
                self.heater_on().await?;
                self.wait_for_the_machine();
            }
            self.work(&gate);
            let command = match gate.id() {
                StepId::Who => Command::Who {
                    person: night.by,
                    supervisor: None,
                },
                StepId::Machine => Command::Machine {
                    machine: night.machine,
                    used_since: Word::No,
                },
                step => {
                    let run = self.kitchen.guide().job().and_then(|j| j.run.clone());
                    Command::Answer {
                        step,
                        evidence: self.good(&gate, run.as_ref()),
                        read: Some(self.now),
                    }
                }
            };
            self.command(command).await?;
        }
        Ok(())
    }

    /// The time a gate takes: a draw and a return by their clocks, a look a few seconds.
    fn work(&mut self, gate: &Gate) {
        match gate.timer() {
            Some(Timer::Expect { from_s, to_s }) => self.seconds(from_s.into(), to_s.into()),
            Some(Timer::Rinse) => self.seconds(15, 28),
            None => {
                for _ in &gate.questions {
                    self.seconds(3, 8);
                }
            }
        }
    }

    fn good(&mut self, gate: &Gate, run: Option<&Run>) -> Evidence {
        let mut seen = Evidence::new();
        for (_, item, answers) in gate.looks() {
            let mut good = answers.iter().filter(|a| a.verdict == Verdict::Good).map(|a| a.word);
            let solid = run.is_some_and(|r| r.pan.pan.fat.is_solid());
            let word = if item == Item::Left && solid {
                Some(Word::Set)
            } else {
                good.next()
            };
            if let Some(word) = word {
                seen.put(item, Seen::Is(word));
            }
        }
        for question in &gate.questions {
            if let QuestionKind::Probe { item } = question.kind {
                let target = run.map_or(0, |r| i64::from(r.limits.target.dc()));
                let below = self.rng.between(20, 90);
                seen.put(item, Seen::Number(i32::try_from(target - below).unwrap_or(0)));
            }
        }
        seen
    }
}
