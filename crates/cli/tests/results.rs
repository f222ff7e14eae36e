//! Rounds and many at once, as they are used. The people are invented.

mod common;

use common::{hoodwink, json, refused};
use predicates::prelude::PredicateBooleanExt;
use predicates::str::contains;

#[test]
fn a_round_is_scored_by_its_edition() {
    // WCA Regulations 9b3, 9f8, 9f9; penalties A7b4.
    let five = ["round", "45.31", "DNF", "51.2+2", "40", "1:00.5"];
    hoodwink().args(five).assert().success().stdout(
        contains("Best: 40.00.").and(contains("Average of 5: 53.00.")).and(contains("the delegate's word")),
    );
    let old = json(&[&five[..], &["--edition", "2024-01-01", "--json"]].concat());
    assert_eq!(old["people"][0]["best"], 4531);
    assert_eq!(old["people"][0]["mean"], -1);
    // A1a2++: of thirty minutes fourteen are left after 6:00 and DNF(10:00).
    let limited =
        json(&["round", "--json", "--event", "4x4", "--together", "30:00", "6:00", "DNF(10:00)", "13:59+2"]);
    assert_eq!(limited["people"][0]["attempts"], serde_json::json!([36000, -1, -1]));
    hoodwink()
        .args(["round", "--language", "de", "45.31"])
        .assert()
        .success()
        .stdout(contains("Bester Versuch: 45.31."));
}

#[test]
fn published_numbers_are_read_and_written() {
    // The formula of the results export's README: 41/41 in 54:14.
    let many = json(&["round", "--json", "--event", "many", "--codes", "580325400", "-1"]);
    assert_eq!(many["people"][0]["best"], 580_325_400);
    let typed = json(&["round", "--json", "--event", "many", "41/41 54:14"]);
    assert_eq!(typed["people"][0]["best"], many["people"][0]["best"]);
}

#[test]
fn people_are_placed() {
    let table =
        "Ines: 45.31 DNF 50.2 44 41\nOle: 39.5 DNF DNF 60 DNF\nMara: DNS DNS\nJo: 39.5 DNF DNF DNF DNF\n";
    let object = hoodwink().args(["round", "--json", "--table", "-"]).write_stdin(table).assert().success();
    let object: serde_json::Value = serde_json::from_slice(&object.get_output().stdout).unwrap();
    let places: Vec<_> =
        object["people"].as_array().unwrap().iter().map(|one| one["place"].as_u64()).collect();
    // Equal results share a place (9f15); who never started has none (9f5a).
    assert_eq!(places, [Some(3), Some(1), None, Some(1)]);
    let output = hoodwink().args(["round", "--table", "-"]).write_stdin(table).assert().success();
    let text = String::from_utf8(output.get_output().stdout.clone()).unwrap();
    let at = |name: &str| text.find(name).unwrap();
    assert!(at("Ole") < at("Ines") && at("Ines") < at("Mara"));
    hoodwink()
        .args(["round", "-t", "-"])
        .write_stdin("Ines: 4x\n")
        .assert()
        .code(2)
        .stderr(contains("Line 1"));
}

#[test]
fn the_number_of_puzzles_is_planned() {
    let arguments = ["many", "--success", "24/30", "--first", "2:10", "--growth", "5", "--points", "8"];
    hoodwink().args(arguments).assert().success().stdout(
        contains("24 of 30 came right").and(contains("Most points")).and(contains("rest between attempts")),
    );
    let object = json(&[&arguments[..], &["--json", "--most", "5"]].concat());
    assert_eq!(object["prospects"].as_array().unwrap().len(), 4);
    let two = object["prospects"][0]["solved"].as_array().unwrap();
    let all: f64 = two.iter().map(|chance| chance.as_f64().unwrap()).sum();
    assert!((all - 1.0).abs() < 1e-9);
    refused(&["many", "-s", "often", "-f", "10"], "no success rate");
    refused(&["round", "1:75"], "minutes and seconds go up to 59");
    refused(&["round", "--edition", "2020-01-01", "3"], "Known: 2024-01-01");
    refused(&["round"], "No attempt is given.");
}
