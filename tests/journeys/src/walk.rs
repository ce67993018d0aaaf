//! Somebody who works through a job and does everything right, unless told otherwise.
//!
//! The walker looks at the screen, gives the answer the step tables call good, and goes on when it may. It touches
//! only what has stood unchanged for as long as the app wants a screen to stand before it takes an answer.

use crate::fault::{Outcome, fault};
use crate::phone::Phone;
use crate::table::{answer_of, good_words};
use crate::wait::until;
use panward::domain::evidence::Item;
use panward::domain::facts::setup::OutBy;
use panward::domain::guide::asking::SETTLE_MS;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Something on the screen that carries a test id.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Thing {
    /// Its test id.
    pub id: String,
    /// Whether it is a button that can be pressed now.
    pub awake: bool,
    /// Whether it is the answer given so far.
    pub chosen: bool,
    /// What it says.
    pub words: String,
}

/// What the screen shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sight {
    /// The step, as the tables call it.
    pub step: Option<String>,
    /// Everything that carries a test id, in the order of the page.
    pub things: Vec<Thing>,
    /// Whether it has stood long enough to take an answer.
    pub settled: bool,
    sign: String,
}

impl Sight {
    /// Whether something called `id` is shown.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.things.iter().any(|thing| thing.id == id)
    }

    /// Whether a button called `id` can be pressed.
    #[must_use]
    pub fn awake(&self, id: &str) -> bool {
        self.things.iter().any(|thing| thing.id == id && thing.awake)
    }

    /// Whether the step shown is `key`.
    #[must_use]
    pub fn at(&self, key: &str) -> bool {
        self.step.as_deref() == Some(key)
    }

    /// Whether it shows something else than another sight.
    #[must_use]
    pub fn differs(&self, other: &Self) -> bool {
        self.sign != other.sign
    }

    /// A name for what is shown, for pictures and complaints: the step and the first answer to it.
    #[must_use]
    pub fn name(&self) -> String {
        let step = self.step.as_deref().unwrap_or("no-step");
        let telling = |id: &str| {
            ["answer-", "pad-", "person-", "machine-", "heater-on"]
                .iter()
                .any(|stem| id.starts_with(stem))
        };
        let first = self.things.iter().map(|thing| thing.id.as_str()).find(|id| telling(id));
        format!("{step}.{}", first.unwrap_or("plain")).replace(['/', ' '], "-")
    }
}

const LOOK: &str = "const seen = (it) => it.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    const sheet = document.querySelector('dialog[open]') ?? document;
    const all = (what) => [...sheet.querySelectorAll(what)].filter(seen);
    const things = all('[data-testid]').map((it) => ({
        id: it.dataset.testid,
        awake: it.matches('button, a, input') && !it.disabled,
        chosen: it.getAttribute('aria-pressed') === 'true',
        words: it.innerText ?? '',
    }));
    const step = all('[data-step]')[0]?.dataset.step ?? null;
    const words = all('[data-testid=\"say\"]')[0]?.innerText;
    const sign = JSON.stringify([location.hash, step, words, things.map((it) => [it.id, it.awake, it.chosen, it.id.startsWith('answer-') && it.words])]);
    const now = performance.now();
    const ready = document.documentElement.dataset.ready !== undefined;
    if (!ready || window.__sight?.sign !== sign) window.__sight = { sign, since: now };
    return { step, things, sign, settled: ready && now - window.__sight.since >= arguments[0] };";

impl Phone {
    /// What the screen shows now.
    pub async fn sight(&self) -> Outcome<Sight> {
        let seen = self.run(LOOK, &[json!(SETTLE_MS)]).await?;
        let thing = |it: &Value| Thing {
            id: it["id"].as_str().unwrap_or_default().to_owned(),
            awake: it["awake"] == true,
            chosen: it["chosen"] == true,
            words: it["words"].as_str().unwrap_or_default().to_owned(),
        };
        Ok(Sight {
            step: seen["step"].as_str().map(str::to_owned),
            things: seen["things"].as_array().into_iter().flatten().map(thing).collect(),
            settled: seen["settled"] == true,
            sign: seen["sign"].as_str().unwrap_or_default().to_owned(),
        })
    }

    /// What the screen shows once it has settled.
    pub async fn settled(&self) -> Outcome<Sight> {
        until("a screen that stands still", async || {
            let sight = self.sight().await?;
            Ok(sight.settled.then_some(sight))
        })
        .await
    }

    /// One touch on `id` once the screen has settled, and what it led to.
    pub async fn press(&mut self, id: &str) -> Outcome<Sight> {
        let before = self.settled().await?;
        self.tap(id).await?;
        self.after(&before, id).await
    }

    /// Types a number on the pad called `stem` and accepts it: two touches, the number and its accept.
    pub async fn number(&mut self, stem: &str, text: &str) -> Outcome<Sight> {
        self.settled().await?;
        let counted = self.touches;
        for figure in text.chars() {
            let key = match figure {
                '.' => "point".to_owned(),
                '-' => "sign".to_owned(),
                figure => figure.to_string(),
            };
            self.tap(&format!("{stem}-{key}")).await?;
        }
        self.touches = counted + 1;
        let typed = self.settled().await?;
        self.tap(&format!("{stem}-accept")).await?;
        self.after(&typed, stem).await
    }

    async fn after(&self, before: &Sight, touched: &str) -> Outcome<Sight> {
        until(
            &format!("something to follow a touch on {touched} at {}", before.name()),
            async || {
                let now = self.sight().await?;
                Ok((now.sign != before.sign && now.settled).then_some(now))
            },
        )
        .await
    }
}

/// How the ids of people and machines to name begin; a heater to switch on is named in the same way.
const PICKS: [&str; 3] = ["person-", "machine-", "heater-on"];

/// What the walker does next.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Move {
    Press(String),
    Number(String, String),
}

impl Default for Walker {
    fn default() -> Self {
        Self::new()
    }
}

/// Somebody at the phone who does everything right, but for what they were told.
#[derive(Clone, Debug)]
pub struct Walker {
    /// The machine in use, which decides how a valve must stand.
    out_by: OutBy,
    /// Answers given in place of the first good one, by item.
    words: BTreeMap<String, String>,
    /// Numbers, by item.
    numbers: BTreeMap<String, String>,
    /// Who and which machine, as their buttons say; the first button where none of these is there.
    picks: Vec<String>,
}

impl Walker {
    /// Somebody who knows usual temperatures: oil at its target, scraps cold.
    #[must_use]
    pub fn new() -> Self {
        Self::at(OutBy::Nozzle)
    }

    /// The same at another kind of machine.
    #[must_use]
    pub fn at(out_by: OutBy) -> Self {
        let nothing_told = Self {
            out_by,
            words: BTreeMap::new(),
            numbers: BTreeMap::new(),
            picks: Vec::new(),
        };
        nothing_told
            .types("oil_dc", "150")
            .types("water_dc", "30")
            .types("heap_dc", "31")
            .types("heap_again_dc", "30")
    }

    /// Answers an item by this word, also where it is asked once more.
    #[must_use]
    pub fn says(mut self, item: &str, word: &str) -> Self {
        if item == Item::Place.key() {
            self.words.insert(Item::PlaceAgain.key().to_owned(), word.to_owned());
        }
        self.words.insert(item.to_owned(), word.to_owned());
        self
    }

    /// Types this number where an item is measured.
    #[must_use]
    pub fn types(mut self, item: &str, number: &str) -> Self {
        self.numbers.insert(item.to_owned(), number.to_owned());
        self
    }

    /// Picks the person or machine whose button says so, where it is on offer.
    #[must_use]
    pub fn picks(mut self, words: &str) -> Self {
        self.picks.push(words.to_owned());
        self
    }

    fn next(&self, sight: &Sight) -> Option<Move> {
        let press = |id: &str| Some(Move::Press(id.to_owned()));
        if sight.awake("go-on") {
            return press("go-on");
        }
        if sight
            .things
            .iter()
            .any(|thing| thing.id == "answer-together" && !thing.chosen)
        {
            return press("answer-together");
        }
        let pads = sight.things.iter().filter_map(|thing| {
            let item = thing.id.strip_prefix("pad-")?;
            Some((&thing.id, self.numbers.get(item)?))
        });
        if let Some((stem, number)) = pads.into_iter().next() {
            return Some(Move::Number(stem.clone(), number.clone()));
        }
        let answers: Vec<&Thing> = sight
            .things
            .iter()
            .filter(|thing| thing.awake && answer_of(&thing.id).is_some())
            .collect();
        if let Some((item, _)) = answers.first().and_then(|thing| answer_of(&thing.id)) {
            let told = self.words.get(item.key()).map(String::as_str);
            let good = good_words(self.out_by, sight.step.as_deref().unwrap_or_default(), item.key());
            return told
                .into_iter()
                .chain(good)
                .map(|word| format!("answer-{}-{word}", item.key()))
                .find(|id| answers.iter().any(|thing| thing.id == *id))
                .map(Move::Press);
        }
        // Where no Go on follows, naming the person offered is what opens the job.
        let fresh = |thing: &Thing| !thing.chosen || !sight.has("go-on");
        let picks: Vec<&Thing> = sight
            .things
            .iter()
            .filter(|thing| thing.awake && fresh(thing) && PICKS.iter().any(|stem| thing.id.starts_with(stem)))
            .collect();
        let told = picks
            .iter()
            .find(|thing| self.picks.iter().any(|end| thing.id.ends_with(end.as_str())));
        told.or(picks.first()).map(|thing| Move::Press(thing.id.clone()))
    }

    /// Whether the walker knows what to do at this sight.
    #[must_use]
    pub fn knows(&self, sight: &Sight) -> bool {
        self.next(sight).is_some()
    }

    /// Does the next thing and returns what it led to.
    pub async fn one(&self, phone: &mut Phone) -> Outcome<Sight> {
        let sight = phone.settled().await?;
        match self.next(&sight) {
            Some(Move::Press(id)) => phone.press(&id).await,
            Some(Move::Number(stem, number)) => phone.number(&stem, &number).await,
            None => fault(format!("nothing to do at {}: {:?}", sight.name(), sight.things)),
        }
    }

    /// Goes on until `there` says so, looking at each sight on the way, the first and the last included.
    pub async fn walk(
        &self,
        phone: &mut Phone,
        there: impl Fn(&Sight) -> bool,
        mut look: impl AsyncFnMut(&mut Phone, &Sight) -> Outcome,
    ) -> Outcome<Sight> {
        let mut sight = phone.settled().await?;
        for _ in 0..MOST_TOUCHES {
            look(phone, &sight).await?;
            if there(&sight) {
                return Ok(sight);
            }
            sight = self.one(phone).await?;
        }
        fault(format!("{MOST_TOUCHES} touches and not there yet, at {}", sight.name()))
    }

    /// Goes on until `there` says so.
    pub async fn until(&self, phone: &mut Phone, there: impl Fn(&Sight) -> bool) -> Outcome<Sight> {
        self.walk(phone, there, async |_, _| Ok(())).await
    }

    /// Goes on until the step called `key` is shown.
    pub async fn to_step(&self, phone: &mut Phone, key: &str) -> Outcome<Sight> {
        self.until(phone, |sight| sight.at(key)).await
    }

    /// Goes on as long as it knows how.
    pub async fn as_far_as_it_goes(&self, phone: &mut Phone) -> Outcome<Sight> {
        self.until(phone, |sight| !self.knows(sight)).await
    }
}

/// More touches than any stretch of a job takes: a walk that goes round in circles is left.
const MOST_TOUCHES: usize = 200;

#[cfg(test)]
mod tests {
    use super::*;

    fn sight(step: &str, ids: &[(&str, bool)]) -> Sight {
        let thing = |(id, awake): &(&str, bool)| Thing {
            id: (*id).to_owned(),
            awake: *awake,
            chosen: false,
            words: id.rsplit('-').next().unwrap_or_default().to_owned(),
        };
        Sight {
            step: Some(step.to_owned()),
            things: ids.iter().map(thing).collect(),
            settled: true,
            sign: String::new(),
        }
    }

    #[test]
    fn gives_the_good_answer_whichever_way_round_it_stands_and_goes_on_when_it_may() {
        let walker = Walker::new();
        let press = |id: &str| Some(Move::Press(id.to_owned()));
        let asked = [
            ("answer-valve-open", true),
            ("answer-valve-shut", true),
            ("go-on", false),
        ];
        assert_eq!(walker.next(&sight("out.connect", &asked)), press("answer-valve-shut"));
        let given = [("answer-valve-open", true), ("go-on", true)];
        assert_eq!(walker.next(&sight("out.connect", &given)), press("go-on"));
        let number = Some(Move::Number("pad-oil_dc".to_owned(), "150".to_owned()));
        assert_eq!(walker.next(&sight("out.oil_temp", &[("pad-oil_dc", false)])), number);
    }

    #[test]
    fn does_as_it_was_told_instead() {
        let walker = Walker::new().says("tank", "oil").picks("BO");
        let press = |id: &str| Some(Move::Press(id.to_owned()));
        let asked = [("answer-tank-empty", true), ("answer-tank-oil", true)];
        assert_eq!(walker.next(&sight("return.tank", &asked)), press("answer-tank-oil"));
        let people = [("person-HL", true), ("person-BO", true)];
        assert_eq!(walker.next(&sight("ready.who", &people)), press("person-BO"));
        assert_eq!(walker.next(&sight("ready.who", &[])), None);
    }
}
