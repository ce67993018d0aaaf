//! When what is due and what a pan is for: another job for today, due by the session, not tonight, closed.

use journeys::{Outcome, Phone, SMALL, TALL, journey};
use serde_json::json;

const HOUR_MS: i64 = 3_600_000;

/// Two hours fried in a pan, logged by hand.
async fn worked(phone: &mut Phone, pan: &str) -> Outcome {
    phone.go(&pan.replacen("pan/", "add/", 1)).await?;
    phone.tap("add-kind-service").await?;
    phone.tap("add-pad-clear").await?;
    phone.tap("add-pad-2").await?;
    phone.tap("add-pad-accept").await?;
    phone.see("screen-pan").await?;
    phone.go("today").await.map(drop)
}

/// Says something of one pan that is due.
async fn say_of_pan_1(phone: &mut Phone, what: &str) -> Outcome {
    phone.tap("not-done").await?;
    phone.tap("not-done-pans-1").await?;
    phone.tap(what).await?;
    phone.gone("due-1").await
}

/// Chooses a day in a date field, as a phone's own calendar does.
async fn choose_day(phone: &Phone, id: &str, day: &str) -> Outcome {
    phone.find(id).await?;
    let script = "const field = document.querySelector(`[data-testid='${arguments[0]}']`);
        field.value = arguments[1];
        field.dispatchEvent(new Event('input', { bubbles: true }));";
    phone.run(script, &[json!(id), json!(day)]).await.map(drop)
}

async fn shots(phone: &mut Phone, name: &str) -> Outcome {
    for (screen, size) in [(TALL, "412x915"), (SMALL, "360x640")] {
        phone.fit(screen).await?;
        phone.shot(&format!("{name}-{size}")).await?;
    }
    phone.fit(TALL).await?;
    phone.set_dark(true).await?;
    phone.shot(&format!("{name}-dark")).await?;
    phone.set_dark(false).await
}

#[tokio::test]
async fn a_pan_on_chips_for_today_and_due_by_session() -> Outcome {
    journey("rhythm", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        phone.go("today").await?;
        let [first, second, third, free] = [
            phone.address_of("pan-1").await?,
            phone.address_of("pan-2").await?,
            phone.address_of("pan-3").await?,
            phone.address_of("pan-4").await?,
        ];
        let job_of = |pan: &str| pan.replacen("pan/", "job-", 1);

        // The gluten-free pan takes no batter, and says what would have to come first.
        phone.go(&free).await?;
        phone.tap(&job_of(&first)).await?;
        phone.tap("job-swap").await?;
        phone.sees("job", "log the promise as lost first").await?;
        shots(phone, "job-refused").await?;
        phone.tap("job-lose").await?;
        phone.see("add-kind-claim_lost").await?;

        // Pan 2 on the chips of pan 4, in two touches, and back.
        phone.go(&second).await?;
        phone.see("job-now").await?;
        phone.forget_touches();
        phone.tap(&job_of(&free)).await?;
        shots(phone, "job-chosen").await?;
        phone.tap("job-alone").await?;
        assert_eq!(phone.touches(), 2);
        phone.sees("job-now", "Pan 4's").await?;
        phone.go("today").await?;
        phone.sees("job-2", "pan 4's job").await?;
        phone.go(&second).await?;
        phone.tap("job-own").await?;
        phone.gone("job-own").await?;
        phone.tap(&job_of(&third)).await?;
        phone.tap("job-swap").await?;
        phone.sees("job-now", "Pan 3's").await?;
        phone.go("today").await?;
        phone.sees("job-2", "pan 3's job").await?;
        phone.sees("job-3", "pan 2's job").await?;

        // Pan 1 after each session.
        phone.go(&first.replacen("pan/", "edit/pan/", 1)).await?;
        phone.tap("rhythm-by-sessions").await?;
        phone.enter("rhythm-sessions", "1").await?;
        phone.shot("rhythm-form").await?;
        phone.tap("form-next").await?;
        phone.see("screen-office").await?;
        worked(phone, &first).await?;
        phone.see("due-1").await?;
        say_of_pan_1(phone, "unguided").await?;
        phone.pass(HOUR_MS).await?;
        worked(phone, &first).await?;
        phone.see("due-1").await?;

        // Not tonight: moved to tomorrow, and again only with a word.
        say_of_pan_1(phone, "reason-1").await?;
        phone.pass(20 * HOUR_MS).await?;
        phone.sees("moved-1", "moved from yesterday").await?;
        worked(phone, &first).await?;
        phone.see("due-1").await?;
        shots(phone, "moved").await?;
        phone.tap("not-done").await?;
        phone.sees("again", "second night in a row").await?;
        phone.shot("not-tonight-again").await?;
        phone.tap("not-done-sheet-close").await?;

        let export = stage.export().await?;
        let new = export.since(before);
        let of = |kind: &str| new.iter().filter(|entry| entry["kind"] == kind).count();
        assert_eq!((of("pan_job"), of("pan"), of("run_noted")), (4, 1, 2), "{new:?}");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn closed_days_ask_nothing_and_are_opened_again() -> Outcome {
    journey("closed", async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        phone.go("today").await?;
        phone.see("next").await?;
        phone.go("office").await?;
        // The evening is that of Wednesday 10 June 2026.
        choose_day(phone, "closed-from", "2026-06-12").await?;
        phone.tap("close-days").await?;
        phone.sees("closed-days", "Choose both days").await?;
        choose_day(phone, "closed-to", "2026-06-11").await?;
        phone.tap("close-days").await?;
        phone.sees("closed-days", "before the first").await?;
        choose_day(phone, "closed-from", "2026-06-11").await?;
        choose_day(phone, "closed-to", "2026-06-24").await?;
        phone.enter("closed-why", "holiday").await?;
        phone.tap("close-days").await?;
        phone.sees("closed", "holiday").await?;
        shots(phone, "closed-office").await?;
        // Today waits for a word on last night alone, and for nothing else.
        phone.pass(14 * HOUR_MS).await?;
        phone.go("today").await?;
        phone.sees("next", "Closed until Thursday 25").await?;
        shots(phone, "closed-today").await?;
        phone.see("job-light_up").await?;
        phone.go("office").await?;
        phone.tap("open-again").await?;
        phone.gone("closed").await?;
        phone.go("today").await?;
        phone.sees("next", "Light-up").await
    })
    .await
}
