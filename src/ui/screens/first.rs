//! Before anything is set up: look round with a demo kitchen, or set up one's own.

use leptos::prelude::expect_context;
use leptos::task::spawn_local;

use crate::browser::idb::IdbJournal;
use crate::browser::{clock, page};
use crate::demo;
use crate::domain::ledger::Book;
use crate::domain::time::Day;
use crate::kitchen::Refused;
use crate::nodes;
use crate::store::{Journal, World};
use crate::ui::bench::Bench;
use crate::ui::boot::Reboot;
use crate::ui::cards::use_cards;
use crate::ui::frame::empties;
use crate::ui::node::{Act, Element, Held, Node, Tell, el, live};
use crate::ui::office::import_button;
use crate::ui::parts::{Rank, Shell, Tone, button, card, notice};
use crate::ui::prefs;
use crate::ui::screen::{self, Screen};
use crate::words::Lang;
use crate::words::screens::{Screen as Title, cautions, screen as title};
use crate::words::today::{Line, line};

/// One kitchen is as good as another: everybody looks round in the same.
const SEED: u64 = 1_859;

/// Before anything is set up: look round with a demo kitchen, or set up one's own. `over` is the kitchen that is open
/// beneath it, if any: its standing warnings stand here too, and those of one that was left do not.
#[must_use]
pub fn first(over: Option<Bench>) -> Element {
    let lang = Lang::En;
    let reboot = expect_context::<Reboot>();
    let making = Held::new(false);
    let fault = Held::new(None::<String>);
    let set_up = move || {
        prefs::set_world(Some(World::Real));
        screen::go(Screen::SetUp);
        reboot.now();
    };
    let told = live(move || {
        let why = fault.get()?;
        Some(notice(Tone::Wrong, line(Line::NoDemo, lang), why, "demo-fault"))
    });
    let demo = live(move || {
        let making_it = making.get();
        let says = line(if making_it { Line::MakingDemo } else { Line::DemoIs }, lang);
        let start = button(Rank::First, title(Title::StartDemo, lang), "start-demo", move || {
            look_round(reboot, making, fault);
        });
        nodes![
            start.flag("disabled", making_it),
            el("p").class("soft").attr("role", "status").text(says),
        ]
    });
    let own = live(move || {
        let start = button(Rank::Second, title(Title::StartSetUp, lang), "start-set-up", set_up);
        start.flag("disabled", making.get())
    });
    let own = card("choose-set-up")
        .child(el("div").class("big-choice").child(own))
        .child(el("p").class("soft").text(line(Line::SetUpTakes, lang)));
    let take_in = card("choose-import").child(import_button(title(Title::StartImport, lang)));
    let mind = el("section")
        .class("cautions")
        .testid("cautions")
        .child(el("h2").text(title(Title::Cautions, lang)))
        .child(el("ul").children(cautions(lang).iter().map(|text| el("li").text(*text))));
    let shell = Shell {
        title: title(Title::AppName, lang).into(),
        eyebrow: Node::Nothing,
        emergency: use_cards().buttons(lang),
        empty: over.map_or(Node::Nothing, empties),
        tabs: Vec::new(),
        tabs_label: "",
        current: "first",
        on_tab: Tell::new(|_| ()),
        holds: nodes![
            el("p").class("lead").text(line(Line::ThisIsFor, lang)),
            told,
            card("choose-demo").child(demo),
            own,
            take_in,
            mind,
        ],
    };
    el("div").testid("screen-first").child(shell.draw())
}

fn look_round(reboot: Reboot, making: Held<bool>, fault: Held<Option<String>>) {
    making.set(true);
    fault.set(None);
    // The frame that says so is shown first; making the demo holds the page for a moment.
    page::after_paint(move || {
        spawn_local(async move {
            match make_demo().await {
                Ok(()) => {
                    prefs::set_world(Some(World::Demo));
                    screen::go(Screen::Today);
                    reboot.now();
                }
                Err(why) => {
                    making.set(false);
                    fault.set(Some(why.to_string()));
                }
            }
        });
    });
}

/// Makes the demo's own database anew: deleted, played, written in one go.
async fn make_demo() -> Result<(), Refused> {
    // A zone this browser does not know leaves the phone's own in force.
    let _ = clock::use_zone(demo::ZONE);
    let now = clock::now();
    let today = Day::of(now.wall, now.off_min, Book::DAY_START_MIN);
    let played = demo::play(SEED, today, clock::offset).await?;
    IdbJournal::delete(World::Demo.database()).await?;
    let journal = IdbJournal::open(World::Demo.database(), played.dev).await?;
    journal.append(&played.records).await?;
    if let Some(owner) = played.cast.people.first() {
        prefs::set_me(*owner);
    }
    Ok(())
}

/// On every screen of the demo: that it is one, and the way out, which deletes its database once that was said and
/// meant. Not from a window that only shows it: another one may be in the middle of a job.
#[must_use]
pub fn demo_band(bench: Bench) -> Element {
    let lang = bench.lang;
    let reboot = expect_context::<Reboot>();
    let elsewhere = Held::new(false);
    let asked = Held::new(false);
    let leave = Act::new(move || {
        asked.set(false);
        let journal = bench.journal();
        spawn_local(async move {
            if !journal.is_mine().await {
                elsewhere.set(true);
                return;
            }
            journal.close();
            prefs::set_world(None);
            // The next demo begins by deleting it again.
            let _ = IdbJournal::delete(World::Demo.database()).await;
            reboot.now();
        });
    });
    let refused = live(move || {
        let words = el("p").attr("role", "alert").testid("demo-elsewhere");
        elsewhere.get().then(|| words.text(line(Line::DemoElsewhere, lang)))
    });
    let meant = live(move || {
        let leave = leave.clone();
        asked.get().then(|| {
            el("div")
                .class("demo-ask")
                .attr("role", "alert")
                .testid("leaving-demo")
                .child(el("p").text(line(Line::LeavingDemo, lang)))
                .child(button(
                    Rank::Second,
                    line(Line::LeaveDemoNo, lang),
                    "leave-demo-no",
                    move || {
                        asked.set(false);
                    },
                ))
                .child(button(
                    Rank::Second,
                    line(Line::LeaveDemoYes, lang),
                    "leave-demo-yes",
                    leave,
                ))
        })
    });
    let ask = Act::new(move || {
        elsewhere.set(false);
        asked.set(true);
    });
    band(lang, ask).child(meant).child(refused)
}

/// The band as it is drawn.
#[must_use]
pub fn band(lang: Lang, leave: Act) -> Element {
    el("aside")
        .class("demo-band")
        .testid("demo-band")
        .child(el("p").text(line(Line::DemoBand, lang)))
        .child(button(Rank::Plain, line(Line::LeaveDemo, lang), "leave-demo", leave))
}
