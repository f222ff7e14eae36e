//! A few values by key, the last used of them: what was made for one request and may serve the next.

/// Values by key. Whatever was not used for longest goes when there are too many.
pub(crate) struct Kept<K, V> {
    most: usize,
    /// The last used first.
    values: Vec<(K, V)>,
}

impl<K: PartialEq, V: Clone> Kept<K, V> {
    /// Keeps at most so many.
    pub const fn new(most: usize) -> Self {
        Self { most, values: Vec::new() }
    }

    /// The value of a key, which is then the last used.
    pub fn get(&mut self, key: &K) -> Option<V> {
        let at = self.values.iter().position(|(known, _)| known == key)?;
        self.values[..=at].rotate_right(1);
        self.values.first().map(|(_, value)| value.clone())
    }

    /// Keeps a value in place of what the key had.
    pub fn put(&mut self, key: K, value: V) {
        self.values.retain(|(known, _)| *known != key);
        self.values.truncate(self.most.saturating_sub(1));
        self.values.insert(0, (key, value));
    }

    /// The value of a key, made where there is none. What cannot be made is not kept.
    pub fn or_make<E>(&mut self, key: K, make: impl FnOnce() -> Result<V, E>) -> Result<V, E> {
        if let Some(known) = self.get(&key) {
            return Ok(known);
        }
        let value = make()?;
        self.put(key, value.clone());
        Ok(value)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_not_used_for_longest_goes() {
        let mut made = 0;
        let mut kept: Kept<u8, u8> = Kept::new(2);
        let mut ask = |kept: &mut Kept<u8, u8>, key: u8| {
            let value: Result<u8, ()> = kept.or_make(key, || {
                made += 1;
                Ok(key * 10)
            });
            assert_eq!(value, Ok(key * 10));
            made
        };
        // One and two are made; one is used again, so three takes the place of two.
        for (key, made) in [(1, 1), (2, 2), (1, 2), (3, 3), (1, 3), (2, 4), (3, 5)] {
            assert_eq!(ask(&mut kept, key), made, "{key}");
        }
        assert_eq!(kept.or_make(9, || Err("no")), Err("no"));
        assert_eq!(kept.get(&9), None);
        kept.put(3, 4);
        assert_eq!(kept.get(&3), Some(4));
    }
}
