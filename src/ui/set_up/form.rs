//! A form: its fields a page at a time, what is wrong said at its field, saved as one order when it is whole.

use super::drafts;
use super::field::FormField;
use crate::browser::clock;
use crate::browser::page::to_top;
use crate::domain::entry::Draft;
use crate::domain::facts::Fact;
use crate::domain::ids::PersonId;
use crate::domain::setting_up::{Answers, Around, Field, Subject, Wrong, country};
use crate::kitchen::Order;
use crate::ui::bench::Bench;
use crate::ui::cards::{CardDesk, use_cards};
use crate::ui::node::{Act, Element, Held, Node, Reach, Tell, el, follow, live, speak};
use crate::ui::parts::{Rank, button};
use crate::ui::prefs;
use crate::words::local::Local;
use crate::words::log::{Office, office};
use crate::words::screens::{Screen as Words, screen as words};
use crate::words::{Lang, forms, proposed};

/// A form.
pub struct Form {
    /// What it is about.
    pub subject: Subject,
    /// The thing's id; a new one for something new.
    pub id: u128,
    /// Where what is typed is kept until it is saved.
    pub draft: String,
    /// The page shown, from 0, where a few fields come at a time, as on first set-up; `None` shows all at once.
    pub page: Option<Held<usize>>,
    /// Called once it is on disk.
    pub on_saved: Act,
}

impl Form {
    /// Draws it.
    pub fn draw(self, bench: Bench) -> Node {
        let Self { subject, id, .. } = self;
        let answers = drafts::kept(&self.draft).unwrap_or_else(|| {
            around(bench, |a| {
                let zone = clock::device_zone().unwrap_or_default();
                subject.filled(id, a).unwrap_or_else(|| match self.page {
                    Some(_) => with_proposed(subject.blank(a, &zone), bench.lang),
                    None => subject.blank(a, &zone),
                })
            })
        });
        let desk = FormDesk {
            bench,
            cards: use_cards(),
            subject,
            id,
            paged: self.page.is_some(),
            page: self.page.unwrap_or_else(|| Held::new(0)),
            whole: Held::new(false),
            given: Held::new(Given {
                answers,
                wrongs: Vec::new(),
                zone_unknown: false,
            }),
            draft: Held::new(self.draft),
            on_saved: Held::new(self.on_saved),
        };
        let top = Reach::new();
        begin_each_page_at_its_top(desk.page, top);
        live(move || desk.given.with(|given| desk.drawn(given, desk.page.get(), top)))
    }
}

/// With the words most kitchens would type.
fn with_proposed(blank: Answers, lang: Lang) -> Answers {
    let words = Field::ALL
        .iter()
        .filter_map(|field| Some((*field, proposed::proposed(*field, lang)?)));
    words.fold(blank, |answers, (field, words)| match answers.get(field) {
        "" => answers.with(field, words),
        _ => answers,
    })
}

/// A page that was turned begins at its top, for the eye and for who hears it.
fn begin_each_page_at_its_top(page: Held<usize>, top: Reach) {
    let mut before = None;
    follow(move || {
        let at = page.get();
        if before.replace(at).is_some_and(|before| before != at)
            && let Some(title) = top.get()
        {
            to_top();
            let _ = title.focus();
        }
    });
}

/// Lets a closure see what stands around a form.
fn around<T>(bench: Bench, see: impl FnOnce(Around) -> T) -> T {
    bench.look(|kitchen, now| {
        see(Around {
            book: &kitchen.ledger().book,
            today: kitchen.today(now),
        })
    })
}

/// What has been answered, and what is wrong with it.
struct Given {
    answers: Answers,
    wrongs: Vec<Wrong>,
    /// Only the browser knows which zones there are.
    zone_unknown: bool,
}

impl Given {
    /// What is wrong with a field, in words.
    fn error(&self, field: Field, bench: Bench) -> Option<String> {
        if field == Field::Zone && self.zone_unknown {
            return Some(forms::unknown_zone(bench.lang).to_owned());
        }
        let wrong = self.wrongs.iter().find(|wrong| wrong.field == field)?;
        Some(forms::fault(field, wrong.why, bench.lang))
    }
}

/// A form being filled in. Copies are handles on the same one.
#[derive(Clone, Copy)]
struct FormDesk {
    bench: Bench,
    cards: CardDesk,
    subject: Subject,
    id: u128,
    paged: bool,
    page: Held<usize>,
    /// Whether what has a default is asked too.
    whole: Held<bool>,
    given: Held<Given>,
    draft: Held<String>,
    on_saved: Held<Act>,
}

impl FormDesk {
    fn drawn(self, given: &Given, page: usize, top: Reach) -> Element {
        let lang = self.bench.lang;
        // A first kitchen is spoken to in the words of the country answered; one that stands, once it is saved.
        if self.subject == Subject::Kitchen && around(self.bench, |a| a.book.kitchen.is_none()) {
            speak(Local::of(&country(&given.answers), std::iter::empty()));
        }
        let pages = self.pages(&given.answers);
        let shown = pages.get(page).map_or(&[][..], Vec::as_slice);
        let title = shown.first().map_or("", |first| forms::page_title(*first, lang));
        let fields = shown.iter().map(|&field| {
            let asked = FormField {
                field,
                answers: &given.answers,
                id: self.id,
                error: given.error(field, self.bench),
                on_answer: Tell::new(move |value| self.answer(field, value)),
            };
            asked.draw(self.bench)
        });
        let of = self
            .paged
            .then(|| forms::page_of(self.subject, page + 1, pages.len(), lang));
        let forward = if page + 1 >= pages.len() {
            office(Office::Save, lang)
        } else {
            words(Words::Next, lang)
        };
        let back = (page > 0).then(|| {
            button(Rank::Plain, words(Words::Back, lang), "form-back", move || {
                self.page.update(|n| *n = n.saturating_sub(1));
            })
        });
        let end = el("div")
            .class("form-end")
            .child(button(Rank::First, forward, "form-next", move || self.go_on()))
            .child(back);
        el("div")
            .class("form")
            .testid(format!("form-{}", self.subject.key()))
            .key(format!("{}-{:x}", self.subject.key(), self.id))
            .child(of.map(|words| el("p").class("eyebrow").testid("form-of").text(words)))
            .child(
                el("h2")
                    .class("form-title")
                    .attr("tabindex", "-1")
                    .reach(top)
                    .text(title),
            )
            .children(fields)
            .child(if page + 1 >= pages.len() {
                self.rest(&given.answers)
            } else {
                Node::Nothing
            })
            .child(end)
    }

    /// What was not asked, as it stands, and the way to it.
    fn rest(self, answers: &Answers) -> Node {
        let lang = self.bench.lang;
        let left = if self.paged && !self.whole.get() {
            around(self.bench, |a| self.subject.rest_pages(self.id, answers, a))
        } else {
            Vec::new()
        };
        if left.is_empty() {
            return Node::Nothing;
        }
        let fields = left.concat();
        let mut lines = Vec::new();
        let mut empty = Vec::new();
        for field in fields {
            match proposed::stands(field, answers, lang) {
                Some(line) => lines.push(line),
                None => empty.push(field),
            }
        }
        if !empty.is_empty() {
            lines.push(proposed::left_empty(&empty, lang));
        }
        let ask = button(Rank::Plain, proposed::ask_the_rest(lang), "form-rest", move || {
            self.whole.set(true);
            self.go_on();
        });
        el("section")
            .class("form-rest")
            .testid("form-stands")
            .child(el("h3").text(proposed::rest_title(lang)))
            .child(el("ul").children(lines.into_iter().map(|line| el("li").text(line))))
            .child(ask)
            .into()
    }

    fn pages(self, answers: &Answers) -> Vec<Vec<Field>> {
        let (subject, id) = (self.subject, self.id);
        if !self.paged {
            return vec![around(self.bench, |a| subject.pages(id, answers, a)).concat()];
        }
        let mut pages = around(self.bench, |a| subject.first_pages(id, answers, a));
        if self.whole.get_untracked() {
            pages.extend(around(self.bench, |a| subject.rest_pages(id, answers, a)));
        }
        pages
    }

    fn answer(self, field: Field, value: String) {
        self.given.update(|given| {
            given.answers = std::mem::take(&mut given.answers).after(field, &value);
            given.wrongs.retain(|wrong| wrong.field != field);
            given.zone_unknown &= field != Field::Zone;
            self.draft.with_untracked(|key| drafts::keep(key, &given.answers));
        });
    }

    fn go_on(self) {
        let (checked, pages, zone_known) = self.given.with_untracked(|Given { answers, .. }| {
            let checked = around(self.bench, |a| self.subject.check(self.id, answers, a));
            let zone = answers.get(Field::Zone).trim();
            (checked, self.pages(answers), zone.is_empty() || clock::knows_zone(zone))
        });
        let page = self.page.get_untracked();
        let shown = pages.get(page).map_or(&[][..], Vec::as_slice);
        let zone_unknown = !zone_known && shown.contains(&Field::Zone);
        self.given.update(|given| given.zone_unknown = zone_unknown);
        let last = page + 1 >= pages.len();
        let mut wrongs = match checked {
            Ok(facts) if last && !zone_unknown => return self.save(facts),
            Ok(_) => Vec::new(),
            Err(wrongs) => wrongs,
        };
        let is_on = |page: &[Field], wrong: &Wrong| page.contains(&wrong.field);
        if zone_unknown || wrongs.iter().any(|wrong| is_on(shown, wrong)) {
            wrongs.retain(|wrong| is_on(shown, wrong));
            self.given.update(|given| given.wrongs = wrongs);
        } else if last {
            // An earlier page came to be wrong by what was answered later, or one that was not asked: go to it.
            self.whole.set(true);
            let pages = self.given.with_untracked(|given| self.pages(&given.answers));
            let at = wrongs
                .first()
                .and_then(|wrong| pages.iter().position(|page| is_on(page, wrong)));
            self.page.set(at.unwrap_or(0));
            self.given.update(|given| given.wrongs = wrongs);
        } else {
            self.page.set(page + 1);
        }
    }

    fn save(self, facts: Vec<Fact>) {
        let Self {
            bench,
            cards,
            subject,
            id,
            on_saved,
            ..
        } = self;
        let number = match facts.first() {
            Some(Fact::Kitchen(kitchen)) => {
                if clock::use_zone(&kitchen.zone).is_err() {
                    self.given.update(|given| given.zone_unknown = true);
                    return;
                }
                Some(kitchen.emergency_number.clone())
            }
            _ => None,
        };
        let who = bench.me();
        let drafted = facts.into_iter().map(|fact| Draft::now(who, fact)).collect();
        // Taken out now: an order sent once more may come through after its form has gone.
        let (key, on_saved) = (self.draft.get_untracked(), on_saved.get_untracked());
        bench.send_then(Order::Write(drafted), move |_| {
            drafts::forget(&key);
            if let Some(number) = number {
                cards.number.set(number);
            }
            if subject == Subject::Person && prefs::me().is_none() {
                prefs::set_me(PersonId(id));
            }
            on_saved.run();
        });
    }
}
