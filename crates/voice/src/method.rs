//! Why an algorithm or a method cannot be used, and why a memo was not carried out.

use crate::Voice;
use blind::{ExecutionError, MethodError, NoSolution, SwapError};
use cube::{Claim, NoSuchTurn, NotProven, Orbit, Size, Sticker};

impl Voice {
    /// Why an algorithm cannot serve as the swap of a kind.
    pub fn swap_error(&self, orbit: Orbit, error: &SwapError) -> String {
        let name = |sticker: Sticker| orbit.name(sticker).to_owned();
        match error {
            SwapError::NotASwap { moved } if moved.is_empty() => {
                self.say("swap-nothing", &[("kinds", self.kinds(orbit).into())])
            }
            SwapError::NotASwap { moved } => self.say(
                "swap-not-a-swap",
                &[
                    ("kinds", self.kinds(orbit).into()),
                    ("moved", self.pieces(orbit, moved).into()),
                    ("count", moved.len().into()),
                ],
            ),
            SwapError::BufferNotMoved { buffer, moved, instead } => self.say(
                "swap-buffer-not-moved",
                &[
                    ("buffer", name(*buffer).into()),
                    ("first", orbit.piece_name(moved[0]).into()),
                    ("second", orbit.piece_name(moved[1]).into()),
                    ("instead", instead.to_string().into()),
                ],
            ),
            SwapError::NotItsOwnInverse => self.word("swap-not-its-own-inverse"),
            SwapError::TurnsTheCube => self.word("swap-turns-the-cube"),
            SwapError::MovesCentres(moved) => {
                self.say("swap-moves-centres", &[("kinds", self.kinds(*moved).into())])
            }
            SwapError::OtherTarget { named, actual } => self.say(
                "swap-other-target",
                &[("named", name(*named).into()), ("actual", name(*actual).into())],
            ),
        }
    }

    /// Why a method cannot be used on a puzzle.
    pub fn method_error(&self, error: &MethodError) -> String {
        match error {
            MethodError::CannotBeMade { orbit, size, error } => self.cannot_be_made(*orbit, *size, *error),
            MethodError::NoSwap { orbit, error } => self.swap_error(*orbit, error),
            MethodError::NoSetup { orbit, target } => {
                self.say("method-no-setup", &[("target", orbit.name(*target).into())])
            }
            MethodError::ParityDoesNotFit { wanted, moved } => {
                let names = |list: &[(Orbit, Sticker)]| {
                    let names: Vec<String> =
                        list.iter().map(|&(orbit, sticker)| orbit.piece_name(sticker).to_owned()).collect();
                    self.list(&names)
                };
                self.say(
                    "method-parity-does-not-fit",
                    &[("wanted", names(wanted).into()), ("moved", names(moved).into())],
                )
            }
            MethodError::BetweenCornersAndEdges(orbit) => {
                self.say("method-between-corners-and-edges", &[("kinds", self.kinds(*orbit).into())])
            }
            MethodError::SliceNotFirst => self.word("method-slice-not-first"),
            MethodError::NotForKind(orbit) => {
                self.say("method-not-for-kind", &[("kinds", self.kinds(*orbit).into())])
            }
            MethodError::ParityCannotBeMade { size, error } => self.say(
                "method-parity-cannot-be-made",
                &[("size", size.to_string().into()), ("what", self.no_such_turn(*error).into())],
            ),
            MethodError::NotProven(fault) => self.not_proven(*fault),
            MethodError::NoExchange => self.word("method-no-exchange"),
            MethodError::NoCase { orbit, first, second } => self.say(
                "method-no-case",
                &[("first", orbit.name(*first).into()), ("second", orbit.name(*second).into())],
            ),
            MethodError::NotCovered { size, orbit } => self.say(
                "method-not-covered",
                &[("size", size.to_string().into()), ("kinds", self.kinds(*orbit).into())],
            ),
        }
    }

    /// Why a memo was not carried out.
    pub fn execution_error(&self, error: &ExecutionError) -> String {
        match error {
            ExecutionError::KindMissing(orbit) => {
                self.say("execution-kind-missing", &[("kinds", self.kinds(*orbit).into())])
            }
            ExecutionError::OwnPiece { orbit, target } => {
                self.say("execution-own-piece", &[("target", orbit.name(*target).into())])
            }
            ExecutionError::NotProven(fault) => self.not_proven(*fault),
        }
    }

    /// Why there is no solution to show.
    pub fn no_solution(&self, why: &NoSolution) -> String {
        match why {
            NoSolution::Method(error) => self.method_error(error),
            NoSolution::CentresLate => self.word("execution-centres-late"),
            NoSolution::Execution(error) => self.execution_error(error),
        }
    }

    /// That something did not do what it should when it was tried, so that it is not shown.
    pub fn not_proven(&self, fault: NotProven) -> String {
        let claim = match fault.claim {
            Claim::Solution => "solution",
            Claim::Algorithm => "algorithm",
            Claim::Setup => "setup",
            Claim::Scramble => "scramble",
            Claim::Memo => "memo",
            Claim::Condition => "condition",
            Claim::Explanation => "explanation",
        };
        self.say("not-proven", &[("claim", claim.into())])
    }

    pub(crate) fn cannot_be_made(&self, orbit: Orbit, size: Size, error: NoSuchTurn) -> String {
        self.say(
            "method-cannot-be-made",
            &[
                ("kind", self.kind(orbit).into()),
                ("size", size.to_string().into()),
                ("what", self.no_such_turn(error).into()),
            ],
        )
    }
}
