//! Colours read back as states, and what is said of colours that turning cannot reach.

use crate::strategies::{even_states, odd_states, states, states_with_orbit, stickers};
use cube::{Face, FaceletError, Facelets, Fault, Orbit, Physical, Size, State, Sticker};
use proptest::prelude::*;
use proptest::sample::{Index, select};

fn colour(facelets: &Facelets, orbit: Orbit, place: Sticker) -> Face {
    let (row, column) = Facelets::cell_of(facelets.size(), orbit, place);
    facelets.get(place.face(), row, column).unwrap()
}

fn paint(facelets: &mut Facelets, orbit: Orbit, place: Sticker, colour: Face) {
    let (row, column) = Facelets::cell_of(facelets.size(), orbit, place);
    facelets.set(place.face(), row, column, colour);
}

/// What one sees after the piece at a place was turned by hand, so many stickers clockwise.
fn turned_by_hand(state: &State, orbit: Orbit, place: Sticker, clockwise: u8) -> Facelets {
    let before = state.facelets();
    let mut after = before.clone();
    for sticker in orbit.stickers_from(place) {
        paint(&mut after, orbit, orbit.turned(sticker, clockwise), colour(&before, orbit, sticker));
    }
    after
}

/// What one sees after two pieces were put back in each other's place.
fn exchanged_by_hand(state: &State, orbit: Orbit, a: Sticker, b: Sticker) -> Facelets {
    let before = state.facelets();
    let mut after = before.clone();
    for steps in 0..orbit.stickers_per_piece() {
        let (a, b) = (orbit.turned(a, steps), orbit.turned(b, steps));
        paint(&mut after, orbit, a, colour(&before, orbit, b));
        paint(&mut after, orbit, b, colour(&before, orbit, a));
    }
    after
}

/// The orbits whose pieces can be told apart by their colours and show all of them.
fn solid(state: &State) -> Vec<Orbit> {
    Orbit::of(state.size()).iter().copied().filter(|orbit| orbit.stickers_per_piece() > 1).collect()
}

proptest! {
    #[test]
    fn colours_read_back(state in states()) {
        let seen = state.facelets();
        let read = seen.state().unwrap();
        prop_assert!(read.looks_like(&state));
        prop_assert_eq!(read.facelets(), seen.clone());
        for &orbit in Orbit::of(state.size()) {
            if !orbit.looks_alike() {
                prop_assert_eq!(read.orbit(orbit), state.orbit(orbit));
            }
        }
        prop_assert_eq!(seen.to_string().parse::<Facelets>(), Ok(seen));
    }

    #[test]
    fn colours_print_and_read_in_any_alphabet(state in states()) {
        let alphabet = ['w', 'ö', '3', '🟥', '-', 'B'];
        let seen = state.facelets();
        prop_assert_eq!(Facelets::parse(&seen.text(alphabet), alphabet), Ok(seen.clone()));
        let n = state.size().layers() as usize;
        let faces = Face::ALL.map(|face| {
            let row = |row: &[Face]| row.iter().map(|colour| alphabet[colour.index()]).collect::<String>();
            seen.face(face).chunks(n).map(row).collect::<Vec<_>>().join("\r\n ")
        });
        let read = Facelets::from_faces(faces.each_ref().map(String::as_str), alphabet);
        prop_assert_eq!(read, Ok(seen));
    }

    #[test]
    fn stickers_of_a_state_show_their_colours(((state, orbit), place) in (states_with_orbit(), stickers())) {
        let seen = state.facelets();
        prop_assert_eq!(colour(&seen, orbit, place), state.at(orbit, place).face());
        let (row, column) = Facelets::cell_of(state.size(), orbit, place);
        prop_assert_eq!(
            Facelets::place(state.size(), place.face(), row, column), Some((orbit, place, false))
        );
    }

    #[test]
    fn a_corner_turned_by_hand_is_found(state in states(), place in stickers(), clockwise in 1..=2u8) {
        let seen = turned_by_hand(&state, Orbit::Corner, place, clockwise);
        let no = seen.state().unwrap_err();
        let Some(Physical::CornerTwisted { clockwise: way, suspects }) = no.physical else {
            return Err(TestCaseError::fail(format!("{no}")));
        };
        prop_assert_eq!(way, clockwise == 1);
        // Had it been at home, it is among the suspects.
        let home = state.named_in(state.core());
        if home.at(Orbit::Corner, place) == place {
            prop_assert!(suspects.contains(&Orbit::Corner.reference(Orbit::Corner.piece(place))));
        }
        prop_assert_eq!(no.faults.len(), 1);
    }

    #[test]
    fn on_a_solved_cube_the_turned_corner_is_the_one_suspect(
        size in crate::strategies::sizes(), place in stickers(), clockwise in 1..=2u8
    ) {
        let seen = turned_by_hand(&State::solved(size), Orbit::Corner, place, clockwise);
        let no = seen.state().unwrap_err();
        let suspects = vec![Orbit::Corner.reference(Orbit::Corner.piece(place))];
        prop_assert_eq!(no.physical.clone(), Some(Physical::CornerTwisted { clockwise: clockwise == 1, suspects }));
        prop_assert!(no.to_string().contains(Orbit::Corner.piece_name(place)), "{}", no);
    }

    #[test]
    fn a_midge_flipped_by_hand_is_found(state in odd_states(), place in stickers()) {
        let no = turned_by_hand(&state, Orbit::Midge, place, 1).state().unwrap_err();
        let Some(Physical::EdgeFlipped { suspects }) = no.physical else {
            return Err(TestCaseError::fail(format!("{no}")));
        };
        if state.named_in(state.core()).at(Orbit::Midge, place) == place {
            prop_assert!(suspects.contains(&Orbit::Midge.reference(Orbit::Midge.piece(place))));
        }
        for suspect in suspects {
            let name = Orbit::Midge.piece_name(suspect);
            prop_assert!(Unreached(&no.faults).names(name));
        }
    }

    #[test]
    fn two_pieces_exchanged_by_hand_are_found(
        state in odd_states(), corners in any::<bool>(), a in stickers(), b in stickers()
    ) {
        let orbit = if corners { Orbit::Corner } else { Orbit::Midge };
        // References lie on references, so that nothing is turned besides.
        let [a, b] = [a, b].map(|sticker| orbit.reference(orbit.piece(sticker)));
        prop_assume!(a != b);
        let no = exchanged_by_hand(&state, orbit, a, b).state().unwrap_err();
        let Some(Physical::PiecesExchanged { suspects }) = no.physical else {
            return Err(TestCaseError::fail(format!("{no}")));
        };
        let home = state.named_in(state.core());
        if orbit.piece(home.at(orbit, a)) == orbit.piece(a) && orbit.piece(home.at(orbit, b)) == orbit.piece(b) {
            let (low, high) = if orbit.piece(a) < orbit.piece(b) { (a, b) } else { (b, a) };
            prop_assert!(suspects.contains(&(orbit, low, high)));
        }
    }

    #[test]
    fn two_pieces_put_back_in_each_others_place_and_turned_are_found(
        state in odd_states(), corners in any::<bool>(), a in stickers(), b in stickers(), steps in 1..=2u8
    ) {
        let orbit = if corners { Orbit::Corner } else { Orbit::Midge };
        prop_assume!(orbit.piece(a) != orbit.piece(b));
        let [a, b] = [a, b].map(|sticker| orbit.reference(orbit.piece(sticker)));
        let exchanged = exchanged_by_hand(&state, orbit, a, b);
        let mut seen = exchanged.clone();
        for sticker in orbit.stickers_from(a) {
            let to = orbit.turned(sticker, if corners { steps } else { 1 });
            paint(&mut seen, orbit, to, colour(&exchanged, orbit, sticker));
        }
        match seen.state().unwrap_err().physical {
            Some(Physical::ExchangedAndTurned { orbit: found, .. }) => prop_assert_eq!(found, orbit),
            other => prop_assert!(false, "{other:?}"),
        }
    }

    #[test]
    fn two_stickers_of_a_corner_exchanged_are_found(state in states(), place in stickers()) {
        let orbit = Orbit::Corner;
        let other = orbit.turned(place, 1);
        let before = state.facelets();
        let mut seen = before.clone();
        paint(&mut seen, orbit, place, colour(&before, orbit, other));
        paint(&mut seen, orbit, other, colour(&before, orbit, place));
        let no = seen.state().unwrap_err();
        prop_assert_eq!(no.physical, Some(Physical::StickersExchanged { places: [place, other] }));
    }

    #[test]
    fn on_even_sizes_two_corners_may_be_exchanged(state in even_states(), a in stickers(), b in stickers()) {
        // Common practice, no source: without midges nothing fixes the parity of the corners.
        let [a, b] = [a, b].map(|sticker| Orbit::Corner.reference(Orbit::Corner.piece(sticker)));
        prop_assume!(a != b);
        let seen = exchanged_by_hand(&state, Orbit::Corner, a, b);
        prop_assert_eq!(seen.state().map(|state| state.facelets()), Ok(seen));
    }

    #[test]
    fn a_sticker_of_a_corner_or_midge_misread_is_found(
        (state, orbit) in states().prop_flat_map(|state| (Just(state), select(solid(&state)))),
        place in stickers(), other in 1..6usize
    ) {
        let mut seen = state.facelets();
        let rather = colour(&seen, orbit, place);
        let wrong = Face::ALL[(rather.index() + other) % 6];
        paint(&mut seen, orbit, place, wrong);
        let no = seen.state().unwrap_err();
        prop_assert_eq!(no.physical, Some(Physical::Misread { orbit, place, seen: wrong, rather }));
    }

    #[test]
    fn any_facelet_misread_is_among_those_that_are_named(
        state in states(), at in any::<Index>(), other in 1..6usize
    ) {
        let n = state.size().layers() as usize;
        let at = at.index(6 * n * n);
        let (face, row, column) = (Face::ALL[at / (n * n)], (at / n % n) as u8, (at % n) as u8);
        let mut seen = state.facelets();
        let rather = seen.get(face, row, column).unwrap();
        let wrong = Face::ALL[(rather.index() + other) % 6];
        seen.set(face, row, column, wrong);
        let no = seen.state().unwrap_err();
        match no.physical {
            Some(Physical::Misread { orbit, place, .. }) => {
                prop_assert_eq!(Facelets::place(state.size(), face, row, column), Some((orbit, place, false)));
            }
            Some(Physical::MisreadAmong { seen: s, rather: r, facelets }) => {
                prop_assert_eq!((s, r), (wrong, rather));
                prop_assert!(facelets.contains(&(face, row, column)));
                // Every one of them would do.
                for (face, row, column) in facelets {
                    let mut changed = seen.clone();
                    changed.set(face, row, column, rather);
                    prop_assert!(changed.state().is_ok());
                }
            }
            other => prop_assert!(false, "{no:?} {other:?}", no = no.faults),
        }
    }

    #[test]
    fn no_text_makes_it_panic(text in ".{0,80}", letters in "[ULFRBD\n ]{0,60}", exact in "[ULFRBD]{24}|[ULFRBD]{54}|[ULFRBD]{96}") {
        for text in [&text, &letters, &exact] {
            if let Ok(facelets) = text.parse::<Facelets>() {
                match facelets.state() {
                    Ok(state) => prop_assert_eq!(state.facelets(), facelets),
                    Err(no) => prop_assert!(!no.faults.is_empty() && !no.to_string().is_empty()),
                }
            }
        }
        let _ = Facelets::from_faces([&text, &letters, &exact, &text, &letters, &exact], ['U', 'L', 'F', 'R', 'B', 'D']);
    }

    #[test]
    fn stickers_mixed_at_random_read_back_or_are_refused(state in states(), swaps in prop::collection::vec((any::<Index>(), any::<Index>()), 1..4)) {
        let mut letters: Vec<char> = state.facelets().to_string().chars().collect();
        for (a, b) in swaps {
            let (a, b) = (a.index(letters.len()), b.index(letters.len()));
            letters.swap(a, b);
        }
        let seen: Facelets = letters.iter().collect::<String>().parse().unwrap();
        match seen.state() {
            Ok(read) => prop_assert_eq!(read.facelets(), seen),
            Err(no) => prop_assert!(!no.faults.is_empty()),
        }
    }
}

/// Whether a sentence about faults names a piece.
struct Unreached<'a>(&'a [Fault]);

impl Unreached<'_> {
    fn names(&self, piece: &str) -> bool {
        self.0.iter().any(|fault| fault.to_string().contains(piece))
    }
}

/// The solved 3x3 with some facelets painted: face, row, column, colour.
fn painted(size: Size, changes: &[(Face, u8, u8, Face)]) -> Facelets {
    let mut seen = State::solved(size).facelets();
    for &(face, row, column, colour) in changes {
        seen.set(face, row, column, colour);
    }
    seen
}

#[test]
fn faults_are_told_by_piece() {
    use Face::{B, D, F, L, R, U};
    let three = Size::THREE;
    let four = Size::new(4).unwrap();
    let table: [(Facelets, &str); 10] = [
        (
            painted(three, &[(U, 2, 2, D)]),
            "the colour of U occurs 8 times, not 9; the colour of D occurs 10 times, not 9; no corner has the \
             colours D R F clockwise, which UFR shows; a corner has them the other way round",
        ),
        (
            painted(three, &[(U, 1, 2, L), (L, 0, 1, R), (R, 0, 1, U)]),
            "an odd number of midges is flipped; two pieces are exchanged (in each other's places: UR and UL)",
        ),
        (
            painted(three, &[(U, 2, 1, F), (F, 0, 1, U)]),
            "an odd number of midges is flipped (in place but flipped: UF)",
        ),
        (
            painted(three, &[(U, 2, 2, F), (F, 0, 2, R), (R, 0, 0, U)]),
            "the twists of the corners do not add up: one corner is turned clockwise \
             (in place but turned this way: UFR)",
        ),
        (
            painted(three, &[(U, 2, 2, R), (F, 0, 2, U), (R, 0, 0, F)]),
            "the twists of the corners do not add up: one corner is turned counter-clockwise \
             (in place but turned this way: UFR)",
        ),
        (
            painted(three, &[(F, 0, 2, R), (R, 0, 0, F)]),
            "no corner has the colours U F R clockwise, which UFR shows; a corner has them the other way round",
        ),
        (
            painted(three, &[(F, 0, 1, R), (R, 0, 1, F)]),
            "two pieces are exchanged (in each other's places: UR and UF)",
        ),
        (
            painted(three, &[(R, 0, 1, F)]),
            "the colour of F occurs 10 times, not 9; the colour of R occurs 8 times, not 9; \
             UR and UF show the same midge, the one of UF",
        ),
        (
            painted(three, &[(U, 1, 1, F), (F, 1, 1, U)]),
            "the centres of U L F R B D show F L U R B D; the solved cube cannot be held so",
        ),
        (
            painted(four, &[(U, 1, 1, F), (B, 0, 1, D)]),
            "the colour of U occurs 15 times, not 16; the colour of F occurs 17 times, not 16; \
             the colour of B occurs 15 times, not 16; the colour of D occurs 17 times, not 16; \
             no wing has the colours D U, which BUr shows; \
             on the 24 x-centre places the colour of U occurs 3 times, not 4; \
             on the 24 x-centre places the colour of F occurs 5 times, not 4",
        ),
    ];
    for (seen, sentence) in table {
        let no = seen.state().unwrap_err();
        assert_eq!(no.to_string(), format!("turning cannot lead here: {sentence}"));
    }
}

#[test]
fn more_than_one_fault_is_a_cube_taken_apart() {
    let state = State::solved(Size::THREE);
    let ufr = Orbit::Corner.sticker("UFR").unwrap();
    let twisted = turned_by_hand(&state, Orbit::Corner, ufr, 1);
    let mut seen = twisted.clone();
    let uf = Orbit::Midge.sticker("UF").unwrap();
    paint(&mut seen, Orbit::Midge, uf, Face::F);
    paint(&mut seen, Orbit::Midge, Orbit::Midge.turned(uf, 1), Face::U);
    let no = seen.state().unwrap_err();
    assert_eq!(no.physical, Some(Physical::TakenApart));
    assert_eq!(no.faults.len(), 2);
}

#[test]
fn texts_of_colours_that_are_refused() {
    let error = "UUUU\nRRxR".parse::<Facelets>().unwrap_err();
    assert_eq!(
        error,
        FaceletError::UnknownColour {
            line: 2,
            column: 3,
            found: 'x',
            expected: ['U', 'L', 'F', 'R', 'B', 'D']
        }
    );
    assert_eq!(error.to_string(), "line 2, column 3: `x` stands for no colour; one of ULFRBD is expected");
    assert_eq!("UUUU".parse::<Facelets>(), Err(FaceletError::WrongCount(4)));
    assert_eq!("".parse::<Facelets>(), Err(FaceletError::WrongCount(0)));
    let colours = ['U', 'L', 'F', 'R', 'B', 'D'];
    let faces = |text| Facelets::from_faces(text, colours).unwrap_err().to_string();
    assert_eq!(
        faces(["UUUU", "LLLL", "FF\nFQ", "", "", ""]),
        "face F: line 2, column 2: `Q` stands for no colour; one of ULFRBD is expected"
    );
    assert_eq!(
        faces(["UUU", "", "", "", "", ""]),
        "face U has 3 facelets, but a face has 4, 9, 16, 25, 36 or 49"
    );
    assert_eq!(
        faces(["UUUU", "LLLLLLLLL", "", "", "", ""]),
        "face L has 9 facelets, but on a 2x2 a face has 4"
    );
}
