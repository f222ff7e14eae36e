//! The web app, served to this machine alone.
//!
//! The files of the built site are part of the program; nothing is read from disk while it runs. A program that was
//! built without the site serves one page that says how to get it.

mod encoding;
mod files;

use std::io;
use std::net::{Ipv4Addr, SocketAddr};

pub use files::{POLICY, router};

/// Why nothing is served.
#[derive(Debug, thiserror::Error)]
pub enum ServeError {
    /// Another program listens there.
    #[error("port {0} is in use by another program; name another one with --port, or 0 for any that is free")]
    Taken(u16),
    /// The system does not let this program listen there.
    #[error("this system does not let the program listen on port {0}; take one from 1024 up")]
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

/// Serves the site on loopback until the process ends. Port 0 takes any free port; `on_ready` is told the address
/// once connections are taken.
///
/// # Errors
/// When the port cannot be listened on.
pub fn serve(port: u16, on_ready: impl FnOnce(SocketAddr)) -> Result<(), ServeError> {
    let failed = |source: io::Error| match source.kind() {
        io::ErrorKind::AddrInUse => ServeError::Taken(port),
        io::ErrorKind::PermissionDenied => ServeError::Forbidden(port),
        _ => ServeError::System { port, source },
    };
    let runtime =
        tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_io().build().map_err(failed)?;
    runtime.block_on(async {
        let listener = tokio::net::TcpListener::bind((Ipv4Addr::LOCALHOST, port)).await.map_err(failed)?;
        on_ready(listener.local_addr().map_err(failed)?);
        axum::serve(listener, router()).await.map_err(failed)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_port_in_use_is_said() {
        let taken = std::net::TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
        let port = taken.local_addr().unwrap().port();
        let error = serve(port, |_| panic!("nothing can be served here")).unwrap_err();
        assert!(matches!(error, ServeError::Taken(named) if named == port), "{error}");
    }
}
