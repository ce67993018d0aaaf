//! What is being typed: kept through a reload until it is saved, sent when it is whole.

use crate::browser::clock;
use crate::domain::entry::Draft;
use crate::domain::fat::Fat;
use crate::domain::ids::PanId;
use crate::domain::quick::{Doubt, Form, Kind, QuickRefusal, Slot};
use crate::domain::units::Amount;
use crate::kitchen::{Order, said};
use crate::ui::bench::Bench;
use crate::ui::node::{Held, Tell, follow};
use crate::ui::prefs;
use crate::ui::screen::{self, Screen};
use crate::words::{Lang, quick_refusals};

/// How it is sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Send {
    /// What stands in the form.
    AsTyped,
    /// The pan was not used, whatever stands in the form.
    NotUsed,
}

/// What was counted for a job, which checks and writes it itself.
#[derive(Clone, Debug)]
pub struct Counted {
    /// How much.
    pub amount: Amount,
    /// The form it was typed in.
    pub form: Form,
}

/// A question asked once: its words, and the two answers.
#[derive(Clone)]
pub struct Asked {
    pub words: String,
    pub answers: [&'static str; 2],
    /// Whether it is likelier mistyped than so.
    pub likely_wrong: bool,
}

/// The desk a form lies on. Copies are handles on the same one.
#[derive(Clone, Copy)]
pub struct Desk {
    /// The bench.
    pub bench: Bench,
    /// The pan.
    pub pan: PanId,
    form: Held<Option<Form>>,
    /// Why it was not written.
    pub refused: Held<Option<String>>,
    /// What is asked once.
    pub doubt: Held<Option<Asked>>,
    asked_about: Held<Send>,
    /// The job that asks, where one does.
    job: Held<Option<Tell<Counted>>>,
}

impl Desk {
    /// The desk of a pan, with what a reload interrupted.
    pub fn open(bench: Bench, pan: PanId) -> Self {
        let form = Held::new(kept(bench, pan));
        follow(move || {
            form.with(|form| {
                if let Some(form) = form {
                    prefs::set_draft(&pairs(form));
                }
            });
        });
        Self {
            bench,
            pan,
            form,
            refused: Held::new(None),
            doubt: Held::new(None),
            asked_about: Held::new(Send::AsTyped),
            job: Held::new(None),
        }
    }

    /// The desk on which a job counts oil: what is typed is told to it in place of being written.
    pub fn of_job(bench: Bench, pan: PanId, (kind, fat): (Kind, Fat), on_counted: Tell<Counted>) -> Self {
        let desk = Self::open(bench, pan);
        if desk.look(|form| form.kind) != Some(kind) {
            desk.begin(kind);
        }
        desk.set(Slot::Fat, fat.key());
        desk.job.set(Some(on_counted));
        desk
    }

    /// The language on screen.
    pub fn lang(self) -> Lang {
        self.bench.lang
    }

    /// The kinds that can be true of this pan.
    pub fn kinds(self) -> Vec<Kind> {
        self.bench
            .read(|kitchen, now| Kind::offered(kitchen.ledger(), self.pan, kitchen.today(now)))
    }

    /// Whether a number is asked for, followed.
    pub fn asks_number(self) -> bool {
        self.with(Form::asks_number).unwrap_or_default()
    }

    /// Reads the form; nothing while there is none.
    pub fn with<T>(self, look: impl FnOnce(&Form) -> T) -> Option<T> {
        self.form.with(|form| form.as_ref().map(look))
    }

    /// The number the form offers before anything is typed.
    pub fn offered_number(self) -> String {
        let kind = self.look(|form| form.kind);
        let open = |kind| {
            self.bench
                .look(|kitchen, now| Form::open(kitchen.ledger(), self.pan, kind, kitchen.today(now)).number)
        };
        kind.map(open).unwrap_or_default()
    }

    /// Reads the form once, following nothing.
    pub fn look<T>(self, look: impl FnOnce(&Form) -> T) -> Option<T> {
        self.form.with_untracked(|form| form.as_ref().map(look))
    }

    /// What stands in a field, followed.
    pub fn text(self, slot: Slot) -> String {
        self.with(|form| form.get(slot)).unwrap_or_default()
    }

    /// The key chosen in a field, followed.
    pub fn chosen(self, slot: Slot) -> Option<String> {
        self.with(|form| form.get(slot)).filter(|key| !key.is_empty())
    }

    /// Puts something in a field.
    pub fn set(self, slot: Slot, text: &str) {
        if self
            .form
            .with_untracked(|form| form.as_ref().is_none_or(|form| form.get(slot) == text))
        {
            return;
        }
        self.refused.set(None);
        self.doubt.set(None);
        self.form.update(|form| {
            if let Some(form) = form {
                form.set(slot, text);
            }
        });
    }

    /// Opens the form of a kind. The offer to take the last entry back makes room: it would lie over the pad.
    pub fn begin(self, kind: Kind) {
        self.bench.just_logged.set(None);
        let form = self
            .bench
            .look(|kitchen, now| Form::open(kitchen.ledger(), self.pan, kind, kitchen.today(now)));
        self.form.set(Some(form));
    }

    /// Back to the kinds; what was typed is dropped.
    pub fn leave(self) {
        prefs::set_draft(&[]);
        self.refused.set(None);
        self.doubt.set(None);
        self.form.set(None);
    }

    /// Sends what was said.
    pub fn send(self, how: Send) {
        self.say(how, false);
    }

    /// They stand by what was asked about.
    pub fn stand_by(self) {
        self.say(self.asked_about.get_untracked(), true);
    }

    fn say(self, how: Send, sure: bool) {
        self.refused.set(None);
        self.doubt.set(None);
        if let Some((job, form)) = self.job.get_untracked().zip(self.form.get_untracked()) {
            match form.counted(prefs::packs()) {
                Ok(amount) => job.run(Counted { amount, form }),
                Err(gap) => self.refused.set(Some(quick_refusals::gap(gap, self.lang()).to_owned())),
            }
            return;
        }
        match self.drafts(how, sure) {
            Ok(drafts) => {
                let pan = self.pan;
                let bench = self.bench;
                bench.send_then(Order::Write(drafts), move |entries| {
                    // Only now is it on disk, and what was typed no longer needed.
                    prefs::set_draft(&[]);
                    bench.just_logged.set(entries.first().cloned());
                    if screen::current() == Screen::Add(pan) {
                        screen::go(Screen::Pan(pan));
                    }
                });
            }
            Err(Unsaid::Doubt(words)) => {
                self.asked_about.set(how);
                self.doubt.set(Some(words));
            }
            Err(Unsaid::Refused(words)) => self.refused.set(Some(words)),
        }
    }

    fn drafts(self, how: Send, sure: bool) -> Result<Vec<Draft>, Unsaid> {
        let lang = self.lang();
        let who = self.bench.me();
        let form = self.form.get_untracked();
        self.bench.look(|kitchen, now| {
            let ledger = kitchen.ledger();
            let said = match (&form, how) {
                (None, _) => return Ok(Vec::new()),
                (Some(form), Send::AsTyped) => form.said(ledger, prefs::packs(), who, clock::offset),
                (Some(form), Send::NotUsed) => form.not_used(who, clock::offset),
            };
            let mut said = said.map_err(|gap| Unsaid::Refused(quick_refusals::gap(gap, lang).to_owned()))?;
            said.sure = sure;
            said::drafts(ledger, said.clone(), *now).map_err(|why| match why {
                QuickRefusal::Doubt(doubt) => Unsaid::Doubt(Asked {
                    words: quick_refusals::doubt(doubt, &said.what, lang),
                    answers: quick_refusals::doubt_answers(doubt, lang),
                    likely_wrong: matches!(doubt, Doubt::Unexpected { .. }),
                }),
                why => Unsaid::Refused(quick_refusals::refusal(&why, &ledger.book, now.off_min, lang)),
            })
        })
    }
}

/// Why nothing was sent, in words.
enum Unsaid {
    /// Asked once.
    Doubt(Asked),
    /// Refused.
    Refused(String),
}

const PAN: &str = "pan";
const KIND: &str = "kind";

fn pairs(form: &Form) -> Vec<(String, String)> {
    let mut pairs = form.pairs();
    pairs.push((PAN.to_owned(), format!("{:032x}", form.pan.0)));
    pairs.push((KIND.to_owned(), form.kind.key().to_owned()));
    pairs
}

/// The form a reload interrupted, if it was about this pan and its kind can still be true.
fn kept(bench: Bench, pan: PanId) -> Option<Form> {
    let pairs = prefs::draft();
    let text = |wanted: &str| {
        pairs
            .iter()
            .find(|(key, _)| key == wanted)
            .map(|(_, text)| text.as_str())
    };
    let same_pan = u128::from_str_radix(text(PAN)?, 16) == Ok(pan.0);
    let kind = Kind::from_key(text(KIND)?)?;
    bench.look(|kitchen, now| {
        let day = kitchen.today(now);
        let offered = Kind::offered(kitchen.ledger(), pan, day).contains(&kind);
        (same_pan && offered).then(|| {
            let mut form = Form::open(kitchen.ledger(), pan, kind, day);
            form.put_back(&pairs);
            form
        })
    })
}
