//! One trading day of one fill, as a file holds it.

use panward::domain::fat::Fat;

/// A row; what is blank in the file is `None`.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Line of the file, from 1, the header's being 1.
    pub line: u64,
    /// The fill's name.
    pub fill: String,
    /// The fat; one the estimator knows nothing of counts as a blend.
    pub fat: Fat,
    /// What the pan holds, litres.
    pub volume_l: f64,
    /// Trading day of the fill; 0 is fresh.
    pub day: f64,
    /// Hours at frying temperature.
    pub fry_hours: Option<f64>,
    /// Frying temperature, °C.
    pub frying_c: Option<f64>,
    /// Fresh oil added at the end of the day, litres.
    pub topup_l: Option<f64>,
    /// Polar compounds read after frying and before the top-up, % m/m.
    pub tpc: Option<f64>,
    /// Which instrument; blank ones are one.
    pub instrument: String,
}

impl Row {
    /// Whether this can have happened: 0–24 h, 100–250 °C, no more fresh oil than the pan holds, a pan of something
    /// and at most 1,000 litres, a reading of 0–100 %, days that count from 0.
    #[must_use]
    pub fn is_possible(&self) -> bool {
        let within = |value: Option<f64>, low: f64, high: f64| value.is_none_or(|v| v >= low && v <= high);
        self.volume_l > 0.0
            && self.volume_l <= 1_000.0
            && (0.0..=100_000.0).contains(&self.day)
            && within(self.fry_hours, 0.0, 24.0)
            && within(self.frying_c, 100.0, 250.0)
            && within(self.topup_l, 0.0, self.volume_l)
            && within(self.tpc, 0.0, 100.0)
    }
}

/// The fat a file names, by the trade's name in lower case with underscores.
#[must_use]
pub fn fat_named(name: &str) -> Fat {
    match name.trim().to_lowercase().replace([' ', '-'], "_").as_str() {
        "rapeseed" | "canola" => Fat::Rapeseed,
        "high_oleic_rapeseed" | "high_oleic_canola" => Fat::HighOleicRapeseed,
        "sunflower" => Fat::Sunflower,
        "soya" | "soybean" | "soy" => Fat::Soya,
        "cottonseed" => Fat::Cottonseed,
        "maize" | "corn" => Fat::Maize,
        "groundnut" | "peanut" => Fat::Groundnut,
        "palm_olein" => Fat::PalmOlein,
        "palm" => Fat::Palm,
        "dripping" | "tallow" | "beef_dripping" => Fat::Dripping,
        "lard" => Fat::Lard,
        _ => Fat::Blend,
    }
}
