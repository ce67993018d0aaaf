//! What a stored body must be able to do.

use super::stored::Stored;
use crate::store::json::{Json, Out};

/// One kind's stored body in one version.
pub trait Body: Stored {
    /// What it says.
    type Fact;

    /// The body that says it.
    fn write(fact: &Self::Fact) -> Self;

    /// What it says, or why it is nonsense although each of its fields is in range.
    fn read(self) -> Result<Self::Fact, String>;
}

/// The JSON of a fact's body.
pub fn write<B: Body>(fact: &B::Fact) -> String {
    let mut out = Out::new();
    B::write(fact).put(&mut out);
    out.into_text()
}

/// The fact a body says.
pub fn read<B: Body>(json: Json<'_>) -> Result<B::Fact, String> {
    B::from_json(json)?.read()
}
