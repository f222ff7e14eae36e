//! Charts: histograms and strips of quantiles.

use crate::svg::{Caption, Ink, Markup, Num, Svg, Theme, path};

/// How a number of an axis is written: the page's own way, since languages differ.
pub type Written<'a> = &'a dyn Fn(f64) -> String;

/// Round numbers that cover a range: steps of 1, 2 or 5 times a power of ten, about as many as asked for.
///
/// After P. Heckbert, "Nice Numbers for Graph Labels", Graphics Gems, 1990. Empty for a range that is none.
///
/// ```
/// assert_eq!(draw::ticks(0.0, 9.0, 5), [0.0, 2.0, 4.0, 6.0, 8.0]);
/// ```
pub fn ticks(low: f64, high: f64, about: usize) -> Vec<f64> {
    if !low.is_finite() || !high.is_finite() || low > high {
        return Vec::new();
    }
    let span = high - low;
    if span <= 0.0 || !span.is_finite() {
        return vec![low];
    }
    let rough = span / about.clamp(1, 50) as f64;
    let power = libm::exp10(libm::floor(libm::log10(rough)));
    let step = match rough / power {
        ratio if ratio < 1.5 => power,
        ratio if ratio < 3.0 => 2.0 * power,
        ratio if ratio < 7.0 => 5.0 * power,
        _ => 10.0 * power,
    };
    let first = libm::ceil(low / step - 1e-9);
    let last = libm::floor(high / step + 1e-9);
    if !(last - first).is_finite() || last - first > 200.0 {
        return vec![low];
    }
    (0..=(last - first).max(-1.0) as i64).map(|i| (first + i as f64) * step).collect()
}

/// How often values fall into equal ranges.
#[derive(Clone, PartialEq, Debug)]
pub struct Histogram {
    /// Where the first range begins.
    pub from: f64,
    /// How wide each is; more than 0.
    pub width: f64,
    /// How many values fall into each.
    pub counts: Vec<u64>,
    /// A value to point out with what it is called, such as the mean.
    pub marked: Option<(f64, String)>,
    /// What the values are, under the axis.
    pub axis: String,
    /// The inks.
    pub theme: Theme,
    /// What is said of it.
    pub caption: Caption,
}

const LEFT: f64 = 56.0;
const WIDTH: f64 = 480.0;
const TOP: f64 = 28.0;
const HEIGHT: f64 = 200.0;

impl Histogram {
    /// The picture; numbers are written by `value` and `count`.
    pub fn svg(&self, value: Written<'_>, count: Written<'_>) -> Svg {
        let ink = |ink| self.theme.ink(ink);
        let mut markup =
            Markup::picture(&self.caption, [0.0, 0.0, LEFT + WIDTH + 24.0, TOP + HEIGHT + 52.0], 1.0);
        let step = if self.width > 0.0 && self.width.is_finite() { self.width } else { 1.0 };
        let low = if self.from.is_finite() { self.from } else { 0.0 };
        let high = low + step * self.counts.len().max(1) as f64;
        let most = self.counts.iter().copied().max().unwrap_or(0).max(1) as f64;
        let x = |at: f64| LEFT + WIDTH * ((at - low) / (high - low)).clamp(0.0, 1.0);
        let y = |at: f64| TOP + HEIGHT * (1.0 - at / most);

        markup.group(&[("stroke", &ink(Ink::Quiet)), ("stroke-opacity", &".3"), ("fill", &"none")]);
        let levels: Vec<f64> = ticks(0.0, most, 4).into_iter().filter(|at| at.fract().abs() < 1e-9).collect();
        for &at in &levels {
            markup.tag("path").with("d", path(&[[LEFT, y(at)], [LEFT + WIDTH, y(at)]], false)).empty();
        }
        markup.close();
        markup.group(&[("fill", &ink(Ink::Thread))]);
        for (i, &number) in self.counts.iter().enumerate().filter(|(_, number)| **number > 0) {
            let left = x(low + step * i as f64);
            let right = x(low + step * (i + 1) as f64);
            let gap = ((right - left) * 0.12).min(2.0);
            let top = y(number as f64);
            markup
                .tag("rect")
                .with("x", Num(left + gap / 2.0))
                .with("y", Num(top))
                .with("width", Num((right - left - gap).max(0.3)))
                .with("height", Num(TOP + HEIGHT - top))
                .empty();
        }
        markup.close();
        markup.group(&[("font-size", &12), ("fill", &ink(Ink::Quiet))]);
        for &at in &levels {
            markup
                .tag("text")
                .with("x", Num(LEFT - 8.0))
                .with("y", Num(y(at) + 4.0))
                .with("text-anchor", "end")
                .text(&count(at));
        }
        axis(&mut markup, self.theme, (low, high), &x, TOP + HEIGHT, &self.axis, value);
        markup.close();
        if let Some((at, name)) = self.marked.as_ref().filter(|(at, _)| (low..=high).contains(at)) {
            markup
                .tag("path")
                .with("d", path(&[[x(*at), TOP - 6.0], [x(*at), TOP + HEIGHT]], false))
                .with("stroke", ink(Ink::Strong))
                .with("stroke-width", 2)
                .with("stroke-dasharray", "5 3")
                .empty();
            side_text(&mut markup, x(*at), TOP - 12.0, ink(Ink::Strong), name);
        }
        markup.finish()
    }
}

/// Text over a point, moved inward near the edges.
fn side_text(markup: &mut Markup, x: f64, y: f64, ink: &str, text: &str) {
    let anchor = match (x - LEFT) / WIDTH {
        part if part < 0.2 => "start",
        part if part > 0.8 => "end",
        _ => "middle",
    };
    markup
        .tag("text")
        .with("x", Num(x))
        .with("y", Num(y))
        .with("font-size", 13)
        .with("text-anchor", anchor)
        .with("fill", ink)
        .text(text);
}

fn axis(
    markup: &mut Markup,
    theme: Theme,
    (low, high): (f64, f64),
    x: &dyn Fn(f64) -> f64,
    y: f64,
    name: &str,
    value: Written<'_>,
) {
    let quiet = theme.ink(Ink::Quiet);
    let mut d = path(&[[LEFT, y], [LEFT + WIDTH, y]], false);
    let marks = ticks(low, high, 7);
    for &at in &marks {
        d += &path(&[[x(at), y], [x(at), y + 5.0]], false);
    }
    markup.tag("path").with("d", d).with("stroke", quiet).with("fill", "none").empty();
    for &at in &marks {
        markup.tag("text").with("x", Num(x(at))).with("y", Num(y + 20.0)).text(&value(at));
    }
    if !name.is_empty() {
        markup
            .tag("text")
            .with("x", Num(LEFT + WIDTH / 2.0))
            .with("y", Num(y + 42.0))
            .with("font-size", 13)
            .text(name);
    }
}

/// Five numbers of one sample, from least to most.
#[derive(Clone, PartialEq, Debug)]
pub struct Quantiles {
    /// What the sample is.
    pub name: String,
    /// The quantiles, such as of 5, 25, 50, 75 and 95 percent; put in order when drawn.
    pub values: [f64; 5],
}

/// Samples one under another on a common axis: a line from the first to the last quantile, a bar between the
/// second and the fourth, a stroke at the middle one.
#[derive(Clone, PartialEq, Debug)]
pub struct QuantileStrip {
    /// The samples.
    pub rows: Vec<Quantiles>,
    /// What the values are, under the axis.
    pub axis: String,
    /// The inks.
    pub theme: Theme,
    /// What is said of it.
    pub caption: Caption,
}

impl QuantileStrip {
    /// The picture; numbers are written by `value`. Samples with values that are no numbers show their name only.
    pub fn svg(&self, value: Written<'_>) -> Svg {
        const ROW: f64 = 44.0;
        let ink = |ink| self.theme.ink(ink);
        let all = || self.rows.iter().flat_map(|row| row.values).filter(|value| value.is_finite());
        let (low, high) = (all().fold(f64::INFINITY, f64::min), all().fold(f64::NEG_INFINITY, f64::max));
        let (low, high) = if low < high {
            (low, high)
        } else {
            (low.min(high).clamp(-1e300, 1e300) - 0.5, low.min(high).clamp(-1e300, 1e300) + 0.5)
        };
        let margin = (high - low) * 0.04;
        let (low, high) = (low - margin, high + margin);
        let x = |at: f64| LEFT + WIDTH * ((at - low) / (high - low)).clamp(0.0, 1.0);
        let bottom = ROW * self.rows.len() as f64 + 8.0;
        let mut markup = Markup::picture(&self.caption, [0.0, 0.0, LEFT + WIDTH + 24.0, bottom + 52.0], 1.0);
        for (i, row) in self.rows.iter().enumerate() {
            let y = ROW * i as f64 + 28.0;
            markup
                .tag("text")
                .with("x", Num(LEFT))
                .with("y", Num(y - 12.0))
                .with("font-size", 13)
                .with("text-anchor", "start")
                .with("fill", ink(Ink::Strong))
                .text(&row.name);
            if row.values.iter().any(|value| !value.is_finite()) {
                continue;
            }
            let mut values = row.values;
            values.sort_by(f64::total_cmp);
            let [least, lower, middle, upper, most] = values.map(x);
            let thread = ink(Ink::Thread);
            markup
                .tag("path")
                .with("d", path(&[[least, y], [most, y]], false))
                .with("stroke", thread)
                .with("stroke-width", 2)
                .empty();
            markup
                .tag("rect")
                .with("x", Num(lower))
                .with("y", Num(y - 7.0))
                .with("width", Num((upper - lower).max(1.0)))
                .with("height", 14)
                .with("rx", 3)
                .with("fill", thread)
                .empty();
            markup
                .tag("path")
                .with("d", path(&[[middle, y - 10.0], [middle, y + 10.0]], false))
                .with("stroke", ink(Ink::Paper))
                .with("stroke-width", 5)
                .empty();
            markup
                .tag("path")
                .with("d", path(&[[middle, y - 11.0], [middle, y + 11.0]], false))
                .with("stroke", ink(Ink::Strong))
                .with("stroke-width", 2)
                .empty();
        }
        markup.group(&[("font-size", &12), ("fill", &ink(Ink::Quiet))]);
        axis(&mut markup, self.theme, (low, high), &x, bottom, &self.axis, value);
        markup.close();
        markup.finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn ticks_are_round() {
        assert_eq!(ticks(0.0, 1.0, 2), [0.0, 0.5, 1.0]);
        assert_eq!(ticks(0.0, 1.0, 5).len(), 6);
        assert_eq!(ticks(-30.0, 70.0, 5), [-20.0, 0.0, 20.0, 40.0, 60.0]);
        assert_eq!(ticks(3.0, 3.0, 5), [3.0]);
        assert!(ticks(f64::NAN, 1.0, 5).is_empty());
    }

    proptest! {
        #[test]
        fn ticks_lie_in_the_range_and_are_not_many(low in -1e9f64..1e9, span in 1e-3f64..1e9, about in 1usize..20) {
            let marks = ticks(low, low + span, about);
            prop_assert!(marks.len() <= 2 * about + 2);
            for mark in marks {
                prop_assert!(mark >= low - span * 1e-6 && mark <= low + span * (1.0 + 1e-6));
            }
        }

        #[test]
        fn charts_of_any_numbers_are_well_formed(
            from: f64, width: f64, counts in prop::collection::vec(any::<u64>(), 0..9), marked: f64,
            values: [f64; 5], name: String,
        ) {
            let plain = |value: f64| value.to_string();
            let theme = Theme::Light;
            let histogram = Histogram {
                from, width, counts, marked: Some((marked, name.clone())), axis: name.clone(), theme, caption: Caption::new("a"),
            };
            let strip = QuantileStrip {
                rows: vec![Quantiles { name: name.clone(), values }], axis: name, theme, caption: Caption::new("b"),
            };
            for svg in [histogram.svg(&plain, &plain), strip.svg(&plain)] {
                prop_assert!(!svg.as_str().contains("NaN") || svg.as_str().contains("<text"));
                prop_assert!(roxmltree::Document::parse(svg.as_str()).is_ok());
            }
        }
    }
}
