//! How often the true faults of simulated pupils, or slips that act identically, are found, how early, and whether what is said of
//! their likelihood is true.
//!
//! `cargo bench -p diagnosis --bench accuracy -- --states 10000` writes the tables of `BENCHMARKS.md`; without an
//! argument a small sample is taken.

#![expect(
    clippy::disallowed_types,
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "a program that measures: it takes arguments and a clock, and prints"
)]

mod pupil;

use blind::{Conventions, Solver};
use cube::{Orbit, Size, State};
use diagnosis::{Begun, Catalogue, Depth, Diagnosis, Inquiry, Observed, Plan, Seen, SlipKind, why};
use pupil::{Drawn, Fault, Pupil, When, scramble};
use rand::prelude::*;
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

impl Told {
    const fn name(self) -> &'static str {
        match self {
            Self::Everything => "full state",
            Self::Places => "unsolved pieces, no turning",
            Self::Counts => "counts",
        }
    }
}

#[derive(Clone, Default)]
struct Tally {
    all: usize,
    first: usize,
    three: usize,
    five: usize,
    /// The true slip, by name, is the first answer or one of its variants.
    named: usize,
    missing: usize,
    /// By tenths of the weight of the first answer: how many, how many of them true, and the sum of the weights.
    bins: [(usize, usize, f64); 10],
    spent: Duration,
    longest: Duration,
}

impl Tally {
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

/// The effects of the true faults, one by one, in every order in which they can be told apart.
fn true_effects(pupil: &Pupil<'_>, drawn: &[Drawn]) -> Vec<Vec<State>> {
    orders(drawn.len())
        .into_iter()
        .filter_map(|order| {
            let row: Option<Vec<State>> = (0..=order.len())
                .map(|count| {
                    let mut chosen: Vec<usize> = order[..count].to_vec();
                    chosen.sort_unstable();
                    let faults: Vec<&Drawn> = chosen.iter().map(|&at| &drawn[at]).collect();
                    pupil.outcome(&faults)
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
                    // A piece turned in its place shows that much.
                    items.push(match stickers.as_slice() {
                        [sticker] => Seen::Turned { orbit, sticker: *sticker, clockwise: None },
                        _ => Seen::Cycle { orbit, stickers, turning: false },
                    });
                }
            }
            Observed::Pieces(items)
        }
    }
}

struct Run<'a> {
    states: usize,
    /// How many; 0 is as many as the catalogue says that attempts have, one or two.
    faults: usize,
    rate: &'a dyn Fn(Fault) -> f64,
    told: Told,
    depth: Depth,
    solvers: &'a [Solver],
    /// Whether those that are not found are printed.
    misses: bool,
}

fn run(run: &Run<'_>) -> (Tally, Vec<Tally>) {
    let catalogue = Catalogue::default();
    let mut rng = ChaCha8Rng::seed_from_u64(7);
    let mut total = Tally::default();
    let mut by_fault = vec![Tally::default(); Fault::ALL.len()];
    while total.all < run.states {
        let solver = &run.solvers[total.all % run.solvers.len()];
        let Some(pupil) = Pupil::new(scramble(&mut rng), solver) else { continue };
        let of_one = catalogue.share_of_count(1);
        let faults = match run.faults {
            0 => 1 + usize::from(rng.random_bool(1.0 - of_one / (of_one + catalogue.share_of_count(2)))),
            faults => faults,
        };
        let Some(drawn) = pupil.draw(faults, run.rate, &mut rng) else { continue };
        let all: Vec<&Drawn> = drawn.iter().collect();
        let Some(seen) = pupil.outcome(&all) else { continue };
        // An attempt that comes out all the same asks no question.
        if held(&seen).is_solved() {
            continue;
        }
        let truth = true_effects(&pupil, &drawn);
        // So many faults only where each of them does something.
        if truth.iter().any(|effects| effects.len() < faults) {
            continue;
        }
        let plan = Plan::new(Begun::Scramble(pupil.scramble.clone()), None, solver).expect("our own memo");
        let observed = observed(&seen, run.told);
        let inquiry = Inquiry { catalogue: &catalogue, depth: run.depth, answers: &[], most: 10 };
        let began = Instant::now();
        let found =
            why(&plan, &observed, &inquiry, &mut |_| began.elapsed() < DEEP_LIMIT).expect("reachable");
        let spent = began.elapsed();
        let Diagnosis { explanations, .. } = found;
        let rank = explanations
            .iter()
            .position(|explanation| truth.iter().any(|truth| same(&effects(explanation.passes()), truth)));
        let best = explanations.first();
        let mut true_names: Vec<&str> =
            drawn.iter().map(|drawn| pupil::as_told(drawn.fault.name())).collect();
        true_names.sort_unstable();
        let named = best.is_some_and(|best| {
            std::iter::once(best.slips()).chain(best.alike().iter().map(Vec::as_slice)).any(|slips| {
                let mut names: Vec<&str> =
                    slips.iter().map(|slip| pupil::as_told(slip.kind.name())).collect();
                names.sort_unstable();
                names == true_names
            })
        });
        let weight = best.map_or(0.0, diagnosis::Explanation::weight);
        let add = |tally: &mut Tally| {
            tally.all += 1;
            tally.first += usize::from(rank == Some(0));
            tally.three += usize::from(rank.is_some_and(|rank| rank < 3));
            tally.five += usize::from(rank.is_some_and(|rank| rank < 5));
            tally.named += usize::from(named);
            tally.missing += usize::from(rank.is_none());
            let bin = &mut tally.bins[((weight * 10.0) as usize).min(9)];
            *bin = (bin.0 + 1, bin.1 + usize::from(rank == Some(0)), bin.2 + weight);
            tally.spent += spent;
            tally.longest = tally.longest.max(spent);
        };
        add(&mut total);
        for drawn in &drawn {
            add(&mut by_fault[Fault::ALL.iter().position(|fault| *fault == drawn.fault).unwrap_or(0)]);
        }
        if run.misses && (rank != Some(0) || !named) {
            let first = explanations.first().map(|first| {
                let kinds =
                    |slips: &[diagnosis::Slip]| slips.iter().map(|slip| slip.kind.name()).collect::<Vec<_>>();
                (
                    first.weight(),
                    kinds(first.slips()),
                    first.ways(),
                    first.alike().iter().map(|slips| kinds(slips)).collect::<Vec<_>>(),
                )
            });
            let method = |orbit: Orbit| solver.conventions().kind(orbit).method;
            let methods = (method(Orbit::Corner), method(Orbit::Midge));
            eprintln!(
                "{:?} {rank:?} {methods:?} {:?} told {first:?}",
                run.told,
                drawn.iter().map(Drawn::short).collect::<Vec<_>>()
            );
        }
    }
    (total, by_fault)
}

fn row(told: Told, faults: usize, rates: &str, methods: &str, tally: &Tally) {
    println!(
        "| {faults} | {rates} | {methods} | {} | {} | {:.1} % | {:.1} % | {:.1} % | {:.1} % | {:.1} | {:.0} |",
        told.name(),
        tally.all,
        tally.percent(tally.first),
        tally.percent(tally.three),
        tally.percent(tally.five),
        tally.percent(tally.named),
        tally.spent.as_secs_f64() * 1000.0 / tally.all.max(1) as f64,
        tally.longest.as_secs_f64() * 1000.0,
    );
}

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    let after = |name: &str| {
        arguments.iter().position(|argument| argument == name).and_then(|at| arguments.get(at + 1))
    };
    let count = |name: &str, usual: usize| after(name).and_then(|count| count.parse().ok()).unwrap_or(usual);
    let states = count("--states", SAMPLE);
    let deep = count("--deep", states / 100);
    let misses = arguments.iter().any(|argument| argument == "--misses");
    let catalogue = Catalogue::default();
    let own = |fault: Fault| fault.rate();
    let even = |_: Fault| 1.0;
    let model = |fault: Fault| SlipKind::named(fault.name()).map_or(0.0, |kind| catalogue.weight(kind));
    // Each rate halved or doubled.
    let mut rng = ChaCha8Rng::seed_from_u64(5);
    let factors: Vec<f64> = Fault::ALL.iter().map(|_| if rng.random() { 0.5 } else { 2.0 }).collect();
    let off = |fault: Fault| {
        let at = Fault::ALL.iter().position(|other| *other == fault).unwrap_or(0);
        model(fault) * factors[at]
    };
    let before = |fault: Fault| if fault.when() == When::Before { 1.0 } else { 0.0 };
    let one_swap = vec![Solver::new(Size::THREE, Conventions::default())];
    let mixed = pupil::solvers(count("--solvers", 6));
    println!(
        "| faults | rates | methods | told | attempts | first | first 3 | first 5 | named | ms each | longest ms |"
    );
    println!("| ---: | --- | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
    let rates: [(&str, &dyn Fn(Fault) -> f64); 5] = [
        ("pupils'", &own),
        ("even", &even),
        ("the model's", &model),
        ("halved or doubled", &off),
        ("scramble", &before),
    ];
    let mut kinds: Vec<(usize, Vec<Tally>)> = Vec::new();
    let mut bins: Vec<(String, Tally)> = Vec::new();
    let only = after("--only");
    for told in [Told::Everything, Told::Places, Told::Counts] {
        for faults in 0..=3 {
            for (name, rate) in rates {
                for (methods, solvers) in [("one-swap", &one_swap), ("drawn", &mixed)] {
                    let states = match (told, faults, name) {
                        (Told::Everything, 3, "pupils'") => deep,
                        (_, 0, "the model's" | "halved or doubled")
                        | (Told::Everything, 1 | 2, "even")
                        | (Told::Everything, 1, "scramble")
                        | (_, 1 | 2, "pupils'") => states,
                        _ => 0,
                    };
                    let label = format!("{faults}, {name}, {methods}, {}", told.name());
                    if states == 0 || only.is_some_and(|only| !label.contains(only)) {
                        continue;
                    }
                    let depth = if faults == 3 { Depth::Three } else { Depth::Two };
                    let (total, by_fault) = run(&Run { states, faults, rate, told, depth, solvers, misses });
                    row(told, faults, name, methods, &total);
                    if told == Told::Everything && name == "even" {
                        kinds.push((faults, by_fault));
                    }
                    bins.push((label, total));
                }
            }
        }
    }
    println!("\nWhat the first answer's weight says, and how often it is true:\n");
    println!("| attempts | weight | answers | true | mean weight |");
    println!("| --- | --- | ---: | ---: | ---: |");
    for (name, tally) in bins {
        for (at, (all, good, sum)) in tally.bins.into_iter().enumerate().filter(|(_, bin)| bin.0 > 0) {
            println!(
                "| {name} | {} to {} % | {all} | {:.0} % | {:.0} % |",
                10 * at,
                10 * at + 10,
                100.0 * good as f64 / all as f64,
                100.0 * sum / all as f64
            );
        }
    }
    for (faults, by_fault) in kinds {
        println!("\nAttempts with {faults}, drawn evenly, by fault:\n");
        println!("| fault | attempts | first | first 5 | named | not among them |");
        println!("| --- | ---: | ---: | ---: | ---: | ---: |");
        for (fault, tally) in Fault::ALL.iter().zip(&by_fault).filter(|(_, tally)| tally.all > 0) {
            println!(
                "| {} | {} | {:.1} % | {:.1} % | {:.1} % | {:.1} % |",
                fault.name(),
                tally.all,
                tally.percent(tally.first),
                tally.percent(tally.five),
                tally.percent(tally.named),
                tally.percent(tally.missing),
            );
        }
    }
}
