//! The order in which kinds of pieces are memorised or carried out.

use cube::{Orbit, OrbitMap, Size};

/// An order of all kinds: each stands in it once.
///
/// ```
/// use blind::OrbitOrder;
/// use cube::{Orbit, Size};
/// let order = OrbitOrder::new(&[Orbit::Corner]);
/// assert_eq!(order.of(Size::THREE).collect::<Vec<_>>(), [Orbit::Corner, Orbit::Midge]);
/// let usual: Vec<Orbit> = OrbitOrder::default().of(Size::THREE).collect();
/// assert_eq!(usual, [Orbit::Midge, Orbit::Corner]);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct OrbitOrder(OrbitMap<Orbit>);

impl Default for OrbitOrder {
    /// From inside out: centres, wings, edges, corners (common practice, no source).
    fn default() -> Self {
        let mut inwards = Orbit::ALL;
        inwards.reverse();
        let mut from_inside = inwards.into_iter();
        Self(OrbitMap::new(|orbit| from_inside.next().unwrap_or(orbit)))
    }
}

impl OrbitOrder {
    /// Some kinds first, in this order, and the others after them in the usual order. A kind that is named again keeps its
    /// first place.
    pub fn new(first: &[Orbit]) -> Self {
        let usual: Vec<Orbit> = Self::default().all().collect();
        let mut order: Vec<Orbit> = Vec::with_capacity(usual.len());
        for &orbit in first.iter().chain(&usual) {
            if !order.contains(&orbit) {
                order.push(orbit);
            }
        }
        let mut order = order.into_iter();
        Self(OrbitMap::new(|orbit| order.next().unwrap_or(orbit)))
    }

    /// An order of execution: kinds that are named in this order, before them the wings and centres that are not, after them corners
    /// and edges that are not. Swaps of corners, edges and wings turn centres about on their faces, which nobody can see once these are
    /// solved.
    ///
    /// ```
    /// use blind::OrbitOrder;
    /// use cube::{Orbit, Size};
    /// let order = OrbitOrder::of_execution(&[Orbit::Midge, Orbit::Corner]);
    /// let five: Vec<String> = order.of(Size::new(5).unwrap()).map(|orbit| orbit.to_string()).collect();
    /// assert_eq!(five, ["t-centre", "x-centre", "wing", "midge", "corner"]);
    /// ```
    pub fn of_execution(named: &[Orbit]) -> Self {
        let inner = |orbit: &Orbit| orbit.stickers_per_piece() == 1;
        let before: Vec<Orbit> =
            Self::default().all().filter(|orbit| inner(orbit) && !named.contains(orbit)).collect();
        let usual = [Orbit::Corner, Orbit::Midge];
        Self::new(&[before.as_slice(), named, &usual].concat())
    }

    /// All kinds in this order.
    pub fn all(&self) -> impl Iterator<Item = Orbit> + '_ {
        self.0.iter().map(|(_, &orbit)| orbit)
    }

    /// The kinds that a size has, in this order.
    pub fn of(&self, size: Size) -> impl Iterator<Item = Orbit> + '_ {
        self.all().filter(move |orbit| Orbit::of(size).contains(orbit))
    }

    /// Whether one kind comes before another.
    pub fn is_before(&self, one: Orbit, other: Orbit) -> bool {
        self.all().find(|orbit| [one, other].contains(orbit)) == Some(one)
    }
}
