//! Every language says everything, with the same blanks.

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use std::collections::{BTreeMap, BTreeSet};
use voice::Language;

fn blanks_of(pattern: &Pattern<&str>, blanks: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else { continue };
        let mut inline = |inline: &InlineExpression<&str>| {
            if let InlineExpression::VariableReference { id } = inline {
                blanks.insert(id.name.to_owned());
            }
        };
        match expression {
            Expression::Inline(expression) => inline(expression),
            Expression::Select { selector, variants } => {
                inline(selector);
                for variant in variants {
                    blanks_of(&variant.value, blanks);
                }
            }
        }
    }
}

fn messages(language: Language) -> BTreeMap<String, BTreeSet<String>> {
    let mut messages = BTreeMap::new();
    for source in language.sources() {
        let parsed = fluent_syntax::parser::parse(*source).expect("the catalogue can be read");
        for entry in parsed.body {
            if let Entry::Message(message) = entry {
                let mut blanks = BTreeSet::new();
                blanks_of(&message.value.expect("a message has a value"), &mut blanks);
                assert!(
                    messages.insert(message.id.name.to_owned(), blanks).is_none(),
                    "{} twice",
                    message.id.name
                );
            }
        }
    }
    messages
}

#[test]
fn all_languages_have_the_same_messages_with_the_same_blanks() {
    let english = messages(Language::English);
    for language in Language::ALL {
        let other = messages(language);
        assert_eq!(
            english.keys().collect::<Vec<_>>(),
            other.keys().collect::<Vec<_>>(),
            "messages of {language:?}"
        );
        for (name, blanks) in &english {
            // A language may leave out the kind where its words do not change with it.
            let ours: BTreeSet<_> = blanks.iter().filter(|blank| *blank != "kind").collect();
            let theirs: BTreeSet<_> = other[name].iter().filter(|blank| *blank != "kind").collect();
            assert_eq!(ours, theirs, "blanks of {name} in {language:?}");
        }
    }
}
