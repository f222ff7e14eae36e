//! What the six colours are called in a text.

use cube::{Face, plain_sign};

/// Other ways to write a letter, where a keyboard has it not, or a system takes it apart.
const SPELLINGS: [(char, [&str; 2]); 4] =
    [('ä', ["ae", "a\u{308}"]), ('ö', ["oe", "o\u{308}"]), ('ü', ["ue", "u\u{308}"]), ('ß', ["ss", "ss"])];

/// The names of the six colours for one reader, by the face on which each is on the solved cube, in the order U L F R B D.
///
/// Letters are read alike whatever their case. `ü` may be written `ue`, and so on.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ColourNames {
    words: [String; 6],
    initials: Option<[char; 6]>,
    drawn: [char; 6],
    /// Every way to write every word, the longest first.
    forms: Vec<(Vec<char>, Face)>,
}

/// A character as it is compared: without its case and its width.
pub(super) fn folded(sign: char) -> char {
    let sign = plain_sign(sign);
    // A character whose small letter is several is compared by the first of them.
    sign.to_lowercase().next().unwrap_or(sign)
}

impl ColourNames {
    /// Names for the colours. The first name of each is the one that is written; further ones are read as well. A name
    /// that two colours share stands for neither. `drawn` are the letters by which a net shows the colours.
    ///
    /// Initials are those of the first names. They do where all six differ and no name could be taken for a row of them.
    ///
    /// ```
    /// use formats::state_text::ColourNames;
    /// let of = |names: [&str; 6]| {
    ///     ColourNames::new(&names.map(|name| vec![name.to_owned()]), ['W', 'O', 'G', 'R', 'B', 'Y']).initials()
    /// };
    /// assert_eq!(of(["white", "orange", "green", "red", "blue", "yellow"]), Some(['W', 'O', 'G', 'R', 'B', 'Y']));
    /// // In German green and yellow begin alike.
    /// assert_eq!(of(["weiß", "orange", "grün", "rot", "blau", "gelb"]), None);
    /// ```
    pub fn new(names: &[Vec<String>; 6], drawn: [char; 6]) -> Self {
        let words = names.each_ref().map(|names| names.first().cloned().unwrap_or_default());
        let mut forms: Vec<(Vec<char>, Face)> = Vec::new();
        for (face, names) in Face::ALL.into_iter().zip(names) {
            for form in names.iter().flat_map(|name| spelled(name)) {
                if !forms.contains(&(form.clone(), face)) {
                    forms.push((form, face));
                }
            }
        }
        let shared = |form: &[char]| forms.iter().filter(|(other, _)| other == form).count() > 1;
        let mut forms: Vec<_> = forms.iter().filter(|(form, _)| !shared(form)).cloned().collect();
        forms.sort_by_key(|(form, _)| std::cmp::Reverse(form.len()));
        let initials = initials(&words, &forms);
        Self { words, initials, drawn, forms }
    }

    /// The capital initials, in the order U L F R B D of the faces; nothing where they cannot stand for the colours.
    pub const fn initials(&self) -> Option<[char; 6]> {
        self.initials
    }

    /// The name of the colour that a face has on the solved cube.
    pub fn word(&self, face: Face) -> &str {
        &self.words[face.index()]
    }

    /// The letters of a net.
    pub(crate) const fn drawn(&self) -> [char; 6] {
        self.drawn
    }

    /// The colour of a whole word.
    pub(crate) fn by_word(&self, word: &[char]) -> Option<Face> {
        self.forms.iter().find(|(form, _)| form.as_slice() == word).map(|&(_, face)| face)
    }

    /// Words that a text begins with, the longest first: their lengths and colours.
    pub(super) fn beginning<'a>(&'a self, text: &'a [char]) -> impl Iterator<Item = (usize, Face)> + 'a {
        self.forms.iter().filter(|(form, _)| text.starts_with(form)).map(|(form, face)| (form.len(), *face))
    }

    /// The length of the longest word.
    pub(super) fn longest(&self) -> usize {
        self.forms.first().map_or(0, |(form, _)| form.len())
    }

    /// The name that is most like a word, if it is like enough to have been meant.
    pub(super) fn nearest(&self, word: &str) -> Option<&str> {
        let known = self.words.each_ref().map(String::as_str);
        blind::nearest(&word.to_lowercase(), &known)
    }
}

/// The colour that a letter stands for; `letters` are in the order U L F R B D.
pub(super) fn lettered(letters: &[char; 6], sign: char) -> Option<Face> {
    Face::ALL.into_iter().find(|face| folded(letters[face.index()]) == folded(sign))
}

/// The ways to write a name, as they are compared; none for what is no single word.
fn spelled(name: &str) -> Vec<Vec<char>> {
    let name = name.trim();
    if name.is_empty() || name.contains(super::words::is_separator) {
        return Vec::new();
    }
    let plain: String = name.chars().map(folded).collect();
    let mut all = vec![plain.clone()];
    for way in 0..2 {
        let other = SPELLINGS.iter().fold(plain.clone(), |text, (sign, ways)| text.replace(*sign, ways[way]));
        if !all.contains(&other) {
            all.push(other);
        }
    }
    all.into_iter().map(|form| form.chars().collect()).collect()
}

/// The initials of the words, where they can stand for them.
fn initials(words: &[String; 6], forms: &[(Vec<char>, Face)]) -> Option<[char; 6]> {
    let mut initials = ['?'; 6];
    for (initial, word) in initials.iter_mut().zip(words) {
        *initial = word.trim().chars().next()?.to_uppercase().next()?;
    }
    let small = initials.map(folded);
    let differ = (0..6).all(|at| !small[..at].contains(&small[at]) && !super::words::is_separator(small[at]));
    let clear =
        |(form, _): &(Vec<char>, Face)| form.len() < 2 || !form.iter().all(|sign| small.contains(sign));
    (differ && forms.iter().all(clear)).then_some(initials)
}
