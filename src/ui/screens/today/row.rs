//! One pan in the list: its oil in its colour, days left as the hero, the word second, the score third.

use crate::domain::claim::ClaimKind;
use crate::domain::ids::PanId;
use crate::domain::oil_life::Basis;
use crate::domain::time::Day;
use crate::kitchen::today::{LifeToday, PanToday, ParkedToday};
use crate::nodes;
use crate::ui::node::{Element, Node, el};
use crate::ui::parts::{Rank, Shade, button, pan_drawing};
use crate::ui::screen::Screen;
use crate::words::screens::{self, Screen as Title, screen as title};
use crate::words::today::{self as words, Line, line};
use crate::words::{Lang, kept_for, oil, rhythm, run, setup};

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
    /// The number; none without a limit to count to.
    pub number: String,
    /// What it counts, beneath it: "of your usual 9 days", "days left"; what to do where there is none.
    pub under: String,
    /// The word of the oil.
    pub word: &'static str,
    /// What the model says while the owner's own count leads.
    pub likely: Option<String>,
}

/// The hero of an oil: the owner's own count leads while the log knows no better.
pub fn hero(life: LifeToday, lang: Lang) -> Hero {
    let word = life.word.map_or("", |word| words::word(word, lang));
    if let (None, Some(level)) = (life.usual, life.holds) {
        let (before, number, under) = words::holds_hero(level, lang);
        return Hero {
            before,
            number,
            under: under.to_owned(),
            word,
            ..Hero::default()
        };
    }
    match (life.usual, life.days_left) {
        (Some(usual), days) => {
            let (before, under) = words::usual_hero(usual.days, lang);
            Hero {
                before,
                number: usual.today.to_string(),
                under,
                word,
                likely: match life.holds {
                    Some(level) => Some(words::likely_holds(level, lang)),
                    None => days.map(|days| words::likely_left(days, lang)),
                },
            }
        }
        (None, Some(days)) => {
            let (number, unit) = words::days_hero(days, lang);
            Hero {
                number,
                under: words::days_left_under(unit, lang),
                word,
                ..Hero::default()
            }
        }
        (None, None) => Hero {
            under: oil::choose_limit(lang).to_owned(),
            word,
            ..Hero::default()
        },
    }
}

/// One pan, as it stands on `day`, and beneath it what it is kept for: one touch loses that, and is `on_lost`.
pub fn pan_row(
    pan: &PanToday,
    day: Day,
    lang: Lang,
    on_lost: impl Fn(PanId, ClaimKind) + Copy + Send + Sync + 'static,
) -> Node {
    let id = pan.pan;
    let stands = pan.claims.iter().map(|what| {
        let (what, testid) = (*what, format!("lose-{}-{}", pan.name, what.key()));
        let label = kept_for::log_lost(&pan.name, what, lang);
        button(Rank::Plain, label, testid, move || on_lost(id, what))
    });
    let promises: Vec<Element> = stands.collect();
    let any = !promises.is_empty();
    let promises = any.then(|| el("div").class("row-promises").children(promises));
    nodes![row(pan, day, lang), promises]
}

fn row(pan: &PanToday, day: Day, lang: Lang) -> Element {
    let name = pan.name.as_str();
    let claims = pan
        .claims
        .iter()
        .map(|claim| setup::claim_name(*claim, lang).to_ascii_lowercase());
    let fat = oil::fat_name(pan.fat, lang).to_owned();
    let kept: Vec<String> = std::iter::once(fat).chain(claims).collect();
    let score = pan.life.filter(|_| not_to_light(pan).is_none()).and_then(|life| {
        let score = oil::score(life.score?, lang);
        Some(match life.basis {
            Basis::Readings => score,
            Basis::UsualDaysAndPriors => format!("{score}, {}", oil::from_usual_days(lang)),
        })
    });
    let small = |words: String| el("span").class("small soft").text(words);
    let put_off = pan.put_off.as_ref();
    let moved = put_off.map(|put_off| small(rhythm::moved(put_off, day, lang)).testid(format!("moved-{name}")));
    let job = pan
        .job
        .as_ref()
        .map(|of| small(rhythm::on_job(of, lang)).testid(format!("job-{name}")));
    let filtered = if pan.due {
        let due = el("span").class("due-mark").testid(format!("due-{name}"));
        due.text(line(Line::Due, lang))
    } else {
        small(pan.last_filtered.map_or_else(
            || title(Title::NeverFiltered, lang).to_owned(),
            |done| screens::last_filtered(u32::try_from(day.since(done)).unwrap_or(0), lang),
        ))
    };
    let lost = pan.lost.iter().map(|lost| {
        let mark = el("span").class("due-mark").testid(format!("lost-{name}"));
        mark.text(kept_for::lose(lost.what, lang))
    });
    let level = if pan.life.is_some() { pan.level } else { 0 };
    let words = el("span")
        .class("row-words")
        .child(el("b").text(run::pan_title(name, lang)))
        .child(el("span").text(kept.join(" · ")))
        .child(job)
        .child(score.map(small))
        .children(pan.parked.iter().map(|parked| small(parked_line(parked, lang))))
        .children(lost)
        .child(filtered)
        .child(moved);
    el("a")
        .class("row pan-row")
        .attr("href", format!("#{}", Screen::Pan(pan.pan).address()))
        .testid(format!("pan-{name}"))
        .child(pan_drawing(Shade::new(pan.shade.unwrap_or(1)), level, number(name)))
        .child(words)
        .child(days(pan, lang))
}

/// Oil of a pan that stands in a machine.
pub fn parked_line(parked: &ParkedToday, lang: Lang) -> String {
    words::parked(&parked.machine, parked.since, parked.fat, parked.volume, lang)
}

/// Why a pan that has an oil must not be lit now, and the stem of its mark's test id.
const fn not_to_light(pan: &PanToday) -> Option<(Line, &'static str)> {
    if pan.life.is_none() {
        None
    } else if pan.out {
        Some((Line::OilIsOut, "out"))
    } else if pan.low {
        Some((Line::PanIsLow, "low"))
    } else {
        None
    }
}

/// Why it must not be lit; else days left, the word, and what the model says beside the owner's own count.
fn days(pan: &PanToday, lang: Lang) -> Element {
    let days = el("span").class("row-days").testid(format!("days-{}", pan.name));
    let Some(life) = pan.life else {
        return days.class("soft").text(oil::no_oil(lang));
    };
    if let Some((why, stem)) = not_to_light(pan) {
        let mark = el("span").class("due-mark").testid(format!("{stem}-{}", pan.name));
        return days.child(mark.text(line(why, lang)));
    }
    let hero = hero(life, lang);
    let line = (!hero.number.is_empty()).then(|| {
        el("span")
            .class("days-line")
            .text(hero.before)
            .text(" ")
            .child(el("span").class("days").text(hero.number))
            .text(" ")
    });
    days.child(line)
        .child(el("span").class("under").text(hero.under))
        .child(el("b").class("word").text(hero.word))
        .child(hero.likely.map(|likely| el("span").class("small soft").text(likely)))
}
