//! The shapes of a thread: its knot, its loops, its ends.

use crate::svg::{pair, path};

/// A curve through control points in threes, after a point.
pub(crate) fn curve(start: [f64; 2], bends: &[[[f64; 2]; 3]]) -> String {
    let mut d = path(&[start], false);
    for bend in bends {
        for (i, [x, y]) in bend.iter().enumerate() {
            d.push(if i == 0 { 'C' } else { ' ' });
            pair(&mut d, *x, *y);
        }
    }
    d
}

/// A line that hangs a little between two points of one level.
pub(super) fn sagging(from: f64, to: f64, level: f64, depth: f64) -> String {
    let mut d = path(&[[from, level]], false);
    d.push('Q');
    pair(&mut d, from.midpoint(to), level + depth);
    d.push(' ');
    pair(&mut d, to, level);
    d
}

/// An overhand knot: the projection x = t³ − 3t, y = t⁴ − 4t² of a trefoil, over where z = t⁵ − 10t is greater
/// (a polynomial knot; the three crossings are at t = ±1.93, ±1.73 and ±0.52).
pub(super) struct Knot {
    middle: [f64; 2],
    scale: [f64; 2],
}

/// Where one strand of the knot passes over the other, and how far the bridge reaches to either side.
const OVER: [(f64, f64); 3] = [(-1.732, 0.17), (0.518, 0.3), (1.932, 0.17)];

impl Knot {
    /// A knot round a place, for beads of a radius.
    pub fn new(x: f64, level: f64, radius: f64) -> Self {
        let unit = super::lay::KNOT * radius * 0.4;
        Self { middle: [x, level - super::lay::KNOT * radius * 0.13], scale: [0.5 * unit, 0.4 * unit] }
    }

    /// Half its breadth, without its ends.
    pub fn half(radius: f64) -> f64 {
        super::lay::KNOT * radius * 0.6
    }

    fn at(&self, t: f64) -> [f64; 2] {
        let [x, y] = [t * t * t - 3.0 * t, t * t * t * t - 4.0 * t * t];
        [self.middle[0] + self.scale[0] * x, self.middle[1] - self.scale[1] * y]
    }

    fn slope(&self, t: f64) -> [f64; 2] {
        [self.scale[0] * (3.0 * t * t - 3.0), -self.scale[1] * (4.0 * t * t * t - 8.0 * t)]
    }

    /// The piece between two parameters.
    fn piece(&self, from: f64, to: f64, parts: u32) -> String {
        let step = (to - from) / f64::from(parts);
        let bends: Vec<_> = (0..parts)
            .map(|number| {
                let (begin, end) = (from + step * f64::from(number), from + step * f64::from(number + 1));
                let ([a, b], [c, d]) = (self.at(begin), self.at(end));
                let ([e, f], [g, h]) = (self.slope(begin), self.slope(end));
                let third = step / 3.0;
                [[a + e * third, b + f * third], [c - g * third, d - h * third], [c, d]]
            })
            .collect();
        curve(self.at(from), &bends)
    }

    /// The two ends, from the level of the thread up into the knot.
    pub fn ends(&self, level: f64) -> String {
        let unit = self.scale[0] * 2.0;
        let [x, y] = self.middle;
        let end = |sign: f64| {
            let tip = self.at(2.0 * sign);
            let bend = [[x + 1.3 * sign * unit, level], [x + 1.15 * sign * unit, y - 0.25 * unit], tip];
            curve([x + 1.55 * sign * unit, level], &[bend])
        };
        end(-1.0) + &end(1.0)
    }

    /// The whole of it.
    pub fn whole(&self) -> String {
        self.piece(-2.0, 2.0, 12)
    }

    /// The bridges: for each a casing, and the strand that passes over.
    pub fn bridges(&self) -> [[String; 2]; 3] {
        OVER.map(|(t, wide)| {
            let most = f64::min(t + wide, 2.0);
            let casing = self.piece(t - wide * 0.75, f64::min(t + wide * 0.75, 2.0), 3);
            [casing, self.piece(t - wide, most, 4)]
        })
    }
}

/// Two arcs that make an eye through two beads.
pub(super) fn eye(from: [f64; 2], to: [f64; 2], radius: f64) -> String {
    let high = radius * 1.72;
    let arc = |sign: f64| {
        let lift = sign * high;
        curve(from, &[[[from[0], from[1] + lift], [to[0], to[1] + lift], to]])
    };
    arc(-1.0) + &arc(1.0)
}

/// A loose end: the thread bends down, and its four strands.
pub(super) fn loose(x: f64, y: f64, radius: f64) -> (String, String) {
    let reach = 0.5 * radius;
    let [left, top] = [x + 1.5 * reach, y + 0.62 * radius];
    let bend = curve([x, y], &[[[x + reach, y], [left, y + 0.2 * radius], [left, top]]]);
    let strands = [(-0.34, 0.78), (-0.1, 0.95), (0.14, 0.9), (0.4, 0.72)].map(|(aside, down)| {
        let tip = [left + aside * radius, top + down * radius];
        let soft = [[left, top + 0.25 * radius], [left + 0.55 * aside * radius, top + 0.35 * radius], tip];
        curve([left, top], &[soft])
    });
    (bend, strands.concat())
}

/// The thread that runs back under a row to the beginning of the next one.
pub(super) fn back(end: [f64; 2], ends: f64, left: f64, begins: f64, level: f64) -> String {
    let [x, y] = end;
    let middle = y.midpoint(level);
    let turn = middle - y;
    let mut d = path(&[[x, y], [(ends - turn / 2.0).max(x), y]], false);
    let mut bend = |over: [f64; 2], to: [f64; 2]| {
        d.push('Q');
        pair(&mut d, over[0], over[1]);
        d.push(' ');
        pair(&mut d, to[0], to[1]);
    };
    bend([ends, y], [ends, y + turn / 2.0]);
    bend([ends, middle], [ends - turn / 2.0, middle]);
    d.push_str(&path(&[[left + turn / 2.0, middle]], false).replace('M', "L"));
    let mut bend = |over: [f64; 2], to: [f64; 2]| {
        d.push('Q');
        pair(&mut d, over[0], over[1]);
        d.push(' ');
        pair(&mut d, to[0], to[1]);
    };
    bend([left, middle], [left, middle.midpoint(level)]);
    bend([left, level], [begins, level]);
    d
}

/// The outline of what a bead is filled to from below, so far as one is sure of it; none for nothing at all.
pub(super) fn filled([x, y]: [f64; 2], inner: f64, wider: f64, sure: f64) -> Option<String> {
    if sure <= 0.01 {
        return None;
    }
    let depth = if sure > 0.99 { -inner } else { inner * (1.0 - 2.0 * sure) };
    let half = libm::sqrt((inner * inner - depth * depth).max(0.0));
    let mut d = path(&[[x - wider - half, y + depth]], false);
    // Round to the lowest point on the left, along the bottom, and up on the right.
    for (begin, end) in
        [('A', [x - wider, y + inner]), ('L', [x + wider, y + inner]), ('A', [x + wider + half, y + depth])]
    {
        d.push(begin);
        if begin == 'A' {
            pair(&mut d, inner, inner);
            d.push_str(" 0 0 0 ");
        }
        pair(&mut d, end[0], end[1]);
    }
    d.push('Z');
    Some(d)
}

/// The two notches of a cracked bead.
pub(super) fn notches([x, y]: [f64; 2], radius: f64) -> String {
    let notch = |sign: f64| {
        let points = [[-0.2, -1.1], [0.1, -0.8], [-0.1, -0.48]];
        path(&points.map(|[right, down]| [x + sign * right * radius, y + sign * down * radius]), false)
    };
    notch(1.0) + &notch(-1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The crossings of a knot are where two parameters give one place; the one of greater z is over.
    #[test]
    fn bridges_lie_where_the_knot_crosses_itself_and_on_the_strand_above() {
        let knot = Knot::new(0.0, 0.0, 10.0);
        let height = |t: f64| t.powi(5) - 10.0 * t;
        for (over, _) in OVER {
            let near = (-400..=400)
                .map(|step| f64::from(step) / 200.0)
                .filter(|t| (t - over).abs() > 0.5)
                .min_by(|a, b| {
                    let far = |t: f64| {
                        let ([x, y], [u, v]) = (knot.at(t), knot.at(over));
                        (x - u).powi(2) + (y - v).powi(2)
                    };
                    far(*a).total_cmp(&far(*b))
                })
                .unwrap();
            let ([x, y], [u, v]) = (knot.at(near), knot.at(over));
            assert!((x - u).abs() < 0.2 && (y - v).abs() < 0.2, "{over} meets {near}");
            assert!(height(over) > height(near), "{over} is over {near}");
        }
    }
}
