//! A pad of our own keys for one number: a temperature, litres, minutes. What is typed stays text until it is accepted.

use std::cell::Cell;
use std::rc::Rc;

use crate::domain::measure::Measure;
use crate::ui::node::{Element, Held, Tell, Text, el, live, typed_in};
use crate::words::local::{from_field, to_field};

/// The number as it is typed here, over the value in our own unit.
#[derive(Clone, Copy)]
struct Here {
    value: Held<String>,
    typed: Held<String>,
    measure: Option<Measure>,
}

impl Here {
    fn of(value: Held<String>, unit: &str) -> Self {
        Self {
            value,
            typed: Held::new(String::new()),
            measure: typed_in(unit),
        }
    }

    /// What is shown: what was typed for as long as the value is what came of it.
    fn as_typed(self, value: &str) -> String {
        let Some(measure) = self.measure else {
            return value.to_owned();
        };
        let typed = self.typed.get_untracked();
        if from_field(&typed, measure) == value {
            typed
        } else {
            to_field(value, measure)
        }
    }

    fn get(self) -> String {
        self.value.with(|value| self.as_typed(value))
    }

    fn change(self, change: impl FnOnce(&mut String)) {
        let mut typed = self.value.with_untracked(|value| self.as_typed(value));
        change(&mut typed);
        let value = self
            .measure
            .map_or_else(|| typed.clone(), |measure| from_field(&typed, measure));
        self.typed.set(typed);
        self.value.set(value);
    }
}

/// The words of the keys.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PadWords {
    /// Takes the number.
    pub accept: String,
    /// Takes the last figure away.
    pub back: String,
    /// Takes everything away.
    pub clear: String,
    /// Changes the sign, for who cannot see "±".
    pub sign: String,
    /// The decimal point as this language writes it. What is typed always holds `.`.
    pub point: String,
}

/// A key of the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Key {
    /// 0 to 9.
    Figure(char),
    /// The decimal point.
    Point,
    /// Minus on, minus off.
    Sign,
}

/// What is typed after `key`: unchanged where the key makes no number or passes `most` figures.
fn typed(now: &str, key: Key, most: usize) -> String {
    let full = now.chars().filter(char::is_ascii_digit).count() >= most;
    match key {
        Key::Figure(_) if full => now.to_owned(),
        Key::Figure(figure) => match now {
            "0" => figure.to_string(),
            "-0" => format!("-{figure}"),
            _ => format!("{now}{figure}"),
        },
        Key::Point if full || now.contains('.') => now.to_owned(),
        Key::Point if now.is_empty() || now == "-" => format!("{now}0."),
        Key::Point => format!("{now}."),
        Key::Sign => now.strip_prefix('-').map_or_else(|| format!("-{now}"), str::to_owned),
    }
}

/// A pad for one number. Keys carry the test ids `testid-0` to `testid-9`, `-point`, `-sign`, `-back`, `-clear`,
/// `-accept`; the number shown is `testid-value`.
pub struct Pad {
    /// What is typed so far: figures, `.`, a leading `-`.
    pub value: Held<String>,
    /// What the number is, for who cannot see the question.
    pub label: Text,
    /// Its unit.
    pub unit: Text,
    /// The words of the keys.
    pub words: PadWords,
    /// Whether a fraction may be typed.
    pub fraction: bool,
    /// Whether it may be below nothing.
    pub below_zero: bool,
    /// The most figures.
    pub most: usize,
    /// What stands there without having been typed: the first figure takes its place.
    pub prefilled: Option<String>,
    /// Called with what was typed; never with nothing.
    pub on_accept: Tell<String>,
    /// Its test id, the stem of its keys'.
    pub testid: Text,
}

impl Pad {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let Self {
            value,
            label,
            unit,
            words,
            fraction,
            below_zero,
            most,
            prefilled,
            on_accept,
            testid,
        } = self;
        let untouched = Rc::new(Cell::new(prefilled));
        let here = Here::of(value, &unit);
        let press = move |key: Key| {
            let offered = untouched.take();
            if key != Key::Sign && value.with_untracked(|now| offered.as_ref() == Some(now)) {
                value.update(String::clear);
            }
            here.change(|now| *now = typed(now, key, most));
        };
        let key = |testid: String, words: String, does: Box<dyn Fn()>| {
            let key = el("button").attr("type", "button").testid(testid);
            key.on("click", move |_| does()).text(words)
        };
        let figure = |figure: char| {
            let press = press.clone();
            let does = Box::new(move || press(Key::Figure(figure)));
            key(format!("{testid}-{figure}"), figure.to_string(), does)
        };
        let other = |name: &str, words: String, does: Box<dyn Fn()>| key(format!("{testid}-{name}"), words, does);
        let back = other(
            "back",
            words.back,
            Box::new(move || {
                here.change(|now| {
                    now.pop();
                })
            }),
        )
        .class("word");
        let clear = other("clear", words.clear, Box::new(move || value.update(String::clear))).class("word");
        let (sign_press, point_press) = (press.clone(), press.clone());
        let sign = other("sign", "±".to_owned(), Box::new(move || sign_press(Key::Sign)))
            .attr("aria-label", words.sign)
            .flag("disabled", !below_zero);
        let point =
            other("point", words.point.clone(), Box::new(move || point_press(Key::Point))).flag("disabled", !fraction);
        let accept_testid = format!("{testid}-accept");
        let accept = live(move || {
            let accept = el("button")
                .attr("type", "button")
                .class("accept")
                .testid(accept_testid.clone());
            let on_accept = on_accept.clone();
            let take = move |_: &web_sys::Event| {
                if !value.with_untracked(|now| is_empty(now)) {
                    on_accept.run(value.get_untracked());
                }
            };
            accept
                .flag("disabled", value.with(|now| is_empty(now)))
                .on("click", take)
                .text(words.accept.clone())
        });
        let point_word = words.point;
        let shown = live(move || here.get().replace('-', "\u{2212}").replace('.', &point_word));
        let output = el("output").testid(format!("{testid}-value")).child(shown);
        let keys = el("div")
            .class("pad-keys")
            .children(['7', '8', '9'].map(figure))
            .child(back)
            .children(['4', '5', '6'].map(figure))
            .child(clear)
            .children(['1', '2', '3'].map(figure))
            .child(accept)
            .child(sign)
            .child(figure('0'))
            .child(point);
        el("div")
            .class("pad")
            .attr("role", "group")
            .attr("aria-label", label)
            .testid(testid)
            .child(
                el("p")
                    .class("pad-value")
                    .child(output)
                    .child(el("span").class("pad-unit").text(unit)),
            )
            .child(keys)
    }
}

fn is_empty(typed: &str) -> bool {
    !typed.contains(|c: char| c.is_ascii_digit())
}
