//! The help of the command line in the languages that its sources are not written in.

use crate::Language;
use crate::catalogue::bundle;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};

/// What the commands and options of the command line do, and what stands around them.
///
/// In English that stands beside the options themselves, so there is none for it.
pub struct Help(FluentBundle<FluentResource>);

impl Help {
    /// The help of a language; `None` where the texts beside the options are in it.
    pub fn of(language: Language) -> Option<Self> {
        match language {
            Language::English => None,
            Language::German => Some(Self(bundle(language, &[include_str!("../locales/de/help.ftl")]))),
        }
    }

    /// A text with its blanks filled in; `None` if there is none of this name.
    ///
    /// ```
    /// use voice::{Help, Language};
    /// let help = Help::of(Language::German).unwrap();
    /// assert_eq!(help.text("help-default", &[("value", "3")]).unwrap(), "[sonst: 3]");
    /// assert_eq!(help.text("help-nothing", &[]), None);
    /// ```
    pub fn text(&self, name: &str, blanks: &[(&str, &str)]) -> Option<String> {
        let pattern = self.0.get_message(name)?.value()?;
        let mut args = FluentArgs::with_capacity(blanks.len());
        for (name, value) in blanks {
            args.set(*name, *value);
        }
        Some(self.0.format_pattern(pattern, Some(&args), &mut Vec::new()).into_owned())
    }

    /// The names of all texts of commands and options, for whoever wants to know whether each is used.
    pub fn names(language: Language) -> Vec<&'static str> {
        let source = match language {
            Language::English => "",
            Language::German => include_str!("../locales/de/help.ftl"),
        };
        source.lines().filter_map(|line| line.split_once(" =")).map(|(name, _)| name).collect()
    }
}
