//! Options of set-up moves.

use clap::Args;

/// Options of `setups`.
#[derive(Debug, Args)]
pub struct SetupOptions {
    /// The puzzle: 2 or 3
    #[arg(long, short, default_value = "3", value_name = "SIZE")]
    pub puzzle: String,
    /// The kind of piece: corner or edge
    #[arg(long, short, value_name = "KIND")]
    pub kind: String,
    /// Only this target, by letter or sticker
    #[arg(long, short, value_name = "TARGET")]
    pub target: Option<String>,
    /// Use only these turns, as R,F,D or R,Lw,M in every amount, R2 or R' in this one; by default faces, wide turns and slices
    #[arg(long, value_name = "TURNS", value_delimiter = ',')]
    pub turns: Vec<String>,
    /// JSON
    #[arg(long)]
    pub json: bool,
}
