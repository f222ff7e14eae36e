//! How far one has come with a letter.

/// How far one has come with a bead.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum Glow {
    /// Known: a bone bead.
    #[default]
    Known,
    /// Still to come: a hollow bead.
    Ahead,
    /// Being done now: a silk bead with a ring round it.
    Now,
    /// Done: a silk bead.
    Done,
}
