//! What is said when the arguments cannot be understood.

use crate::arguments::NoNumber;
use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{Command, Error};
use std::error::Error as _;
use std::ffi::OsString;
use voice::Voice;

/// The sentence for arguments that cannot be understood, and where to look further.
pub fn sentence(error: &Error, program: &Command, given: &[OsString], voice: &Voice) -> String {
    let said = what(error, voice);
    let meant = [ContextKind::SuggestedArg, ContextKind::SuggestedSubcommand, ContextKind::SuggestedValue];
    let meant = meant.into_iter().flat_map(|kind| texts(error, kind)).next();
    let meant = meant.map(|word| voice.say("did-you-mean", &[("word", word.into())]));
    let further = voice.say("usage-help", &[("call", call(program, given).into())]);
    [Some(said), meant, Some(further)].into_iter().flatten().collect::<Vec<_>>().join(" ")
}

fn what(error: &Error, voice: &Voice) -> String {
    let of = |kind| texts(error, kind);
    let option = of(ContextKind::InvalidArg);
    let first = |kind: ContextKind| of(kind).into_iter().next().unwrap_or_default();
    match error.kind() {
        ErrorKind::InvalidValue | ErrorKind::ValueValidation | ErrorKind::NoEquals => {
            let (text, option) = (first(ContextKind::InvalidValue), first(ContextKind::InvalidArg));
            let known = of(ContextKind::ValidValue);
            if text.is_empty() {
                return if known.is_empty() {
                    voice.say("usage-no-value", &[("option", option.into())])
                } else {
                    let blanks = [("option", option.into()), ("known", voice.either(&known).into())];
                    voice.say("usage-no-value-of", &blanks)
                };
            }
            let blanks = |name: &'static str, value: String| {
                vec![("text", text.clone().into()), ("option", option.clone().into()), (name, value.into())]
            };
            if let Some(number) = error.source().and_then(|source| source.downcast_ref::<NoNumber>()) {
                let mut blanks = blanks("least", number.least.to_string());
                return match number.most {
                    Some(most) => {
                        blanks.push(("most", most.to_string().into()));
                        voice.say("usage-number-between", &blanks)
                    }
                    None => voice.say("usage-number", &blanks),
                };
            }
            voice.say("usage-value", &blanks("known", voice.either(&known)))
        }
        ErrorKind::UnknownArgument => {
            let text = first(ContextKind::InvalidArg);
            let message = if text.starts_with('-') { "usage-unknown-option" } else { "usage-too-much" };
            voice.say(message, &[("text", text.into())])
        }
        ErrorKind::InvalidSubcommand => {
            voice.say("usage-unknown-command", &[("text", first(ContextKind::InvalidSubcommand).into())])
        }
        ErrorKind::ArgumentConflict => {
            let others = of(ContextKind::PriorArg);
            let option = voice.list(&option);
            if others.is_empty() || others == [option.clone()] {
                return voice.say("usage-twice", &[("option", option.into())]);
            }
            voice.say("usage-conflict", &[("option", option.into()), ("other", voice.list(&others).into())])
        }
        ErrorKind::MissingRequiredArgument => voice
            .say("usage-missing", &[("count", option.len().into()), ("options", voice.list(&option).into())]),
        ErrorKind::MissingSubcommand | ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => {
            let known = voice.list(&of(ContextKind::ValidSubcommand));
            voice.say("usage-missing-command", &[("known", known.into())])
        }
        ErrorKind::TooManyValues | ErrorKind::TooFewValues | ErrorKind::WrongNumberOfValues => {
            voice.say("usage-values", &[("option", first(ContextKind::InvalidArg).into())])
        }
        ErrorKind::InvalidUtf8 => voice.word("usage-not-text"),
        _ => voice.word("usage-other"),
    }
}

fn texts(error: &Error, kind: ContextKind) -> Vec<String> {
    match error.get(kind) {
        Some(ContextValue::String(text)) => vec![text.clone()],
        Some(ContextValue::Strings(texts)) => texts.clone(),
        _ => Vec::new(),
    }
}

/// How the command in question is called, as far as it was understood: `hoodwink algs find`.
fn call(program: &Command, given: &[OsString]) -> String {
    let mut command = program;
    let mut call = vec![program.get_name().to_owned()];
    for word in given.iter().skip(1).filter_map(|word| word.to_str()) {
        if let Some(below) = command.find_subcommand(word) {
            command = below;
            call.push(word.to_owned());
        }
    }
    call.join(" ")
}
