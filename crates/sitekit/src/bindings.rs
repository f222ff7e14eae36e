//! The JavaScript and TypeScript half of the wasm bindings.

use std::path::Path;

use anyhow::{Context, Result};
use wasm_bindgen_cli_support::Bindgen;

/// Reads the module that the compiler wrote and writes `NAME_bg.wasm`, `NAME.js` and `NAME.d.ts` into `folder`. The name is part of
/// the files' addresses, so each module of a site has its own.
///
/// The library's default leaves out the path from the script to its module; bundlers need that path to see that the
/// module belongs to the site.
pub fn write(module: &Path, folder: &Path, name: &str) -> Result<()> {
    Bindgen::new()
        .input_path(module)
        .out_name(name)
        .web(true)
        .context("cannot write bindings for a browser")?
        .typescript(true)
        .omit_default_module_path(false)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate(folder)
        .with_context(|| format!("cannot write the bindings of {}", module.display()))
}
