//! What lies on the velvet: everything within the pixels that there are, and whatever is spoken of in sight.

use blind::{Conventions, HoldChoice, Solver};
use cube::{Orbit, Size, State, Turn};
use draw::{Bead, Camera, Drawing, Gaze, Glow, Labels, Palette, Place, Strand, Turning, Velvet};
use proptest::prelude::*;

fn state(size: Size, picks: &[usize]) -> State {
    let turns: Vec<Turn> = Turn::all(size).collect();
    State::solved(size).after(&picks.iter().map(|pick| turns[pick % turns.len()]).collect::<Vec<_>>())
}

/// A memo with a letter of it in hand, as a bench shows it. `None` where the memo has no letter.
fn traced(size: Size, picks: &[usize], letter: usize, frame: [f64; 2]) -> Option<Velvet> {
    let solver = Solver::new(size, Conventions::default());
    let scrambled = state(size, picks);
    let solve = solver.solve(&scrambled, HoldChoice::Conventions).ok()?;
    let parts = solve.memo.parts();
    let all: Vec<(usize, usize)> = parts
        .iter()
        .enumerate()
        .flat_map(|(part, trace)| (0..trace.len()).map(move |at| (part, at)))
        .collect();
    let at = *all.get(letter % all.len().max(1))?;
    let trace = &parts[at.0];
    let step = trace.steps()[at.1];
    let place = |sticker| Place::new(trace.orbit(), sticker);
    let letters = |orbit: Orbit| &solver.conventions().kind(orbit).letters;
    let strands = parts.iter().enumerate().map(|(part, trace)| {
        let bead = |letter, target| {
            let glow = if (part, letter) == at { Glow::Now } else { Glow::Known };
            Bead::new(letters(trace.orbit()).of(target)).glowing(glow)
        };
        Strand::of(trace, blind::kind_name(trace.orbit()), bead).noting(format!("{} letters", trace.len()))
    });
    Some(Velvet {
        frame,
        keep: 0.0,
        looks: scrambled.after(solve.held.rotation.turns()).facelets(),
        palette: Palette::default(),
        labels: Labels::of(solver.conventions(), size).only(trace.orbit()),
        camera: None,
        dragged: [0.0, 0.0],
        opens: true,
        turning: None,
        next: None,
        gaze: Gaze {
            buffer: Some(place(trace.buffer())),
            home: Some(place(trace.buffer())),
            look: (!step.role.begins()).then(|| place(step.place)),
            target: Some((place(step.target), letters(trace.orbit()).of(step.target).to_owned())),
            before: None,
            drawn: 1.0,
        },
        lit: None,
        strands: strands.collect(),
        paired: true,
        at: Some(at),
        open: None,
    })
}

/// The layers as one document.
fn whole(drawing: &Drawing) -> String {
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\">{}{}{}</svg>",
        drawing.link, drawing.cube, drawing.thread
    )
}

/// Every number of every path, in pairs: all commands used here take pairs, but for arcs, which beads alone have.
fn points(markup: &str) -> Vec<[f64; 2]> {
    let tree = roxmltree::Document::parse(markup).unwrap();
    let mut out = Vec::new();
    for d in tree.descendants().filter_map(|node| node.attribute("d")).filter(|d| !d.contains('A')) {
        let spaced: String = d.chars().map(|c| if c.is_alphabetic() { ' ' } else { c }).collect();
        let spaced = spaced.replace('-', " -");
        let numbers: Vec<f64> = spaced.split_whitespace().map(|text| text.parse().unwrap()).collect();
        assert_eq!(numbers.len() % 2, 0, "{d}");
        out.extend(numbers.chunks(2).map(|pair| [pair[0], pair[1]]));
    }
    out
}

fn sizes() -> impl Strategy<Value = Size> {
    prop::sample::select(Size::ALL.to_vec())
}

/// Phones upright and on their side, laptops, a narrow column.
fn frames() -> impl Strategy<Value = [f64; 2]> {
    prop::sample::select(vec![
        [390.0, 470.0],
        [390.0, 300.0],
        [320.0, 380.0],
        [740.0, 240.0],
        [1136.0, 504.0],
        [607.0, 640.0],
        [1700.0, 900.0],
    ])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn all_is_within_the_frame_and_what_is_spoken_of_is_seen(
        size in sizes(), picks in prop::collection::vec(any::<usize>(), 4..30), letter in any::<usize>(), frame in frames(),
    ) {
        let Some(velvet) = traced(size, &picks, letter, frame) else { return Ok(()) };
        let drawing = velvet.draw();
        let all = whole(&drawing);
        prop_assert!(!all.contains("NaN") && !all.contains("inf"));
        for [x, y] in points(&all) {
            prop_assert!(x >= -10.0 && x <= frame[0] + 10.0 && y >= -10.0 && y <= frame[1] + 10.0, "{x} {y} in {frame:?}");
        }
        let tree = roxmltree::Document::parse(&all).unwrap();
        // The bead in hand is there, in the memo and on the cube where its piece belongs.
        let (part, letter) = velvet.at.unwrap();
        prop_assert!(drawing.beads.iter().any(|bead| bead.at == (part, letter)));
        let named = format!("{part}:{letter}");
        prop_assert_eq!(tree.descendants().filter(|node| node.attribute("data-bead") == Some(named.as_str())).count(), 1);
        prop_assert!(all.contains("oncube"), "the target is not seen");
        for place in velvet.gaze.look.iter().chain(velvet.gaze.target.as_ref().map(|(place, _)| place)) {
            let name = format!("{} {}", blind::kind_name(place.orbit), place.name());
            prop_assert!(tree.descendants().any(|node| node.attribute("data-sticker") == Some(name.as_str())), "{name}");
        }
        // Each strand has its head, and the beads of all that are open.
        prop_assert_eq!(drawing.headings.len(), velvet.strands.len());
        prop_assert!(drawing.headings[part].open);
        for bead in &drawing.beads {
            prop_assert!(drawing.headings[bead.at.0].open);
        }
    }

    #[test]
    fn however_it_is_turned_and_dragged_it_stays_well_formed(
        size in sizes(), picks in prop::collection::vec(any::<usize>(), 0..20), turn in any::<usize>(), progress in any::<f64>(),
        yaw in any::<f64>(), pitch in any::<f64>(), right in -2f64..2.0, drawn in any::<f64>(), width in any::<f64>(), height in any::<f64>(),
        playing: bool,
    ) {
        let turns: Vec<Turn> = Turn::all(size).collect();
        let turn = turns[turn % turns.len()];
        let Some(mut velvet) = traced(size, &picks, 3, [width, height]) else { return Ok(()) };
        velvet.camera = Some(Camera::new(yaw, pitch));
        velvet.dragged = [right, 0.3];
        velvet.gaze.drawn = drawn;
        if playing { velvet.turning = Some(Turning { turn, progress }) } else { velvet.next = Some(turn) }
        let all = whole(&velvet.draw());
        prop_assert!(roxmltree::Document::parse(&all).is_ok());
        prop_assert!(!all.contains("NaN") && !all.contains("inf"), "{all}");
    }

    #[test]
    fn only_what_is_lit_has_colours(size in sizes(), picks in prop::collection::vec(any::<usize>(), 1..3)) {
        let Some(mut velvet) = traced(size, &picks, 0, [600.0, 600.0]) else { return Ok(()) };
        velvet.gaze = Gaze { drawn: 1.0, ..Gaze::default() };
        let lit: Vec<Place> =
            velvet.looks.unsolved().into_iter().map(|(orbit, sticker)| Place::new(orbit, sticker)).collect();
        velvet.lit = Some(lit.clone());
        let all = whole(&velvet.draw());
        let tree = roxmltree::Document::parse(&all).unwrap();
        let names: Vec<String> =
            lit.iter().map(|place| format!("{} {}", blind::kind_name(place.orbit), place.name())).collect();
        for node in tree.descendants().filter(|node| node.attribute("class").is_some_and(|class| class == "s")) {
            prop_assert!(names.iter().any(|name| Some(name.as_str()) == node.attribute("data-sticker")));
        }
    }
}

/// With every letter of a long memo in hand, on the smallest screen, its bead is seen, and the cube is not squeezed away.
#[test]
fn a_memo_of_ten_kinds_fits_a_phone() {
    let size = Size::new(7).unwrap();
    let picks: Vec<usize> = (0..60).map(|at| at * 7919 + 13).collect();
    let count = {
        let velvet = traced(size, &picks, 0, [390.0, 470.0]).unwrap();
        assert_eq!(velvet.strands.len(), 10);
        velvet.strands.iter().map(|strand| strand.items.len()).sum::<usize>()
    };
    assert!(count > 130, "{count} letters and knots");
    for letter in (0..count).step_by(3) {
        let drawing = traced(size, &picks, letter, [390.0, 470.0]).unwrap().draw();
        let [_, _, broad, high] = drawing.cube_frame;
        assert!(broad >= 150.0 && high >= 150.0, "{:?}", drawing.cube_frame);
        assert!(drawing.beads.iter().all(|bead| bead.middle[1] + bead.radius <= 470.0));
    }
}

/// The motion ends where nothing moves: the last frame is the picture at rest, and before it the bead's place is hollow.
#[test]
fn the_last_frame_of_a_motion_is_the_picture_at_rest() {
    let mut velvet = traced(Size::THREE, &[5, 40, 77, 12, 11, 3], 2, [1136.0, 504.0]).unwrap();
    let rest = velvet.draw();
    let mut frames = Vec::new();
    for step in 0..10 {
        velvet.gaze.drawn = f64::from(step) / 10.0;
        frames.push(velvet.draw());
    }
    assert!(frames.iter().all(|frame| frame.thread.contains("bead hollow") && frame.thread != rest.thread));
    // The bead slides in the last third only.
    let sliding = |frame: &Drawing| frame.thread.matches("class=\"bl\"").count();
    assert_eq!(sliding(&frames[2]), sliding(&rest));
    assert_eq!(sliding(&frames[9]), sliding(&rest) + 1);
    velvet.gaze.drawn = 1.0;
    assert_eq!(velvet.draw(), rest);
}
