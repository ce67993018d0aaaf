//! What every journal promises, asked of each in turn: natively of the one in memory, in the browser of IndexedDB.

use panward::domain::entry::Entry;
use panward::domain::facts::{Fact, oil};
use panward::domain::ids::{Dev, EntryId};
use panward::domain::time::Millis;
use panward::store::{Journal, Record, StoreFault};

/// A note with this number, written this many milliseconds into the log.
pub fn note(dev: Dev, seq: u32, ms: i64) -> Record {
    let rec = Millis(1_780_000_000_000 + ms);
    let bits = u128::from(dev.0) << 80 | u128::from(seq);
    Record::of(Entry {
        id: EntryId(bits & !(0xf << 76) | 7 << 76 | 0b10 << 62),
        dev,
        seq,
        at: rec,
        rec,
        clk: None,
        off_min: 60,
        who: None,
        fact: Fact::Note(oil::Note {
            pan: None,
            text: format!("note {seq}, “{ms}” ü\n"),
        }),
    })
    .expect("a sound entry")
}

async fn lines(journal: &impl Journal) -> Vec<String> {
    let loaded = journal.load().await.expect("loads");
    assert_eq!(loaded.unreadable, []);
    loaded.records.iter().map(|r| r.line().to_owned()).collect()
}

/// An empty journal holds nothing; what was appended comes back byte for byte.
pub async fn append_then_load(journal: &impl Journal) {
    assert!(lines(journal).await.is_empty());
    let dev = journal.dev();
    let written = [note(dev, 1, 0), note(dev, 2, 5)];
    journal.append(&written).await.expect("appends");
    assert_eq!(journal.load().await.expect("loads").records, written);
    journal.append(&[note(dev, 3, 9)]).await.expect("appends");
    assert_eq!(lines(journal).await.len(), 3);
}

/// Whatever order entries arrived in, they come back in order of cause: time of writing, store, number.
pub async fn order_is_of_cause(journal: &impl Journal) {
    let (a, b) = (Dev(1), Dev(0xffff_ffff_ffff_ffff));
    let in_order = [
        note(b, 1, 0),
        note(a, 1, 5),
        note(a, 2, 5),
        note(b, 2, 5),
        note(b, 10, 5),
        note(a, 3, 6),
    ];
    for arrival in [4, 5, 2, 0, 3, 1] {
        journal.append(&in_order[arrival..=arrival]).await.expect("appends");
    }
    assert_eq!(journal.load().await.expect("loads").records, in_order);
}

/// A decision whose last entry cannot be written leaves none of it behind, and the place stays as it was.
pub async fn all_or_nothing(journal: &impl Journal) {
    let dev = journal.dev();
    journal.append(&[note(dev, 3, 0)]).await.expect("appends");
    let before = lines(journal).await;
    let refused = journal
        .append(&[note(dev, 1, 1), note(dev, 2, 2), note(dev, 3, 3)])
        .await;
    assert_eq!(refused, Err(StoreFault::Taken));
    assert_eq!(lines(journal).await, before);
    journal
        .append(&[note(dev, 1, 1), note(dev, 2, 2)])
        .await
        .expect("the places are still free");
}

/// One place holds one entry, within a decision too.
pub async fn a_place_is_taken_once(journal: &impl Journal) {
    let dev = journal.dev();
    let twice = journal.append(&[note(dev, 1, 0), note(dev, 1, 1)]).await;
    assert_eq!(twice, Err(StoreFault::Taken));
    assert!(lines(journal).await.is_empty());
    journal.append(&[note(dev, 1, 0)]).await.expect("appends");
    assert_eq!(journal.append(&[note(dev, 1, 0)]).await, Err(StoreFault::Taken));
    assert_eq!(lines(journal).await, [note(dev, 1, 0).line()]);
}

/// Writing nothing is no fault and leaves nothing.
pub async fn nothing_is_nothing(journal: &impl Journal) {
    journal.append(&[]).await.expect("appends");
    assert!(lines(journal).await.is_empty());
}

/// A journal that refuses writes says why, and its log, opened again, is as it was before.
pub async fn a_refused_write_leaves_nothing<J: Journal>(
    journal: J,
    spoil: impl AsyncFnOnce(&J) -> StoreFault,
    reopen: impl AsyncFnOnce(J) -> J,
) {
    let dev = journal.dev();
    journal.append(&[note(dev, 1, 0)]).await.expect("appends");
    let expected = spoil(&journal).await;
    assert_eq!(
        journal.append(&[note(dev, 2, 1), note(dev, 3, 2)]).await,
        Err(expected.clone())
    );
    assert_eq!(journal.load().await, Err(expected));
    let again = reopen(journal).await;
    assert_eq!(again.dev(), dev, "the same store under the same name");
    assert_eq!(lines(&again).await, [note(dev, 1, 0).line()]);
    again.append(&[note(dev, 2, 1)]).await.expect("writes again");
}
