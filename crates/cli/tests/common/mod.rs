//! How the tests run the program.

use assert_cmd::Command;
use predicates::str::contains;
use serde_json::Value;

/// The program, free of the settings of whoever runs the tests.
pub fn hoodwink() -> Command {
    let mut command = Command::cargo_bin("hoodwink").expect("the program is built with the tests");
    command.env_remove("HOODWINK_CONVENTIONS").env_remove("HOODWINK_LANGUAGE").env("NO_COLOR", "1");
    command
}

/// Runs it and reads the object that it prints.
pub fn json(arguments: &[&str]) -> Value {
    let output = hoodwink().args(arguments).assert().success();
    serde_json::from_slice(&output.get_output().stdout).expect("one JSON object")
}

/// Runs it and expects a sentence, exit code 2, and nothing on standard output.
pub fn refused(arguments: &[&str], sentence: &str) {
    hoodwink().args(arguments).assert().code(2).stdout("").stderr(contains(sentence));
}
