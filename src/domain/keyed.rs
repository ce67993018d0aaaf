//! Enums whose variants each carry the short lower-case key that the log stores for them.

/// Declares a fieldless enum with a stored key per variant, `ALL`, `key()` and `from_key()`.
macro_rules! keyed {
    ($(#[$meta:meta])* pub enum $name:ident { $($(#[$vmeta:meta])* $variant:ident = $key:literal),+ $(,)? }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$vmeta])* $variant),+ }

        impl $name {
            /// Every value, in the order they are declared.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The key the log stores.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key),+ }
            }

            /// The value a stored key names; `None` for a key this version does not know.
            #[must_use]
            pub fn from_key(key: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|known| known.key() == key)
            }
        }
    };
}

pub(crate) use keyed;
