//! Letters of any script and length: what is written is read back, however it is grouped and in whatever case, and what is no
//! letter is named with its place.

use blind::{LONGEST_LETTER, LONGEST_MEMO, Letters, LettersError, SEPARATORS, UnknownLetter};
use cube::Sticker;
use proptest::prelude::*;
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;

/// Any letter that may be written: signs of any script, with those whose capitals are two signs, or look like another's.
fn letter() -> impl Strategy<Value = String> {
    let sign = prop_oneof![
        4 => "[A-Za-z0-9]",
        2 => "[ÄÖÜßẞŉǰſﬁﬀİıŞΣσςΐΰßԵև]",
        1 => "[a-zA-Zа-яА-Яα-ωΑ-ΡΣ-Ωא-תあ-んア-ン가-힣一-龥क-ह]",
        1 => "[!\"#$%&'*+<=>?@\\\\^_`{}~]",
    ];
    proptest::collection::vec(sign, 1..=4).prop_map(|signs| signs.concat())
}

/// Whether two letters may be taken for each other: the same in capitals, or in small letters.
fn alike(one: &str, other: &str) -> bool {
    one.to_uppercase() == other.to_uppercase() || one.to_lowercase() == other.to_lowercase()
}

/// A scheme of letters, no two of which may be taken for each other; half of the schemes with a sign for each letter.
fn scheme() -> impl Strategy<Value = Vec<String>> {
    (proptest::collection::vec(letter(), 120), any::<bool>()).prop_filter_map(
        "24 letters",
        |(letters, single)| {
            let mut kept: Vec<String> = Vec::new();
            for letter in letters {
                let letter = if single { letter.chars().take(1).collect() } else { letter };
                if kept.iter().all(|other| !alike(other, &letter)) {
                    kept.push(letter);
                }
            }
            kept.truncate(24);
            (kept.len() == 24).then_some(kept)
        },
    )
}

fn row() -> impl Strategy<Value = Vec<Sticker>> {
    proptest::collection::vec((0..24u8).prop_map(|number| Sticker::new(number).unwrap()), 0..40)
}

/// A text in other case, where a sign has another that is one sign.
fn cased(text: &str, rng: &mut impl Rng) -> String {
    text.chars()
        .map(|sign| {
            let other: Vec<char> =
                if rng.random() { sign.to_uppercase().collect() } else { sign.to_lowercase().collect() };
            match other[..] {
                // Both ways back, or it is another letter: the capital of the dotless i is that of the dotted one.
                [other] if alike(&sign.to_string(), &other.to_string()) => other,
                _ => sign,
            }
        })
        .collect()
}

#[test]
fn a_memo_may_be_written_in_full_width_signs() {
    let letters = Letters::default();
    assert_eq!(letters.read("（ＡＢ） ｃ，Ｄ"), letters.read("(AB) c,D"));
    assert_eq!(letters.read(&"A".repeat(LONGEST_MEMO + 1)), Err(UnknownLetter::TooLong(LONGEST_MEMO + 1)));
}

proptest! {
    #[test]
    fn what_is_spelt_is_read(texts in scheme(), row in row()) {
        let letters = Letters::new(&texts).unwrap();
        prop_assert_eq!(letters.read(&letters.spell(&row)), Ok(row.clone()), "{}", letters.spell(&row));
        for pairs in [true, false] {
            prop_assert_eq!(letters.read(&letters.grouped(&row, pairs)), Ok(row.clone()));
        }
        // Letter by letter as the scheme has them.
        let plain: String = row.iter().map(|sticker| texts[sticker.index()].as_str()).collect();
        let signs = |text: &str| text.chars().filter(|sign| *sign != '-').collect::<String>();
        prop_assert_eq!(signs(&letters.spell(&row)), plain);
        for (sticker, text) in Sticker::all().zip(&texts) {
            prop_assert_eq!(letters.of(sticker), text);
            prop_assert_eq!(letters.sticker(text), Some(sticker));
        }
    }

    #[test]
    fn grouping_and_case_say_nothing(texts in scheme(), row in row(), seed: u64) {
        let letters = Letters::new(&texts).unwrap();
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let separators: Vec<char> = SEPARATORS.chars().chain([' ', '\t', '\n', '\u{3000}']).collect();
        let mut text = String::new();
        for sticker in &row {
            text += &cased(&texts[sticker.index()], &mut rng);
            let least = usize::from(!letters.are_single());
            for _ in 0..rng.random_range(least..3) {
                text.push(*separators.choose(&mut rng).unwrap());
            }
        }
        prop_assert_eq!(letters.read(&text), Ok(row), "{}", text);
    }

    /// Signs that stand together are taken apart where that can be done in one way, and refused where it cannot.
    #[test]
    fn letters_that_stand_together_are_taken_apart_or_refused(texts in scheme(), row in row()) {
        let letters = Letters::new(&texts).unwrap();
        let text: String = row.iter().take(6).map(|sticker| texts[sticker.index()].as_str()).collect();
        let ways = ways(&text, &texts);
        let whole = texts.iter().position(|letter| alike(letter, &text));
        match letters.read(&text) {
            Ok(read) if whole.is_some() => prop_assert_eq!(read, [Sticker::new(whole.unwrap() as u8).unwrap()]),
            Ok(read) => prop_assert_eq!(vec![read.iter().map(|at| at.index()).collect::<Vec<_>>()], ways),
            Err(UnknownLetter::Ambiguous { column }) => prop_assert!(column == 1 && ways.len() > 1),
            Err(other) => prop_assert!(false, "{} in {}", other, text),
        }
    }

    #[test]
    fn a_sign_that_is_no_letter_is_named(texts in scheme(), row in row(), at in any::<proptest::sample::Index>(), sign in "[\\PC&&[^A-Za-z0-9]]") {
        let letters = Letters::new(&texts).unwrap();
        let found = sign.chars().next().unwrap();
        let part_of_a_letter = |letter: &String| letter.chars().any(|other| alike(&other.to_string(), &sign));
        // Full-width signs are read as the plain ones (Unicode, Halfwidth and Fullwidth Forms).
        prop_assume!(!('\u{ff01}'..='\u{ff5e}').contains(&found));
        prop_assume!(!texts.iter().any(part_of_a_letter) && !SEPARATORS.contains(found) && !found.is_whitespace());
        let mut words: Vec<&str> = row.iter().map(|sticker| texts[sticker.index()].as_str()).collect();
        let at = at.index(words.len() + 1);
        words.insert(at, &sign);
        let column = words[..at].iter().map(|word| word.chars().count() + 1).sum::<usize>() + 1;
        prop_assert_eq!(letters.read(&words.join(" ")), Err(UnknownLetter::NoLetter { column, found }));
    }

    #[test]
    fn no_text_makes_the_reader_stumble(texts in scheme(), text in "\\PC{0,60}") {
        let letters = Letters::new(&texts).unwrap();
        let memo = letters.read_memo(&text);
        if let Ok(read) = letters.read(&text) {
            // What are letters to the stricter reader are the same letters in a memo.
            prop_assert_eq!(memo.map(|memo| memo.letters), Ok(read.clone()));
            prop_assert_eq!(letters.read(&letters.spell(&read)), Ok(read));
        }
    }

    #[test]
    fn what_makes_no_scheme_is_named(texts in scheme(), at in 0..24usize, other in 0..24usize, wrong in "[\u{301}\u{20d7}\u{7} \t\u{3000}()\\[\\],;:./|→😀-]") {
        let with = |letter: String| {
            let mut changed = texts.clone();
            changed[at] = letter;
            Letters::new(&changed)
        };
        let sign = wrong.chars().next().unwrap();
        prop_assert_eq!(with(format!("{}{wrong}", texts[at])), Err(LettersError::NoLetter(sign)));
        prop_assert_eq!(with(wrong.clone()), Err(LettersError::NoLetter(sign)));
        prop_assert_eq!(with(String::new()), Err(LettersError::Empty));
        let long = "W".repeat(LONGEST_LETTER);
        prop_assert!(with(long.clone()).is_ok());
        prop_assert_eq!(with(format!("{long}W")), Err(LettersError::TooLong(LONGEST_LETTER + 1)));
        prop_assert_eq!(Letters::new(&texts[..at]), Err(LettersError::WrongCount(at)));
        let longer = [texts.clone(), vec!["WWWWWW".to_owned()]].concat();
        prop_assert_eq!(Letters::new(&longer), Err(LettersError::WrongCount(25)));
        if at != other {
            let [first, second] = [at.min(other), at.max(other)].map(|at| Sticker::new(at as u8).unwrap());
            let mut changed = texts.clone();
            changed[second.index()].clone_from(&texts[first.index()]);
            let letter = texts[first.index()].clone();
            let twice = LettersError::Twice { letter, stickers: [first, second] };
            prop_assert_eq!(Letters::new(&changed), Err(twice));
        }
    }
}

/// Every way to take signs apart into letters, by trying.
fn ways(text: &str, letters: &[String]) -> Vec<Vec<usize>> {
    if text.is_empty() {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for (number, letter) in letters.iter().enumerate() {
        let count = letter.chars().count();
        let (head, rest): (String, String) =
            (text.chars().take(count).collect(), text.chars().skip(count).collect());
        let same = head.chars().count() == count
            && head.chars().zip(letter.chars()).all(|(a, b)| alike(&a.to_string(), &b.to_string()));
        if same {
            all.extend(ways(&rest, letters).into_iter().map(|mut way| {
                way.insert(0, number);
                way
            }));
        }
    }
    all
}

/// The order in which a solver prefers letters: as they stand in the alphabet, whatever their case.
#[test]
fn the_order_of_letters_does_not_ask_for_their_case() {
    let mixed: Vec<String> =
        (0..24).map(|at| char::from(if at % 2 == 0 { b'X' - at } else { b'x' - at }).to_string()).collect();
    let order: Vec<usize> =
        Letters::new(&mixed).unwrap().order().iter().map(|sticker| sticker.index()).collect();
    assert_eq!(order, (0..24).rev().collect::<Vec<_>>());
    // Numbers go by their value, and before letters.
    let numbers: Vec<String> = (1..=24)
        .rev()
        .map(|number| if number > 20 { format!("{number}x") } else { number.to_string() })
        .collect();
    let order = Letters::new(&numbers).unwrap().order();
    let order: Vec<&str> = order.iter().map(|sticker| numbers[sticker.index()].as_str()).collect();
    let expected: Vec<String> = (1..=20).map(|number| number.to_string()).collect();
    assert_eq!(order[..20], expected);
    assert_eq!(order[20..], ["21x", "22x", "23x", "24x"]);
}

#[test]
fn a_memo_is_read_as_people_write_it_down() {
    let letters = Letters::default();
    let read = |text: &str| letters.read_memo(text).map(|memo| (letters.spell(&memo.letters), memo.parity));
    for text in ["JK VE GT", "JK – VE — GT!", "1. JK 2. VE 3. GT", "1) JK\n2) VE\n3) GT", "„JK“ → VE, GT"]
    {
        assert_eq!(read(text), Ok(("JKVEGT".to_owned(), false)), "{text}");
    }
    for text in ["JK VE GT parity", "JK VE GT + Parity!", "JK VE GT (Parität)"] {
        assert_eq!(read(text), Ok(("JKVEGT".to_owned(), true)), "{text}");
    }
    // A sign that may stand for a letter not known, and a number that counts nothing, are asked about.
    assert_eq!(read("JK V?"), Err(UnknownLetter::NoLetter { column: 5, found: '?' }));
    assert_eq!(read("JK 12 VE"), Err(UnknownLetter::NoLetter { column: 4, found: '1' }));
    // Where digits and such signs are letters, they are.
    let numbers: Vec<String> = (1..=23).map(|number| number.to_string()).chain(["!".to_owned()]).collect();
    let numbers = Letters::new(&numbers).unwrap();
    let memo = numbers.read_memo("1. 2 ! 3").unwrap();
    assert_eq!(numbers.spell(&memo.letters), "1-2-!-3");
}
