//! The search in two phases: into the subgroup where half turns suffice, and home inside it.

use super::coordinates::{Order, SIZE};
use super::inner::Inner;
use super::outer::Outer;
use super::tables::Tables;
use crate::solve::work::Work;
use cube::{Corners, Midges, Rotation, State, Turn, inverted, rotated};

/// The most turns that a position of the subgroup can need there.
///
/// Source: known of this subgroup, from memory; nothing depends on it but where the search goes first.
const MOST_INSIDE: u8 = 18;
/// The longest second phase that is tried while a longer first phase is still likely to be found sooner.
const USUAL_INSIDE: u8 = 11;

/// One of six equal tasks: the state seen along one of three axes, forwards or backwards.
struct View {
    hold: Rotation,
    backwards: bool,
    order: Order,
    outer: Outer,
}

impl Order {
    /// The pieces of a state.
    pub fn of(corners: &Corners, midges: &Midges) -> Self {
        Self { corners: *corners.pieces(), midges: *midges.pieces() }
    }
}

/// The holds along each of the three axes.
pub fn axes() -> [Rotation; 3] {
    let third =
        Rotation::all().find(|&hold| hold != Rotation::NONE && hold.then(hold).then(hold) == Rotation::NONE);
    let third = third.unwrap_or(Rotation::NONE);
    [Rotation::NONE, third, third.then(third)]
}

/// A state, whose centres are as in the first hold, seen in a hold.
pub fn seen_in(state: &State, hold: Rotation) -> State {
    let held = State::held(SIZE, hold);
    held.inverse().then(state).then(&held)
}

/// The state, whose centres are as in the first hold, in six ways.
fn views(tables: &Tables, state: &State) -> Vec<View> {
    let mut views = Vec::with_capacity(6);
    for backwards in [false, true] {
        let state = if backwards { state.inverse() } else { *state };
        for hold in axes() {
            let seen = seen_in(&state, hold);
            let (corners, midges) = (seen.corners(), seen.midges());
            let outer = tables.outside.at(tables.turned.outer(&corners, &midges));
            views.push(View { hold, backwards, order: Order::of(&corners, &midges), outer });
        }
    }
    views
}

impl View {
    /// The turns that solve the state itself, from those that solve this view of it.
    fn translated(&self, turns: &[Turn]) -> Vec<Turn> {
        let turns = rotated(turns, self.hold.inverse());
        if self.backwards { inverted(&turns) } else { turns }
    }
}

/// A search in one view. It answers `true` when it is over: home is reached, or the work is used up.
struct Search<'a, 'b> {
    tables: &'a Tables,
    view: &'a View,
    /// The turns so far, by their numbers.
    path: Vec<usize>,
    /// How many turns both phases may take together.
    limit: u8,
    /// The longest second phase to look for.
    inside: u8,
    work: &'a mut Work<'b>,
}

impl Search<'_, '_> {
    /// Goes exactly so many turns into the subgroup, the last of which lies outside, and then home.
    fn enter(&mut self, at: Outer, left: u8, last: Option<usize>) -> bool {
        let tables = &self.tables.outside;
        let mut choices = tables.choices(at, left - 1, last);
        if left == 1 {
            choices = tables.outside(choices);
        }
        if self.work.one() {
            return true;
        }
        for seen in choices {
            let next = tables.after(at, seen);
            // Inside with turns left: whoever leaves again comes back no sooner than after five turns.
            if !tables.may_enter(next, left - 1) || (left > 1 && left < 5 && tables.is_inside(next)) {
                continue;
            }
            let turn = tables.shown(at, seen);
            self.path.push(turn);
            if if left == 1 { self.finish() } else { self.enter(next, left - 1, Some(turn)) } {
                return true;
            }
            self.path.pop();
        }
        false
    }

    /// The second phase from the end of the path: with a turn less than it may take, else with all, since to try each length
    /// takes longer. Where it is all there is, its shortest.
    fn finish(&mut self) -> bool {
        let (turned, tables) = (&self.tables.turned, &self.tables.inside);
        let order = self.path.iter().fold(self.view.order, |order, &turn| turned.order_after(&order, turn));
        let at = tables.at(turned.inner(&order));
        let most = (self.limit - self.path.len() as u8).min(self.inside);
        // A half turn of the last face is a turn of the first phase made otherwise.
        let last = self.path.last().map(|&turn| tables.half_turn(turn));
        let least = tables.least(at);
        if self.path.is_empty() {
            return (least..=most).any(|left| self.go_home(at, left, last));
        }
        least <= most && ((least < most && self.go_home(at, most - 1, last)) || self.go_home(at, most, last))
    }

    /// Goes at most so many turns of the subgroup home.
    fn go_home(&mut self, at: Inner, left: u8, last: Option<usize>) -> bool {
        let tables = &self.tables.inside;
        if tables.is_home(at) {
            return true;
        }
        let Some(left) = left.checked_sub(1) else { return false };
        if self.work.one() {
            return true;
        }
        for turn in tables.choices(at, left, last) {
            self.path.push(self.tables.turned.inner_turns[turn]);
            if self.go_home(tables.after(at, turn), left, Some(turn)) {
                return true;
            }
            self.path.pop();
        }
        false
    }
}

/// A solution of at most so many turns of a state whose centres are as in the first hold; `None` if none was found for the
/// work that is allowed.
pub fn solve(state: &State, limit: u8, work: &mut Work<'_>) -> Option<Vec<Turn>> {
    let tables = Tables::get();
    let mut views = views(tables, state);
    views.sort_by_key(|view| tables.outside.least(view.outer));
    for inside in [USUAL_INSIDE, MOST_INSIDE] {
        for outside in 0..=limit {
            for view in &views {
                if tables.outside.least(view.outer) > outside {
                    continue;
                }
                let path = Vec::with_capacity(32);
                let mut search = Search { tables, view, path, limit, inside, work: &mut *work };
                let over =
                    if outside == 0 { search.finish() } else { search.enter(view.outer, outside, None) };
                if over {
                    let path = search.path;
                    let turns: Vec<Turn> = path.iter().map(|&turn| tables.turned.turns[turn]).collect();
                    return (!work.is_used_up()).then(|| view.translated(&turns));
                }
            }
        }
    }
    None
}
