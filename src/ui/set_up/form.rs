//! A form: its fields a page at a time, what is wrong said at its field, saved as one order when it is whole.

use leptos::{html, prelude::*};

use super::drafts;
use super::field::FormField;
use crate::browser::clock;
use crate::domain::entry::Draft;
use crate::domain::facts::Fact;
use crate::domain::ids::PersonId;
use crate::domain::setting_up::{Around, Field, Subject, Wrong};
use crate::kitchen::Order;
use crate::ui::bench::{Bench, use_bench};
use crate::ui::cards::use_cards;
use crate::ui::old_parts::{Button, Rank};
use crate::ui::prefs;
use crate::words::forms;
use crate::words::log::{Office, office};
use crate::words::screens::{Screen as Words, screen as words};

/// Lets a closure see what stands around a form.
fn around<T>(bench: Bench, see: impl FnOnce(Around) -> T) -> T {
    bench.look(|kitchen, now| {
        see(Around {
            book: &kitchen.ledger().book,
            today: kitchen.today(now),
        })
    })
}

/// A form.
#[component]
pub fn Form(
    /// What it is about.
    subject: Subject,
    /// The thing's id; a new one for something new.
    id: u128,
    /// Where what is typed is kept until it is saved.
    draft: String,
    /// A few fields at a time, as on first set-up; else all at once.
    #[prop(optional)]
    paged: bool,
    /// The page shown, from 0.
    #[prop(optional)]
    page: RwSignal<usize>,
    /// Called once it is on disk.
    #[prop(into)]
    on_saved: Callback<()>,
) -> impl IntoView {
    let bench = use_bench();
    let desk = use_cards();
    let lang = bench.lang;
    let start = drafts::kept(&draft).unwrap_or_else(|| {
        around(bench, |a| {
            let zone = clock::device_zone().unwrap_or_default();
            subject.filled(id, a).unwrap_or_else(|| subject.blank(a, &zone))
        })
    });
    let answers = RwSignal::new(start);
    let wrongs = RwSignal::new(Vec::<Wrong>::new());
    let zone_unknown = RwSignal::new(false);
    let draft = StoredValue::new(draft);
    let pages = Memo::new(move |_| {
        let pages = answers.with(|given| around(bench, |a| subject.pages(id, given, a)));
        if paged { pages } else { vec![pages.concat()] }
    });
    let fields = Memo::new(move |_| pages.with(|pages| pages.get(page.get()).cloned().unwrap_or_default()));
    let top = NodeRef::<html::H2>::new();
    Effect::new(move |turned: Option<usize>| {
        let at = page.get();
        // A page that was turned begins at its top, for the eye and for who hears it.
        if turned.is_some_and(|before| before != at)
            && let Some(title) = top.get_untracked()
        {
            if let Some(window) = web_sys::window() {
                window.scroll_to_with_x_and_y(0.0, 0.0);
            }
            let _ = title.focus();
        }
        at
    });
    let last = move || page.get() + 1 >= pages.with(Vec::len);

    let answer = move |field: Field, value: String| {
        answers.update(|form| *form = std::mem::take(form).after(field, &value));
        wrongs.update(|all| all.retain(|wrong| wrong.field != field));
        if field == Field::Zone {
            zone_unknown.set(false);
        }
        draft.with_value(|key| answers.with_untracked(|form| drafts::keep(key, form)));
    };
    let save = move |facts: Vec<Fact>| {
        if let Some(Fact::Kitchen(kitchen)) = facts.first()
            && clock::use_zone(&kitchen.zone).is_err()
        {
            zone_unknown.set(true);
            return;
        }
        let who = bench.me();
        let number = match facts.first() {
            Some(Fact::Kitchen(kitchen)) => Some(kitchen.emergency_number.clone()),
            _ => None,
        };
        let drafted = facts.into_iter().map(|fact| Draft::now(who, fact)).collect();
        let key = draft.get_value();
        bench.send_then(Order::Write(drafted), move |_| {
            drafts::forget(&key);
            if let Some(number) = number {
                desk.number.set(number);
            }
            if subject == Subject::Person && prefs::me().is_none() {
                prefs::set_me(PersonId(id));
            }
            on_saved.run(());
        });
    };
    let go_on = Callback::new(move |()| {
        let checked = answers.with_untracked(|form| around(bench, |a| subject.check(id, form, a)));
        match checked {
            Ok(facts) if last() => save(facts),
            Ok(_) => page.update(|n| *n += 1),
            Err(mut found) => {
                let shown = fields.get_untracked();
                let here = |wrong: &Wrong| shown.contains(&wrong.field);
                if found.iter().any(here) {
                    found.retain(here);
                    wrongs.set(found);
                } else if last() {
                    // An earlier page came to be wrong by what was answered later: go back to it.
                    let at = found.first().and_then(|wrong| {
                        pages.with_untracked(|pages| pages.iter().position(|p| p.contains(&wrong.field)))
                    });
                    page.set(at.unwrap_or(0));
                    wrongs.set(found);
                } else {
                    page.update(|n| *n += 1);
                }
            }
        }
    });
    let error = move |field: Field| {
        Signal::derive(move || {
            if field == Field::Zone && zone_unknown.get() {
                return Some(forms::unknown_zone(lang).to_owned());
            }
            let why = wrongs.with(|all| all.iter().find(|wrong| wrong.field == field).map(|wrong| wrong.why));
            why.map(|why| forms::fault(field, why, lang))
        })
    };
    let title = move || fields.with(|shown| shown.first().map_or("", |first| forms::page_title(*first, lang)));
    let forward = Signal::derive(move || {
        let what = if last() {
            office(Office::Save, lang)
        } else {
            words(Words::Next, lang)
        };
        what.to_owned()
    });
    view! {
        <div class="form" data-testid=format!("form-{}", subject.key())>
            <h2 class="form-title" tabindex="-1" node_ref=top>{title}</h2>
            <For each=move || fields.get() key=|field| *field let:field>
                <FormField field answers id error=error(field) on_answer=Callback::new(move |value| answer(field, value))/>
            </For>
            <div class="form-end">
                <Button label=forward rank=Rank::First on_press=go_on testid="form-next"/>
                {move || (page.get() > 0).then(|| view! {
                    <Button label=words(Words::Back, lang) rank=Rank::Plain on_press=Callback::new(move |()| page.update(|n| *n = n.saturating_sub(1))) testid="form-back"/>
                })}
            </div>
        </div>
    }
}
