//! The groups by which turns permute the pieces of each kind, told apart, as SymPy and GAP find them.

use cube::{Orbit, Size};

fn rows(text: &str) -> impl Iterator<Item = Vec<&str>> {
    text.lines()
        .filter(|line| !line.starts_with('#') && !line.is_empty())
        .map(|line| line.split('\t').collect())
}

fn factorial(number: u128) -> u128 {
    (1..=number).product()
}

/// Source: SymPy, by reference/make.py. Every permutation of the wings of a depth is reached, and of the centres of a kind, and of
/// corners and midges as far as only their places are looked at; on even sizes one corner is held where it is.
#[test]
fn every_permutation_of_the_pieces_of_a_kind_is_reached() {
    let table: Vec<_> = rows(include_str!("../../../reference/orbits.txt")).collect();
    for origin in ["standard", "ours"] {
        for size in Size::ALL {
            for &orbit in Orbit::of(size) {
                let row = table
                    .iter()
                    .find(|row| row[..3] == [origin, &size.layers().to_string(), &orbit.to_string()])
                    .unwrap_or_else(|| panic!("{size} {orbit}"));
                assert_eq!(row[3], orbit.pieces().to_string(), "{size} {orbit}");
                let held = u8::from(orbit == Orbit::Corner && !size.is_odd());
                assert_eq!(
                    row[4],
                    factorial(u128::from(orbit.pieces() - held)).to_string(),
                    "{size} {orbit}"
                );
            }
        }
    }
}

/// Source: GAP, by reference/orbits.g, which finds the orbits of facelets itself: two of every depth of wings, one of every kind of
/// centres, on each of which the turns make all 24! permutations.
#[test]
fn the_orbits_of_facelets_are_those_that_are_found_elsewhere() {
    let table: Vec<_> = rows(include_str!("../../../reference/orbits_gap.txt")).collect();
    for origin in ["standard", "ours"] {
        for size in Size::ALL.into_iter().filter(|&size| size > Size::THREE) {
            let wings =
                Orbit::of(size).iter().filter(|orbit| orbit.is_edge() && orbit.stickers_per_piece() == 1);
            let centres = Orbit::of(size).iter().filter(|orbit| orbit.looks_alike());
            let wanted = 2 * wings.count() + centres.count();
            let all = factorial(24).to_string();
            let row =
                table.iter().find(|row| row[..4] == [origin, &size.layers().to_string(), "24", all.as_str()]);
            assert_eq!(row.map(|row| row[4].to_owned()), Some(wanted.to_string()), "{origin} {size}");
        }
    }
}
