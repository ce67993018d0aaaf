//! The log as a file: made here, and read into an empty phone.

use leptos::prelude::expect_context;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlInputElement};

use crate::browser::idb::IdbJournal;
use crate::browser::{clock, files};
use crate::domain::ids::Dev;
use crate::domain::time::Day;
use crate::nodes;
use crate::store::export::{About, export};
use crate::store::import::{ImportFault, ImportRefusal, import};
use crate::store::{Journal, World};
use crate::ui::bench::Bench;
use crate::ui::boot::Reboot;
use crate::ui::node::{Element, Held, Node, Words, el, live};
use crate::ui::parts::{Rank, Tone, button, card, notice};
use crate::ui::prefs;
use crate::ui::screen::{self, Screen};
use crate::words::Lang;
use crate::words::log::{Office, office, refused_at};
use crate::words::office::{self as said, Line, line};
use crate::words::screens;

/// Makes the export and hands it to the phone. `None` when no file was made.
async fn make_export(bench: Bench) -> Option<()> {
    let loaded = bench.journal().load().await.ok()?;
    let (about, day) = bench.look(|kitchen, now| {
        let set_up = kitchen.ledger().book.kitchen.as_ref()?;
        let about = About {
            kitchen: set_up.kitchen,
            name: set_up.name.clone(),
            world: bench.world,
            made_at: now.wall,
        };
        Some((about, kitchen.today(now).date().to_string()))
    })?;
    let text = export(&loaded, &about).ok()?;
    files::download(&said::file_name(&about.name, &day), "application/json", &text).ok()?;
    if bench.world == World::Real {
        prefs::set_exported(about.made_at);
    }
    Some(())
}

/// Calendar days since the last export from this phone.
fn days_ago(bench: Bench) -> Option<u32> {
    let at = prefs::exported()?;
    let days = bench.look(|kitchen, now| kitchen.today(now).since(Day::of(at, now.off_min, 0)));
    u32::try_from(days.max(0)).ok()
}

/// Export: the whole log as one file.
#[must_use]
pub fn export_card(bench: Bench) -> Element {
    let lang = bench.lang;
    let outcome = Held::new(None::<bool>);
    let drawn = live(move || {
        let made = outcome.get();
        let unreadable = bench.read(|kitchen, _| kitchen.unreadable().len());
        let unreadable =
            (unreadable > 0).then(|| el("p").testid("unreadable").text(said::unreadable(unreadable, lang)));
        let make = button(Rank::Second, office(Office::Export, lang), "export", move || {
            outcome.set(None);
            spawn_local(async move { outcome.set(Some(make_export(bench).await.is_some())) });
        });
        let told = made.map(|made| {
            let words = if made {
                office(Office::Exported, lang)
            } else {
                line(Line::ExportFailed, lang)
            };
            el("p")
                .attr("role", "status")
                .class_if("field-error", !made)
                .testid("export-told")
                .text(words)
        });
        // Nobody misses the demo's log.
        let last = (bench.world == World::Real).then(|| {
            let last = screens::last_export(days_ago(bench), lang);
            el("p").class("soft").testid("last-export").text(last)
        });
        nodes![last, unreadable, make, told,]
    });
    card("export-card")
        .child(el("h2").text(line(Line::TheLog, lang)))
        .child(el("p").text(office(Office::ExportText, lang)))
        .child(drawn)
}

/// How an import went.
#[derive(Clone)]
enum Told {
    /// Came in: so many entries, so many lines that the exporting app could not read.
    In(usize, usize),
    /// Refused whole.
    Refused(ImportRefusal),
    /// The file or the log did not answer.
    Failed(Line),
}

/// Reads a file into this phone's own log, if that is empty.
async fn take_in(file: web_sys::File) -> Told {
    let Ok(text) = files::read_text(&file).await else {
        return Told::Failed(Line::ReadFailed);
    };
    let fresh = Dev(u64::from_le_bytes(clock::random_bytes()));
    let Ok(journal) = IdbJournal::open(World::Real.database(), fresh).await else {
        return Told::Failed(Line::WriteFailed);
    };
    let Ok(held) = journal.load().await else {
        return Told::Failed(Line::WriteFailed);
    };
    match import(&text, World::Real, held.records.len() + held.unreadable.len()) {
        Err(refusal) => Told::Refused(refusal),
        Ok(good) => match journal.append(&good.records).await {
            Ok(()) => Told::In(good.records.len(), good.unreadable.len()),
            Err(_) => Told::Failed(Line::WriteFailed),
        },
    }
}

/// A refusal in words: what it means, then where and why.
fn refusal(refused: &ImportRefusal, lang: Lang) -> String {
    let means = match refused.why {
        ImportFault::NotEmpty => return office(Office::ImportRefusedEntries, lang).to_owned(),
        ImportFault::OtherWorld { .. } => office(Office::ImportRefusedDemo, lang),
        _ => office(Office::ImportRefusedBroken, lang),
    };
    format!("{means} {}.", refused_at(refused.line, &refused.why.to_string(), lang))
}

/// "Read an export file": offered on a first start and in the office. Needs no bench, and starts the app anew in the
/// kitchen's own world once everything is in.
#[must_use]
pub fn import_button(label: impl Words) -> Node {
    let lang = Lang::En;
    let reboot = expect_context::<Reboot>();
    let told = Held::new(None::<Told>);
    let chosen = move |event: &Event| {
        let input = event.target().and_then(|t| t.dyn_into::<HtmlInputElement>().ok());
        let Some(file) = input.as_ref().and_then(files::picked) else {
            return;
        };
        told.set(None);
        spawn_local(async move { told.set(Some(take_in(file).await)) });
    };
    let open = move || {
        prefs::set_world(Some(World::Real));
        screen::go(Screen::Today);
        reboot.now();
    };
    let refused = move |why: String| notice(Tone::Wrong, line(Line::ChooseFile, lang), why, "import-refused");
    let outcome = live(move || match told.get()? {
        Told::In(entries, unreadable) => {
            let text = said::imported(entries, unreadable, lang);
            let done = notice(Tone::Quiet, office(Office::Imported, lang), text, "import-done");
            Some(done.child(button(Rank::Second, line(Line::GoOn, lang), "import-go-on", open)))
        }
        Told::Refused(why) => Some(refused(refusal(&why, lang))),
        Told::Failed(why) => Some(refused(line(why, lang).to_owned())),
    });
    let input = el("input")
        .attr("type", "file")
        .attr("accept", ".json,application/json")
        .testid("import-file")
        .on("change", chosen);
    let choose = el("label")
        .class("file-button")
        .child(el("span").text(label))
        .child(input);
    nodes![choose, outcome]
}
