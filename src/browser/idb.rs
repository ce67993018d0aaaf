//! The journal in IndexedDB: own bindings for the few calls it needs, because durability is an option none of the
//! lighter wrappers has. "Written" means the transaction completed with strict durability.

mod ahead;
mod sys;

use std::cell::RefCell;

use js_sys::{Array, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

use super::page::passed;
use super::window::Claim;
use crate::domain::ids::Dev;
use crate::store::{Journal, Loaded, Record, StoreFault};
use ahead::Ahead;
use sys::{Database, Request, Transaction, factory, fault, joined, listen, outcome};

const ENTRIES: &str = "entries";
/// Holds one value: the name of this store.
const STORE: &str = "store";

/// One kitchen's log in IndexedDB. Dropping it closes it.
#[derive(Debug)]
pub struct IdbJournal {
    dev: Dev,
    db: Database,
    claim: Claim,
    /// What the page began to read before this was opened; it stands for the first load and no other.
    ahead: RefCell<Option<Ahead>>,
}

/// Every key and every value of a store, in order of key.
type Rows = (Array, Array);

impl IdbJournal {
    /// Opens the log of this name (see [`crate::store::World::database`]). An empty one is made and named `fresh`.
    ///
    /// # Errors
    /// [`StoreFault::Blocked`] where the browser keeps nothing, [`StoreFault::Damaged`] for a nameless store.
    pub async fn open(name: &str, fresh: Dev) -> Result<Self, StoreFault> {
        let (db, names, ahead) = match ahead::take(name).await {
            Some((db, names, ahead)) => (db, names, Some(ahead)),
            None => {
                let db = open_or_make(name, fresh).await?;
                let (_, names) = rows(&db, STORE).await?;
                (db, names, None)
            }
        };
        // Another window is deleting the log: let go at once; what comes next here fails as closed.
        db.on_version_change(&db.close_function().bind0(&db));
        let dev = read_hex(&names.get(0)).ok_or_else(|| damaged("the store has no name"))?;
        let (claim, ahead) = (Claim::on(name), RefCell::new(ahead));
        Ok(Self { dev, db, claim, ahead })
    }

    /// Whether a log of this name stands on this phone; yes where the browser cannot tell.
    pub async fn exists(name: &str) -> bool {
        let Some(listing) = factory().ok().and_then(|all| all.databases().ok()) else {
            return true;
        };
        let Ok(listed) = JsFuture::from(listing).await else {
            return true;
        };
        let named =
            |one: &JsValue| Reflect::get(one, &"name".into()).is_ok_and(|n| n.as_string().as_deref() == Some(name));
        Array::from(&listed).iter().any(|one| named(&one))
    }

    /// Deletes the log of this name, as on leaving the demo. Other windows let go of it.
    ///
    /// # Errors
    /// [`StoreFault::Blocked`] when another window does not let go; the log is deleted once it does.
    pub async fn delete(name: &str) -> Result<(), StoreFault> {
        let request = factory()?.delete(name).map_err(|e| fault(&e))?;
        let gone = Promise::new(&mut |resolve, reject| {
            request.on_success(&resolve);
            request.on_error(&reject);
            request.on_blocked(&reject);
        });
        JsFuture::from(gone).await.map_err(|_| StoreFault::Blocked)?;
        Ok(())
    }

    /// How many entries stood in the log when the page began to read it; `None` where it did not, or they were read.
    pub fn entries_ahead(&self) -> Option<usize> {
        self.ahead.borrow().as_ref().map(|ahead| ahead.entries)
    }

    /// Whether this window may write in the log; see [`Claim::is_mine`].
    pub async fn is_mine(&self) -> bool {
        self.claim.is_mine().await
    }

    /// Closes the log: whatever is asked of it from now on fails with [`StoreFault::Closed`].
    pub fn close(&self) {
        self.db.close();
    }
}

impl Drop for IdbJournal {
    fn drop(&mut self) {
        self.db.close();
    }
}

impl Journal for IdbJournal {
    fn dev(&self) -> Dev {
        self.dev
    }

    async fn append(&self, records: &[Record]) -> Result<(), StoreFault> {
        if !self.claim.is_mine().await {
            return Err(StoreFault::OtherWindow);
        }
        self.ahead.take();
        let strict = Object::new();
        Reflect::set(&strict, &"durability".into(), &"strict".into()).map_err(|e| fault(&e))?;
        let transaction = self
            .db
            .transaction(ENTRIES, "readwrite", &strict)
            .map_err(|e| fault(&e))?;
        // Everything is asked for in this one task: a transaction left waiting would commit a part.
        if let Err(refused) = add_all(&transaction, records) {
            transaction.abort().map_err(|e| fault(&e))?;
            return Err(fault(&refused));
        }
        let complete = Promise::new(&mut |resolve, reject| {
            transaction.on_complete(&resolve);
            transaction.on_abort(&reject);
        });
        JsFuture::from(complete)
            .await
            .map_err(|_| fault(&transaction.fault()))?;
        Ok(())
    }

    async fn load(&self) -> Result<Loaded, StoreFault> {
        let ahead = self.ahead.take();
        let read = match ahead {
            Some(ahead) => ahead.rows().await,
            None => None,
        };
        let (keys, lines) = match read {
            Some(rows) => rows,
            None => rows(&self.db, ENTRIES).await?,
        };
        passed("log-read");
        let loaded = read_rows(&keys, &lines).map(Loaded::from_rows);
        passed("log-decoded");
        loaded.ok_or_else(|| damaged("something other than entries"))
    }
}

/// The place and the line of every row.
fn read_rows(keys: &Array, lines: &Array) -> Option<Vec<(Dev, u32, String)>> {
    if !lines.iter().all(|line| line.is_string()) {
        return None;
    }
    // A key is a list of two, which joins as "dev,seq".
    let (keys, text) = (joined(keys)?, joined(lines)?);
    let apart: Vec<String> = if text.split('\n').count() == lines.length() as usize {
        text.split('\n').map(str::to_owned).collect()
    } else {
        // A damaged line with a break in it: it is one line all the same, for whoever reads it to say what is wrong.
        lines.iter().filter_map(|line| line.as_string()).collect()
    };
    let row = |(key, line): (&str, String)| {
        let (dev, seq) = key.split_once(',')?;
        Some((hex_dev(dev)?, seq.parse().ok()?, line))
    };
    keys.lines().zip(apart).map(row).collect()
}

/// Opens the database of this name. A new one is made with its stores, and named `fresh`.
async fn open_or_make(name: &str, fresh: Dev) -> Result<Database, StoreFault> {
    let request = factory()?.open(name, 1).map_err(|e| fault(&e))?;
    let opening: Request = request.clone().unchecked_into();
    let upgrade = Closure::once_into_js(move || -> Result<(), JsValue> {
        let db: Database = opening.result().unchecked_into();
        db.create_store(ENTRIES)?;
        db.create_store(STORE)?.add(&hex(fresh).into(), &"dev".into())?;
        Ok(())
    });
    request.on_upgrade(upgrade.unchecked_ref());
    Ok(outcome(&request, listen(&request)).await?.unchecked_into())
}

/// Asks for every record to be added under its place.
fn add_all(transaction: &Transaction, records: &[Record]) -> Result<(), JsValue> {
    let store = transaction.store(ENTRIES)?;
    for record in records {
        let (dev, seq) = (record.entry().dev, record.entry().seq);
        store.add(&record.line().into(), &Array::of2(&hex(dev).into(), &seq.into()))?;
    }
    Ok(())
}

/// Reads a whole store.
async fn rows(db: &Database, store: &str) -> Result<Rows, StoreFault> {
    let transaction = db
        .transaction(store, "readonly", &Object::new())
        .map_err(|e| fault(&e))?;
    let store = transaction.store(store).map_err(|e| fault(&e))?;
    let (keys, values) = (
        store.get_all_keys().map_err(|e| fault(&e))?,
        store.get_all().map_err(|e| fault(&e))?,
    );
    // Both are listened to before either is waited for: the second may be answered meanwhile.
    let heard = (listen(&keys), listen(&values));
    let keys = outcome(&keys, heard.0).await?;
    let values = outcome(&values, heard.1).await?;
    Ok((keys.unchecked_into(), values.unchecked_into()))
}

fn hex(dev: Dev) -> String {
    format!("{:016x}", dev.0)
}

fn read_hex(word: &JsValue) -> Option<Dev> {
    hex_dev(&word.as_string()?)
}

fn hex_dev(hex: &str) -> Option<Dev> {
    u64::from_str_radix(hex, 16).ok().map(Dev)
}

fn damaged(why: &str) -> StoreFault {
    StoreFault::Damaged { why: why.to_owned() }
}
