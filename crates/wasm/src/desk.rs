//! What is kept between two requests, so that the second need not compute it again.

use std::rc::Rc;

use blind::Conventions;
use blind::sheet::{Reading, Sheet};
use draw::Palette;
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
    sheet: Option<([String; 2], Rc<Sheet>)>,
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

    /// A sheet as it was read, by the texts of the conventions and of the sheet; none at all is an empty one.
    pub(crate) fn sheet(
        &mut self,
        voice: &Voice,
        conventions: &Conventions,
        texts: [&str; 2],
    ) -> Result<Rc<Sheet>, Failure> {
        if let Some((known, sheet)) = &self.sheet
            && known.each_ref().map(String::as_str) == texts
        {
            return Ok(Rc::clone(sheet));
        }
        let sheet = Rc::new(if texts[1].trim().is_empty() {
            Sheet::new(Vec::new())
        } else {
            Sheet::read(texts[1], &Reading::new(conventions))
                .map_err(|error| Failure::new(voice.sheet_error(&error)))?
        });
        self.sheet = Some((texts.map(str::to_owned), Rc::clone(&sheet)));
        Ok(sheet)
    }
}

/// The colours of the conventions, named in the language of the page.
pub(crate) fn palette(voice: &Voice, conventions: &Conventions) -> Palette {
    Palette::of(conventions, |colour| voice.colour(colour))
}
