"""A model of cubes of any size that shares nothing with the Rust crates: turns are rotations of points in space.

Source: the standard's definition of the moves (World Cube Association Regulations, articles 12a1, 12a2 and 12a4):
a face move turns the outer layer 90 degrees clockwise as one looks at that face, nXw turns the n layers next to the
face X, and x, y, z turn the whole cube as R, U and F do. The slices M, E, S, the lower-case wide moves and the inner
layers are not in the standard: M turns with L, E with D and S with F, r means Rw, 3X turns the third layer from the face
X alone and 2-3X the second and the third, as X turns (common practice, no source).

A sticker is a pair of a position and a direction. Positions have coordinates from -(size - 1) to size - 1 in steps of
two; x points right, y up, z to the viewer. A facelet is numbered face by face in the order U L F R B D, row by row as
one looks at the face: U with B at the top, D with F at the top, the side faces with U at the top.
"""

import re

from sympy.combinatorics import Permutation

FACES = "ULFRBD"
OUTWARD = {"U": (0, 1, 0), "R": (1, 0, 0), "F": (0, 0, 1), "D": (0, -1, 0), "L": (-1, 0, 0), "B": (0, 0, -1)}
# For each face: the direction in which a row is read, and the direction from the first row to the last.
READING = {
    "U": ((1, 0, 0), (0, 0, 1)),
    "R": ((0, 0, -1), (0, -1, 0)),
    "F": ((1, 0, 0), (0, -1, 0)),
    "D": ((1, 0, 0), (0, 0, -1)),
    "L": ((0, 0, 1), (0, -1, 0)),
    "B": ((-1, 0, 0), (0, -1, 0)),
}
MOVE = re.compile(
    r"(?P<first>\d*)(?:-(?P<last>\d+))?(?P<letter>[ULFRBD]w?|[ulfrbd]|[MESxyz])(?P<suffix>2?'?)$"
)


def dot(a, b):
    """Scalar product of two vectors."""
    return sum(p * q for p, q in zip(a, b))


def cross(a, b):
    """Vector product of two vectors."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def clockwise(vector, axis):
    """The vector after a quarter turn, clockwise as seen by someone who looks against the axis."""
    along = dot(vector, axis)
    turned = cross(vector, axis)
    return tuple(along * a + t for a, t in zip(axis, turned))


class Cube:
    """The stickers of a cube of one size, and the permutation of them that each turn makes."""

    def __init__(self, size):
        self.size = size
        self.stickers = []
        for face in FACES:
            out, (right, down) = OUTWARD[face], READING[face]
            for row in range(size):
                for column in range(size):
                    across, below = 2 * column - (size - 1), 2 * row - (size - 1)
                    place = tuple(o * (size - 1) + r * across + d * below for o, r, d in zip(out, right, down))
                    self.stickers.append((place, out))
        self.index = {sticker: number for number, sticker in enumerate(self.stickers)}
        self.known = {}

    def solved(self):
        """The facelet text of the solved cube."""
        return "".join(face * self.size**2 for face in FACES)

    def quarter(self, axis, chosen):
        """The permutation of a quarter turn about an axis of the layers whose number, from the axis's face, is chosen."""
        image = []
        for place, out in self.stickers:
            layer = ((self.size - 1) - dot(place, axis)) // 2 + 1
            moved = (clockwise(place, axis), clockwise(out, axis)) if layer in chosen else (place, out)
            image.append(self.index[moved])
        return Permutation(image)

    def move(self, text):
        """The permutation that one move makes: the sticker at facelet i goes to facelet i^p."""
        if text in self.known:
            return self.known[text]
        parts = MOVE.match(text)
        if not parts:
            raise ValueError(f"{text} is no move")
        letter, first, last = parts["letter"], parts["first"], parts["last"]
        if letter in "xyz":
            face, chosen = {"x": "R", "y": "U", "z": "F"}[letter], range(1, self.size + 1)
        elif letter in "MES":
            face, chosen = {"M": "L", "E": "D", "S": "F"}[letter], [(self.size + 1) // 2]
        elif letter in FACES:
            face, chosen = letter, range(int(first or 1), int(last or first or 1) + 1)
        else:
            face, chosen = letter[0].upper(), range(1, int(first or 2) + 1)
        turn = self.quarter(OUTWARD[face], chosen)
        power = (2 if "2" in parts["suffix"] else 1) * (-1 if "'" in parts["suffix"] else 1)
        self.known[text] = turn**power
        return self.known[text]

    def kind(self, place):
        """The kind of the piece at a place, as the crate `cube` names orbits; None for a centre that stays, or nothing.

        Layers are counted from outside. An oblique is named by the side of the middle on which it lies when the edge of
        the face that is nearest to it is held at the bottom.
        """
        depths = [((self.size - 1) - abs(part)) // 2 + 1 for part in place]
        inner = sorted((depth, axis) for axis, depth in enumerate(depths) if depth > 1)
        middle = [place[axis] == 0 for _, axis in inner]
        if len(inner) == 3 or all(middle) and len(inner) == 2:
            return None
        if not inner:
            return "corner"
        number = "" if inner[0][0] == 2 else f" {inner[0][0]}"
        if len(inner) == 1:
            return "midge" if middle[0] else "wing" + number
        if any(middle):
            return "t-centre" + number
        if inner[0][0] == inner[1][0]:
            return "x-centre" + number
        signs = [(part > 0) - (part < 0) for part in place]
        out, near, far = (
            tuple(signs[axis] if axis == wanted else 0 for axis in range(3))
            for wanted in (next(axis for axis, depth in enumerate(depths) if depth == 1), inner[0][1], inner[1][1])
        )
        return "right oblique" if dot(cross(out, near), far) > 0 else "left oblique"

    def odd_kinds(self, face, layer):
        """For each kind of piece whether a quarter turn of one layer, counted from a face, permutes the pieces oddly."""
        axis, places = OUTWARD[face], {}
        for place in sorted({place for place, _ in self.stickers}):
            if self.kind(place):
                places.setdefault(self.kind(place), []).append(place)
        odd = {}
        for kind, of_kind in places.items():
            index = {place: number for number, place in enumerate(of_kind)}
            turned = [((self.size - 1) - dot(place, axis)) // 2 + 1 == layer for place in of_kind]
            image = [index[clockwise(place, axis) if moves else place] for place, moves in zip(of_kind, turned)]
            odd[kind] = Permutation(image).is_odd
        return odd

    def apply(self, text):
        """The facelet text after a sequence of moves on the solved cube."""
        total = Permutation(range(len(self.stickers)))
        for move in text.split():
            total = total * self.move(move)
        before, after = self.solved(), [""] * len(self.stickers)
        for number, colour in enumerate(before):
            after[number ^ total] = colour
        return "".join(after)

    def inner_blocks(self):
        """What stands before the face for each block of neighbouring layers between the two outer ones."""
        layers = range(2, self.size)
        return [f"{first}" if first == last else f"{first}-{last}" for first in layers for last in layers if first <= last]

    def quarter_turns(self):
        """The names of all quarter turns of this size, in a fixed order."""
        names = list(FACES)
        names += [(f"{depth}" if depth > 2 else "") + face + "w" for depth in range(2, self.size) for face in FACES]
        names += [layers + face for layers in self.inner_blocks() for face in FACES]
        if self.size == 3:
            names += ["M", "E", "S"]
        return names + ["x", "y", "z"]
