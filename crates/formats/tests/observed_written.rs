//! What was seen after an attempt, as an independent writer writes it: read back it is the same.

use blind::Conventions;
use cube::{Face, Orbit, Rotation, Size, State, Sticker};
use diagnosis::{Observed, Seen};
use formats::observed::{Vocabulary, read};
use formats::state_text::ColourNames;
use proptest::prelude::*;

const ENGLISH: [&str; 6] = ["white", "orange", "green", "red", "blue", "yellow"];
const GERMAN: [&str; 6] = ["weiß", "orange", "grün", "rot", "blau", "gelb"];

/// Writes what was seen as a person would, by choices that a number makes; shares nothing with the reader.
struct Writer<'a> {
    conventions: &'a Conventions,
    german: bool,
    dice: u64,
}

impl Writer<'_> {
    fn below(&mut self, count: usize) -> usize {
        // Knuth's linear congruential generator, MMIX: from memory.
        self.dice = self.dice.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.dice >> 33) as usize % count
    }

    fn of(&mut self, ways: &[&str]) -> String {
        ways[self.below(ways.len())].to_owned()
    }

    /// A sticker by name, by colours or by its letter.
    fn piece(&mut self, orbit: Orbit, sticker: Sticker, heading: bool) -> String {
        let name = orbit.name(sticker).to_owned();
        match self.below(if heading { 3 } else { 2 }) {
            0 if self.below(2) == 0 => name.to_lowercase(),
            0 => name,
            1 => {
                let words = if self.german { GERMAN } else { ENGLISH };
                // The colour that a face shows is the one that was on the face which the holding brings there.
                let held = State::held(Size::THREE, self.conventions.holding).facelets();
                let colour = |letter: char| {
                    let face = Face::from_letter(letter).unwrap();
                    words[held.get(face, 1, 1).unwrap().index()]
                };
                let joint = self.of(&["-", "/", "-"]);
                name.chars().map(colour).collect::<Vec<_>>().join(&joint)
            }
            _ => self.conventions.kind(orbit).letters.of(sticker).to_owned(),
        }
    }

    fn item(&mut self, seen: &Seen, heading: bool) -> String {
        let words = |english: &[&'static str], german: &[&'static str]| {
            if self.german { german.to_vec() } else { english.to_vec() }
        };
        let edge = words(&["flipped", "is flipped", "turned"], &["gekippt", "ist gekippt", "gedreht"]);
        let either = words(&["twisted", "is turned"], &["verdreht", "ist gedreht"]);
        let clockwise =
            words(&["twisted clockwise", "cw"], &["im Uhrzeigersinn verdreht", "im Uhrzeigersinn"]);
        let counter = words(
            &["twisted counter-clockwise", "is twisted anticlockwise", "ccw"],
            &["gegen den Uhrzeigersinn verdreht", "ist gegen den Uhrzeigersinn gedreht"],
        );
        let swapped = words(&["swapped", "are exchanged"], &["vertauscht", "sind getauscht"]);
        let in_cycle = words(&["in a cycle", "cycled"], &["im Kreis", "in einem Zyklus"]);
        match seen {
            Seen::Cycle { orbit, stickers, turning } => {
                let closed = orbit.same_piece(stickers[0], stickers[stickers.len() - 1]);
                let names: Vec<String> =
                    stickers.iter().map(|&sticker| self.piece(*orbit, sticker, heading)).collect();
                if !turning && !closed && self.below(2) == 0 {
                    let joint = self.of(&[", ", " ", ", "]);
                    let list =
                        names.join(if names.iter().any(|name| name.contains('-')) { ", " } else { &joint });
                    return format!(
                        "{list} {}",
                        self.of(if names.len() == 2 { &swapped } else { &in_cycle })
                    );
                }
                let to = if self.german { " nach " } else { " to " };
                let arrow = self.of(&[">", " > ", "->", " → ", to]);
                names.join(&arrow) + if *turning { "" } else { "?" }
            }
            Seen::Turned { orbit, sticker, clockwise: way } => {
                let said = match (orbit, way) {
                    (Orbit::Midge, _) => self.of(&edge),
                    (_, None) => self.of(&either),
                    (_, Some(1)) => self.of(&clockwise),
                    _ => self.of(&counter),
                };
                format!("{} {said}", self.piece(*orbit, *sticker, heading))
            }
            Seen::Unsolved { orbit, sticker } => {
                self.piece(*orbit, *sticker, heading) + &self.of(&["", "?", ""])
            }
            Seen::Count { orbit, count } => {
                let kinds = match (orbit, self.german) {
                    (Orbit::Corner, false) => "corners",
                    (Orbit::Corner, true) => "Ecken",
                    (_, false) => "edges",
                    (_, true) => "Kanten",
                };
                let english =
                    ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
                let german =
                    ["null", "eins", "zwei", "drei", "vier", "fünf", "sechs", "sieben", "acht", "neun"];
                let word = if self.german { german } else { english }.get(*count).copied();
                let digits = count.to_string();
                let number = self.of(&[&digits, word.unwrap_or(&digits)]);
                format!("{number} {kinds}")
            }
            Seen::Unlooked { orbit } => {
                let kinds = if self.german { ["Ecken", "Kanten"] } else { ["corners", "edges"] };
                let ways =
                    if self.german { ["nicht angesehen", "unbekannt"] } else { ["not looked at", "unknown"] };
                format!("{} {}", kinds[usize::from(*orbit == Orbit::Midge)], self.of(&ways))
            }
            Seen::NothingElse if self.german => self.of(&["sonst nichts", "der Rest ist richtig"]),
            Seen::NothingElse => self.of(&["nothing else", "the rest is solved"]),
        }
    }

    fn text(&mut self, seen: &[Seen]) -> String {
        let mut text = String::new();
        let mut heading = None;
        for item in seen {
            if !text.is_empty() {
                text += &self.of(&["; ", "\n", ";"]);
            }
            let lettered = match item {
                Seen::Cycle { orbit, .. } | Seen::Turned { orbit, .. } | Seen::Unsolved { orbit, .. } => {
                    Some(*orbit)
                }
                Seen::Count { .. } | Seen::Unlooked { .. } | Seen::NothingElse => None,
            };
            if let Some(orbit) = lettered
                && heading != lettered
                && (heading.is_some() || self.below(2) == 0)
            {
                let names = if self.german { ["Ecken: ", "Kanten: "] } else { ["corners: ", "edges: "] };
                text += names[usize::from(orbit == Orbit::Midge)];
                heading = Some(orbit);
            }
            text += &self.item(item, heading.is_some() && heading == lettered);
        }
        text
    }
}

/// What may be said of a kind: some of its pieces in order, dealt out to items.
fn seen_of(orbit: Orbit, order: Vec<(usize, u8)>, kinds: Vec<u8>) -> Vec<Seen> {
    let pieces: Vec<Sticker> = orbit.all_pieces().map(|piece| orbit.reference(piece)).collect();
    let mut left = order.into_iter().map(|(piece, turn)| orbit.turned(pieces[piece], turn));
    let mut seen = Vec::new();
    for kind in kinds {
        let mut take = |count: usize| left.by_ref().take(count).collect::<Vec<_>>();
        let item = match kind {
            0..=3 => {
                let mut stickers = take(1 + usize::from(kind));
                let Some(&first) = stickers.first() else { break };
                // A cycle that comes back turned; a single piece in its place does.
                if stickers.len() == 1 || kind == 3 {
                    stickers.push(orbit.turned(first, 1));
                }
                Seen::Cycle { orbit, turning: stickers.len() % 2 == 0 || kind != 2, stickers }
            }
            4 | 5 => {
                let stickers = take(usize::from(kind) - 2);
                if stickers.len() < 2 {
                    break;
                }
                Seen::Cycle { orbit, stickers, turning: false }
            }
            6 => match (take(1).first(), orbit) {
                (Some(&sticker), Orbit::Midge) => Seen::Turned { orbit, sticker, clockwise: Some(1) },
                (Some(&sticker), _) => {
                    let clockwise = [None, Some(1), Some(2)][sticker.index() % 3];
                    Seen::Turned { orbit, sticker, clockwise }
                }
                _ => break,
            },
            _ => match take(1).first() {
                Some(&sticker) => Seen::Unsolved { orbit, sticker },
                None => break,
            },
        };
        seen.push(item);
    }
    seen
}

fn some_seen(orbit: Orbit) -> impl Strategy<Value = Vec<Seen>> {
    let count = orbit.pieces() as usize;
    let order = Just((0..count).collect::<Vec<_>>()).prop_shuffle();
    let turns = prop::collection::vec(0..3u8, count);
    let pieces = (order, turns, prop::collection::vec(0..8u8, 0..5))
        .prop_map(move |(order, turns, kinds)| seen_of(orbit, order.into_iter().zip(turns).collect(), kinds));
    let counted = (1..=count).prop_map(move |count| vec![Seen::Count { orbit, count }]);
    prop_oneof![4 => pieces, 1 => counted, 1 => Just(Vec::new())]
}

/// Schemes of one sign a letter, and of syllables.
fn scheme() -> impl Strategy<Value = Vec<String>> {
    let signs =
        Just("ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÜ".chars().map(|sign| sign.to_string()).collect::<Vec<_>>());
    let syllables = Just(
        "BDGKLMNPRST"
            .chars()
            .flat_map(|sign| ["a", "e", "u"].map(|vowel| format!("{sign}{vowel}")))
            .collect::<Vec<_>>(),
    );
    let numbers = Just((1..=30).map(|number| number.to_string()).collect::<Vec<_>>());
    prop_oneof![3 => signs, 1 => syllables, 1 => numbers].prop_shuffle().prop_map(|mut all| {
        // What is a sticker's name is no letter where stickers are read.
        let named = |text: &String| {
            let upper = text.to_uppercase();
            Orbit::Midge.sticker(&upper).is_some() || Orbit::Corner.sticker(&upper).is_some()
        };
        all.retain(|letter| !named(letter));
        all.truncate(24);
        all
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn what_is_written_is_read_back(
        corners in some_seen(Orbit::Corner),
        edges in some_seen(Orbit::Midge),
        schemes in (scheme(), scheme()),
        hold in 0..24usize,
        german: bool,
        closing in 0..4u8,
        dice: u64,
    ) {
        let mut conventions = Conventions { holding: Rotation::all().nth(hold).unwrap(), ..Conventions::default() };
        conventions.kind_mut(Orbit::Corner).letters = blind::Letters::new(&schemes.0).unwrap();
        conventions.kind_mut(Orbit::Midge).letters = blind::Letters::new(&schemes.1).unwrap();
        let mut seen = [corners.clone(), edges.clone()].concat();
        prop_assume!(!seen.is_empty());
        if closing % 2 == 1 && (corners.is_empty() || edges.is_empty()) {
            seen.push(Seen::Unlooked { orbit: if corners.is_empty() { Orbit::Corner } else { Orbit::Midge } });
        }
        if closing / 2 == 1 {
            seen.push(Seen::NothingElse);
        }
        let text = Writer { conventions: &conventions, german, dice }.text(&seen);
        let words = if german { GERMAN } else { ENGLISH };
        let colours = ColourNames::new(&words.map(|word| vec![word.to_owned()]), ['W', 'O', 'G', 'R', 'B', 'Y']);
        let reading = Vocabulary { size: Size::THREE, conventions: &conventions, colours: &colours };
        prop_assert_eq!(read(&text, &reading), Ok(Observed::Pieces(seen)), "{}", text);
    }
}
