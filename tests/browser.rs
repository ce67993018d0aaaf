//! What the browser layer promises, asked of a real browser.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use panward::browser::clock::{self, UnknownZone};
use panward::browser::shelf::Shelf;
use panward::browser::sound::{Pattern, Sound, SoundState};
use panward::browser::storage_health;
use panward::browser::wake::{Wake, WakeState};
use panward::domain::time::Millis;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// 2026-01-15 and 2026-07-15, both at noon UTC.
const WINTER: Millis = Millis(1_768_478_400_000);
const SUMMER: Millis = Millis(1_784_116_800_000);

#[wasm_bindgen_test]
fn offsets_follow_the_kitchens_zone() {
    // Offsets as in the IANA time zone database, 2025b.
    let zones = [
        ("Europe/London", 0, 60),
        ("Europe/Dublin", 0, 60),
        ("America/St_Johns", -210, -150),
        ("Asia/Kathmandu", 345, 345),
        ("Australia/Sydney", 660, 600),
        ("Pacific/Auckland", 780, 720),
    ];
    for (zone, winter, summer) in zones {
        assert_eq!(clock::use_zone(zone), Ok(()), "{zone}");
        assert_eq!(
            (clock::offset(WINTER), clock::offset(SUMMER)),
            (winter, summer),
            "{zone}"
        );
    }
    assert_eq!(clock::use_zone("Sea/Bottom"), Err(UnknownZone("Sea/Bottom".to_owned())));
    assert_eq!(
        clock::offset(SUMMER),
        720,
        "a refused zone leaves the one before in force"
    );
}

#[wasm_bindgen_test]
fn both_clocks_go_on_in_one_page_life() {
    let first = clock::now();
    let second = clock::now();
    assert!(first.wall > WINTER, "{first:?}");
    assert!(second.mono >= first.mono && second.wall >= first.wall);
    assert_eq!(first.life, second.life);
    assert!(first.life.0 < 1 << 53 && first.life.0 != 0, "{first:?}");
}

#[wasm_bindgen_test]
fn random_bytes_differ() {
    assert_ne!(clock::random_bytes::<16>(), clock::random_bytes::<16>());
}

#[wasm_bindgen_test]
fn a_shelf_gives_back_what_was_put_there() {
    let key = "panward.test.shelf";
    for shelf in [Shelf::Phone, Shelf::Tab] {
        shelf.keep(key, &vec![["batch".to_owned(), "7 \"B\"".to_owned()]]);
        assert_eq!(
            shelf.kept::<Vec<[String; 2]>>(key),
            Some(vec![["batch".to_owned(), "7 \"B\"".to_owned()]])
        );
        assert_eq!(shelf.kept::<i64>(key), None, "another kind of thing is nothing");
        shelf.forget(key);
        assert_eq!(shelf.kept::<Vec<[String; 2]>>(key), None);
    }
    // As phones have it from earlier versions.
    let phone = web_sys::window().unwrap().local_storage().unwrap().unwrap();
    phone.set_item(key, "1779987900000").unwrap();
    assert_eq!(Shelf::Phone.kept::<i64>(key), Some(1_779_987_900_000));
    assert_eq!(Shelf::Tab.kept::<i64>(key), None, "the two shelves are apart");
    phone.set_item(key, r#"{"broken""#).unwrap();
    assert_eq!(Shelf::Phone.kept::<String>(key), None);
    Shelf::Phone.forget(key);
}

#[wasm_bindgen_test]
async fn storage_tells_how_much_room_there_is() {
    let room = storage_health::room().await.unwrap();
    assert!(room.allowed > room.used, "{room:?}");
    assert!(storage_health::persisted().await.is_some());
}

#[wasm_bindgen_test]
fn sound_is_off_until_a_touch_and_says_so() {
    let told = Rc::new(RefCell::new(Vec::new()));
    let heard = Rc::clone(&told);
    let sound = Sound::new(move |state| heard.borrow_mut().push(state));
    assert_eq!(*told.borrow(), [sound.state()], "the first state is told at once");
    assert_eq!(
        sound.play(Pattern::Safety),
        sound.state() == SoundState::On,
        "only what can be heard was played"
    );
    assert!(Pattern::Safety.secs() > Pattern::Medium.secs() && Pattern::Medium.secs() > Pattern::Chime.secs());
}

#[wasm_bindgen_test]
fn a_screen_nobody_wants_lit_is_off() {
    let told = Rc::new(RefCell::new(Vec::new()));
    let heard = Rc::clone(&told);
    let wake = Wake::new(move |state| heard.borrow_mut().push(state));
    assert!(told.borrow().is_empty());
    wake.let_go();
    assert_eq!(*told.borrow(), [WakeState::Off]);
}
