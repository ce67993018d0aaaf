//! Clocks: the big one of a run, read across the kitchen, and a small countdown. They paint the seconds they are given;
//! nobody counts here.

use leptos::prelude::*;

/// Seconds as `m:ss`. The sign is dropped: a clock past its end says so by its look and its words.
#[must_use]
pub fn minutes_seconds(seconds: i64) -> String {
    let whole = seconds.unsigned_abs();
    let (minutes, rest) = (whole / 60, whole % 60);
    let pad = if rest < 10 { "0" } else { "" };
    format!("{minutes}:{pad}{rest}")
}

/// The bar under a clock, in seconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bar {
    /// Where the bar ends. At least 1 is taken.
    pub full: u32,
    /// What is usual, from and to: drawn on the rail.
    pub usual: Option<(u32, u32)>,
}

/// How far along a bar of `full` seconds, in thousandths, 0 to 1000.
fn along(seconds: i64, full: u32) -> i64 {
    (seconds.saturating_mul(1000) / i64::from(full.max(1))).clamp(0, 1000)
}

/// The running clock: at least 150 px for minutes of one figure, 114 px for two.
#[component]
pub fn BigClock(
    /// What is shown: seconds gone when it counts up, seconds left when it counts down.
    #[prop(into)]
    seconds: Signal<i64>,
    /// Seconds gone, for the bar. Left out: the seconds shown.
    #[prop(optional, into)]
    gone: Option<Signal<i64>>,
    /// Whether the end has passed: the figures then carry a plus.
    #[prop(optional, into)]
    over: Signal<bool>,
    /// The bar beneath.
    #[prop(optional, into)]
    bar: Option<Bar>,
    /// Words at the left beneath, such as "usual 1:00 to 1:30".
    #[prop(optional, into)]
    usual: Signal<String>,
    /// Words at the right beneath, such as "until 21:47".
    #[prop(optional, into)]
    until: Signal<String>,
    /// What the clock is, for who cannot see it.
    #[prop(into)]
    label: String,
    /// Its test id.
    #[prop(default = "clock".into(), into)]
    testid: String,
) -> impl IntoView {
    let figures = Memo::new(move |_| minutes_seconds(seconds.get()));
    let length = Memo::new(move |_| figures.with(String::len) + usize::from(over.get()));
    let gone = gone.unwrap_or(seconds);
    view! {
        <div class="clock" class:over=over data-testid=testid>
            <div
                class="clock-figures"
                class:long=move || length.get() == 5
                class:very-long=move || { length.get() > 5 }
                role="timer"
                aria-label=label
            >
                {figures}
            </div>
            {bar
                .map(|bar| {
                    let usual = bar
                        .usual
                        .map(|(from, to)| {
                            let start = along(from.into(), bar.full);
                            let width = along(to.into(), bar.full) - start;
                            view! { <rect class="usual" x=start width=width height="16" /> }
                        });
                    view! {
                        <svg class="clock-bar" viewBox="0 0 1000 16" preserveAspectRatio="none" aria-hidden="true">
                            <rect class="rail" width="1000" height="16" />
                            {usual}
                            <rect class="gone" width=move || along(gone.get(), bar.full) height="16" />
                        </svg>
                    }
                })}
            <p class="clock-words">
                <span>{usual}</span>
                <span>{until}</span>
            </p>
        </div>
    }
}

/// A small countdown with its words, for a wait that runs beside other work.
#[component]
pub fn Countdown(
    /// Seconds left.
    #[prop(into)]
    seconds: Signal<i64>,
    /// What is waited for.
    #[prop(into)]
    words: String,
    /// Its test id.
    #[prop(into)]
    testid: String,
) -> impl IntoView {
    view! {
        <p class="countdown" data-testid=testid>
            <b>{move || minutes_seconds(seconds.get())}</b>
            <span>{words}</span>
        </p>
    }
}
