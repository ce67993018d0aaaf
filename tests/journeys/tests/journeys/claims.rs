//! A promise lost from Today in one touch, and restored on what the log knows and somebody sees.

use journeys::{Outcome, Phone, SMALL, TALL, fault, journey};

/// A picture of the screen shown, light and dark, large and small, and with text at twice its size.
async fn pictures(phone: &mut Phone, name: &str) -> Outcome {
    phone.settled().await?;
    phone.shot(&format!("{name}-412x915-light")).await?;
    phone.set_dark(true).await?;
    phone.shot(&format!("{name}-412x915-dark")).await?;
    phone.set_dark(false).await?;
    phone.fit(SMALL).await?;
    phone.shot(&format!("{name}-360x640-light")).await?;
    phone.fit(TALL).await?;
    phone.set_text_size(200).await?;
    phone.shot(&format!("{name}-412x915-text-200")).await?;
    phone.set_text_size(100).await?;
    Ok(())
}

#[tokio::test]
async fn a_claim_lost_from_today_is_restored_only_once_the_pan_was_emptied_and_filled() -> Outcome {
    journey("claim_lost", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        phone.go("today").await?;
        let pan = phone.address_of("pan-4").await?;
        let kept = pan.replacen("pan/", "kept/", 1);
        phone.tap("lose-4-gluten_free").await?;
        phone.sees("tell", "Pan 4 is not gluten-free now.").await?;
        phone.see("undo-button").await?;
        phone.tap("lost-why-1").await?;
        phone.sees("lost-why", "Battered piece in it").await?;
        pictures(phone, "kept-lost").await?;

        phone.tap("restore-gluten_free").await?;
        phone.sees("need-emptied", "missing").await?;
        phone.gone("restore-save").await?;

        phone.go("today").await?;
        phone.sees("is-lost-4-gluten_free", "Gluten-free lost").await?;
        phone.sees("lost-4", "Gluten-free lost").await?;
        phone.gone("lose-4-gluten_free").await?;
        phone.see("sheet-open").await?;
        pictures(phone, "today-lost").await?;

        phone.go(&pan.replacen("pan/", "add/", 1)).await?;
        phone.tap("add-kind-oil_change").await?;
        phone.tap("add-reason-0").await?;
        phone.tap("add-after-fresh").await?;
        phone.tap("add-pad-accept").await?;
        // Nobody saw the pan dry by the guide: asked once.
        phone.tap("add-doubt-yes").await?;
        phone.see("pan-hero").await?;

        phone.go(&kept).await?;
        phone.tap("restore-gluten_free").await?;
        phone.sees("need-emptied", "yes").await?;
        for tick in ["seen-0", "seen-1"] {
            phone.tap(tick).await?;
        }
        phone.enter("restore-basis", "own pan, cleaned").await?;
        phone.see("restore-save").await?;
        pictures(phone, "kept-restoring").await?;
        phone.tap("restore-save").await?;
        phone.see("stands-gluten_free").await?;

        phone.go("today").await?;
        phone.see("lose-4-gluten_free").await?;
        phone.tap("go-to-sheet").await?;
        phone.sees("sheet-4", "Gluten-free stands").await?;
        pictures(phone, "allergens").await?;
        phone.tap("sheet-checked").await?;
        phone.gone("sheet-checked").await?;
        phone.go("today").await?;
        phone.gone("sheet-open").await?;

        let export = stage.export().await?;
        let kinds: Vec<&str> = export.since(before).iter().filter_map(|e| e["kind"].as_str()).collect();
        let said = [
            "claim_lost",
            "correct",
            "oil_change",
            "fill",
            "claim_restored",
            "allergens_checked",
        ];
        if kinds == said {
            Ok(())
        } else {
            fault(format!("{kinds:?}"))
        }
    })
    .await
}
