//! No forecast knows what comes after it: neither that rows follow nor what they say.

use std::fmt::Write as _;

use backtest::file::{HEADER, read};
use backtest::foretell::Foretold;
use backtest::report::{foretell, lines, split};
use backtest::row::Row;
use proptest::prelude::*;

use crate::sim::{self, World};

const PANS: usize = 4;

/// A shop of one pan, fill after fill.
fn one_pan(seed: u64, world: World) -> Vec<Row> {
    sim::shop(seed, 5, world)
        .fills
        .into_iter()
        .flat_map(|f| f.rows)
        .collect()
}

/// A shop of four pans, each with a row every trading day, its fills one after the other.
fn four_pans(seed: u64, world: World) -> Vec<Row> {
    let fills = sim::shop(seed, 2 * PANS, world).fills;
    let mut pans = vec![Vec::new(); PANS];
    for (at, fill) in fills.into_iter().enumerate() {
        pans[at % PANS].extend(fill.rows);
    }
    let days = pans.iter().map(Vec::len).max().unwrap_or_default();
    (0..days)
        .flat_map(|day| pans.iter().filter_map(move |pan| pan.get(day)))
        .cloned()
        .collect()
}

/// The rows as a file holds them; what the file cannot say is lost.
fn written(rows: &[Row]) -> String {
    let mut text = HEADER.join(",");
    let blank = |value: Option<f64>| value.map(|v| v.to_string()).unwrap_or_default();
    for row in rows {
        let fat = format!("{:?}", row.fat).to_lowercase();
        write!(text, "\n{},{fat},{},{},", row.fill, row.volume_l, row.day).unwrap();
        let (hours, degrees) = (blank(row.fry_hours), blank(row.frying_c));
        let (top_up, tpc) = (blank(row.topup_l), blank(row.tpc));
        write!(text, "{hours},{degrees},{top_up},{tpc},{}", row.instrument).unwrap();
    }
    text
}

/// The report's line for each reading of a file.
fn told(text: &str) -> Vec<String> {
    lines(&foretell(&split(&read(text).unwrap()).0))
}

/// Cutting the file after `kept` rows leaves every earlier line byte-equal.
fn cut(rows: &[Row], kept: usize) -> Result<(), TestCaseError> {
    let text = written(rows);
    let ends = text.match_indices('\n').map(|(at, _)| at).nth(kept);
    let whole = told(&text);
    let part = told(&text[..ends.unwrap_or(text.len())]);
    let read = rows[..kept].iter().filter(|r| r.tpc.is_some()).count();
    prop_assert_eq!(part.len(), read);
    prop_assert_eq!(&part[..], &whole[..read]);
    Ok(())
}

/// The rows with every reading after the first `kept` moved by `points`.
fn shifted(rows: &[Row], kept: usize, points: f64) -> Vec<Row> {
    let mut all = rows.to_vec();
    for row in &mut all[kept..] {
        row.tpc = row.tpc.map(|seen| (seen + points).clamp(0.0, 100.0));
    }
    all
}

/// Shifting every reading after the first `kept` rows changes no forecast up to the first of them, and that one in
/// nothing but its truth.
fn shift(rows: &[Row], kept: usize, points: f64) -> Result<(), TestCaseError> {
    let (before, after) = (foretell(rows), foretell(&shifted(rows, kept, points)));
    let read = rows[..kept].iter().filter(|r| r.tpc.is_some()).count();
    prop_assert_eq!(lines(&before[..read]), lines(&after[..read]));
    let next = |of: &[Foretold]| of.get(read).map(|it| it.forecast);
    prop_assert_eq!(next(&before), next(&after));
    Ok(())
}

fn worlds() -> impl Strategy<Value = World> {
    (0.7_f64..5.0, 0.0_f64..0.4).prop_map(|(spread, missing)| World {
        missing,
        ..World::plain(spread)
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn cutting_a_file_leaves_every_earlier_forecast(
        seed: u64, world in worlds(), at in any::<prop::sample::Index>(), interleaved: bool,
    ) {
        let rows = if interleaved { four_pans(seed, world) } else { one_pan(seed, world) };
        cut(&rows, at.index(rows.len() + 1))?;
    }

    #[test]
    fn shifting_later_readings_changes_no_earlier_forecast(
        seed: u64, world in worlds(), at in any::<prop::sample::Index>(), points in -30.0_f64..30.0, interleaved: bool,
    ) {
        let rows = if interleaved { four_pans(seed, world) } else { one_pan(seed, world) };
        shift(&rows, at.index(rows.len() + 1), points)?;
    }
}

#[test]
fn cutting_after_any_row_at_all() {
    let mut rows = four_pans(1, World::plain(3.0));
    rows.truncate(80);
    let whole = told(&written(&rows));
    for kept in 0..=rows.len() {
        let part = told(&written(&rows[..kept]));
        assert_eq!(part[..], whole[..part.len()], "cut after row {kept}");
    }
}

/// What the two laws say would hold of forecasts that read nothing: these do change with what is read before them, in
/// their own fill and from fill to fill.
#[test]
fn forecasts_do_move_with_earlier_readings() {
    let rows = one_pan(1, World::plain(3.0));
    let first = rows[0].fill.clone();
    let readings_of_first = rows.iter().filter(|r| r.fill == first && r.tpc.is_some()).count();
    let (before, after) = (foretell(&rows), foretell(&shifted(&rows, 0, 6.0)));
    assert_eq!(before[0].forecast, after[0].forecast);
    assert_ne!(before[1].forecast, after[1].forecast);
    let mut only_first = rows.clone();
    for row in only_first.iter_mut().filter(|r| r.fill == first) {
        row.tpc = row.tpc.map(|seen| seen + 6.0);
    }
    let taught = foretell(&only_first);
    assert_ne!(before[readings_of_first].forecast, taught[readings_of_first].forecast);
}

#[test]
fn four_pans_do_take_turns() {
    let rows = four_pans(1, World::plain(3.0));
    let first: Vec<&str> = rows.iter().take(PANS + 1).map(|r| r.fill.as_str()).collect();
    assert_eq!(first, ["1-0", "1-1", "1-2", "1-3", "1-0"]);
    assert_eq!(split(&rows).1, 0);
}
