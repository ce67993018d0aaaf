//! The only reader of a clock: both clocks, the page life and the kitchen's zone, handed on as values.
#![expect(clippy::disallowed_methods, reason = "this is the place the ban points to")]

use crate::domain::time::{Millis, Now, PageLife};
use js_sys::{Array, Date, Intl, Object, Reflect};
use std::cell::{OnceCell, RefCell};
use wasm_bindgen::prelude::*;

thread_local! {
    static LIFE: OnceCell<PageLife> = const { OnceCell::new() };
    static ZONE: RefCell<Option<Zone>> = const { RefCell::new(None) };
}

/// A zone name the browser does not know.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnknownZone(pub String);

/// Both clocks at this instant. The offset is that of the zone set by [`use_zone`], else the device's own.
#[must_use]
pub fn now() -> Now {
    let wall = wall();
    let mono = web_sys::window()
        .and_then(|window| window.performance())
        .map_or(0, |clock| clock.now() as i64);
    Now {
        wall,
        mono,
        life: life(),
        off_min: offset(wall),
    }
}

/// The wall clock at this instant, for whom no zone matters.
#[must_use]
pub fn wall() -> Millis {
    Millis(Date::now() as i64)
}

/// The life of this page: drawn at random once, so that no reload and no other window shares it.
#[must_use]
pub fn life() -> PageLife {
    LIFE.with(|life| *life.get_or_init(|| PageLife(u64::from_le_bytes(random_bytes()) >> LIFE_UNUSED_BITS)))
}

/// Page lives are stored as JSON numbers, which other readers hold exactly up to 2^53.
const LIFE_UNUSED_BITS: u32 = 64 - 53;

/// Random bytes from the browser, for ids and the page life.
#[must_use]
pub fn random_bytes<const N: usize>() -> [u8; N] {
    let mut bytes = [0; N];
    if let Some(crypto) = web_sys::window().and_then(|window| window.crypto().ok()) {
        // Refuses only more than 65,536 bytes at a time.
        let _ = crypto.get_random_values_with_u8_array(&mut bytes);
    }
    bytes
}

/// The device's own zone, as in "Europe/London".
#[must_use]
pub fn device_zone() -> Option<String> {
    let options = Intl::DateTimeFormat::new(&Array::new(), &Object::new()).resolved_options();
    Reflect::get(&options, &"timeZone".into()).ok()?.as_string()
}

/// Whether the browser knows a zone of this name.
#[must_use]
pub fn knows_zone(name: &str) -> bool {
    Zone::new(name).is_some()
}

/// Takes the kitchen's zone for all moments from now on.
pub fn use_zone(name: &str) -> Result<(), UnknownZone> {
    let zone = Zone::new(name).ok_or_else(|| UnknownZone(name.to_owned()))?;
    ZONE.set(Some(zone));
    Ok(())
}

/// Minutes the kitchen's zone is ahead of UTC at a moment, past or to come.
#[must_use]
pub fn offset(at: Millis) -> i16 {
    ZONE.with_borrow(|zone| zone.as_ref().and_then(|zone| zone.offset(at)))
        .unwrap_or_else(|| device_offset(at))
}

fn device_offset(at: Millis) -> i16 {
    -Date::new(&JsValue::from_f64(at.0 as f64)).get_timezone_offset() as i16
}

// js-sys has this constructor without a way to catch the error of an unknown zone.
#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_namespace = Intl, js_name = DateTimeFormat)]
    type Format;
    #[wasm_bindgen(catch, constructor, js_namespace = Intl, js_class = "DateTimeFormat")]
    fn new(locale: &str, options: &Object) -> Result<Format, JsValue>;
    #[wasm_bindgen(method, js_name = formatToParts)]
    fn format_to_parts(this: &Format, date: &Date) -> Array;
}

/// A zone's rules, which live in the browser.
struct Zone(Format);

impl Zone {
    fn new(name: &str) -> Option<Self> {
        let options = Object::new();
        for (key, value) in [("timeZone", name), ("timeZoneName", "longOffset")] {
            Reflect::set(&options, &key.into(), &value.into()).ok()?;
        }
        Format::new("en-US", &options).ok().map(Self)
    }

    fn offset(&self, at: Millis) -> Option<i16> {
        let parts = self.0.format_to_parts(&Date::new(&JsValue::from_f64(at.0 as f64)));
        let part = |key: &str, part: &JsValue| Reflect::get(part, &key.into()).ok()?.as_string();
        let name = parts
            .iter()
            .find(|entry| part("type", entry).as_deref() == Some("timeZoneName"))?;
        minutes(&part("value", &name)?)
    }
}

/// Minutes from "GMT", "GMT+01:00", "GMT-03:30"; seconds, which only zones before about 1920 have, are dropped.
fn minutes(name: &str) -> Option<i16> {
    let offset = name.strip_prefix("GMT")?;
    let Some(sign) = offset.chars().next() else {
        return Some(0);
    };
    let mut numbers = offset.get(sign.len_utf8()..)?.split(':').map(str::parse::<i16>);
    let hours = numbers.next()?.ok()?;
    let rest = numbers.next().unwrap_or(Ok(0)).ok()?;
    let minutes = hours.checked_mul(60)?.checked_add(rest)?;
    match sign {
        '+' => Some(minutes),
        '-' | '\u{2212}' => Some(-minutes),
        _ => None,
    }
}
