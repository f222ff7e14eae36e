//! The web app, served by the program itself.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Command, Stdio};

#[test]
fn the_address_is_printed_and_answers() {
    let program = assert_cmd::cargo::cargo_bin("hoodwink");
    let mut serving =
        Command::new(program).args(["serve", "--port", "0"]).stdout(Stdio::piped()).spawn().unwrap();
    let mut line = String::new();
    BufReader::new(serving.stdout.take().unwrap()).read_line(&mut line).unwrap();
    let address = line.trim().strip_prefix("http://").unwrap().trim_end_matches('/').to_owned();
    let mut answer = String::new();
    let mut stream = TcpStream::connect(&address).unwrap();
    write!(stream, "GET / HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\n\r\n").unwrap();
    stream.read_to_string(&mut answer).unwrap();
    serving.kill().unwrap();
    serving.wait().unwrap();
    assert!(address.starts_with("127.0.0.1:"), "{address}");
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
    assert!(answer.contains("Hoodwink"), "{answer}");
}

#[test]
fn a_port_in_use_is_said() {
    let taken = std::net::TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let port = taken.local_addr().unwrap().port().to_string();
    assert_cmd::Command::cargo_bin("hoodwink")
        .unwrap()
        .args(["serve", "--port", &port])
        .assert()
        .code(2)
        .stdout("")
        .stderr(predicates::str::contains(format!("port {port} is in use")));
}
