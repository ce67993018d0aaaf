//! The step tables hold every step of the project's safety notes (section 11, H0 to H21) that its design keeps.

use panward::domain::procedure::{Hold, Step, StepId, Tables};

/// Steps of those notes and where they are kept. H4 is the machine's heater, a command beside the steps, and stands as
/// a hold before the draw; H20 and H21 belong to light-up and lock-up and are only named here by id.
const KEPT: &[(&str, &[StepId])] = &[
    ("H0 person and place", &[StepId::Who, StepId::Floor]),
    ("H1 kit", &[StepId::Kit]),
    ("H2 fat and claim", &[StepId::Machine, StepId::Match]),
    ("H3 filter built dry", &[StepId::Dry, StepId::Empty]),
    ("H5 oil temperature", &[StepId::OilTemp]),
    ("H6 heat off", &[StepId::HeatOff]),
    ("H7 scrape", &[StepId::Scrape]),
    ("H8 skim", &[StepId::Skim]),
    ("H9 sample before", &[StepId::SampleOut]),
    ("H10 nozzle, extract", &[StepId::Connect, StepId::Draw]),
    ("H11 chase the rest", &[StepId::Remainder]),
    ("H12 wipe", &[StepId::Wipe]),
    ("H13 sample after", &[StepId::SampleBack]),
    ("H14 rinse", &[StepId::Rinse, StepId::Rinsing]),
    ("H15 compare", &[StepId::Compare]),
    (
        "H16 return",
        &[StepId::GiveBack, StepId::Returning, StepId::Tank, StepId::Level],
    ),
    ("H17 machine off", &[StepId::AwayLine, StepId::AwayOff]),
    ("H18 spent filter", &[StepId::AwayFilter, StepId::AwayCloths]),
    ("H19 reassemble", &[StepId::AwayMachine, StepId::AwayFloor]),
    ("how it is left", &[StepId::Leave]),
    ("fault and interruption", &[StepId::LookAgain, StepId::LeaveOut]),
];

const COLD: &[StepId] = &[
    StepId::Match,
    StepId::HeatOff,
    StepId::OilTemp,
    StepId::Container,
    StepId::EmptyByHand,
    StepId::PourBack,
    StepId::Pouring,
    StepId::Level,
    StepId::Leave,
];

fn has(steps: &[Step], id: StepId) -> bool {
    steps.iter().any(|s| s.id == id)
}

#[test]
fn every_step_of_the_safety_notes_is_in_the_tables_of_every_machine() {
    let t = Tables::REAL;
    for run in [t.nozzle, t.drain, t.built_in] {
        for (name, ids) in KEPT {
            for id in *ids {
                let found = [t.ready, run, t.again, t.away].iter().any(|table| has(table, *id));
                assert!(found, "{name}: {} is in no table", id.key());
            }
        }
        let connect = run.iter().find(|s| s.id == StepId::Connect).unwrap();
        assert!(
            connect.holds.contains(&Hold::WarmUp),
            "H4 warm-up stands before the draw"
        );
    }
    for id in COLD {
        assert!(has(t.hand, *id), "{} is missing by hand", id.key());
    }
}

#[test]
fn heat_goes_off_before_anybody_leans_over_the_oil() {
    let t = Tables::REAL;
    for run in [t.nozzle, t.drain, t.built_in, t.hand] {
        let at = |id| run.iter().position(|s| s.id == id).unwrap();
        assert!(at(StepId::HeatOff) < at(StepId::Scrape) && at(StepId::Scrape) < at(StepId::Skim));
    }
}
