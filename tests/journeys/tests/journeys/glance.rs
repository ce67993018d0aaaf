//! Today stands there before its log is read: Fire and Burn work at once, and what else is pressed is pressed when it is.

use journeys::{Outcome, Phone, journey, until};
use serde_json::{Value, json};

/// On the next page: presses each of these as soon as it stands there, once.
async fn hasty(phone: &Phone, ids: &[&str]) -> Outcome {
    let script = format!(
        "const wanted = {}; new MutationObserver(() => {{
            for (const id of wanted) {{
                const it = document.querySelector(`[data-testid='${{id}}']`);
                if (!it) continue;
                wanted.splice(wanted.indexOf(id), 1);
                performance.mark(`pressed-${{id}}`);
                it.click();
            }}
        }}).observe(document, {{ subtree: true, childList: true }});",
        json!(ids)
    );
    let source = json!({ "source": script });
    phone.cdp("Page.addScriptToEvaluateOnNewDocument", source).await?;
    Ok(())
}

/// When the start came to each of these marks, once it has.
async fn marks(phone: &Phone, names: &[&str]) -> Outcome<Vec<f64>> {
    let script = "return arguments[0].map((name) => performance.getEntriesByName(name)[0]?.startTime ?? null)";
    until(&format!("the marks {names:?}"), async || {
        let times = phone.run(script, &[json!(names)]).await?;
        Ok(times.as_array().into_iter().flatten().map(Value::as_f64).collect())
    })
    .await
}

#[tokio::test]
async fn what_is_pressed_before_the_log_is_read_is_pressed_when_it_is() -> Outcome {
    journey("glance", async |stage| {
        stage.demo().await?;
        hasty(&stage.phone, &["pan-2"]).await?;
        stage.phone.reload().await?;
        stage.phone.see("screen-pan").await?;
        let times = marks(&stage.phone, &["drawn", "pressed-pan-2", "log-decoded"]).await?;
        assert!(times.is_sorted(), "drawn, pressed, read: {times:?}");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn fire_is_never_waited_for() -> Outcome {
    journey("glance_fire", async |stage| {
        stage.demo().await?;
        let seen = "new MutationObserver(() => document.querySelector('dialog[open]') && performance.mark('card-open'))
            .observe(document, { subtree: true, childList: true, attributes: true });";
        let source = json!({ "source": seen });
        stage.phone.cdp("Page.addScriptToEvaluateOnNewDocument", source).await?;
        hasty(&stage.phone, &["fire"]).await?;
        stage.phone.reload().await?;
        stage.phone.see("card-fire").await?;
        let times = marks(&stage.phone, &["pressed-fire", "card-open", "log-decoded"]).await?;
        assert!(times.is_sorted(), "pressed, open, read: {times:?}");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_log_that_grew_elsewhere_or_a_day_that_ended_is_read_first() -> Outcome {
    journey("glance_stale", async |stage| {
        stage.demo().await?;
        // As another window would have it: one entry more than Today was shown from.
        let grow = "const tell = arguments[0];
            const opening = indexedDB.open('panward-demo');
            opening.onsuccess = () => {
                const entries = opening.result.transaction('entries', 'readwrite');
                const store = entries.objectStore('entries');
                store.openCursor(null, 'prev').onsuccess = ({ target }) => {
                    const [dev, seq] = target.result.key;
                    store.add(target.result.value, [dev, seq + 1]);
                };
                entries.oncomplete = () => { opening.result.close(); tell(true); };
            };";
        assert_eq!(stage.phone.run_async(grow).await?, true);
        stage.phone.reload().await?;
        let times = marks(&stage.phone, &["log-decoded", "drawn"]).await?;
        assert!(
            times.is_sorted(),
            "a longer log is read before anything is drawn: {times:?}"
        );

        stage.phone.reload().await?;
        let times = marks(&stage.phone, &["drawn", "log-decoded"]).await?;
        assert!(times.is_sorted(), "the same log is glanced at again: {times:?}");

        stage.phone.open_unready("about:blank").await?;
        stage.phone.pass(24 * 3_600_000).await?;
        stage.open().await?;
        let times = marks(&stage.phone, &["log-decoded", "drawn"]).await?;
        assert!(times.is_sorted(), "yesterday's glance is none: {times:?}");
        Ok(())
    })
    .await
}
