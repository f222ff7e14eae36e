//! The engine compiled for the browser: finds a compiler that can, builds, writes the bindings, makes the file small.

use crate::install::debian_install;
use crate::process::{available, cargo, command, output, root, show};
use crate::web;
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The compiler target of every browser.
const TARGET: &str = "wasm32-unknown-unknown";

/// Debian's packages that together can build for the target where rustup has nothing to download from: a compiler,
/// the sources of the standard library, a linker.
const DEBIAN: [&str; 3] = ["rustc-web", "rust-web-src", "lld-19"];

const DEBIAN_RUSTC: &str = "/usr/bin/rustc";
const DEBIAN_LINKER: &str = "wasm-ld-19";

/// The oldest compiler that the workspace builds with; the same number stands in the root manifest.
const OLDEST: (u32, u32) = (1, 95);

/// A way to compile for the browser on this machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Toolchain {
    /// rustup has the target installed, and with it the standard library as it was built for speed.
    Rustup,
    /// rustup has the sources of the standard library, which is built from them, for size.
    RustupSources,
    /// Debian's compiler, which builds the standard library from Debian's sources.
    Debian,
}

/// Finds or installs a toolchain: rustup's, with the sources of the standard library if they are to be had, then Debian's packages.
///
/// # Errors
/// A sentence that says what to install, when neither way is open.
pub fn ensure_toolchain() -> Result<Toolchain> {
    if rustup_has_target() {
        return Ok(with_sources());
    }
    if debian_can_build() {
        return Ok(Toolchain::Debian);
    }
    println!("adding the compiler target {TARGET}");
    if available("rustup", &["target", "add", TARGET]) && rustup_has_target() {
        return Ok(with_sources());
    }
    println!("rustup cannot add it; trying Debian's packages {}", DEBIAN.join(", "));
    if debian_install(&DEBIAN)? && debian_can_build() {
        return Ok(Toolchain::Debian);
    }
    bail!(
        "there is no compiler for {TARGET}. Run `rustup target add {TARGET}`, or on Debian, as root, \
         `apt-get install {}`",
        DEBIAN.join(" ")
    )
}

/// rustup's toolchain, with the sources of the standard library where it has them or can add them. Without them the modules work as well
/// and are heavier.
fn with_sources() -> Toolchain {
    if !rustup_has_sources() {
        println!("adding the sources of the standard library");
        if !available("rustup", &["component", "add", "rust-src"]) || !rustup_has_sources() {
            println!("rustup cannot add them: the modules will be heavier than they need to be");
            return Toolchain::Rustup;
        }
    }
    Toolchain::RustupSources
}

fn rustup_has_sources() -> bool {
    has_sources("rustc")
}

/// Whether a compiler has the sources of its standard library beside it.
fn has_sources(compiler: &str) -> bool {
    output(command(compiler, &["--print", "sysroot"]))
        .is_ok_and(|tree| Path::new(tree.trim()).join("lib/rustlib/src/rust/library/std/Cargo.toml").exists())
}

fn rustup_has_target() -> bool {
    // The folder of the target in the compiler's own tree says more than rustup's list: it is what the compiler reads.
    output(command("rustc", &["--print", "target-libdir", "--target", TARGET]))
        .is_ok_and(|folder| Path::new(folder.trim()).is_dir())
}

fn debian_can_build() -> bool {
    let Ok(line) = output(command(DEBIAN_RUSTC, &["--version"])) else { return false };
    version_of(&line).is_some_and(|version| version >= OLDEST)
        && has_sources(DEBIAN_RUSTC)
        && available(DEBIAN_LINKER, &["--version"])
}

/// The first two numbers of `rustc 1.96.0 (…)`.
fn version_of(line: &str) -> Option<(u32, u32)> {
    let mut numbers = line.split_whitespace().nth(1)?.split('.');
    Some((numbers.next()?.parse().ok()?, numbers.next()?.parse().ok()?))
}

/// A cargo command that works for the browser; the arguments name the command and the packages.
///
/// Its output lies in `target-wasm`: Debian's compiler is newer than the one that the workspace is pinned to, and in
/// one folder each would throw away the other's work.
///
/// # Errors
/// When no toolchain is to be had.
pub fn cargo_for_browser(arguments: &[&str]) -> Result<Command> {
    let toolchain = ensure_toolchain()?;
    let mut command = cargo(arguments);
    command.args(["--target", TARGET]).env("CARGO_TARGET_DIR", folder());
    // An outer cargo sets these for a program it runs, and they would steer the inner one wrongly.
    for name in ["RUSTFLAGS", "CARGO_ENCODED_RUSTFLAGS", "RUSTC", "RUSTC_WRAPPER", "CARGO_BUILD_TARGET"] {
        command.env_remove(name);
    }
    // These and building the standard library are unstable options, which a released compiler takes only when asked so.
    command.env("RUSTC_BOOTSTRAP", "1").env("RUSTFLAGS", flags(toolchain));
    if toolchain != Toolchain::Rustup {
        command.args(["-Zbuild-std=std,panic_abort", "-Zbuild-std-features=optimize_for_size"]);
    }
    if toolchain == Toolchain::Debian {
        command.env("RUSTC", DEBIAN_RUSTC).env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", DEBIAN_LINKER);
    }
    Ok(command)
}

/// Nobody reads what a panic in a worker says, which ends as any fault of it does: not where in the source it was, and where the standard
/// library is built here, not the words either, with all that writes them.
const fn flags(toolchain: Toolchain) -> &'static str {
    match toolchain {
        Toolchain::Rustup => "-Zlocation-detail=none",
        Toolchain::RustupSources | Toolchain::Debian => {
            "-Zlocation-detail=none -Zunstable-options -Cpanic=immediate-abort"
        }
    }
}

fn folder() -> PathBuf {
    root().join("target-wasm")
}

/// The modules of the engine, each a feature of the crate `wasm` and a folder in `web/src/engine`: what the first screen needs, and
/// the two that a page loads when it has nothing else to do.
const MODULES: [&str; 3] = ["first", "rest", "deep"];

/// Builds the modules of the engine and puts each with its script and its types into `web/src/engine`, made small by wasm-opt.
///
/// # Errors
/// When a step fails; the message names it.
pub fn put_in_place() -> Result<()> {
    for name in MODULES {
        put(name)?;
    }
    put_catalogues()
}

/// Files of the catalogues that only other faces of the engine say, the command line and the server, or that a module has itself.
const NOT_IN_A_PAGE: [&str; 5] = ["cli", "glossary", "help", "record", "serve"];

/// Puts the catalogue of each language into `web/src/engine/catalogues`, in one piece and without remarks, the texts of the screens last
/// behind a line of their own.
fn put_catalogues() -> Result<()> {
    let fresh = folder().join("catalogues");
    fs::create_dir_all(&fresh).with_context(|| format!("cannot make {}", fresh.display()))?;
    let locales = root().join("crates/voice/locales");
    for language in fs::read_dir(&locales).with_context(|| format!("cannot read {}", locales.display()))? {
        let language = language?.path();
        let mut files: Vec<PathBuf> =
            fs::read_dir(&language)?.map(|file| Ok(file?.path())).collect::<Result<_>>()?;
        let stem = |file: &Path| file.file_stem().map(|stem| stem.to_string_lossy().into_owned());
        files.retain(|file| stem(file).is_some_and(|stem| !NOT_IN_A_PAGE.contains(&stem.as_str())));
        files.sort_by_key(|file| (stem(file).as_deref() == Some("screens"), file.clone()));
        let mut whole = String::new();
        for file in files {
            if stem(&file).as_deref() == Some("screens") {
                whole += "## screens\n";
            }
            let text =
                fs::read_to_string(&file).with_context(|| format!("cannot read {}", file.display()))?;
            for line in text.lines().filter(|line| !line.starts_with('#')) {
                whole += line;
                whole.push('\n');
            }
        }
        let name = language.file_name().context("a language has a name")?;
        let place = fresh.join(name).with_extension("txt");
        fs::write(&place, whole).with_context(|| format!("cannot write {}", place.display()))?;
    }
    web::replace_if_changed(&fresh, &root().join("web/src/engine/catalogues"))
}

fn put(name: &str) -> Result<()> {
    let build =
        ["build", "--profile", "wasm", "--package", "wasm", "--no-default-features", "--features", name];
    show(cargo_for_browser(&build)?)?;
    let module = folder().join(TARGET).join("wasm/wasm.wasm");
    // Written elsewhere first: a watcher of the sources never sees half of it.
    let fresh = folder().join("bindings").join(name);
    web::sitekit(&["bindings".as_ref(), module.as_os_str(), fresh.as_os_str(), name.as_ref()])?;
    let (raw, small) = (fresh.join(format!("{name}_bg.wasm")), fresh.join("small.wasm"));
    let mut optimise = command("node", &["web/node_modules/binaryen/bin/wasm-opt", "-Oz", "-o"]);
    optimise.arg(&small).arg(&raw);
    show(optimise)?;
    fs::rename(&small, &raw).context("cannot put the small module in place")?;
    web::replace_if_changed(&fresh, &root().join("web/src/engine").join(name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_version_is_read_from_the_compilers_own_line() {
        let line = "rustc 1.96.0 (ac68faa20 2026-05-25) (built from a source tarball)";
        assert_eq!(version_of(line), Some((1, 96)));
        assert_eq!(version_of("rustc 1.63.0"), Some((1, 63)));
        assert_eq!(version_of("command not found"), None);
    }

    #[test]
    fn the_oldest_compiler_is_that_of_the_manifest() {
        let manifest = include_str!("../../../Cargo.toml");
        assert!(manifest.contains(&format!("rust-version = \"{}.{}\"", OLDEST.0, OLDEST.1)));
    }
}
