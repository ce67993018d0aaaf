//! What a stored body must be able to do.

use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::value::RawValue;

/// One kind's stored body in one version.
pub trait Body: Serialize + DeserializeOwned {
    /// What it says.
    type Fact;

    /// The body that says it.
    fn write(fact: &Self::Fact) -> Self;

    /// What it says, or why it is nonsense although each of its fields is in range.
    fn read(self) -> Result<Self::Fact, String>;
}

/// The JSON of a fact's body.
pub fn write<B: Body>(fact: &B::Fact) -> serde_json::Result<Box<RawValue>> {
    serde_json::value::to_raw_value(&B::write(fact))
}

/// The fact a body's JSON says.
pub fn read<B: Body>(json: &str) -> Result<B::Fact, String> {
    serde_json::from_str::<B>(json).map_err(|e| reason(&e))?.read()
}

/// What is wrong with a piece of JSON, without the place: it counts from the piece, which nobody sees.
pub fn reason(error: &serde_json::Error) -> String {
    let text = error.to_string();
    match text.rsplit_once(" at line ") {
        Some((what, _)) => what.to_owned(),
        None => text,
    }
}

/// For flags that are left out when they are not set.
#[expect(clippy::trivially_copy_pass_by_ref, reason = "the signature serde asks for")]
pub const fn is_false(flag: &bool) -> bool {
    !*flag
}
