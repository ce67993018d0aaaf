//! The parts, mounted in a browser and touched: what they say, what they call, what they refuse to call.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::cell::RefCell;
use std::rc::Rc;

use leptos::prelude::{Owner, document};
use panward::domain::facts::run::{Place, Pump};
use panward::ui::node::{Act, Element, Held, Node, Tell, el, live, mount, speak};
use panward::ui::parts::*;
use panward::words::local::{Local, theirs};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::HtmlElement;
use web_sys::wasm_bindgen::JsCast;

wasm_bindgen_test_configure!(run_in_browser);

/// Draws into a fresh element of the page and hands that element back.
fn drawn<N: Into<Node>>(draw: impl FnOnce() -> N + 'static) -> HtmlElement {
    let place: HtmlElement = document().create_element("div").unwrap().unchecked_into();
    document().body().unwrap().append_child(&place).unwrap();
    mount(&place, draw).forget();
    place
}

/// A value made outside a screen, for as long as the test runs.
fn held<T: 'static>(value: T) -> Held<T> {
    let owner = Owner::new();
    let held = owner.with(|| Held::new(value));
    std::mem::forget(owner);
    held
}

fn part(place: &HtmlElement, testid: &str) -> HtmlElement {
    let found = place.query_selector(&format!("[data-testid='{testid}']")).unwrap();
    found
        .unwrap_or_else(|| panic!("no {testid} in {}", place.inner_html()))
        .unchecked_into()
}

/// What was called, by name.
#[derive(Clone, Default)]
struct Calls(Rc<RefCell<Vec<&'static str>>>);

impl Calls {
    fn to(&self, name: &'static str) -> Act {
        let calls = Rc::clone(&self.0);
        Act::new(move || calls.borrow_mut().push(name))
    }

    fn take(&self) -> Vec<&'static str> {
        self.0.take()
    }
}

fn step(calls: &Calls) -> Element {
    let words = StepWords {
        pan: Some("2".into()),
        name: "Fish".into(),
        say: "Turn the heat OFF".into(),
        stop: "STOP",
        ..StepWords::default()
    };
    let screen = StepScreen {
        words,
        hazard_sign: SignKind::Warning,
        sign: None,
        drawing: None,
        middle: Node::Nothing,
        aside: None,
        empty: empty_banners(vec!["PAN 3 EMPTY, DO NOT LIGHT".to_owned()]),
        emergency: emergency(["Fire", "Burn"], calls.to("fire"), calls.to("burn")),
        stacked: false,
        on_stop: calls.to("stop"),
        testid: "step",
        answers: answer_button("Flame out", false, "out", calls.to("out")).into(),
    };
    screen.draw()
}

#[wasm_bindgen_test]
fn a_step_shows_its_pan_and_its_warning_and_calls_each_of_its_buttons() {
    let calls = Calls::default();
    let for_step = calls.clone();
    let place = drawn(move || step(&for_step));
    assert_eq!(part(&place, "pan-number").inner_text(), "2");
    assert_eq!(part(&place, "say").inner_text(), "Turn the heat OFF");
    assert!(
        part(&place, "pan-empty")
            .inner_text()
            .contains("PAN 3 EMPTY, DO NOT LIGHT")
    );
    for testid in ["stop", "fire", "burn", "out"] {
        part(&place, testid).click();
        assert_eq!(calls.take(), [testid]);
    }
}

#[wasm_bindgen_test]
async fn go_on_sleeps_until_every_answer_is_given() {
    let calls = Calls::default();
    let on_press = calls.to("gone on");
    let awake = held(false);
    let place = drawn(move || live(move || go_on("Go on", awake.get(), on_press.clone())));
    part(&place, "go-on").click();
    assert_eq!(calls.take(), [""; 0]);
    awake.set(true);
    leptos::task::tick().await;
    part(&place, "go-on").click();
    assert_eq!(calls.take(), ["gone on"]);
}

#[wasm_bindgen_test]
async fn the_pad_types_what_is_pressed_and_never_accepts_nothing() {
    let value = held(String::new());
    let taken = held(None);
    let place = drawn(move || {
        let words = PadWords {
            accept: "Use".into(),
            back: "Back".into(),
            clear: "Clear".into(),
            sign: "Minus".into(),
            point: ",".into(),
        };
        let pad = Pad {
            value,
            label: "Oil".into(),
            unit: "°C".into(),
            words,
            fraction: true,
            below_zero: false,
            most: 3,
            prefilled: None,
            on_accept: Tell::new(move |text: String| taken.set(Some(text))),
            testid: "t".into(),
        };
        pad.draw()
    });
    let press = |keys: &[&str]| keys.iter().for_each(|key| part(&place, &format!("t-{key}")).click());

    press(&["accept"]);
    assert_eq!(taken.get_untracked(), None);
    press(&["0", "1", "point", "point", "5", "2", "7"]);
    leptos::task::tick().await;
    assert_eq!(
        value.get_untracked(),
        "1.52",
        "a leading nought, a second point and a fourth figure are dropped"
    );
    assert_eq!(part(&place, "t-value").inner_text(), "1,52");
    press(&["sign"]);
    assert_eq!(
        value.get_untracked(),
        "1.52",
        "no sign where the number cannot be below nothing"
    );
    press(&["back", "accept"]);
    assert_eq!(taken.get_untracked().as_deref(), Some("1.5"));
    press(&["clear"]);
    assert_eq!(value.get_untracked(), "");
}

/// In the United States a field and the pad take gallons and degrees Fahrenheit, hand over litres and Celsius, and
/// leave what is being typed as it is.
#[wasm_bindgen_test]
async fn numbers_are_typed_in_the_measures_of_the_country() {
    speak(Local::of("US", ["Fish pan"].into_iter()));
    let litres = held("20".to_owned());
    let temp = held(String::new());
    let taken = held(None);
    let place = drawn(move || {
        let field = live(move || {
            let field = Field {
                unit: Some("L".into()),
                kind: FieldKind::Decimal,
                ..Field::of("Pan litres", litres, "f")
            };
            field.draw()
        });
        let words = PadWords {
            accept: "Use".into(),
            back: "Back".into(),
            clear: "Clear".into(),
            sign: "Minus".into(),
            point: ".".into(),
        };
        let pad = Pad {
            value: temp,
            label: "Oil in the pan".into(),
            unit: "°C".into(),
            words,
            fraction: false,
            below_zero: false,
            most: 3,
            prefilled: None,
            on_accept: Tell::new(move |text: String| taken.set(Some(text))),
            testid: "t".into(),
        };
        let said = el("p").testid("said").text("Pan Fish pan at 40 °C: ");
        let said = said.text(theirs("scraps in pan at 150 °C").into_owned());
        el("div").child(field).child(pad.draw()).child(said)
    });
    assert_eq!(
        part(&place, "said").inner_text(),
        "Vat Fish pan at 104\u{a0}°F: scraps in pan at 150 °C"
    );
    assert_eq!(part(&place, "t").get_attribute("aria-label").unwrap(), "Oil in the vat");
    let input: web_sys::HtmlInputElement = part(&place, "f").unchecked_into();
    assert_eq!(input.value(), "5.28");
    input.set_value("5.");
    input.dispatch_event(&web_sys::Event::new("input").unwrap()).unwrap();
    leptos::task::tick().await;
    assert_eq!(
        (litres.get_untracked().as_str(), input.value().as_str()),
        ("18.927", "5.")
    );

    let press = |keys: &[&str]| keys.iter().for_each(|key| part(&place, &format!("t-{key}")).click());
    press(&["3", "5", "7", "back", "0"]);
    leptos::task::tick().await;
    assert_eq!(part(&place, "t-value").inner_text(), "350");
    press(&["accept"]);
    assert_eq!(taken.get_untracked().as_deref(), Some("176.7"));
    assert!(place.inner_text().contains("°F") && !place.inner_text().contains("litres"));
    speak(Local::default());
}

#[wasm_bindgen_test]
fn a_clock_keeps_two_figures_for_seconds() {
    assert_eq!(minutes_seconds(0), "0:00");
    assert_eq!(minutes_seconds(47), "0:47");
    assert_eq!(minutes_seconds(605), "10:05");
    assert_eq!(minutes_seconds(-8), "0:08");
}

#[wasm_bindgen_test]
fn oil_moves_in_the_drawing_only_while_the_pump_moves_it() {
    for (pump, moves) in [
        (Pump::Off, false),
        (Pump::Unknown, false),
        (Pump::Drawing, true),
        (Pump::Rinsing, true),
        (Pump::Returning, true),
    ] {
        let place = drawn(move || {
            let picture = RunDrawing {
                place: Place::Split,
                pump,
                shade: Shade::new(3),
                vessel: Vessel::Machine,
                label: "Oil in both".into(),
                pan_words: "".into(),
                vessel_words: "".into(),
            };
            picture.draw()
        });
        assert_eq!(place.query_selector(".drops").unwrap().is_some(), moves, "{pump:?}");
    }
}

#[wasm_bindgen_test]
async fn a_sheet_opens_over_the_page_and_says_when_it_is_closed() {
    let open = held(false);
    let place = drawn(move || {
        let sheet = Sheet {
            open: Box::new(move || open.get()),
            on_close: Act::new(move || open.set(false)),
            title: "Fire".into(),
            sign: None,
            close: "Close".into(),
            testid: "fire-card",
            holds: "Get out.".into(),
        };
        sheet.draw()
    });
    let sheet = part(&place, "fire-card");
    assert!(!sheet.has_attribute("open"));
    open.set(true);
    leptos::task::tick().await;
    assert!(sheet.has_attribute("open"));
    part(&place, "fire-card-close").click();
    leptos::task::tick().await;
    assert!(!sheet.has_attribute("open"));
}

#[wasm_bindgen_test]
fn a_stepper_says_which_way_it_was_turned_and_rests_at_its_end() {
    let turned = held(Vec::<bool>::new());
    let place = drawn(move || {
        Stepper {
            label: "Frying at".into(),
            value: "190 °C".to_owned(),
            names: ["less".to_owned(), "more".to_owned()],
            turns: [true, false],
            on_turn: Tell::new(move |up| turned.update(|all| all.push(up))),
            testid: "heat",
        }
        .draw()
    });
    part(&place, "heat-less").click();
    part(&place, "heat-more").click();
    assert_eq!(turned.get_untracked(), [false], "its upper end is reached");
    assert_eq!(part(&place, "heat").text_content().unwrap(), "190 °C");
}
