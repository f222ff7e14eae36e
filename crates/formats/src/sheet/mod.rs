//! Sheets of algorithms: read as people have them, written for people, and kept.
//!
//! ```
//! use blind::Conventions;
//! use formats::sheet::{Reading, keep, kept, read};
//! // An invented sheet, with a letter in place of a sticker.
//! let text = "first;second;algorithm\nUBR;RDF;[R' D' R, U]\nUBR;K;[U, R' D' R]\n";
//! let conventions = Conventions::default();
//! let mut reading = Reading::new(&conventions);
//! reading.buffer = Some("UFR".to_owned());
//! let sheet = read(text, &reading).unwrap();
//! assert_eq!(sheet.check().right(), 1);
//! assert_eq!(kept(&keep(&sheet)).unwrap(), sheet);
//! ```

mod columns;
mod grid;
mod kept;
mod list;
mod listed;
mod markdown;
mod read;
mod rows;
mod salvage;
mod table;

pub use kept::{VERSION, keep, kept, kept_now};
pub use list::to_csv;
pub use markdown::to_markdown;
pub use read::{MOST_BYTES, MOST_CELLS, MOST_TAKEN, Reading, Remark, SheetError, TakenIn, read, take_in};
