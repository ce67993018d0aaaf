//! Names of things in the log: 128-bit ids made outside the domain and only compared here.

macro_rules! id {
    ($($(#[$meta:meta])* $name:ident),+ $(,)?) => {
        $($(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub u128);)+
    };
}

id! {
    /// One entry of the log (a UUID v7).
    EntryId,
    /// One kitchen; every log belongs to exactly one.
    KitchenId,
    /// A person; initials may be reused, this never.
    PersonId,
    /// A frying pan.
    PanId,
    /// A filter machine or hand kit.
    MachineId,
    /// An instrument that gives readings.
    InstrumentId,
    /// One light-up, filter job or lock-up.
    JobId,
    /// One pan's part in a filter job.
    RunId,
}

/// The store an entry was written in: new and random for every empty store.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Dev(pub u64);
