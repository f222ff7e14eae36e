//! Targets that read texts.

use blind::{Conventions, Letters};
use cube::{Algorithm, LowerCase, Size, State};
use formats::sheet::{Reading, TakenIn};
use formats::state_text::ColourNames;
use formats::{Document, ease, link, observed, records, slips, state_text, timings};
use search::ease::Model;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use voice::{Language, Voice};

/// The text of the bytes, and a number taken from the first of them.
fn text(bytes: &[u8]) -> Option<(u8, &str)> {
    let (&first, rest) = bytes.split_first()?;
    Some((first, std::str::from_utf8(rest).ok()?))
}

fn size(number: u8) -> Size {
    Size::ALL[usize::from(number) % Size::ALL.len()]
}

/// The voices of all languages, made once.
fn voices() -> &'static [Voice; 2] {
    static VOICES: OnceLock<[Voice; 2]> = OnceLock::new();
    VOICES.get_or_init(|| Language::ALL.map(Voice::new))
}

/// The voice that a number chooses.
fn voice(number: u8) -> &'static Voice {
    let voices = voices();
    &voices[usize::from(number) % voices.len()]
}

pub(crate) fn notation(bytes: &[u8]) {
    let Some((number, text)) = text(bytes) else { return };
    let (size, lower) = (size(number), LowerCase::ALL[usize::from(number / 6 % 2)]);
    match Algorithm::parse_as(text, size, lower) {
        Ok(read) => {
            let written = read.to_string();
            assert_eq!(Algorithm::parse(&written, size).as_ref(), Ok(&read), "{text:?} as {written:?}");
            assert_eq!(read.flatten().len(), read.len());
        }
        Err(error) => {
            for voice in voices() {
                assert!(voice.parse_error(&error).len() < 1000);
            }
        }
    }
}

pub(crate) fn scramble(bytes: &[u8]) {
    let Some((number, text)) = text(bytes) else { return };
    let conventions = Conventions::default();
    let size = size(number);
    if let Ok(read) = conventions.moves(text, size) {
        let turns = read.flatten();
        // Long ones say no more than their beginning.
        let state = State::solved(size).after(&turns[..turns.len().min(200)]);
        // Pieces that look alike may have changed places.
        let seen = state.facelets();
        assert_eq!(seen.state().ok().map(|state| state.facelets()), Some(seen), "{text:?}");
    }
}

pub(crate) fn state(bytes: &[u8]) {
    let Some((number, text)) = text(bytes) else { return };
    let conventions = Conventions::default();
    let voice = voice(number);
    let names: ColourNames = voice.colour_names(&conventions);
    match state_text::read(text, &names) {
        Ok(facelets) => {
            assert_eq!(
                state_text::read(&state_text::write(&facelets, &names), &names).as_ref(),
                Ok(&facelets)
            );
            if let Err(error) = facelets.state() {
                let _ = voice.unreachable(&error, &conventions);
            }
        }
        Err(error) => assert!(voice.state_text_error(&error).len() < 5000),
    }
}

pub(crate) fn conventions(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    match formats::conventions::read_either(text) {
        Ok(read) => {
            let written = formats::conventions::write(&read);
            assert_eq!(formats::conventions::read(&written).as_ref(), Ok(&read), "{written}");
            let json = formats::conventions::to_json(&read);
            assert_eq!(formats::conventions::from_json(&json).as_ref(), Ok(&read), "{json}");
        }
        Err(error) => {
            for voice in voices() {
                let _ = voice.conventions_error(&error);
            }
        }
    }
}

pub(crate) fn condition(bytes: &[u8]) {
    let Some((number, text)) = text(bytes) else { return };
    let conventions = Conventions::default();
    let size = size(number);
    match formats::conditions::read(text, size, &conventions) {
        Ok(read) => {
            let written = read.to_string();
            let again = formats::conditions::read(&written, size, &conventions);
            assert_eq!(again.map(|again| again.to_string()), Ok(written), "{text:?}");
        }
        Err(error) => {
            for voice in voices() {
                let _ = voice.condition_error(&error);
            }
        }
    }
}

pub(crate) fn memo(bytes: &[u8]) {
    let Some((number, text)) = text(bytes) else { return };
    let syllables: Vec<String> =
        "BDFGKLMNPRST".chars().flat_map(|sign| [format!("{sign}a"), format!("{sign}o")]).collect();
    let letters = match number % 2 {
        0 => Letters::default(),
        _ => Letters::new(&syllables).unwrap_or_default(),
    };
    let _ = letters.read_memo(text);
    match letters.read(text) {
        Ok(read) => assert_eq!(letters.read(&letters.spell(&read)), Ok(read)),
        Err(error) => {
            for voice in voices() {
                let _ = voice.unknown_letter(cube::Orbit::Corner, &letters, &error);
            }
        }
    }
}

pub(crate) fn observed(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    // Texts are whole; their length chooses the rest.
    let number = bytes.len() as u8;
    let conventions = Conventions::default();
    let voice = voice(number);
    let colours = voice.colour_names(&conventions);
    let size = size(number / 2);
    match observed::read(text, &observed::Vocabulary { size, conventions: &conventions, colours: &colours }) {
        Ok(read) => drop(read.facelets(size, conventions.holding)),
        Err(error) => assert!(voice.observed_error(&error).len() < 5000),
    }
}

/// A sheet as it was typed or pasted.
pub(crate) fn sheet(bytes: &[u8]) {
    let Some((number, text)) = text(bytes) else { return };
    take_in(number, text);
}

/// A sheet as the bytes of a file.
pub(crate) fn sheet_file(bytes: &[u8]) {
    let Some((&number, rest)) = bytes.split_first() else { return };
    if let Some((text, _)) = formats::text::read(rest) {
        take_in(number, &text);
    }
}

fn take_in(number: u8, text: &str) {
    let conventions = Conventions::default();
    let mut reading = Reading::new(&conventions);
    reading.kind = [None, Some(cube::Orbit::Corner), Some(cube::Orbit::Midge)][usize::from(number % 3)];
    reading.buffer = (number / 3 % 2 == 1).then(|| "UFR".to_owned());
    reading.rows_first = [None, Some(true), Some(false)][usize::from(number / 6 % 3)];
    let voice = voice(number / 18);
    match formats::sheet::take_in(text, &reading) {
        Ok(TakenIn { sheet, remarks }) => {
            let report = sheet.check();
            assert_eq!(report.verdicts.len(), sheet.rows().len());
            let _ = voice.sheet_account(&sheet, &report, &remarks);
            let kept = formats::sheet::keep(&sheet);
            assert_eq!(formats::sheet::kept(&kept).as_ref(), Ok(&sheet), "{text:?}");
            let list = formats::sheet::to_csv(&sheet, &conventions);
            let again = formats::sheet::read(&list, &Reading::new(&conventions));
            let again = again.map(|again| formats::sheet::to_csv(&again, &conventions));
            assert_eq!(again, Ok(list), "{text:?}");
        }
        Err(error) => assert!(voice.sheet_error(&error).len() < 5000),
    }
}

pub(crate) fn kept_sheet(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    if let Ok(sheet) = formats::sheet::kept(text) {
        let _ = sheet.account(&sheet.check());
        assert_eq!(formats::sheet::kept(&formats::sheet::keep(&sheet)).as_ref(), Ok(&sheet));
    }
}

/// Costs of turning, slips and timings.
pub(crate) fn hands(bytes: &[u8]) {
    let Some((number, text)) = text(bytes) else { return };
    match number % 4 {
        0 => drop(ease::read(text)),
        1 => drop(ease::read_costs(text, &Model::built_in())),
        2 => drop(slips::read(text)),
        _ => drop(timings::read(text)),
    }
}

pub(crate) fn link(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let pairs = text.split('&').filter_map(|pair| pair.split_once('='));
    let carried: BTreeMap<String, String> =
        pairs.map(|(name, value)| (name.to_owned(), value.to_owned())).collect();
    if let Ok(lesson) = link::read(&carried) {
        let _ = link::write(&lesson);
    }
}

pub(crate) fn record(bytes: &[u8]) {
    let Some((number, text)) = text(bytes) else { return };
    let document = Document::ALL[usize::from(number) % Document::ALL.len()];
    if let Ok(renewed) = records::migrated(document, text) {
        // What is of the present form stays as it is.
        assert_eq!(records::migrated(document, &renewed).as_ref(), Ok(&renewed), "{text:?}");
    }
    let _ = records::in_letter_order(text);
}
