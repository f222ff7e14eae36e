//! The web site as a folder of static files, its tests and its screenshots.

use crate::process::{root, show};
use crate::{engine, web};
use anyhow::{Context, Result};
use std::fs;
use std::path::PathBuf;

/// Builds the site into `out/site`, ready for any web host and any sub-path, and returns the folder.
///
/// # Errors
/// When a tool is missing or a step fails; the message says which and what to do.
pub fn build() -> Result<PathBuf> {
    web::ensure_packages()?;
    engine::put_in_place()?;
    let pages = root().join("web/public");
    web::sitekit(&["icons".as_ref(), pages.join("icon.svg").as_os_str(), pages.as_os_str()])?;
    show(web::script("build", &[]))?;
    let site = root().join("out/site");
    web::sitekit(&["compress".as_ref(), site.as_os_str()])?;
    Ok(site)
}

/// Builds the site and says where it is.
///
/// # Errors
/// Those of [`build`].
pub fn run() -> Result<()> {
    println!("the site is in {}", build()?.display());
    Ok(())
}

/// Checks the screens: types and the compiler's rules of accessibility, component tests, then whole pages in a
/// browser. The arguments choose among the pages' tests.
///
/// # Errors
/// When one of them fails.
pub fn test(arguments: &[String]) -> Result<()> {
    build()?;
    show(web::script("check", &[]))?;
    in_browser("test:components", &[])?;
    in_browser("test:pages", arguments)
}

/// Takes pictures of every view, wide and narrow, light and dark, into `out/shots`.
///
/// # Errors
/// When the site cannot be built or a view cannot be shown.
pub fn shots(arguments: &[String]) -> Result<()> {
    build()?;
    let folder = root().join("out/shots");
    if arguments.is_empty() && folder.exists() {
        fs::remove_dir_all(&folder).with_context(|| format!("cannot empty {}", folder.display()))?;
    }
    in_browser("shots", arguments)?;
    println!("the pictures are in {}", folder.display());
    Ok(())
}

fn in_browser(script: &str, arguments: &[String]) -> Result<()> {
    let mut command = web::script(script, arguments);
    command.env("CHROMIUM", web::ensure_browser()?);
    show(command)
}
