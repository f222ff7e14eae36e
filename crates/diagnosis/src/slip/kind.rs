//! The kinds of slip.

/// When a slip is made.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Stage {
    /// Before the first letter: scrambling, picking up.
    Start,
    /// While the letters are found.
    Tracing,
    /// Between the memo and the hands.
    Recall,
    /// With the hands.
    Execution,
}

impl Stage {
    /// All four, in the order of an attempt.
    pub const ALL: [Self; 4] = [Self::Start, Self::Tracing, Self::Recall, Self::Execution];

    /// Its name in files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Tracing => "tracing",
            Self::Recall => "recall",
            Self::Execution => "execution",
        }
    }
}

macro_rules! slip_kinds {
    ($($(#[$doc:meta])* $kind:ident $stage:ident $name:literal,)*) => {
        /// A kind of slip.
        #[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
        pub enum SlipKind {
            $($(#[$doc])* $kind,)*
        }

        impl SlipKind {
            /// All kinds, in the order of an attempt.
            pub const ALL: [Self; [$(Self::$kind),*].len()] = [$(Self::$kind),*];

            /// When it is made.
            pub const fn stage(self) -> Stage {
                match self { $(Self::$kind => Stage::$stage,)* }
            }

            /// Its name in files.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$kind => $name,)* }
            }
        }
    };
}

slip_kinds! {
    /// A turn of the scramble made the other way, half for quarter, quarter for half, or on another face.
    ScrambleTurnWrong Start "scramble-turn-wrong",
    /// A turn of the scramble left out.
    ScrambleTurnLeftOut Start "scramble-turn-left-out",
    /// A turn made in the scramble that does not belong there.
    ScrambleTurnAdded Start "scramble-turn-added",
    /// Two neighbouring turns of the scramble exchanged.
    ScrambleTurnsExchanged Start "scramble-turns-exchanged",
    /// The whole scramble made as in a mirror.
    ScrambleMirrored Start "scramble-mirrored",
    /// The whole scramble made with the puzzle held another way, and the puzzle then picked up as usual.
    ScrambledInOtherHold Start "scrambled-in-other-hold",
    /// Another scramble of the list made.
    OtherScramble Start "other-scramble",
    /// Picked up in another hold than the memo was made for.
    HeldWrong Start "held-wrong",
    /// Another sticker of the right piece memorised, and the trace followed on from there.
    WrongStickerFollowed Tracing "wrong-sticker-followed",
    /// Another sticker of the right piece memorised, the rest of the trace right.
    WrongSticker Tracing "wrong-sticker",
    /// The last letter of a cycle not memorised.
    ClosedEarly Tracing "closed-early",
    /// A whole cycle not memorised.
    CycleMissed Tracing "cycle-missed",
    /// An edge flipped in its place not memorised.
    FlipMissed Tracing "flip-missed",
    /// A corner twisted in its place not memorised.
    TwistMissed Tracing "twist-missed",
    /// A corner twisted in its place memorised as twisted the other way.
    TwistOtherWay Tracing "twist-other-way",
    /// A kind traced from another buffer than the own one.
    TracedFromOtherBuffer Tracing "traced-from-other-buffer",
    /// The parity algorithm not made although the number of letters is odd.
    ParityOverlooked Tracing "parity-overlooked",
    /// The parity algorithm made although the number of letters is even.
    ParityWithoutNeed Tracing "parity-without-need",
    /// A letter taken for the one before or after it in the scheme.
    LetterNeighbour Recall "letter-neighbour",
    /// A letter taken for one that sounds or looks like it.
    LetterAlike Recall "letter-alike",
    /// A letter taken for any other.
    LetterOther Recall "letter-other",
    /// A letter left out.
    LetterDropped Recall "letter-dropped",
    /// A pair of letters left out.
    PairDropped Recall "pair-dropped",
    /// A letter carried out twice.
    LetterDoubled Recall "letter-doubled",
    /// A pair of letters carried out twice.
    PairDoubled Recall "pair-doubled",
    /// The two letters of a pair exchanged.
    PairReversed Recall "pair-reversed",
    /// Two letters exchanged that are not one pair.
    LettersExchanged Recall "letters-exchanged",
    /// Two pairs exchanged.
    PairsExchanged Recall "pairs-exchanged",
    /// The letters of two kinds carried out each on the other.
    KindsExchanged Recall "kinds-exchanged",
    /// All letters of a kind left out.
    KindForgotten Recall "kind-forgotten",
    /// A quarter turn made the other way.
    TurnOtherWay Execution "turn-other-way",
    /// A half turn made for a quarter.
    TurnHalf Execution "turn-half",
    /// A quarter turn made for a half.
    TurnQuarter Execution "turn-quarter",
    /// A turn left out.
    TurnLeftOut Execution "turn-left-out",
    /// A turn made that does not belong there.
    TurnAdded Execution "turn-added",
    /// A turn made on another face.
    TurnOtherFace Execution "turn-other-face",
    /// A wide turn for a narrow one, or the other way about.
    TurnWide Execution "turn-wide",
    /// The set-up left out, and yet undone.
    SetupLeftOut Execution "setup-left-out",
    /// The set-up made twice.
    SetupDoubled Execution "setup-doubled",
    /// The set-up made as it is undone.
    SetupWrongWay Execution "setup-wrong-way",
    /// The set-up not undone.
    SetupNotUndone Execution "setup-not-undone",
    /// The set-up made once more, or undone in the wrong order, instead of undone.
    SetupUndoneWrongWay Execution "setup-undone-wrong-way",
    /// The set-up undone twice.
    SetupUndoneTwice Execution "setup-undone-twice",
    /// Another letter's set-up, made or undone.
    SetupOfAnother Execution "setup-of-another",
    /// An algorithm left out.
    AlgorithmLeftOut Execution "algorithm-left-out",
    /// An algorithm made twice.
    AlgorithmDoubled Execution "algorithm-doubled",
    /// An algorithm made backwards.
    AlgorithmInverted Execution "algorithm-inverted",
    /// Another algorithm than the kind's own.
    AlgorithmOfOtherKind Execution "algorithm-of-other-kind",
    /// The puzzle held another way from some step on.
    HeldOtherwise Execution "held-otherwise",
    /// Nothing more made from some turn on.
    BrokenOff Execution "broken-off",
}

impl SlipKind {
    /// The kind with a name in files.
    ///
    /// ```
    /// use diagnosis::SlipKind;
    /// assert_eq!(SlipKind::named("pair-reversed"), Some(SlipKind::PairReversed));
    /// ```
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }

    /// Place in [`SlipKind::ALL`].
    pub const fn index(self) -> usize {
        self as usize
    }
}
