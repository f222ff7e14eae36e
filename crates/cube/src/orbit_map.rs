//! A value for every orbit there is, so that nothing can be forgotten when a size brings another kind of piece.

use crate::Orbit;
use std::ops::{Index, IndexMut};

/// A total map from orbit to value, all ten of them, whatever the size.
///
/// ```
/// use cube::{Orbit, OrbitMap};
/// let pieces = OrbitMap::new(Orbit::pieces);
/// assert_eq!(pieces[Orbit::Corner], 8);
/// assert_eq!(pieces.iter().map(|(_, &count)| u32::from(count)).sum::<u32>(), 8 + 12 + 8 * 24);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub struct OrbitMap<T>([T; Orbit::MOST]);

impl<T> OrbitMap<T> {
    /// The map that a function gives.
    pub fn new(value: impl FnMut(Orbit) -> T) -> Self {
        Self(Orbit::ALL.map(value))
    }

    /// Orbits with their values, in the order of [`Orbit::ALL`].
    pub fn iter(&self) -> impl Iterator<Item = (Orbit, &T)> {
        Orbit::ALL.into_iter().zip(&self.0)
    }

    /// The same, to be changed.
    pub fn iter_mut(&mut self) -> impl Iterator<Item = (Orbit, &mut T)> {
        Orbit::ALL.into_iter().zip(&mut self.0)
    }

    /// The map with each value replaced by what a function makes of it.
    #[must_use]
    pub fn map<U>(self, mut change: impl FnMut(Orbit, T) -> U) -> OrbitMap<U> {
        let mut orbits = Orbit::ALL.into_iter();
        OrbitMap(self.0.map(|value| {
            let orbit = orbits.next().unwrap_or(Orbit::Corner);
            change(orbit, value)
        }))
    }
}

impl<T> Index<Orbit> for OrbitMap<T> {
    type Output = T;

    fn index(&self, orbit: Orbit) -> &T {
        &self.0[orbit.number()]
    }
}

impl<T> IndexMut<Orbit> for OrbitMap<T> {
    fn index_mut(&mut self, orbit: Orbit) -> &mut T {
        &mut self.0[orbit.number()]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_orbit_has_a_place_of_its_own() {
        let map = OrbitMap::new(|orbit| orbit);
        for orbit in Orbit::ALL {
            assert_eq!(map[orbit], orbit);
        }
        assert_eq!(map.map(|orbit, own| orbit == own), OrbitMap::new(|_| true));
    }
}
