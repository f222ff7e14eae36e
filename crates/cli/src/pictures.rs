//! Pictures in the colours and letters of the session, as SVG or for the terminal.

use crate::input::{Session, in_colour};
use blind::Memo;
use cube::{Rotation, State};
use draw::{Palette, Picture, Thread, Tone};

/// Columns of a terminal that says nothing of its width.
const COLUMNS: usize = 100;

/// Whether the terminal takes colours.
fn tone() -> Tone {
    if in_colour() { Tone::Colour } else { Tone::Plain }
}

/// The colours of the conventions with their names in the session's language.
pub fn palette(session: &Session) -> Palette {
    Palette::of(&session.conventions, |colour| session.voice.colour(colour))
}

/// The puzzle as it stands, with letters.
pub fn puzzle(session: &Session, state: &State, title: &str) -> Picture {
    draw::puzzle(state, &session.conventions, palette(session), title)
}

/// The net for the terminal.
pub fn net(session: &Session, state: &State) -> String {
    puzzle(session, state, "").terminal(Rotation::NONE, tone()).trim_end_matches('\n').to_owned()
}

/// The memo as a thread.
pub fn thread(session: &Session, memo: &Memo) -> Thread {
    let title = session.voice.word("picture-thread");
    Thread::of(memo, &session.conventions, |orbit| session.voice.kinds(orbit), title)
}

/// The memo as a thread for the terminal.
pub fn thread_text(session: &Session, memo: &Memo) -> String {
    thread(session, memo).terminal(COLUMNS, tone()).trim_end_matches('\n').to_owned()
}
