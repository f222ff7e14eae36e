//! How often the true slips of a simulated attempt, or slips that act identically, are found, and how early.
//!
//! `cargo bench -p diagnosis --bench accuracy -- --states 10000` writes the tables of `BENCHMARKS.md`; without an
//! argument a small sample is taken.

#![expect(
    clippy::disallowed_types,
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "a program that measures: it takes arguments and a clock, and prints"
)]

mod attempt;

use attempt::{Attempt, Drawn, scramble};
use blind::{Conventions, Solver};
use cube::{Orbit, Size, State};
use diagnosis::{Begun, Catalogue, Depth, Diagnosis, Inquiry, Observed, Plan, Seen, SlipKind, why};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;
use std::time::{Duration, Instant};

const SAMPLE: usize = 60;
const DEEP_LIMIT: Duration = Duration::from_secs(10);

/// How much of the outcome is told.
#[derive(Clone, Copy, PartialEq, Debug)]
enum Told {
    Everything,
    /// Every unsolved piece and where it belongs, not how it is turned.
    Places,
    Counts,
}

#[derive(Clone, Copy, Default)]
struct Tally {
    all: usize,
    first: usize,
    three: usize,
    ten: usize,
    /// The likeliest slip is of the very kind that was made.
    kind: usize,
    ways: usize,
    missing: usize,
}

impl Tally {
    fn add(&mut self, rank: Option<usize>, kind: bool, ways: usize) {
        self.all += 1;
        self.first += usize::from(rank == Some(0));
        self.three += usize::from(rank.is_some_and(|rank| rank < 3));
        self.ten += usize::from(rank.is_some_and(|rank| rank < 10));
        self.kind += usize::from(kind);
        self.ways += ways;
        self.missing += usize::from(rank.is_none());
    }

    fn percent(&self, count: usize) -> f64 {
        100.0 * count as f64 / self.all.max(1) as f64
    }
}

fn held(state: &State) -> State {
    state.after(state.core().inverse().turns())
}

/// By what each state of a row differs from the one before, up to how the puzzle is held; nothings left out.
fn effects(row: &[State]) -> Vec<State> {
    row.windows(2)
        .map(|pair| held(&pair[0].inverse().then(&pair[1])))
        .filter(|effect| !effect.is_solved())
        .collect()
}

fn same(a: &[State], b: &[State]) -> bool {
    let mut rest = b.to_vec();
    a.len() == b.len()
        && a.iter().all(|effect| match rest.iter().position(|other| other == effect) {
            Some(at) => {
                rest.swap_remove(at);
                true
            }
            None => false,
        })
}

fn orders(count: usize) -> Vec<Vec<usize>> {
    match count {
        1 => vec![vec![0]],
        2 => vec![vec![0, 1], vec![1, 0]],
        _ => vec![vec![0, 1, 2], vec![0, 2, 1], vec![1, 0, 2], vec![1, 2, 0], vec![2, 0, 1], vec![2, 1, 0]],
    }
}

/// The effects of the true slips, one by one, in every order in which they can be told apart.
fn true_effects(attempt: &Attempt<'_>, drawn: &[Drawn]) -> Vec<Vec<State>> {
    orders(drawn.len())
        .into_iter()
        .filter_map(|order| {
            let row: Option<Vec<State>> = (0..=order.len())
                .map(|count| {
                    let mut chosen: Vec<usize> = order[..count].to_vec();
                    chosen.sort_unstable();
                    let slips: Vec<&Drawn> = chosen.iter().map(|&at| &drawn[at]).collect();
                    attempt.outcome(&slips)
                })
                .collect();
            Some(effects(&row?))
        })
        .collect()
}

fn observed(seen: &State, told: Told) -> Observed {
    let named = held(seen);
    let unsolved = |orbit: Orbit| {
        orbit
            .all_pieces()
            .map(move |piece| orbit.reference(piece))
            .filter(|&place| named.at(orbit, place) != place)
            .collect::<Vec<_>>()
    };
    let kinds = [Orbit::Corner, Orbit::Midge];
    match told {
        Told::Everything => Observed::State(Box::new(*seen)),
        Told::Counts => Observed::counts(&kinds.map(|orbit| (orbit, unsolved(orbit).len()))),
        Told::Places => {
            let mut items = Vec::new();
            for orbit in kinds {
                let mut left = unsolved(orbit);
                while let Some(first) = left.first().copied() {
                    let mut stickers = Vec::new();
                    let mut at = first;
                    loop {
                        stickers.push(at);
                        left.retain(|&other| orbit.piece(other) != orbit.piece(at));
                        at = orbit.reference(orbit.piece(named.at(orbit, at)));
                        if at == first {
                            break;
                        }
                    }
                    items.push(match stickers.as_slice() {
                        [sticker] => Seen::Unsolved { orbit, sticker: *sticker },
                        _ => Seen::Cycle { orbit, stickers, turning: false },
                    });
                }
            }
            // A piece turned in its place shows that much.
            let items = items
                .into_iter()
                .map(|item| match item {
                    Seen::Unsolved { orbit, sticker } => Seen::Turned { orbit, sticker, clockwise: None },
                    other => other,
                })
                .collect();
            Observed::Pieces(items)
        }
    }
}

struct Run<'a> {
    states: usize,
    slips: usize,
    drawn_by: &'a Catalogue,
    told: Told,
    depth: Depth,
}

fn run(run: &Run<'_>, solver: &Solver) -> (Tally, Vec<Tally>, f64) {
    let catalogue = Catalogue::default();
    let mut rng = ChaCha8Rng::seed_from_u64(7);
    let mut total = Tally::default();
    let mut by_kind = vec![Tally::default(); SlipKind::ALL.len()];
    let mut spent = Duration::ZERO;
    while total.all < run.states {
        let attempt = Attempt::new(scramble(&mut rng), solver);
        let drawn = attempt.draw(run.slips, run.drawn_by, &mut rng);
        let all: Vec<&Drawn> = drawn.iter().collect();
        let Some(seen) = attempt.outcome(&all) else { continue };
        // An attempt that comes out all the same asks no question.
        if held(&seen).is_solved() {
            continue;
        }
        let truth = true_effects(&attempt, &drawn);
        let begun = Begun::Scramble(attempt.scramble.clone());
        let plan = Plan::new(begun, None, solver).expect("our own memo");
        let observed = observed(&seen, run.told);
        let inquiry = Inquiry { catalogue: &catalogue, depth: run.depth, answers: &[], most: 10 };
        let began = Instant::now();
        let found =
            why(&plan, &observed, &inquiry, &mut |_| began.elapsed() < DEEP_LIMIT).expect("reachable");
        spent += began.elapsed();
        let Diagnosis { explanations, .. } = found;
        let rank = explanations
            .iter()
            .position(|explanation| truth.iter().any(|truth| same(&effects(explanation.passes()), truth)));
        let best = explanations.first();
        let mut kinds: Vec<SlipKind> =
            best.iter().flat_map(|best| best.slips()).map(|slip| slip.kind).collect();
        let mut true_kinds: Vec<SlipKind> = drawn.iter().map(|slip| slip.kind).collect();
        kinds.sort_unstable();
        true_kinds.sort_unstable();
        let ways = rank.map_or(0, |rank| explanations[rank].ways());
        total.add(rank, kinds == true_kinds, ways);
        for slip in &drawn {
            by_kind[slip.kind.index()].add(rank, kinds.contains(&slip.kind), ways);
        }
    }
    let each = spent.as_secs_f64() * 1000.0 / total.all as f64;
    (total, by_kind, each)
}

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    let after = |name: &str| {
        arguments.iter().position(|argument| argument == name).and_then(|at| arguments.get(at + 1))
    };
    let states = after("--states").and_then(|count| count.parse().ok()).unwrap_or(SAMPLE);
    let deep = after("--deep").and_then(|count| count.parse().ok()).unwrap_or(states / 100);
    let solver = Solver::new(Size::THREE, Conventions::default());
    let weights = [("catalogue", Catalogue::default()), ("uniform", Catalogue::default().evened())];
    println!(
        "| slips | drawn by | told | attempts | first | first 3 | first 10 | same kind first | ms each |"
    );
    println!("| --- | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: |");
    let mut kinds: Vec<(usize, Vec<Tally>)> = Vec::new();
    for told in [Told::Everything, Told::Places, Told::Counts] {
        for slips in 1..=3 {
            for (name, drawn_by) in &weights {
                let states = match (told, slips) {
                    (Told::Everything, 3) => deep,
                    (Told::Everything, _) => states,
                    (_, 3) => 0,
                    _ => states / 10,
                };
                if states == 0 {
                    continue;
                }
                let depth = if slips == 3 { Depth::Three } else { Depth::Two };
                let (total, by_kind, each) = run(&Run { states, slips, drawn_by, told, depth }, &solver);
                let told_as = match told {
                    Told::Everything => "full state",
                    Told::Places => "unsolved pieces, no turning",
                    Told::Counts => "counts",
                };
                println!(
                    "| {slips} | {name} | {told_as} | {} | {:.1} % | {:.1} % | {:.1} % | {:.1} % | {each:.1} |",
                    total.all,
                    total.percent(total.first),
                    total.percent(total.three),
                    total.percent(total.ten),
                    total.percent(total.kind),
                );
                if told == Told::Everything && *name == "uniform" {
                    kinds.push((slips, by_kind));
                }
            }
        }
    }
    for (slips, by_kind) in kinds {
        println!();
        println!("Attempts with {slips}, drawn evenly, by kind of slip:");
        println!();
        println!(
            "| kind | attempts | first | first 10 | named as itself | not among them | ways that act alike |"
        );
        println!("| --- | ---: | ---: | ---: | ---: | ---: | ---: |");
        for kind in SlipKind::ALL {
            let tally = by_kind[kind.index()];
            if tally.all > 0 {
                println!(
                    "| {} | {} | {:.1} % | {:.1} % | {:.1} % | {:.1} % | {:.1} |",
                    kind.name(),
                    tally.all,
                    tally.percent(tally.first),
                    tally.percent(tally.ten),
                    tally.percent(tally.kind),
                    tally.percent(tally.missing),
                    tally.ways as f64 / (tally.all - tally.missing).max(1) as f64,
                );
            }
        }
    }
}
