//! `hoodwink serve`: the web app, on this machine alone.

use crate::arguments::ServeOptions;
use crate::failure::Failure;
use crate::input::Session;
use server::{Holder, ServeError};
use std::io::{self, Write};
use std::net::Ipv4Addr;
use std::process::ExitCode;
use voice::Voice;

/// Runs the command; it goes on until the process is ended. The address is the one line that is printed, so that a
/// program that starts this one can read it.
pub fn run(session: &Session, options: &ServeOptions) -> Result<ExitCode, Failure> {
    let voice = &session.voice;
    let port = options.port.trim().parse().map_err(|_| Failure::input(voice.word("serve-no-port")))?;
    let Err(error) = server::serve(port, voice.language(), |address| {
        let mut out = io::stdout().lock();
        // Who closed the output still has the address that was asked for.
        let _ = writeln!(out, "http://{address}/").and_then(|()| out.flush());
    });
    Err(Failure::input(sentence(&error, voice)))
}

/// Why nothing is served, and what can be done.
fn sentence(error: &ServeError, voice: &Voice) -> String {
    let say = |message: &str, blanks: &[(&str, String)]| {
        let blanks: Vec<_> = blanks.iter().map(|(name, text)| (*name, text.as_str().into())).collect();
        voice.say(message, &blanks)
    };
    match error {
        ServeError::Taken { port, holder, free } => {
            let offer = free.map_or_else(
                || say("serve-offer-any", &[]),
                |free| say("serve-offer-free", &[("free", free.to_string())]),
            );
            let (port, offer) = (("port", port.to_string()), ("offer", offer));
            match holder {
                Holder::Hoodwink => {
                    let address = format!("http://{}:{}/", Ipv4Addr::LOCALHOST, port.1);
                    say("serve-taken-by-hoodwink", &[port, offer, ("address", address)])
                }
                Holder::Other => say("serve-taken-by-other", &[port, offer]),
            }
        }
        ServeError::Forbidden(port) => say("serve-forbidden", &[("port", port.to_string())]),
        ServeError::System { port, source } => {
            let what = match (source.kind(), source.raw_os_error()) {
                (io::ErrorKind::AddrNotAvailable, _) => {
                    say("serve-failed-address", &[("address", Ipv4Addr::LOCALHOST.to_string())])
                }
                (io::ErrorKind::OutOfMemory, _) => say("serve-failed-memory", &[]),
                (_, Some(number)) => say("serve-failed-number", &[("number", number.to_string())]),
                (_, None) => say("serve-failed-unknown", &[]),
            };
            say("serve-failed", &[("port", port.to_string()), ("what", what)])
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::num::NonZeroU16;
    use voice::Language;

    fn all() -> Vec<ServeError> {
        let system = |source| ServeError::System { port: 81, source };
        let mut all = vec![
            ServeError::Forbidden(81),
            system(io::ErrorKind::AddrNotAvailable.into()),
            system(io::ErrorKind::OutOfMemory.into()),
            system(io::Error::from_raw_os_error(24)),
            system(io::Error::other("an invented reason")),
        ];
        for holder in [Holder::Hoodwink, Holder::Other] {
            for free in [None, NonZeroU16::new(4171)] {
                all.push(ServeError::Taken { port: 81, holder, free });
            }
        }
        all
    }

    #[test]
    fn every_error_is_said_in_every_language() {
        for language in Language::ALL {
            let voice = Voice::new(language);
            let mut said: Vec<_> = all().iter().map(|error| sentence(error, &voice)).collect();
            for sentence in &said {
                assert!(sentence.contains("81"), "{sentence}");
                assert!(!sentence.contains(['{', '}']) && !sentence.contains("serve-"), "{sentence}");
                assert!(
                    !sentence.contains("invented"),
                    "the words of the system are in its language: {sentence}"
                );
            }
            said.sort();
            said.dedup();
            assert_eq!(said.len(), all().len(), "{language:?}");
        }
    }

    #[test]
    fn a_port_that_is_taken_comes_with_a_way_on() {
        let voice = Voice::new(Language::English);
        let taken = ServeError::Taken { port: 4170, holder: Holder::Hoodwink, free: NonZeroU16::new(4171) };
        assert_eq!(
            sentence(&taken, &voice),
            "Port 4170 is taken: another Hoodwink serves there already. Open http://127.0.0.1:4170/ or take another \
             port: --port 4171 is free now, --port 0 takes any that is free and says which."
        );
    }
}
