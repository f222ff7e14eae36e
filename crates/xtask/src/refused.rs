//! The list of crates and versions that are not used, `refused.toml`.

use anyhow::{Context, Result};
use semver::{Version, VersionReq};
use serde::Deserialize;

/// The list.
pub struct Refused {
    /// When it was last gone through, as `2026-11-25`.
    pub as_of: toml::value::Datetime,
    crates: Vec<(String, VersionReq, String)>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct List {
    as_of: toml::value::Datetime,
    refused: Vec<Entry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Entry {
    name: String,
    versions: String,
    why: String,
    source: String,
}

impl Refused {
    /// Reads the list.
    ///
    /// # Errors
    /// When it is no TOML, has unknown keys, or a range of versions cannot be read.
    pub fn parse(text: &str) -> Result<Self> {
        let list: List = toml::from_str(text).context("the list of refused crates cannot be read")?;
        let crates = list.refused.into_iter().map(|entry| {
            let versions = VersionReq::parse(&entry.versions)
                .with_context(|| format!("{}: `{}` is no range of versions", entry.name, entry.versions))?;
            Ok((entry.name, versions, format!("{} ({})", entry.why, entry.source)))
        });
        Ok(Self { as_of: list.as_of, crates: crates.collect::<Result<_>>()? })
    }

    /// Why a version of a crate is not used; `None` when the list has nothing against it.
    pub fn why(&self, name: &str, version: &Version) -> Option<&str> {
        let hit =
            self.crates.iter().find(|(other, versions, _)| other == name && versions.matches(version))?;
        Some(&hit.2)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LIST: &str = r#"
as_of = 2026-11-25
[[refused]]
name = "bad"
versions = "<1.2.3"
why = "it does harm"
source = "invented"
"#;

    #[test]
    fn a_version_in_the_range_is_refused() {
        let refused = Refused::parse(LIST).unwrap();
        assert_eq!(refused.why("bad", &Version::new(1, 2, 2)), Some("it does harm (invented)"));
        assert_eq!(refused.why("bad", &Version::new(1, 2, 3)), None);
        assert_eq!(refused.why("good", &Version::new(1, 0, 0)), None);
    }

    #[test]
    fn a_faulty_list_is_an_error() {
        assert!(Refused::parse(&LIST.replace("<1.2.3", "old ones")).is_err());
        assert!(Refused::parse(&LIST.replace("why =", "because =")).is_err());
    }

    #[test]
    fn the_committed_list_can_be_read() {
        assert!(Refused::parse(include_str!("../refused.toml")).is_ok());
    }
}
