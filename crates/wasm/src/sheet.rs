//! A sheet of algorithms as a grid: which cases it has, which not, and what is to be looked at.

use std::collections::BTreeMap;

use blind::{CycleCase, MethodName, kind_name};
use cube::{Algorithm, Sticker, count, simplified};
use serde::{Deserialize, Serialize};
use sheet::{Row, SIZE, Verdict};
use voice::Voice;

use crate::Failure;
use crate::call::Call;
use crate::document::DocumentName;
use crate::subject::{Named, SheetAccount, Subject};

/// A grid that is wanted.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Filtered {
    /// What it is of.
    pub subject: Subject,
    /// The sheet; none for an empty one.
    pub sheet: Option<DocumentName>,
    /// Letters, stickers or moves that a case is to have; empty for all cases.
    pub text: String,
    /// Which cases are to be shown.
    pub only: Only,
}

/// Which cases are to be shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum Only {
    /// All.
    All,
    /// With a right algorithm.
    Right,
    /// Without one.
    Missing,
    /// With an algorithm that does something else.
    Wrong,
    /// Much slower than the best known.
    Slow,
}

/// A sheet of one buffer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Cases {
    /// The kinds there are.
    pub kinds: Vec<Choice>,
    /// The buffers that the kind has in the conventions and in the sheet.
    pub buffers: Vec<Choice>,
    /// The buffer shown.
    pub buffer: String,
    /// How many cases have a right algorithm.
    pub coverage: String,
    /// Mean moves and time; empty where there is no right algorithm.
    pub means: String,
    /// How many cases are shown.
    pub matching: String,
    /// The targets in the order of their letters.
    pub heads: Vec<Head>,
    /// For each first target the cases by second target; none where both are on one piece.
    pub rows: Vec<Vec<Option<CaseCell>>>,
    /// Rows of the sheet that are not right, of this buffer or of none that can be read.
    pub troubles: Vec<Trouble>,
    /// How many more there are; empty if none.
    pub more_troubles: String,
    /// Why solutions do not use the sheet; empty if they do.
    pub note: String,
}

/// Something to choose.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Choice {
    /// Its name in requests.
    pub name: String,
    /// What it is called.
    pub said: String,
}

/// A target along a side of the grid.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Head {
    /// Its letter.
    pub letter: String,
    /// Its sticker.
    pub sticker: String,
}

/// What a case has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum Has {
    /// A right algorithm.
    Right,
    /// A right algorithm, and a much easier one is known.
    Slow,
    /// Only algorithms that do something else.
    Wrong,
    /// No algorithm.
    Nothing,
}

/// A case.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct CaseCell {
    /// The first target's sticker.
    pub first: String,
    /// The second target's sticker.
    pub second: String,
    /// Both letters.
    pub letters: String,
    /// What it has.
    pub has: Has,
    /// Whether it is among the cases that are to be shown.
    pub shown: bool,
    /// The easiest right algorithm; empty if there is none.
    pub algorithm: String,
    /// Its estimated time; empty if there is none.
    pub time: String,
    /// The case and what it has, to be read aloud.
    pub said: String,
}

/// A row that is not right.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Trouble {
    /// The case as it is written, or as people speak of it.
    pub case: String,
    /// Whether the case cannot be read.
    pub unread: bool,
    /// The algorithm as it is written.
    pub algorithm: String,
    /// What it does.
    pub said: String,
}

/// What the rows of a case come to.
#[derive(Default)]
struct Entry<'a> {
    best: Option<(u32, usize, &'a Row)>,
    rows: Vec<&'a Row>,
    wrong: bool,
}

/// The most rows that are listed as not right; what is beyond shows once these are gone.
const MOST_TROUBLES: usize = 200;

pub(crate) fn seconds(voice: &Voice, milliseconds: u32) -> String {
    let seconds = voice.decimal(f64::from(milliseconds) / 1000.0, 2);
    voice.say("way-seconds", &[("seconds", seconds.into())])
}

/// The buffers of a kind: that of the conventions first, those of the sheet, and the one shown.
fn buffers(voice: &Voice, named: &Named, kept: &SheetAccount) -> Vec<Choice> {
    let orbit = named.orbit;
    let mut all = vec![named.conventions.kind(orbit).buffer];
    let of_sheet = kept.sheet.buffers().into_iter().filter(|&(of, _)| of == orbit).map(|(_, buffer)| buffer);
    for buffer in of_sheet.chain([named.buffer]) {
        if !all.contains(&buffer) {
            all.push(buffer);
        }
    }
    let letters = &named.conventions.kind(orbit).letters;
    let said =
        |buffer| Choice { name: orbit.name(buffer).to_owned(), said: voice.lettered(orbit, buffer, letters) };
    all.into_iter().map(said).collect()
}

/// Why solutions do not use what is shown, if they do not.
fn note(voice: &Voice, named: &Named, kept: &SheetAccount) -> String {
    let orbit = named.orbit;
    let kind = named.conventions.kind(orbit);
    let has_rows = kept.sheet.buffers().contains(&(orbit, named.buffer));
    let unused = kind.method != MethodName::ThreeCycle || kind.buffer != named.buffer;
    if !has_rows || !unused {
        return String::new();
    }
    voice.say(
        "sheet-unused",
        &[("kinds", voice.kinds(orbit).into()), ("buffer", orbit.name(named.buffer).into())],
    )
}

/// The entries of a buffer by case.
fn entries<'a>(
    named: &Named,
    kept: &'a SheetAccount,
    model: &search::ease::Model,
) -> BTreeMap<CycleCase, Entry<'a>> {
    let mut entries: BTreeMap<CycleCase, Entry<'a>> = BTreeMap::new();
    let of_buffer = |case: &CycleCase| (case.orbit, case.buffer) == (named.orbit, named.buffer);
    for (row, verdict) in kept.sheet.rows().iter().zip(&kept.report.verdicts) {
        let Some(case) = row.case.filter(of_buffer) else { continue };
        let entry = entries.entry(case).or_default();
        entry.rows.push(row);
        match verdict {
            Verdict::Right => {
                let turns = Algorithm::parse(&row.algorithm, SIZE)
                    .map_or_else(|_| Vec::new(), |it| simplified(&it.flatten()));
                let time = blind::milliseconds(model, &turns);
                if entry.best.is_none_or(|(least, ..)| time < least) {
                    entry.best = Some((time, count(&turns).slice, row));
                }
            }
            Verdict::Empty => {}
            _ => entry.wrong = true,
        }
    }
    entries
}

/// Whether a case has what was typed: its letters or stickers in this order, or moves or a note in one of its rows.
struct Sought {
    text: String,
    squeezed: String,
}

impl Sought {
    fn new(text: &str) -> Sought {
        let text = text.trim().to_lowercase();
        let squeezed = plain(&text);
        Sought { text, squeezed }
    }

    fn is_in(&self, case: CycleCase, letters: &str, rows: &[&Row]) -> bool {
        if self.text.is_empty() {
            return true;
        }
        let stickers = format!("{} {}", case.orbit.name(case.first), case.orbit.name(case.second));
        let names = [letters, &stickers].map(str::to_lowercase);
        let spelled = names[0].starts_with(&self.text)
            || (self.text.contains(' ') && names[1].starts_with(&self.text))
            || names[1].split(' ').any(|name| name == self.text);
        let in_row = |row: &&Row| {
            plain(&row.algorithm.to_lowercase()).contains(&self.squeezed)
                || row.notes.to_lowercase().contains(&self.text)
        };
        // One or two letters are letters of the memo, not moves.
        spelled || (self.text.chars().count() > 2 && rows.iter().any(in_row))
    }
}

/// An algorithm as it is compared with what is typed: no blanks, one kind of prime.
fn plain(text: &str) -> String {
    text.chars()
        .filter(|sign| !sign.is_whitespace())
        .map(|sign| if matches!(sign, '\u{2019}' | '\u{2032}' | '`' | '\u{b4}') { '\'' } else { sign })
        .collect()
}

pub(crate) fn cases(call: &mut Call<'_>, filtered: &Filtered) -> Result<Cases, Failure> {
    let voice = call.voice;
    let named = filtered.subject.named(call)?;
    let kept = filtered.subject.sheet(call, filtered.sheet.as_ref())?;
    let (orbit, buffer) = (named.orbit, named.buffer);
    let model = call.desk.searches.model();
    let slow = if filtered.only == Only::Slow {
        Some(call.desk.searches.slow(&kept.sheet, orbit, buffer))
    } else {
        call.desk.searches.known_slow(&kept.sheet, orbit, buffer)
    };
    let entries = entries(&named, &kept, &model);
    let nothing = Entry::default();
    let sought = Sought::new(&filtered.text);
    let letters = &named.conventions.kind(orbit).letters;
    let order: Vec<Sticker> =
        letters.order().into_iter().filter(|&sticker| orbit.piece(sticker) != orbit.piece(buffer)).collect();
    let cell = |first: Sticker, second: Sticker| {
        let case = CycleCase { orbit, buffer, first, second };
        let entry = entries.get(&case).unwrap_or(&nothing);
        let is_slow = slow.as_ref().is_some_and(|slow| slow.contains(&case));
        let has = match (entry.best.is_some(), entry.wrong) {
            (true, _) if is_slow => Has::Slow,
            (true, _) => Has::Right,
            (false, true) => Has::Wrong,
            (false, false) => Has::Nothing,
        };
        let wanted = match filtered.only {
            Only::All => true,
            Only::Right => entry.best.is_some(),
            Only::Missing => entry.best.is_none(),
            Only::Wrong => entry.wrong,
            Only::Slow => is_slow,
        };
        let spelled = letters.spell(&[first, second]);
        CaseCell {
            first: orbit.name(first).to_owned(),
            second: orbit.name(second).to_owned(),
            has,
            shown: wanted && sought.is_in(case, &spelled, &entry.rows),
            letters: spelled,
            algorithm: entry.best.map_or_else(String::new, |(_, _, row)| row.algorithm.clone()),
            time: entry.best.map_or_else(String::new, |(time, ..)| seconds(voice, time)),
            said: voice.say(
                "cell-said",
                &[("case", voice.case(case, &named.conventions).into()), ("has", state(has).into())],
            ),
        }
    };
    let rows: Vec<Vec<Option<CaseCell>>> = order
        .iter()
        .map(|&first| {
            let apart = |second: Sticker| orbit.piece(first) != orbit.piece(second);
            order.iter().map(|&second| apart(second).then(|| cell(first, second))).collect()
        })
        .collect();
    let shown = rows.iter().flatten().flatten().filter(|cell| cell.shown).count();
    let all = rows.iter().flatten().flatten().count();
    let (troubles, more_troubles) = troubles(voice, &named, &kept);
    let best: Vec<(u32, usize)> =
        entries.values().filter_map(|entry| entry.best.map(|(time, moves, _)| (time, moves))).collect();
    Ok(Cases {
        kinds: sheet::kinds()
            .iter()
            .map(|&kind| Choice { name: kind_name(kind).to_owned(), said: voice.kinds(kind) })
            .collect(),
        buffers: buffers(voice, &named, &kept),
        buffer: orbit.name(buffer).to_owned(),
        coverage: voice.coverage(orbit, buffer, best.len(), all),
        means: means(voice, &best),
        matching: voice.say("cases-matching", &[("count", shown.into())]),
        heads: order
            .iter()
            .map(|&sticker| Head {
                letter: letters.of(sticker).to_string(),
                sticker: orbit.name(sticker).to_owned(),
            })
            .collect(),
        rows,
        troubles,
        more_troubles,
        note: note(voice, &named, &kept),
    })
}

fn state(has: Has) -> &'static str {
    match has {
        Has::Right => "right",
        Has::Slow => "slow",
        Has::Wrong => "wrong",
        Has::Nothing => "nothing",
    }
}

/// Mean moves and time of the easiest algorithms, by thousandths of a second and moves.
fn means(voice: &Voice, best: &[(u32, usize)]) -> String {
    if best.is_empty() {
        return String::new();
    }
    let number = best.len() as f64;
    let moves = best.iter().map(|&(_, moves)| moves as f64).sum::<f64>() / number;
    let time = best.iter().map(|&(time, _)| f64::from(time)).sum::<f64>() / number / 1000.0;
    let (moves, time) = (voice.decimal(moves, 2), voice.decimal(time, 2));
    voice.say("sheet-means", &[("moves", moves.into()), ("seconds", time.into())])
}

/// The rows that are not right, and how many there are beyond those that are listed.
fn troubles(voice: &Voice, named: &Named, kept: &SheetAccount) -> (Vec<Trouble>, String) {
    let (sheet, report) = (&kept.sheet, &kept.report);
    let here =
        |row: &Row| row.case.is_none_or(|case| (case.orbit, case.buffer) == (named.orbit, named.buffer));
    let all: Vec<(&Row, &Verdict)> = report
        .wrong()
        .map(|number| (&sheet.rows()[number], &report.verdicts[number]))
        .filter(|(row, _)| here(row))
        .collect();
    let beyond = all.len().saturating_sub(MOST_TROUBLES);
    let more = if beyond == 0 { String::new() } else { voice.say("find-more", &[("count", beyond.into())]) };
    let listed = all.into_iter().take(MOST_TROUBLES).map(|(row, verdict)| Trouble {
        case: row.case.map_or_else(|| row.named.clone(), |case| voice.case(case, &named.conventions)),
        unread: row.case.is_none(),
        algorithm: row.algorithm.clone(),
        said: voice.verdict(row, verdict, &named.conventions),
    });
    (listed.collect(), more)
}
