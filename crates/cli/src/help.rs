//! The commands and options in the language of the rest.

use crate::arguments::Arguments;
use clap::{Arg, ArgAction, Command, CommandFactory};
use std::fmt::Write as _;
use voice::{Help, Language};

/// What the texts of the whole program are called.
const PROGRAM: &str = "help-hoodwink";

/// The program with all its commands, their help in a language.
pub fn program(language: Language) -> Command {
    let mut command = Arguments::command();
    // What is there without being asked for (help, version) is there from here on.
    command.build();
    match Help::of(language) {
        None => command,
        Some(help) => in_words_of(&help, command, PROGRAM),
    }
}

/// The command under a name such as `algs find`, built.
pub fn command<'a>(program: &'a Command, path: &[String]) -> Option<&'a Command> {
    path.iter().try_fold(program, |command, name| command.find_subcommand(name))
}

fn in_words_of(help: &Help, command: Command, path: &str) -> Command {
    let text = |name: &str| help.text(name, &[]).unwrap_or_default();
    let is_help = command.get_name() == "help";
    // The commands below `help` are those of the program once more.
    let path = if is_help { path.trim_end_matches("-help").to_owned() } else { path.to_owned() };
    let about = text(if is_help { "help-any-subcommand-help" } else { &path });
    let mut command = command
        .about(about)
        .long_about(None)
        .subcommand_help_heading(text("help-heading-commands"))
        .subcommand_value_name(text("help-usage-command"))
        .mut_args(|arg| argument(help, arg, &path))
        .mut_subcommands(|below| {
            let path = format!("{path}-{}", below.get_name());
            in_words_of(help, below, &path)
        });
    let usage = command.render_usage().to_string();
    let usage = usage.split_once(' ').map_or("", |(_, usage)| usage);
    let usage = usage.replace("[OPTIONS]", &text("help-usage-options"));
    let mut template = format!("{{about-with-newline}}\n{} {{usage}}\n", text("help-usage"));
    let parts = [
        (command.has_subcommands(), "help-heading-commands", "{subcommands}"),
        (command.get_positionals().next().is_some(), "help-heading-arguments", "{positionals}"),
        (true, "help-heading-options", "{options}"),
    ];
    for (_, heading, part) in parts.into_iter().filter(|(is_there, ..)| *is_there) {
        let _ = write!(template, "\n{}:\n{part}\n", text(heading));
    }
    command.override_usage(usage).help_template(template.trim_end().to_owned())
}

fn argument(help: &Help, arg: Arg, path: &str) -> Arg {
    let id = arg.get_id().to_string();
    let text = |name: &str| help.text(name, &[]);
    let own = |name: &str| {
        // Options of the program have those of every command, else they would be taken for its commands.
        let of_command = if path == PROGRAM { None } else { text(&format!("{path}-{name}")) };
        of_command.or_else(|| text(&format!("help-any-{name}"))).unwrap_or_default()
    };
    let heading = if arg.is_positional() { "help-heading-arguments" } else { "help-heading-options" };
    let mut short = own(&id);
    let mut after: Vec<String> = Vec::new();
    let mut long = short.clone();
    let takes_value = matches!(arg.get_action(), ArgAction::Set | ArgAction::Append);
    let values: Vec<_> = if takes_value { arg.get_possible_values() } else { Vec::new() };
    if !values.is_empty() {
        let names: Vec<&str> = values.iter().map(clap::builder::PossibleValue::get_name).collect();
        after.extend(help.text("help-possible", &[("values", &names.join(", "))]));
        let told: Vec<String> = values
            .iter()
            .filter(|value| value.get_help().is_some())
            .map(|value| format!("- {}: {}", value.get_name(), own(&format!("{id}-{}", value.get_name()))))
            .collect();
        if !told.is_empty() {
            let heading = text("help-possible-heading").unwrap_or_default();
            long = format!("{long}\n\n{heading}\n{}", told.join("\n"));
        }
    }
    let defaults: Vec<String> =
        arg.get_default_values().iter().map(|value| value.to_string_lossy().into_owned()).collect();
    if takes_value && !defaults.is_empty() {
        after.extend(help.text("help-default", &[("value", &defaults.join(" "))]));
    }
    if let Some(name) = arg.get_env() {
        after.extend(help.text("help-environment", &[("name", &name.to_string_lossy())]));
    }
    if !after.is_empty() {
        let after = after.join(" ");
        short = format!("{short} {after}");
        long = format!("{long}\n\n{after}");
    }
    let heading = text(heading).unwrap_or_default();
    let arg = match value_name(&arg).and_then(|name| text(&value_text(&name))) {
        Some(name) => arg.value_name(name),
        None => arg,
    };
    arg.help(short)
        .long_help(long)
        .help_heading(heading)
        .hide_default_value(true)
        .hide_possible_values(true)
        .hide_env(true)
}

/// What the value of an argument is called, if it takes one.
fn value_name(arg: &Arg) -> Option<String> {
    if !matches!(arg.get_action(), ArgAction::Set | ArgAction::Append) {
        return None;
    }
    Some(arg.get_value_names()?.first()?.to_string())
}

/// Under which name the word for a value stands: `KIND=LETTERS` under `help-value-KIND-LETTERS`.
fn value_text(name: &str) -> String {
    format!("help-value-{}", name.replace(|sign: char| !sign.is_ascii_alphanumeric(), "-"))
}

/// How a command is called, without its name: `[OPTIONS] [SCRAMBLE]...`
pub fn usage(command: &Command) -> String {
    let usage = command.clone().render_usage().to_string();
    // Before it stands the word for usage, which is another one in every language.
    let name = command.get_bin_name().unwrap_or_else(|| command.get_name());
    usage.split_once(name).map_or(usage.as_str(), |(_, usage)| usage).trim().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    /// Every command, argument and described value, with the path under which its text stands.
    fn visit(command: &Command, path: &str, see: &mut dyn FnMut(&str, Option<&str>)) {
        see(path, None);
        for arg in command.get_arguments() {
            let id = arg.get_id().as_str();
            see(path, Some(id));
            if matches!(arg.get_action(), ArgAction::Set | ArgAction::Append) {
                for value in arg.get_possible_values().iter().filter(|value| value.get_help().is_some()) {
                    see(path, Some(&format!("{id}-{}", value.get_name())));
                }
            }
        }
        for below in command.get_subcommands().filter(|below| below.get_name() != "help") {
            visit(below, &format!("{path}-{}", below.get_name()), see);
        }
    }

    /// What each value is called.
    fn values(command: &Command, see: &mut dyn FnMut(&str)) {
        for arg in command.get_arguments() {
            if matches!(arg.get_action(), ArgAction::Set | ArgAction::Append) {
                let name = value_name(arg);
                let is_told = name.as_deref().is_some_and(|name| name != arg.get_id().as_str());
                assert!(is_told, "{} of {} has no name for its value", arg.get_id(), command.get_name());
                see(&name.unwrap_or_default());
            }
        }
        for below in command.get_subcommands().filter(|below| below.get_name() != "help") {
            values(below, see);
        }
    }

    #[test]
    fn every_command_and_option_has_its_text_and_every_text_its_option() {
        for language in Language::ALL {
            let Some(help) = Help::of(language) else { continue };
            let mut command = Arguments::command();
            command.build();
            let mut used: BTreeSet<String> = ["help-any-subcommand-help".to_owned()].into();
            visit(&command, PROGRAM, &mut |path, id| {
                let names = match id {
                    None => vec![path.to_owned()],
                    Some(id) if path == PROGRAM => vec![format!("help-any-{id}")],
                    Some(id) => vec![format!("{path}-{id}"), format!("help-any-{id}")],
                };
                let found = names.iter().find(|name| help.text(name, &[]).is_some());
                used.insert(found.unwrap_or_else(|| panic!("{language:?}: none of {names:?}")).clone());
            });
            values(&command, &mut |name| {
                let name = value_text(name);
                assert!(help.text(&name, &[]).is_some(), "{language:?}: {name} is missing");
                used.insert(name);
            });
            for name in Help::names(language) {
                let is_text = name.starts_with("help-value")
                    || name.starts_with("help-hoodwink")
                    || name.starts_with("help-any");
                assert!(!is_text || used.contains(name), "{language:?}: {name} is used by nothing");
            }
        }
    }

    #[test]
    fn the_command_line_is_well_formed_in_every_language() {
        Arguments::command().debug_assert();
        for language in Language::ALL {
            let mut program = program(language);
            let outcome = program.try_get_matches_from_mut(["hoodwink", "trace", "--short", "R U"]);
            assert!(outcome.is_ok(), "{language:?}: {outcome:?}");
        }
    }

    #[test]
    fn german_help_has_no_english_left() {
        let mut program = program(Language::German);
        let see = |command: &mut Command| {
            for text in [command.render_help().to_string(), command.render_long_help().to_string()] {
                for word in [
                    "Usage",
                    "Options:",
                    "Commands:",
                    "Arguments:",
                    "[default",
                    "[env",
                    "possible",
                    "Print ",
                    "[OPTIONS]",
                ] {
                    assert!(!text.contains(word), "{word} in {text}");
                }
            }
        };
        see(&mut program);
        let names: Vec<String> = program.get_subcommands().map(|below| below.get_name().to_owned()).collect();
        for name in names {
            let below = program.find_subcommand_mut(&name).unwrap();
            see(below);
            let names: Vec<String> =
                below.get_subcommands().map(|below| below.get_name().to_owned()).collect();
            for name in names.iter().filter(|_| name != "help") {
                see(below.find_subcommand_mut(name).unwrap());
            }
        }
    }
}
