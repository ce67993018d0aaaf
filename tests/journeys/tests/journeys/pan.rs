//! A pan's page: what is tried on its oil and taken back, and a reading that does not fit.

use journeys::{Outcome, Phone, fault, journey};

/// The figures in front of the word "day": both ends of a range, an open end counted as two months.
async fn days(phone: &Phone, id: &str) -> Outcome<Vec<u32>> {
    let words = phone.see(id).await?;
    let before = words.split("day").next().unwrap_or_default();
    let figures = before
        .split(|c: char| !c.is_ascii_digit())
        .filter_map(|n| n.parse().ok());
    let open = before.contains('+').then_some(61);
    let figures: Vec<u32> = figures.chain(open).collect();
    if figures.is_empty() {
        fault(format!("{id} names no days: {words}"))
    } else {
        Ok(figures)
    }
}

/// Turns a control by so many steps.
async fn turn(phone: &mut Phone, control: &str, steps: usize) -> Outcome {
    for _ in 0..steps {
        phone.tap(control).await?;
    }
    Ok(())
}

#[tokio::test]
async fn what_if_is_drawn_at_once_and_never_logged() -> Outcome {
    journey("what_if", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        phone.go("today").await?;
        let pan = phone.address_of("pan-2").await?;
        phone.go(&pan).await?;
        phone.tap("what-if-open").await?;
        let now = days(phone, "now").await?;
        let drawing = "return document.querySelector('[data-testid=forecast]').outerHTML";
        let as_it_is = phone.run(drawing, &[]).await?;

        turn(phone, "try-temp-more", 15).await?;
        phone.see("chips-law").await?;
        phone.sees("now", "change").await?;
        phone.sees("tried", "change").await?;
        let hotter = days(phone, "tried").await?;
        assert!(
            hotter.iter().sum::<u32>() < now.iter().sum(),
            "{hotter:?} against {now:?}"
        );
        assert_eq!(days(phone, "now").await?, now, "what is stays beside what is tried");
        assert_ne!(
            phone.run(drawing, &[]).await?,
            as_it_is,
            "it is drawn with what is tried"
        );
        for (size, dark) in [("light", false), ("dark", true)] {
            phone.set_dark(dark).await?;
            phone.shot(&format!("what-if-{size}")).await?;
        }
        phone.set_dark(false).await?;

        phone.tap("as-it-is").await?;
        phone.gone("tried").await?;
        turn(phone, "try-part-more", 15).await?;
        let changed = days(phone, "tried").await?;
        assert!(
            changed.iter().sum::<u32>() > now.iter().sum(),
            "{changed:?} against {now:?}"
        );
        phone.tap("as-it-is").await?;
        phone.gone("tried").await?;
        assert_eq!(phone.run(drawing, &[]).await?, as_it_is);
        assert_eq!(
            stage.export().await?.entries().len(),
            before,
            "nothing tried is written"
        );
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_reading_that_does_not_fit_is_asked_about_saved_and_shown() -> Outcome {
    journey("does_not_fit", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        phone.go("today").await?;
        let pan = phone.address_of("pan-1").await?;
        phone.go(&pan).await?;
        phone.tap("log-something").await?;
        phone.tap("add-kind-reading").await?;
        let type_it = async |phone: &mut Phone| {
            for key in ["4", "8"] {
                phone.tap(&format!("add-pad-{key}")).await?;
            }
            phone.tap("add-pad-accept").await
        };
        type_it(phone).await?;
        phone.sees("add-doubt", "Same pan? Probe clean?").await?;
        phone.shot("does-not-fit-asked").await?;
        phone.tap("add-doubt-no").await?;
        phone.see("add-pad-value").await?;
        phone.tap("add-pad-clear").await?;
        type_it(phone).await?;
        phone.sees("add-doubt", "Expected").await?;
        phone.tap("add-doubt-yes").await?;
        phone.sees("contradicting", "48").await?;
        phone.sees("measure-next", "Read it again now").await?;
        phone.shot("does-not-fit-kept").await?;
        let export = stage.export().await?;
        let new = export.since(before);
        assert!(
            new.iter().any(|entry| entry["kind"] == "reading"),
            "it is kept: {new:?}"
        );
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_part_change_moves_the_forecast_and_parked_oil_is_said() -> Outcome {
    journey("part_change", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        phone.go("today").await?;
        let pan = phone.address_of("pan-2").await?;
        phone.go(&pan).await?;
        let hero = phone.see("pan-hero").await?;
        phone.tap("what-if-open").await?;
        let was = days(phone, "now").await?;

        phone.tap("log-something").await?;
        phone.tap("add-kind-part_change").await?;
        phone.tap("add-unit-l").await?;
        for key in ["1", "2"] {
            phone.tap(&format!("add-pad-{key}")).await?;
        }
        phone.tap("add-pad-accept").await?;
        phone.see("pan-hero").await?;
        phone.tap("what-if-open").await?;
        let is = days(phone, "now").await?;
        assert!(is.iter().sum::<u32>() > was.iter().sum(), "{is:?} against {was:?}");
        assert_ne!(phone.see("pan-hero").await?, hero, "the pan says so too");
        phone.shot("part-change").await?;

        phone.tap("log-something").await?;
        phone.tap("add-kind-move").await?;
        phone.shot("move-oil").await?;
        let into = "return [...document.querySelectorAll('[data-testid^=add-to-into]')][0]?.dataset.testid ?? ''";
        let into = phone.run(into, &[]).await?;
        let into = into.as_str().unwrap_or_default().to_owned();
        phone.tap(&into).await?;
        phone.tap("add-unit-l").await?;
        phone.tap("add-pad-5").await?;
        phone.tap("add-pad-accept").await?;
        phone.sees("pan-parked", "5").await?;
        for (size, dark) in [("light", false), ("dark", true)] {
            phone.set_dark(dark).await?;
            phone.shot(&format!("parked-{size}")).await?;
        }
        phone.set_dark(false).await?;
        let export = stage.export().await?;
        let new = export.since(before);
        let kinds: Vec<_> = new.iter().map(|entry| (&entry["kind"], &entry["v"])).collect();
        assert!(new.iter().any(|entry| entry["kind"] == "part_change"), "{kinds:?}");
        assert!(
            new.iter().any(|entry| entry["kind"] == "move" && entry["v"] == 2),
            "{kinds:?}"
        );
        Ok(())
    })
    .await
}
