//! Enums whose variants each carry the short lower-case key that the log stores for them.

/// Where a key stands among others.
#[inline(never)]
pub(crate) fn place(key: &str, keys: &[&str]) -> Option<usize> {
    keys.iter().position(|known| *known == key)
}

/// Declares a fieldless enum with a stored key per variant, `ALL`, `key()` and `from_key()`.
macro_rules! keyed {
    ($(#[$meta:meta])* pub enum $name:ident { $($(#[$vmeta:meta])* $variant:ident = $key:literal),+ $(,)? }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$vmeta])* $variant),+ }

        impl $name {
            /// Every value, in the order they are declared.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            const KEYS: &'static [&'static str] = &[$($key),+];

            /// The key the log stores.
            #[must_use]
            pub const fn key(self) -> &'static str {
                Self::KEYS[self as usize]
            }

            /// The value a stored key names; `None` for a key this version does not know.
            #[must_use]
            pub fn from_key(key: &str) -> Option<Self> {
                $crate::domain::keyed::place(key, Self::KEYS).and_then(|at| Self::ALL.get(at).copied())
            }
        }
    };
}

pub(crate) use keyed;
