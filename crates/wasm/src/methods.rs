//! The table of everything that a page can ask.

use serde::{Deserialize, Serialize};
use voice::{Language, Voice};

use crate::Failure;
use crate::call::{Call, Nothing, Progress};
use crate::desk::Desk;
use crate::document::{DocumentKind, DocumentName};
use crate::{
    about, amend, bench, case, check, condition, conventions, glossary, import, lesson, link, look, moment,
    paint, play, records, said, scene, scramble, sequence, sheet, texts, trace, why,
};

/// The engine of one page, with what it keeps between two requests so that the second need not compute it again.
#[derive(Default)]
pub struct Engine {
    speech: Speech,
    pub(crate) desk: Desk,
}

/// What says things: the catalogues that were told or are inside, each read once.
#[derive(Default)]
struct Speech(Vec<Voice>);

impl Speech {
    /// The voice of a language.
    fn voice(&mut self, language: Language) -> Option<&Voice> {
        let known = self.0.iter().position(|voice| voice.language() == language);
        #[cfg(feature = "catalogues")]
        let known = known.or_else(|| {
            self.0.push(Voice::new(language));
            Some(self.0.len() - 1)
        });
        self.0.get(known?)
    }
}

/// Lists methods once; the dispatch and the TypeScript types are both made from the list.
macro_rules! methods {
    ($table:ident, $names:ident, $visit:ident; $($(#[doc = $doc:literal])* $name:literal: $arguments:ty => $view:ty, $answer:expr;)*) => {
        /// The names of the methods of this module, in order.
        pub const $names: &[&str] = &[$($name),*];

        /// Answers a request if its method is in this table.
        fn $table(call: &mut Call<'_>, method: &str, arguments: &str) -> Option<Result<String, Failure>> {
            match method {
                $($name => Some(answer::<$arguments, $view>($answer, call, arguments)),)*
                _ => None,
            }
        }

        /// Tells the visitor each method: its name, its documentation, its types.
        #[cfg(test)]
        pub(crate) fn $visit(visitor: &mut impl crate::typescript::MethodVisitor) {
            $(visitor.visit::<$arguments, $view>($name, concat!($($doc, "\n",)*).trim());)*
        }
    };
}

impl Engine {
    /// Answers one request: `arguments` is JSON of the method's arguments, the answer JSON of its view.
    ///
    /// # Errors
    /// The sentence why there is no view: an unknown method, arguments of another shape, or what the method
    /// itself has to say.
    pub fn call(
        &mut self,
        method: &str,
        language: &str,
        arguments: &str,
        report: &mut dyn FnMut(Progress),
    ) -> Result<String, Failure> {
        let language = Language::from_tag(language).unwrap_or_default();
        let Some(voice) = self.speech.voice(language) else {
            return Err(Failure::new(format!(
                "The texts of the language \"{}\" were not told.",
                language.tag()
            )));
        };
        let mut call = Call { voice, report, desk: &mut self.desk };
        let mut found = None;
        if cfg!(feature = "first") {
            found = first(&mut call, method, arguments);
        }
        if cfg!(feature = "rest") && found.is_none() {
            found = rest(&mut call, method, arguments);
        }
        if cfg!(feature = "deep") && found.is_none() {
            found = deep(&mut call, method, arguments);
        }
        found.unwrap_or_else(|| Err(Failure::new(format!("The engine has no method \"{method}\"."))))
    }

    /// Takes in the catalogue of a language, in the form of [`Voice::taught`]; one that is there is replaced. A language that is none is
    /// passed over.
    pub fn teach(&mut self, language: &str, catalogue: &str) {
        if let Some(language) = Language::from_tag(language) {
            self.speech.0.retain(|voice| voice.language() != language);
            self.speech.0.push(Voice::taught(language, catalogue));
        }
    }

    /// Takes in a document that requests then name by handle and revision. A kind that is none is passed over: whoever names such
    /// a document is told that it is missing.
    pub fn put(&mut self, kind: &str, handle: &str, revision: u32, text: &str) {
        if let Some(kind) = DocumentKind::named(kind) {
            self.desk.documents.put(kind, DocumentName { handle: handle.to_owned(), revision }, text);
        }
    }
}

// What the first screen needs.
methods! { first, FIRST, visit_first;
    /// Version of the engine and the languages it speaks.
    "about": Nothing => about::About, |_, _| Ok(about::about());
    /// What the bench begins with.
    "begin": Nothing => bench::Beginning, |call, _| bench::beginning(call);
    /// The execution as a time line.
    "play": trace::Puzzle => play::TimeLine, |call, puzzle| play::time_line(call, &puzzle);
    /// Cube and thread in one for the pixels that there are.
    "scene": scene::WantedScene => scene::DrawnScene, |call, wanted| scene::scene(call, &wanted);
    /// Reads a sequence of moves, or says where it is none.
    "sequence": sequence::Typed => sequence::Sequence, |call, typed| sequence::sequence(call, &typed);
    /// Every text of the screens in the language of the request.
    "texts": Nothing => texts::Texts, |call, _| Ok(texts::texts(call));
    /// The memo with the reason for every letter.
    "trace": trace::Puzzle => trace::Traced, |call, puzzle| trace::trace(call, &puzzle);
}

// What a page loads when it has nothing else to do, or when it is first asked for.
methods! { rest, REST, visit_rest;
    /// The part of an address that carries a moment of the bench.
    "address": moment::MomentSetting => link::LinkPart, |_, setting| Ok(moment::address(setting));
    /// A sheet after a change.
    "amend": amend::Amended => amend::Revised, |call, amended| amend::amend(call, &amended);
    /// Everything that is known of a case.
    "case": case::OfSheet => case::Case, |call, of| case::case(call, &of);
    /// A sheet as a grid.
    "cases": sheet::Filtered => sheet::Cases, |call, filtered| sheet::cases(call, &filtered);
    /// A text as a code that a camera reads.
    "code": moment::ToCode => moment::Code, |call, asked| Ok(moment::code(call, &asked));
    /// Conventions as they are shown, perhaps after a change.
    "conventions": conventions::Edited => conventions::Settled, |call, edited| conventions::edit(call, &edited);
    /// A sheet as a file.
    "export": amend::Exported => amend::SheetFile, |call, exported| amend::export(call, &exported);
    /// The easiest algorithms for a case, by search.
    "find": case::Sought => case::Found, |call, sought| case::find(call, &sought);
    /// Words of the trade and what they mean.
    "glossary": Nothing => Vec<glossary::WordSaid>, |call, _| glossary::glossary(call);
    /// Takes a sheet in, with an account of every row.
    "import": import::Brought => import::Import, |call, brought| import::import(call, &brought);
    /// The part of an address that carries a lesson.
    "link": link::LessonSetting => link::LinkPart, |_, setting| Ok(link::write(setting));
    /// What an address of any version carries of a lesson.
    "linked": link::Address => link::LessonSetting, |call, address| link::read(call, &address);
    /// What an address of any version carries of a moment of the bench.
    "opened": link::Address => moment::MomentSetting, |call, address| moment::opened(call, &address);
    /// The net with a sticker painted.
    "paint": paint::Brush => paint::Painted, |call, brush| paint::paint(call, &brush);
    /// Pictures of cases.
    "pictures": case::Pictured => Vec<String>, |call, pictured| case::pictures(call, &pictured);
    /// A record of the browser in its present form.
    "renew": records::FoundRecord => records::Renewed, |call, found| records::renew(call, &found);
    /// The puzzle in words and as a table.
    "said": said::ToSay => said::CubeSaid, |call, asked| said::said(call, &asked);
    /// A case at a moment of an algorithm, perhaps in the middle of a turn.
    "turned": case::Turned => look::Drawn, |call, turned| case::turned(call, &turned);
}

// What looks into an attempt, and scrambles that are drawn. It may take long, so it holds nothing else up.
methods! { deep, DEEP, visit_deep;
    /// Whether a memo, or moves that were made, are right.
    "check": check::ToCheck => check::Checked, |call, asked| check::check(call, &asked);
    /// A random scramble that meets a condition.
    "conditional": condition::ConditionalDraw => scramble::RandomScramble, |call, draw| condition::conditional(call, &draw);
    /// A page for pupils and a sheet of exercises.
    "lesson": lesson::Plan => lesson::Lesson, |call, plan| lesson::lesson(call, &plan);
    /// The conditions of lessons for a size.
    "lessons": condition::OfSize => Vec<condition::Ready>, |call, of| condition::ready(call, &of);
    /// A random scramble.
    "random": scramble::Draw => scramble::RandomScramble, |call, draw| scramble::random(call, &draw);
    /// The slips that explain how an attempt came out.
    "why": why::Attempt => why::Told, |call, attempt| why::explain(call, &attempt);
}

/// The most bytes of a request: a stored record that is to be renewed, as JSON in JSON, with its marks doubled.
const MOST_ARGUMENTS: usize = 2 * formats::records::MOST_BYTES + (1 << 20);

fn answer<A, V>(
    method: impl FnOnce(&mut Call<'_>, A) -> Result<V, Failure>,
    call: &mut Call<'_>,
    arguments: &str,
) -> Result<String, Failure>
where
    A: for<'de> Deserialize<'de>,
    V: Serialize,
{
    if arguments.len() > MOST_ARGUMENTS {
        let blanks = [("bytes", arguments.len().into()), ("most", MOST_ARGUMENTS.into())];
        return Err(Failure::new(call.voice.say("document-too-long", &blanks)));
    }
    let arguments = serde_json::from_str(arguments)
        .map_err(|error| Failure::new(format!("The request is not in the expected form: {error}.")))?;
    let view = method(call, arguments)?;
    serde_json::to_string(&view)
        .map_err(|error| Failure::new(format!("The view cannot be written: {error}.")))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn call(method: &str, arguments: &str) -> Result<String, Failure> {
        Engine::default().call(method, "en", arguments, &mut |_| {})
    }

    #[test]
    fn an_unknown_method_is_named() {
        assert_eq!(call("juggle", "{}").unwrap_err().sentence, "The engine has no method \"juggle\".");
    }

    #[test]
    fn arguments_of_another_shape_are_refused() {
        assert!(call("about", "[1, 2]").unwrap_err().sentence.starts_with("The request is not"));
        assert!(call("about", "{").is_err());
    }

    #[test]
    fn the_language_follows_each_request() {
        let mut engine = Engine::default();
        let mut word = |tag: &str| {
            let view = engine.call("texts", tag, "{}", &mut |_| {}).unwrap();
            let view: serde_json::Value = serde_json::from_str(&view).unwrap();
            (
                view["language"].as_str().unwrap().to_owned(),
                view["texts"]["nav-why"].as_str().unwrap().to_owned(),
            )
        };
        assert_eq!(word("de-CH"), ("de".to_owned(), "Warum".to_owned()));
        assert_eq!(word("en"), ("en".to_owned(), "Why".to_owned()));
        assert_eq!(word("eo").0, "en");
    }

    #[test]
    fn a_view_is_json() {
        let view: serde_json::Value = serde_json::from_str(&call("about", "{}").unwrap()).unwrap();
        assert_eq!(view["version"], env!("CARGO_PKG_VERSION"));
    }
}
