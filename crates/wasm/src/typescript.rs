//! Writes the TypeScript side of the table of methods and fails when the committed file differs from it.
//! `UPDATE_EXPECT=1 cargo test -p wasm typescript` writes the file anew.

use std::any::TypeId;
use std::collections::BTreeMap;
use std::fmt::Write as _;

use expect_test::expect_file;
use ts_rs::{Config, TS, TypeVisitor};
use voice::{Language, Voice};

use crate::call::Progress;
use crate::methods::{DEEP, FIRST, REST, visit_deep, visit_first, visit_rest};
use crate::{DocumentKind, Failure, PuzzleContent};

/// Is shown each method of the table.
pub(crate) trait MethodVisitor {
    fn visit<A: TS + 'static, V: TS + 'static>(&mut self, name: &str, doc: &str);
}

struct Declarations {
    config: Config,
    /// Declaration by name of type, so that the file has a fixed order.
    types: BTreeMap<String, (TypeId, String)>,
    methods: String,
}

impl TypeVisitor for Declarations {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        // Types without a file of their own are built into TypeScript.
        if T::output_path().is_none() {
            T::visit_dependencies(self);
            T::visit_generics(self);
            return;
        }
        let name = T::ident(&self.config);
        if let Some((known, _)) = self.types.get(&name) {
            assert_eq!(*known, TypeId::of::<T>(), "two types are called {name}");
            return;
        }
        let doc = T::docs().unwrap_or_default();
        let declaration = format!("{doc}export {}\n", T::decl(&self.config));
        self.types.insert(name, (TypeId::of::<T>(), declaration));
        T::visit_dependencies(self);
        T::visit_generics(self);
    }
}

impl MethodVisitor for Declarations {
    fn visit<A: TS + 'static, V: TS + 'static>(&mut self, name: &str, doc: &str) {
        TypeVisitor::visit::<A>(self);
        TypeVisitor::visit::<V>(self);
        let (arguments, view) = (A::name(&self.config), V::name(&self.config));
        writeln!(self.methods, "  /** {doc} */\n  {name}: {{ arguments: {arguments}; view: {view} }};")
            .unwrap();
    }
}

fn types() -> String {
    // Counts in views stay far below 2^53, so a plain number holds each of them.
    let config = Config::new().with_large_int("number");
    let mut all = Declarations { config, types: BTreeMap::new(), methods: String::new() };
    visit_first(&mut all);
    visit_rest(&mut all);
    visit_deep(&mut all);
    TypeVisitor::visit::<Progress>(&mut all);
    TypeVisitor::visit::<Failure>(&mut all);
    TypeVisitor::visit::<DocumentKind>(&mut all);
    TypeVisitor::visit::<PuzzleContent>(&mut all);
    let declarations: Vec<String> = all.types.into_values().map(|(_, declaration)| declaration).collect();
    let names: Vec<String> = Voice::new(Language::English)
        .screen_texts()
        .into_keys()
        .map(|name| format!("  | \"{name}\""))
        .collect();
    let text = format!(
        "// Written from the Rust side (crates/wasm); a test there fails when this file is stale.\n\n{}\n\
         /** Everything that can be asked. */\nexport interface Methods {{\n{}}}\n\n\
         /** Name of a text in the catalogue of the screens. */\nexport type TextName =\n{};\n",
        declarations.join("\n"),
        all.methods,
        names.join("\n"),
    );
    // The writer of the types leaves spaces at the ends of lines.
    text.lines().map(|line| line.trim_end().to_owned() + "\n").collect()
}

fn modules() -> String {
    let mut all: Vec<(&str, &str)> = FIRST.iter().map(|&name| (name, "first")).collect();
    all.extend(REST.iter().map(|&name| (name, "rest")));
    all.extend(DEEP.iter().map(|&name| (name, "deep")));
    all.sort_unstable();
    let lines = all.iter().fold(String::new(), |mut lines, (name, module)| {
        writeln!(lines, "  {name}: \"{module}\",").unwrap();
        lines
    });
    format!(
        "// Written from the Rust side (crates/wasm); a test there fails when this file is stale.\n\n\
         import type {{ Methods }} from \"./types\";\n\n\
         /** The modules of the engine: what the first screen needs; the rest; what looks into an attempt and draws scrambles. */\n\
         export type ModuleName = \"first\" | \"rest\" | \"deep\";\n\n\
         /** Which module answers a method. */\n\
         export const MODULE_OF: Record<keyof Methods, ModuleName> = {{\n{lines}}};\n"
    )
}

/// Texts that are needed when the engine, which has all the others, is not there.
const WITHOUT_ENGINE: [&str; 6] = [
    "app-name",
    "engine-failed-text",
    "engine-failed-title",
    "engine-starting",
    "needs-scripts",
    "try-again",
];

fn texts_without_engine() -> String {
    let mut out = String::from(
        "// Written from the catalogues (crates/wasm); a test there fails when this file is stale.\n\n\
         /** Texts for a page whose engine is not there yet, or cannot start. */\nexport const BOOT = {\n",
    );
    for language in Language::ALL {
        let texts = Voice::new(language).screen_texts();
        writeln!(out, "  {}: {{", language.tag()).unwrap();
        for name in WITHOUT_ENGINE {
            writeln!(out, "    \"{name}\": {},", serde_json::to_string(&texts[name]).unwrap()).unwrap();
        }
        out += "  },\n";
    }
    out + "} as const;\n"
}

#[test]
fn the_texts_for_a_page_without_engine_are_those_of_the_catalogue() {
    expect_file!["../../../web/src/engine/boot.ts"].assert_eq(&texts_without_engine());
}

#[test]
fn the_committed_modules_are_those_of_the_table() {
    expect_file!["../../../web/src/engine/modules.ts"].assert_eq(&modules());
}

#[test]
fn no_method_stands_twice() {
    let mut all: Vec<&str> = FIRST.iter().chain(REST).chain(DEEP).copied().collect();
    let count = all.len();
    all.sort_unstable();
    all.dedup();
    assert_eq!(all.len(), count);
}

#[test]
fn the_committed_types_are_those_of_the_engine() {
    expect_file!["../../../web/src/engine/types.ts"].assert_eq(&types());
}
