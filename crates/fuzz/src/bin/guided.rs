//! A target under the fuzzer, which is guided by coverage. `cargo xtask fuzz` builds and starts it.

#![no_main]

use fuzz::Target;
use libfuzzer_sys::fuzz_target;
use std::sync::OnceLock;

static TARGET: OnceLock<Target> = OnceLock::new();

fuzz_target!(|bytes: &[u8]| {
    let target = TARGET.get_or_init(|| {
        let name = std::env::var("FUZZ_TARGET").unwrap_or_default();
        Target::named(&name).unwrap_or_else(|| panic!("FUZZ_TARGET={name} is no target"))
    });
    target.run(bytes);
});
