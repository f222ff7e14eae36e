//! States as text: printed in any spacing and read again, and every slip named at its own place.

use cube::{Face, Facelets, Orbit, Size};
use draw::{Labels, Mark, Palette, Picture, Place, Tone};
use formats::state_text::{ColourNames, Spot, StateTextError, read, write};
use proptest::prelude::*;

const USUAL: [&str; 6] = ["white", "orange", "green", "red", "blue", "yellow"];
const GERMAN: [&str; 6] = ["weiß", "orange", "grün", "rot", "blau", "gelb"];
/// Invented: one name begins another, and one could be spelled by the initials of others.
const ODD: [&str; 6] = ["ash", "ashen", "sea", "Ёж", "x", "q-z"];
const DRAWN: [char; 6] = ['W', 'O', 'G', 'R', 'B', 'Y'];

fn names(words: [&str; 6]) -> ColourNames {
    ColourNames::new(&words.map(|word| vec![word.to_owned()]), DRAWN)
}

fn languages() -> impl Strategy<Value = [&'static str; 6]> {
    prop_oneof![Just(USUAL), Just(GERMAN), Just(ODD)]
}

/// Any colours at all, whether turning can lead there or not.
fn facelets() -> impl Strategy<Value = Facelets> {
    (2..=7_u8).prop_flat_map(|layers| {
        let size = Size::new(layers).unwrap();
        prop::collection::vec(0..6_usize, size.facelets()).prop_map(move |colours| {
            Facelets::new(size, colours.into_iter().map(|colour| Face::ALL[colour]).collect()).unwrap()
        })
    })
}

fn colours(facelets: &Facelets) -> Vec<Face> {
    Face::ALL.into_iter().flat_map(|face| facelets.face(face).to_vec()).collect()
}

/// Capital or small letters by a bit.
fn cased(text: &str, capital: bool) -> String {
    if capital { text.to_uppercase() } else { text.to_lowercase() }
}

const BETWEEN: [&str; 9] = [" ", ",", ", ", ";", "  ", "\n", "\t", " / ", " | "];

/// What stands between two colours, by a number; now and then nothing.
fn between(choice: u8) -> &'static str {
    BETWEEN.get(usize::from(choice)).copied().unwrap_or("")
}

fn spot(size: Size, number: usize) -> Spot {
    let n = usize::from(size.layers());
    Spot { face: Face::ALL[number / n / n], row: (number / n % n) as u8, column: (number % n) as u8 }
}

proptest! {
    #[test]
    fn initials_in_any_spacing_are_read(
        facelets in facelets(),
        choices in prop::collection::vec((0..30_u8, any::<bool>()), 294),
    ) {
        let mut text = String::new();
        for (colour, (choice, capital)) in colours(&facelets).into_iter().zip(choices) {
            text += &cased(&DRAWN[colour.index()].to_string(), capital);
            text += between(choice);
        }
        prop_assert_eq!(read(&text, &names(USUAL)), Ok(facelets));
    }

    #[test]
    fn words_in_any_spacing_are_read(
        facelets in facelets(),
        words in languages(),
        choices in prop::collection::vec((0..9_u8, any::<bool>()), 294),
    ) {
        let mut text = String::new();
        for (colour, (choice, capital)) in colours(&facelets).into_iter().zip(choices) {
            text += &cased(words[colour.index()], capital);
            text += between(choice);
        }
        prop_assert_eq!(read(&text, &names(words)), Ok(facelets));
    }

    #[test]
    fn words_written_as_one_are_read(facelets in facelets(), german in any::<bool>()) {
        let words = if german { GERMAN } else { USUAL };
        let text: String = colours(&facelets).into_iter().map(|colour| words[colour.index()]).collect();
        prop_assert_eq!(read(&text, &names(words)), Ok(facelets));
    }

    #[test]
    fn what_is_written_is_read(facelets in facelets(), words in languages()) {
        let names = names(words);
        prop_assert_eq!(read(&write(&facelets, &names), &names), Ok(facelets));
    }

    #[test]
    fn a_wrong_sign_is_named_at_its_place(
        facelets in facelets(),
        words in languages(),
        spelled_out in any::<bool>(),
        choices in prop::collection::vec(0..9_u8, 294),
        at in any::<prop::sample::Index>(),
        wrong in "[0-9?.#*K]",
    ) {
        let all = colours(&facelets);
        let number = at.index(all.len());
        let known = names(words);
        let by_words = spelled_out || known.initials().is_none();
        let mut text = String::new();
        let mut found = String::new();
        let (mut line, mut column) = (1, 1);
        let mut place = (0, 0);
        for (index, (colour, choice)) in all.iter().zip(choices).enumerate() {
            let written = if by_words { words[colour.index()].to_owned() } else { DRAWN[colour.index()].to_string() };
            let written = if index == number {
                place = (line, column);
                // The last sign is replaced; what is left is no other colour's name.
                let kept = written.chars().count() - 1;
                found = written.chars().take(kept).chain(wrong.chars()).collect();
                found.clone()
            } else {
                written
            };
            for sign in written.chars().chain(between(choice).chars()) {
                text.push(sign);
                (line, column) = if sign == '\n' { (line + 1, 1) } else { (line, column + 1) };
            }
        }
        let error = read(&text, &known).unwrap_err();
        let StateTextError::NoColour { place: named, spot: where_to, found: said, .. } = &error else {
            return Err(TestCaseError::fail(format!("{error}")));
        };
        prop_assert_eq!((named.line, named.column), place);
        prop_assert_eq!(*where_to, Some(spot(facelets.size(), number)));
        prop_assert_eq!(said, &found);
    }

    #[test]
    fn the_face_that_lacks_a_sticker_or_has_too_many_is_named(
        facelets in facelets(),
        words in languages(),
        face in 0..6_usize,
        more in any::<bool>(),
        apart in prop::sample::select(vec!["\n", "\n\n", " ; ", ", "]),
    ) {
        let known = names(words);
        let n = usize::from(facelets.size().layers());
        let texts: Vec<String> = Face::ALL
            .into_iter()
            .enumerate()
            .map(|(index, on)| {
                let mut row: Vec<&str> = facelets.face(on).iter().map(|colour| words[colour.index()]).collect();
                if index == face && more {
                    row.push(words[0]);
                } else if index == face {
                    row.pop();
                }
                row.join(" ")
            })
            .collect();
        let count = if more { n * n + 1 } else { n * n - 1 };
        prop_assert_eq!(
            read(&texts.join(apart), &known),
            Err(StateTextError::FaceCount { size: facelets.size(), wrong: vec![(Face::ALL[face], count)] })
        );
    }

    #[test]
    fn the_row_that_lacks_a_sticker_is_named(
        facelets in facelets(),
        words in languages(),
        at in any::<prop::sample::Index>(),
        blank_lines in any::<bool>(),
    ) {
        let known = names(words);
        let size = facelets.size();
        let n = usize::from(size.layers());
        let wrong = at.index(6 * n);
        let mut text = String::new();
        for (index, row) in colours(&facelets).chunks(n).enumerate() {
            let row: Vec<&str> = row.iter().map(|colour| words[colour.index()]).collect();
            text += &row[usize::from(index == wrong)..].join(" ");
            text += if blank_lines && index % n == n - 1 { "\n\n" } else { "\n" };
        }
        let (face, row, count) = (Face::ALL[wrong / n], (wrong % n) as u8, n - 1);
        let error = read(&text, &known).unwrap_err();
        if blank_lines {
            prop_assert_eq!(error, StateTextError::FaceCount { size, wrong: vec![(face, n * n - 1)] });
        } else {
            prop_assert_eq!(error, StateTextError::RowCount { size, face, row, count });
        }
    }

    #[test]
    fn the_net_of_the_terminal_is_read_back(
        facelets in facelets(),
        words in languages(),
        lettered in any::<bool>(),
        letters in prop::collection::vec("[A-Za-z0-9ÄÖÜб]{1,2}", 24),
        marked in prop::collection::vec((0..24_usize, 0..4_u8), 0..5),
    ) {
        let size = facelets.size();
        let mut labels = Labels::none();
        if lettered {
            for &orbit in Orbit::of(size) {
                labels = labels.with(orbit, std::array::from_fn(|at| letters[at].clone()));
            }
        }
        let mut picture = Picture::new(facelets.clone(), "").labels(labels).palette(Palette::default());
        for (at, mark) in marked {
            let sticker = cube::Sticker::all().nth(at).unwrap();
            let mark = [Mark::Look, Mark::Buffer, Mark::Target, Mark::Wrong][usize::from(mark)];
            picture = picture.mark(Place::new(Orbit::Corner, sticker), mark);
        }
        let printed = picture.terminal(cube::Rotation::NONE, Tone::Plain);
        // In a language whose initials are others, a net without letters is read by these.
        let ours = names(words).initials().is_none_or(|initials| initials == DRAWN);
        if ours || lettered {
            prop_assert_eq!(read(&printed, &names(words)), Ok(facelets.clone()), "{}", printed);
        }
        let trimmed: Vec<&str> = printed.lines().map(str::trim).collect();
        if ours || lettered {
            prop_assert_eq!(read(&trimmed.join("\r\n"), &names(words)), Ok(facelets));
        }
    }

    #[test]
    fn a_wrong_sign_of_a_net_is_named_at_its_place(
        facelets in facelets(),
        cell in (0..6_usize, 0..7_u8, 0..7_u8),
        lettered in any::<bool>(),
    ) {
        let size = facelets.size();
        let n = size.layers();
        let (face, row, column) = (Face::ALL[cell.0], cell.1 % n, cell.2 % n);
        let mut labels = Labels::none();
        if lettered {
            labels = labels.with(Orbit::Corner, std::array::from_fn(|_| "x".to_owned()));
        }
        let printed = Picture::new(facelets, "").labels(labels).terminal(cube::Rotation::NONE, Tone::Plain);
        // Each group of signs is a sticker, its colour the first of them; only F's band has other faces to the left.
        let n = usize::from(n);
        let (before, down) = [(0, 0), (0, 1), (1, 1), (2, 1), (3, 1), (0, 2)][face.index()];
        let at_line = down * n + usize::from(row);
        let line: Vec<char> = printed.lines().nth(at_line).unwrap().chars().collect();
        let at_column = (0..line.len())
            .filter(|&at| line[at] != ' ' && (at == 0 || line[at - 1] == ' '))
            .nth(before * n + usize::from(column))
            .unwrap();
        let wrong: Vec<String> = printed
            .lines()
            .enumerate()
            .map(|(line, text)| {
                let change = |(at, sign)| if (line, at) == (at_line, at_column) { '?' } else { sign };
                text.chars().enumerate().map(change).collect()
            })
            .collect();
        let error = read(&wrong.join("\n"), &names(USUAL)).unwrap_err();
        let StateTextError::NoColour { place, spot, found, .. } = &error else {
            return Err(TestCaseError::fail(format!("{error}")));
        };
        prop_assert_eq!((place.line, place.column), (at_line + 1, at_column + 1));
        prop_assert_eq!(*spot, Some(Spot { face, row, column }));
        prop_assert_eq!(found, "?");
    }

    #[test]
    fn nothing_typed_makes_it_stumble(text in "(?s).{0,200}", words in languages()) {
        let _ = read(&text, &names(words));
    }

    #[test]
    fn nothing_nearly_right_makes_it_stumble(
        parts in prop::collection::vec(
            prop_oneof!["white", "wh", "[WOGRBY]{1,9}", "ash", "ashen", "Ё", "\n", "\n\n", " ", "[,;|/<>!\\[\\]]", "x"],
            0..80,
        ),
        words in languages(),
    ) {
        let text = parts.concat();
        let names = names(words);
        if let Ok(facelets) = read(&text, &names) {
            prop_assert_eq!(read(&write(&facelets, &names), &names), Ok(facelets));
        }
    }
}

#[test]
fn a_net_drawn_by_hand_is_read() {
    let spaced = "      W W\n      W W\n O O  G G  R R  B B\n O O  G G  R R  B B\n      Y Y\n      Y Y";
    let close = "  ww\n  ww\nooggrrbb\noo gg rr bb\n  yy\n  yy\n";
    let in_words = "weiss weiß\nweiß weiß\norange orange gruen grün rot rot blau blau\n\
        orange orange grün grün rot rot blau blau\ngelb gelb\ngelb gelb";
    let solved = Ok(cube::State::solved(Size::TWO).facelets());
    assert_eq!(read(spaced, &names(USUAL)), solved);
    assert_eq!(read(close, &names(USUAL)), solved);
    // The letters of a net are the same in every language.
    assert_eq!(read(spaced, &names(GERMAN)), solved);
    assert_eq!(read(in_words, &names(GERMAN)), solved);
}

#[test]
fn a_net_with_a_line_that_is_not_whole_is_told_by_its_line() {
    let net = "   W W W\n   W W W\n   W W W\nO O O G G G R R R B B B\nO O O G G R R R B B B\nO O O G G G R R R B B B\n\
        Y Y Y\nY Y Y\nY Y Y\n";
    assert_eq!(
        read(net, &names(USUAL)),
        Err(StateTextError::NetLine { size: Size::THREE, line: 5, count: 11, expected: 12 })
    );
}

#[test]
fn slips_are_told_as_people_would() {
    let said = |text: &str, words| read(text, &names(words)).unwrap_err().to_string();
    assert_eq!(said("", USUAL), "there are no colours");
    assert_eq!(
        said("weiß weiß weiß weis", GERMAN),
        "line 1, column 16: `weis` is no colour; weiß orange grün rot blau gelb are"
    );
    // Initials do not tell green from yellow here, so words are asked for.
    assert!(said("WWWW OOOO GGGG RRRR BBBB GGGG", GERMAN).contains("`WWWW` is no colour; weiß orange"));
    assert_eq!(said("WWWW OOOO GGGG", USUAL), "12 stickers fit no cube; a 2x2 has 24");
    assert_eq!(
        said("weißweißweißweis", GERMAN),
        "line 1, column 13: `weis` is no colour; weiß orange grün rot blau gelb are"
    );
    let meant = |text: &str| match read(text, &names(USUAL)) {
        Err(StateTextError::NoColour { meant, .. }) => meant,
        other => panic!("{text}: {other:?}"),
    };
    assert_eq!(meant("white whtie").as_deref(), Some("white"));
    assert_eq!(meant("white q"), None);
    assert!(matches!(read(&"W".repeat(16_385), &names(USUAL)), Err(StateTextError::Document(_))));
}
