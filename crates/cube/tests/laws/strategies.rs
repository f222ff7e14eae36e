//! Random sizes, turns, states, and algorithms with brackets.

use cube::{Axis, Orbit, Rotation, Size, State, Sticker, Turn, display_turns};
use proptest::prelude::*;
use proptest::sample::select;

pub fn sizes() -> impl Strategy<Value = Size> {
    select(&Size::ALL[..])
}

pub fn axes() -> impl Strategy<Value = Axis> {
    select(&Axis::ALL[..])
}

pub fn rotations() -> impl Strategy<Value = Rotation> {
    select(Rotation::all().collect::<Vec<_>>())
}

pub fn stickers() -> impl Strategy<Value = Sticker> {
    select(Sticker::all().collect::<Vec<_>>())
}

/// A turn that the size has, of any sort.
pub fn turn(size: Size) -> impl Strategy<Value = Turn> + Clone {
    select(Turn::all(size).collect::<Vec<_>>())
}

pub fn turns(size: Size, most: usize) -> impl Strategy<Value = Vec<Turn>> {
    prop::collection::vec(turn(size), 0..=most)
}

pub fn sized_turns(most: usize) -> impl Strategy<Value = (Size, Vec<Turn>)> {
    sizes().prop_flat_map(move |size| (Just(size), turns(size, most)))
}

fn turned(sizes: impl Strategy<Value = Size>) -> impl Strategy<Value = State> {
    sizes
        .prop_flat_map(|size| (Just(size), turns(size, 60)))
        .prop_map(|(size, turns)| State::solved(size).after(&turns))
}

/// A state that was turned well, in any hold.
pub fn states() -> impl Strategy<Value = State> {
    turned(sizes())
}

pub fn odd_states() -> impl Strategy<Value = State> {
    turned(select(Size::ALL.into_iter().filter(|size| size.is_odd()).collect::<Vec<_>>()))
}

pub fn even_states() -> impl Strategy<Value = State> {
    turned(select(Size::ALL.into_iter().filter(|size| !size.is_odd()).collect::<Vec<_>>()))
}

/// A state and one of its orbits.
pub fn states_with_orbit() -> impl Strategy<Value = (State, Orbit)> {
    states().prop_flat_map(|state| (Just(state), select(Orbit::of(state.size()))))
}

/// An algorithm as it may be written, and what it means by the definition of the brackets.
#[derive(Clone, Debug)]
pub struct Written {
    pub text: String,
    pub meaning: Vec<Turn>,
}

fn backwards(turns: &[Turn]) -> Vec<Turn> {
    turns.iter().rev().map(|turn| turn.inverse()).collect()
}

fn repeated(text: &str, once: &[Turn], times: u32, prime: bool) -> Written {
    let mut meaning = once.repeat(times as usize);
    if prime {
        meaning = backwards(&meaning);
    }
    let text = format!(
        "{text}{}{}",
        if times == 1 { String::new() } else { times.to_string() },
        if prime { "'" } else { "" }
    );
    Written { text, meaning }
}

fn sequence(parts: Vec<Written>) -> Written {
    let text = parts.iter().map(|part| part.text.as_str()).collect::<Vec<_>>().join(" ");
    Written { text, meaning: parts.into_iter().flat_map(|part| part.meaning).collect() }
}

/// Groups, conjugates and commutators, nested up to four deep, with repeats and primes.
pub fn written(size: Size) -> impl Strategy<Value = Written> {
    let leaf = turn(size).prop_map(|turn| Written { text: turn.to_string(), meaning: vec![turn] });
    let part = leaf.prop_recursive(4, 40, 4, |inner| {
        let body = prop::collection::vec(inner, 0..4).prop_map(sequence).boxed();
        let bracket = (0..3u8, body.clone(), body).prop_map(|(kind, a, b)| match kind {
            0 => Written { text: format!("({})", a.text), meaning: a.meaning },
            1 => Written {
                text: format!("[{}: {}]", a.text, b.text),
                meaning: [a.meaning.clone(), b.meaning, backwards(&a.meaning)].concat(),
            },
            _ => Written {
                text: format!("[{}, {}]", a.text, b.text),
                meaning: [a.meaning.clone(), b.meaning.clone(), backwards(&a.meaning), backwards(&b.meaning)]
                    .concat(),
            },
        });
        (bracket, 1..4u32, any::<bool>())
            .prop_map(|(inner, times, prime)| repeated(&inner.text, &inner.meaning, times, prime))
    });
    prop::collection::vec(part, 0..5).prop_map(sequence)
}

pub fn sized_written() -> impl Strategy<Value = (Size, Written)> {
    sizes().prop_flat_map(|size| (Just(size), written(size)))
}

/// Turns as text, for messages of failed tests.
pub fn text(turns: &[Turn]) -> String {
    display_turns(turns).to_string()
}
