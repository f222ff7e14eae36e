//! What is kept between two requests, so that the second need not compute it again.

use std::rc::Rc;

use blind::Conventions;
use blind::sheet::Sheet;
use draw::Palette;
use formats::sheet;
use voice::Voice;

use crate::Failure;
#[cfg(feature = "algorithms")]
use crate::searches::Searches;
#[cfg(feature = "first")]
use crate::situation::Situations;

/// What was computed for the last requests.
#[derive(Default)]
pub struct Desk {
    conventions: Option<(String, Rc<Conventions>)>,
    sheet: Option<(String, Rc<Sheet>)>,
    #[cfg(feature = "first")]
    pub(crate) situations: Situations,
    #[cfg(feature = "algorithms")]
    pub(crate) searches: Searches,
}

impl Desk {
    /// Conventions as they were read.
    pub(crate) fn conventions(&mut self, voice: &Voice, text: &str) -> Result<Rc<Conventions>, Failure> {
        if let Some((known, conventions)) = &self.conventions
            && known == text
        {
            return Ok(Rc::clone(conventions));
        }
        let conventions =
            Rc::new(Conventions::read(text).map_err(|error| Failure::new(voice.conventions_error(&error)))?);
        self.conventions = Some((text.to_owned(), Rc::clone(&conventions)));
        Ok(conventions)
    }

    /// A sheet that was kept, as it was read; no text at all is an empty one.
    pub(crate) fn sheet(&mut self, voice: &Voice, text: &str) -> Result<Rc<Sheet>, Failure> {
        if let Some((known, sheet)) = &self.sheet
            && known == text
        {
            return Ok(Rc::clone(sheet));
        }
        let sheet = Rc::new(if text.trim().is_empty() {
            Sheet::new(Vec::new())
        } else {
            sheet::kept(text).map_err(|error| Failure::new(voice.sheet_error(&error)))?
        });
        self.sheet = Some((text.to_owned(), Rc::clone(&sheet)));
        Ok(sheet)
    }
}

/// The colours of the conventions, named in the language of the page.
pub(crate) fn palette(voice: &Voice, conventions: &Conventions) -> Palette {
    Palette::of(conventions, |colour| voice.colour(colour))
}
