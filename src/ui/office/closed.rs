//! Closed days: those that stand, a way to open again, and two dates to close on.

use crate::domain::entry::Draft;
use crate::domain::facts::Fact;
use crate::domain::facts::closed::Closed;
use crate::domain::ids::EntryId;
use crate::domain::quick;
use crate::domain::time::Day;
use crate::kitchen::Order;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Element, Held, Node, el, live, several};
use crate::ui::parts::{Field, FieldKind, Rank, button, card, error_line};
use crate::words::rhythm::{self, Say, say};
use crate::words::{Lang, quick_refusals};

/// What is being typed. Copies are handles on the same.
#[derive(Clone, Copy)]
struct Typing {
    bench: Bench,
    from: Held<String>,
    to: Held<String>,
    why: Held<String>,
    wrong: Held<Option<String>>,
}

/// The card.
#[must_use]
pub fn closed_days(bench: Bench) -> Element {
    let lang = bench.lang;
    let typing = Typing {
        bench,
        from: Held::new(String::new()),
        to: Held::new(String::new()),
        why: Held::new(String::new()),
        wrong: Held::new(None),
    };
    let standing = live(move || {
        let days: Vec<(EntryId, String)> = bench.read_each_second(|kitchen, now| {
            let days = kitchen.ledger().book.closed_from(kitchen.today(now));
            days.into_iter()
                .map(|(id, closed)| (*id, rhythm::days_and_why(closed, lang)))
                .collect()
        });
        several(days.into_iter().map(|(id, words)| {
            let open = button(Rank::Second, say(Say::OpenAgain, lang), "open-again", move || {
                typing.open_again(id);
            });
            el("div").testid("closed").child(el("p").text(words)).child(open)
        }))
    });
    card("closed-days")
        .child(el("h2").text(say(Say::ClosedDays, lang)))
        .child(el("p").class("soft").text(say(Say::ClosedText, lang)))
        .child(standing)
        .child(live(move || typing.fields(lang)))
}

impl Typing {
    fn fields(self, lang: Lang) -> Node {
        let day = |label, held, testid: &'static str| Field {
            kind: FieldKind::Date,
            ..Field::of(say(label, lang), held, testid)
        };
        let close = button(Rank::Second, say(Say::CloseDays, lang), "close-days", move || {
            self.close()
        });
        nodes![
            day(Say::FirstDay, self.from, "closed-from").draw(),
            day(Say::LastDay, self.to, "closed-to").draw(),
            Field::of(say(Say::Why, lang), self.why, "closed-why").draw(),
            error_line(self.wrong.get()),
            close,
        ]
    }

    fn close(self) {
        let lang = self.bench.lang;
        let days = Day::spelt(&self.from.get_untracked()).zip(Day::spelt(&self.to.get_untracked()));
        let Some((from, to)) = days else {
            self.wrong.set(Some(say(Say::NoDay, lang).to_owned()));
            return;
        };
        let why = Some(self.why.get_untracked().trim().to_owned()).filter(|why| !why.is_empty());
        match Closed::between(from, to, why) {
            Err(wrong) => self.wrong.set(Some(rhythm::not_days(wrong, lang).to_owned())),
            Ok(closed) => self.send(Draft::now(self.bench.me(), Fact::Closed(closed))),
        }
    }

    /// Days that have not come are taken back; of days that have, today is the first open one.
    fn open_again(self, id: EntryId) {
        let (bench, who) = (self.bench, self.bench.me());
        let opened = bench.look(|kitchen, now| {
            let (ledger, today) = (kitchen.ledger(), kitchen.today(now));
            let why = say(Say::OpenedAgain, bench.lang).to_owned();
            let draft = quick::open_again(ledger, id, today, why, who, *now);
            draft.map_err(|why| quick_refusals::refusal(&why, &ledger.book, now.off_min, bench.lang))
        });
        match opened {
            Ok(draft) => self.send(draft),
            Err(why) => self.wrong.set(Some(why)),
        }
    }

    fn send(self, draft: Draft) {
        self.wrong.set(None);
        let bench = self.bench;
        bench.send_then(Order::Write(vec![draft]), move |entries| {
            let closed = entries.first().filter(|entry| matches!(entry.fact, Fact::Closed(_)));
            bench.just_logged.set(closed.cloned());
            for held in [self.from, self.to, self.why] {
                held.set(String::new());
            }
        });
    }
}
