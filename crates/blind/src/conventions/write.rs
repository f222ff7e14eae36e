//! Writing conventions as a file that reads back the same.

use super::{BreakChoice, COLOUR_NAMES, Conventions, OrbitOrder};
use crate::kind::kind_name;
use crate::usual::{MethodName, usual};
use cube::{Face, Orbit};
use std::fmt::Write;

/// A text in quotation marks, as TOML wants it.
fn quoted(text: &str) -> String {
    toml_edit::Value::from(text).to_string().trim().to_owned()
}

impl Conventions {
    /// The whole conventions as a TOML file, every key written out.
    ///
    /// ```
    /// use blind::Conventions;
    /// let conventions = Conventions::default();
    /// assert_eq!(Conventions::read(&conventions.to_toml()).unwrap(), conventions);
    /// ```
    pub fn to_toml(&self) -> String {
        let mut out = String::new();
        // Writing to a string cannot fail.
        let _ = self.write(&mut out);
        out
    }

    fn write(&self, out: &mut String) -> std::fmt::Result {
        let carried_out: Vec<Orbit> =
            Orbit::ALL.into_iter().filter(|&orbit| usual(MethodName::OneSwap, orbit).is_some()).collect();
        writeln!(out, "# Colours of the faces while a scramble is made.\n[colours]")?;
        for face in Face::ALL {
            let colour = self.colour(face);
            match colour.shade {
                None if COLOUR_NAMES.contains(&colour.name.as_str()) => {
                    writeln!(out, "{face} = {}", quoted(&colour.name))?;
                }
                shade => {
                    let [red, green, blue] = shade.unwrap_or_default();
                    let name = quoted(&colour.name);
                    writeln!(
                        out,
                        "{face} = {{ name = {name}, shade = \"#{red:02x}{green:02x}{blue:02x}\" }}"
                    )?;
                }
            }
        }
        writeln!(out, "\n# Colours up and in front while solving.\n[holding]")?;
        writeln!(out, "up = {}", quoted(&self.colour_held(Face::U).name))?;
        writeln!(out, "front = {}", quoted(&self.colour_held(Face::F).name))?;
        writeln!(
            out,
            "\n# Faces U L F R B D, on each clockwise from the upper left (edges: from the top).\n[letters]"
        )?;
        for orbit in Orbit::ALL {
            let letters = &self.kind(orbit).letters;
            let written = if letters.are_single() {
                quoted(&letters.all().collect::<String>())
            } else {
                format!("[{}]", letters.all().map(quoted).collect::<Vec<_>>().join(", "))
            };
            writeln!(out, "{} = {written}", kind_name(orbit))?;
        }
        writeln!(out, "\n[buffer]")?;
        for orbit in Orbit::ALL {
            writeln!(out, "{} = {}", kind_name(orbit), quoted(orbit.name(self.kind(orbit).buffer)))?;
        }
        writeln!(out, "\n[method]")?;
        for &orbit in &carried_out {
            writeln!(out, "{} = {}", kind_name(orbit), quoted(self.kind(orbit).method.name()))?;
        }
        writeln!(out, "\n[algorithm]")?;
        for &orbit in &carried_out {
            let algorithm = self.kind(orbit).algorithm.as_ref().map(ToString::to_string).unwrap_or_default();
            writeln!(out, "{} = {}", kind_name(orbit), quoted(&algorithm))?;
        }
        writeln!(out, "parity = {}", quoted(&self.parity_algorithm.to_string()))?;
        writeln!(out, "\n# Sheets of three-cycles.\n[sheet]")?;
        for &orbit in &carried_out {
            let place = self.kind(orbit).sheet.as_deref().unwrap_or_default();
            writeln!(out, "{} = {}", kind_name(orbit), quoted(place))?;
        }
        writeln!(out, "\n# Your own times of turning, as `hoodwink algs fit --out` writes them.\n[ease]")?;
        writeln!(out, "costs = {}", quoted(self.ease.as_deref().unwrap_or_default()))?;
        writeln!(out, "\n# Turned pieces by an \"algorithm\" or by \"cycles\".\n[turned]")?;
        for &orbit in &carried_out {
            writeln!(out, "{} = {}", kind_name(orbit), quoted(self.kind(orbit).turned.name()))?;
        }
        writeln!(
            out,
            "\n# Parity by an \"algorithm\", or by the \"exchange\" of two edges in the trace.\n[parity]"
        )?;
        writeln!(out, "by = {}", quoted(self.parity.name()))?;
        writeln!(
            out,
            "\n# Where a new cycle begins: \"first\", \"fewest\" set-up moves, \"least\" time, or a list of stickers.\n[breaks]"
        )?;
        for orbit in Orbit::ALL {
            let choice = match &self.kind(orbit).breaks {
                BreakChoice::First => quoted("first"),
                BreakChoice::Fewest => quoted("fewest"),
                BreakChoice::Least => quoted("least"),
                BreakChoice::Preference(list) => {
                    let names: Vec<String> =
                        list.iter().map(|&sticker| quoted(orbit.name(sticker))).collect();
                    format!("[{}]", names.join(", "))
                }
            };
            writeln!(out, "{} = {choice}", kind_name(orbit))?;
        }
        writeln!(
            out,
            "\n# Lower-case letters in moves: \"wide\" (r is Rw), or on a 4x4 and bigger \"inner\" (r is 2R).\n[notation]"
        )?;
        writeln!(out, "lower-case = {}", quoted(self.lower_case.name()))?;
        let kinds = |order: &OrbitOrder| {
            order.all().map(|orbit| quoted(kind_name(orbit))).collect::<Vec<_>>().join(", ")
        };
        writeln!(out, "\n[memo]\npairs = {}", self.pairs)?;
        writeln!(out, "order = [{}]", kinds(&self.memo_order))?;
        writeln!(out, "execution = [{}]", kinds(&self.execution_order))
    }
}
