//! Before anything is set up: look round with a demo kitchen, or set up one's own.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::browser::idb::IdbJournal;
use crate::browser::{clock, page};
use crate::demo;
use crate::domain::ledger::Book;
use crate::domain::time::Day;
use crate::kitchen::Refused;
use crate::store::{Journal, World};
use crate::ui::bench::{Bench, use_bench};
use crate::ui::boot::Reboot;
use crate::ui::cards::use_cards;
use crate::ui::frame::empties;
use crate::ui::office::ImportButton;
use crate::ui::parts::{Button, Card, Notice, Rank, Shell, Tone};
use crate::ui::prefs;
use crate::ui::screen::{self, Screen};
use crate::words::screens::{Screen as Title, cautions, screen as title};
use crate::words::today::{Line, line};
use crate::words::{Lang, cards};

/// One kitchen is as good as another: everybody looks round in the same.
const SEED: u64 = 1_859;

/// Before anything is set up: look round with a demo kitchen, or set up one's own.
#[component]
pub fn First() -> impl IntoView {
    let lang = Lang::En;
    let desk = use_cards();
    let reboot = expect_context::<Reboot>();
    let making = RwSignal::new(false);
    let fault = RwSignal::new(None::<String>);
    let look_round = move |()| {
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
    };
    // Shown over a kitchen that is open, its standing warnings stand here too.
    let empty = use_context::<Bench>().map_or_else(|| Signal::stored(Vec::new()), empties);
    let set_up = move |()| {
        prefs::set_world(Some(World::Real));
        screen::go(Screen::SetUp);
        reboot.now();
    };
    view! {
        <div data-testid="screen-first">
            <Shell
                title=title(Title::AppName, lang).to_owned()
                emergency=(cards::fire_button(lang).to_owned(), cards::burn_button(lang).to_owned())
                on_fire=desk.fire()
                on_burn=desk.burn()
                empty=empty
                tabs=Vec::new()
                tabs_label=""
                current=Signal::stored("first")
                on_tab=Callback::new(|_| ())
            >
                <p class="lead">{line(Line::ThisIsFor, lang)}</p>
                {move || fault.get().map(|why| view! {
                    <Notice tone=Tone::Wrong title=line(Line::NoDemo, lang) text=why testid="demo-fault"/>
                })}
                <Card testid="choose-demo">
                    <Button rank=Rank::First label=title(Title::StartDemo, lang).to_owned() asleep=making on_press=look_round testid="start-demo"/>
                    <p class="soft" role="status">
                        {move || line(if making.get() { Line::MakingDemo } else { Line::DemoIs }, lang)}
                    </p>
                </Card>
                <Card testid="choose-set-up">
                    <div class="big-choice">
                        <Button label=title(Title::StartSetUp, lang).to_owned() asleep=making on_press=set_up testid="start-set-up"/>
                    </div>
                    <p class="soft">{line(Line::SetUpTakes, lang)}</p>
                </Card>
                <Card testid="choose-import">
                    <ImportButton label=title(Title::StartImport, lang)/>
                </Card>
                <section class="cautions" data-testid="cautions">
                    <h2>{title(Title::Cautions, lang)}</h2>
                    <ul>{cautions(lang).iter().map(|text| view! { <li>{*text}</li> }).collect_view()}</ul>
                </section>
            </Shell>
        </div>
    }
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

/// On every screen of the demo: that it is one, and the way out, which deletes its database.
#[component]
pub fn DemoBand() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let reboot = expect_context::<Reboot>();
    let leave = move |()| {
        bench.journal().close();
        prefs::set_world(None);
        spawn_local(async move {
            // Another window that still holds it lets go by itself; the next demo begins by deleting it again.
            let _ = IdbJournal::delete(World::Demo.database()).await;
            reboot.now();
        });
    };
    view! {
        <aside class="demo-band" data-testid="demo-band">
            <p>{line(Line::DemoBand, lang)}</p>
            <Button rank=Rank::Plain label=line(Line::LeaveDemo, lang).to_owned() on_press=leave testid="leave-demo"/>
        </aside>
    }
}
