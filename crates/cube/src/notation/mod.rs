//! Sequences of turns as people write them: a tree of turns, groups, conjugates and commutators.
//!
//! Face and wide turns, rotations: WCA Regulations, article 12. `M E S`, inner layers (`2R`, `2-3R`), lower-case turns,
//! brackets and repeats: common practice, no source.

mod parse;
mod print;

pub use parse::{Expected, LowerCase, ParseError, ParseErrorKind};
pub use print::display_turns;

use crate::simplify::{inverted, simplified};
use crate::{Axis, NoSuchTurn, Rotation, Size, Turn};

/// The longest text that is read, in bytes.
pub const MAX_TEXT: usize = 64 * 1024;
/// The most turns that a text may stand for.
pub const MAX_MOVES: usize = 100_000;
/// How deep brackets may be nested.
pub const MAX_DEPTH: usize = 200;

/// A part of an algorithm: a turn, or a bracket.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Node {
    /// One turn.
    Turn(Turn),
    /// A bracket, repeated and perhaps made backwards.
    Bracket {
        /// What kind of bracket.
        form: Form,
        /// How often it is made, 1 or more.
        times: u32,
        /// Whether it is undone rather than made.
        inverse: bool,
    },
}

/// A kind of bracket.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Form {
    /// `(A)`: A.
    Group(Vec<Node>),
    /// `[A: B]`: A, B, A undone.
    Conjugate(Vec<Node>, Vec<Node>),
    /// `[A, B]`: A, B, A undone, B undone.
    Commutator(Vec<Node>, Vec<Node>),
}

/// An algorithm as it was written, for a cube of one size that can make all its turns.
///
/// ```
/// use cube::{Algorithm, Size, display_turns};
/// let written = Algorithm::parse("[U: [R U R', D]]", Size::THREE).unwrap();
/// assert_eq!(written.to_string(), "[U: [R U R', D]]");
/// assert_eq!(display_turns(&written.flatten()).to_string(), "U R U R' D R U' R' D' U'");
/// assert_eq!(written.inverse().to_string(), "[U: [D, R U R']]");
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Algorithm {
    size: Size,
    nodes: Vec<Node>,
}

impl Algorithm {
    /// An algorithm of turns one after another, without brackets; turns that the size lacks are an error.
    ///
    /// # Errors
    /// [`NoSuchTurn`] for the first turn that the size does not have.
    pub fn from_turns(size: Size, turns: &[Turn]) -> Result<Self, NoSuchTurn> {
        turns.iter().try_for_each(|turn| turn.check(size))?;
        Ok(Self { size, nodes: turns.iter().copied().map(Node::Turn).collect() })
    }

    /// No turns at all.
    pub const fn empty(size: Size) -> Self {
        Self { size, nodes: Vec::new() }
    }

    /// The same algorithm for a cube of another size.
    ///
    /// # Errors
    /// [`NoSuchTurn`] for the first turn that the size does not have.
    ///
    /// ```
    /// use cube::{Algorithm, Size};
    /// let five = Size::new(5).unwrap();
    /// let written = Algorithm::parse("[2-3R: (U M)2]", five).unwrap();
    /// assert_eq!(written.on(Size::new(7).unwrap()).unwrap().to_string(), written.to_string());
    /// assert_eq!(written.on(Size::THREE).unwrap_err().turn.to_string(), "2-3R");
    /// ```
    pub fn on(&self, size: Size) -> Result<Self, NoSuchTurn> {
        check(&self.nodes, size)?;
        Ok(Self { size, nodes: self.nodes.clone() })
    }

    /// `[set_up: body]`; `None` when it would be too long, too deep, or the sizes differ.
    pub fn conjugate(set_up: Self, body: Self) -> Option<Self> {
        let size = set_up.size;
        (size == body.size).then(|| Self::bracket(size, Form::Conjugate(set_up.nodes, body.nodes)))?
    }

    /// `[first, second]`; `None` when it would be too long, too deep, or the sizes differ.
    pub fn commutator(first: Self, second: Self) -> Option<Self> {
        let size = first.size;
        (size == second.size).then(|| Self::bracket(size, Form::Commutator(first.nodes, second.nodes)))?
    }

    fn bracket(size: Size, form: Form) -> Option<Self> {
        let made = Self { size, nodes: vec![Node::Bracket { form, times: 1, inverse: false }] };
        (made.len() <= MAX_MOVES && depth(&made.nodes) <= MAX_DEPTH).then_some(made)
    }

    /// The set-up and the body, where the whole is one `[set_up: body]`.
    ///
    /// ```
    /// use cube::{Algorithm, Size};
    /// let parts = |text| Algorithm::parse(text, Size::THREE).unwrap().conjugated();
    /// let (set_up, body) = parts("[U R: [D, L]]").unwrap();
    /// assert_eq!((set_up.to_string(), body.to_string()), ("U R".to_owned(), "[D, L]".to_owned()));
    /// assert_eq!(parts("[U: R] L"), None);
    /// ```
    pub fn conjugated(&self) -> Option<(Self, Self)> {
        let [Node::Bracket { form: Form::Conjugate(set_up, body), times: 1, inverse: false }] =
            &self.nodes[..]
        else {
            return None;
        };
        let part = |nodes: &[Node]| Self { size: self.size, nodes: nodes.to_vec() };
        Some((part(set_up), part(body)))
    }

    /// The size it is for.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// Its parts, in order.
    pub fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    /// How many turns it stands for.
    pub fn len(&self) -> usize {
        length(&self.nodes)
    }

    /// Whether it makes no turn at all.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The turns one after another, at most [`MAX_MOVES`].
    pub fn flatten(&self) -> Vec<Turn> {
        let mut turns = Vec::with_capacity(self.len());
        flatten_into(&self.nodes, &mut turns);
        turns
    }

    /// The algorithm that undoes it, with its brackets kept: `[A, B]` becomes `[B, A]`.
    #[must_use]
    pub fn inverse(&self) -> Self {
        Self { size: self.size, nodes: inverse(&self.nodes) }
    }

    /// The algorithm with neighbouring turns merged and cancelled as [`simplified`] does, its brackets kept.
    ///
    /// A bracket in which nothing is left to do disappears, and a conjugate without set-up becomes a group.
    /// To merge across brackets, [`Algorithm::flatten`] first.
    ///
    /// ```
    /// use cube::{Algorithm, Size};
    /// let written = Algorithm::parse("R (U U') R [F F': L L] [D D, R]", Size::THREE).unwrap();
    /// assert_eq!(written.simplified().to_string(), "R2 (L2) [D2, R]");
    /// ```
    #[must_use]
    pub fn simplified(&self) -> Self {
        Self { size: self.size, nodes: simplified_nodes(&self.nodes) }
    }

    /// The algorithm as seen in a mirror that exchanges the two ends of an axis.
    #[must_use]
    pub fn mirrored(&self, mirror: Axis) -> Self {
        self.map(&|turn| turn.mirrored(mirror))
    }

    /// The algorithm for a cube held another way.
    #[must_use]
    pub fn rotated(&self, rotation: Rotation) -> Self {
        self.map(&|turn| turn.rotated(rotation))
    }

    fn map(&self, change: &dyn Fn(Turn) -> Turn) -> Self {
        Self { size: self.size, nodes: map(&self.nodes, change) }
    }
}

fn check(nodes: &[Node], size: Size) -> Result<(), NoSuchTurn> {
    nodes.iter().try_for_each(|node| match node {
        Node::Turn(turn) => turn.check(size),
        Node::Bracket { form: Form::Group(body), .. } => check(body, size),
        Node::Bracket { form: Form::Conjugate(a, b) | Form::Commutator(a, b), .. } => {
            check(a, size).and_then(|()| check(b, size))
        }
    })
}

fn map(nodes: &[Node], change: &dyn Fn(Turn) -> Turn) -> Vec<Node> {
    nodes
        .iter()
        .map(|node| match node {
            Node::Turn(turn) => Node::Turn(change(*turn)),
            Node::Bracket { form, times, inverse } => Node::Bracket {
                form: match form {
                    Form::Group(body) => Form::Group(map(body, change)),
                    Form::Conjugate(a, b) => Form::Conjugate(map(a, change), map(b, change)),
                    Form::Commutator(a, b) => Form::Commutator(map(a, change), map(b, change)),
                },
                times: *times,
                inverse: *inverse,
            },
        })
        .collect()
}

fn inverse(nodes: &[Node]) -> Vec<Node> {
    nodes
        .iter()
        .rev()
        .map(|node| match node {
            Node::Turn(turn) => Node::Turn(turn.inverse()),
            Node::Bracket { form, times, inverse: true } => {
                Node::Bracket { form: form.clone(), times: *times, inverse: false }
            }
            Node::Bracket { form, times, inverse: false } => Node::Bracket {
                form: match form {
                    Form::Group(body) => Form::Group(inverse(body)),
                    Form::Conjugate(a, b) => Form::Conjugate(a.clone(), inverse(b)),
                    Form::Commutator(a, b) => Form::Commutator(b.clone(), a.clone()),
                },
                times: *times,
                inverse: false,
            },
        })
        .collect()
}

fn simplified_nodes(nodes: &[Node]) -> Vec<Node> {
    let mut kept = Vec::with_capacity(nodes.len());
    let mut turns: Vec<Turn> = Vec::new();
    for node in nodes {
        match node {
            Node::Turn(turn) => turns.push(*turn),
            Node::Bracket { form, times, inverse } => {
                if let Some(form) = simplified_form(form) {
                    kept.extend(simplified(&std::mem::take(&mut turns)).into_iter().map(Node::Turn));
                    kept.push(Node::Bracket { form, times: *times, inverse: *inverse });
                }
            }
        }
    }
    kept.extend(simplified(&turns).into_iter().map(Node::Turn));
    kept
}

/// `None` when the bracket does nothing.
fn simplified_form(form: &Form) -> Option<Form> {
    match form {
        Form::Group(body) => Some(simplified_nodes(body)).filter(|body| !body.is_empty()).map(Form::Group),
        Form::Conjugate(a, b) => {
            let (a, b) = (simplified_nodes(a), simplified_nodes(b));
            match (a.is_empty(), b.is_empty()) {
                (_, true) => None,
                (true, false) => Some(Form::Group(b)),
                (false, false) => Some(Form::Conjugate(a, b)),
            }
        }
        Form::Commutator(a, b) => {
            let (a, b) = (simplified_nodes(a), simplified_nodes(b));
            (!a.is_empty() && !b.is_empty()).then_some(Form::Commutator(a, b))
        }
    }
}

/// How many turns some nodes stand for; saturates instead of overflowing.
fn length(nodes: &[Node]) -> usize {
    nodes.iter().fold(0, |sum: usize, node| sum.saturating_add(node_length(node)))
}

fn node_length(node: &Node) -> usize {
    match node {
        Node::Turn(_) => 1,
        Node::Bracket { form, times, .. } => form_length(form).saturating_mul(*times as usize),
    }
}

fn form_length(form: &Form) -> usize {
    match form {
        Form::Group(body) => length(body),
        Form::Conjugate(a, b) => length(a).saturating_mul(2).saturating_add(length(b)),
        Form::Commutator(a, b) => length(a).saturating_add(length(b)).saturating_mul(2),
    }
}

fn depth(nodes: &[Node]) -> usize {
    nodes
        .iter()
        .map(|node| match node {
            Node::Turn(_) => 0,
            Node::Bracket { form: Form::Group(body), .. } => 1 + depth(body),
            Node::Bracket { form: Form::Conjugate(a, b) | Form::Commutator(a, b), .. } => {
                1 + depth(a).max(depth(b))
            }
        })
        .max()
        .unwrap_or(0)
}

fn flatten_into(nodes: &[Node], turns: &mut Vec<Turn>) {
    for node in nodes {
        match node {
            Node::Turn(turn) => turns.push(*turn),
            Node::Bracket { form, times, inverse } => {
                let start = turns.len();
                match form {
                    Form::Group(body) => flatten_into(body, turns),
                    Form::Conjugate(a, b) => {
                        flatten_into(a, turns);
                        let undo = inverted(&turns[start..]);
                        flatten_into(b, turns);
                        turns.extend(undo);
                    }
                    Form::Commutator(a, b) => {
                        flatten_into(a, turns);
                        let middle = turns.len();
                        flatten_into(b, turns);
                        let undo_a = inverted(&turns[start..middle]);
                        let undo_b = inverted(&turns[middle..]);
                        turns.extend(undo_a);
                        turns.extend(undo_b);
                    }
                }
                if *inverse {
                    let backwards = inverted(&turns[start..]);
                    turns.truncate(start);
                    turns.extend(backwards);
                }
                let once = turns[start..].to_vec();
                // An empty bracket may be repeated any number of times; no time is lost over it.
                let more = if once.is_empty() { 0 } else { times - 1 };
                for _ in 0..more {
                    turns.extend_from_slice(&once);
                }
            }
        }
    }
}
