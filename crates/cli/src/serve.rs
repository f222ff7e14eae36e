//! `hoodwink serve`: the web app, on this machine alone.

use crate::arguments::ServeOptions;
use crate::failure::Failure;
use std::io::{self, Write};
use std::process::ExitCode;

/// Runs the command; it goes on until the process is ended. The address is the one line that is printed, so that a
/// program that starts this one can read it.
pub fn run(options: &ServeOptions) -> Result<ExitCode, Failure> {
    server::serve(options.port, |address| {
        let mut out = io::stdout().lock();
        // Who closed the output still has the address that was asked for.
        let _ = writeln!(out, "http://{address}/").and_then(|()| out.flush());
    })
    .map_err(|error| Failure::input(error.to_string()))?;
    Ok(ExitCode::SUCCESS)
}
