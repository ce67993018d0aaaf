//! A machine's form: how oil leaves the pan, its tank, its window from the manual, its filters, what it has met.

use super::read::{LINE_MOST, NAME_MOST, Reader, as_number, as_set};
use super::{Answers, Around, Fault, Field, NO, Wrong};
use crate::domain::claim::{Exposure, Exposures};
use crate::domain::facts::Fact;
use crate::domain::facts::setup::{FilterKind, Heater, Held, Machine, OutBy};
use crate::domain::ids::MachineId;
use crate::domain::ledger::Book;
use crate::domain::limits::{MANUAL_MAX, NEVER_ABOVE, TARGET_DEFAULT, WINDOW_HIGH_DEFAULT, WINDOW_LOW_DEFAULT};
use crate::domain::units::{Dose, Temp};

/// The share of a tank kept free until the owner says otherwise: a project default.
const FREE_PERCENT: &str = "10";
/// The longest rinse of a single-pass filter, seconds (common practice, no source).
const RINSE_MAX_S: &str = "30";
/// Oil this cold is no longer liquid enough to be strained by hand: the project's own line.
const HAND_LOW: Temp = Temp::celsius(20);
/// What is best for the hand, a little under where it becomes forbidden: the project's own line.
const HAND_TARGET: Temp = Temp::celsius(35);

const KNOWN: &str = "known";
const UNKNOWN: &str = "unknown";
const WORDS: [(Field, &str); 3] = [
    (Field::SwitchOff, "off"),
    (Field::SwitchDraw, "draw"),
    (Field::SwitchReturn, "return"),
];

pub(super) fn blank(book: &Book) -> Answers {
    let mut answers = Answers::default()
        .with(Field::FreeShare, FREE_PERCENT)
        .with(Field::FilterKind, FilterKind::Single.key())
        .with(Field::RinseMax, RINSE_MAX_S)
        .with(Field::WindowLow, degrees(WINDOW_LOW_DEFAULT))
        .with(Field::WindowHigh, degrees(WINDOW_HIGH_DEFAULT))
        .with(Field::Target, degrees(TARGET_DEFAULT))
        .with(Field::HeldKnown, UNKNOWN);
    // Whatever is fried here is what a machine most likely met.
    let met = book
        .pans_in_use()
        .iter()
        .fold(Exposures::NONE, |set, p| set.and(p.exposures()));
    answers.put(Field::Held, as_set(met.iter().map(Exposure::key)));
    answers
}

fn degrees(temp: Temp) -> String {
    as_number(u32::from(temp.dc().unsigned_abs()), 1)
}

pub(super) fn of(machine: &Machine) -> Answers {
    let seconds = |n: Option<u16>| n.map(|n| n.to_string()).unwrap_or_default();
    let powder = machine.powder.map(|dose| dose.g_per_l().to_string());
    let powder = powder.unwrap_or_default();
    let (known, held) = match machine.held {
        Held::Known(set) => (KNOWN, set),
        Held::Unknown => (UNKNOWN, Exposures::NONE),
    };
    let mut answers = Answers::default()
        .with(Field::MachineName, &*machine.name)
        .with(Field::OutBy, machine.out_by.key())
        .with(Field::Tank, as_number(machine.tank.ml(), 3))
        .with(Field::FreeShare, as_number(u32::from(machine.free.cpc()), 2))
        .with(Field::FilterKind, machine.filter.key())
        .with(Field::WindowLow, degrees(machine.low))
        .with(Field::WindowHigh, degrees(machine.high))
        .with(Field::Target, degrees(machine.target))
        .with(Field::RinseMax, seconds(machine.rinse_max_s))
        .with(Field::RinseMin, seconds(machine.rinse_min_s))
        .with(Field::Filters, machine.filters.join(", "))
        .with(Field::Powder, powder)
        .with(Field::HeldKnown, known)
        .with(Field::Held, as_set(held.iter().map(Exposure::key)));
    answers.tick(Field::Heater, machine.heater.is_there());
    if let Some(watts) = machine.heater.watts() {
        answers.put(Field::HeaterWatts, watts.to_string());
    }
    answers.tick(Field::TakesSolid, machine.takes_solid);
    for (field, slot) in WORDS {
        if let Some((_, words)) = machine.words.iter().find(|(s, _)| s == slot) {
            answers.put(field, &**words);
        }
    }
    answers
}

/// What a first set-up asks of a machine: how oil gets into it, its tank and heater, and the window of its manual. What
/// it has met stays not known, which closes it to every pan that is kept for something.
pub(super) const FIRST: &[&[Field]] = &[
    &[
        Field::OutBy,
        Field::MachineName,
        Field::Tank,
        Field::Heater,
        Field::HeaterWatts,
        Field::TakesSolid,
    ],
    &[Field::WindowLow, Field::WindowHigh, Field::Target, Field::Filters],
];

fn is_hand(answers: &Answers) -> bool {
    answers.get(Field::OutBy) == OutBy::Hand.key()
}

pub(super) fn pages(answers: &Answers) -> Vec<Vec<Field>> {
    let held = |mut page: Vec<Field>| {
        page.push(Field::HeldKnown);
        if answers.get(Field::HeldKnown) == KNOWN {
            page.push(Field::Held);
        }
        page
    };
    let first = vec![Field::OutBy, Field::MachineName, Field::Tank, Field::FreeShare];
    if is_hand(answers) {
        return vec![first, held(vec![Field::Filters, Field::Powder])];
    }
    let mut manual = vec![Field::WindowLow, Field::WindowHigh, Field::Target, Field::Heater];
    if answers.yes(Field::Heater) {
        manual.push(Field::HeaterWatts);
    } else if answers.get(Field::Heater) == NO {
        manual.push(Field::TakesSolid);
    }
    let rinse = match FilterKind::from_key(answers.get(Field::FilterKind)) {
        Some(FilterKind::Recirculating) => Field::RinseMin,
        Some(FilterKind::Single) | None => Field::RinseMax,
    };
    vec![
        first,
        manual,
        vec![Field::Filters, Field::FilterKind, rinse, Field::Powder],
        vec![Field::SwitchOff, Field::SwitchDraw, Field::SwitchReturn],
        held(Vec::new()),
    ]
}

pub(super) fn check(id: MachineId, answers: &Answers, around: Around, wrongs: &mut Vec<Wrong>) -> Option<Vec<Fact>> {
    let mut read = Reader { answers, wrongs };
    let name = read.words(Field::MachineName, NAME_MOST);
    if let Some(name) = &name
        && around
            .book
            .machines
            .values()
            .any(|m| m.machine != id && m.name == *name)
    {
        read.refuse::<()>(Field::MachineName, Fault::NameTaken);
    }
    let out_by = read.one(Field::OutBy, OutBy::from_key);
    let tank = read.litres(Field::Tank, 1, 500);
    let free = read.percent(Field::FreeShare, 0, 90);
    // Read to the end whatever is wrong before: a page is told what is wrong on it.
    let pumped = (!is_hand(answers)).then(|| pumped(&mut read, around.book));
    let filters = filters(&mut read);
    // None is told by leaving it empty, or by nought.
    let powder = read.whole_if_any(Field::Powder, 0, Dose::MAX.g_per_l().into());
    let held = held(&mut read);
    let common = Machine {
        machine: id,
        name: name?,
        out_by: out_by?,
        tank: tank?,
        free: free?,
        heater: Heater::None,
        takes_solid: false,
        filter: FilterKind::Single,
        low: HAND_LOW,
        high: MANUAL_MAX,
        target: HAND_TARGET,
        rinse_max_s: None,
        rinse_min_s: None,
        filters: filters?,
        powder: powder?.and_then(Dose::from_g_per_l),
        words: Vec::new(),
        held: held?,
    };
    let machine = match pumped {
        None => common,
        Some(pumped) => pumped?(common),
    };
    Some(vec![Fact::Machine(Box::new(machine))])
}

/// What only a pumped machine has, to be put into what all have.
fn pumped(read: &mut Reader, book: &Book) -> Option<impl FnOnce(Machine) -> Machine + use<>> {
    let answers = read.answers;
    let window = window(read, book);
    let filter = read.one(Field::FilterKind, FilterKind::from_key);
    let rinse_max = read.whole_if_any(Field::RinseMax, 1, 300);
    let rinse_min = read.whole_if_any(Field::RinseMin, 1, 900);
    if answers.get(Field::Heater).is_empty() {
        read.refuse::<()>(Field::Heater, Fault::Missing);
    }
    let heater = if answers.yes(Field::Heater) {
        // Its plate is often under a panel: left empty, they are not known.
        let watts = read.whole_if_any(Field::HeaterWatts, 1, 20_000);
        watts.map(|watts| watts.map_or(Heater::NotKnown, |watts| Heater::of_watts(watts.into())))
    } else {
        Some(Heater::None)
    };
    let said = WORDS.map(|(field, slot)| Some((slot, read.words_if_any(field, NAME_MOST)?)));
    let (low, high, target) = window?;
    let (filter, heater, rinse_max_s, rinse_min_s) = (filter?, heater?, rinse_max?, rinse_min?);
    let mut words = Vec::new();
    for said in said {
        let (slot, said) = said?;
        words.extend(said.map(|said| (slot.to_owned(), said)));
    }
    let takes_solid = answers.yes(Field::TakesSolid);
    Some(move |common| Machine {
        heater,
        takes_solid,
        filter,
        low,
        high,
        target,
        rinse_max_s,
        rinse_min_s,
        words,
        ..common
    })
}

/// The window: never above what no oil may pass, never under what keeps every fat used here liquid.
fn window(read: &mut Reader, book: &Book) -> Option<(Temp, Temp, Temp)> {
    let most = u32::from(NEVER_ABOVE.dc().unsigned_abs()) / 10;
    let low = read.temp(Field::WindowLow, 0, most);
    let high = read.temp(Field::WindowHigh, 0, most);
    let target = read.temp(Field::Target, 0, most);
    let (low, high, target) = (low?, high?, target?);
    let stiffest = book.pans_in_use().iter().map(|p| p.fat).max_by_key(|f| f.pumpable_at());
    if let Some(fat) = stiffest
        && low < fat.pumpable_at()
    {
        let from = fat.pumpable_at();
        return read.refuse(Field::WindowLow, Fault::NotLiquid { fat, from });
    }
    if low >= high {
        return read.refuse(Field::WindowHigh, Fault::WindowTurned);
    }
    if target < low || target > high {
        return read.refuse(Field::Target, Fault::OutsideWindow);
    }
    Some((low, high, target))
}

fn filters(read: &mut Reader) -> Option<Vec<String>> {
    let typed = read.words(Field::Filters, LINE_MOST)?;
    let filters = typed.split(',').map(str::trim).filter(|f| !f.is_empty());
    let filters: Vec<String> = filters.map(str::to_owned).collect();
    if filters.is_empty() {
        return read.refuse(Field::Filters, Fault::Missing);
    }
    Some(filters)
}

fn held(read: &mut Reader) -> Option<Held> {
    match read.answers.get(Field::HeldKnown) {
        KNOWN => Some(Held::Known(Exposures::of(&read.set(Field::Held, Exposure::from_key)))),
        UNKNOWN => Some(Held::Unknown),
        _ => read.refuse(Field::HeldKnown, Fault::Missing),
    }
}
