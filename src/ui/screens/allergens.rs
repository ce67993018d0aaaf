//! The allergen sheet: pan by pan what oil and food carry, by the log, to be gone through, printed and put right.

use crate::browser::page;
use crate::domain::allergen_sheet::{SheetRow, is_open, sheet, short};
use crate::domain::claim::ClaimKind;
use crate::domain::facts::AllergensChecked;
use crate::domain::quick::{self, Quick, Said};
use crate::kitchen::Order;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::frame;
use crate::ui::node::{Element, Node, el, live};
use crate::ui::office::at_this_phone;
use crate::ui::parts::{Rank, button, card};
use crate::ui::screen::Screen;
use crate::words::kept_for::{self as words, Line, line};
use crate::words::{Lang, dates, log_lines, oil, run};

/// The allergen sheet.
#[must_use]
pub fn allergens(bench: Bench) -> Element {
    let lang = bench.lang;
    let drawn = live(move || {
        bench.read(|kitchen, now| {
            let (ledger, day) = (kitchen.ledger(), kitchen.today(now));
            let moment = dates::moment(now.wall, now.off_min, lang);
            let last = ledger.allergens_checked().map_or_else(
                || line(Line::SheetNever, lang).to_owned(),
                |checked| {
                    let who = checked
                        .who
                        .map_or_else(|| "?".to_owned(), |id| log_lines::who(&ledger.book, id));
                    words::gone_through(&who, &dates::moment(checked.at, checked.off_min, lang), lang)
                },
            );
            let rows = sheet(ledger, day).into_iter().map(|row| {
                let stands = ledger.claims_now(row.pan, day, now.wall);
                let stands: Vec<ClaimKind> = stands.iter().map(|claim| claim.what).collect();
                pan(&row, &stands, lang)
            });
            let check = is_open(ledger, day).then(|| {
                nodes![
                    el("p").text(line(Line::SheetText, lang)),
                    button(
                        Rank::First,
                        line(Line::SheetChecked, lang),
                        "sheet-checked",
                        move || check(bench)
                    ),
                ]
            });
            nodes![
                el("p").testid("as-of").text(words::as_of(&moment, lang)),
                el("div").class("allergens").children(rows),
                el("p").class("soft").text(line(Line::SheetNot, lang)),
                el("p").class("soft").testid("sheet-last").text(last),
                check,
            ]
        })
    });
    let print = button(Rank::Second, line(Line::Print, lang), "print", page::print);
    let holds = nodes![drawn, print, at_this_phone(bench)];
    el("div")
        .testid("screen-allergens")
        .child(frame(Screen::Allergens, line(Line::Sheet, lang), Node::Nothing, holds))
}

fn pan(row: &SheetRow, stands: &[ClaimKind], lang: Lang) -> Element {
    let term = |head, words: String| nodes![el("dt").text(line(head, lang)), el("dd").text(words)];
    let fat = format!(
        "{}: {}",
        oil::fat_name(row.fat, lang),
        words::fat_allergen(row.allergen, lang)
    );
    let marks = stands.iter().map(|what| words::stands(*what, lang));
    let marks = marks.chain(row.lost.iter().map(|what| words::lose(*what, lang)));
    card(format!("sheet-{}", row.name))
        .child(el("h2").text(run::pan_title(&row.name, lang)))
        .children(marks.map(|mark| el("p").class("due-mark").text(mark)))
        .child(
            el("dl")
                .child(term(Line::ColumnFat, fat))
                .child(term(Line::ColumnCarries, words::exposures(row.carried.iter(), lang))),
        )
}

/// Somebody has gone through it as it stands now.
fn check(bench: Bench) {
    let who = bench.me();
    let drafts = bench.look(|kitchen, now| {
        let ledger = kitchen.ledger();
        let said = Said {
            what: Quick::AllergensChecked(AllergensChecked {
                sheet: short(&sheet(ledger, kitchen.today(now))),
                why: None,
            }),
            who,
            at: None,
            sure: true,
        };
        quick::drafts(ledger, said, *now)
    });
    // Refused only while nobody is set up, and then there is no sheet.
    bench.send(Order::Write(drafts.unwrap_or_default()));
}
