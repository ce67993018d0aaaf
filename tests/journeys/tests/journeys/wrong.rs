//! A day that goes wrong: the machine is down with set fat in the pan. It ends tagged, left to set, nothing carried.

use journeys::{Outcome, TALL, Walker, journey_on, saw};

#[tokio::test]
async fn machine_down_with_set_fat_ends_tagged_left_to_set_and_in_the_log() -> Outcome {
    journey_on("machine_down", TALL, async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        let walker = Walker::new().picks("HL").picks("Filter machine");
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        walker.until(phone, |sight| sight.at("choose")).await?;
        // Pan 3 holds dripping; its oil has not moved yet.
        phone.press("begin-3").await?;
        walker.to_step(phone, "out.connect").await?;
        phone.press("something-wrong").await?;
        phone.tap("wrong-machine_down").await?;
        phone.sees("card-wrong", "Never carry hot oil").await?;
        phone.tap("wrong-so-1").await?;
        for look in [
            "machine_plug-out",
            "tag-hung",
            "left-set",
            "lid-in_place",
            "carried-none",
        ] {
            phone.tap(&format!("looked-{look}")).await?;
        }
        phone.shot("machine-down-seen-412").await?;
        phone.tap("wrong-looked-done").await?;
        phone.gone("wrong-looked-done").await?;
        phone.tap("card-wrong-close").await?;
        phone.sees("wrong-stands", "down").await?;
        // The pan is given up: its oil never left it. No other pan is begun with that machine.
        phone.press("stop").await?;
        phone.press("give-up").await?;
        walker.until(phone, |sight| sight.at("ready.machine")).await?;
        phone.sees("machine-down", "not filtered").await?;
        // The hand kit is offered still; the machine is not.
        phone.sees("machine-1", "Hand kit").await?;
        phone.gone("machine-2").await?;
        phone.shot("machine-down-ready-412").await?;
        let export = stage.export().await?;
        let since = export.since(before);
        for (item, word) in [
            ("tag", "hung"),
            ("left", "set"),
            ("carried", "none"),
            ("machine_plug", "out"),
        ] {
            let of_trouble = since
                .iter()
                .filter(|e| e["kind"] == "trouble")
                .cloned()
                .collect::<Vec<_>>();
            assert!(saw(&of_trouble, item, word), "{item} {word} is not in the log");
        }
        let moved = since
            .iter()
            .any(|e| e["kind"] == "run" && e["body"]["place"] != "in_pan");
        assert!(!moved, "oil left its pan");
        assert!(
            since.iter().any(|e| e["body"]["left"] == "as_was"),
            "the pan was not given up"
        );

        // Mended, by somebody with a name: it is over, and offered again.
        let phone = &mut stage.phone;
        phone.go("today").await?;
        phone.tap("wrong").await?;
        phone.tap("wrong-machine_down").await?;
        phone.enter("mended-by", "A. Engineer").await?;
        phone.tap("wrong-over-done").await?;
        phone.tap("card-wrong-close").await?;
        phone.gone("wrong-stands").await?;
        let export = stage.export().await?;
        let named = export.since(before).iter().any(|e| e["body"]["text"] == "A. Engineer");
        assert!(named, "who mended it is not in the log");
        Ok(())
    })
    .await
}
