//! The fields of a quick entry, each a choice, a line or the pad over one slot of its form.

use super::desk::{Desk, Send};
use super::testid;
use crate::domain::claim::ClaimKind;
use crate::domain::facts::oil::{Load, SignKind};
use crate::domain::fat::Fat;
use crate::domain::quick::{After, AgeSaid, Gauge, Kind, Slot, others as other_places, parts};
use crate::domain::units::{Unit, Volume};
use crate::nodes;
use crate::ui::node::{Held, Node, Tell, Text, el, follow, live, worked_out};
use crate::ui::parts::{Choice, Field, FieldKind, Pad, PadWords, Rank, button};
use crate::ui::prefs;
use crate::words::log::{Office, office};
use crate::words::oil::fat_name;
use crate::words::screens::add::{self, Add, add};
use crate::words::setup::{claim_name, load_name, sign_name, unit_name};

type Options = Vec<(String, String)>;

/// A choice over a slot.
fn slotted(desk: Desk, of: Slot, legend: &'static str, options: Options) -> Node {
    live(move || {
        let choice = Choice {
            legend: legend.into(),
            options: options.clone(),
            chosen: desk.chosen(of),
            on_choose: Tell::new(move |key: String| desk.set(of, &key)),
            error: None,
            testid: testid(of).into(),
        };
        choice.draw()
    })
}

fn option(key: &str, words: impl Into<String>) -> (String, String) {
    (key.to_owned(), words.into())
}

/// What it is counted in.
pub fn units(desk: Desk) -> Node {
    let lang = desk.lang();
    let units = Unit::ALL.iter().map(|unit| option(unit.key(), unit_name(*unit, lang)));
    slotted(desk, Slot::Unit, office(Office::CountedIn, lang), units.collect())
}

/// How busy it was.
pub fn loads(desk: Desk) -> Node {
    let lang = desk.lang();
    let loads = Load::ALL.iter().map(|load| option(load.key(), load_name(*load, lang)));
    slotted(desk, Slot::Load, office(Office::HowBusy, lang), loads.collect())
}

/// What was noticed.
pub fn signs(desk: Desk) -> Node {
    let lang = desk.lang();
    let signs = SignKind::ALL
        .iter()
        .map(|sign| option(sign.key(), sign_name(*sign, lang)));
    slotted(desk, Slot::Sign, add(Add::Sign, lang), signs.collect())
}

/// What is read, and with what.
pub fn gauges(desk: Desk) -> Node {
    let lang = desk.lang();
    let gauges = desk.bench.look(|kitchen, _| {
        let ledger = kitchen.ledger();
        let gauges = Gauge::offered(ledger).into_iter();
        gauges
            .map(|gauge| (gauge.key(), add::gauge(gauge, &ledger.book, lang)))
            .collect()
    });
    slotted(desk, Slot::Gauge, office(Office::Instrument, lang), gauges)
}

/// Into which pan or machine, or out of which machine.
pub fn others(desk: Desk) -> Node {
    let lang = desk.lang();
    let places = desk.bench.look(|kitchen, _| {
        let ledger = kitchen.ledger();
        let places = other_places(ledger, desk.pan).into_iter();
        places
            .map(|other| (other.key(), add::other(ledger, other, lang)))
            .collect()
    });
    slotted(desk, Slot::To, add(Add::Into, lang), places)
}

/// Which promise.
pub fn claims(desk: Desk) -> Node {
    let lang = desk.lang();
    let mut kinds: Vec<ClaimKind> = desk.bench.look(|kitchen, now| {
        let claims = kitchen
            .ledger()
            .claims_standing(desk.pan, kitchen.today(now))
            .into_iter();
        claims.map(|claim| claim.what).collect()
    });
    kinds.dedup();
    let claims = kinds.into_iter().map(|kind| option(kind.key(), claim_name(kind, lang)));
    slotted(desk, Slot::Claim, add(Add::Promise, lang), claims.collect())
}

/// What follows an oil change.
pub fn afters(desk: Desk) -> Node {
    let lang = desk.lang();
    let afters = After::ALL
        .iter()
        .map(|after| option(after.key(), add::after(*after, lang)));
    nodes![
        slotted(desk, Slot::After, add(Add::After, lang), afters.collect()),
        el("p").class("hint").text(add(Add::ComesOut, lang)),
    ]
}

/// How old the oil is that goes in.
pub fn ages(desk: Desk) -> Node {
    let lang = desk.lang();
    let ages = AgeSaid::ALL.iter().map(|age| option(age.key(), add::age(*age, lang)));
    let since = worked_out(move || desk.text(Slot::Age) == AgeSaid::Since.key());
    nodes![
        slotted(desk, Slot::Age, add(Add::Age, lang), ages.collect()),
        live(move || since
            .get()
            .then(|| line(desk, Slot::FreshOn, Add::FreshOn, FieldKind::Date))),
    ]
}

/// Another fat than the pan is kept with, and the batch.
pub fn fats(desk: Desk) -> Node {
    let lang = desk.lang();
    let fats = Fat::ALL.iter().map(|fat| option(fat.key(), fat_name(*fat, lang)));
    nodes![
        slotted(desk, Slot::Fat, office(Office::WhichFat, lang), fats.collect()),
        labelled(desk, Slot::Batch, office(Office::Batch, lang).into(), FieldKind::Text),
    ]
}

/// Reasons in one touch, or in one's own words.
pub fn reasons(desk: Desk, kind: Kind) -> Node {
    let lang = desk.lang();
    let reasons = add::reasons(kind, lang);
    let choice = live(move || {
        let typed = desk.text(Slot::Words);
        let chosen = reasons.iter().position(|words| *words == typed);
        let options = reasons.iter().enumerate();
        let choose = move |key: String| {
            if let Some(words) = key.parse().ok().and_then(|n: usize| reasons.get(n)) {
                desk.set(Slot::Words, words);
            }
        };
        let choice = Choice {
            legend: office(Office::Why, lang).into(),
            options: options.map(|(n, words)| option(&n.to_string(), *words)).collect(),
            chosen: chosen.map(|n| n.to_string()),
            on_choose: Tell::new(choose),
            error: None,
            testid: "add-reason".into(),
        };
        choice.draw()
    });
    nodes![choice, words(desk, Add::OwnWords)]
}

/// A line of words.
pub fn words(desk: Desk, label: Add) -> Node {
    line(desk, Slot::Words, label, FieldKind::Text)
}

/// When it happened, if not now.
pub fn when(desk: Desk) -> Node {
    let lang = desk.lang();
    let when = el("div")
        .class("when")
        .child(line(desk, Slot::Date, Add::Date, FieldKind::Date))
        .child(line(desk, Slot::Time, Add::Time, FieldKind::Time));
    nodes![when, el("p").class("hint").text(add(Add::NowByDefault, lang))]
}

fn line(desk: Desk, of: Slot, label: Add, kind: FieldKind) -> Node {
    labelled(desk, of, add(label, desk.lang()).into(), kind)
}

/// A line to type in, over a slot.
pub fn labelled(desk: Desk, of: Slot, label: Text, kind: FieldKind) -> Node {
    live(move || {
        let field = Field {
            label: label.clone(),
            value: desk.text(of),
            on_typed: Tell::new(move |text: String| desk.set(of, &text)),
            kind,
            unit: None,
            hint: None,
            error: None,
            testid: testid(of).into(),
        };
        field.draw()
    })
}

/// What a block weighs or a drum or bag holds, the first time it is counted in.
pub fn pack(desk: Desk) -> Node {
    let lang = desk.lang();
    let counts = matches!(
        desk.look(|form| form.kind),
        Some(Kind::TopUp | Kind::PartChange | Kind::OilChange | Kind::Fill | Kind::Move)
    );
    if !counts {
        return Node::Nothing;
    }
    let packs = Held::new(prefs::packs());
    let typed = Held::new(String::new());
    let missing = worked_out(move || {
        let packs = packs.get();
        match Unit::from_key(&desk.text(Slot::Unit)) {
            Some(unit @ Unit::Block) if packs.block_g.is_none() => Some(unit),
            Some(unit @ Unit::Drum) if packs.drum.is_none() => Some(unit),
            Some(unit @ Unit::Bag) if packs.bag.is_none() => Some(unit),
            _ => None,
        }
    });
    let keep = move || {
        let thousandths = parts(&typed.get_untracked(), 3).filter(|n| *n > 0);
        match (missing.get_untracked(), thousandths) {
            (Some(Unit::Block), Some(grams)) => prefs::set_block_g(grams),
            (Some(unit), Some(ml)) => {
                if let Some(volume) = Volume::from_ml(ml) {
                    prefs::set_holds(unit, volume);
                }
            }
            _ => {}
        }
        desk.refused.set(None);
        typed.set(String::new());
        packs.set(prefs::packs());
    };
    live(move || {
        let (label, unit) = match missing.get()? {
            Unit::Drum => (Add::DrumSize, "L"),
            Unit::Bag => (Add::BagSize, "L"),
            Unit::Block | Unit::Litres | Unit::Kilograms => (Add::BlockSize, "kg"),
        };
        let field = Field {
            unit: Some(unit.into()),
            hint: Some(add(Add::PackHelp, lang).into()),
            kind: FieldKind::Decimal,
            ..Field::of(add(label, lang), typed, "add-pack-size")
        };
        let keep = button(Rank::Second, add(Add::KeepSize, lang), "add-pack-keep", keep);
        Some(
            el("div")
                .class("card")
                .testid("add-pack")
                .child(field.draw())
                .child(keep),
        )
    })
}

/// The one number; its accept saves.
pub fn number_pad(desk: Desk) -> Node {
    let lang = desk.lang();
    let begun = desk.look(|form| form.get(Slot::Number)).unwrap_or_default();
    let offered = desk.offered_number();
    let number = Held::new(begun);
    follow(move || number.with(|text| desk.set(Slot::Number, text)));
    let unit = worked_out(move || desk.with(|form| add::unit(form, lang)).unwrap_or_default());
    live(move || {
        let [back, clear, sign, point] = add::pad_keys(lang).map(str::to_owned);
        let words = PadWords {
            accept: office(Office::Save, lang).to_owned(),
            back,
            clear,
            sign,
            point,
        };
        let pad = Pad {
            value: number,
            label: office(Office::HowMuch, lang).into(),
            unit: unit.get().into(),
            words,
            fraction: true,
            below_zero: false,
            most: 5,
            prefilled: Some(offered.clone()),
            on_accept: Tell::new(move |text: String| {
                desk.set(Slot::Number, &text);
                desk.send(Send::AsTyped);
            }),
            testid: "add-pad".into(),
        };
        pad.draw()
    })
}
