//! Small invented kitchens: one pan, one machine, and what makes each of them special.

use panward::domain::claim::{ClaimKind, Exposure, Exposures};
use panward::domain::entry::{Draft, Entry};
use panward::domain::facts::run::{Contents, Form, Place, Plan};
use panward::domain::facts::setup::{
    Claim, FilterKind, HeatKind, Heater, Held, Machine, OffSign, OutBy, Pan, Person, Route,
};
use panward::domain::fat::Fat;
use panward::domain::guide::Scene;
use panward::domain::guide::scene::{MachineNow, PanNow};
use panward::domain::ids::{Dev, EntryId, JobId, MachineId, PanId, PersonId, RunId};
use panward::domain::ledger::Parked;
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::domain::units::{Share, Temp, Volume};

pub const JOB: JobId = JobId(1);
pub const PAN: PanId = PanId(10);
pub const MACHINE: MachineId = MachineId(20);
/// A strainer and a container, where a world has one beside the machine.
pub const KIT: MachineId = MachineId(21);
/// A signed-off adult who may supervise.
pub const OWNER: PersonId = PersonId(30);
/// A starter, adult.
pub const STARTER: PersonId = PersonId(31);
/// Signed off for the cold route only, under eighteen.
pub const YOUNG: PersonId = PersonId(32);

#[derive(Clone)]
pub struct World {
    pub name: String,
    pub scene: Scene,
    pub form: Form,
    pub plan: Plan,
    /// Who works the pans, and who stands beside.
    pub who: (PersonId, Option<PersonId>),
    /// How many troubles a path through it may hold.
    pub troubles: u32,
    /// Whether a draw can be reached at all.
    pub draws: bool,
}

/// No optional part.
pub const NONE: Plan = Plan {
    samples: false,
    wipe: false,
    rinse: false,
};
pub const ALL: Plan = Plan {
    samples: true,
    wipe: true,
    rinse: true,
};

pub fn start() -> Now {
    Now {
        wall: Millis(1_700_000_000_000),
        mono: 1_000_000,
        life: PageLife(1),
        off_min: 0,
    }
}

fn day() -> Day {
    Day::of(start().wall, 0, 300)
}

pub fn world(out_by: OutBy, fat: Fat, form: Form, plan: Plan) -> World {
    let ml = |ml| Volume::from_ml(ml).unwrap();
    let person = |person, adult, routes: &[Route], may_supervise| Person {
        person,
        initials: "AA".into(),
        adult,
        routes: routes.to_vec(),
        may_supervise,
        by: Some(PersonId(99)),
        until: None,
    };
    let off_signs = [OffSign::Knob, OffSign::Flame];
    let pan = Pan {
        pan: PAN,
        name: "1".into(),
        full: ml(20_000),
        min: ml(14_000),
        mark: "line".into(),
        heat: HeatKind::Gas,
        off_signs,
        fat,
        claims: Vec::new(),
        food: Exposures::of(&[Exposure::Fish]),
        rhythm: None,
        usual_days: None,
        end_sign: None,
        in_use: true,
    };
    let machine = Machine {
        machine: MACHINE,
        name: "m".into(),
        out_by,
        // 20 L at 180 °C is 22.8 L; with a tenth kept free 25,334 mL is the least that holds it.
        tank: ml(25_334),
        free: Share::from_cpc(1_000).unwrap(),
        heater: Heater::of_watts(1_000),
        takes_solid: false,
        filter: FilterKind::Single,
        low: Temp::celsius(100),
        high: Temp::celsius(180),
        target: Temp::celsius(150),
        rinse_max_s: Some(30),
        rinse_min_s: None,
        filters: Vec::new(),
        powder: None,
        words: Vec::new(),
        held: Held::Known(Exposures::NONE),
    };
    World {
        name: format!(
            "{} {} {}{}",
            out_by.key(),
            fat.key(),
            form.key(),
            if plan == NONE { "" } else { " all" }
        ),
        scene: Scene {
            people: vec![
                (person(OWNER, true, &[Route::Hot, Route::Cold], true), 30),
                (person(STARTER, true, &[], false), 0),
                (person(YOUNG, false, &[Route::Cold], false), 30),
            ],
            pans: vec![PanNow {
                pan,
                claims: Vec::new(),
                place: Place::InPan,
                contents: Contents::Oil,
                went: None,
                blocks: false,
            }],
            machines: vec![MachineNow {
                machine,
                met: Exposures::NONE,
                last_fat: Some(fat),
                holds: Vec::new(),
                set_in_line: false,
                left_ready_by: None,
            }],
            bare: Vec::new(),
            day: day(),
            winter: false,
            second_person: true,
            troubles: Vec::new(),
        },
        form,
        plan,
        who: (OWNER, None),
        troubles: 2,
        draws: true,
    }
}

impl World {
    pub fn named(mut self, name: &str) -> Self {
        self.name = format!("{} ({name})", self.name);
        self
    }

    pub fn by(mut self, who: PersonId, beside: Option<PersonId>) -> Self {
        self.who = (who, beside);
        self
    }

    pub fn machine(mut self, change: impl FnOnce(&mut MachineNow)) -> Self {
        change(&mut self.scene.machines[0]);
        self
    }

    pub fn gluten_free(mut self) -> Self {
        self.scene.pans[0].claims = vec![Claim {
            what: ClaimKind::GlutenFree,
            from: day(),
            basis: "own pan".into(),
            until: None,
        }];
        self
    }

    /// With a hand kit beside the machine.
    pub fn with_kit(mut self) -> Self {
        let mut kit = self.scene.machines[0].clone();
        (kit.machine.machine, kit.machine.out_by) = (KIT, OutBy::Hand);
        self.scene.machines.push(kit);
        self
    }

    /// A world in which oil must never leave the pan.
    pub fn refuses(mut self) -> Self {
        self.draws = false;
        self
    }
}

/// Worlds in which a pan is filtered.
pub fn working() -> Vec<World> {
    let mut all = Vec::new();
    for out_by in [OutBy::Nozzle, OutBy::Drain, OutBy::BuiltIn] {
        for (fat, form, plan) in [
            (Fat::Rapeseed, Form::Long, NONE),
            (Fat::Rapeseed, Form::Short, ALL),
            (Fat::Dripping, Form::Long, ALL),
            (Fat::Dripping, Form::Short, NONE),
        ] {
            all.push(world(out_by, fat, form, plan));
        }
    }
    for (form, plan) in [
        (Form::Long, NONE),
        (Form::Long, ALL),
        (Form::Short, NONE),
        (Form::Short, ALL),
    ] {
        all.push(world(OutBy::Hand, Fat::Rapeseed, form, plan));
    }
    all.push(supervised());
    all.push(
        world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE)
            .gluten_free()
            .named("gluten-free, clean machine"),
    );
    all.push(
        world(OutBy::Nozzle, Fat::Dripping, Form::Long, NONE)
            .machine(|m| (m.machine.heater, m.machine.takes_solid) = (Heater::None, true))
            .named("no heater, manual takes solid"),
    );
    all
}

/// Worlds in which fat may have set in the machine, or somebody may reach for a hand kit.
pub fn after_solid() -> Vec<World> {
    let nozzle = |fat, form| world(OutBy::Nozzle, fat, form, NONE);
    vec![
        nozzle(Fat::Rapeseed, Form::Long)
            .machine(|m| m.last_fat = Some(Fat::Dripping))
            .named("machine held dripping"),
        set_in_line(),
        nozzle(Fat::Dripping, Form::Short).with_kit().named("hand kit beside"),
        nozzle(Fat::Rapeseed, Form::Short).with_kit().named("hand kit beside"),
    ]
}

pub fn set_in_line() -> World {
    world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE)
        .machine(|m| (m.last_fat, m.set_in_line) = (Some(Fat::Dripping), true))
        .named("dripping set in the line")
}

pub fn supervised() -> World {
    world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE)
        .by(STARTER, Some(OWNER))
        .named("starter beside a supervisor")
}

pub fn starter_alone() -> World {
    // Nobody else is in: the starter has no one to name.
    let mut alone = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE)
        .by(STARTER, None)
        .refuses();
    alone.scene.people.retain(|(p, _)| p.person == STARTER);
    alone.named("starter alone")
}

pub fn small_tank() -> World {
    let less = Volume::from_ml(25_333).unwrap();
    world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE)
        .machine(|m| m.machine.tank = less)
        .refuses()
        .named("tank too small")
}

pub fn claim_met() -> World {
    world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE)
        .gluten_free()
        .machine(|m| m.met = Exposures::of(&[Exposure::Gluten]))
        .refuses()
        .named("gluten-free, machine met gluten")
}

/// Oil of another pan that stands in the machine.
pub fn parked(fat: Fat, ml: u32) -> Parked {
    Parked {
        machine: MACHINE,
        pan: PanId(9),
        fill: EntryId(9),
        fat,
        volume: Volume::from_ml(ml),
        since: start().wall,
    }
}

/// Worlds in which oil must never leave the pan.
pub fn refusing() -> Vec<World> {
    let plain = || world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE);
    let mut young = plain().by(YOUNG, None).refuses().named("under eighteen");
    young.scene.people.retain(|(p, _)| p.person == YOUNG);
    let unused_fat =
        world(OutBy::Nozzle, Fat::Rapeseed, Form::Short, NONE).machine(|m| m.last_fat = Some(Fat::Dripping));
    vec![
        unused_fat.refuses().named("no short form after another fat"),
        starter_alone(),
        young,
        claim_met(),
        plain()
            .gluten_free()
            .machine(|m| m.met = Exposures::of(&[Exposure::Unknown]))
            .refuses()
            .named("gluten-free, machine unknown"),
        small_tank(),
        plain()
            .machine(|m| m.holds = vec![parked(Fat::Rapeseed, 5_000)])
            .refuses()
            .named("the tank holds oil"),
        world(OutBy::Nozzle, Fat::Dripping, Form::Long, NONE)
            .machine(|m| m.machine.heater = Heater::None)
            .refuses()
            .named("no heater, solid fat"),
        world(OutBy::Hand, Fat::Dripping, Form::Long, NONE)
            .refuses()
            .named("set at 40 °C"),
    ]
}

/// What the store does to a draft: an id, a place and a time of writing.
pub fn stamp(draft: Draft, seq: u32, now: &Now) -> Entry {
    Entry {
        id: EntryId(u128::from(seq)),
        dev: Dev(1),
        seq,
        at: draft.at.unwrap_or(now.wall),
        rec: now.wall,
        clk: None,
        off_min: now.off_min,
        who: draft.who,
        fact: draft.fact,
    }
}

pub fn run_id(n: u32) -> RunId {
    RunId(1_000 + u128::from(n))
}
