//! Reading, printing and expanding algorithms.

use crate::strategies::{Written, axes, rotations, sized_turns, sized_written, sizes, text};
use cube::{
    Algorithm, Axis, Expected, Lack, LowerCase, MAX_DEPTH, MAX_MOVES, MAX_TEXT, ParseErrorKind, Size, State,
    display_turns, inverted, mirrored, rotated, simplified,
};
use proptest::prelude::*;

proptest! {
    #[test]
    fn brackets_mean_what_they_are_defined_to_mean((size, Written { text, meaning }) in sized_written()) {
        prop_assume!(meaning.len() <= MAX_MOVES && text.len() <= MAX_TEXT);
        let read = Algorithm::parse(&text, size).unwrap();
        prop_assert_eq!(read.len(), meaning.len());
        prop_assert_eq!(read.is_empty(), meaning.is_empty());
        prop_assert_eq!(read.flatten(), meaning, "{}", text);
    }

    #[test]
    fn what_is_printed_reads_back((size, Written { text, .. }) in sized_written()) {
        let read = Algorithm::parse(&text, size).unwrap();
        let printed = read.to_string();
        prop_assert_eq!(&printed, &text);
        prop_assert_eq!(Algorithm::parse(&printed, size).unwrap(), read);
    }

    #[test]
    fn turns_print_and_read_back((size, turns) in sized_turns(60)) {
        let printed = display_turns(&turns).to_string();
        let read = Algorithm::parse(&printed, size).unwrap();
        prop_assert_eq!(read.flatten(), turns.clone());
        prop_assert_eq!(Algorithm::from_turns(size, &turns).unwrap(), read);
        // Without the spaces too, unless a number of layers would then be taken for an amount.
        let numbered = printed.split(' ').any(|turn| turn.starts_with(|sign: char| sign.is_ascii_digit()));
        if !numbered {
            let close = Algorithm::parse(&printed.replace(' ', ""), size).unwrap();
            prop_assert_eq!(close.flatten(), turns);
        }
    }

    #[test]
    fn the_inverse_of_a_tree_is_that_of_its_turns((size, Written { text, .. }) in sized_written()) {
        let read = Algorithm::parse(&text, size).unwrap();
        let inverse = read.inverse();
        prop_assert_eq!(inverse.flatten(), inverted(&read.flatten()), "{}", text);
        prop_assert_eq!(inverse.inverse().flatten(), read.flatten());
        prop_assert_eq!(Algorithm::parse(&inverse.to_string(), size).unwrap(), inverse);
    }

    #[test]
    fn trees_are_mirrored_and_rotated_as_their_turns(
        (size, Written { text, .. }) in sized_written(), mirror in axes(), hold in rotations()
    ) {
        let read = Algorithm::parse(&text, size).unwrap();
        prop_assert_eq!(read.mirrored(mirror).flatten(), mirrored(&read.flatten(), mirror));
        prop_assert_eq!(read.rotated(hold).flatten(), rotated(&read.flatten(), hold));
        prop_assert_eq!(read.mirrored(mirror).mirrored(mirror), read);
    }

    #[test]
    fn a_simplified_tree_does_the_same((size, Written { text, .. }) in sized_written()) {
        let read = Algorithm::parse(&text, size).unwrap();
        let short = read.simplified();
        let solved = State::solved(size);
        prop_assert!(short.len() <= read.len());
        prop_assert_eq!(solved.after(&short.flatten()), solved.after(&read.flatten()), "{} became {}", text, short);
        prop_assert_eq!(short.simplified(), short);
        prop_assert!(simplified(&read.flatten()).len() <= read.len());
    }

    #[test]
    fn brackets_are_made_from_two_algorithms(
        (size, a, b) in sizes().prop_flat_map(|size| {
            (Just(size), crate::strategies::written(size), crate::strategies::written(size))
        })
    ) {
        let [first, second] = [&a, &b].map(|written| Algorithm::parse(&written.text, size).unwrap());
        let conjugate = Algorithm::conjugate(first.clone(), second.clone()).unwrap();
        prop_assert_eq!(conjugate.to_string(), format!("[{}: {}]", a.text, b.text));
        let commutator = Algorithm::commutator(first, second).unwrap();
        prop_assert_eq!(commutator.to_string(), format!("[{}, {}]", a.text, b.text));
    }

    #[test]
    fn no_text_makes_it_panic(text in ".{0,60}", size in sizes()) {
        check_any(&text, size)?;
    }

    #[test]
    fn no_text_of_its_own_letters_makes_it_panic(
        text in "[ULFRBDulfrbdwMESmesxyzXYZ0-9'’′2 \n/()\\[\\]:,–ＲＵ２＇（）-]{0,60}", size in sizes()
    ) {
        check_any(&text, size)?;
    }

    #[test]
    fn whatever_is_read_is_printed_so_that_it_reads_back(
        text in "(([234](-[345])?)?[ULFRBDxyzMESr]w?[23]?['’]? ?|\\(|\\)2?|\\[R[:,]|\\]){0,20}", size in sizes()
    ) {
        check_any(&text, size)?;
    }
}

/// Reads what may be anything: the result is an algorithm that prints and reads back, or an error with a place.
fn check_any(text: &str, size: Size) -> Result<(), TestCaseError> {
    match Algorithm::parse(text, size) {
        Ok(read) => {
            prop_assert_eq!(Algorithm::parse(&read.to_string(), size), Ok(read.clone()));
            prop_assert_eq!(read.flatten().len(), read.len());
        }
        Err(error) => {
            let lines: Vec<&str> = text.split('\n').collect();
            prop_assert!((1..=lines.len()).contains(&error.line));
            prop_assert!((1..=lines[error.line - 1].chars().count() + 1).contains(&error.column));
            let before: usize = lines[..error.line - 1].iter().map(|line| line.len() + 1).sum();
            let within: usize =
                lines[error.line - 1].chars().take(error.column - 1).map(char::len_utf8).sum();
            prop_assert_eq!(error.offset, before + within);
            prop_assert!(!error.to_string().is_empty());
            if let ParseErrorKind::Unexpected { found, .. } = error.kind {
                prop_assert_eq!(text[error.offset..].chars().next(), found);
            }
        }
    }
    Ok(())
}

fn size(layers: u8) -> Size {
    Size::new(layers).unwrap()
}

#[test]
fn texts_that_are_read() {
    let table = [
        // WCA Regulations 12a1 to 12a4.
        (3, "F B R L U D", "F B R L U D"),
        (3, "F' B2 R' L2 U' D2", "F' B2 R' L2 U' D2"),
        (3, "Rw 2Rw", "Rw Rw"),
        (4, "3Rw Uw2 2Fw'", "3Rw Uw2 Fw'"),
        (7, "6Bw 5Lw' 4Dw2", "6Bw 5Lw' 4Dw2"),
        (2, "x y' z2", "x y' z2"),
        // WCA Regulations E2c4++: a half turn with a prime is a half turn.
        (3, "R2' Uw2' x2'", "R2 Uw2 x2"),
        // Common practice, no source: all that follows.
        (3, "U3 U3' U1", "U' U U"),
        (3, "r u' f2 l b d", "Rw Uw' Fw2 Lw Bw Dw"),
        (5, "3r' 2u 4l2", "3Rw' Uw 4Lw2"),
        (3, "RUR’U′", "R U R' U'"),
        (3, "R`U‘Fʹ", "R' U' F'"),
        (3, "M E' S2 M'", "M E' S2 M'"),
        (5, "M", "M"),
        (3, "R U // first block\nR' // and back\n//\nU'", "R U R' U'"),
        (3, "R// close by", "R"),
        (3, "R\tU\r\nF\u{a0}D", "R U F D"),
        (3, "", ""),
        (3, " // nothing\n", ""),
        (3, "()", ""),
        (3, "(R U)3", "R U R U R U"),
        (3, "(R U)'", "U' R'"),
        (3, "(R U)2'", "U' R' U' R'"),
        (3, "(R U)1", "R U"),
        (3, "((R)2 U)2", "R R U R R U"),
        (3, "[R, U]", "R U R' U'"),
        (3, "[R,U]'", "U R U' R'"),
        (3, "[F:R2]", "F R2 F'"),
        (3, "[F:R2]2'", "F R2 F' F R2 F'"),
        (3, "[U: [R U R', D]]", "U R U R' D R U' R' D' U'"),
        (3, "[R // set-up\n: U // turn\n]", "R U R'"),
        (3, "[:R][,]", "R"),
        (3, "(RU)2F", "R U R U F"),
        (3, "2R 2U2'", "2R 2U2"),
        (4, "2R 3U' 2-3F2", "2R 3U' 2-3F2"),
        (7, "2-6B 3-3D 02L", "2-6B 3D 2L"),
        (5, "2–3R 3‑4U", "2-3R 3-4U"),
        // What stands right behind a turn or a bracket belongs to it; behind a space it begins a turn.
        (4, "R2R", "R2 R"),
        (4, "R 2R", "R 2R"),
        (4, "(R U)2R", "R U R U R"),
        (4, "(R U) 2R", "R U 2R"),
        (4, "(R U)2 2R", "R U R U 2R"),
        (4, "2R2U", "2R2 U"),
        (4, "2R 2U'(2R)", "2R 2U' 2R"),
        (3, "［Ｒ：Ｕ＇］２　Ｍ／／…", "R U' R' R U' R' M"),
        (3, "R´ U＇", "R' U'"),
    ];
    for (layers, written, meant) in table {
        match Algorithm::parse(written, size(layers)) {
            Ok(read) => assert_eq!(text(&read.flatten()), meant, "{written}"),
            Err(error) => panic!("{written}: {error}"),
        }
    }
}

/// Size, text, line and column of the mistake, and the sentence that tells it.
type Refused = (u8, &'static str, usize, usize, &'static str);

fn refused(table: &[Refused]) {
    for &(layers, written, line, column, sentence) in table {
        match Algorithm::parse(written, size(layers)) {
            Ok(read) => panic!("{written} was read as {read}"),
            Err(error) => {
                assert_eq!((error.line, error.column), (line, column), "{written}");
                assert_eq!(error.kind.to_string(), sentence, "{written}");
                assert_eq!(error.to_string(), format!("line {line}, column {column}: {sentence}"));
            }
        }
    }
}

#[test]
fn texts_that_are_refused() {
    let table = [
        (
            3,
            "R U Q",
            1,
            5,
            "`Q` stands here, but a turn (U L F R B D, wide, M E S, x y z) or an opening bracket was expected",
        ),
        (
            3,
            "R U\n  F K",
            2,
            5,
            "`K` stands here, but a turn (U L F R B D, wide, M E S, x y z) or an opening bracket was expected",
        ),
        (
            3,
            "R ’",
            1,
            3,
            "`’` stands here, but a turn (U L F R B D, wide, M E S, x y z) or an opening bracket was expected",
        ),
        (
            3,
            "R /U",
            1,
            3,
            "`/` stands here, but a turn (U L F R B D, wide, M E S, x y z) or an opening bracket was expected",
        ),
        (
            3,
            "R, U",
            1,
            2,
            "`,` stands here, but a turn (U L F R B D, wide, M E S, x y z) or an opening bracket was expected",
        ),
        (
            3,
            "R)",
            1,
            2,
            "`)` stands here, but a turn (U L F R B D, wide, M E S, x y z) or an opening bracket was expected",
        ),
        (
            3,
            "[R U]",
            1,
            5,
            "`]` stands here, but `,` or `:` between the two parts of a square bracket was expected",
        ),
        (3, "[R, U, F]", 1, 6, "`,` stands here, but a turn or `]` was expected"),
        (3, "[R, U", 1, 6, "the text ends, but a turn or `]` was expected"),
        (3, "[R, U)", 1, 6, "`)` stands here, but a turn or `]` was expected"),
        (3, "(R U]", 1, 5, "`]` stands here, but a turn or `)` was expected"),
        (3, "(R: U)", 1, 3, "`:` stands here, but a turn or `)` was expected"),
        (3, "(R U", 1, 5, "the text ends, but a turn or `)` was expected"),
        (3, "(R U)0", 1, 6, "`0` stands here, but a number of repeats, 1 or more was expected"),
        (3, "R4", 1, 2, "`4` stands here, but an amount of 1, 2 or 3 quarter turns was expected"),
        (3, "U R0", 1, 4, "`0` stands here, but an amount of 1, 2 or 3 quarter turns was expected"),
        (3, "R22", 1, 2, "`2` stands here, but an amount of 1, 2 or 3 quarter turns was expected"),
        (
            3,
            "2M",
            1,
            2,
            "`M` stands here, but a face after a number of layers (as 2R, 2-3R, 3Rw) was expected",
        ),
        (
            3,
            "R 2",
            1,
            4,
            "the text ends, but a face after a number of layers (as 2R, 2-3R, 3Rw) was expected",
        ),
        // WCA Regulations 12a2+: 1Rw is valid on no cube, 3Rw only from the 4x4 up.
        (
            4,
            "1Rw",
            1,
            1,
            "`1` stands here, but a number of layers, 2 or more (as 2R, 2-3R, 3Rw) was expected",
        ),
        (
            4,
            "U 0Rw",
            1,
            3,
            "`0` stands here, but a number of layers, 2 or more (as 2R, 2-3R, 3Rw) was expected",
        ),
        (3, "3Rw", 1, 1, "3Rw: 3 layers are too many to turn on a 3x3; at most 2 turn together"),
        (2, "3Rw", 1, 1, "3Rw: a 2x2 has no wide turns; to turn both layers is a rotation (x y z)"),
        (2, "R r", 1, 3, "Rw: a 2x2 has no wide turns; to turn both layers is a rotation (x y z)"),
        (3, "R X", 1, 3, "`X` is no turn; `x` is"),
        (3, "m", 1, 1, "`m` is no turn; `M` is"),
        (2, "R M", 1, 3, "M: a 2x2 has no middle layer, so it has no slice turns"),
        (4, "[R: S2]", 1, 5, "S2: a 4x4 has no middle layer, so it has no slice turns"),
    ];
    refused(&table);
}

#[test]
fn inner_layers_that_are_refused() {
    let table = [
        (2, "R 2R", 1, 3, "2R: a 2x2 has no inner layers"),
        (3, "3R'", 1, 1, "3R': the only inner layer of a 3x3 is layer 2"),
        (3, "2-3R", 1, 1, "2-3R: the only inner layer of a 3x3 is layer 2"),
        (4, "U 1R", 1, 3, "1R: the inner layers of a 4x4 are 2 to 3"),
        (4, "0R", 1, 1, "0R: the inner layers of a 4x4 are 2 to 3"),
        (7, "7R2", 1, 1, "7R2: the inner layers of a 7x7 are 2 to 6"),
        (5, "1-3R", 1, 1, "1-3R: the inner layers of a 5x5 are 2 to 4"),
        (5, "3-2R", 1, 1, "3-2R: of inner layers the one nearer to the face is named first, as in 2-3R"),
        (
            5,
            "2-3Rw",
            1,
            5,
            "`w` stands here, but a turn (U L F R B D, wide, M E S, x y z) or an opening bracket was expected",
        ),
        (
            5,
            "2-3r",
            1,
            4,
            "`r` stands here, but a face after a number of layers (as 2R, 2-3R, 3Rw) was expected",
        ),
        (
            5,
            "2-R",
            1,
            3,
            "`R` stands here, but a number of layers, 2 or more (as 2R, 2-3R, 3Rw) was expected",
        ),
        (
            5,
            "R2-3R",
            1,
            3,
            "`-` stands here, but a turn (U L F R B D, wide, M E S, x y z) or an opening bracket was expected",
        ),
        (
            4,
            "R'2U",
            1,
            3,
            "`2` stands here, but a space between a prime and a number of layers (`R' 2U`; a half turn is `R2'`) was expected",
        ),
        (
            4,
            "(R)'２Ｕ",
            1,
            5,
            "`２` stands here, but a space between a prime and a number of layers (`R' 2U`; a half turn is `R2'`) was expected",
        ),
    ];
    refused(&table);
}

#[test]
fn more_layers_than_can_be_counted_are_refused() {
    for layers in ["256", "300", "4294967296", "99999999999999999999"] {
        for turn in [format!("{layers}Rw"), format!("{layers}R"), format!("2-{layers}R")] {
            let error = Algorithm::parse(&turn, size(7)).unwrap_err();
            assert!(matches!(error.kind, ParseErrorKind::Unexpected { expected: Expected::Layers, .. }));
        }
    }
}

/// Common practice, no source: some write `r` for the inner layer alone.
#[test]
fn a_lower_case_face_may_be_an_inner_layer() {
    let table = [
        (4, "r u' f2", "2R 2U' 2F2"),
        (5, "Rw r 3r 2-3r'", "Rw 2R 3R 2-3R'"),
        (7, "6b [r: U]", "6B 2R U 2R'"),
        (3, "r u'", "Rw Uw'"),
        (3, "2r", "Rw"),
    ];
    for (layers, written, meant) in table {
        let read = Algorithm::parse_as(written, size(layers), LowerCase::Inner).unwrap();
        assert_eq!(text(&read.flatten()), meant, "{written}");
        assert_eq!(Algorithm::parse(&read.to_string(), size(layers)).unwrap(), read);
    }
    let refused = |layers, written| {
        Algorithm::parse_as(written, size(layers), LowerCase::Inner).unwrap_err().kind.to_string()
    };
    assert_eq!(refused(2, "r"), "Rw: a 2x2 has no wide turns; to turn both layers is a rotation (x y z)");
    assert_eq!(refused(4, "4r"), "4R: the inner layers of a 4x4 are 2 to 3");
}

#[test]
fn an_algorithm_fits_another_size_if_that_has_its_turns() {
    let read = |text: &str, layers| Algorithm::parse(text, size(layers)).unwrap();
    let written = read("(R [2R: Uw])2 2-3F", 5);
    for layers in [5, 6, 7] {
        let again = written.on(size(layers)).unwrap();
        assert_eq!((again.size(), again.to_string()), (size(layers), written.to_string()));
        assert_eq!(again, read(&written.to_string(), layers));
    }
    for (written, made, layers, missing) in
        [("R M", 3, 4, "M"), ("(U [R, 2-3D'])", 4, 3, "2-3D'"), ("R [Fw: U]", 3, 2, "Fw")]
    {
        let no = read(written, made).on(size(layers)).unwrap_err();
        assert_eq!((no.turn.to_string().as_str(), no.size), (missing, size(layers)));
    }
}

proptest! {
    #[test]
    fn on_another_size_is_what_its_text_is_there((_, Written { text, .. }) in sized_written(), size in sizes(), other in sizes()) {
        if let Ok(read) = Algorithm::parse(&text, size) {
            let again = Algorithm::parse(&text, other);
            match read.on(other) {
                Ok(fits) => prop_assert_eq!(Ok(fits), again),
                Err(no) => prop_assert_eq!(again.unwrap_err().kind, ParseErrorKind::NoSuchTurn(no)),
            }
        }
    }
}

#[test]
fn long_texts_are_refused_before_they_are_read() {
    let longest = " ".repeat(MAX_TEXT);
    assert!(Algorithm::parse(&longest, Size::THREE).unwrap().is_empty());
    let error = Algorithm::parse(&format!("{longest}Q"), Size::THREE).unwrap_err();
    assert_eq!(error.kind, ParseErrorKind::TooLong(MAX_TEXT + 1));
}

#[test]
fn texts_that_stand_for_too_many_turns_are_refused() {
    assert_eq!(Algorithm::parse("(R U)50000", Size::THREE).unwrap().flatten().len(), MAX_MOVES);
    assert_eq!(Algorithm::parse("[(R)25000, (U)25000]", Size::THREE).unwrap().flatten().len(), MAX_MOVES);
    for (written, column) in [
        ("(R U)50001", 1),
        ("F ((((R U)999)999)999)999", 5),
        ("R (R U)50000", 3),
        ("(R U)50000 R", 12),
        ("(R)4294967295", 1),
        ("(R)99999999999999999999999", 1),
        ("[(R)25000, (U)25001]", 1),
        ("[(R)25000: (U)50001]", 1),
        ("(((R)60000)'(R)60000)", 13),
    ] {
        let error = Algorithm::parse(written, Size::THREE).unwrap_err();
        assert_eq!(error.kind, ParseErrorKind::TooManyTurns, "{written}");
        assert_eq!((error.line, error.column), (1, column), "{written}");
    }
    // Nothing, however often, is nothing; only the turns are counted.
    let nothing = Algorithm::parse("(()4294967295 [R2:]' [,]99999999999)1", Size::THREE);
    assert_eq!(nothing.unwrap().len(), 2);
    let nothing = Algorithm::parse("(()4294967295)4294967295", Size::THREE).unwrap();
    assert!(nothing.flatten().is_empty());
}

#[test]
fn brackets_nest_to_a_limit() {
    let nested = |depth: usize| format!("{}R{}", "(".repeat(depth), ")".repeat(depth));
    assert_eq!(text(&Algorithm::parse(&nested(MAX_DEPTH), Size::THREE).unwrap().flatten()), "R");
    let error = Algorithm::parse(&nested(MAX_DEPTH + 1), Size::THREE).unwrap_err();
    assert_eq!((error.kind, error.column), (ParseErrorKind::TooDeep, MAX_DEPTH + 1));
    let error = Algorithm::parse(&"[".repeat(MAX_TEXT), Size::THREE).unwrap_err();
    assert_eq!(error.kind, ParseErrorKind::TooDeep);
    let deepest = Algorithm::parse(&nested(MAX_DEPTH), Size::THREE).unwrap();
    let single = Algorithm::parse("U", Size::THREE).unwrap();
    assert_eq!(Algorithm::conjugate(deepest, single), None);
}

#[test]
fn brackets_that_would_be_too_long_or_of_two_sizes_are_not_made() {
    let long = Algorithm::parse("(R)50000", Size::THREE).unwrap();
    let single = Algorithm::parse("U", Size::THREE).unwrap();
    assert_eq!(Algorithm::commutator(long.clone(), single.clone()), None);
    assert_eq!(Algorithm::conjugate(long, single.clone()), None);
    let other = Algorithm::parse("U", Size::TWO).unwrap();
    assert_eq!(Algorithm::commutator(single, other), None);
}

#[test]
fn errors_say_what_was_expected_as_data_too() {
    let error = Algorithm::parse("[R U]", Size::THREE).unwrap_err();
    assert_eq!(error.kind, ParseErrorKind::Unexpected { found: Some(']'), expected: Expected::Separator });
    let error = Algorithm::parse("R\nM", Size::TWO).unwrap_err();
    let ParseErrorKind::NoSuchTurn(no) = error.kind else { panic!("{error}") };
    assert_eq!((no.turn.to_string().as_str(), no.size, no.lack), ("M", Size::TWO, Lack::Middle));
    assert_eq!(error.offset, 2);
}

#[test]
fn mirrors_of_known_algorithms() {
    // Common practice, no source: left hand for right hand.
    let right = Algorithm::parse("R U R' U' M S2 x y", Size::THREE).unwrap();
    assert_eq!(right.mirrored(Axis::X).to_string(), "L' U' L U M S2 x y'");
}
