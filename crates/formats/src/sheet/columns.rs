//! What the columns of a list are for: by their names, or by what is in them.

use super::read::Reading;
use super::salvage::is_algorithm;
use super::table::Line;
use cube::{Orbit, plain_sign};

/// The columns of a list and what people call them.
pub(super) const COLUMNS: [(&str, &[&str]); 7] = [
    ("kind", &["kind", "type", "piece", "pieces", "art", "teil"]),
    ("buffer", &["buffer", "puffer"]),
    (
        "first",
        &[
            "first",
            "first target",
            "target 1",
            "1st",
            "letter 1",
            "1",
            "from",
            "erster",
            "erstes ziel",
            "erstes",
        ],
    ),
    (
        "second",
        &[
            "second",
            "second target",
            "target 2",
            "2nd",
            "letter 2",
            "2",
            "to",
            "zweiter",
            "zweites ziel",
            "zweites",
        ],
    ),
    (
        "pair",
        &["pair", "letters", "letter pair", "case", "cycle", "paar", "buchstaben", "buchstabenpaar", "fall"],
    ),
    (
        "algorithm",
        &[
            "algorithm",
            "alg",
            "algs",
            "moves",
            "commutator",
            "comm",
            "sequence",
            "solution",
            "algorithmus",
            "züge",
            "alternative",
            "alternatives",
            "alternativen",
            "alt",
        ],
    ),
    (
        "notes",
        &["notes", "note", "comment", "comments", "remark", "remarks", "notiz", "notizen", "bemerkung"],
    ),
];

/// The columns of a list by what is in them, where a line is the head of one.
pub(super) type Columns = Vec<Option<&'static str>>;

/// How many lines are looked at to tell what a column is for.
const SEEN: usize = 500;

fn column_named(cell: &str) -> Option<&'static str> {
    let cell: String = cell.trim().chars().map(plain_sign).collect();
    let cell = cell.trim_start_matches('\u{feff}').to_lowercase();
    let named =
        |name: &str| COLUMNS.iter().find(|(_, names)| names.contains(&name)).map(|(column, _)| *column);
    // "Alg 2", "algorithm #3".
    let numbered = || {
        let name = cell.trim_end_matches(|sign: char| sign.is_ascii_digit() || "#.:-_ ()".contains(sign));
        named(name).filter(|column| *column == "algorithm")
    };
    named(&cell).or_else(numbered)
}

/// What each column is for by the names in the first line; those whose content would not be used are further columns, so that
/// nothing of it is lost. Only columns of algorithms may be several.
pub(super) fn by_head(lines: &[Line]) -> Columns {
    let Some((_, head)) = lines.first() else { return Vec::new() };
    let mut columns: Columns = head.iter().map(|cell| column_named(cell)).collect();
    // Of two columns of a name the first counts.
    for at in 0..columns.len() {
        if columns[at].is_some_and(|name| name != "algorithm") && columns[..at].contains(&columns[at]) {
            columns[at] = None;
        }
    }
    let has = |columns: &Columns, name| columns.contains(&Some(name));
    let drop = |columns: &mut Columns, name| {
        columns.iter_mut().filter(|column| **column == Some(name)).for_each(|column| *column = None);
    };
    // A pair beside two targets is for comparison.
    if has(&columns, "pair") && !(has(&columns, "first") && has(&columns, "second")) {
        drop(&mut columns, "first");
        drop(&mut columns, "second");
    }
    let filled = |at: usize| lines[1..].iter().filter_map(move |(_, cells)| cells.get(at));
    let is_kind = |cell: &String| cell.trim().is_empty() || Reading::kind_by_word(cell).is_some();
    if let Some(at) = columns.iter().position(|column| *column == Some("kind"))
        && !filled(at).all(is_kind)
    {
        columns[at] = None;
    }
    // Further columns that are full of algorithms have alternatives.
    if has(&columns, "algorithm") {
        for (at, column) in columns.iter_mut().enumerate() {
            let cells = filled(at).map(|cell| cell.trim()).filter(|cell| !cell.is_empty());
            let cells: Vec<&str> = cells.take(SEEN).collect();
            if column.is_none() && !cells.is_empty() && cells.iter().all(|cell| is_algorithm(cell)) {
                *column = Some("algorithm");
            }
        }
    }
    columns
}

/// What each column is for by what is in it, where no line names them: one of algorithms at least, and pairs or two columns of
/// targets, in most of the lines.
pub(super) fn by_content(lines: &[Line], reading: &Reading<'_>) -> Option<Columns> {
    let seen = &lines[..lines.len().min(SEEN)];
    let width = seen.iter().map(|(_, cells)| cells.len()).max()?;
    let names = seen.iter().flat_map(|(_, cells)| cells).map(String::as_str);
    let names = names.filter(|cell| cell.chars().count() > 2 && !is_algorithm(cell));
    let orbit = reading.kind.or_else(|| reading.kind_by_names(names)).unwrap_or(Orbit::Corner);
    let cell =
        |line: &'_ Line, at: usize| line.1.get(at).map(|cell| cell.trim().to_owned()).unwrap_or_default();
    let most = |is: &dyn Fn(&str) -> bool, at: usize| {
        let cells: Vec<String> = seen.iter().map(|line| cell(line, at)).collect();
        cells.iter().filter(|cell| is(cell)).count() * 2 > seen.len()
    };
    let mut columns: Columns = vec![None; width];
    for (at, column) in columns.iter_mut().enumerate() {
        let filled = seen.iter().filter(|line| !cell(line, at).is_empty()).count();
        let algorithms = seen.iter().filter(|line| is_algorithm(&cell(line, at))).count();
        if algorithms > 0 && algorithms * 2 > filled {
            *column = Some("algorithm");
        }
    }
    let has_algorithm =
        |line: &Line| (0..width).any(|at| columns[at].is_some() && !cell(line, at).is_empty());
    if seen.iter().filter(|line| has_algorithm(line)).count() * 2 <= seen.len() {
        return None;
    }
    // A letter beside its sticker is one target.
    let is_pair = |text: &str| {
        reading.pair(orbit, text).is_some_and(|[first, second]| orbit.piece(first) != orbit.piece(second))
    };
    let is_target = |text: &str| {
        let is_word = !text.is_empty() && text.chars().all(char::is_alphabetic);
        is_word && reading.target(orbit, text).is_some()
    };
    let free: Vec<usize> = (0..width).filter(|&at| columns[at].is_none()).collect();
    if let Some(&at) = free.iter().find(|&&at| most(&is_pair, at)) {
        columns[at] = Some("pair");
        return Some(columns);
    }
    let targets: Vec<usize> = free.into_iter().filter(|&at| most(&is_target, at)).collect();
    let names: &[&str] = match targets.len() {
        0 | 1 => return None,
        2 => &["first", "second"],
        _ => &["buffer", "first", "second"],
    };
    for (&at, &name) in targets.iter().zip(names) {
        columns[at] = COLUMNS.iter().map(|(column, _)| *column).find(|column| *column == name);
    }
    Some(columns)
}

/// Whether these are the columns of a list.
pub(super) fn is_list(columns: &Columns) -> bool {
    let has = |name| columns.contains(&Some(name));
    has("algorithm") && (has("pair") || (has("first") && has("second")))
}
