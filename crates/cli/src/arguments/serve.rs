//! Options of the web app served.

use clap::Args;

/// Options of `serve`.
#[derive(Debug, Args)]
pub struct ServeOptions {
    /// The port; 0 takes any that is free, and the line that is printed says which
    #[arg(long, default_value = "4170", value_name = "PORT")]
    pub port: String,
}
