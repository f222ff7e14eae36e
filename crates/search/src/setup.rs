//! Set-up moves: the shortest sequences that bring a sticker to a place and leave given pieces alone.

use crate::ease::alone;
use cube::{Block, Claim, NotProven, Orbit, Size, State, Sticker, Turn};
use std::collections::HashMap;

/// The turns that set-ups are made of by default: faces, and where there is a layer between, wide turns of two
/// layers and the slices.
pub fn usual_turns(size: Size) -> Vec<Turn> {
    Turn::all(size)
        .filter(|turn| match turn.block {
            Block::Outer { depth, .. } => depth == 1 || (depth == 2 && size.layers() >= 3),
            Block::Slice(_) => true,
            Block::Inner { .. } | Block::Whole(_) => false,
        })
        .collect()
}

/// What is wanted of the set-ups for one swap.
#[derive(Clone, Debug)]
pub struct Wanted<'a> {
    /// The cube.
    pub size: Size,
    /// The kind of piece.
    pub orbit: Orbit,
    /// Where the sticker has to come.
    pub to: Sticker,
    /// One sticker of each piece that must end where it was, the same way round.
    pub leave: &'a [(Orbit, Sticker)],
    /// The turns that may be used.
    pub turns: &'a [Turn],
}

/// Turns that bring a sticker to its place and leave alone what they must; they were applied and did so.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Setup(Vec<Turn>);

impl Setup {
    /// Applies turns that are to bring the sticker with a number to the place that is wanted.
    fn new(wanted: &Wanted<'_>, from: usize, turns: Vec<Turn>) -> Result<Self, NotProven> {
        NotProven::unless(does(wanted, from, &turns), Claim::Setup).map(|()| Self(turns))
    }

    /// The turns.
    pub fn turns(&self) -> &[Turn] {
        &self.0
    }
}

/// For each of the 24 stickers all shortest set-ups, the easiest first; none where no sequence within the limit does.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Setups {
    found: Vec<Vec<Setup>>,
}

impl Setups {
    /// All shortest set-ups for a sticker, the easiest first.
    pub fn of(&self, sticker: Sticker) -> &[Setup] {
        &self.found[sticker.index()]
    }
}

/// A sequence with what it does to the pieces that matter.
struct Word {
    turns: Vec<Turn>,
    /// Where the pieces to be left alone end.
    left: Vec<u8>,
    /// For each sticker of the orbit, where it ends.
    goes: [u8; 24],
}

/// Where a turn takes the stickers of each orbit.
struct Pushes<'a> {
    turn: Turn,
    /// Of the orbit of the wanted sticker.
    own: [u8; 24],
    /// Of the orbits of the pieces to be left alone, in their order.
    left: Vec<[u8; 24]>,
    wanted: &'a Wanted<'a>,
}

/// Searches the shortest set-ups for all stickers of an orbit at once, by meeting in the middle.
///
/// Sequences longer than `longest` turns are not looked for.
///
/// # Errors
/// [`NotProven`] when a sequence that was found does something else, which is a fault of the program.
///
/// ```
/// use cube::{Orbit, Size, display_turns};
/// use search::setup::{Wanted, setups, usual_turns};
/// let corner = |name| Orbit::Corner.sticker(name).unwrap();
/// let edge = |name| Orbit::Midge.sticker(name).unwrap();
/// let leave = [(Orbit::Corner, corner("LUB")), (Orbit::Midge, edge("UL")), (Orbit::Midge, edge("UB"))];
/// let turns = usual_turns(Size::THREE);
/// let wanted = Wanted { size: Size::THREE, orbit: Orbit::Corner, to: corner("DFR"), leave: &leave, turns: &turns };
/// let found = setups(&wanted, 4).unwrap();
/// // Common practice, no source.
/// assert_eq!(display_turns(found.of(corner("RUB"))[0].turns()).to_string(), "R' F");
/// ```
pub fn setups(wanted: &Wanted<'_>, longest: usize) -> Result<Setups, NotProven> {
    setups_where(wanted, longest, &|_| true)
}

/// As [`setups`], only such sequences of which something more is true.
///
/// # Errors
/// As there.
pub fn setups_where(
    wanted: &Wanted<'_>,
    longest: usize,
    accept: &dyn Fn(&[Turn]) -> bool,
) -> Result<Setups, NotProven> {
    let pushes: Vec<Pushes<'_>> = wanted.turns.iter().map(|&turn| Pushes::of(turn, wanted)).collect();
    let mut found: Vec<Vec<Setup>> = vec![Vec::new(); Sticker::COUNT];
    let mut words = vec![vec![Word {
        turns: Vec::new(),
        left: wanted.leave.iter().map(|(_, sticker)| sticker.index() as u8).collect(),
        goes: *cube::Perm::IDENTITY.table(),
    }]];
    let buffer_pieces: Vec<usize> = wanted
        .leave
        .iter()
        .filter(|(orbit, _)| *orbit == wanted.orbit)
        .flat_map(|&(orbit, sticker)| orbit.stickers_from(sticker))
        .map(Sticker::index)
        .collect();
    for length in 0..=longest {
        let (front, back) = (length.div_ceil(2), length / 2);
        while words.len() <= front {
            let longer = words.last().map_or_else(Vec::new, |last| lengthened(last, &pushes));
            words.push(longer);
        }
        let done: Vec<bool> = found.iter().map(|list| !list.is_empty()).collect();
        join(wanted, &words[front], &words[back], accept, &done, &mut found)?;
        // A piece that must stay cannot be brought anywhere else.
        if (0..Sticker::COUNT).all(|at| !found[at].is_empty() || buffer_pieces.contains(&at)) {
            break;
        }
    }
    for list in &mut found {
        // Faces before wide turns and slices, which leave the centres elsewhere meanwhile.
        let is_face = |turn: &&Turn| matches!(turn.block, Block::Outer { depth: 1, .. });
        let cost = |turns: &[Turn]| {
            let others = turns.len() - turns.iter().filter(is_face).count();
            (others, turns.iter().map(|&turn| alone(turn)).sum::<u32>())
        };
        list.sort_by(|a, b| (cost(&a.0), &a.0).cmp(&(cost(&b.0), &b.0)));
        list.dedup();
    }
    Ok(Setups { found })
}

impl<'a> Pushes<'a> {
    fn of(turn: Turn, wanted: &'a Wanted<'a>) -> Self {
        let after = State::solved(wanted.size).after(&[turn]);
        let push = |orbit: Orbit| *after.orbit(orbit).inverse().table();
        let left = wanted.leave.iter().map(|&(orbit, _)| push(orbit)).collect();
        Self { turn, own: push(wanted.orbit), left, wanted }
    }
}

/// Whether a turn may follow another: not the same block again, and turns about one axis in one order only.
fn may_follow(last: Turn, next: Turn) -> bool {
    last.block.axis() != next.block.axis() || last.block < next.block
}

fn lengthened(words: &[Word], pushes: &[Pushes<'_>]) -> Vec<Word> {
    let mut longer = Vec::new();
    for word in words {
        for push in pushes {
            if word.turns.last().is_some_and(|&last| !may_follow(last, push.turn)) {
                continue;
            }
            debug_assert_eq!(word.left.len(), push.wanted.leave.len());
            let mut turns = word.turns.clone();
            turns.push(push.turn);
            longer.push(Word {
                turns,
                left: word.left.iter().zip(&push.left).map(|(&at, table)| table[at as usize]).collect(),
                goes: word.goes.map(|at| push.own[at as usize]),
            });
        }
    }
    longer
}

/// Joins `front` and the inverse of `back` where both take the pieces to be left alone to the same places.
fn join(
    wanted: &Wanted<'_>,
    front: &[Word],
    back: &[Word],
    accept: &dyn Fn(&[Turn]) -> bool,
    done: &[bool],
    found: &mut [Vec<Setup>],
) -> Result<(), NotProven> {
    let mut by_places: HashMap<&[u8], Vec<&Word>> = HashMap::new();
    for word in back {
        by_places.entry(&word.left).or_default().push(word);
    }
    for first in front {
        for second in by_places.get(first.left.as_slice()).into_iter().flatten() {
            let undone = second.turns.last().map(|turn| turn.inverse());
            if let (Some(&last), Some(next)) = (first.turns.last(), undone)
                && !may_follow(last, next)
            {
                continue;
            }
            let meets = second.goes[wanted.to.index()];
            let Some(from) = first.goes.iter().position(|&at| at == meets) else { continue };
            if done[from] {
                continue;
            }
            let mut turns = first.turns.clone();
            turns.extend(cube::inverted(&second.turns));
            if accept(&turns) {
                found[from].push(Setup::new(wanted, from, turns)?);
            }
        }
    }
    Ok(())
}

/// Applies a sequence and looks whether it does what is wanted.
fn does(wanted: &Wanted<'_>, from: usize, turns: &[Turn]) -> bool {
    let after = State::solved(wanted.size).after(turns);
    after.at(wanted.orbit, wanted.to).index() == from
        && wanted.leave.iter().all(|&(orbit, sticker)| after.at(orbit, sticker) == sticker)
}

#[cfg(test)]
mod tests {
    use super::*;
    use cube::display_turns;

    fn corner(name: &str) -> Sticker {
        Orbit::Corner.sticker(name).unwrap()
    }

    /// With buffer LUB and target DFR. Common practice, no source.
    #[test]
    fn corner_set_ups_of_common_practice() {
        for size in [Size::TWO, Size::THREE] {
            let mut leave = vec![(Orbit::Corner, corner("LUB"))];
            if size == Size::THREE {
                leave.extend(["UL", "UB"].map(|name| (Orbit::Midge, Orbit::Midge.sticker(name).unwrap())));
            }
            let turns = usual_turns(size);
            let wanted =
                Wanted { size, orbit: Orbit::Corner, to: corner("DFR"), leave: &leave, turns: &turns };
            let found = setups(&wanted, 5).unwrap();
            for (name, moves) in
                [("RUB", "R' F"), ("DBR", "D'"), ("FUR", "R'"), ("LUF", "F' D"), ("LDB", "D' R"), ("DFR", "")]
            {
                assert_eq!(
                    display_turns(found.of(corner(name))[0].turns()).to_string(),
                    moves,
                    "{name} on a {size}"
                );
            }
            let half = cube::Algorithm::parse("R2", size).unwrap().flatten();
            assert!(found.of(corner("RUB")).iter().all(|setup| setup.turns() != half));
            // R2 brings the sticker's piece, but another of its stickers.
            assert_eq!(
                Setup::new(&wanted, corner("RUB").index(), half).unwrap_err(),
                NotProven { claim: Claim::Setup }
            );
            for sticker in Sticker::all() {
                let of_buffer = Orbit::Corner.piece(sticker) == Orbit::Corner.piece(corner("LUB"));
                assert_eq!(found.of(sticker).is_empty(), of_buffer);
            }
        }
    }

    #[test]
    fn all_shortest_are_found_and_equal_a_plain_search() {
        // Against trying every sequence of face turns in order of length.
        let size = Size::TWO;
        let leave = [(Orbit::Corner, corner("LUB"))];
        let turns: Vec<Turn> = Turn::faces().collect();
        let wanted = Wanted { size, orbit: Orbit::Corner, to: corner("DFR"), leave: &leave, turns: &turns };
        let found = setups(&wanted, 3).unwrap();
        for sticker in Sticker::all() {
            let mut plain: Vec<Vec<Turn>> = Vec::new();
            let mut layer: Vec<Vec<Turn>> = vec![Vec::new()];
            while plain.is_empty() && layer.first().is_some_and(|word| word.len() < 3) {
                plain = layer.iter().filter(|word| does(&wanted, sticker.index(), word)).cloned().collect();
                layer = layer
                    .iter()
                    .flat_map(|word| {
                        turns
                            .iter()
                            .filter(|&&turn| word.last().is_none_or(|&last| may_follow(last, turn)))
                            .map(|&turn| {
                                let mut longer = word.clone();
                                longer.push(turn);
                                longer
                            })
                    })
                    .collect();
            }
            let mut ours: Vec<Vec<Turn>> =
                found.of(sticker).iter().map(|setup| setup.turns().to_vec()).collect();
            ours.sort();
            plain.sort();
            if ours.first().is_none_or(|word| word.len() < 3) {
                assert_eq!(ours, plain, "{}", Orbit::Corner.name(sticker));
            }
        }
    }
}
