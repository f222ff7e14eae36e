//! What every picture keeps, whatever it shows.

use blind::{Conventions, Solver};
use cube::{Algorithm, Face, Facelets, Orbit, Rotation, Size, State, Sticker, Turn};
use draw::{
    Bead, Camera, Caption, Chain, Frame, Glow, Hidden, Item, Labels, Mark, Palette, Picture, Place, Strand,
    Strip, Svg, Theme, Thread, Tone, Turning, View,
};
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

fn scrambled(size: Size, picks: &[usize]) -> State {
    let turns: Vec<Turn> = Turn::all(size).collect();
    State::solved(size).after(&picks.iter().map(|pick| turns[pick % turns.len()]).collect::<Vec<_>>())
}

fn sizes() -> impl Strategy<Value = Size> {
    prop::sample::select(Size::ALL.to_vec())
}

fn holds() -> impl Strategy<Value = Rotation> {
    prop::sample::select(Rotation::all().collect::<Vec<_>>())
}

fn place(name: &str) -> Place {
    Place::new(Orbit::Corner, Orbit::Corner.sticker(name).unwrap())
}

/// Each drawn sticker: which cell it is and its fill, from the picture's own markup.
fn drawn(svg: &Svg) -> Vec<(String, String)> {
    let tree = roxmltree::Document::parse(svg.as_str()).unwrap();
    tree.descendants()
        .filter_map(|node| {
            Some((node.attribute("data-cell")?.to_owned(), node.attribute("fill").unwrap_or("").to_owned()))
        })
        .collect()
}

fn expected(facelets: &Facelets, seen: impl Fn(Face) -> bool) -> BTreeMap<String, String> {
    let palette = Palette::default();
    let n = facelets.size().layers();
    let cells = Face::ALL
        .into_iter()
        .filter(|&face| seen(face))
        .flat_map(|face| (0..n).flat_map(move |row| (0..n).map(move |column| (face, row, column))));
    cells
        .map(|(face, row, column)| {
            let colour = facelets.get(face, row, column).unwrap();
            (format!("{face} {row} {column}"), palette[colour].colour.to_string())
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn a_net_draws_every_sticker_once_in_its_colour(
        size in sizes(), hold in holds(), picks in prop::collection::vec(any::<usize>(), 0..20),
    ) {
        let facelets = scrambled(size, &picks).facelets();
        let stickers = drawn(&Picture::new(facelets.clone(), "net").handles(true).net_held(hold));
        prop_assert_eq!(stickers.len(), size.facelets());
        prop_assert_eq!(stickers.into_iter().collect::<BTreeMap<_, _>>(), expected(&facelets, |_| true));
    }

    #[test]
    fn three_faces_are_drawn_in_every_hold(size in sizes(), hold in holds(), picks in prop::collection::vec(any::<usize>(), 0..20)) {
        let facelets = scrambled(size, &picks).facelets();
        let picture = Picture::new(facelets.clone(), "cube").handles(true);
        let seen = |face| matches!(hold.image(face), Face::U | Face::F | Face::R);
        let stickers = drawn(&picture.solid(&View::held(hold)));
        prop_assert_eq!(stickers.len(), size.facelets() / 2);
        prop_assert_eq!(stickers.into_iter().collect::<BTreeMap<_, _>>(), expected(&facelets, seen));
        for hidden in [Hidden::Mirrored, Hidden::SwungOpen] {
            let stickers = drawn(&picture.solid(&View::held(hold).with_hidden(hidden)));
            prop_assert_eq!(stickers.len(), size.facelets());
            prop_assert_eq!(stickers.into_iter().collect::<BTreeMap<_, _>>(), expected(&facelets, |_| true));
        }
    }

    #[test]
    fn any_view_with_anything_on_it_is_well_formed(
        size in sizes(), yaw in any::<f64>(), pitch in any::<f64>(), turn in any::<usize>(), progress in any::<f64>(),
        hidden in prop::sample::select(vec![Hidden::Omitted, Hidden::Mirrored, Hidden::SwungOpen]),
        label in any::<String>(), steps in prop::collection::vec(0u8..24, 0..6),
    ) {
        let at = |index: &u8| Place::new(Orbit::Corner, Sticker::new(*index).unwrap());
        let turns: Vec<Turn> = Turn::all(size).collect();
        let picture = Picture::new(State::solved(size).facelets(), label.clone())
            .describing(label.clone())
            .labels(Labels::none().with(Orbit::Corner, std::array::from_fn(|_| label.clone())))
            .mark(place("UFR"), Mark::Target)
            .chain(Chain::new(steps.iter().map(at)))
            .theme(Theme::Page)
            .colour_letters(true);
        let view = View {
            camera: Camera::new(yaw, pitch),
            hidden,
            turning: Some(Turning { turn: turns[turn % turns.len()], progress }),
            ..View::default()
        };
        for svg in [picture.solid(&view), picture.net()] {
            let tree = roxmltree::Document::parse(svg.as_str()).unwrap();
            prop_assert_eq!(tree.root_element().attribute("role"), Some("img"));
            prop_assert!(!svg.as_str().contains("NaN") || label.contains("NaN"));
        }
        let text = picture.terminal(Rotation::NONE, Tone::Plain);
        prop_assert!(!text.chars().any(|c| c.is_control() && c != '\n'));
    }

    #[test]
    fn a_thread_draws_every_bead_once_within_its_width(
        kinds in prop::collection::vec(0u8..3, 0..40), width in 240f64..900.0, loose: bool, paired: bool, long in 0usize..6,
    ) {
        // Up to eight signs, as many as a letter may have.
        let mut letters = (0..).map(|i: usize| Bead::new(format!("b{i}{}", "x".repeat(i * long % 6))));
        let mut next = || letters.next().unwrap();
        let mut strand = Strand::new("corners", "UFR").with_loose_end(loose);
        for kind in kinds {
            let item = match kind {
                0 => Item::Bead(next()),
                1 => Item::Knot,
                _ => Item::Loop(next(), next()),
            };
            strand.items.push(item);
        }
        let count: usize = strand.items.iter().map(|item| match item {
            Item::Bead(_) => 1,
            Item::Knot => 0,
            Item::Loop(..) => 2,
        }).sum();
        let thread = Thread { width, paired, ..Thread::new(vec![strand], "memo") };
        let svg = thread.svg();
        let tree = roxmltree::Document::parse(svg.as_str()).unwrap();
        let beads: Vec<&str> = tree.descendants().filter(roxmltree::Node::is_text).filter_map(|node| node.text()).filter(|text| text.starts_with('b')).collect();
        prop_assert_eq!(beads.len(), count);
        prop_assert_eq!(beads.iter().collect::<BTreeSet<_>>().len(), count);
        let wide: f64 = tree.root_element().attribute("width").unwrap().parse().unwrap();
        prop_assert!(wide <= width + 4.0, "{} in {}", wide, width);
        // No bead covers another on its line.
        let number = |node: &roxmltree::Node<'_, '_>, name| node.attribute(name).and_then(|value| value.parse::<f64>().ok());
        let mut spans: Vec<(f64, f64, f64)> = tree.descendants().filter_map(|node| match node.tag_name().name() {
            // What ties the thread off is smaller than any bead.
            "circle" if number(&node, "r") == Some(15.0) => {
                let (x, y, r) = (number(&node, "cx")?, number(&node, "cy")?, number(&node, "r")?);
                Some((y, x - r, x + r))
            }
            "rect" if number(&node, "rx") == Some(15.0) => {
                let (x, y, broad) = (number(&node, "x")?, number(&node, "y")?, number(&node, "width")?);
                Some((y + 15.0, x, x + broad))
            }
            _ => None,
        }).collect();
        prop_assert_eq!(spans.len(), count);
        spans.sort_by(|a, b| a.partial_cmp(b).unwrap());
        for pair in spans.windows(2) {
            prop_assert!(pair[0].0 < pair[1].0 || pair[0].2 <= pair[1].1, "{:?}", pair);
        }
        let text = thread.terminal(40, Tone::Plain);
        prop_assert_eq!(text.matches("(b").count(), count);
        prop_assert!(text.lines().all(|line| line.chars().count() <= 40));
    }
}

#[test]
fn letters_move_with_their_stickers() {
    let state = State::solved(Size::THREE).after(&Algorithm::parse("R", Size::THREE).unwrap().flatten());
    let labels = Labels::letters(Size::THREE).carried_by(&state);
    // R takes what is at FUR up to the back: the sticker FUR is then at UBR (WCA Regulations 12a1a).
    assert_eq!(labels.at(place("UBR")), Labels::letters(Size::THREE).at(place("FUR")));
    assert_eq!(labels.at(place("UBL")), "A");
}

#[test]
fn dragging_turns_the_view() {
    let camera = Camera::USUAL.dragged(1.0, 0.0);
    assert!((Camera::USUAL.yaw - camera.yaw - core::f64::consts::FRAC_PI_2).abs() < 1e-12);
    assert!(Camera::USUAL.dragged(0.0, 9.0).pitch <= core::f64::consts::FRAC_PI_2);
    let stickers = drawn(
        &Picture::new(State::solved(Size::TWO).facelets(), "")
            .handles(true)
            .solid(&View { camera, ..View::default() }),
    );
    let faces: BTreeSet<_> = stickers.iter().map(|(cell, _)| cell[..1].to_owned()).collect();
    assert_eq!(faces, ["F", "L", "U"].map(String::from).into());
}

fn small() -> Picture {
    let turns = Algorithm::parse("R U'", Size::TWO).unwrap().flatten();
    Picture::new(State::solved(Size::TWO).after(&turns).facelets(), "A 2x2 after R U′")
}

#[test]
fn a_small_net() {
    let picture = small()
        .labels(Labels::letters(Size::TWO))
        .mark(place("UFR"), Mark::Look)
        .mark(place("LUB"), Mark::Buffer)
        .chain(Chain::new([place("UFR"), place("RUB"), place("LUB")]));
    insta::assert_snapshot!(picture.net().as_str().replace("><", ">\n<"));
}

#[test]
fn a_small_cube() {
    let picture = small().describing("White is up.").mark(place("FUR"), Mark::Target).theme(Theme::Page);
    insta::assert_snapshot!(picture.solid(&View::default()).as_str().replace("><", ">\n<"));
}

#[test]
fn a_net_for_the_terminal() {
    let picture = small()
        .labels(Labels::letters(Size::TWO))
        .mark(place("UFR"), Mark::Look)
        .chain(Chain::new([place("UFR"), place("RUB")]));
    insta::assert_snapshot!(picture.terminal(Rotation::NONE, Tone::Plain));
    let coloured = picture.terminal(Rotation::NONE, Tone::Colour);
    insta::assert_snapshot!(coloured.lines().next().unwrap().escape_debug().to_string());
    insta::assert_snapshot!(Palette::default().legend());
}

fn memo() -> Thread {
    let corners = Strand::new("corners", "LUB")
        .bead(Bead::new("N").glowing(Glow::Done))
        .bead(Bead::new("W").glowing(Glow::Now))
        .knot()
        .bead(Bead::new("F").wrong())
        .bead(Bead::new("H").sure(0.4))
        .turned(Bead::new("K"), Bead::new("U"))
        .bead(Bead::new("C"))
        .with_loose_end(true);
    Thread { width: 320.0, ..Thread::new(vec![corners, Strand::new("edges", "")], "Memo") }
}

#[test]
fn a_thread() {
    insta::assert_snapshot!(memo().svg().as_str().replace("><", ">\n<"));
    insta::assert_snapshot!(memo().terminal(30, Tone::Plain));
}

#[test]
fn letters_of_several_signs_fit_their_beads() {
    let edges = Strand::new("wings", "URb")
        .bead(Bead::new("か"))
        .bead(Bead::new("Schu").glowing(Glow::Now))
        .turned(Bead::new("syllable").sure(0.7), Bead::new("17"))
        .bead(Bead::new("words").wrong());
    let thread = Thread { width: 320.0, ..Thread::new(vec![edges], "Memo") };
    insta::assert_snapshot!(thread.svg().as_str().replace("><", ">\n<"));
    let letters: Vec<String> = (1..=24).map(|number| format!("k{number}")).collect();
    let labels = Labels::none().with(Orbit::Corner, std::array::from_fn(|at| letters[at].clone()));
    insta::assert_snapshot!(small().labels(labels).terminal(Rotation::NONE, Tone::Plain));
}

#[test]
fn every_kind_has_its_strand_and_only_parity_a_loose_end() {
    let size = Size::new(7).unwrap();
    let solver = Solver::new(size, Conventions::default());
    let memo = solver.memo(&scrambled(size, &[5, 40, 77, 12, 101, 3, 60, 33, 90, 21, 66, 8, 54])).unwrap();
    let thread = Thread::of(&memo, solver.conventions(), |orbit| blind::kind_name(orbit).to_owned(), "memo");
    assert_eq!(thread.strands.len(), 10);
    for (strand, trace) in thread.strands.iter().zip(memo.parts()) {
        let beads = strand.items.iter().map(|item| match item {
            Item::Bead(_) => 1,
            Item::Knot => 0,
            Item::Loop(..) => 2,
        });
        assert_eq!(beads.sum::<usize>(), trace.len(), "{}", strand.name);
        let told_apart = memo.parity().any(|orbit| orbit == trace.orbit());
        assert_eq!(strand.loose_end, told_apart, "{}", strand.name);
    }
    assert!(memo.parts().iter().any(|trace| trace.is_odd() && trace.orbit().looks_alike()));
    assert!(memo.parity().next().is_some());
}

#[test]
fn a_strip_holds_its_pictures_whole() {
    let frame = |letter: &str| Frame {
        picture: small().net(),
        letter: letter.to_owned(),
        note: "UFR → <LUB>".to_owned(),
    };
    let mut strip = Strip::new(vec![frame("A"), frame("B"), frame("C")], "Trace");
    strip.columns = 2;
    strip.caption = Caption::new("Trace").describing("Three steps");
    let svg = strip.svg();
    let tree = roxmltree::Document::parse(svg.as_str()).unwrap();
    let inner: Vec<_> =
        tree.root_element().descendants().filter(|node| node.has_tag_name("svg")).skip(1).collect();
    assert_eq!(inner.len(), 3);
    let alone = roxmltree::Document::parse(small().net().as_str()).unwrap().root_element().children().count();
    assert!(inner.iter().all(|node| node.children().count() == alone && node.attribute("viewBox").is_some()));
    assert_eq!(tree.root_element().attribute("viewBox"), Some("0 0 296 392"));
}

#[test]
fn pictures_stay_small() {
    let size = |svg: Svg| svg.as_str().len();
    let labelled =
        Picture::new(State::solved(Size::THREE).facelets(), "3x3").labels(Labels::letters(Size::THREE));
    assert!(size(labelled.net()) < 10_000);
    assert!(size(labelled.solid(&View::default())) < 8_000);
    assert!(size(memo().svg()) < 6_000);
}
