//! `hoodwink completions` and `hoodwink man`, both made from the arguments themselves.

use crate::failure::Failure;
use crate::help;
use clap::Command;
use clap_complete::Shell;
use std::io::{self, Write};
use std::process::ExitCode;
use voice::{Help, Voice};

/// The headings that a manual page has in English whatever language the rest is in.
const HEADINGS: [&str; 4] = ["NAME", "SYNOPSIS", "DESCRIPTION", "VERSION"];

/// The line that begins the synopsis.
const SYNOPSIS: &str = "\n.SH SYNOPSIS\n";

/// Prints the completions for a shell.
pub fn completions(shell: Shell, voice: &Voice) -> Result<ExitCode, Failure> {
    let mut text = Vec::new();
    clap_complete::generate(shell, &mut help::program(voice.language()), "hoodwink", &mut text);
    io::stdout().lock().write_all(&text)?;
    Ok(ExitCode::SUCCESS)
}

/// Prints the manual page of the program, or of one command, as `trace` or `algs find`.
pub fn page(path: &[String], voice: &Voice) -> Result<ExitCode, Failure> {
    let program = help::program(voice.language());
    let path: Vec<String> =
        path.iter().flat_map(|words| words.split_whitespace()).map(str::to_owned).collect();
    let Some(shown) = help::command(&program, &path) else {
        let known = (1..path.len()).rev().find_map(|length| help::command(&program, &path[..length]));
        let known = known.filter(|command| command.has_subcommands()).unwrap_or(&program);
        let names: Vec<String> = known.get_subcommands().map(|below| below.get_name().to_owned()).collect();
        let blanks = [("text", path.join(" ").into()), ("known", voice.list(&names).into())];
        return Err(Failure::input(voice.say("no-such-command", &blanks)));
    };
    let mut text = Vec::new();
    clap_mangen::Man::new(shown.clone()).render(&mut text)?;
    let mut text = with_synopsis(&String::from_utf8_lossy(&text), shown);
    if let Some(help) = Help::of(voice.language()) {
        for heading in HEADINGS {
            let own = help.text(&format!("man-{heading}"), &[]).unwrap_or_default();
            text = text.replace(&format!("\n.SH {heading}\n"), &format!("\n.SH \"{own}\"\n"));
        }
    }
    io::stdout().lock().write_all(text.as_bytes())?;
    Ok(ExitCode::SUCCESS)
}

/// The page with the synopsis that the help of the command has, in its language.
fn with_synopsis(page: &str, command: &Command) -> String {
    let Some((before, rest)) = page.split_once(SYNOPSIS) else { return page.to_owned() };
    let after = rest.find("\n.SH ").map_or("", |at| &rest[at..]);
    let name = command.get_bin_name().unwrap_or_else(|| command.get_name());
    // A hyphen that is typed is no hyphen of a word; a backslash would be an instruction.
    let plain = |text: &str| text.replace('\\', "\\e").replace('-', "\\-");
    format!("{before}{SYNOPSIS}\\fB{}\\fR {}{after}", plain(name), plain(&help::usage(command)))
}
