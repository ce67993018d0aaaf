//! What the person sees: screens and the parts they are made of.

pub mod parts;
