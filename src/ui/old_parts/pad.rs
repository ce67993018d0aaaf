//! A pad of our own keys for one number: a temperature, litres, minutes. What is typed stays text until it is accepted.

use leptos::prelude::*;

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
#[component]
pub fn Pad(
    /// What is typed so far: figures, `.`, a leading `-`.
    value: RwSignal<String>,
    /// What the number is, for who cannot see the question.
    #[prop(into)]
    label: String,
    /// Its unit.
    #[prop(into)]
    unit: String,
    /// The words of the keys.
    words: PadWords,
    /// Whether a fraction may be typed.
    #[prop(optional)]
    fraction: bool,
    /// Whether it may be below nothing.
    #[prop(optional)]
    below_zero: bool,
    /// The most figures.
    #[prop(default = 4)]
    most: usize,
    /// What stands there without having been typed: the first figure takes its place.
    #[prop(optional, into)]
    prefilled: Option<String>,
    /// Called with what was typed; never with nothing.
    #[prop(into)]
    on_accept: Callback<String>,
    /// Its test id, the stem of its keys'.
    #[prop(into)]
    testid: String,
) -> impl IntoView {
    let untouched = StoredValue::new(prefilled);
    let press = move |key: Key| {
        let offered = untouched.try_update_value(Option::take).flatten();
        value.update(|now| {
            if offered.as_ref() == Some(now) && key != Key::Sign {
                now.clear();
            }
            *now = typed(now, key, most);
        });
    };
    let empty = move || value.with(|now| !now.contains(|c: char| c.is_ascii_digit()));
    let accept = move |_| {
        if !empty() {
            on_accept.run(value.get_untracked());
        }
    };
    let figure = |figure: char| {
        view! {
            <button
                type="button"
                data-testid=format!("{testid}-{figure}")
                on:click=move |_| press(Key::Figure(figure))
            >
                {figure.to_string()}
            </button>
        }
    };
    let point = words.point.clone();
    let shown = move || value.with(|now| now.replace('-', "\u{2212}").replace('.', &point));
    let clear = move |_| value.update(String::clear);
    let back = move |_| {
        value.update(|now| {
            now.pop();
        });
    };
    view! {
        <div class="pad" role="group" aria-label=label data-testid=testid.clone()>
            <p class="pad-value">
                <output data-testid=format!("{testid}-value")>{shown}</output>
                <span class="pad-unit">{unit}</span>
            </p>
            <div class="pad-keys">
                {['7', '8', '9'].map(figure)}
                <button type="button" class="word" data-testid=format!("{testid}-back") on:click=back>
                    {words.back}
                </button>
                {['4', '5', '6'].map(figure)}
                <button type="button" class="word" data-testid=format!("{testid}-clear") on:click=clear>
                    {words.clear}
                </button>
                {['1', '2', '3'].map(figure)}
                <button
                    type="button"
                    class="accept"
                    disabled=empty
                    data-testid=format!("{testid}-accept")
                    on:click=accept
                >
                    {words.accept}
                </button>
                <button
                    type="button"
                    disabled=!below_zero
                    aria-label=words.sign
                    data-testid=format!("{testid}-sign")
                    on:click=move |_| press(Key::Sign)
                >
                    "±"
                </button>
                {figure('0')}
                <button
                    type="button"
                    disabled=!fraction
                    data-testid=format!("{testid}-point")
                    on:click=move |_| press(Key::Point)
                >
                    {words.point}
                </button>
            </div>
        </div>
    }
}
