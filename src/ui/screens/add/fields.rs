//! The fields of a quick entry, each a choice, a line or the pad over one slot of its form.

use leptos::prelude::*;

use super::desk::{Desk, Send};
use super::testid;
use crate::domain::claim::ClaimKind;
use crate::domain::facts::oil::{Load, SignKind};
use crate::domain::fat::Fat;
use crate::domain::quick::{After, AgeSaid, Gauge, Kind, Slot, lost, others, parts};
use crate::domain::units::{Unit, Volume};
use crate::ui::old_parts::{Button, Choice, Field, FieldKind, Pad, PadWords};
use crate::ui::prefs;
use crate::words::log::{Office, office};
use crate::words::oil::fat_name;
use crate::words::screens::add::{self, Add, add};
use crate::words::setup::{claim_name, load_name, sign_name, unit_name};

/// A choice over a slot.
#[component]
fn Slotted(desk: Desk, of: Slot, #[prop(into)] legend: String, options: Vec<(String, String)>) -> impl IntoView {
    view! {
        <Choice
            legend
            options
            chosen=desk.chosen(of)
            on_choose=move |key: String| desk.set(of, &key)
            testid=testid(of)
        />
    }
}

fn option(key: &str, words: impl Into<String>) -> (String, String) {
    (key.to_owned(), words.into())
}

/// What it is counted in.
#[component]
pub fn Units(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let options = Unit::ALL
        .iter()
        .map(|unit| option(unit.key(), unit_name(*unit, lang)))
        .collect();
    view! { <Slotted desk of=Slot::Unit legend=office(Office::CountedIn, lang) options/> }
}

/// How busy it was.
#[component]
pub fn Loads(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let options = Load::ALL
        .iter()
        .map(|load| option(load.key(), load_name(*load, lang)))
        .collect();
    view! { <Slotted desk of=Slot::Load legend=office(Office::HowBusy, lang) options/> }
}

/// What was noticed.
#[component]
pub fn Signs(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let options = SignKind::ALL
        .iter()
        .map(|sign| option(sign.key(), sign_name(*sign, lang)))
        .collect();
    view! { <Slotted desk of=Slot::Sign legend=add(Add::Sign, lang) options/> }
}

/// What is read, and with what.
#[component]
pub fn Gauges(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let options = desk.bench.look(|kitchen, _| {
        let ledger = kitchen.ledger();
        let gauges = Gauge::offered(ledger).into_iter();
        gauges
            .map(|gauge| (gauge.key(), add::gauge(gauge, &ledger.book, lang)))
            .collect()
    });
    view! { <Slotted desk of=Slot::Gauge legend=office(Office::Instrument, lang) options/> }
}

/// Into which pan.
#[component]
pub fn Others(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let options = desk.bench.look(|kitchen, _| {
        let ledger = kitchen.ledger();
        let pans = others(ledger, desk.pan).into_iter();
        pans.map(|pan| (format!("{:032x}", pan.0), add::other_pan(ledger, pan, lang)))
            .collect()
    });
    view! { <Slotted desk of=Slot::To legend=add(Add::Into, lang) options/> }
}

/// Which promise.
#[component]
pub fn Claims(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let lost_now = desk.look(|form| form.kind == Kind::ClaimRestored).unwrap_or_default();
    let options = desk.bench.look(|kitchen, now| {
        let (ledger, day) = (kitchen.ledger(), kitchen.today(now));
        let claims = if lost_now {
            lost(ledger, desk.pan, day)
        } else {
            ledger.claims_standing(desk.pan, day)
        };
        let mut kinds: Vec<ClaimKind> = claims.into_iter().map(|claim| claim.what).collect();
        kinds.dedup();
        kinds
            .into_iter()
            .map(|kind| option(kind.key(), claim_name(kind, lang)))
            .collect()
    });
    view! { <Slotted desk of=Slot::Claim legend=add(Add::Promise, lang) options/> }
}

/// What follows an oil change.
#[component]
pub fn Afters(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let options: Vec<_> = After::ALL
        .iter()
        .map(|after| option(after.key(), add::after(*after, lang)))
        .collect();
    view! {
        <Slotted desk of=Slot::After legend=add(Add::After, lang) options/>
        <p class="hint">{add(Add::ComesOut, lang)}</p>
    }
}

/// How old the oil is that goes in.
#[component]
pub fn Ages(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let options: Vec<_> = AgeSaid::ALL
        .iter()
        .map(|age| option(age.key(), add::age(*age, lang)))
        .collect();
    let age = desk.text(Slot::Age);
    let since = Memo::new(move |_| age.get() == AgeSaid::Since.key());
    view! {
        <Slotted desk of=Slot::Age legend=add(Add::Age, lang) options/>
        {move || since.get().then(|| view! {
            <Line desk of=Slot::FreshOn label=add(Add::FreshOn, lang) kind=FieldKind::Date/>
        })}
    }
}

/// Another fat than the pan is kept with, and the batch.
#[component]
pub fn Fats(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let options: Vec<_> = Fat::ALL
        .iter()
        .map(|fat| option(fat.key(), fat_name(*fat, lang)))
        .collect();
    view! {
        <Slotted desk of=Slot::Fat legend=office(Office::WhichFat, lang) options/>
        <Line desk of=Slot::Batch label=office(Office::Batch, lang)/>
    }
}

/// Reasons in one touch, or in one's own words.
#[component]
pub fn Reasons(desk: Desk, kind: Kind) -> impl IntoView {
    let lang = desk.lang();
    let reasons = add::reasons(kind, lang);
    let numbered = reasons.iter().enumerate();
    let options = numbered.map(|(n, words)| option(&n.to_string(), *words)).collect();
    let words = desk.text(Slot::Words);
    let chosen = Signal::derive(move || {
        let typed = words.get();
        reasons.iter().position(|words| *words == typed).map(|n| n.to_string())
    });
    let choose = move |key: String| {
        if let Some(words) = key.parse().ok().and_then(|n: usize| reasons.get(n)) {
            desk.set(Slot::Words, words);
        }
    };
    view! {
        <Choice legend=office(Office::Why, lang) options chosen on_choose=choose testid="add-reason"/>
        <Words desk label=add(Add::OwnWords, lang)/>
    }
}

/// A line of words.
#[component]
pub fn Words(desk: Desk, label: &'static str) -> impl IntoView {
    view! { <Line desk of=Slot::Words label/> }
}

/// When it happened, if not now.
#[component]
pub fn When(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    view! {
        <div class="when">
            <Line desk of=Slot::Date label=add(Add::Date, lang) kind=FieldKind::Date/>
            <Line desk of=Slot::Time label=add(Add::Time, lang) kind=FieldKind::Time/>
        </div>
        <p class="hint">{add(Add::NowByDefault, lang)}</p>
    }
}

#[component]
fn Line(desk: Desk, of: Slot, label: &'static str, #[prop(optional)] kind: FieldKind) -> impl IntoView {
    view! {
        <Field
            label
            kind
            value=desk.text(of)
            on_input=move |text: String| desk.set(of, &text)
            testid=testid(of)
        />
    }
}

/// What a block weighs or a drum holds, the first time it is counted in.
#[component]
pub fn Pack(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let packs = RwSignal::new(prefs::packs());
    let unit = desk.text(Slot::Unit);
    let counts = matches!(
        desk.look(|form| form.kind),
        Some(Kind::TopUp | Kind::PartChange | Kind::OilChange | Kind::Fill | Kind::Move)
    );
    let missing = Memo::new(move |_| {
        let packs = packs.get();
        match Unit::from_key(&unit.get()) {
            Some(unit @ Unit::Block) if packs.block_g.is_none() => Some(unit),
            Some(unit @ Unit::Drum) if packs.drum.is_none() => Some(unit),
            _ => None,
        }
        .filter(|_| counts)
    });
    let typed = RwSignal::new(String::new());
    let keep = move |()| {
        let thousandths = parts(&typed.get_untracked(), 3).filter(|n| *n > 0);
        match (missing.get_untracked(), thousandths) {
            (Some(Unit::Block), Some(grams)) => prefs::set_block_g(grams),
            (Some(Unit::Drum), Some(ml)) => {
                if let Some(volume) = Volume::from_ml(ml) {
                    prefs::set_drum(volume);
                }
            }
            _ => {}
        }
        desk.refused.set(None);
        typed.set(String::new());
        packs.set(prefs::packs());
    };
    move || {
        missing.get().map(|unit| {
            let (label, unit) = match unit {
                Unit::Drum => (add(Add::DrumSize, lang), "L"),
                Unit::Block | Unit::Litres | Unit::Kilograms => (add(Add::BlockSize, lang), "kg"),
            };
            view! {
                <div class="card" data-testid="add-pack">
                    <Field
                        label
                        unit=unit.to_owned()
                        hint=add(Add::PackHelp, lang).to_owned()
                        kind=FieldKind::Decimal
                        value=typed
                        on_input=move |text: String| typed.set(text)
                        testid="add-pack-size"
                    />
                    <Button label=add(Add::KeepSize, lang) on_press=keep testid="add-pack-keep"/>
                </div>
            }
        })
    }
}

/// The one number; its accept saves.
#[component]
pub fn NumberPad(desk: Desk) -> impl IntoView {
    let lang = desk.lang();
    let begun = desk.look(|form| form.get(Slot::Number)).unwrap_or_default();
    let offered = desk.offered_number();
    let number = RwSignal::new(begun);
    Effect::new(move |_| number.with(|text| desk.set(Slot::Number, text)));
    let unit = Memo::new(move |_| desk.with(|form| add::unit(form, lang)).unwrap_or_default());
    move || {
        let [back, clear, sign, point] = add::pad_keys(lang).map(str::to_owned);
        let words = PadWords {
            accept: office(Office::Save, lang).to_owned(),
            back,
            clear,
            sign,
            point,
        };
        let accept = move |text: String| {
            desk.set(Slot::Number, &text);
            desk.send(Send::AsTyped);
        };
        view! {
            <Pad
                value=number
                label=office(Office::HowMuch, lang)
                unit=unit.get()
                words
                fraction=true
                most=5
                prefilled=offered.clone()
                on_accept=accept
                testid="add-pad"
            />
        }
    }
}
