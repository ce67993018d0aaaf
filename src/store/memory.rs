//! A journal in memory: for simulated days and for tests, which may make it fail.

use std::cell::RefCell;
use std::rc::Rc;

use super::journal::{Journal, Loaded, StoreFault};
use super::record::Record;
use crate::domain::ids::Dev;
use crate::domain::sorted::SortedMap;

/// A journal in memory. A clone is another handle on the same log, as after a reload.
#[derive(Clone, Debug)]
pub struct MemoryJournal {
    dev: Dev,
    rows: Rc<RefCell<SortedMap<(Dev, u32), String>>>,
    fault: Rc<RefCell<Option<StoreFault>>>,
}

impl MemoryJournal {
    /// An empty store of this name.
    #[must_use]
    pub fn new(dev: Dev) -> Self {
        Self {
            dev,
            rows: Rc::default(),
            fault: Rc::default(),
        }
    }

    /// From now on everything fails in this way, on every handle; `None` heals it.
    pub fn fail(&self, fault: Option<StoreFault>) {
        *self.fault.borrow_mut() = fault;
    }

    /// Puts a line in a place as it is, sound or not: what a damaged disk would hold.
    pub fn put_raw(&self, dev: Dev, seq: u32, line: &str) {
        self.rows.borrow_mut().insert((dev, seq), line.to_owned());
    }

    fn check(&self) -> Result<(), StoreFault> {
        self.fault.borrow().clone().map_or(Ok(()), Err)
    }
}

impl Journal for MemoryJournal {
    fn dev(&self) -> Dev {
        self.dev
    }

    async fn append(&self, records: &[Record]) -> Result<(), StoreFault> {
        self.check()?;
        let mut rows = self.rows.borrow_mut();
        let mut new = SortedMap::new();
        for record in records {
            let place = (record.entry().dev, record.entry().seq);
            if rows.contains_key(&place) || new.insert(place, record.line().to_owned()).is_some() {
                return Err(StoreFault::Taken);
            }
        }
        for (place, line) in new {
            rows.insert(place, line);
        }
        Ok(())
    }

    async fn load(&self) -> Result<Loaded, StoreFault> {
        self.check()?;
        let rows = self.rows.borrow();
        Ok(Loaded::from_rows(
            rows.iter().map(|(&(dev, seq), line)| (dev, seq, line.clone())),
        ))
    }
}
