//! Rules of the house that need more than one file or the shape of the code: circles between files, one meaning a name, no
//! wildcard where a kind of piece or of turn must be named, no size written out.

use quote::ToTokens;
use std::collections::{BTreeMap, BTreeSet};
use syn::visit::{self, Visit};
use syn::{Arm, Attribute, File, Item, ItemConst, ItemMod, Pat, UseTree, Visibility};

/// A file of a crate's `src`: its path below that, as module names, and its text.
pub struct Source {
    /// As git names it.
    pub name: String,
    /// The module that it is: `["why", "search"]` for `src/why/search.rs`; nothing for `lib.rs` and `main.rs`.
    pub module: Vec<String>,
    /// What it holds.
    pub file: File,
}

impl Source {
    /// A file below a crate's `src`, parsed; `None` for anything else or what is no Rust, which another check tells.
    pub fn new(name: &str, text: &str) -> Option<Self> {
        let (_, inside) = name.split_once("/src/")?;
        let inside = inside.strip_suffix(".rs")?;
        let mut module: Vec<String> = inside.split('/').map(str::to_owned).collect();
        if matches!(module.last().map(String::as_str), Some("lib" | "main" | "mod")) {
            module.pop();
        }
        Some(Self { name: name.to_owned(), module, file: syn::parse_file(text).ok()? })
    }

    /// The part of the crate that it belongs to: a file, or a folder with all that is in it.
    fn part(&self) -> Option<&str> {
        self.module.first().map(String::as_str)
    }
}

/// All that is wrong with the sources of one crate, a sentence each.
pub fn problems(sources: &[Source]) -> Vec<String> {
    let mut problems = circles(sources);
    problems.extend(double_names(sources));
    for source in sources {
        let mut finder = Finder { name: &source.name, problems: Vec::new() };
        finder.visit_file(&source.file);
        problems.extend(finder.problems);
    }
    problems
}

fn is_test(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|attribute| {
        attribute.path().is_ident("test")
            || (attribute.path().is_ident("cfg")
                && attribute.meta.to_token_stream().to_string().contains("test"))
    })
}

/// Parts of a crate that use one another, each circle once.
fn circles(sources: &[Source]) -> Vec<String> {
    let parts: BTreeSet<&str> = sources.iter().filter_map(Source::part).collect();
    // What the root hands on, by name, and from which part it has it.
    let mut handed_on: BTreeMap<String, String> = BTreeMap::new();
    for source in sources.iter().filter(|source| source.module.is_empty()) {
        for item in &source.file.items {
            if let Item::Use(used) = item {
                paths(&used.tree, &mut Vec::new(), &mut |path| {
                    let path = if path[0] == "crate" || path[0] == "self" { &path[1..] } else { path };
                    if let [part, .., name] = path {
                        handed_on.insert(name.clone(), part.clone());
                    }
                });
            }
        }
    }
    let mut uses: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    for source in sources {
        let Some(own) = source.part() else { continue };
        let mut seen = Paths { depth: source.module.len(), found: BTreeSet::new() };
        seen.visit_file(&source.file);
        for name in &seen.found {
            let part = parts.get(name.as_str()).copied();
            let part = part.or_else(|| parts.get(handed_on.get(name)?.as_str()).copied());
            if let Some(part) = part.filter(|&part| part != own) {
                uses.entry(own).or_default().insert(part);
            }
        }
    }
    let reaches = |from: &str| {
        let mut reached: BTreeSet<&str> = BTreeSet::new();
        let mut open: Vec<&str> = uses.get(from).into_iter().flatten().copied().collect();
        while let Some(part) = open.pop() {
            if reached.insert(part) {
                open.extend(uses.get(part).into_iter().flatten().copied());
            }
        }
        reached
    };
    let reached: BTreeMap<&str, BTreeSet<&str>> = parts.iter().map(|&part| (part, reaches(part))).collect();
    let mut told: BTreeSet<Vec<&str>> = BTreeSet::new();
    for &part in &parts {
        if reached[part].contains(part) {
            let circle = parts
                .iter()
                .copied()
                .filter(|&other| reached[part].contains(other) && reached[other].contains(part));
            told.insert(circle.collect());
        }
    }
    let root = sources.first().map_or("", |source| source.name.split("/src/").next().unwrap_or(""));
    told.into_iter().map(|circle| format!("{root}: these use one another: {}", circle.join(", "))).collect()
}

/// Calls with each path of a tree of `use`.
fn paths(tree: &UseTree, before: &mut Vec<String>, see: &mut dyn FnMut(&[String])) {
    match tree {
        UseTree::Path(path) => {
            before.push(path.ident.to_string());
            paths(&path.tree, before, see);
            before.pop();
        }
        UseTree::Name(name) => {
            before.push(name.ident.to_string());
            see(before);
            before.pop();
        }
        UseTree::Rename(rename) => {
            before.push(rename.ident.to_string());
            see(before);
            before.pop();
        }
        UseTree::Glob(_) => see(before),
        UseTree::Group(group) => group.items.iter().for_each(|tree| paths(tree, before, see)),
    }
}

/// The first names behind `crate`, however it is written, in code that is no test.
struct Paths {
    /// How many modules deep the file is.
    depth: usize,
    found: BTreeSet<String>,
}

impl Paths {
    fn note(&mut self, path: &[String]) {
        let ups = path.iter().take_while(|part| *part == "super").count();
        let rest = match path.first().map(String::as_str) {
            Some("crate") => &path[1..],
            // As many steps up as the file is deep lead to the root.
            Some("super") if ups == self.depth => &path[ups..],
            _ => return,
        };
        self.found.extend(rest.first().cloned());
    }
}

impl<'ast> Visit<'ast> for Paths {
    fn visit_item_mod(&mut self, module: &'ast ItemMod) {
        if !is_test(&module.attrs) {
            self.depth += 1;
            visit::visit_item_mod(self, module);
            self.depth -= 1;
        }
    }

    fn visit_item_use(&mut self, used: &'ast syn::ItemUse) {
        paths(&used.tree, &mut Vec::new(), &mut |path| self.note(path));
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        let names: Vec<String> = path.segments.iter().map(|segment| segment.ident.to_string()).collect();
        self.note(&names);
        visit::visit_path(self, path);
    }
}

/// Public types of one name in one crate.
fn double_names(sources: &[Source]) -> Vec<String> {
    let mut places: BTreeMap<String, Vec<&str>> = BTreeMap::new();
    for source in sources {
        for item in &source.file.items {
            let (name, visibility) = match item {
                Item::Struct(item) => (&item.ident, &item.vis),
                Item::Enum(item) => (&item.ident, &item.vis),
                Item::Trait(item) => (&item.ident, &item.vis),
                Item::Type(item) => (&item.ident, &item.vis),
                _ => continue,
            };
            if !matches!(visibility, Visibility::Inherited) {
                places.entry(name.to_string()).or_default().push(&source.name);
            }
        }
    }
    places
        .into_iter()
        .filter(|(_, places)| places.len() > 1)
        .map(|(name, places)| {
            format!("{}: `{name}` is also the name of another type: {}", places[0], places[1..].join(", "))
        })
        .collect()
}

/// Kinds of pieces and of turns; where one of them is told apart, each must be named.
const TOLD_APART: [(&str, &[&str]); 2] = [
    ("Orbit", &["Corner", "Midge", "Wing", "XCentre", "TCentre", "Oblique"]),
    ("Block", &["Outer", "Inner", "Slice", "Whole"]),
];

struct Finder<'a> {
    name: &'a str,
    problems: Vec<String>,
}

impl Finder<'_> {
    fn tell(&mut self, line: usize, what: &str) {
        self.problems.push(format!("{}:{line}: {what}", self.name));
    }
}

/// Whether a pattern names one of the kinds, not inside a wider tuple or struct.
fn names_a_kind(pattern: &Pat) -> bool {
    let path = match pattern {
        Pat::Path(pattern) => &pattern.path,
        Pat::Struct(pattern) => &pattern.path,
        Pat::TupleStruct(pattern) => &pattern.path,
        Pat::Or(pattern) => return pattern.cases.iter().any(names_a_kind),
        Pat::Paren(pattern) => return names_a_kind(&pattern.pat),
        Pat::Reference(pattern) => return names_a_kind(&pattern.pat),
        _ => return false,
    };
    let names: Vec<String> = path.segments.iter().map(|segment| segment.ident.to_string()).collect();
    let [.., owner, variant] = names.as_slice() else { return false };
    TOLD_APART
        .iter()
        .any(|(kind, variants)| owner == kind || (owner == "Self" && variants.contains(&variant.as_str())))
}

fn is_wildcard(arm: &Arm) -> bool {
    matches!(arm.pat, Pat::Wild(_)) || matches!(&arm.pat, Pat::Ident(name) if name.subpat.is_none())
}

impl<'ast> Visit<'ast> for Finder<'_> {
    fn visit_item_mod(&mut self, module: &'ast ItemMod) {
        if !is_test(&module.attrs) {
            visit::visit_item_mod(self, module);
        }
    }

    fn visit_item_fn(&mut self, function: &'ast syn::ItemFn) {
        if !is_test(&function.attrs) {
            visit::visit_item_fn(self, function);
        }
    }

    // A named constant says why its size is the one.
    fn visit_item_const(&mut self, _: &'ast ItemConst) {}

    fn visit_expr_match(&mut self, matched: &'ast syn::ExprMatch) {
        let kinds = matched.arms.iter().any(|arm| names_a_kind(&arm.pat));
        if let Some(wild) = matched.arms.iter().find(|arm| kinds && is_wildcard(arm)) {
            let line = wild.fat_arrow_token.spans[0].start().line;
            self.tell(
                line,
                "`_` stands for kinds that must be named, so a new one would be taken in silently",
            );
        }
        visit::visit_expr_match(self, matched);
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        let names: Vec<String> = path.segments.iter().map(|segment| segment.ident.to_string()).collect();
        if let [.., owner, constant] = names.as_slice()
            && owner == "Size"
            && matches!(constant.as_str(), "TWO" | "THREE")
        {
            let line = path.segments[0].ident.span().start().line;
            self.tell(line, "a size is written out; ask what the size has, or name a constant that says why");
        }
        visit::visit_path(self, path);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn crate_of(files: &[(&str, &str)]) -> Vec<String> {
        let sources: Vec<Source> = files
            .iter()
            .filter_map(|(name, text)| Source::new(&format!("crates/a/src/{name}"), text))
            .collect();
        assert_eq!(sources.len(), files.len());
        problems(&sources)
    }

    #[test]
    fn a_circle_is_found_however_it_is_written() {
        let straight = [
            ("lib.rs", "mod a; mod b; pub use b::B;"),
            ("a.rs", "use crate::b::B;"),
            ("b.rs", "pub struct B;"),
        ];
        assert!(crate_of(&straight).is_empty());
        let closed = [straight[0], straight[1], ("b.rs", "pub struct B; fn f() { super::a::g() }")];
        assert_eq!(crate_of(&closed), ["crates/a: these use one another: a, b"]);
        // Through what the root hands on, and from a folder's file.
        let handed = [straight[0], ("a/c.rs", "use crate::B;"), ("b.rs", "use crate::a::c; pub struct B;")];
        assert_eq!(crate_of(&handed).len(), 1);
        let tested =
            [straight[0], straight[1], ("b.rs", "pub struct B; #[cfg(test)] mod tests { use crate::a; }")];
        assert!(crate_of(&tested).is_empty());
    }

    #[test]
    fn a_name_means_one_thing() {
        assert_eq!(crate_of(&[("a.rs", "pub struct Step;"), ("b.rs", "pub enum Step {}")]).len(), 1);
        assert!(crate_of(&[("a.rs", "pub struct Step;"), ("b.rs", "struct Step;")]).is_empty());
    }

    #[test]
    fn a_wildcard_over_kinds_is_found() {
        let wild = "fn f(o: Orbit) { match o { Orbit::Corner => 1, _ => 2 }; }";
        assert_eq!(crate_of(&[("a.rs", wild)]).len(), 1);
        let own = "impl Orbit { fn f(self) { match self { Self::Wing { .. } => 1, other => 2 }; } }";
        assert_eq!(crate_of(&[("a.rs", own)]).len(), 1);
        let named =
            "fn f(o: Orbit) { match o { Orbit::Corner | Orbit::Midge => 1, Orbit::Wing { .. } => 2 }; }";
        assert!(crate_of(&[("a.rs", named)]).is_empty());
        let others = "fn f(o: Option<u8>) { match o { Some(1) => 1, _ => 2 }; }";
        assert!(crate_of(&[("a.rs", others)]).is_empty());
    }

    #[test]
    fn a_size_written_out_is_found_but_not_in_tests_and_named_constants() {
        assert_eq!(crate_of(&[("a.rs", "fn f() -> Size { Size::THREE }")]).len(), 1);
        assert!(crate_of(&[("a.rs", "const SOLVED: Size = Size::TWO;")]).is_empty());
        assert!(crate_of(&[("a.rs", "#[cfg(test)] mod tests { fn f() { Size::TWO; } }")]).is_empty());
    }
}
