//! Sounds made on the spot: two alarms and a chime, told apart by their pattern, not by loudness.
//!
//! The alarms follow the burst patterns of IEC 60601-1-8 (high: 3 + 2 pulses, medium: 3); pitches are our own, where a
//! phone speaker is loud and an extractor fan is not. A browser keeps silent until the page has been touched.

use super::listen;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{AudioContext, AudioContextState, OscillatorType};

/// What is to be heard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pattern {
    /// Act now or someone is hurt: 3 + 2 notes, twice.
    Safety,
    /// Look soon: 3 notes.
    Medium,
    /// Something expected has come: one soft note.
    Chime,
}

/// Whether anything can be heard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SoundState {
    /// Sound is on.
    On,
    /// Sound is off until the page is touched.
    OffUntilTouch,
    /// This browser makes no sound.
    Unsupported,
}

/// One note: start and length in seconds, pitch in hertz, loudness 0 to 1.
struct Note {
    at: f64,
    secs: f64,
    hertz: f32,
    gain: f32,
}

impl Pattern {
    fn notes(self) -> Vec<Note> {
        let burst = |starts: &[f64], secs, hertz, gain| -> Vec<Note> {
            starts.iter().map(|&at| Note { at, secs, hertz, gain }).collect()
        };
        match self {
            Self::Safety => burst(
                &[0.0, 0.25, 0.5, 0.95, 1.2, 2.2, 2.45, 2.7, 3.15, 3.4],
                0.16,
                988.0,
                1.0,
            ),
            Self::Medium => burst(&[0.0, 0.4, 0.8], 0.22, 784.0, 0.8),
            Self::Chime => burst(&[0.0], 0.5, 523.0, 0.35),
        }
    }

    /// Seconds from its first note to the end of its last.
    #[must_use]
    pub fn secs(self) -> f64 {
        self.notes().last().map_or(0.0, |note| note.at + note.secs)
    }
}

/// The page's one source of sound.
#[derive(Clone)]
pub struct Sound(Rc<Inner>);

struct Inner {
    context: Option<AudioContext>,
    tell: RefCell<Box<dyn Fn(SoundState)>>,
}

impl Sound {
    /// Opens the source, silent until [`Sound::unlock`]; `tell` hears every change of state, the first one at once.
    pub fn new(tell: impl Fn(SoundState) + 'static) -> Self {
        let context = AudioContext::new().ok();
        let sound = Self(Rc::new(Inner {
            context,
            tell: RefCell::new(Box::new(tell)),
        }));
        if let Some(context) = &sound.0.context {
            let changed = sound.clone();
            listen::forever(context, "statechange", move || changed.tell());
        }
        sound.tell();
        sound
    }

    /// What can be heard now.
    #[must_use]
    pub fn state(&self) -> SoundState {
        match &self.0.context {
            None => SoundState::Unsupported,
            Some(context) if context.state() == AudioContextState::Running => SoundState::On,
            Some(_) => SoundState::OffUntilTouch,
        }
    }

    /// Switches sound on. Works only inside the handler of a touch; harmless anywhere else and when it is on already.
    pub fn unlock(&self) {
        if let Some(resumed) = self.0.context.as_ref().and_then(|context| context.resume().ok()) {
            spawn_local(async move {
                // Outside a touch the browser may leave this unanswered; the state tells the truth either way.
                let _ = JsFuture::from(resumed).await;
            });
        }
    }

    /// Plays a pattern once. `false` when it cannot be heard: then its visual twin is all there is.
    pub fn play(&self, pattern: Pattern) -> bool {
        let (SoundState::On, Some(context)) = (self.state(), &self.0.context) else {
            return false;
        };
        let start = context.current_time();
        pattern
            .notes()
            .iter()
            .all(|note| sound_note(context, start, note).is_ok())
    }

    fn tell(&self) {
        (self.0.tell.borrow())(self.state());
    }
}

fn sound_note(context: &AudioContext, start: f64, note: &Note) -> Result<(), JsValue> {
    const EDGE_SECS: f64 = 0.02;
    let (begin, end) = (start + note.at, start + note.at + note.secs);
    let gain = context.create_gain()?;
    let level = gain.gain();
    // Rises and falls instead of switching, or each note would click.
    level.set_value_at_time(0.0, begin)?;
    level.linear_ramp_to_value_at_time(note.gain, begin + EDGE_SECS)?;
    level.set_value_at_time(note.gain, end - EDGE_SECS)?;
    level.linear_ramp_to_value_at_time(0.0, end)?;
    let tone = context.create_oscillator()?;
    tone.set_type(OscillatorType::Triangle);
    tone.frequency().set_value(note.hertz);
    tone.connect_with_audio_node(&gain)?
        .connect_with_audio_node(&context.destination())?;
    tone.start_with_when(begin)?;
    tone.stop_with_when(end)
}
