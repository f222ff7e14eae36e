//! Reading a conventions file: every key optional, nothing unknown let through, every mistake with its place.

use super::error::{ConventionsError, Problem, Wants};
use super::{MOST_BYTES, VERSION};
use crate::document::{Document as Kind, Version, readable, within};
use blind::{
    BreakChoice, COLOUR_NAMES, Colour, Conventions, KindConventions, Letters, LettersError, MethodName,
    Misfit, OrbitOrder, ParityChoice, Turned, kind_name, kind_named, nearest, sizeless, usual,
};
use cube::{Face, Hand, LowerCase, Orbit, OrbitMap, Rotation, Sticker};
use toml_edit::{Document, Item, TableLike, Value};

/// Kinds with an algorithm of their own; those of centres are found by search.
fn with_algorithm() -> impl Iterator<Item = Orbit> {
    Orbit::ALL.into_iter().filter(|&orbit| usual(MethodName::OneSwap, orbit).is_some())
}

/// Kinds whose pieces can be turned in their places.
fn turned_in_place() -> impl Iterator<Item = Orbit> {
    Orbit::ALL.into_iter().filter(|orbit| orbit.stickers_per_piece() > 1)
}

/// Kinds that have two stickers of which one names the piece.
fn wings() -> impl Iterator<Item = Orbit> {
    Orbit::ALL.into_iter().filter(|orbit| orbit.is_edge() && orbit.stickers_per_piece() == 1)
}

/// Reads a conventions file (TOML); what it does not say is as in [`Conventions::default`]. A file without a version is
/// one of the first, which people write by hand.
///
/// # Errors
/// [`ConventionsError`] with line and column of the first mistake: no TOML, a newer version, an unknown key or word (with
/// what was probably meant), letters that are no scheme, a buffer that the algorithm does not move, and so on.
///
/// ```
/// use cube::Orbit;
/// use formats::conventions::read;
/// let conventions = read("[buffer]\ncorner = \"UBL\"").unwrap();
/// assert_eq!(Orbit::Corner.name(conventions.kind(Orbit::Corner).buffer), "UBL");
/// let error = read("[bufer]\ncorner = \"UBL\"").unwrap_err();
/// assert_eq!((error.line, error.column), (1, 2));
/// ```
pub fn read(text: &str) -> Result<Conventions, ConventionsError> {
    let reader = Reader { text };
    within(text, MOST_BYTES).map_err(|error| reader.at(None, error.into()))?;
    // A byte-order mark is no sign of the text.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let reader = Reader { text };
    let document = Document::parse(text)
        .map_err(|error| reader.at(error.span(), Problem::NotToml(error.message().trim().to_owned())))?;
    read_table(&reader, document.as_table())
}

/// Reads the keys of a file, however it is written.
pub(super) fn read_table(
    reader: &Reader<'_>,
    table: &dyn TableLike,
) -> Result<Conventions, ConventionsError> {
    let mut conventions = Conventions::default();
    reader.root(table, &mut conventions)?;
    Ok(conventions)
}

type Span = Option<std::ops::Range<usize>>;

/// A text, for the places in it.
pub(super) struct Reader<'a> {
    pub text: &'a str,
}

/// A key, its value, and where both stand.
struct Entry<'a> {
    key: &'a str,
    value: &'a Item,
    key_span: Span,
    span: Span,
}

impl<'a> Entry<'a> {
    fn wrong_sort(&self, reader: &Reader<'_>, needs: Wants) -> ConventionsError {
        reader.at(self.span.clone(), Problem::WrongSort { key: self.key.to_owned(), needs })
    }

    fn text(&self, reader: &Reader<'_>) -> Result<&'a str, ConventionsError> {
        self.value.as_str().ok_or_else(|| self.wrong_sort(reader, Wants::Text))
    }

    fn texts(&self, reader: &Reader<'_>, needs: Wants) -> Result<Vec<(&'a str, Span)>, ConventionsError> {
        let list = self.value.as_array().ok_or_else(|| self.wrong_sort(reader, needs))?;
        list.iter()
            .map(|value| {
                let text = value.as_str().ok_or_else(|| {
                    reader.at(value.span(), Problem::WrongSort { key: self.key.to_owned(), needs })
                })?;
                Ok((text, value.span()))
            })
            .collect()
    }
}

impl Reader<'_> {
    pub fn at(&self, span: Span, problem: Problem) -> ConventionsError {
        let offset = span.map_or(0, |span| span.start).min(self.text.len());
        let before = self.text.get(..offset).unwrap_or("");
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().map_or(0, |part| part.chars().count()) + 1;
        ConventionsError { line, column, problem }
    }

    fn entries<'a>(
        &self,
        table: &'a dyn TableLike,
        known: &[&str],
    ) -> Result<Vec<Entry<'a>>, ConventionsError> {
        let mut entries = Vec::new();
        for (key, value) in table.iter() {
            let key_span = table.key(key).and_then(toml_edit::Key::span);
            if !known.contains(&key) {
                return Err(self.at(
                    key_span,
                    Problem::UnknownKey {
                        key: key.to_owned(),
                        meant: nearest(key, known).map(str::to_owned),
                        known: known.iter().map(ToString::to_string).collect(),
                    },
                ));
            }
            let span = value.span().or_else(|| key_span.clone());
            entries.push(Entry { key, value, key_span, span });
        }
        Ok(entries)
    }

    fn table<'a>(&self, entry: &Entry<'a>, known: &[&str]) -> Result<Vec<Entry<'a>>, ConventionsError> {
        let table = entry.value.as_table_like().ok_or_else(|| entry.wrong_sort(self, Wants::Table))?;
        self.entries(table, known)
    }

    fn root(&self, table: &dyn TableLike, conventions: &mut Conventions) -> Result<(), ConventionsError> {
        const KEYS: [&str; 15] = [
            "version",
            "colours",
            "holding",
            "named-by",
            "letters",
            "buffer",
            "method",
            "algorithm",
            "sheet",
            "ease",
            "turned",
            "parity",
            "breaks",
            "memo",
            "notation",
        ];
        let all_names = Orbit::ALL.map(kind_name);
        let turned: Vec<&str> = turned_in_place().map(kind_name).collect();
        let wings: Vec<&str> = wings().map(kind_name).collect();
        let mut version = Version(0);
        // A newer version may have keys that mean nothing here, so it is looked at first.
        if let Some(value) = table.get("version") {
            let number = value.as_integer().and_then(|number| u32::try_from(number).ok());
            let wrong = Problem::WrongSort { key: "version".to_owned(), needs: Wants::Whole };
            version = Version(number.ok_or_else(|| self.at(value.span(), wrong))?);
            readable(Kind::Conventions, version, VERSION)
                .map_err(|error| self.at(value.span(), error.into()))?;
        }
        let entries = self.entries(table, &KEYS)?;
        let find = |key: &str| entries.iter().find(|entry| entry.key == key);
        if let Some(entry) = find("colours") {
            self.colours(entry, conventions)?;
        }
        if let Some(entry) = find("holding") {
            self.holding(entry, conventions)?;
        }
        let mut spans: OrbitMap<Span> = OrbitMap::default();
        for (key, names, read) in [
            (
                "named-by",
                &wings[..],
                Self::named_by as fn(&Self, Orbit, &Entry<'_>, &mut KindConventions) -> _,
            ),
            ("letters", &all_names, Self::letters),
            // A method brings its usual buffer and algorithm, which the entries after it may change.
            ("method", &all_names, Self::method),
            ("buffer", &all_names, Self::buffer),
            ("breaks", &all_names, Self::breaks),
            ("sheet", &all_names, Self::sheet),
            ("turned", &turned, Self::turned),
        ] {
            let Some(entry) = find(key) else { continue };
            for inner in self.table(entry, names)? {
                if let Some(orbit) = kind_named(inner.key) {
                    read(self, orbit, &inner, conventions.kind_mut(orbit))?;
                    if key == "buffer" {
                        spans[orbit].clone_from(&inner.span);
                    }
                }
            }
        }
        if let Some(entry) = find("ease") {
            for inner in self.table(entry, &["costs"])? {
                conventions.ease = Some(inner.text(self)?.to_owned()).filter(|place| !place.is_empty());
            }
        }
        if let Some(entry) = find("algorithm") {
            let names: Vec<&str> = with_algorithm().map(kind_name).chain(["parity"]).collect();
            for inner in self.table(entry, &names)? {
                // The place inside the text is given on top of where the text begins.
                let algorithm = sizeless(inner.text(self)?)
                    .map_err(|error| self.at(inner.span.clone(), Problem::Algorithm(error)))?;
                match kind_named(inner.key) {
                    Some(orbit) => {
                        conventions.kind_mut(orbit).algorithm = Some(algorithm);
                        if spans[orbit].is_none() {
                            spans[orbit].clone_from(&inner.span);
                        }
                    }
                    None => conventions.parity_algorithm = algorithm,
                }
            }
        }
        if let Some(entry) = find("notation") {
            for inner in self.table(entry, &["lower-case"])? {
                let known = LowerCase::ALL.map(LowerCase::name);
                conventions.lower_case = LowerCase::ALL[self.word(&inner, &known)?];
            }
        }
        if let Some(entry) = find("memo") {
            self.memo(entry, version, conventions)?;
        }
        if let Some(entry) = find("parity") {
            for inner in self.table(entry, &["by"])? {
                let known = ParityChoice::ALL.map(ParityChoice::name);
                let at = self.word(&inner, &known)?;
                conventions.parity = ParityChoice::ALL[at];
            }
        }
        self.buffers_move(conventions, &spans)
    }

    /// The algorithm of each kind must move its buffer.
    fn buffers_move(
        &self,
        conventions: &Conventions,
        spans: &OrbitMap<Span>,
    ) -> Result<(), ConventionsError> {
        for (orbit, span) in spans.iter().filter(|(_, span)| span.is_some()) {
            conventions.algorithm_fits(orbit).map_err(|misfit| {
                let problem = match misfit {
                    Misfit::NotOnSize { size, error } => Problem::NotOnSize { orbit, size, error },
                    Misfit::Swap(error) => Problem::Swap { orbit, error },
                };
                self.at(span.clone(), problem)
            })?;
        }
        Ok(())
    }

    fn colours(&self, entry: &Entry<'_>, conventions: &mut Conventions) -> Result<(), ConventionsError> {
        let faces = Face::ALL.map(|face| face.letter().to_string());
        let known: Vec<&str> = faces.iter().map(String::as_str).collect();
        let mut named: Vec<(Face, Span)> = Vec::new();
        for inner in self.table(entry, &known)? {
            let Some(face) = inner.key.chars().next().and_then(Face::from_letter) else { continue };
            conventions.colours[face.index()] = self.colour(&inner)?;
            named.push((face, inner.span.clone()));
        }
        // Only what stands here can be a colour twice, the later of two, or the one of them that stands here.
        for (at, (face, span)) in named.iter().enumerate() {
            let colour = &conventions.colours[face.index()];
            let later = |other: &Face| named[at + 1..].iter().any(|(later, _)| later == other);
            let same = |other: &Face| {
                other != face
                    && !later(other)
                    && conventions.colours[other.index()].name.to_lowercase() == colour.name.to_lowercase()
            };
            if Face::ALL.iter().any(same) {
                return Err(self.at(span.clone(), Problem::ColourTwice(colour.name.clone())));
            }
        }
        Ok(())
    }

    fn colour(&self, entry: &Entry<'_>) -> Result<Colour, ConventionsError> {
        if let Some(name) = entry.value.as_str() {
            if COLOUR_NAMES.contains(&name) {
                return Ok(Colour { name: name.to_owned(), shade: None });
            }
            return Err(self.at(
                entry.span.clone(),
                match nearest(name, &COLOUR_NAMES) {
                    Some(meant) => Problem::UnknownWord {
                        word: name.to_owned(),
                        meant: Some(meant.to_owned()),
                        known: COLOUR_NAMES.map(str::to_owned).to_vec(),
                    },
                    None => Problem::ShadeMissing(name.to_owned()),
                },
            ));
        }
        let Some(table) = entry.value.as_table_like() else {
            return Err(entry.wrong_sort(self, Wants::Colour));
        };
        let inner = self.entries(table, &["name", "shade"])?;
        let name = inner
            .iter()
            .find(|part| part.key == "name")
            .ok_or_else(|| entry.wrong_sort(self, Wants::Colour))?;
        let name = name.text(self)?.trim();
        if name.is_empty() {
            return Err(entry.wrong_sort(self, Wants::Colour));
        }
        let shade = match inner.iter().find(|part| part.key == "shade") {
            None if COLOUR_NAMES.contains(&name) => None,
            None => return Err(self.at(entry.span.clone(), Problem::ShadeMissing(name.to_owned()))),
            Some(part) => {
                let text = part.text(self)?;
                let no_shade = || self.at(part.span.clone(), Problem::NoShade(text.to_owned()));
                Some(parse_shade(text).ok_or_else(no_shade)?)
            }
        };
        Ok(Colour { name: name.to_owned(), shade })
    }

    fn holding(&self, entry: &Entry<'_>, conventions: &mut Conventions) -> Result<(), ConventionsError> {
        let names: Vec<String> = conventions.colours.iter().map(|colour| colour.name.clone()).collect();
        let known: Vec<&str> = names.iter().map(String::as_str).collect();
        // Who says only one of the two keeps the other of the hold for scrambling.
        let (mut up, mut front) = (Face::U, Face::F);
        let mut span = entry.key_span.clone();
        for inner in self.table(entry, &["up", "front"])? {
            let word = inner.text(self)?;
            let at = names.iter().position(|name| name.to_lowercase() == word.to_lowercase()).ok_or_else(
                || {
                    let meant = nearest(word, &known).map(str::to_owned);
                    self.at(
                        inner.span.clone(),
                        Problem::UnknownWord { word: word.to_owned(), meant, known: names.clone() },
                    )
                },
            )?;
            let face = if inner.key == "up" { &mut up } else { &mut front };
            *face = Face::ALL[at];
            span.clone_from(&inner.span);
        }
        conventions.holding = Rotation::bringing(up, front).ok_or_else(|| {
            let name = |face: Face| names[face.index()].clone();
            self.at(span, Problem::NoHolding { up: name(up), front: name(front) })
        })?;
        Ok(())
    }

    fn named_by(
        &self,
        orbit: Orbit,
        entry: &Entry<'_>,
        kind: &mut KindConventions,
    ) -> Result<(), ConventionsError> {
        kind.named_by = [Hand::Left, Hand::Right][self.word(entry, &["left", "right"])?];
        let letters: Vec<String> = kind.letters.all().map(str::to_owned).collect();
        // The usual letters go by place.
        kind.letters = Letters::new(&kind.by_place(orbit, &letters)).unwrap_or(kind.letters.clone());
        Ok(())
    }

    fn letters(
        &self,
        orbit: Orbit,
        entry: &Entry<'_>,
        kind: &mut KindConventions,
    ) -> Result<(), ConventionsError> {
        let problem =
            |error: LettersError, span: &Span| self.at(span.clone(), Problem::Letters { orbit, error });
        if let Some(letters) = self.row_of_letters(entry)? {
            let letters = if letters.len() == 24 { kind.by_place(orbit, &letters) } else { letters };
            kind.letters = Letters::new(&letters).map_err(|error| problem(error, &entry.span))?;
            return Ok(());
        }
        let Some(table) = entry.value.as_table_like() else {
            return Err(entry.wrong_sort(self, Wants::Letters));
        };
        let mut given: [Option<String>; 24] = [const { None }; 24];
        for (key, value) in table.iter() {
            let key_span = table.key(key).and_then(toml_edit::Key::span);
            let inner = Entry { key, value, span: value.span().or_else(|| key_span.clone()), key_span };
            if let Some(face) = Face::ALL.into_iter().find(|face| face.letter().to_string() == key) {
                let letters =
                    self.row_of_letters(&inner)?.ok_or_else(|| inner.wrong_sort(self, Wants::Letters))?;
                if letters.len() != 4 {
                    return Err(problem(LettersError::WrongCount(letters.len()), &inner.span));
                }
                let stickers = Sticker::all().filter(|sticker| sticker.face() == face);
                for (sticker, letter) in stickers.zip(letters) {
                    let named = match kind.named_by {
                        Hand::Left => sticker,
                        Hand::Right => orbit.across(sticker),
                    };
                    given[named.index()] = Some(letter);
                }
                continue;
            }
            let sticker = self.sticker(orbit, key, &inner.key_span)?;
            given[sticker.index()] = Some(inner.text(self)?.to_owned());
        }
        let mut letters = Vec::with_capacity(24);
        for sticker in Sticker::all() {
            let letter = given[sticker.index()]
                .take()
                .ok_or_else(|| self.at(entry.key_span.clone(), Problem::LetterMissing { orbit, sticker }))?;
            letters.push(letter);
        }
        kind.letters = Letters::new(&letters).map_err(|error| problem(error, &entry.key_span))?;
        Ok(())
    }

    /// Letters in a row: a text of single signs, a text of letters with blanks between where these are longer, or a list of
    /// texts. `None` for another sort of value.
    fn row_of_letters(&self, entry: &Entry<'_>) -> Result<Option<Vec<String>>, ConventionsError> {
        if entry.value.as_array().is_some() {
            let letters = entry.texts(self, Wants::Letters)?;
            return Ok(Some(letters.into_iter().map(|(letter, _)| letter.to_owned()).collect()));
        }
        Ok(entry.value.as_str().map(|text| {
            let parts: Vec<&str> = text.split_whitespace().collect();
            // Four letters of a face, or 24 of a kind, each with a blank after it; else every sign is a letter.
            if parts.len() == 4 || parts.len() == 24 {
                let whole: usize = parts.iter().map(|part| part.chars().count()).sum();
                if whole != 24 || parts.len() == 24 {
                    return parts.into_iter().map(str::to_owned).collect();
                }
            }
            text.chars().filter(|sign| !sign.is_whitespace()).map(String::from).collect()
        }))
    }

    fn sticker(&self, orbit: Orbit, word: &str, span: &Span) -> Result<Sticker, ConventionsError> {
        orbit.sticker(word).ok_or_else(|| {
            let names: Vec<&str> = Sticker::all().map(|sticker| orbit.name(sticker)).collect();
            let meant = orbit
                .sticker(&word.to_uppercase())
                .or_else(|| nearest(word, &names).and_then(|name| orbit.sticker(name)));
            self.at(span.clone(), Problem::NoSticker { word: word.to_owned(), orbit, meant })
        })
    }

    fn buffer(
        &self,
        orbit: Orbit,
        entry: &Entry<'_>,
        kind: &mut KindConventions,
    ) -> Result<(), ConventionsError> {
        kind.buffer = self.sticker(orbit, entry.text(self)?, &entry.span)?;
        Ok(())
    }

    /// The place in a list of the word that stands there.
    fn word(&self, entry: &Entry<'_>, known: &[&str]) -> Result<usize, ConventionsError> {
        let word = entry.text(self)?;
        known.iter().position(|&other| other == word).ok_or_else(|| {
            self.at(
                entry.span.clone(),
                Problem::UnknownWord {
                    word: word.to_owned(),
                    meant: nearest(word, known).map(str::to_owned),
                    known: known.iter().map(ToString::to_string).collect(),
                },
            )
        })
    }

    fn method(
        &self,
        orbit: Orbit,
        entry: &Entry<'_>,
        kind: &mut KindConventions,
    ) -> Result<(), ConventionsError> {
        let known: Vec<MethodName> = MethodName::of(orbit).collect();
        let names: Vec<&str> = known.iter().map(|method| method.name()).collect();
        let word = entry.text(self)?;
        if !names.contains(&word) && MethodName::ALL.iter().any(|method| method.name() == word) {
            let known = names.iter().map(ToString::to_string).collect();
            return Err(
                self.at(entry.span.clone(), Problem::NoMethodFor { word: word.to_owned(), orbit, known })
            );
        }
        kind.method = known[self.word(entry, &names)?];
        // Wings and centres have the same buffer with every method, which is held to it.
        if let Some(usual) = usual(kind.method, orbit).filter(|_| orbit.stickers_per_piece() > 1) {
            kind.buffer = usual.buffer;
            // Half turns of the slice need no further swap; what was there is kept for another method.
            if kind.method != MethodName::SliceSwap {
                kind.algorithm = Some(usual.algorithm);
            }
        }
        Ok(())
    }

    fn sheet(&self, _: Orbit, entry: &Entry<'_>, kind: &mut KindConventions) -> Result<(), ConventionsError> {
        kind.sheet = Some(entry.text(self)?.to_owned()).filter(|place| !place.is_empty());
        Ok(())
    }

    fn turned(
        &self,
        _: Orbit,
        entry: &Entry<'_>,
        kind: &mut KindConventions,
    ) -> Result<(), ConventionsError> {
        kind.turned = Turned::ALL[self.word(entry, &Turned::ALL.map(Turned::name))?];
        Ok(())
    }

    fn breaks(
        &self,
        orbit: Orbit,
        entry: &Entry<'_>,
        kind: &mut KindConventions,
    ) -> Result<(), ConventionsError> {
        if let Item::Value(Value::Array(_)) = entry.value {
            let mut list = Vec::new();
            for (word, span) in entry.texts(self, Wants::Breaks)? {
                let sticker = self.sticker(orbit, word, &span)?;
                if list.contains(&sticker) {
                    return Err(self.at(span, Problem::StickerTwice(word.to_owned())));
                }
                list.push(sticker);
            }
            kind.breaks = BreakChoice::Preference(list);
            return Ok(());
        }
        if entry.value.as_str().is_none() {
            return Err(entry.wrong_sort(self, Wants::Breaks));
        }
        kind.breaks = match self.word(entry, &["first", "fewest", "least"])? {
            0 => BreakChoice::First,
            1 => BreakChoice::Fewest,
            _ => BreakChoice::Least,
        };
        Ok(())
    }

    fn memo(
        &self,
        entry: &Entry<'_>,
        version: Version,
        conventions: &mut Conventions,
    ) -> Result<(), ConventionsError> {
        for inner in self.table(entry, &["pairs", "order", "execution"])? {
            match inner.key {
                "pairs" => {
                    conventions.pairs =
                        inner.value.as_bool().ok_or_else(|| inner.wrong_sort(self, Wants::YesNo))?;
                }
                "order" => conventions.memo_order = OrbitOrder::new(&self.kinds(&inner)?),
                _ => {
                    let mut kinds = self.kinds(&inner)?;
                    // When these were written out, nothing but corners and edges was carried out.
                    if version == Version(1) {
                        kinds.retain(|orbit| orbit.stickers_per_piece() > 1);
                    }
                    conventions.execution_order = OrbitOrder::of_execution(&kinds);
                }
            }
        }
        Ok(())
    }

    /// Some kinds, each once.
    fn kinds(&self, entry: &Entry<'_>) -> Result<Vec<Orbit>, ConventionsError> {
        let known = Orbit::ALL.map(kind_name);
        let mut kinds = Vec::new();
        for (word, span) in entry.texts(self, Wants::List)? {
            let orbit = kind_named(word).ok_or_else(|| {
                let meant = nearest(word, &known).map(str::to_owned);
                let known = known.map(str::to_owned).to_vec();
                self.at(span.clone(), Problem::UnknownWord { word: word.to_owned(), meant, known })
            })?;
            if kinds.contains(&orbit) {
                return Err(self.at(span, Problem::KindsOnce(entry.key.to_owned())));
            }
            kinds.push(orbit);
        }
        Ok(kinds)
    }
}

/// `#` and six hexadecimal digits.
fn parse_shade(text: &str) -> Option<[u8; 3]> {
    let digits = text.strip_prefix('#')?;
    if digits.len() != 6 || !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
        return None;
    }
    let part = |at: usize| u8::from_str_radix(digits.get(at..at + 2)?, 16).ok();
    Some([part(0)?, part(2)?, part(4)?])
}
