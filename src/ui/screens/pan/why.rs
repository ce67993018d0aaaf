//! Why: each figure, unfolding into the entries and sources it rests on.

use super::shown::Shown;
use crate::domain::ids::EntryId;
use crate::domain::oil_life::{Because, Figure, OilLife, Quantity};
use crate::ui::node::{Element, Node, el};
use crate::ui::parts::{Tone, notice};
use crate::ui::screen::Screen;
use crate::words::today::{self, Line, line};
use crate::words::{Lang, oil, pan as said_of};

/// The level, days left, the chance, the score, where it settles.
pub fn why(shown: &Shown, life: &OilLife, lang: Lang) -> Element {
    let unfold = |figure, testid, words| unfold(shown, figure, testid, words, lang);
    let polar = &life.polar;
    let level = said_of::level(Quantity::Polar, polar.median, polar.low, polar.high, lang);
    let days = life.days_left.map(|days| today::likely_left(days, lang));
    let chance = life.chance_over.map(|chance| {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a chance from 0 to 1"
        )]
        let percent = (chance * 100.0).round() as u8;
        oil::chance_over(percent, lang)
    });
    let score = life.score.map(|s| oil::score_between(s.now, s.low, s.high, lang));
    let by = life.score.map(|s| said_of::limited_by(s.limited_by, lang));
    let settles = life.settles_at.map(|settles| {
        let limit = shown.limit.filter(|_| settles.quantity == Quantity::Polar);
        let words = said_of::settles(settles.level.before_top_up, limit, lang);
        el("p").testid("settles").text(words)
    });
    el("section")
        .testid("why")
        .child(el("h2").text(line(Line::Why, lang)))
        .child(unfold(Figure::Level, "why-level", level))
        .child(days.map(|words| unfold(Figure::DaysLeft, "why-days", words)))
        .child(chance.map(|words| chance_over(words, lang)))
        .child(score.map(|words| unfold(Figure::Score, "why-score", words)))
        .child(by.map(|text| el("p").text(text)))
        .child(settles)
}

/// The chance of being over, which rests on what days left, just above it, rests on.
fn chance_over(words: String, lang: Lang) -> Element {
    el("details")
        .testid("why-chance")
        .child(el("summary").testid("why-chance-open").text(words))
        .child(el("p").text(said_of::as_days_left(lang)))
}

/// A figure over what it rests on; days left and score rest on the level besides.
fn unfold(shown: &Shown, figure: Figure, testid: &'static str, words: String, lang: Lang) -> Element {
    let behind = shown.because.iter().filter(|(b, _)| b.behind().contains(&figure));
    let lines = behind.map(|(because, text)| match because {
        Because::Entry { entry, .. } => el("li").child(entry_link(*entry, text)),
        Because::FreshValue { .. }
        | Because::PublishedRate(_)
        | Because::UsualDays(_)
        | Because::Ahead { .. }
        | Because::Limit(..)
        | Because::UnloggedServices(_)
        | Because::GuessedHours(_)
        | Because::GuessedTopUps
        | Because::Rate { .. }
        | Because::Taught { .. }
        | Because::Powder { .. }
        | Because::Instrument { .. }
        | Because::UnknownAge => el("li").text(text.clone()),
    });
    let level = (figure != Figure::Level).then(|| el("li").text(said_of::and_the_level(lang)));
    el("details")
        .testid(testid)
        .child(el("summary").testid(format!("{testid}-open")).text(words))
        .child(el("ul").class("because").child(level).children(lines))
}

fn entry_link(entry: EntryId, text: &str) -> Element {
    let href = format!("#{}", Screen::Log(Some(entry)).address());
    el("a").attr("href", href).testid("because-entry").text(text.to_owned())
}

/// Readings that do not fit what was believed: asked about, kept, never dropped.
pub fn contradicting(shown: &Shown, lang: Lang) -> Node {
    if shown.contradicting.is_empty() {
        return Node::Nothing;
    }
    let lines = shown
        .contradicting
        .iter()
        .map(|(entry, text)| el("li").child(entry_link(*entry, text)));
    let (title, ask) = (said_of::does_not_fit(lang), said_of::ask_of_reading(lang));
    notice(Tone::Quiet, title, ask, "contradicting")
        .child(el("ul").class("because").children(lines))
        .child(el("p").text(said_of::kept_all_the_same(lang)))
        .into()
}
