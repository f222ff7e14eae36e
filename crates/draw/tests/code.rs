//! Codes for cameras, read back by a reader of other authors (crate `rqrr`).

use proptest::prelude::*;

/// Pixels of a module: enough for the reader to find it.
const SCALE: usize = 4;

/// The picture in black and white, from its path: runs `M x y h length v1 h-length z`.
fn modules(svg: &str) -> Vec<Vec<bool>> {
    let document = roxmltree::Document::parse(svg).unwrap();
    let root = document.root_element();
    let side = root.attribute("viewBox").unwrap().split(' ').nth(2).unwrap().parse::<f64>().unwrap() as usize;
    let mut dark = vec![vec![false; side]; side];
    let path = document.descendants().find_map(|node| node.attribute("d")).unwrap();
    for run in path.split('M').filter(|run| !run.is_empty()) {
        let (x, rest) = run.split_once(' ').unwrap();
        let (y, rest) = rest.split_once('h').unwrap();
        let length = rest.split_once('v').unwrap().0;
        let [x, y, length]: [usize; 3] = [x, y, length].map(|number| number.parse().unwrap());
        dark[y][x..x + length].fill(true);
    }
    dark
}

fn read(svg: &str) -> String {
    let dark = modules(svg);
    let side = dark.len() * SCALE;
    let grey = |x: usize, y: usize| if dark[y / SCALE][x / SCALE] { 0 } else { 255 };
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(side, side, grey);
    let grids = image.detect_grids();
    assert_eq!(grids.len(), 1);
    grids[0].decode().unwrap().1
}

#[test]
fn the_longest_code_reads_back() {
    let text: String = ('!'..='~').cycle().take(draw::LONGEST_CODE).collect();
    assert_eq!(read(draw::code(&text, "Link").unwrap().as_str()), text);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]
    #[test]
    fn a_code_reads_back(text in "[a-zA-Z0-9:/.#?=_&%-]{1,300}") {
        prop_assert_eq!(read(draw::code(&text, "Link").unwrap().as_str()), text);
    }
}
