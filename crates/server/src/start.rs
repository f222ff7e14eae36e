//! Taking a port and serving on it, or why not.

use std::convert::Infallible;
use std::io;
use std::net::{Ipv4Addr, SocketAddr, TcpListener as Trial};
use std::num::NonZeroU16;
use std::sync::Arc;

use tokio::net::TcpListener;
use voice::{Language, Voice};

use crate::connection::{Limits, answer_all};
use crate::files::{Site, router};
use crate::guard::{Served, guarded};
use crate::holder::{Holder, holder};

/// How many ports behind a taken one are tried before the system is asked for any.
const NEAR: u16 = 20;

/// Why nothing is served.
#[derive(Debug, thiserror::Error)]
pub enum ServeError {
    /// Somebody listens there already.
    #[error("port {port} is taken")]
    Taken {
        /// The port asked for.
        port: u16,
        /// Who listens there.
        holder: Holder,
        /// A port that was free a moment ago.
        free: Option<NonZeroU16>,
    },
    /// The system does not let this program listen there.
    #[error("the system does not let the program listen on port {0}")]
    Forbidden(u16),
    /// Anything else that the system says.
    #[error("cannot serve on port {port}: {source}")]
    System {
        /// The port asked for.
        port: u16,
        /// What the system says.
        source: io::Error,
    },
}

/// Serves the site on loopback until the process ends, and answers what is no file by sentences in `language`. Port 0
/// takes any free port; `on_ready` is told the address once connections are taken.
///
/// # Errors
/// When the port cannot be listened on.
pub fn serve(
    port: u16,
    language: Language,
    on_ready: impl FnOnce(SocketAddr),
) -> Result<Infallible, ServeError> {
    let failed = |source: io::Error| match source.kind() {
        io::ErrorKind::PermissionDenied => ServeError::Forbidden(port),
        _ => ServeError::System { port, source },
    };
    let runtime =
        tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build().map_err(failed)?;
    runtime.block_on(async {
        let asked = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
        let listener = match TcpListener::bind(asked).await {
            Ok(listener) => listener,
            Err(error) if error.kind() == io::ErrorKind::AddrInUse => {
                return Err(ServeError::Taken { port, holder: holder(asked).await, free: free_behind(port) });
            }
            Err(error) => return Err(failed(error)),
        };
        let address = listener.local_addr().map_err(failed)?;
        let voice = Arc::new(Voice::new(language));
        let app = guarded(router::<Site>(Arc::clone(&voice)), Served::at(address), voice);
        on_ready(address);
        Ok(answer_all(listener, app, Limits::USUAL).await)
    })
}

/// A free port, close behind one that is taken if there is one there.
fn free_behind(taken: u16) -> Option<NonZeroU16> {
    let near = (taken..=taken.saturating_add(NEAR)).skip(1);
    near.chain([0]).find_map(|port| {
        let trial = Trial::bind((Ipv4Addr::LOCALHOST, port)).ok()?;
        NonZeroU16::new(trial.local_addr().ok()?.port())
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_port_in_use_is_said_with_a_free_one() {
        let taken = Trial::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
        let port = taken.local_addr().unwrap().port();
        // Whoever holds the next port, this test or another program: it must not be offered.
        let next = Trial::bind((Ipv4Addr::LOCALHOST, port.saturating_add(1)));
        let error = serve(port, Language::English, |_| panic!("nothing can be served here")).unwrap_err();
        drop(next);
        let ServeError::Taken { port: named, holder, free: Some(free) } = error else { panic!("{error}") };
        assert_eq!(named, port);
        assert_eq!(holder, Holder::Other, "nobody answers there");
        assert!(free.get() != port && free.get() != port + 1, "{free}");
    }

    #[test]
    fn behind_the_last_port_the_system_chooses() {
        assert!(free_behind(u16::MAX).is_some());
    }
}
