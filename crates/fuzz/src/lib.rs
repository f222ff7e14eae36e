//! Whatever may be typed, pasted or opened, as bytes: nothing of it may make the engine panic, and what is read must be what is
//! written.
//!
//! Each target has a folder under `corpus/` with what it begins from and what was found; a test replays all of it.
//! `cargo xtask fuzz NAME --minutes N` goes on from there.

mod engine;
mod texts;

/// Something that reads bytes from outside.
#[derive(Clone, Copy, Debug)]
pub struct Target {
    /// Its name, which is that of its folder.
    pub name: &'static str,
    reads: fn(&[u8]),
}

impl Target {
    /// All targets.
    pub const ALL: [Self; 14] = [
        Self { name: "notation", reads: texts::notation },
        Self { name: "scramble", reads: texts::scramble },
        Self { name: "state", reads: texts::state },
        Self { name: "conventions", reads: texts::conventions },
        Self { name: "condition", reads: texts::condition },
        Self { name: "memo", reads: texts::memo },
        Self { name: "observed", reads: texts::observed },
        Self { name: "sheet", reads: texts::sheet },
        Self { name: "sheet-file", reads: texts::sheet_file },
        Self { name: "kept-sheet", reads: texts::kept_sheet },
        Self { name: "hands", reads: texts::hands },
        Self { name: "link", reads: texts::link },
        Self { name: "record", reads: texts::record },
        Self { name: "engine", reads: engine::requests },
    ];

    /// The target with a name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|target| target.name == name)
    }

    /// Has it read some bytes.
    ///
    /// # Panics
    /// When there is something to be mended.
    pub fn run(&self, bytes: &[u8]) {
        (self.reads)(bytes);
    }
}
