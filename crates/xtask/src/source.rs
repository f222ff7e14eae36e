//! What is wrong inside one file of source, found in its tokens, so that text in strings and comments is no finding.

use proc_macro2::{Delimiter, TokenStream, TokenTree};

/// The most lines of a file before its unit tests; a longer one asks to be two.
pub const MOST_LINES: usize = 800;

/// Something wrong, and where.
#[derive(PartialEq, Eq, Debug)]
pub struct Finding {
    /// Line, from 1.
    pub line: usize,
    /// What is wrong and what would be right.
    pub what: String,
}

fn finding(line: usize, what: impl Into<String>) -> Finding {
    Finding { line, what: what.into() }
}

/// Findings that need no knowledge of the language: white space at the end of a line, no line end at the end.
pub fn check_text(text: &str) -> Vec<Finding> {
    let mut findings: Vec<Finding> = text
        .lines()
        .enumerate()
        .filter(|(_, line)| line.ends_with([' ', '\t', '\r']))
        .map(|(index, _)| finding(index + 1, "white space at the end of the line"))
        .collect();
    if !text.is_empty() && !text.ends_with('\n') {
        findings.push(finding(text.lines().count(), "no line end at the end of the file"));
    }
    findings
}

/// Findings in a file of Rust. `long_allowed` is for tests and tables.
pub fn check_rust(text: &str, long_allowed: bool) -> Vec<Finding> {
    let tokens = match text.parse::<TokenStream>() {
        Ok(tokens) => tokens,
        Err(error) => return vec![finding(error.span().start().line, format!("not Rust: {error}"))],
    };
    let mut findings = Vec::new();
    if !has_module_docs(&tokens) {
        findings.push(finding(1, "no `//!` line that says what the file is for"));
    }
    visit(tokens, &mut findings);
    findings.extend(unfinished(text));
    let lines = lines_before_tests(text);
    if lines > MOST_LINES && !long_allowed {
        findings.push(finding(
            lines,
            format!("{lines} lines before the tests; at most {MOST_LINES}: split the file"),
        ));
    }
    findings
}

/// Whether the file begins with `//!`, perhaps after other inner attributes.
fn has_module_docs(tokens: &TokenStream) -> bool {
    let mut tokens = tokens.clone().into_iter();
    while let (Some(TokenTree::Punct(hash)), Some(TokenTree::Punct(bang)), Some(TokenTree::Group(group))) =
        (tokens.next(), tokens.next(), tokens.next())
    {
        if hash.as_char() != '#' || bang.as_char() != '!' {
            return false;
        }
        if first_word(&group.stream()).as_deref() == Some("doc") {
            return true;
        }
    }
    false
}

fn first_word(tokens: &TokenStream) -> Option<String> {
    match tokens.clone().into_iter().next() {
        Some(TokenTree::Ident(word)) => Some(word.to_string()),
        _ => None,
    }
}

fn visit(tokens: TokenStream, findings: &mut Vec<Finding>) {
    let tokens: Vec<TokenTree> = tokens.into_iter().collect();
    for (index, token) in tokens.iter().enumerate() {
        match token {
            TokenTree::Ident(word) => {
                let called = matches!(tokens.get(index + 1), Some(TokenTree::Punct(p)) if p.as_char() == '!');
                if called && (word == "dbg" || word == "todo" || word == "unimplemented") {
                    findings
                        .push(finding(word.span().start().line, format!("`{word}!` is left in the code")));
                }
            }
            TokenTree::Punct(hash) if hash.as_char() == '#' => {
                let next = tokens.get(index + 1);
                let inner = matches!(next, Some(TokenTree::Punct(p)) if p.as_char() == '!');
                let group = if inner { tokens.get(index + 2) } else { next };
                if let Some(TokenTree::Group(group)) = group
                    && group.delimiter() == Delimiter::Bracket
                {
                    check_attribute(&group.stream(), hash.span().start().line, findings);
                }
            }
            TokenTree::Group(group) => visit(group.stream(), findings),
            _ => {}
        }
    }
}

fn check_attribute(attribute: &TokenStream, line: usize, findings: &mut Vec<Finding>) {
    let words = idents(attribute.clone());
    match words.first().map(String::as_str) {
        Some("ignore") => findings.push(finding(line, "a test is ignored: mend it or take it out")),
        Some("allow" | "expect" | "cfg_attr") if words.iter().any(|word| word == "dead_code") => {
            findings.push(finding(line, "dead code is allowed: take it out instead"));
        }
        Some("cfg_attr") if words.iter().any(|word| word == "ignore") => {
            findings.push(finding(line, "a test is ignored: mend it or take it out"));
        }
        _ => {}
    }
}

fn idents(tokens: TokenStream) -> Vec<String> {
    let mut words = Vec::new();
    for token in tokens {
        match token {
            TokenTree::Ident(word) => words.push(word.to_string()),
            TokenTree::Group(group) => words.extend(idents(group.stream())),
            _ => {}
        }
    }
    words
}

/// Notes to oneself that something is unfinished.
fn unfinished(text: &str) -> impl Iterator<Item = Finding> {
    const NOTES: [&str; 2] = [concat!("TO", "DO"), concat!("FIX", "ME")];
    text.lines().enumerate().flat_map(|(index, line)| {
        NOTES
            .iter()
            .filter(|note| line.contains(**note))
            .map(move |note| finding(index + 1, format!("{note}: do it, or write it where work is planned")))
    })
}

fn lines_before_tests(text: &str) -> usize {
    let mut lines = text.lines().peekable();
    let mut count = 0;
    while let Some(line) = lines.next() {
        if line == "#[cfg(test)]" && lines.peek().is_some_and(|next| next.starts_with("mod ")) {
            break;
        }
        count += 1;
    }
    count
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(text: &str) -> Vec<usize> {
        check_rust(text, false).iter().map(|finding| finding.line).collect()
    }

    #[test]
    fn a_file_says_what_it_is_for() {
        assert!(lines("//! Words.\nfn a() {}\n").is_empty());
        assert!(lines("#![allow(x)]\n//! Words.\n").is_empty());
        assert_eq!(lines("fn a() {}\n"), [1]);
        assert_eq!(lines("/// Words.\nfn a() {}\n"), [1]);
    }

    #[test]
    fn left_over_macros_are_found_but_not_in_text() {
        assert_eq!(lines("//! W.\nfn a() {\n    dbg!(1);\n}\n"), [3]);
        assert_eq!(lines("//! W.\nfn a() {\n    if b { todo!() }\n}\n"), [3]);
        assert!(lines("//! W.\n// dbg!(1)\nconst A: &str = \"dbg!(1)\";\n").is_empty());
    }

    #[test]
    fn ignored_tests_and_dead_code_are_found() {
        assert_eq!(lines("//! W.\n#[test]\n#[ignore]\nfn a() {}\n"), [3]);
        assert_eq!(lines("//! W.\nmod m {\n    #[ignore = \"slow\"]\n    fn a() {}\n}\n"), [3]);
        assert_eq!(lines("//! W.\n#![allow(dead_code)]\n"), [2]);
        assert!(lines("//! W.\n#[expect(clippy::x, reason = \"we ignore it\")]\nfn a() {}\n").is_empty());
    }

    #[test]
    fn notes_to_oneself_are_found() {
        assert_eq!(lines(concat!("//! W.\n// TO", "DO: more\n")), [2]);
    }

    #[test]
    fn a_long_file_asks_to_be_two_but_its_tests_do_not_count() {
        let long = "//! W.\n".to_owned() + &"// line\n".repeat(MOST_LINES);
        assert_eq!(lines(&long), [MOST_LINES + 1]);
        assert!(check_rust(&long, true).is_empty());
        let tests = format!("//! W.\n#[cfg(test)]\nmod tests {{\n{}}}\n", "// line\n".repeat(MOST_LINES));
        assert!(lines(&tests).is_empty());
    }

    #[test]
    fn white_space_at_the_end_is_found() {
        assert_eq!(check_text("a\nb \nc\n").len(), 1);
        assert_eq!(check_text("a")[0].what, "no line end at the end of the file");
        assert!(check_text("").is_empty());
    }
}
