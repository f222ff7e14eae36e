//! Which crate may depend on which: the map of ARCHITECTURE.md as a table.

use crate::process::root;
use anyhow::{Context, Result};
use cargo_metadata::{DependencyKind, Metadata, MetadataCommand};

/// What a crate may do besides computing.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Role {
    /// Computes only: no files, network, clock, environment or terminal; compiles to wasm32.
    Engine,
    /// Keeps the journal: knows where it is stored.
    Store,
    /// Faces the user or the builder.
    Edge,
}

struct Layer {
    name: &'static str,
    role: Role,
    /// The crates of this project that it may use, in lists.
    may_use: &'static [&'static [&'static str]],
}

const ENGINE: &[&str] = &[
    "cube",
    "search",
    "blind",
    "diagnosis",
    "choose",
    "sheet",
    "formats",
    "draw",
    "voice",
    "memory",
    "record",
    "journal",
];

/// Everything that documents are about.
const BELOW_FORMATS: &[&str] = &["cube", "search", "blind", "diagnosis", "choose", "sheet", "record"];

/// Everything that pictures and sentences are about.
const SUBJECTS: &[&str] = &["cube", "search", "blind", "diagnosis", "choose", "sheet", "record", "formats"];

const LAYERS: &[Layer] = &[
    Layer { name: "cube", role: Role::Engine, may_use: &[] },
    Layer { name: "search", role: Role::Engine, may_use: &[&["cube"]] },
    Layer { name: "blind", role: Role::Engine, may_use: &[&["cube", "search"]] },
    Layer { name: "diagnosis", role: Role::Engine, may_use: &[&["cube", "search", "blind"]] },
    Layer { name: "choose", role: Role::Engine, may_use: &[&["cube", "search", "blind"]] },
    Layer { name: "sheet", role: Role::Engine, may_use: &[&["cube", "search", "blind"]] },
    Layer { name: "record", role: Role::Engine, may_use: &[] },
    Layer { name: "formats", role: Role::Engine, may_use: &[BELOW_FORMATS] },
    Layer { name: "draw", role: Role::Engine, may_use: &[SUBJECTS] },
    Layer { name: "voice", role: Role::Engine, may_use: &[SUBJECTS] },
    Layer { name: "memory", role: Role::Engine, may_use: &[] },
    Layer { name: "journal", role: Role::Store, may_use: &[&["memory", "record"]] },
    Layer { name: "server", role: Role::Edge, may_use: &[ENGINE] },
    Layer { name: "cli", role: Role::Edge, may_use: &[ENGINE, &["server"]] },
    Layer { name: "wasm", role: Role::Edge, may_use: &[ENGINE] },
    Layer { name: "fuzz", role: Role::Edge, may_use: &[ENGINE, &["wasm"]] },
    Layer { name: "sitekit", role: Role::Edge, may_use: &[] },
    Layer { name: "xtask", role: Role::Edge, may_use: &[] },
];

/// What a crate of this project may do; `None` for a crate that the table does not know.
pub fn role(name: &str) -> Option<Role> {
    LAYERS.iter().find(|layer| layer.name == name).map(|layer| layer.role)
}

/// What cargo knows of the workspace and its dependencies.
///
/// # Errors
/// When cargo cannot tell.
pub fn metadata() -> Result<Metadata> {
    MetadataCommand::new()
        .current_dir(root())
        .other_options(vec!["--locked".to_owned()])
        .exec()
        .context("`cargo metadata --locked` failed")
}

/// The names of the crates of this project.
///
/// # Errors
/// When cargo cannot tell.
pub fn members() -> Result<Vec<String>> {
    Ok(metadata()?.workspace_packages().iter().map(|package| package.name.to_string()).collect())
}

/// What is wrong with the dependencies between the crates, a sentence each.
///
/// What only tests use is left out: a test may look at its crate from above.
pub fn problems(metadata: &Metadata) -> Vec<String> {
    let members = metadata.workspace_packages();
    let is_member = |name: &str| members.iter().any(|package| package.name.as_str() == name);
    let mut edges = Vec::new();
    for package in &members {
        for dependency in &package.dependencies {
            if dependency.kind != DependencyKind::Development && is_member(&dependency.name) {
                edges.push((package.name.to_string(), dependency.name.clone()));
            }
        }
    }
    let names: Vec<String> = members.iter().map(|package| package.name.to_string()).collect();
    broken(&names, &edges)
}

fn broken(members: &[String], edges: &[(String, String)]) -> Vec<String> {
    let unknown = members.iter().filter(|name| role(name).is_none()).map(|name| {
        format!(
            "the crate {name} has no place yet: give it one in xtask's layering.rs and in ARCHITECTURE.md"
        )
    });
    let wrong = edges.iter().filter_map(|(user, used)| {
        let layer = LAYERS.iter().find(|layer| layer.name == user)?;
        let allowed = layer.may_use.concat();
        (!allowed.contains(&used.as_str())).then(|| {
            format!("the crate {user} depends on {used}, which it must not know (it may use {allowed:?})")
        })
    });
    unknown.chain(wrong).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn edge(user: &str, used: &str) -> (String, String) {
        (user.to_owned(), used.to_owned())
    }

    #[test]
    fn dependencies_point_one_way() {
        let members = ["cube", "search", "cli"].map(str::to_owned);
        assert!(broken(&members, &[edge("search", "cube"), edge("cli", "search")]).is_empty());
        assert_eq!(broken(&members, &[edge("cube", "search")]).len(), 1);
        assert_eq!(broken(&members, &[edge("search", "cli")]).len(), 1);
    }

    #[test]
    fn a_new_crate_must_be_given_a_place() {
        assert_eq!(broken(&["surprise".to_owned()], &[]).len(), 1);
    }

    #[test]
    fn the_table_has_no_circle() {
        // Every crate stands below those that use it, so reading from the top never meets a later name.
        for (place, layer) in LAYERS.iter().enumerate() {
            for used in layer.may_use.concat() {
                let at = LAYERS.iter().position(|other| other.name == used).expect("a crate of the table");
                assert!(at < place, "{} uses {used}, which stands after it", layer.name);
            }
        }
    }
}
