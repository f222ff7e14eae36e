//! The faults of simulated pupils, and how often each is made: guesses of this file, other than the engine's.

macro_rules! faults {
    ($($(#[$doc:meta])* $fault:ident $stage:ident $rate:literal $name:literal,)*) => {
        /// A fault of a pupil.
        #[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
        pub enum Fault {
            $($(#[$doc])* $fault,)*
        }

        impl Fault {
            pub const ALL: [Self; [$(Self::$fault),*].len()] = [$(Self::$fault),*];

            /// How often in comparison with the others: guesses of this file, other than the engine's.
            pub const fn rate(self) -> f64 {
                match self { $(Self::$fault => $rate,)* }
            }

            /// What the engine calls it.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$fault => $name,)* }
            }

            pub const fn when(self) -> When {
                match self { $(Self::$fault => When::$stage,)* }
            }
        }
    };
}

/// When a fault is made.
#[derive(Clone, Copy, PartialEq, Eq, Debug, PartialOrd, Ord)]
pub enum When {
    Before,
    Looking,
    Remembering,
    Turning,
}

faults! {
    ScrambleOtherTurn Before 2.0 "scramble-turn-wrong",
    ScrambleTurnGone Before 2.0 "scramble-turn-left-out",
    ScrambleTurnExtra Before 1.0 "scramble-turn-added",
    ScrambleTurnsSwapped Before 1.0 "scramble-turns-exchanged",
    ScrambleInMirror Before 0.5 "scramble-mirrored",
    ScrambleHeldElse Before 1.0 "scrambled-in-other-hold",
    PickedUpElse Before 2.0 "held-wrong",
    StickerFollowed Looking 6.0 "wrong-sticker-followed",
    Sticker Looking 3.0 "wrong-sticker",
    LastGone Looking 4.0 "closed-early",
    CycleGone Looking 3.0 "cycle-missed",
    FlipGone Looking 3.0 "flip-missed",
    TwistGone Looking 3.0 "twist-missed",
    TwistElse Looking 2.0 "twist-other-way",
    OtherBuffer Looking 0.5 "traced-from-other-buffer",
    ParityGone Looking 5.0 "parity-overlooked",
    ParityExtra Looking 1.0 "parity-without-need",
    LetterNext Remembering 3.0 "letter-neighbour",
    LetterLike Remembering 4.0 "letter-alike",
    LetterAny Remembering 4.0 "letter-other",
    LetterGone Remembering 5.0 "letter-dropped",
    PairGone Remembering 4.0 "pair-dropped",
    LetterTwice Remembering 1.0 "letter-doubled",
    PairTwice Remembering 1.5 "pair-doubled",
    PairTurned Remembering 5.0 "pair-reversed",
    LettersSwapped Remembering 3.0 "letters-exchanged",
    PairsSwapped Remembering 3.0 "pairs-exchanged",
    KindsSwapped Remembering 0.5 "kinds-exchanged",
    KindGone Remembering 1.0 "kind-forgotten",
    TurnedBack Turning 9.0 "turn-other-way",
    HalfMade Turning 3.0 "turn-half",
    QuarterMade Turning 3.0 "turn-quarter",
    TurnGone Turning 5.0 "turn-left-out",
    TurnExtra Turning 3.0 "turn-added",
    OtherFace Turning 3.0 "turn-other-face",
    OtherLayers Turning 2.0 "turn-wide",
    SetupGone Turning 1.0 "setup-left-out",
    SetupTwice Turning 1.0 "setup-doubled",
    SetupBack Turning 1.0 "setup-wrong-way",
    UndoGone Turning 5.0 "setup-not-undone",
    UndoBack Turning 5.0 "setup-undone-wrong-way",
    UndoTwice Turning 0.5 "setup-undone-twice",
    SetupElse Turning 3.0 "setup-of-another",
    AlgorithmGone Turning 2.0 "algorithm-left-out",
    AlgorithmTwice Turning 2.0 "algorithm-doubled",
    AlgorithmBack Turning 2.0 "algorithm-inverted",
    AlgorithmElse Turning 2.0 "algorithm-of-other-kind",
    TurnedInHand Turning 2.0 "held-otherwise",
    Stopped Turning 3.0 "broken-off",
}

/// Names that stand for the same deed, whatever made it likely: a letter taken for another, letters left out.
pub fn as_told(name: &str) -> &str {
    match name {
        "letter-neighbour" | "letter-alike" | "wrong-sticker" | "twist-other-way" => "letter-other",
        "wrong-sticker-followed" => "traced-from-other-buffer",
        "closed-early" | "letter-dropped" | "cycle-missed" | "flip-missed" | "twist-missed"
        | "pair-dropped" | "kind-forgotten" => "left-out",
        other => other,
    }
}

/// Letters that pupils take for each other, a guess of this file.
pub fn alike(a: &str, b: &str) -> bool {
    const GROUPS: [&str; 8] = ["BDEGPT", "AKHJ", "FSX", "MN", "QU", "CGO", "IJL", "VUW"];
    let upper = (a.to_uppercase(), b.to_uppercase());
    GROUPS.iter().any(|group| group.contains(&*upper.0) && group.contains(&*upper.1))
}
