//! Reading algorithms. The reader keeps its own stack, so that no text can exhaust the program's.

use super::{Algorithm, Form, MAX_DEPTH, MAX_MOVES, MAX_TEXT, Node};
use crate::{Amount, Axis, Block, Face, NoSuchTurn, Size, Slice, Turn};
use std::fmt;
use thiserror::Error;

/// What would have been right at a place.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Expected {
    /// A turn or an opening bracket.
    Turn,
    /// A turn, or the bracket that closes a group.
    TurnOrClose,
    /// A comma or colon, which a square bracket needs between its two parts.
    Separator,
    /// The square bracket that closes a conjugate or commutator.
    CloseSquare,
    /// After a number of layers: a face, wide.
    WideTurn,
    /// A number of layers of 2 or more.
    Layers,
    /// A number of quarter turns of 1 to 3.
    Quarters,
    /// A number of repeats of 1 or more.
    Repeats,
}

impl fmt::Display for Expected {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Turn => "a turn (U L F R B D, wide, M E S, x y z) or an opening bracket",
            Self::TurnOrClose => "a turn or `)`",
            Self::Separator => "`,` or `:` between the two parts of a square bracket",
            Self::CloseSquare => "a turn or `]`",
            Self::WideTurn => "a wide turn (as 3Rw) after a number of layers",
            Self::Layers => "2 or more layers for a wide turn (as 3Rw)",
            Self::Quarters => "an amount of 1, 2 or 3 quarter turns",
            Self::Repeats => "a number of repeats, 1 or more",
        })
    }
}

/// What is wrong with a text.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ParseErrorKind {
    /// More than [`MAX_TEXT`] bytes.
    #[error("the text is {0} bytes long; at most {MAX_TEXT} are read")]
    TooLong(usize),
    /// More than [`MAX_MOVES`] turns.
    #[error("this stands for more than {MAX_MOVES} turns")]
    TooManyTurns,
    /// More than [`MAX_DEPTH`] brackets in one another.
    #[error("brackets are nested more than {MAX_DEPTH} deep")]
    TooDeep,
    /// Something else was expected.
    #[error("{}, but {expected} was expected", found.map_or("the text ends".to_owned(), |c| format!("`{c}` stands here")))]
    Unexpected {
        /// What stands there; `None` at the end of the text.
        found: Option<char>,
        /// What would do.
        expected: Expected,
    },
    /// A letter in the wrong case for what it seems to mean.
    #[error("`{found}` is no turn; `{rather}` is")]
    WrongCase {
        /// What stands there.
        found: char,
        /// The same letter as it is written.
        rather: char,
    },
    /// A turn that this size does not have.
    #[error("{turn}: {reason}")]
    NoSuchTurn {
        /// The turn.
        turn: Turn,
        /// Why not.
        reason: NoSuchTurn,
    },
}

/// What is wrong with a text, and where.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error("line {line}, column {column}: {kind}")]
pub struct ParseError {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Bytes of the text before the place.
    pub offset: usize,
    /// What is wrong.
    pub kind: ParseErrorKind,
}

impl Algorithm {
    /// Reads an algorithm for a cube of this size.
    ///
    /// Turns may stand with or without spaces; a prime is `'`, `’`, `‘`, `′`, `ʹ` or `` ` ``; `//` begins a comment that
    /// goes on to the end of the line. A lower-case face is a wide turn of two layers.
    ///
    /// # Errors
    /// [`ParseError`] with line and column: the first place where the text is no algorithm, asks for a turn that
    /// the size does not have, or passes [`MAX_TEXT`], [`MAX_MOVES`] or [`MAX_DEPTH`].
    ///
    /// ```
    /// use cube::{Algorithm, Size};
    /// let error = Algorithm::parse("R U\nF K", Size::THREE).unwrap_err();
    /// assert_eq!((error.line, error.column), (2, 3));
    /// ```
    pub fn parse(text: &str, size: Size) -> Result<Self, ParseError> {
        if text.len() > MAX_TEXT {
            return Err(ParseError {
                line: 1,
                column: 1,
                offset: 0,
                kind: ParseErrorKind::TooLong(text.len()),
            });
        }
        let mut reader = Reader { letters: text.chars().collect(), at: 0, size };
        let nodes = reader.sequence()?;
        Ok(Self { size, nodes })
    }
}

/// A bracket that is still open.
struct Open {
    at: usize,
    square: bool,
    /// The part before the separator, once that was read.
    first: Option<(Vec<Node>, bool)>,
    nodes: Vec<Node>,
    turns: usize,
    /// Turns of the part before the separator.
    turns_before: usize,
}

struct Reader {
    letters: Vec<char>,
    at: usize,
    size: Size,
}

impl Reader {
    fn error(&self, at: usize, kind: ParseErrorKind) -> ParseError {
        let before = &self.letters[..at.min(self.letters.len())];
        let line = before.iter().filter(|&&letter| letter == '\n').count() + 1;
        let column = before.iter().rev().take_while(|&&letter| letter != '\n').count() + 1;
        let offset = before.iter().map(|letter| letter.len_utf8()).sum();
        ParseError { line, column, offset, kind }
    }

    fn unexpected(&self, expected: Expected) -> ParseError {
        self.error(self.at, ParseErrorKind::Unexpected { found: self.peek(), expected })
    }

    fn peek(&self) -> Option<char> {
        self.letters.get(self.at).copied()
    }

    fn skip_blank(&mut self) {
        while let Some(letter) = self.peek() {
            if letter.is_whitespace() {
                self.at += 1;
            } else if letter == '/' && self.letters.get(self.at + 1) == Some(&'/') {
                while self.peek().is_some_and(|letter| letter != '\n') {
                    self.at += 1;
                }
            } else {
                break;
            }
        }
    }

    fn sequence(&mut self) -> Result<Vec<Node>, ParseError> {
        let mut open: Vec<Open> = Vec::new();
        let mut nodes = Vec::new();
        let mut turns = 0usize;
        loop {
            self.skip_blank();
            let start = self.at;
            let Some(letter) = self.peek() else { break };
            match letter {
                '(' | '[' => {
                    if open.len() >= MAX_DEPTH {
                        return Err(self.error(start, ParseErrorKind::TooDeep));
                    }
                    self.at += 1;
                    open.push(Open {
                        at: start,
                        square: letter == '[',
                        first: None,
                        nodes: std::mem::take(&mut nodes),
                        turns: std::mem::take(&mut turns),
                        turns_before: 0,
                    });
                }
                ',' | ':' => match open.last_mut() {
                    Some(bracket) if bracket.square && bracket.first.is_none() => {
                        self.at += 1;
                        bracket.first = Some((std::mem::take(&mut nodes), letter == ','));
                        bracket.turns_before = std::mem::take(&mut turns);
                    }
                    _ => return Err(self.unexpected(Self::expected(&open))),
                },
                ')' | ']' => {
                    let closes = open.last().is_some_and(|bracket| {
                        bracket.square == (letter == ']') && (!bracket.square || bracket.first.is_some())
                    });
                    let Some(bracket) = open.pop_if(|_| closes) else {
                        return Err(self.unexpected(Self::expected(&open)));
                    };
                    self.at += 1;
                    let body = std::mem::replace(&mut nodes, bracket.nodes);
                    let commutator = matches!(bracket.first, Some((_, true)));
                    let form = match bracket.first {
                        None => Form::Group(body),
                        Some((first, true)) => Form::Commutator(first, body),
                        Some((first, false)) => Form::Conjugate(first, body),
                    };
                    let (times, inverse) = self.repeats()?;
                    let once = if bracket.square {
                        let doubled = if commutator { turns } else { 0 };
                        bracket.turns_before.saturating_mul(2).saturating_add(turns).saturating_add(doubled)
                    } else {
                        turns
                    };
                    let length = once.saturating_mul(times as usize);
                    turns = bracket.turns.saturating_add(length);
                    if turns > MAX_MOVES {
                        return Err(self.error(bracket.at, ParseErrorKind::TooManyTurns));
                    }
                    nodes.push(Node::Bracket { form, times, inverse });
                }
                _ => {
                    let turn = self.turn(&open)?;
                    turn.check(self.size)
                        .map_err(|reason| self.error(start, ParseErrorKind::NoSuchTurn { turn, reason }))?;
                    nodes.push(Node::Turn(turn));
                    turns += 1;
                    if turns > MAX_MOVES {
                        return Err(self.error(start, ParseErrorKind::TooManyTurns));
                    }
                }
            }
        }
        if open.is_empty() { Ok(nodes) } else { Err(self.unexpected(Self::expected(&open))) }
    }

    /// What would be right where something else stands.
    fn expected(open: &[Open]) -> Expected {
        match open.last() {
            None => Expected::Turn,
            Some(Open { square: false, .. }) => Expected::TurnOrClose,
            Some(Open { first: None, .. }) => Expected::Separator,
            Some(_) => Expected::CloseSquare,
        }
    }

    fn number(&mut self) -> Option<u32> {
        let start = self.at;
        let mut number = 0u32;
        while let Some(digit) = self.peek().and_then(|letter| letter.to_digit(10)) {
            number = number.saturating_mul(10).saturating_add(digit);
            self.at += 1;
        }
        (self.at > start).then_some(number)
    }

    fn prime(&mut self) -> bool {
        let found = self.peek().is_some_and(|letter| matches!(letter, '\'' | '’' | '‘' | '′' | 'ʹ' | '`'));
        if found {
            self.at += 1;
        }
        found
    }

    fn repeats(&mut self) -> Result<(u32, bool), ParseError> {
        let start = self.at;
        let times = self.number().unwrap_or(1);
        if times == 0 {
            self.at = start;
            return Err(self.unexpected(Expected::Repeats));
        }
        Ok((times, self.prime()))
    }

    fn turn(&mut self, open: &[Open]) -> Result<Turn, ParseError> {
        let start = self.at;
        let layers = self.number();
        let Some(letter) = self.peek() else {
            return Err(self.unexpected(Expected::WideTurn));
        };
        let face = Face::from_letter(letter.to_ascii_uppercase());
        let block = match (letter, face) {
            (_, Some(face)) => {
                self.at += 1;
                let mut wide = letter.is_ascii_lowercase();
                if !wide && self.peek() == Some('w') {
                    self.at += 1;
                    wide = true;
                }
                if layers.is_some() && !wide {
                    self.at -= 1;
                    return Err(self.unexpected(Expected::WideTurn));
                }
                let depth = match layers {
                    _ if !wide => 1,
                    None => 2,
                    Some(layers) => match u8::try_from(layers) {
                        Ok(layers) if layers >= 2 => layers,
                        _ => {
                            self.at = start;
                            return Err(self.unexpected(Expected::Layers));
                        }
                    },
                };
                Block::Outer { face, depth }
            }
            _ if layers.is_some() => return Err(self.unexpected(Expected::WideTurn)),
            ('M' | 'E' | 'S' | 'x' | 'y' | 'z', _) => {
                self.at += 1;
                match letter {
                    'M' => Block::Slice(Slice::M),
                    'E' => Block::Slice(Slice::E),
                    'S' => Block::Slice(Slice::S),
                    'x' => Block::Whole(Axis::X),
                    'y' => Block::Whole(Axis::Y),
                    _ => Block::Whole(Axis::Z),
                }
            }
            ('m' | 'e' | 's', _) => {
                let rather = letter.to_ascii_uppercase();
                return Err(self.error(start, ParseErrorKind::WrongCase { found: letter, rather }));
            }
            ('X' | 'Y' | 'Z', _) => {
                let rather = letter.to_ascii_lowercase();
                return Err(self.error(start, ParseErrorKind::WrongCase { found: letter, rather }));
            }
            _ => return Err(self.unexpected(Self::expected(open))),
        };
        let amount_at = self.at;
        let quarters = self.number().unwrap_or(1);
        let amount = if quarters <= 3 { Amount::from_quarters(i64::from(quarters)) } else { None };
        let Some(amount) = amount else {
            self.at = amount_at;
            return Err(self.unexpected(Expected::Quarters));
        };
        let amount = if self.prime() { amount.inverse() } else { amount };
        Ok(Turn::new(block, amount))
    }
}
