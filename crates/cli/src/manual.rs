//! `hoodwink completions` and `hoodwink man`, both made from the arguments themselves.

use crate::arguments::Arguments;
use crate::failure::Failure;
use clap::CommandFactory;
use clap_complete::Shell;
use std::io::{self, Write};
use std::process::ExitCode;

/// Prints the completions for a shell.
pub fn completions(shell: Shell) -> Result<ExitCode, Failure> {
    let mut text = Vec::new();
    clap_complete::generate(shell, &mut Arguments::command(), "hoodwink", &mut text);
    io::stdout().lock().write_all(&text)?;
    Ok(ExitCode::SUCCESS)
}

/// Prints the manual page of the program, or of one command.
pub fn page(name: Option<&str>) -> Result<ExitCode, Failure> {
    let mut command = Arguments::command();
    command.build();
    let shown = match name {
        None => command,
        Some(name) => {
            let names: Vec<&str> = command.get_subcommands().map(clap::Command::get_name).collect();
            command
                .find_subcommand(name)
                .ok_or_else(|| Failure::input(format!("{name}: {}", names.join(", "))))?
                .clone()
        }
    };
    let mut text = Vec::new();
    clap_mangen::Man::new(shown).render(&mut text)?;
    io::stdout().lock().write_all(&text)?;
    Ok(ExitCode::SUCCESS)
}
