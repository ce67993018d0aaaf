//! Which alarm sounds now, and when it sounds again. Every sound has a visual twin on the screen that caused it.

use super::care;
use super::day::wait_standing;
use super::filter::moving_s;
use crate::domain::day_jobs::DayState;
use crate::domain::facts::run::{Heat, Pump};
use crate::domain::facts::setup::{FilterKind, Span};
use crate::domain::guide::state::Phase;
use crate::domain::guide::{Guide, Run, Warm};
use crate::domain::pan_jobs::{PanJobs, Stage};
use crate::domain::procedure::Timer;
use crate::domain::time::Now;
use crate::domain::wait::Standing;

/// A rinse on a single-pass filter ends after this many seconds at the latest (common practice, no source).
const RINSE_MOST_S: u16 = 30;
/// How long before the end of a rinse the chime sounds, in seconds (project default).
const RINSE_WARNS_S: u16 = 10;

/// What an alarm is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// The rinse has gone on for as long as it may.
    RinseOver,
    /// Oil moves half as long again as it usually does at most.
    MovesLong,
    /// Five minutes without an answer while oil is out of its pan.
    Silence,
    /// A look is due.
    LookDue,
    /// Boiling water is to be looked at, or its heat is unknown.
    BoilDue,
    /// The rinse ends soon.
    RinseSoon,
    /// A rinse on a recirculating filter has had its least time.
    RinseEnough,
    /// The machine is warm.
    WarmOver,
}

/// How an alarm sounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Urgency {
    /// Act now.
    Safety,
    /// Look soon.
    Medium,
    /// Something expected has come.
    Chime,
}

impl Cause {
    /// How it sounds.
    #[must_use]
    pub const fn urgency(self) -> Urgency {
        match self {
            Self::RinseOver | Self::MovesLong | Self::BoilDue => Urgency::Safety,
            Self::Silence | Self::LookDue => Urgency::Medium,
            Self::RinseSoon | Self::RinseEnough | Self::WarmOver => Urgency::Chime,
        }
    }

    /// Whether it sounds in quiet hours: what is about oil that is out or moving, heat or fire does.
    #[must_use]
    pub const fn is_safety(self) -> bool {
        match self {
            Self::RinseOver | Self::MovesLong | Self::Silence | Self::LookDue | Self::BoilDue => true,
            Self::RinseSoon | Self::RinseEnough | Self::WarmOver => false,
        }
    }

    /// Milliseconds until it sounds again while nobody answers; a chime sounds once.
    const fn again_ms(self) -> Option<i64> {
        match self.urgency() {
            Urgency::Safety => Some(6_000),
            Urgency::Medium => Some(15_000),
            Urgency::Chime => None,
        }
    }
}

/// What sounds in the filter job now; the most urgent where several would.
#[must_use]
pub fn of_filter(guide: &Guide, now: &Now) -> Option<Cause> {
    let job = guide.job()?;
    let run = job.run.as_ref();
    let moving = run
        .filter(|run| matches!(run.pump, Pump::Drawing | Pump::Rinsing | Pump::Returning))
        .and_then(|run| of_moving(run, guide.gate(now)?.timer()?, now));
    let silent = || {
        let silent = run.is_some_and(|run| run.phase == Phase::Asking && run.silent(&job.touched, now));
        silent.then_some(Cause::Silence)
    };
    let warm = || matches!(job.warm, Warm::On(wait) if wait.is_over(now)).then_some(Cause::WarmOver);
    moving.or_else(silent).or_else(warm)
}

/// What sounds in light-up and lock-up now: a melt to look at, a heap to probe again.
#[must_use]
pub fn of_day(day: &DayState, now: &Now) -> Option<Cause> {
    let light = day.light.iter().flat_map(|light| light.pans.values());
    let mut looks = light.filter_map(|pan| pan.next_look(now));
    let probe = day.lock.as_ref().and_then(|lock| wait_standing(lock, now));
    let due = |standing: Standing| !matches!(standing, Standing::Running { .. });
    (looks.any(due) || probe.is_some_and(due)).then_some(Cause::LookDue)
}

/// What sounds on every screen while water boils under somebody's care: a look that is due, heat nobody has seen since a
/// start; quieter while heat is to be seen off. It is for people's safety, and so sounds in quiet hours too.
#[must_use]
pub fn of_care(jobs: &PanJobs, now: &Now) -> Option<Cause> {
    let hot = || jobs.state().jobs.values().filter(|job| job.may_be_hot());
    let unknown = hot().any(|job| job.stage == Stage::Boiling && job.heat == Heat::Unknown);
    if unknown || !care::looks_due(jobs, now).is_empty() {
        return Some(Cause::BoilDue);
    }
    hot().any(|job| job.stage != Stage::Boiling).then_some(Cause::LookDue)
}

fn of_moving(run: &Run, timer: Timer, now: &Now) -> Option<Cause> {
    let gone = moving_s(run, now);
    match timer {
        Timer::Expect { to_s, .. } => (gone >= alarm_after_s(to_s)).then_some(Cause::MovesLong),
        Timer::Rinse => match rinse_limit(run) {
            RinseLimit::Most(most) if gone >= i64::from(most) => Some(Cause::RinseOver),
            RinseLimit::Most(most) if gone >= i64::from(most.saturating_sub(RINSE_WARNS_S)) => Some(Cause::RinseSoon),
            RinseLimit::Least(least) if gone >= i64::from(least) => Some(Cause::RinseEnough),
            RinseLimit::Most(_) | RinseLimit::Least(_) => None,
        },
    }
}

/// When a movement of oil has gone on for too long: one and a half times its usual longest, in seconds.
#[must_use]
pub const fn alarm_after_s(to_s: u16) -> i64 {
    to_s as i64 * 3 / 2
}

/// What a rinse is held to, in seconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RinseLimit {
    /// No longer than this.
    Most(u16),
    /// At least this; the owner's own figure for a filter that oil goes round through.
    Least(u16),
}

/// What this run's rinse is held to.
#[must_use]
pub fn rinse_limit(run: &Run) -> RinseLimit {
    match (run.limits.rinse_max_s, run.limits.rinse_min_s, run.machine.0.filter) {
        (Some(most), _, _) => RinseLimit::Most(most),
        (None, Some(least), FilterKind::Recirculating) => RinseLimit::Least(least),
        (None, _, _) => RinseLimit::Most(RINSE_MOST_S),
    }
}

/// Remembers what it rang for, so that a tick a second does not ring sixty times a minute.
#[derive(Clone, Copy, Debug, Default)]
pub struct Bell {
    rung: Option<(Cause, i64)>,
}

impl Bell {
    /// What to sound now, if anything; between `quiet` safety sounds alone.
    pub fn ring(&mut self, cause: Option<Cause>, quiet: Option<Span>, now: &Now) -> Option<Urgency> {
        let is_quiet = quiet.is_some_and(|quiet| quiet.has(now.minute_of_day()));
        let Some(cause) = cause.filter(|cause| cause.is_safety() || !is_quiet) else {
            self.rung = None;
            return None;
        };
        let silent_ms = self
            .rung
            .filter(|(before, _)| *before == cause)
            .map(|(_, at)| now.mono - at);
        let due = match (silent_ms, cause.again_ms()) {
            (None, _) => true,
            (Some(ms), Some(again)) => ms >= again,
            (Some(_), None) => false,
        };
        due.then(|| {
            self.rung = Some((cause, now.mono));
            cause.urgency()
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::domain::time::{Millis, PageLife};
    use crate::domain::units::Minutes;

    fn at(mono: i64) -> Now {
        Now {
            wall: Millis(mono),
            mono,
            life: PageLife(1),
            off_min: 0,
        }
    }

    #[test]
    fn a_chime_sounds_once_and_a_safety_alarm_until_it_is_answered() {
        let mut bell = Bell::default();
        assert_eq!(bell.ring(Some(Cause::RinseSoon), None, &at(0)), Some(Urgency::Chime));
        assert_eq!(bell.ring(Some(Cause::RinseSoon), None, &at(60_000)), None);
        assert_eq!(
            bell.ring(Some(Cause::RinseOver), None, &at(61_000)),
            Some(Urgency::Safety)
        );
        assert_eq!(bell.ring(Some(Cause::RinseOver), None, &at(66_999)), None);
        assert_eq!(
            bell.ring(Some(Cause::RinseOver), None, &at(67_000)),
            Some(Urgency::Safety)
        );
        assert_eq!(bell.ring(None, None, &at(68_000)), None);
        assert_eq!(
            bell.ring(Some(Cause::RinseOver), None, &at(69_000)),
            Some(Urgency::Safety)
        );
    }

    #[test]
    fn in_quiet_hours_chimes_alone_are_silent() {
        let causes = [
            (Cause::RinseOver, true),
            (Cause::MovesLong, true),
            (Cause::Silence, true),
            (Cause::LookDue, true),
            (Cause::RinseSoon, false),
            (Cause::RinseEnough, false),
            (Cause::WarmOver, false),
        ];
        let minutes = |min| Minutes::new(min).unwrap_or_default();
        let quiet = Some(Span {
            from_min: minutes(22 * 60),
            to_min: minutes(7 * 60),
        });
        for (cause, is_safety) in causes {
            let sounds = |hour: i64| {
                let now = at(hour * 3_600_000);
                Bell::default().ring(Some(cause), quiet, &now).is_some()
            };
            assert_eq!(
                [21, 22, 23, 30, 31].map(sounds),
                [true, is_safety, is_safety, is_safety, true],
                "{cause:?}"
            );
        }
        // One that was held back sounds once the quiet is over, if it is still so.
        let mut bell = Bell::default();
        assert_eq!(bell.ring(Some(Cause::WarmOver), quiet, &at(7 * 3_600_000 - 1)), None);
        assert_eq!(
            bell.ring(Some(Cause::WarmOver), quiet, &at(7 * 3_600_000)),
            Some(Urgency::Chime)
        );
    }

    #[test]
    fn ninety_seconds_of_draw_become_an_alarm_at_two_minutes_fifteen() {
        assert_eq!(alarm_after_s(90), 135);
    }
}
