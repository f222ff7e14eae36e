//! A puzzle in a state that turning cannot lead to: a piece was turned or taken out by hand. With that put right, the
//! rest is explained as always, by one slip at most.

use super::search::{self, Found};
use super::space::Space;
use super::{Assembly, Explanation, Inquiry, Plan, Setting, WhyError};
use cube::{Element, Facelets, Orbit, State, Sticker, Unreachable};

/// What was done by hand.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum ByHand {
    /// A corner was turned in its place.
    Twisted {
        /// The place, by its reference sticker.
        place: Sticker,
        /// Whether it was turned clockwise.
        clockwise: bool,
    },
    /// An edge was flipped in its place.
    Flipped {
        /// The place, by its reference sticker.
        place: Sticker,
    },
    /// Two pieces came out and were put back in each other's place.
    Exchanged {
        /// The kind of piece.
        orbit: Orbit,
        /// The places, by their reference stickers.
        places: [Sticker; 2],
    },
}

/// A puzzle explained by something done by hand, and at most one slip besides.
#[derive(Clone, PartialEq, Debug)]
pub struct HandExplanation {
    /// What was done by hand, after everything else.
    pub by_hand: ByHand,
    /// The rest; its moves give what was observed with the piece put right.
    pub explanation: Explanation,
}

/// What a puzzle that turning cannot lead to is explained by.
#[derive(Clone, PartialEq, Debug)]
pub struct HandDiagnosis {
    /// Why turning cannot lead there.
    pub fault: Unreachable,
    /// What may have been done by hand, where the rest is as planned or takes one slip, the likeliest first.
    pub explanations: Vec<HandExplanation>,
}

/// The colours at a piece's place, clockwise from a sticker.
fn colours(seen: &Facelets, orbit: Orbit, place: Sticker) -> Vec<cube::Face> {
    orbit
        .stickers_from(place)
        .filter_map(|sticker| {
            let (row, column) = Facelets::cell_of(seen.size(), orbit, sticker);
            seen.get(sticker.face(), row, column)
        })
        .collect()
}

fn paint(seen: &mut Facelets, orbit: Orbit, place: Sticker, colours: &[cube::Face]) {
    let size = seen.size();
    for (sticker, &colour) in orbit.stickers_from(place).zip(colours) {
        let (row, column) = Facelets::cell_of(size, orbit, sticker);
        seen.set(sticker.face(), row, column, colour);
    }
}

/// Every reachable state from which one thing done by hand leads to what was seen.
fn repairs(seen: &Facelets) -> Vec<(ByHand, State)> {
    let mut found = Vec::new();
    let mut consider = |by_hand: ByHand, painted: &Facelets| {
        if let Ok(state) = painted.state() {
            found.push((by_hand, state));
        }
    };
    for &orbit in Orbit::of(seen.size()) {
        let places: Vec<Sticker> = orbit.all_pieces().map(|piece| orbit.reference(piece)).collect();
        let turns = orbit.stickers_per_piece() as usize;
        for (number, &place) in places.iter().enumerate() {
            let own = colours(seen, orbit, place);
            for turn in 1..turns {
                let mut painted = seen.clone();
                let mut turned = own.clone();
                turned.rotate_right(turn);
                paint(&mut painted, orbit, place, &turned);
                // Putting it right turned the colours clockwise once; by hand it went the other way.
                let by_hand = if orbit == Orbit::Corner {
                    ByHand::Twisted { place, clockwise: turn != 1 }
                } else {
                    ByHand::Flipped { place }
                };
                consider(by_hand, &painted);
            }
            for &other in &places[number + 1..] {
                let theirs = colours(seen, orbit, other);
                for (a, b) in (0..turns).flat_map(|a| (0..turns).map(move |b| (a, b))) {
                    let (mut mine, mut yours) = (own.clone(), theirs.clone());
                    mine.rotate_right(a);
                    yours.rotate_right(b);
                    let mut painted = seen.clone();
                    paint(&mut painted, orbit, place, &yours);
                    paint(&mut painted, orbit, other, &mine);
                    consider(ByHand::Exchanged { orbit, places: [place, other] }, &painted);
                }
            }
        }
    }
    found
}

/// Explains what turning cannot lead to, if it cannot; `None` for a state that it can.
///
/// # Errors
/// [`WhyError::OtherSize`] for colours of another size, [`WhyError::Size`] for a size that is not explained.
pub fn why_by_hand(
    plan: &Plan<'_>,
    seen: &Facelets,
    inquiry: &Inquiry<'_>,
) -> Result<Option<HandDiagnosis>, WhyError> {
    let size = plan.solver().size();
    if seen.size() != size {
        return Err(WhyError::OtherSize { planned: size, seen: seen.size() });
    }
    let Err(fault) = seen.state() else { return Ok(None) };
    let setting = Setting::new(plan, inquiry.catalogue)?;
    let space = Space::new(&setting, plan);
    let group = setting.group;
    let mut explained: Vec<(f64, HandExplanation)> = Vec::new();
    for (by_hand, state) in repairs(seen) {
        let difference = setting.difference(&state);
        let as_planned = group.key_up_to_hold(&difference) == group.key_up_to_hold(&Element::IDENTITY);
        let mut found = Found::default();
        search::singles(&space, &difference, 1.0, &mut found);
        let likely = if as_planned { 1.0 } else { found.groups.values().map(|group| group.weight).sum() };
        if likely <= 0.0 {
            continue;
        }
        let assembly =
            Assembly { plan, space: &space, planned: &setting.planned, exactly: Some(&state), wanted: None };
        let diagnosis =
            assembly.diagnosis(&found, as_planned, &Inquiry { most: 1, ..inquiry.clone() }, false)?;
        explained.extend(
            diagnosis
                .explanations
                .into_iter()
                .map(|explanation| (likely, HandExplanation { by_hand, explanation })),
        );
    }
    explained.sort_by(|a, b| b.0.total_cmp(&a.0));
    let sum: f64 = explained.iter().map(|(likely, _)| likely).sum();
    explained.truncate(inquiry.most);
    let explanations = explained
        .into_iter()
        .map(|(likely, HandExplanation { by_hand, explanation })| HandExplanation {
            by_hand,
            explanation: explanation.weighing(likely / sum),
        })
        .collect();
    Ok(Some(HandDiagnosis { fault, explanations }))
}
