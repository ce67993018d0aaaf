//! What the guide does not let pass: oil outside its window, a cold machine, a clock that was moved, a stray touch.

use journeys::{Outcome, Phone, SMALL, Sight, TALL, Walker, fault, journey, journey_on, kitchen_with};
use panward::domain::facts::setup::OutBy;

const MINUTE_MS: i64 = 60_000;

fn choosing(sight: &Sight) -> bool {
    sight.at("choose")
}

/// From any screen to the choice of a pan, everything of Ready answered.
async fn choose(phone: &mut Phone, walker: &Walker) -> Outcome {
    phone.go("filter").await?;
    phone.press("begin-job").await?;
    walker.until(phone, choosing).await.map(drop)
}

/// Goes on until the guide refuses, reads why, and returns the words.
async fn refused(phone: &mut Phone, walker: &Walker) -> Outcome<String> {
    walker.to_step(phone, "refused").await?;
    let why = phone.see("refusal").await?;
    phone.press("refusal-back").await?;
    Ok(why)
}

#[tokio::test]
async fn pumps_nothing_outside_the_window_nor_before_the_machine_is_warm() -> Outcome {
    journey("early_pump", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        let walker = Walker::new().picks("HL").picks("Filter machine");
        choose(phone, &walker).await?;
        // Pan 3 holds dripping: its machine must have warmed for ten minutes in June.
        phone.press("begin-3").await?;
        let cold = walker.clone().types("oil_dc", "99");
        let why = refused(phone, &cold).await?;
        assert!(why.contains("100"), "{why}");
        let hot = walker.clone().types("oil_dc", "181");
        let why = refused(phone, &hot).await?;
        assert!(why.contains("180"), "{why}");
        refused(phone, &walker).await?;
        phone.pass(9 * MINUTE_MS).await?;
        refused(phone, &walker).await?;
        let early = stage.export().await?;
        let pumped = early.since(before).iter().any(|entry| entry["body"]["event"] == "pump");
        assert!(!pumped, "the pump was let run before its holds stood");

        let phone = &mut stage.phone;
        phone.pass(2 * MINUTE_MS).await?;
        phone.go("filter").await?;
        walker.to_step(phone, "out.draw").await?;
        let late = stage.export().await?;
        let pumped = late.since(before).iter().any(|entry| entry["body"]["event"] == "pump");
        assert!(pumped, "a warm machine and oil in its window let the pump run");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn asks_about_a_clock_that_was_moved_and_starts_the_wait_again_on_a_no() -> Outcome {
    journey("moved_clock", async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let walker = Walker::new().picks("HL").picks("Filter machine");
        choose(phone, &walker).await?;
        phone.see("warm-up").await?;
        phone.pass(4 * MINUTE_MS).await?;
        phone.sees("warm-up", "5:").await?;

        phone.set_wall_by(11 * MINUTE_MS).await?;
        phone.see("answer-clock-no").await?;
        phone.press("answer-clock-no").await?;
        phone.sees("warm-up", "9:").await?;

        phone.set_wall_by(11 * MINUTE_MS).await?;
        phone.see("answer-clock-yes").await?;
        phone.press("answer-clock-yes").await?;
        phone.sees("warm-up", "Machine warm").await
    })
    .await
}

#[tokio::test]
async fn looks_again_after_a_reload_while_the_pump_runs() -> Outcome {
    journey("reload_mid_draw", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let phone = &mut stage.phone;
        let walker = Walker::new();
        choose(phone, &walker).await?;
        phone.press("begin-1").await?;
        walker.to_step(phone, "out.draw").await?;
        phone.pass(40_000).await?;
        phone.sees("clock", "0:4").await?;
        phone.reload().await?;
        let first = phone.settled().await?;
        assert!(
            first.at("again.look"),
            "after a reload the guide goes on with {:?}",
            first.step
        );
        // Oil in both: what is left in the pan says whether the draw goes on.
        let split = walker.clone().says("place", "split");
        split.to_step(phone, "out.remainder").await?;
        walker
            .clone()
            .says("remainder", "oil")
            .to_step(phone, "out.draw")
            .await?;
        // STOP is the other way, and leads the oil back, which nothing may refuse.
        phone.press("stop").await?;
        phone.press("safe-now").await?;
        split.to_step(phone, "return.give_back").await?;
        walker.to_step(phone, "choose").await.map(drop)
    })
    .await
}

#[tokio::test]
async fn asks_twice_for_oil_that_is_said_to_be_elsewhere_than_the_log_has_it() -> Outcome {
    journey_on("seen_twice", SMALL, async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        let walker = Walker::new();
        choose(phone, &walker).await?;
        phone.press("begin-1").await?;
        walker.to_step(phone, "return.rinse").await?;
        phone.reload().await?;
        walker.until(phone, |sight| sight.has("answer-place-in_pan")).await?;
        // By rote, and put right on the second look: neither is kept, and the place is asked anew.
        let again = phone.press("answer-place-in_pan").await?;
        assert!(again.has("answer-place_again-in_pan"), "{}", again.name());
        phone.sees("say", "The log says otherwise").await?;
        let anew = phone.press("answer-place_again-in_machine").await?;
        assert!(
            anew.has("answer-place-in_machine") && !anew.has("go-on"),
            "{}",
            anew.name()
        );
        phone.press("answer-place-in_machine").await?;
        let next = phone.press("go-on").await?;
        assert!(next.at("return.rinse"), "{}", next.name());
        // Said twice, it is believed, and the log holds both looks.
        phone.reload().await?;
        let in_pan = walker.clone().says("place", "in_pan");
        in_pan.to_step(phone, "return.tank").await?;
        let export = stage.export().await?;
        let looks: Vec<_> = export.since(before).iter().map(|entry| &entry["body"]).collect();
        let looks: Vec<_> = looks.iter().filter(|body| body["event"] == "reverified").collect();
        let said = |item: &str| -> Vec<_> { looks.iter().map(|body| body["evidence"][item].as_str()).collect() };
        assert_eq!(said("place"), [Some("in_machine"), Some("in_pan")]);
        assert_eq!(said("place_again"), [None, Some("in_pan")]);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn ignores_stray_touches_on_a_hold() -> Outcome {
    journey("stray_touches", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let phone = &mut stage.phone;
        let walker = Walker::new();
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        walker.until(phone, |sight| sight.has("answer-gloves-worn")).await?;
        // The second of two fast touches comes within the time in which a new screen takes none.
        phone.double_tap("answer-gloves-worn").await?;
        let next = phone.settled().await?;
        assert!(
            next.has("answer-face-worn"),
            "a double tap answered two questions: {}",
            next.name()
        );
        // A finger that comes down on one answer and leaves on another gives neither.
        phone.drag("answer-face-missing", "answer-face-worn").await?;
        let still = phone.settled().await?;
        if !still.has("answer-face-worn") {
            return fault(format!("a wet drag answered a question: {}", still.name()));
        }
        walker.to_step(phone, "ready.floor").await.map(drop)
    })
    .await
}

#[tokio::test]
async fn a_draw_of_a_moment_is_remarked_upon_where_the_rest_is_looked_at() -> Outcome {
    journey_on("short_draw", SMALL, async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let phone = &mut stage.phone;
        let walker = Walker::new();
        choose(phone, &walker).await?;
        phone.press("begin-1").await?;
        walker.to_step(phone, "out.draw").await?;
        let rest = phone.press("answer-pump-off").await?;
        assert!(rest.at("out.remainder"), "{rest:?}");
        phone.sees("step", "a pan mostly takes 1").await?;
        phone.shot("short-draw").await.map(drop)
    })
    .await
}

#[tokio::test]
async fn a_look_given_before_is_asked_with_its_neighbours_or_one_by_one() -> Outcome {
    journey_on("looks_again", SMALL, async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let phone = &mut stage.phone;
        let walker = Walker::new();
        choose(phone, &walker).await?;
        for part in ["with-wipe", "with-samples"] {
            phone.tap(part).await?;
        }
        phone.press("begin-1").await?;
        let first = walker.to_step(phone, "out.heat_off").await?;
        assert!(!first.has("answer-together"), "{first:?}");
        let wipe = walker.to_step(phone, "return.wipe").await?;
        assert!(wipe.has("answer-together") && !wipe.awake("go-on"), "{wipe:?}");
        // One answer and Go on, or each sign by itself.
        let apart = phone.press("one-by-one").await?;
        assert!(apart.has("answer-knob-off") && apart.has("answer-knob-on"), "{apart:?}");
        let compared = walker.to_step(phone, "return.compare").await?;
        assert!(compared.has("rare-compared-none"), "{compared:?}");
        phone.shot("compare-360").await?;
        let back = |sight: &Sight| sight.at("return.give_back") && sight.has("answer-together");
        walker.until(phone, back).await?;
        phone.shot("give-back-360").await?;
        phone.fit(TALL).await?;
        phone.shot("give-back-412").await.map(drop)
    })
    .await
}
