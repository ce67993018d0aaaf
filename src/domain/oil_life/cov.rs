//! A covariance matrix and the four things a linear filter does to one.

/// A symmetric covariance matrix; every index is under [`Cov::len`].
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Cov {
    len: usize,
    at: Vec<f64>,
}

impl Cov {
    /// `len` quantities known exactly.
    pub(super) fn exact(len: usize) -> Self {
        Self {
            len,
            at: vec![0.0; len * len],
        }
    }

    /// How many quantities there are.
    pub(super) const fn len(&self) -> usize {
        self.len
    }

    /// Covariance of two quantities.
    pub(super) fn get(&self, a: usize, b: usize) -> f64 {
        self.at[a * self.len + b]
    }

    /// Sets the covariance of two quantities.
    pub(super) fn set(&mut self, a: usize, b: usize, to: f64) {
        self.at[a * self.len + b] = to;
        self.at[b * self.len + a] = to;
    }

    /// Adds to one quantity's variance what nothing else shares.
    pub(super) fn blur(&mut self, a: usize, variance: f64) {
        self.at[a * self.len + a] += variance;
    }

    /// The first `len` quantities alone.
    pub(super) fn first(&self, len: usize) -> Self {
        let mut fewer = Self::exact(len);
        for a in 0..len {
            for b in 0..=a {
                fewer.set(a, b, self.get(a, b));
            }
        }
        fewer
    }

    /// One quantity more at the end, with a variance of its own.
    pub(super) fn push(&mut self, variance: f64) {
        let mut wider = Self::exact(self.len + 1);
        for a in 0..self.len {
            for b in 0..=a {
                wider.set(a, b, self.get(a, b));
            }
        }
        wider.set(self.len, self.len, variance);
        *self = wider;
    }

    /// Quantity `a` becomes `kept` of itself and `taken` of quantity `b`.
    pub(super) fn mix(&mut self, a: usize, kept: f64, b: usize, taken: f64) {
        let row: Vec<f64> = (0..self.len)
            .map(|i| kept * self.get(a, i) + taken * self.get(b, i))
            .collect();
        for (i, covariance) in row.iter().enumerate() {
            self.set(a, i, *covariance);
        }
        self.set(a, a, kept * row[a] + taken * row[b]);
    }

    /// What is left after a measurement of variance `by`, `with` being its covariance with each quantity.
    pub(super) fn narrow(&mut self, with: &[f64], by: f64) {
        for a in 0..self.len {
            for b in 0..=a {
                self.set(a, b, self.get(a, b) - with[a] * with[b] / by);
            }
        }
    }
}
