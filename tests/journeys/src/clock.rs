//! The phone's clocks, moved from outside: `Date` and `performance` are replaced before the page loads.
//!
//! Timers stay real. The app computes from deadlines and looks at the clock every second, so it notices a jump then.

use crate::fault::Outcome;
use crate::phone::Phone;
use serde_json::json;

/// How far each clock is off, in milliseconds.
#[derive(Default)]
pub(crate) struct Skew {
    wall: i64,
    mono: i64,
}

const REPLACE: &str = r"(() => {
    if (window.__skew) return;
    const skew = (window.__skew = { wall: 0, mono: 0 });
    const RealDate = Date;
    globalThis.Date = class extends RealDate {
        constructor(...args) {
            if (args.length) super(...args);
            else super(RealDate.now() + skew.wall);
        }
        static now() {
            return RealDate.now() + skew.wall;
        }
    };
    const mono = Performance.prototype.now;
    Performance.prototype.now = function () {
        return mono.call(this) + skew.mono;
    };
})();";

impl Phone {
    /// Time passes: both clocks go on by so many milliseconds.
    pub async fn pass(&mut self, ms: i64) -> Outcome {
        self.jump(ms, ms).await
    }

    /// Somebody sets the wall clock by so many milliseconds, forwards or back.
    pub async fn set_wall_by(&mut self, ms: i64) -> Outcome {
        self.jump(ms, 0).await
    }

    /// The phone sleeps for so many milliseconds and its monotonic clock with it.
    pub async fn sleep(&mut self, ms: i64) -> Outcome {
        self.jump(ms, 0).await
    }

    /// Moves each clock by its own milliseconds, in this page and in every page to come.
    pub async fn jump(&mut self, wall: i64, mono: i64) -> Outcome {
        self.skew.wall += wall;
        self.skew.mono += mono;
        self.set_clock().await
    }

    /// Sets the wall clock to a moment, in milliseconds since 1970 UTC, from which it runs on.
    pub async fn set_wall_to(&mut self, epoch_ms: i64) -> Outcome {
        let now = self.run("return Date.now()", &[]).await?.as_i64().unwrap_or_default();
        self.set_wall_by(epoch_ms - now).await
    }

    /// Sets the phone's own zone, as in "Europe/London".
    pub async fn set_zone(&self, zone: &str) -> Outcome {
        self.cdp("Emulation.setTimezoneOverride", json!({ "timezoneId": zone }))
            .await
            .map(drop)
    }

    pub(crate) async fn set_clock(&self) -> Outcome {
        let set = format!(
            "{REPLACE} Object.assign(window.__skew, {{ wall: {}, mono: {} }});",
            self.skew.wall, self.skew.mono
        );
        // Scripts of earlier settings run first on a new page and are outdone by this one.
        self.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": set }))
            .await?;
        self.cdp("Runtime.evaluate", json!({ "expression": set }))
            .await
            .map(drop)
    }
}
