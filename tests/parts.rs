//! The parts, mounted in a browser and touched: what they say, what they call, what they refuse to call.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use leptos::{prelude::*, wasm_bindgen::JsCast};
use panward::domain::facts::run::{Place, Pump};
use panward::ui::parts::*;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::HtmlElement;

wasm_bindgen_test_configure!(run_in_browser);

/// Mounts `view` into a fresh element of the page and hands that element back.
fn mount<V: IntoView + 'static>(view: impl FnOnce() -> V + 'static) -> HtmlElement {
    let place: HtmlElement = document().create_element("div").unwrap().unchecked_into();
    document().body().unwrap().append_child(&place).unwrap();
    mount_to(place.clone(), view).forget();
    place
}

fn part(place: &HtmlElement, testid: &str) -> HtmlElement {
    let found = place.query_selector(&format!("[data-testid='{testid}']")).unwrap();
    found
        .unwrap_or_else(|| panic!("no {testid} in {}", place.inner_html()))
        .unchecked_into()
}

fn counter() -> (RwSignal<u32>, Callback<()>) {
    let count = RwSignal::new(0);
    (count, Callback::new(move |()| count.update(|now| *now += 1)))
}

fn words() -> StepWords {
    StepWords {
        pan: Some("2".into()),
        name: "Fish".into(),
        say: "Turn the heat OFF".into(),
        stop: "STOP".into(),
        fire: "Fire".into(),
        burn: "Burn".into(),
        ..StepWords::default()
    }
}

#[wasm_bindgen_test]
fn a_step_shows_its_pan_and_its_warning_and_calls_each_of_its_buttons() {
    let (stopped, on_stop) = counter();
    let (fire, on_fire) = counter();
    let (burn, on_burn) = counter();
    let (answered, on_press) = counter();
    let place = mount(move || {
        view! {
            <StepScreen
                words=words()
                empty=vec!["PAN 3 EMPTY, DO NOT LIGHT".to_owned()]
                on_fire=on_fire
                on_burn=on_burn
                on_stop=on_stop
            >
                <AnswerButton label="Flame out" on_press=on_press testid="out" />
            </StepScreen>
        }
    });
    assert_eq!(part(&place, "pan-number").inner_text(), "2");
    assert_eq!(part(&place, "say").inner_text(), "Turn the heat OFF");
    assert!(
        part(&place, "pan-empty")
            .inner_text()
            .contains("PAN 3 EMPTY, DO NOT LIGHT")
    );
    for (testid, count) in [("stop", stopped), ("fire", fire), ("burn", burn), ("out", answered)] {
        part(&place, testid).click();
        assert_eq!(count.get_untracked(), 1, "{testid}");
    }
}

#[wasm_bindgen_test]
async fn go_on_sleeps_until_every_answer_is_given() {
    let (gone, on_press) = counter();
    let awake = RwSignal::new(false);
    let place = mount(move || view! { <GoOn label="Go on" awake=awake on_press=on_press /> });
    part(&place, "go-on").click();
    assert_eq!(gone.get_untracked(), 0);
    awake.set(true);
    leptos::task::tick().await;
    part(&place, "go-on").click();
    assert_eq!(gone.get_untracked(), 1);
}

#[wasm_bindgen_test]
async fn the_pad_types_what_is_pressed_and_never_accepts_nothing() {
    let value = RwSignal::new(String::new());
    let taken = RwSignal::new(None);
    let place = mount(move || {
        let words = PadWords {
            accept: "Use".into(),
            back: "Back".into(),
            clear: "Clear".into(),
            sign: "Minus".into(),
            point: ",".into(),
        };
        let accept = Callback::new(move |text: String| taken.set(Some(text)));
        view! {
            <Pad value=value label="Oil" unit="°C" words=words fraction=true most=3 on_accept=accept testid="t" />
        }
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
        let place = mount(move || {
            view! { <RunDrawing place=Place::Split pump=pump shade=Shade::new(3) label="Oil in both" /> }
        });
        assert_eq!(place.query_selector(".drops").unwrap().is_some(), moves, "{pump:?}");
    }
}

#[wasm_bindgen_test]
async fn a_sheet_opens_over_the_page_and_says_when_it_is_closed() {
    let open = RwSignal::new(false);
    let place = mount(move || {
        let close = Callback::new(move |()| open.set(false));
        view! { <Sheet open=open on_close=close title="Fire" close="Close" testid="fire-card">"Get out."</Sheet> }
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
