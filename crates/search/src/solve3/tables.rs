//! All that is looked up, made from the model at the first call: 3.1 MB.

use super::coordinates::{Order, SIZE, Turned};
use super::inner::Inside;
use super::outer::Outside;
use crate::solve::succession::Succession;
use cube::{Corners, Midges};
use std::sync::LazyLock;

/// The tables of both phases.
pub struct Tables {
    /// What turns do to pieces.
    pub turned: Turned,
    /// Those of the first phase.
    pub outside: Outside,
    /// Those of the second phase.
    pub inside: Inside,
}

static TABLES: LazyLock<Tables> = LazyLock::new(Tables::make);

impl Tables {
    /// The tables, made once.
    pub fn get() -> &'static Self {
        &TABLES
    }

    fn make() -> Self {
        let turned = Turned::make();
        let succession = Succession::new(&turned.turns, SIZE);
        let outside = Outside::make(&turned, &succession, turned.outer(&Corners::HOME, &Midges::HOME));
        let inside = Inside::make(&turned, turned.inner(&Order::of(&Corners::HOME, &Midges::HOME)));
        Self { turned, outside, inside }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::random::{below, seeded};
    use crate::solve::succession::Choices;
    use crate::solve3::coordinates::{INNER_TURNS, TURNS};
    use cube::State;

    /// The tables step from class to class; the model turns pieces. Both say the same after every turn of long walks.
    #[test]
    fn steps_from_class_to_class_are_the_turns_of_pieces() {
        let tables = Tables::get();
        let (turned, outside) = (&tables.turned, &tables.outside);
        let mut generator = seeded(5);
        for _ in 0..20 {
            let mut state = State::solved(SIZE);
            let mut at = outside.at(turned.outer(&state.corners(), &state.midges()));
            for _ in 0..100 {
                let left = below(9, &mut generator) as u8;
                let mut free = 0;
                for seen in 0..TURNS {
                    let after = state.after(&[turned.turns[outside.shown(at, seen)]]);
                    let model = outside.at(turned.outer(&after.corners(), &after.midges()));
                    let stepped = outside.after(at, seen);
                    assert_eq!(outside.least(stepped), outside.least(model));
                    assert_eq!(outside.is_inside(stepped), outside.least(model) == 0);
                    free |= u32::from(outside.least(model) <= left) << seen;
                }
                let may = outside.choices(at, left, None);
                let chosen = may.filter(|&seen| outside.may_enter(outside.after(at, seen), left));
                assert_eq!(chosen.fold(0, |bits, seen| bits | 1 << seen), free);
                let seen = below(TURNS as u64, &mut generator) as usize;
                state = state.after(&[turned.turns[outside.shown(at, seen)]]);
                at = outside.after(at, seen);
            }
        }
    }

    #[test]
    fn steps_inside_the_subgroup_are_the_turns_of_pieces() {
        let tables = Tables::get();
        let (turned, inside) = (&tables.turned, &tables.inside);
        let mut generator = seeded(6);
        for _ in 0..20 {
            let mut order = Order::of(&Corners::HOME, &Midges::HOME);
            let mut at = inside.at(turned.inner(&order));
            for _ in 0..100 {
                let left = below(14, &mut generator) as u8;
                let mut free = 0;
                for turn in 0..INNER_TURNS {
                    let model = turned.inner(&turned.order_after(&order, turned.inner_turns[turn]));
                    let stepped = inside.after(at, turn);
                    assert_eq!(inside.least(stepped), inside.least(inside.at(model)));
                    assert_eq!(
                        inside.is_home(stepped),
                        model == turned.inner(&Order::of(&Corners::HOME, &Midges::HOME))
                    );
                    free |= u32::from(inside.least(stepped) <= left) << turn;
                }
                let may: Choices = inside.choices(at, left, None);
                assert_eq!(may.fold(0, |bits, turn| bits | 1 << turn), free);
                let turn = below(INNER_TURNS as u64, &mut generator) as usize;
                order = turned.order_after(&order, turned.inner_turns[turn]);
                at = inside.after(at, turn);
            }
        }
    }
}
