//! Small maps and sets kept as a list in order, and one way to put a list in order.
//!
//! A kitchen has few pans and a log is written nearly in order, so a list does what a tree does. A tree and a stable
//! sort are compiled anew for every type they hold, and the app is sent over the network: see DEVELOPERS.md.

/// Values by key, kept in order of key. Looking one up takes logarithmic time, adding one anywhere but at the end
/// moves what comes after it.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct SortedMap<K, V>(Vec<(K, V)>);

/// Things kept in order, each once.
pub type SortedSet<T> = SortedMap<T, ()>;

impl<K, V> Default for SortedMap<K, V> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<K, V> SortedMap<K, V> {
    /// Nothing.
    #[must_use]
    pub const fn new() -> Self {
        Self(Vec::new())
    }

    /// How many there are.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there is none.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Keys and values, in order of key.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (&K, &V)> + Clone {
        self.0.iter().map(|(key, value)| (key, value))
    }

    /// The keys, in order.
    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &K> + Clone {
        self.0.iter().map(|(key, _)| key)
    }

    /// The values, in order of key.
    pub fn values(&self) -> impl DoubleEndedIterator<Item = &V> + Clone {
        self.0.iter().map(|(_, value)| value)
    }

    /// The values, to be changed, in order of key.
    pub fn values_mut(&mut self) -> impl Iterator<Item = &mut V> {
        self.0.iter_mut().map(|(_, value)| value)
    }
}

impl<K: Ord, V> SortedMap<K, V> {
    /// The place of a key, or the place it would go to.
    fn place(&self, key: &K) -> Result<usize, usize> {
        // What is written last mostly belongs last.
        match self.0.last() {
            Some((last, _)) if last < key => Err(self.0.len()),
            _ => self.0.binary_search_by(|(one, _)| one.cmp(key)),
        }
    }

    /// The value of a key.
    #[must_use]
    pub fn get(&self, key: &K) -> Option<&V> {
        let at = self.place(key).ok()?;
        self.0.get(at).map(|(_, value)| value)
    }

    /// The value of a key, to be changed.
    pub fn get_mut(&mut self, key: &K) -> Option<&mut V> {
        let at = self.place(key).ok()?;
        self.0.get_mut(at).map(|(_, value)| value)
    }

    /// Whether the key is there.
    #[must_use]
    pub fn contains_key(&self, key: &K) -> bool {
        self.place(key).is_ok()
    }

    /// Puts a value under a key; returns the one it replaces.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.place(&key) {
            Ok(at) => self.0.get_mut(at).map(|(_, old)| std::mem::replace(old, value)),
            Err(at) => {
                self.0.insert(at, (key, value));
                None
            }
        }
    }

    /// Takes a key and its value out.
    pub fn remove(&mut self, key: &K) -> Option<V> {
        let at = self.place(key).ok()?;
        Some(self.0.remove(at).1)
    }

    /// The value of a key, made by `make` where there is none yet.
    pub fn or_insert_with(&mut self, key: K, make: impl FnOnce() -> V) -> &mut V {
        let at = match self.place(&key) {
            Ok(at) => at,
            Err(at) => {
                self.0.insert(at, (key, make()));
                at
            }
        };
        &mut self.0[at].1
    }

    /// The value of a key, the usual one where there is none yet.
    pub fn or_default(&mut self, key: K) -> &mut V
    where
        V: Default,
    {
        self.or_insert_with(key, V::default)
    }

    /// The values of all keys up to this one, itself included, in order of key.
    pub fn up_to(&self, key: &K) -> impl DoubleEndedIterator<Item = (&K, &V)> {
        let end = match self.place(key) {
            Ok(at) => at + 1,
            Err(at) => at,
        };
        self.0.iter().take(end).map(|(key, value)| (key, value))
    }
}

impl<K, V> IntoIterator for SortedMap<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<T: Ord> SortedSet<T> {
    /// Whether it is there.
    #[must_use]
    pub fn contains(&self, one: &T) -> bool {
        self.contains_key(one)
    }

    /// Adds it; whether it was not there before.
    pub fn add(&mut self, one: T) -> bool {
        self.insert(one, ()).is_none()
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for SortedMap<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(pairs: I) -> Self {
        let mut map = Self::new();
        for (key, value) in pairs {
            map.insert(key, value);
        }
        map
    }
}

impl<T: Ord> FromIterator<T> for SortedSet<T> {
    fn from_iter<I: IntoIterator<Item = T>>(ones: I) -> Self {
        ones.into_iter().map(|one| (one, ())).collect()
    }
}

/// Puts a list in the order of a key; what has the same key keeps its order.
///
/// One sort, compiled once: it sorts places, and the list follows.
pub fn in_order<T, K: Ord>(list: &mut Vec<T>, key: impl Fn(&T) -> K) {
    let compare = |a: &T, b: &T| key(a).cmp(&key(b));
    if list.is_sorted_by(|a, b| compare(a, b).is_le()) {
        return;
    }
    let mut places: Vec<usize> = (0..list.len()).collect();
    sort_places(&mut places, &|a, b| compare(&list[a], &list[b]).is_le());
    let mut taken: Vec<Option<T>> = list.drain(..).map(Some).collect();
    list.extend(places.into_iter().filter_map(|at| taken[at].take()));
}

/// Puts places in the order of what stands there, by merging ever longer runs. The standard sort is faster by its five
/// kinds of sorting, which weigh 2 KiB; the longest list here is the log of an import.
#[inline(never)]
pub fn sort_places(places: &mut Vec<usize>, first_goes_before: &dyn Fn(usize, usize) -> bool) {
    let mut run = 1;
    while run < places.len() {
        let mut merged = Vec::with_capacity(places.len());
        for pair in places.chunks(run * 2) {
            let (mut left, mut right) = pair.split_at(run.min(pair.len()));
            // What is in order already, as a log mostly is, costs one look a pair.
            let ends = left.last().zip(right.first());
            let in_order = ends.is_none_or(|(last, first)| first_goes_before(*last, *first));
            while let (false, [first, ..], [second, ..]) = (in_order, left, right) {
                let side = if first_goes_before(*first, *second) {
                    &mut left
                } else {
                    &mut right
                };
                merged.push(side[0]);
                *side = &side[1..];
            }
            merged.extend_from_slice(left);
            merged.extend_from_slice(right);
        }
        *places = merged;
        run *= 2;
    }
}
