//! One pan in the list: its oil in its colour, days left as the hero, the word second, the score third.

use leptos::prelude::*;

use crate::domain::oil_life::{Basis, OilLife};
use crate::kitchen::today::PanToday;
use crate::ui::bench::use_bench;
use crate::ui::old_parts::{PanDrawing, Shade};
use crate::ui::screen::Screen;
use crate::words::screens::{self, Screen as Title, screen as title};
use crate::words::today::{self as words, Line, line};
use crate::words::{Lang, oil, run, setup};

/// What fits into the drawing: the pan's name if it is as short as a number.
pub(super) fn number(name: &str) -> String {
    if name.chars().count() <= 3 {
        name.to_owned()
    } else {
        String::new()
    }
}

/// Days left as shown.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Hero {
    /// Small before the number.
    pub before: &'static str,
    /// The number.
    pub number: String,
    /// Small after it.
    pub unit: &'static str,
    /// The line beneath, where the owner's own count leads.
    pub under: Option<String>,
    /// The word of the oil.
    pub word: &'static str,
    /// What the model says while the owner's own count leads.
    pub likely: Option<String>,
}

/// The hero of an oil: the owner's own count leads while the log knows no better.
pub fn hero(life: &OilLife, lang: Lang) -> Hero {
    let word = life.word.map_or("", |word| words::word(word, lang));
    match (life.usual, life.days_left) {
        (Some(usual), days) => {
            let (before, under) = words::usual_hero(usual.days, lang);
            Hero {
                before,
                number: usual.today.to_string(),
                under: Some(under),
                word,
                likely: days.map(|days| words::likely_left(days, lang)),
                ..Hero::default()
            }
        }
        (None, Some(days)) => {
            let (number, unit) = words::days_hero(days, lang);
            Hero {
                number,
                unit,
                word,
                ..Hero::default()
            }
        }
        (None, None) => Hero {
            unit: oil::choose_limit(lang),
            word,
            ..Hero::default()
        },
    }
}

/// One pan.
#[component]
pub fn PanRow(
    /// The pan.
    pan: PanToday,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let day = bench.look(|kitchen, now| kitchen.today(now));
    let name = pan.name.clone();
    let claims = pan
        .claims
        .iter()
        .map(|c| setup::claim_name(c.what, lang).to_lowercase());
    let fat = oil::fat_name(pan.fat, lang).to_owned();
    let kept: Vec<String> = std::iter::once(fat).chain(claims).collect();
    let filtered = pan.last_filtered.map_or_else(
        || title(Title::NeverFiltered, lang).to_owned(),
        |done| screens::last_filtered(u32::try_from(day.since(done.day)).unwrap_or(0), lang),
    );
    let right = match &pan.life {
        Some(life) => {
            let hero = hero(life, lang);
            view! {
                <span class="row-days" data-testid=format!("days-{name}")>
                    <span class="days-line">{hero.before}" "<span class="days">{hero.number}</span>" "{hero.unit}</span>
                    {hero.under.map(|under| view! { <span class="under">{under}</span> })}
                    <b class="word">{hero.word}</b>
                    {hero.likely.map(|likely| view! { <span class="small soft">{likely}</span> })}
                </span>
            }
            .into_any()
        }
        None => view! { <span class="row-days soft" data-testid=format!("days-{name}")>{oil::no_oil(lang)}</span> }
            .into_any(),
    };
    let score = pan.life.as_ref().and_then(|life| {
        let score = oil::score(life.score?.now, lang);
        Some(match life.basis {
            Basis::Readings => score,
            Basis::UsualDaysAndPriors => format!("{score}, {}", oil::from_usual_days(lang)),
        })
    });
    view! {
        <a class="row pan-row" href=format!("#{}", Screen::Pan(pan.pan).address()) data-testid=format!("pan-{name}")>
            <PanDrawing
                shade=Shade::new(pan.shade.unwrap_or(1))
                level=if pan.life.is_some() { pan.level } else { 0 }
                number=number(&name)
            />
            <span class="row-words">
                <b>{run::pan_title(&name, lang)}</b>
                <span>{kept.join(" · ")}</span>
                {score.map(|score| view! { <span class="small soft">{score}</span> })}
                {if pan.due {
                    view! { <span class="due-mark" data-testid=format!("due-{name}")>{line(Line::Due, lang)}</span> }.into_any()
                } else {
                    view! { <span class="small soft">{filtered}</span> }.into_any()
                }}
            </span>
            {right}
        </a>
    }
}
