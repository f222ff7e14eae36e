//! Watches the folder of the built site, so that the program is built again when the site was.

fn main() {
    let site = std::path::Path::new("../../out/site");
    // A folder that is missing counts as changed each time, and then the crate is compiled each time. Where it cannot
    // be made (sources that may not be written to) that is the lesser evil.
    let _ = std::fs::create_dir_all(site);
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rerun-if-changed=../../out/site");
}
