//! What lies outside a face, and sizes whose states are no elements of a packed group.

use cube::{Face, Facelets, Group, Size, State};

#[test]
fn outside_a_face_there_is_nothing_to_see_or_paint() {
    for size in Size::ALL {
        let n = size.layers();
        let seen = State::solved(size).facelets();
        for (row, column) in [(n, 0), (0, n), (n, n), (n - 1, n), (n, n - 1), (u8::MAX, u8::MAX)] {
            assert_eq!(seen.get(Face::F, row, column), None);
            assert_eq!(Facelets::place(size, Face::F, row, column), None);
            let mut painted = seen.clone();
            painted.set(Face::F, row, column, Face::B);
            assert_eq!(painted, seen);
        }
        let (last, mut painted) = (n - 1, seen.clone());
        painted.set(Face::F, last, last, Face::B);
        assert_eq!(
            (painted.get(Face::F, last, last), seen.get(Face::F, last, last)),
            (Some(Face::B), Some(Face::F))
        );
        assert_eq!(painted.colours().iter().zip(seen.colours()).filter(|(a, b)| a != b).count(), 1);
    }
}

#[test]
fn elements_are_of_sizes_whose_pieces_all_differ_and_fit() {
    let fit: Vec<Size> = Size::ALL.into_iter().filter(|&size| Group::of(size).is_some()).collect();
    assert_eq!(fit, [Size::TWO, Size::THREE]);
}
