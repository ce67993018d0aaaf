//! The forms in words: their choices, and what is said of a limit.

use panward::domain::facts::setup::HeatKind;
use panward::domain::setting_up::{Field, Subject, limit_said};
use panward::words::Lang;
use panward::words::forms::{Control, control, limit_text, options};

use crate::right;

#[test]
fn every_field_that_is_chosen_has_choices_and_no_other_has() {
    for field in Field::ALL {
        let chosen = matches!(control(*field, ""), Control::Listed | Control::One | Control::Many);
        // Who may sign somebody off are people, known to the kitchen alone.
        let people = *field == Field::SignedBy;
        let choices = options(*field, HeatKind::Gas.key(), Lang::En).len();
        assert_eq!(choices > 1, chosen && !people, "{field:?} has {choices}");
    }
}

#[test]
fn an_own_limit_is_said_beside_the_published_one_with_its_source() {
    let form = right(Subject::Kitchen).after(Field::Country, "FR");
    let law = limit_text(limit_said(&form), Lang::En);
    assert!(law.contains("statute") && law.contains("Source: LGC"), "{law}");
    let own = limit_text(limit_said(&form.after(Field::LimitPolar, "20")), Lang::En).replace('\u{a0}', " ");
    assert!(
        own.starts_with("Your own choice.") && own.contains("25 % polar compounds (law)"),
        "{own}"
    );
    let uk = limit_text(limit_said(&right(Subject::Kitchen)), Lang::En);
    assert!(uk.contains("your own choice") && !uk.contains("Source"), "{uk}");
}
