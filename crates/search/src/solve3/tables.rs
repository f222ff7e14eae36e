//! All that is looked up, made from the model at the first call: 3.2 MB.

use super::coordinates::{Order, SIZE, Turned};
use super::inner::Inside;
use super::outer::Outside;
use crate::solve::succession::Succession;
use cube::{Corners, Midges};
use std::sync::LazyLock;

/// The tables of both phases.
pub struct Tables {
    /// What turns do to pieces.
    pub turned: Turned,
    /// Those of the first phase.
    pub outside: Outside,
    /// Those of the second phase.
    pub inside: Inside,
}

static TABLES: LazyLock<Tables> = LazyLock::new(Tables::make);

impl Tables {
    /// The tables, made once.
    pub fn get() -> &'static Self {
        &TABLES
    }

    fn make() -> Self {
        let turned = Turned::make();
        let succession = Succession::new(&turned.turns, SIZE);
        let outside = Outside::make(&turned, &succession, turned.outer(&Corners::HOME, &Midges::HOME));
        let inside = Inside::make(&turned, turned.inner(&Order::of(&Corners::HOME, &Midges::HOME)));
        Self { turned, outside, inside }
    }
}
