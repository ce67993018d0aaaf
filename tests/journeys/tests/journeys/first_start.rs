//! From a bare phone: a look round with the demo, and a kitchen of one pan set up by hand and filtered in.

use journeys::{Outcome, Phone, Walker, fault, journey, until};

/// How a field is answered.
enum Given {
    Typed(&'static str),
    /// One of a few buttons.
    Chosen(&'static str),
    Ticked,
}
use Given::{Chosen, Ticked, Typed};

/// What a form, or the whole way, cost.
#[derive(Clone, Copy, Debug, Default)]
struct Cost {
    pages: u32,
    touches: u32,
    letters: u32,
}

impl Cost {
    const fn and(self, other: Self) -> Self {
        Self {
            pages: self.pages + other.pages,
            touches: self.touches + other.touches,
            letters: self.letters + other.letters,
        }
    }

    /// Tenths of a second by keystroke-level estimate: 3 s a page read, 1.5 s a touch, 0.3 s a letter typed.
    const fn estimate_ds(self) -> u32 {
        self.pages * 30 + self.touches * 15 + self.letters * 3
    }
}

/// What an owner gives; every other field keeps the default it comes with.
const KITCHEN: &[(&str, Given)] = &[("kitchen-name", Typed("Quay Street Fryer"))];
const PERSON: &[(&str, Given)] = &[("initials", Typed("AB")), ("adult", Chosen("yes")), ("vouched", Ticked)];
const PAN: &[(&str, Given)] = &[
    ("pan-full", Typed("20")),
    ("pan-min", Typed("15")),
    ("pan-fat", Chosen("rapeseed")),
    ("food", Chosen("gluten")),
    ("food", Chosen("fish")),
    ("in-it", Chosen("fresh")),
];
const MACHINE: &[(&str, Given)] = &[
    ("out-by", Chosen("nozzle")),
    ("tank", Typed("60")),
    ("heater", Chosen("no")),
];

/// Chooses in a list as a person does: one touch.
async fn pick(phone: &mut Phone, id: &str, value: &str) -> Outcome {
    let script = "const it = document.querySelector(`[data-testid=\"${arguments[0]}\"]`);
        it.value = arguments[1]; it.dispatchEvent(new Event('change', { bubbles: true })); return it.value";
    let now = phone.run(script, &[id.into(), value.into()]).await?;
    if now == value {
        Ok(())
    } else {
        fault(format!("{id} offers no {value}"))
    }
}

/// Fills a form page by page and returns what it cost.
async fn fill(phone: &mut Phone, form: &str, fields: &[(&str, Given)]) -> Outcome<Cost> {
    phone.see(&format!("form-{form}")).await?;
    phone.forget_touches();
    let mut cost = Cost::default();
    let mut left: Vec<_> = fields.iter().collect();
    // More pages than any form has.
    for _ in 0..8 {
        cost.pages += 1;
        // A field may bring another: look again until none of those given is on this page.
        loop {
            let sight = phone.sight().await?;
            let Some(at) = left.iter().position(|(id, _)| sight.has(id)) else {
                break;
            };
            let (id, given) = left.remove(at);
            match given {
                Typed(text) => {
                    phone.enter(id, text).await?;
                    cost.letters += u32::try_from(text.chars().count()).unwrap_or_default();
                }
                Chosen(key) => {
                    let button = format!("{id}-{key}");
                    // What is chosen beforehand would be taken back by a touch.
                    if sight.things.iter().any(|thing| thing.id == button && !thing.chosen) {
                        phone.tap(&button).await?;
                    }
                }
                Ticked => phone.tap(id).await?,
            }
        }
        let before = phone.settled().await?;
        phone.tap("form-next").await?;
        let wrong = "return document.querySelector('.field-error')?.innerText ?? null";
        until("the next page of the form", async || {
            match phone.run(wrong, &[]).await?.as_str() {
                Some(wrong) => fault(format!("{form}: {wrong}")),
                None => Ok(phone.sight().await?.differs(&before).then_some(())),
            }
        })
        .await?;
        let gone = !phone.settled().await?.has(&format!("form-{form}"));
        if gone {
            assert!(
                left.is_empty(),
                "{form} never asked for {:?}",
                left.iter().map(|(id, _)| id).collect::<Vec<_>>()
            );
            cost.touches = phone.forget_touches();
            return Ok(cost);
        }
    }
    fault(format!("the form of a {form} does not end"))
}

#[tokio::test]
async fn looks_round_in_the_demo_and_leaves_nothing_behind() -> Outcome {
    journey("first_start_demo", async |stage| {
        stage.evening().await?;
        stage.phone.see("screen-first").await?;
        for (card, button) in [("card-fire", "fire"), ("card-burn", "burn")] {
            stage.phone.tap(button).await?;
            stage.phone.see(card).await?;
            stage.phone.tap(&format!("{card}-close")).await?;
        }
        stage.phone.tap("start-demo").await?;
        for pan in ["pan-1", "pan-2", "pan-3", "pan-4"] {
            stage.phone.see(pan).await?;
        }
        stage.phone.see("demo-band").await?;
        stage.phone.tap("pan-1").await?;
        stage.phone.see("screen-pan").await?;
        stage.phone.back().await?;
        stage.phone.see("screen-today").await?;
        stage.phone.tap("leave-demo").await?;
        stage.phone.see("screen-first").await?;
        let names = "const done = arguments[0];
            indexedDB.databases().then((all) => done(all.map((it) => it.name).filter((name) => name.includes('demo'))));";
        let phone = &stage.phone;
        until("the demo's database gone", async || {
            let left = phone.run_async(names).await?;
            Ok(left.as_array().is_some_and(Vec::is_empty).then_some(()))
        })
        .await
    })
    .await
}

#[tokio::test]
async fn refuses_an_unknown_zone_on_its_own_page() -> Outcome {
    journey("first_start_zone", async |stage| {
        stage.phone.set_zone("Europe/London").await?;
        stage.evening().await?;
        let phone = &mut stage.phone;
        phone.tap("start-set-up").await?;
        phone.see("form-kitchen").await?;
        phone.sees("form-of", "Kitchen, 1 of 1").await?;
        phone.enter("kitchen-name", "Quay Street Fryer").await?;
        pick(phone, "country", "GB").await?;
        // The phone's own zone stands there, and is opened with the rest.
        phone.sees("form-stands", "Europe/London").await?;
        phone.press("form-rest").await?;
        while !phone.settled().await?.has("zone") {
            let before = phone.settled().await?;
            phone.tap("form-next").await?;
            until("the next page", async || {
                Ok(phone.sight().await?.differs(&before).then_some(()))
            })
            .await?;
        }
        let of = phone.see("form-of").await?;
        phone.enter("zone", "Quay/Street").await?;
        phone.tap("form-next").await?;
        until("the zone to be refused", async || {
            let told = phone
                .run("return document.querySelector('.field-error') !== null", &[])
                .await?;
            Ok((told == true).then_some(()))
        })
        .await?;
        assert_eq!(phone.see("form-of").await?, of);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn sets_up_one_pan_by_hand_and_filters_in_it() -> Outcome {
    journey("first_start_by_hand", async |stage| {
        stage.phone.set_zone("Europe/London").await?;
        stage.evening().await?;
        let phone = &mut stage.phone;
        phone.tap("start-set-up").await?;
        phone.see("screen-set-up").await?;
        let kitchen = fill(phone, "kitchen", KITCHEN).await?;
        let person = fill(phone, "person", PERSON).await?;
        let pan = fill(phone, "pan", PAN).await?;
        let machine = fill(phone, "machine", MACHINE).await?;
        // The first screen and the last, a touch each.
        let ends = Cost {
            pages: 2,
            touches: 2,
            letters: 0,
        };
        let all = [kitchen, person, pan, machine].into_iter().fold(ends, Cost::and);
        println!("first set-up: {all:?}, {} s", all.estimate_ds() / 10);
        assert!(all.pages <= 8 && all.touches <= 22 && all.letters <= 30, "{all:?}");
        assert!(all.estimate_ds() < 1_200, "{all:?}");
        phone.see("set-up-ready").await?;
        phone.tap("finish").await?;
        phone.see("pan-1").await?;
        let walker = Walker::new();
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        walker.to_step(phone, "choose").await?;
        phone.press("begin-1").await?;
        walker.to_step(phone, "choose").await?;
        phone.press("put-away").await?;
        walker.until(phone, |sight| sight.has("screen-today")).await?;
        let export = stage.export().await?;
        assert!(journeys::saw(export.entries(), "sign_off", "vouched"));
        Ok(())
    })
    .await
}

/// In the United States the kitchen speaks of vats, gallons and degrees Fahrenheit, and keeps litres and Celsius.
#[tokio::test]
async fn sets_up_in_gallons_and_filters_in_fahrenheit() -> Outcome {
    journey("first_start_us", async |stage| {
        stage.phone.set_zone("America/New_York").await?;
        stage.evening().await?;
        let phone = &mut stage.phone;
        phone.tap("start-set-up").await?;
        phone.see("screen-set-up").await?;
        fill(phone, "kitchen", KITCHEN).await?;
        fill(phone, "person", PERSON).await?;
        phone.sees("form-pan", "vat").await?;
        let gallons: Vec<(&str, Given)> = PAN
            .iter()
            .map(|(id, given)| match (*id, given) {
                ("pan-full", _) => ("pan-full", Typed("5.28")),
                ("pan-min", _) => ("pan-min", Typed("4")),
                (id, Typed(text)) => (id, Typed(text)),
                (id, Chosen(key)) => (id, Chosen(key)),
                (id, Ticked) => (id, Ticked),
            })
            .collect();
        fill(phone, "pan", &gallons).await?;
        phone.sees("form-machine", "gal").await?;
        fill(phone, "machine", MACHINE).await?;
        phone.see("set-up-ready").await?;
        phone.tap("finish").await?;
        phone.sees("pan-1", "Vat 1").await?;
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        let walker = Walker::new().types("oil_dc", "302");
        walker.to_step(phone, "choose").await?;
        phone.press("begin-1").await?;
        walker.to_step(phone, "out.oil_temp").await?;
        let asked = phone.run("return document.body.innerText", &[]).await?;
        let asked = asked.as_str().unwrap_or_default();
        assert!(asked.contains("°F") && !asked.contains("°C"), "{asked}");
        walker.to_step(phone, "choose").await?;
        phone.press("put-away").await?;
        walker.until(phone, |sight| sight.has("screen-today")).await?;
        let export = stage.export().await?;
        let body = |kind: &str| {
            export
                .entries()
                .iter()
                .find(|entry| entry["kind"] == kind)
                .map(|entry| &entry["body"])
        };
        let pan = body("pan").expect("a pan");
        assert_eq!((&pan["full_ml"], &pan["min_ml"]), (&19_987.into(), &15_142.into()));
        assert_eq!(body("machine").expect("a machine")["low_dc"], 1_000);
        let read = export
            .entries()
            .iter()
            .find_map(|entry| entry["body"]["evidence"]["oil_dc"].as_i64());
        assert_eq!(read, Some(1_500), "302 °F is 150 °C");
        Ok(())
    })
    .await
}
