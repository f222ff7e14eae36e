//! The catalogue that a page tells: with it alone everything that a page asks is said in full, and as with all files.

mod asked;

use std::fs;
use std::path::Path;

use asked::{Pages, Said};
use voice::{Language, SCREENS, Voice};
use wasm::Engine;
use wasm::methods::{DEEP, FIRST, REST};

/// The catalogue in one piece, as `cargo xtask site` puts it together.
fn catalogue(language: Language) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../voice/locales").join(language.tag());
    let text = |name: &str| fs::read_to_string(folder.join(name)).unwrap();
    let mut names: Vec<String> = fs::read_dir(&folder)
        .unwrap()
        .map(|file| file.unwrap().file_name().into_string().unwrap())
        .filter(|name| {
            !["cli.ftl", "glossary.ftl", "help.ftl", "record.ftl", "serve.ftl", "screens.ftl"]
                .contains(&name.as_str())
        })
        .collect();
    names.sort();
    let sentences: String = names.iter().map(|name| text(name)).collect();
    format!("{sentences}{SCREENS}\n{}", text("screens.ftl"))
}

#[test]
fn a_page_says_with_its_catalogue_what_is_said_with_all_files() {
    let mut taught = Engine::default();
    for language in Language::ALL {
        taught.teach(language.tag(), &catalogue(language));
    }
    let mut whole = Engine::default();
    let mut pages = Pages::new(11);
    let mut sentences = 0;
    for method in FIRST.iter().chain(REST).chain(DEEP) {
        for said in (0..12).flat_map(|_| pages.say(method)).collect::<Vec<_>>() {
            match said {
                Said::Put { kind, handle, revision, content } => {
                    taught.put(kind, handle, revision, &content);
                    whole.put(kind, handle, revision, &content);
                }
                Said::Asked { method, language, arguments } => {
                    let asked = arguments.to_string();
                    let told = taught.call(method, language, &asked, &mut |_| {});
                    assert_eq!(told, whole.call(method, language, &asked, &mut |_| {}), "{method} {asked}");
                    sentences += usize::from(told.is_err());
                }
            }
        }
    }
    assert!(sentences > 20);
}

#[test]
fn a_catalogue_in_one_piece_has_the_texts_of_the_screens() {
    for language in Language::ALL {
        let taught = Voice::taught(language, &catalogue(language));
        assert_eq!(taught.screen_texts(), Voice::new(language).screen_texts());
    }
}

#[test]
fn no_message_for_a_page_names_an_option_of_the_command_line() {
    for language in Language::ALL {
        let mut name = String::new();
        for line in catalogue(language).lines() {
            if let Some((begun, _)) = line.split_once(" =").filter(|_| !line.starts_with(' ')) {
                begun.clone_into(&mut name);
            }
            let of_the_command = OF_THE_COMMAND.contains(&name.as_str());
            assert!(of_the_command || !line.contains("--"), "{}, {name}: {line}", language.tag());
        }
    }
}

/// Messages that a command asks for by name, or that a page says in words of its own (`page-…`).
const OF_THE_COMMAND: [&str; 22] = [
    "find-rings-longest",
    "find-rings-many",
    "find-rings-metric",
    "sheet-kind-unknown",
    "sheet-order-unknown",
    "sheet-several",
    "import-question",
    "find-one-or-all",
    "find-twist-takes",
    "find-flip-takes",
    "find-exchange-takes",
    "find-last-takes",
    "find-memory",
    "find-memory-any",
    "turns-free",
    "check-parity-twice",
    "check-no-memo",
    "scramble-sheet-too-many",
    "sheet-seed",
    "why-deeper",
    "why-no-outcome",
    "why-question",
];
