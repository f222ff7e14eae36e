//! Pages to print: sheets of scrambles, lessons, exercises with their answers on pages of their own.

use crate::svg::Svg;
use maud::{DOCTYPE, Markup, PreEscaped, html};

/// The paper, which the print dialogue then offers.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum Paper {
    /// 210 mm by 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 in by 11 in (ANSI/ASME Y14.1).
    Letter,
}

/// A piece of a page.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Passage {
    /// A heading within an entry.
    Heading(String),
    /// Words.
    Text(String),
    /// Moves, in the type for moves.
    Moves(String),
    /// Points one under another.
    List(Vec<String>),
    /// Pictures side by side.
    Pictures(Vec<Svg>),
    /// Lines to write on.
    Lines(u8),
}

/// A numbered entry: a scramble, a step of a lesson, an exercise.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Entry {
    /// What stands beside the number; may be empty.
    pub heading: String,
    /// What it consists of.
    pub blocks: Vec<Passage>,
    /// The answer, which goes on a later page; empty if there is none.
    pub answer: Vec<Passage>,
}

/// A page or several to print. It holds no scripts and loads nothing.
///
/// ```
/// use draw::{Entry, Handout, Passage};
/// let mut handout = Handout::new("Corners <first>", "en");
/// handout.answers = "Answers".to_owned();
/// handout.entries.push(Entry {
///     heading: "Memo this".to_owned(),
///     blocks: vec![Passage::Moves("R U R' U'".to_owned())],
///     answer: vec![Passage::Text("N W".to_owned())],
/// });
/// let page = handout.html();
/// assert!(page.contains("Corners &lt;first&gt;") && page.contains("Answers"));
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Handout {
    /// The title.
    pub title: String,
    /// The language of its words, as a BCP 47 tag.
    pub language: String,
    /// The paper.
    pub paper: Paper,
    /// What stands before the entries.
    pub introduction: Vec<Passage>,
    /// The entries, numbered from `first`.
    pub entries: Vec<Entry>,
    /// The number of the first entry.
    pub first: usize,
    /// How many entries stand side by side, 1 to 3.
    pub columns: u8,
    /// What heads the pages of answers.
    pub answers: String,
    /// A line at the end, such as the seed it was made with; may be empty.
    pub foot: String,
}

impl Handout {
    /// An empty handout on A4, one entry under another.
    pub fn new(title: impl Into<String>, language: impl Into<String>) -> Self {
        Self {
            title: title.into(),
            language: language.into(),
            paper: Paper::A4,
            introduction: Vec::new(),
            entries: Vec::new(),
            first: 1,
            columns: 1,
            answers: String::new(),
            foot: String::new(),
        }
    }

    /// The whole page as HTML.
    pub fn html(&self) -> String {
        let columns = self.columns.clamp(1, 3);
        let answered = self.entries.iter().any(|entry| !entry.answer.is_empty());
        html! {
            (DOCTYPE)
            html lang=(self.language) {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width,initial-scale=1";
                    meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'";
                    title { (self.title) }
                    style { (PreEscaped(self.style())) }
                }
                body {
                    main {
                        h1 { (self.title) }
                        @if !self.introduction.is_empty() { section.lead { (blocks(&self.introduction)) } }
                        (self.list(columns, |entry| html! {
                            @if !entry.heading.is_empty() { h3 { (entry.heading) } }
                            (blocks(&entry.blocks))
                        }, |_| true))
                    }
                    @if answered {
                        section.answers {
                            h2.part { (self.answers) }
                            (self.list(columns, |entry| blocks(&entry.answer), |entry| !entry.answer.is_empty()))
                        }
                    }
                    @if !self.foot.is_empty() { footer { (self.foot) } }
                }
            }
        }
        .into_string()
    }

    fn list(&self, columns: u8, show: impl Fn(&Entry) -> Markup, holds: impl Fn(&Entry) -> bool) -> Markup {
        html! {
            ol.{ "c" (columns) } {
                @for (i, entry) in self.entries.iter().enumerate().filter(|(_, entry)| holds(entry)) {
                    li value=(self.first + i) { span.number aria-hidden="true" { (self.first + i) } div { (show(entry)) } }
                }
            }
        }
    }

    fn style(&self) -> String {
        let paper = match self.paper {
            Paper::A4 => "A4",
            Paper::Letter => "letter",
        };
        format!("@page{{size:{paper};margin:14mm}}{STYLE}")
    }
}

/// Screen first, then what paper changes: colours are kept, nothing is torn across pages, answers begin a new one.
const STYLE: &str = "\
*{box-sizing:border-box}\
body{font:12pt/1.45 system-ui,sans-serif;color:#1e1b22;background:#fff;max-width:190mm;margin:0 auto;padding:16px;\
-webkit-print-color-adjust:exact;print-color-adjust:exact}\
h1,h2.part{font-size:1.5em;margin:0 0 .6em;border-bottom:3px solid #6a2a8c;padding-bottom:.2em}\
.lead{margin-bottom:5mm}h3{font-size:1.08em;margin:.15em 0 .4em}h4{font-size:1em;margin:.6em 0 .2em}\
p{margin:.3em 0}ul{margin:.3em 0;padding-left:1.2em}\
ol{list-style:none;margin:0;padding:0;display:grid;gap:6mm}\
ol.c2{grid-template-columns:1fr 1fr}ol.c3{grid-template-columns:1fr 1fr 1fr}\
ol>li{display:flex;gap:3mm;break-inside:avoid;min-width:0}ol>li>div{flex:1;min-width:0}\
.number{flex:none;width:2em;height:2em;border:2px solid #6a2a8c;border-radius:50%;text-align:center;\
font-weight:700;line-height:calc(2em - 4px)}\
.moves{font:1.05em/1.5 ui-monospace,monospace;overflow-wrap:break-word}\
.pictures{display:flex;flex-wrap:wrap;gap:3mm;margin:.4em 0}.pictures svg{max-width:100%;height:auto}\
.line{border-bottom:1px solid #6f6a75;height:9mm}\
.answers{margin-top:14mm}footer{margin-top:8mm;font-size:.8em;color:#6f6a75}\
@media(max-width:560px){ol.c2,ol.c3{grid-template-columns:1fr}}\
@media print{body{max-width:none;margin:0;padding:0;font-size:10.5pt}h1,h2,h3,h4{break-after:avoid}\
.answers{break-before:page;margin-top:0}}";

fn blocks(blocks: &[Passage]) -> Markup {
    html! {
        @for block in blocks {
            @match block {
                Passage::Heading(text) => h4 { (text) },
                Passage::Text(text) => p { (text) },
                Passage::Moves(text) => p.moves { (text) },
                Passage::List(points) => ul { @for point in points { li { (point) } } },
                Passage::Pictures(pictures) => div.pictures { @for picture in pictures { (picture) } },
                Passage::Lines(count) => @for _ in 0..*count { div.line {} },
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn no_text_becomes_markup(odd in "[<>&\"'a-z /=]{0,20}") {
            let marked = format!("<script>{odd}\"onload=");
            let block = || vec![
                Passage::Heading(marked.clone()), Passage::Text(marked.clone()), Passage::Moves(marked.clone()),
                Passage::List(vec![marked.clone()]),
            ];
            let mut handout = Handout::new(marked.clone(), marked.clone());
            handout.introduction = block();
            handout.answers = marked.clone();
            handout.foot = marked.clone();
            handout.entries = vec![Entry { heading: marked.clone(), blocks: block(), answer: block() }];
            let page = handout.html();
            prop_assert!(!page.contains("<script"));
            prop_assert!(!page.contains("\"onload="));
            prop_assert_eq!(page.matches("&lt;script").count(), 18);
        }
    }

    #[test]
    fn answers_keep_the_numbers_of_their_entries() {
        let mut handout = Handout::new("Sheet", "en");
        handout.first = 5;
        let answered = Entry { answer: vec![Passage::Text("yes".into())], ..Entry::default() };
        handout.entries = vec![Entry::default(), answered];
        let page = handout.html();
        let answers = page.split("class=\"answers\"").nth(1).unwrap();
        assert!(answers.contains("value=\"6\"") && !answers.contains("value=\"5\""));
    }
}
