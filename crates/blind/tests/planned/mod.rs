//! Scrambles of bigger puzzles with the plans that carry them out, for the check in another model of the puzzle.

use blind::{Conventions, HoldChoice, MethodName, OrbitOrder, Solver, usual};
use cube::{Orbit, Size, State, Turn, display_turns};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::fmt::Write;

/// How many plans of each size and each choice of methods are committed.
pub const COMMITTED: usize = 2;

/// How many turns of any layers scramble a puzzle.
const TURNS: usize = 60;

/// A choice of methods: the usual one, or one for all kinds that it can carry out.
pub fn conventions(method: Option<MethodName>) -> Conventions {
    let mut conventions = Conventions::default();
    let Some(method) = method else { return conventions };
    for orbit in Orbit::ALL.into_iter().filter(|&orbit| method.carries_out(orbit)) {
        let kind = conventions.kind_mut(orbit);
        kind.method = method;
        if let Some(usual) = usual(method, orbit).filter(|_| orbit.stickers_per_piece() > 1) {
            (kind.buffer, kind.algorithm) = (usual.buffer, Some(usual.algorithm));
        }
    }
    // A half-turned slice is put right before the corners.
    conventions.execution_order = OrbitOrder::of_execution(&[Orbit::Midge, Orbit::Corner]);
    conventions
}

/// So many plans of every size from 4 on, by each choice of methods, as lines: size, methods, scramble, plan.
pub fn text(many: usize) -> String {
    let mut text = String::from(
        "# Source: the example `plans` of the crate `blind`.\n# size<TAB>methods<TAB>scramble<TAB>plan\n",
    );
    for size in Size::ALL.into_iter().filter(|&size| size > Size::THREE) {
        let turns: Vec<Turn> = Turn::all(size).filter(|turn| !turn.is_rotation()).collect();
        for method in
            [None, Some(MethodName::OneSwap), Some(MethodName::SliceSwap), Some(MethodName::ThreeCycle)]
        {
            let solver = Solver::new(size, conventions(method));
            let mut rng = ChaCha8Rng::seed_from_u64(u64::from(size.layers()));
            for _ in 0..many {
                let scramble: Vec<Turn> =
                    (0..TURNS).map(|_| turns[rng.random_range(0..turns.len())]).collect();
                // Slices turn the fixed centres; how the puzzle is then held is part of picking it up.
                let state = State::solved(size).after(&scramble);
                let solve = solver.solve(&state, HoldChoice::Conventions).expect("a memo");
                let plan = solve.solution.expect("a plan");
                let moves = [solve.held.rotation.turns(), plan.moves()].concat();
                let name = method.map_or("usual", MethodName::name);
                let (scramble, moves) = (display_turns(&scramble), display_turns(&moves));
                let _ = writeln!(text, "{}\t{name}\t{scramble}\t{moves}", size.layers());
            }
        }
    }
    text
}
