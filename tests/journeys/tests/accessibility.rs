//! Every screen and every step looked at closely: axe-core, light and dark, at the usual text size and twice that, and
//! the sizes promised for a phone on the wall. None may be forgotten.

use journeys::{
    Known, Look, Outcome, Phone, Rest, SCREENS, SMALL, Sight, TALL, Walker, journey, journey_on, kitchen_with,
    no_complaints, none_forgotten, until,
};
use panward::domain::facts::setup::OutBy;
use panward::domain::facts::trouble::TroubleKind;
use panward::domain::setting_up::Subject;
use std::collections::BTreeSet;

/// Every address of a screen: one, or one for each thing that can be set up.
async fn addresses(phone: &Phone, screen: &Known) -> Outcome<Vec<String>> {
    let head = screen.head;
    Ok(match screen.rest {
        Rest::Nothing => vec![head.to_owned()],
        Rest::Pan => {
            let link = phone.address_of("pan-1").await?;
            vec![link.replacen("pan/", &format!("{head}/"), 1)]
        }
        Rest::Thing => Subject::ALL
            .iter()
            .map(|subject| format!("{head}/{}/{:032x}", subject.key(), 1))
            .collect(),
    })
}

/// Visits every screen by its address.
async fn each_screen(phone: &mut Phone, mut look: impl AsyncFnMut(&mut Phone, &Known, &str) -> Outcome) -> Outcome {
    phone.go("today").await?;
    let mut all = Vec::new();
    for screen in SCREENS {
        all.push((screen, addresses(phone, screen).await?));
    }
    for (screen, addresses) in all {
        for address in addresses {
            phone.go(&address).await?;
            phone.settled().await?;
            look(phone, screen, &address).await?;
        }
    }
    Ok(())
}

const fn is_job(screen: &Known) -> bool {
    matches!(
        screen.head.as_bytes(),
        b"filter" | b"light-up" | b"lock-up" | b"oil-change" | b"boil-out" | b"waste"
    )
}

#[test]
fn no_screen_is_forgotten() -> Outcome {
    none_forgotten()
}

#[tokio::test]
async fn every_screen_keeps_its_promises() -> Outcome {
    journey_on("every_screen", TALL, async |stage| {
        let mut all = Vec::new();
        stage.evening().await?;
        all.extend(stage.phone.complaints("first, before anything", Look::SCREEN).await?);
        stage.demo().await?;
        each_screen(&mut stage.phone, async |phone, screen, address| {
            let look = if is_job(screen) { Look::STEP } else { Look::SCREEN };
            all.extend(phone.complaints(address, look).await?);
            Ok(())
        })
        .await?;
        no_complaints(&all)
    })
    .await
}

#[tokio::test]
async fn jobs_rhythms_and_days_closed_keep_their_promises_opened() -> Outcome {
    journey_on("rhythm_opened", TALL, async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let mut all = Vec::new();
        let (pan, other) = (phone.address_of("pan-1").await?, phone.address_of("pan-2").await?);
        phone.go(&pan).await?;
        phone.tap(&other.replacen("pan/", "job-", 1)).await?;
        phone.see("job-swap").await?;
        all.extend(phone.complaints("another job, chosen", Look::SCREEN).await?);
        phone.tap("job-swap").await?;
        phone.see("job-own").await?;
        all.extend(phone.complaints("another job, taken", Look::SCREEN).await?);
        phone.go(&pan.replacen("pan/", "edit/pan/", 1)).await?;
        for by in ["sessions", "weekdays"] {
            phone.tap(&format!("rhythm-by-{by}")).await?;
            phone.see(&format!("rhythm-{by}")).await?;
            all.extend(phone.complaints(&format!("filtered by {by}"), Look::SCREEN).await?);
        }
        phone.go("office").await?;
        phone.tap("close-days").await?;
        all.extend(phone.complaints("days to close, none chosen", Look::SCREEN).await?);
        no_complaints(&all)
    })
    .await
}

#[tokio::test]
async fn every_section_of_a_pans_page_keeps_its_promises_opened() -> Outcome {
    journey_on("pan_opened", TALL, async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let pan = phone.address_of("pan-1").await?;
        phone.go(&pan).await?;
        for id in [
            "what-if-open",
            "try-temp-more",
            "why-level-open",
            "why-days-open",
            "why-chance-open",
            "why-score-open",
            "forecast-table-open",
        ] {
            phone.tap(id).await?;
        }
        phone.see("tried").await?;
        no_complaints(&phone.complaints("a pan's page, opened", Look::SCREEN).await?)
    })
    .await
}

/// Walks on until `there`, looking closely at each sight that is new.
async fn inspect(
    phone: &mut Phone,
    walker: &Walker,
    (seen, all): (&mut BTreeSet<String>, &mut Vec<String>),
    there: impl Fn(&Sight) -> bool,
) -> Outcome<Sight> {
    walker
        .walk(phone, there, async |phone, sight| {
            let name = sight.name();
            if seen.insert(name.clone()) {
                all.extend(phone.complaints(&name, Look::STEP).await?);
            }
            Ok(())
        })
        .await
}

#[tokio::test]
async fn every_step_of_a_filter_job_keeps_its_promises() -> Outcome {
    journey_on("every_step", TALL, async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let phone = &mut stage.phone;
        let walker = Walker::new();
        let (mut seen, mut all) = (BTreeSet::new(), Vec::new());
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        inspect(phone, &walker, (&mut seen, &mut all), |sight| sight.at("choose")).await?;
        for part in ["with-wipe", "with-samples"] {
            phone.tap(part).await?;
        }
        phone.press("begin-1").await?;
        let cold = walker.clone().types("oil_dc", "60");
        inspect(phone, &cold, (&mut seen, &mut all), |sight| sight.at("refused")).await?;
        phone.press("refusal-back").await?;
        inspect(phone, &walker, (&mut seen, &mut all), |sight| sight.at("out.draw")).await?;
        // The pages beside the way: STOP with its make-safe lines, what may be wrong, the look again.
        phone.press("stop").await?;
        all.extend(phone.complaints("stopped", Look::STEP).await?);
        phone.press("something-wrong").await?;
        all.extend(phone.complaints("faults", Look::STEP).await?);
        phone.press("back").await?;
        phone.press("safe-now").await?;
        inspect(phone, &walker, (&mut seen, &mut all), |sight| sight.at("choose")).await?;
        // Nothing goes wrong with the next: its way back has every step there is.
        for part in ["with-wipe", "with-samples"] {
            phone.tap(part).await?;
        }
        phone.press("begin-2").await?;
        inspect(phone, &walker, (&mut seen, &mut all), |sight| sight.at("choose")).await?;
        phone.press("put-away").await?;
        inspect(phone, &walker, (&mut seen, &mut all), |sight| sight.has("screen-today")).await?;
        println!("{} sights", seen.len());
        no_complaints(&all)
    })
    .await
}

#[tokio::test]
async fn every_step_of_the_day_keeps_its_promises() -> Outcome {
    journey_on("every_step_of_the_day", TALL, async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let walker = Walker::new().picks("HL");
        let (mut seen, mut all) = (BTreeSet::new(), Vec::new());
        phone.go("light-up").await?;
        phone.press("person-NS").await?;
        all.extend(phone.complaints("who stands beside", Look::STEP).await?);
        inspect(phone, &walker, (&mut seen, &mut all), |sight| sight.at("pans")).await?;
        for (pan, walker) in [
            ("1", walker.clone()),
            ("2", walker.clone().says("level", "below")),
            ("3", walker.clone().says("melt", "solid")),
        ] {
            phone.press(&format!("light-{pan}")).await?;
            inspect(phone, &walker, (&mut seen, &mut all), |sight| sight.at("pans")).await?;
        }
        phone.pass(5 * 60_000 + 1_000).await?;
        phone.press("light-3").await?;
        inspect(
            phone,
            &walker.clone().says("melt", "all_liquid"),
            (&mut seen, &mut all),
            |sight| sight.at("pans"),
        )
        .await?;
        phone.go("lock-up").await?;
        walker.to_step(phone, "lock.scraps").await?;
        phone.number("pad-heap_dc", "55").await?;
        all.extend(phone.complaints("scraps still hot", Look::STEP).await?);
        inspect(phone, &walker, (&mut seen, &mut all), |sight| sight.at("wait")).await?;
        phone.pass(10 * 60_000 + 1_000).await?;
        until("the second probe to be asked for", async || {
            Ok((!phone.sight().await?.at("wait")).then_some(()))
        })
        .await?;
        inspect(phone, &walker, (&mut seen, &mut all), |sight| sight.has("screen-today")).await?;
        println!("{} sights", seen.len());
        no_complaints(&all)
    })
    .await
}

/// Looks closely at a page that is not a step, and takes its picture on both phones.
async fn inspect_page(phone: &mut Phone, name: &str, all: &mut Vec<String>) -> Outcome {
    all.extend(phone.complaints(name, Look::STEP).await?);
    shoot(phone, name).await
}

async fn shoot(phone: &mut Phone, name: &str) -> Outcome {
    for (screen, wide) in [(SMALL, 360), (TALL, 412)] {
        phone.fit(screen).await?;
        phone.shot(&format!("care-{name}-{wide}")).await?;
    }
    Ok(())
}

/// The same as [`inspect`], with a picture of each sight.
async fn inspect_and_shoot(
    phone: &mut Phone,
    walker: &Walker,
    (seen, all): (&mut BTreeSet<String>, &mut Vec<String>),
    there: impl Fn(&Sight) -> bool,
) -> Outcome<Sight> {
    walker
        .walk(phone, there, async |phone, sight| {
            let name = sight.name();
            if seen.insert(name.clone()) {
                inspect_page(phone, &name, all).await?;
            }
            Ok(())
        })
        .await
}

#[tokio::test]
async fn every_step_of_an_oil_change_keeps_its_promises() -> Outcome {
    journey_on("every_step_of_an_oil_change", TALL, async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let walker = Walker::new()
            .picks("HL")
            .says("out_way", "cut_out")
            .types("oil_dc", "25");
        let (mut seen, mut all) = (BTreeSet::new(), Vec::new());
        let pan = phone.address_of("pan-3").await?;
        phone.go(&pan).await?;
        phone.press("pan-oil_change").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("change.how")).await?;
        phone.press("stop").await?;
        inspect_page(phone, "oil-change-stopped", &mut all).await?;
        phone.press("somebody-else").await?;
        inspect_page(phone, "oil-change-who", &mut all).await?;
        phone.press("person-HL").await?;
        let hot = walker.clone().types("oil_dc", "90").says("carry", "alone");
        inspect_and_shoot(phone, &hot, (&mut seen, &mut all), |sight| sight.at("refused")).await?;
        phone.press("refusal-back").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("out.container")).await?;
        let alone = walker.clone().says("carry", "alone");
        inspect_and_shoot(phone, &alone, (&mut seen, &mut all), |sight| sight.at("load")).await?;
        phone.number("pad-load", "9").await?;
        inspect_page(phone, "too-heavy", &mut all).await?;
        phone.press("refusal-back").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("count")).await?;
        phone.tap("add-reason-0").await?;
        phone.number("add-pad", "30").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("change.fat")).await?;
        phone.tap("other-fats").await?;
        inspect_page(phone, "other-fats", &mut all).await?;
        phone.press("fat-palm").await?;
        let over = inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("change.pack")).await?;
        assert!(over.has("other-fat"), "{over:?}");
        phone.press("other-fat").await?;
        phone.press("fat-own").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("count")).await?;
        println!("{} sights", seen.len());
        no_complaints(&all)
    })
    .await
}

#[tokio::test]
async fn every_step_of_a_boil_out_keeps_its_promises() -> Outcome {
    journey_on("every_step_of_a_boil_out", TALL, async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let walker = Walker::new().picks("HL");
        let (mut seen, mut all) = (BTreeSet::new(), Vec::new());
        let pan = phone.address_of("pan-1").await?;
        phone.go(&pan).await?;
        phone.press("pan-boil_out").await?;
        phone.press("person-HL").await?;
        inspect_page(phone, "boil-out-over-oil", &mut all).await?;
        phone.press("refusal-back").await?;
        phone.go(&pan.replacen("pan/", "add/", 1)).await?;
        phone.tap("add-kind-oil_change").await?;
        phone.tap("add-reason-0").await?;
        phone.tap("add-after-empty").await?;
        phone.tap("add-save").await?;
        phone.see("pan-is-empty").await?;
        phone.press("pan-boil_out").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("boil")).await?;
        phone.press("look-now").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("boil")).await?;
        phone.pass(6 * 60_000).await?;
        phone.sees("pan-empty", "LOOK NOW").await?;
        phone.sees("boil-clock", "late").await?;
        inspect_page(phone, "boil-look-due", &mut all).await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("boil")).await?;
        phone.press("heat-off").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("boil.cool")).await?;
        phone.press("heat-again").await?;
        inspect_page(phone, "heat-again", &mut all).await?;
        phone.press("leave-off").await?;
        phone.press("stop").await?;
        inspect_page(phone, "boil-out-stopped", &mut all).await?;
        phone.press("leave-pan").await?;
        inspect_page(phone, "boil-out-leave", &mut all).await?;
        phone.press("stop").await?;
        phone.press("back").await?;
        phone.go("today").await?;
        phone.press("begin").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("done")).await?;
        println!("{} sights", seen.len());
        no_complaints(&all)
    })
    .await
}

#[tokio::test]
async fn an_empty_pan_stands_on_every_screen_beside_fire_and_burn() -> Outcome {
    journey_on("pan_empty_everywhere", TALL, async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let phone = &mut stage.phone;
        let walker = Walker::new();
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        walker.to_step(phone, "choose").await?;
        phone.press("begin-1").await?;
        walker.to_step(phone, "out.remainder").await?;
        phone.press("stop").await?;
        phone.press("safe-now").await?;
        phone.press("leave-out").await?;
        walker.until(phone, |sight| !sight.at("again.leave_out")).await?;
        let mut all = Vec::new();
        each_screen(phone, async |phone, screen, address| {
            for id in ["fire", "burn", "pan-empty"] {
                if phone.look(id).await?.is_none() {
                    all.push(format!("{address} shows no {id}"));
                }
            }
            let look = Look {
                axe: false,
                ..if is_job(screen) { Look::STEP } else { Look::SCREEN }
            };
            all.extend(phone.complaints(&format!("{address} with an empty pan"), look).await?);
            Ok(())
        })
        .await?;
        no_complaints(&all)
    })
    .await
}

#[tokio::test]
async fn what_is_wrong_and_the_helpers_card_keep_their_promises() -> Outcome {
    journey_on("what_is_wrong", TALL, async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let phone = &mut stage.phone;
        let mut all = Vec::new();
        phone.tap("wrong").await?;
        phone.see("card-wrong").await?;
        all.extend(phone.complaints("what is wrong", Look::SCREEN).await?);
        shots(phone, "wrong-list").await?;
        for what in TroubleKind::ALL {
            let key = what.key();
            phone.tap(&format!("wrong-{key}")).await?;
            phone.see("wrong-name").await?;
            all.extend(phone.complaints(&format!("wrong: {key}"), Look::SCREEN).await?);
            if [TroubleKind::PowerCut, TroubleKind::CutOut].contains(what) {
                phone.tap("wrong-so-1").await?;
                phone.see("wrong-looked-done").await?;
                all.extend(phone.complaints(&format!("wrong, said: {key}"), Look::SCREEN).await?);
                shots(phone, &format!("wrong-{key}")).await?;
            }
            phone.tap("wrong-others").await?;
        }
        phone.tap("card-wrong-close").await?;
        assert!(phone.sight().await?.has("wrong-stands"), "Today says nothing of it");
        all.extend(phone.complaints("Today, something wrong", Look::SCREEN).await?);
        shots(phone, "today-wrong").await?;
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        Walker::new().to_step(phone, "ready.kit").await?;
        shots(phone, "step-wrong").await?;
        phone.tap("helper").await?;
        phone.see("card-helper").await?;
        all.extend(phone.complaints("the helper's card", Look::SCREEN).await?);
        shots(phone, "helper").await?;
        phone.tap("card-helper-close").await?;
        let sight = phone.sight().await?;
        assert!(sight.at("ready.kit"), "the helper's card answered something");
        no_complaints(&all)
    })
    .await
}

async fn shots(phone: &mut Phone, name: &str) -> Outcome {
    for (screen, wide) in [(SMALL, 360), (TALL, 412)] {
        phone.fit(screen).await?;
        phone.shot(&format!("{name}-{wide}")).await?;
    }
    Ok(())
}

#[tokio::test]
async fn the_cards_keep_their_promises() -> Outcome {
    journey("the_cards", async |stage| {
        stage.evening().await?;
        let mut all = Vec::new();
        for id in ["fire", "burn"] {
            stage.phone.tap(id).await?;
            stage.phone.see(&format!("card-{id}")).await?;
            all.extend(stage.phone.complaints(&format!("the {id} card"), Look::SCREEN).await?);
            stage.phone.tap(&format!("card-{id}-close")).await?;
        }
        no_complaints(&all)
    })
    .await
}

/// How a page of first set-up is answered; each is left by its one way on.
struct Page {
    typed: &'static [(&'static str, &'static str)],
    tapped: &'static [&'static str],
}

const SET_UP: &[Page] = &[
    Page {
        typed: &[("kitchen-name", "Quay Street Fryer")],
        tapped: &[],
    },
    Page {
        typed: &[("initials", "AB")],
        tapped: &["adult-yes", "vouched"],
    },
    Page {
        typed: &[("pan-full", "20"), ("pan-min", "15")],
        tapped: &[],
    },
    Page {
        typed: &[],
        tapped: &["pan-fat-rapeseed", "food-gluten", "in-it-fresh"],
    },
    Page {
        typed: &[("tank", "60")],
        tapped: &["out-by-nozzle", "heater-no"],
    },
    Page {
        typed: &[],
        tapped: &[],
    },
];

#[tokio::test]
async fn every_page_of_a_first_set_up_keeps_its_promises() -> Outcome {
    journey_on("every_page_of_set_up", TALL, async |stage| {
        stage.phone.set_zone("Europe/London").await?;
        stage.evening().await?;
        let mut all = Vec::new();
        let phone = &mut stage.phone;
        phone.press("start-set-up").await?;
        for (n, Page { typed, tapped }) in (1..).zip(SET_UP) {
            for (id, text) in *typed {
                phone.enter(id, text).await?;
            }
            for id in *tapped {
                phone.tap(id).await?;
            }
            phone.settled().await?;
            let name = format!("set-up-{n}");
            all.extend(phone.complaints(&name, Look::SCREEN).await?);
            for (screen, wide) in [(SMALL, 360), (TALL, 412)] {
                phone.fit(screen).await?;
                phone.shot(&format!("{name}-{wide}")).await?;
            }
            phone.press("form-next").await?;
        }
        phone.see("set-up-ready").await?;
        no_complaints(&all)
    })
    .await
}
