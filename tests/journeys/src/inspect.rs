//! Looking at a screen as it is on both phones and at both text sizes: sizes promised, and what axe-core says.

use crate::fault::{Fault, Outcome, fault};
use crate::phone::{Phone, SMALL, Screen, TALL};
use serde_json::json;

const MEASURE: &str = include_str!("measure.js");

/// Font sizes of everything that holds words of its own, in the order of the page.
const FONTS: &str = "return [...document.querySelectorAll('body *')]
    .filter((it) => it.checkVisibility() && !it.closest('svg'))
    .filter((it) => [...it.childNodes].some((child) => child.nodeType === Node.TEXT_NODE && child.data.trim()))
    .map((it) => [it.dataset.testid ?? `${it.tagName} ${it.className}`, parseFloat(getComputedStyle(it).fontSize)])";

/// Waits until every colour that changes slowly has changed: half way there its contrast says nothing. What is folded
/// away does not change before it is opened, and is not waited for.
const COLOURED: &str = "const done = arguments[0];
    requestAnimationFrame(() => requestAnimationFrame(() => {
        const slow = document.getAnimations().filter((it) => it instanceof CSSTransition)
            .filter((it) => it.effect.target.checkVisibility());
        Promise.allSettled(slow.map((it) => it.finished)).then(() => done(true));
    }));";

/// Text of this size and larger need not grow: it is read from afar already.
const LARGE: f64 = 32.0;

/// What is looked at on a screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Look {
    /// Whether it is a job's, with a job's sizes.
    pub job: bool,
    /// Whether light and dark are both to be seen; a job is always dark.
    pub both_grounds: bool,
    /// Whether axe-core is asked.
    pub axe: bool,
}

impl Look {
    /// At a step of a job.
    pub const STEP: Self = Self {
        job: true,
        both_grounds: false,
        axe: true,
    };
    /// At any other screen.
    pub const SCREEN: Self = Self {
        job: false,
        both_grounds: true,
        axe: true,
    };
}

impl Phone {
    /// Fits the page to another screen, as when it is shown on another phone.
    pub async fn fit(&mut self, screen: Screen) -> Outcome {
        let Screen { width, height } = screen;
        let metrics = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": true });
        self.cdp("Emulation.setDeviceMetricsOverride", metrics).await?;
        self.painted().await
    }

    /// Waits until two frames have been painted: layout and what follows a resize have settled then.
    async fn painted(&self) -> Outcome {
        let frames = "const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(() => done(true)));";
        self.run_async(frames).await.map(drop)
    }

    /// Everything about this sight that is not as promised, on both phones, at both text sizes, on both grounds.
    pub async fn complaints(&mut self, name: &str, look: Look) -> Outcome<Vec<String>> {
        let mut all = Vec::new();
        for screen in [TALL, SMALL] {
            self.fit(screen).await?;
            let mut fonts = Vec::new();
            for per_cent in [100, 200] {
                self.set_text_size(per_cent).await?;
                self.painted().await?;
                let place = format!("{name} at {}x{}, text {per_cent} %", screen.width, screen.height);
                let asked = json!({ "job": look.job, "small": screen == SMALL, "usual": per_cent == 100 });
                let found: Vec<String> = serde_json::from_value(self.run(MEASURE, &[asked]).await?)?;
                all.extend(found.into_iter().map(|what| format!("{place}: {what}")));
                fonts.push(serde_json::from_value::<Vec<(String, f64)>>(
                    self.run(FONTS, &[]).await?,
                )?);
                if look.axe {
                    all.extend(self.axe_on_grounds(&place, look.both_grounds).await?);
                }
            }
            if let [usual, large] = fonts.as_slice() {
                all.extend(not_doubled(usual, large).map(|what| format!("{name}: {what} at text 200 %")));
            }
        }
        self.set_text_size(100).await?;
        self.fit(TALL).await?;
        all.dedup();
        Ok(all)
    }

    async fn axe_on_grounds(&mut self, place: &str, both: bool) -> Outcome<Vec<String>> {
        let mut all = Vec::new();
        let grounds: &[bool] = if both { &[false, true] } else { &[true] };
        for dark in grounds {
            self.set_dark(*dark).await?;
            self.run_async(COLOURED).await?;
            let ground = if *dark { "dark" } else { "light" };
            let found = self.axe().await?;
            all.extend(found.into_iter().map(|what| format!("{place}, {ground}: {what}")));
        }
        self.set_dark(false).await?;
        Ok(all)
    }
}

/// Text under 32 px that 200 % did not double.
fn not_doubled<'a>(usual: &'a [(String, f64)], large: &'a [(String, f64)]) -> impl Iterator<Item = String> + 'a {
    let same = usual.len() == large.len();
    usual
        .iter()
        .zip(large)
        // What is hidden at one size and shown at the other leaves as many behind: only the same is compared.
        .filter(move |((what, usual), (other, large))| {
            same && what == other && *usual < LARGE && *large < 2.0 * usual - 0.5
        })
        .map(|((what, usual), (_, large))| format!("\"{what}\" grows from {usual} px to {large} px only"))
}

/// Fails when there are complaints, and names them all.
pub fn no_complaints(complaints: &[String]) -> Outcome {
    if complaints.is_empty() {
        return Ok(());
    }
    let told: Result<(), Fault> = fault(format!("{} complaints:\n{}", complaints.len(), complaints.join("\n")));
    told
}
