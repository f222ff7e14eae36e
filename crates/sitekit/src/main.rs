//! The finishing steps of the web site that are done by Rust libraries. `cargo xtask site` calls this program; it is
//! one of its own because the bindings' library is large and most other tasks do not need it.
//!
//! ```text
//! sitekit bindings MODULE.wasm FOLDER NAME   write the browser's half of the bindings
//! sitekit icons PICTURE.svg FOLDER           draw the icon at the sizes that an installed app is shown in
//! sitekit compress FOLDER                    put a brotli and a gzip copy beside each text and module
//! ```

mod bindings;
mod compress;
mod icons;

use std::path::Path;

use anyhow::{Result, bail};

fn main() -> Result<()> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["bindings", module, folder, name] => bindings::write(Path::new(module), Path::new(folder), name),
        ["icons", picture, folder] => icons::draw(Path::new(picture), Path::new(folder)),
        ["compress", folder] => compress::folder(Path::new(folder)),
        _ => bail!("say one of: bindings MODULE.wasm FOLDER NAME, icons PICTURE.svg FOLDER, compress FOLDER"),
    }
}
