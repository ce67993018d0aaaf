//! Claims and allergens, as regulations and guidance give them.

use panward::domain::claim::{ClaimKind, Exposure, Exposures};
use panward::domain::fat::{Fat, FatAllergen};
use panward::domain::quick::Need;
use panward::words::{Lang, kept_for, setup};

/// Reg. (EU) 1169/2011 Annex II (from memory): 5, peanuts "and products thereof", with no exemption for refined oil;
/// 6 (a), "fully refined soybean oil and fat" exempt. No other fat of our list comes from anything in the annex.
#[test]
fn annex_ii_of_regulation_1169_2011() {
    for fat in Fat::ALL {
        let said = match fat {
            Fat::Groundnut => FatAllergen::Declared(Exposure::Peanut),
            Fat::Soya => FatAllergen::ExemptIfRefined(Exposure::Soya),
            Fat::Blend => FatAllergen::OnItsLabel,
            _ => FatAllergen::None,
        };
        assert_eq!(fat.allergen(), said, "{fat:?}");
        // Declared is carried; what is exempt is not; what nobody knows meets every claim.
        let brings = match said {
            FatAllergen::Declared(what) => Exposures::of(&[what]),
            FatAllergen::OnItsLabel => Exposures::of(&[Exposure::Unknown]),
            FatAllergen::None | FatAllergen::ExemptIfRefined(_) => Exposures::NONE,
        };
        let animal = Exposures::of(&[Exposure::AnimalFat, Exposure::Meat, Exposure::Pork]);
        let listed: Vec<Exposure> = fat.exposures().iter().filter(|e| !animal.has(*e)).collect();
        assert_eq!(listed, brings.iter().collect::<Vec<_>>(), "{fat:?}");
    }
}

/// Animal fat is no vegetable oil: lard is of the pig, dripping (edible tallow) of cattle or sheep (Codex STAN 211-1999,
/// from memory), so neither is vegetarian, and lard is never halal.
#[test]
fn animal_origin() {
    for fat in Fat::ALL {
        let animal = matches!(fat, Fat::Dripping | Fat::Lard);
        assert_eq!(fat.is_animal(), animal);
        assert_eq!(fat.exposures().has(Exposure::AnimalFat), animal);
        let excluded = |claim: ClaimKind, basis| fat.exposures().iter().any(|e| claim.excludes(e, basis));
        assert_eq!(excluded(ClaimKind::Vegetarian, true), animal || *fat == Fat::Blend);
        assert_eq!(excluded(ClaimKind::Halal, true), matches!(fat, Fat::Lard | Fat::Blend));
    }
}

/// Reg. (EU) 828/2014 (from memory), Coeliac UK *Catering and the law*: "gluten free" is at most 20 mg/kg, loose food too.
#[test]
fn gluten_free_is_20_mg_per_kg() {
    assert!(setup::claim_asks(ClaimKind::GlutenFree, Lang::En).starts_with("At most 20 mg/kg gluten."));
}

/// Coeliac UK, *Guidance for fish and chip shops*: separate, clean oil, filtering does not make shared oil gluten-free;
/// a day straight after the fryer is cleaned and filled with fresh oil; separate tongs and scoops.
#[test]
fn what_restores_gluten_free() {
    let said = |need| kept_for::need(need, false, Lang::En);
    assert!(said(Need::Emptied).contains("emptied") && said(Need::CleanDry).contains("clean and dry"));
    assert!(said(Need::FreshOil).contains("Fresh oil") && said(Need::OwnUtensils).contains("Own basket, scoop, tongs"));
    assert!(kept_for::line(kept_for::Line::RestoresNot, Lang::En).starts_with("Filtering does not."));
    let told = kept_for::restores(ClaimKind::GlutenFree, Lang::En).join(" ");
    assert!(
        told.contains("cleaned") && told.contains("Fresh oil") && told.contains("scoop"),
        "{told}"
    );
}
