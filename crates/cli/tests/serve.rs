//! The web app, served by the program itself.

use predicates::prelude::PredicateBooleanExt;
use predicates::str::contains;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Child, Command, Stdio};

/// A program that serves until the test has ended, also by a failure.
struct Serving {
    program: Child,
    address: String,
}

impl Serving {
    fn start(options: &[&str]) -> Self {
        let path = assert_cmd::cargo::cargo_bin("hoodwink");
        let mut command = Command::new(path);
        let mut program =
            command.args(["serve", "--port", "0"]).args(options).stdout(Stdio::piped()).spawn().unwrap();
        let mut line = String::new();
        BufReader::new(program.stdout.take().unwrap()).read_line(&mut line).unwrap();
        let address = line.trim().strip_prefix("http://").unwrap().trim_end_matches('/').to_owned();
        Self { program, address }
    }

    fn port(&self) -> &str {
        self.address.strip_prefix("127.0.0.1:").unwrap()
    }

    fn get(&self, host: &str) -> String {
        let mut answer = String::new();
        let mut stream = TcpStream::connect(&self.address).unwrap();
        write!(stream, "GET / HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n").unwrap();
        stream.read_to_string(&mut answer).unwrap();
        answer
    }
}

impl Drop for Serving {
    fn drop(&mut self) {
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}

fn second(options: &[&str]) -> assert_cmd::assert::Assert {
    assert_cmd::Command::cargo_bin("hoodwink").unwrap().arg("serve").args(options).assert()
}

#[test]
fn the_address_is_printed_and_answers() {
    let serving = Serving::start(&[]);
    let answer = serving.get(&serving.address);
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
    assert!(answer.contains("Hoodwink"), "{answer}");
}

#[test]
fn another_name_is_refused_in_the_language_that_was_asked_for() {
    let serving = Serving::start(&["--language", "de"]);
    let answer = serving.get("club.example");
    assert!(answer.starts_with("HTTP/1.1 421"), "{answer}");
    assert!(answer.contains(&format!("öffne http://{}/\n", serving.address)), "{answer}");
}

#[test]
fn a_port_in_use_is_said() {
    let taken = std::net::TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let port = taken.local_addr().unwrap().port().to_string();
    second(&["--port", &port]).code(2).stdout("").stderr(
        contains(format!("Port {port} is taken by another program.")).and(contains("--port 0 takes")),
    );
}

#[test]
fn another_hoodwink_on_the_port_is_recognised() {
    let serving = Serving::start(&[]);
    let port = serving.port();
    second(&["--port", port])
        .code(2)
        .stdout("")
        .stderr(contains(format!("Port {port} is taken: another Hoodwink")).and(contains(&serving.address)));
    second(&["--port", port, "--language", "de"])
        .code(2)
        .stdout("")
        .stderr(contains(format!("Port {port} ist belegt: Dort läuft schon ein anderes Hoodwink.")));
    let answer = serving.get(&serving.address);
    assert!(answer.starts_with("HTTP/1.1 200"), "the question did it no harm: {answer}");
}

#[test]
fn what_is_no_port_is_said() {
    for text in ["", "65536", "-1", "x", "4170x", "99999999999999999999"] {
        second(&[&format!("--port={text}")]).code(2).stdout("").stderr(contains("from 0 to 65535"));
    }
    second(&["--port", "x", "--language", "de"]).code(2).stdout("").stderr(contains("von 0 bis 65535"));
}
