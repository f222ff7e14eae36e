//! Printing algorithms, so that what is printed reads back as the same tree.

use super::{Algorithm, Form, Node};
use crate::Turn;
use std::fmt;

impl fmt::Display for Algorithm {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        nodes(&self.nodes, f)
    }
}

fn nodes(parts: &[Node], f: &mut fmt::Formatter<'_>) -> fmt::Result {
    for (i, part) in parts.iter().enumerate() {
        if i > 0 {
            f.write_str(" ")?;
        }
        match part {
            Node::Turn(turn) => write!(f, "{turn}")?,
            Node::Bracket { form, times, inverse } => {
                match form {
                    Form::Group(body) => {
                        f.write_str("(")?;
                        nodes(body, f)?;
                        f.write_str(")")?;
                    }
                    Form::Conjugate(a, b) => pair(a, ": ", b, f)?,
                    Form::Commutator(a, b) => pair(a, ", ", b, f)?,
                }
                if *times > 1 {
                    write!(f, "{times}")?;
                }
                if *inverse {
                    f.write_str("'")?;
                }
            }
        }
    }
    Ok(())
}

fn pair(a: &[Node], between: &str, b: &[Node], f: &mut fmt::Formatter<'_>) -> fmt::Result {
    f.write_str("[")?;
    nodes(a, f)?;
    f.write_str(between)?;
    nodes(b, f)?;
    f.write_str("]")
}

/// Turns one after another with a space between, in plain characters (`'` for the prime).
pub fn display_turns(turns: &[Turn]) -> impl fmt::Display + '_ {
    struct Spaced<'a>(&'a [Turn]);
    impl fmt::Display for Spaced<'_> {
        fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            for (i, turn) in self.0.iter().enumerate() {
                if i > 0 {
                    f.write_str(" ")?;
                }
                write!(f, "{turn}")?;
            }
            Ok(())
        }
    }
    Spaced(turns)
}
