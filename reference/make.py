"""Writes the vectors that the tests of the Rust crates compare with: `python make.py FOLDER`.

The generators come from geometry.py, the orders of groups from SymPy, for our own tables (ours/move_tables.txt) as well;
our own scrambles (ours/scrambles.txt) and plans (ours/plans.txt) are carried out.
Everything that is random is seeded, so a second run writes the same bytes.
"""

import pathlib
import random
import sys

from sympy.combinatorics import Permutation, PermutationGroup

from geometry import FACES, Cube

HERE = pathlib.Path(__file__).parent
SIZES = range(2, 8)
# SymPy finds these orders in seconds; for the larger sizes, whose groups it does not finish in minutes, see orders.g.
SIZES_FOR_SYMPY = (2, 3)
LINES_A_SIZE = 40
MOVES_A_LINE = 25
SEED = 20260401


def held_generators(size):
    """Names of quarter turns that make every state and never turn the whole cube.

    On an even size they leave the corner at D, B, L where it is; on an odd size, the fixed centres.
    """
    faces, depths = ("RUF", size - 1) if size % 2 == 0 else (FACES, (size - 1) // 2)
    wide = {1: "{}", 2: "{}w"}
    return [wide.get(depth, f"{depth}{{}}w").format(face) for depth in range(1, depths + 1) for face in faces]


def generators():
    """The text of generators.txt: each quarter turn of each size as a list of images."""
    lines = [
        "# Source: geometry.py (World Cube Association Regulations 12a1, 12a2, 12a4; M, E, S, inner layers: common practice, no source).",
        "# size<TAB>turn<TAB>for each facelet, in the order U L F R B D row by row, the facelet where its sticker goes",
    ]
    for size in SIZES:
        cube = Cube(size)
        for name in cube.quarter_turns():
            image = " ".join(str(number) for number in cube.move(name).array_form)
            lines.append(f"{size}\t{name}\t{image}")
    return "\n".join(lines) + "\n"


def sequences():
    """The text of sequences.txt: random moves and the facelets that they lead to."""
    lines = [
        f"# Source: geometry.py applied by SymPy permutations; random moves from seed {SEED}.",
        "# size<TAB>moves<TAB>facelets after them, from the solved cube",
    ]
    draw = random.Random(SEED)
    for size in SIZES:
        cube = Cube(size)
        names = cube.quarter_turns()
        if size > 2:
            names += ["2" + face + "w" for face in FACES]
        if size == 3:
            names += list(FACES.lower())
        for _ in range(LINES_A_SIZE):
            moves = []
            for _ in range(MOVES_A_LINE):
                name = names[int(draw.random() * len(names))]
                moves.append(name + ("", "'", "2")[int(draw.random() * 3)])
            text = " ".join(moves)
            lines.append(f"{size}\t{text}\t{cube.apply(text)}")
    return "\n".join(lines) + "\n"


def parities():
    """The text of parities.txt: which kinds of piece a quarter turn of each layer permutes oddly."""
    lines = [
        "# Source: geometry.py; a quarter turn of one layer as a permutation of the pieces of a kind, centres told apart.",
        "# size<TAB>layer from outside<TAB>kind of piece<TAB>odd|even, whichever face the layer is counted from",
    ]
    for size in SIZES:
        cube = Cube(size)
        for layer in range(1, (size + 1) // 2 + 1):
            odd = cube.odd_kinds("U", layer)
            if any(cube.odd_kinds(face, layer) != odd for face in FACES):
                raise AssertionError(f"layer {layer} of size {size} is not alike from all faces")
            lines += [f"{size}\t{layer}\t{kind}\t{'odd' if odd[kind] else 'even'}" for kind in sorted(odd)]
    return "\n".join(lines) + "\n"


def scrambles(text):
    """The text of scrambles.txt: our own scrambles and the facelets that they lead to."""
    lines = [
        "# Source: geometry.py applied by SymPy permutations to the moves of ours/scrambles.txt.",
        "# size<TAB>moves<TAB>facelets after them, from the solved cube",
    ]
    cubes = {size: Cube(size) for size in SIZES}
    for line in text.splitlines():
        if line and not line.startswith("#"):
            size, _, _, moves = line.split("\t")
            lines.append(f"{size}\t{moves}\t{cubes[int(size)].apply(moves)}")
    return "\n".join(lines) + "\n"


def read_tables(text):
    """Permutations by size and turn, from the text of a file of generators."""
    tables = {}
    for line in text.splitlines():
        if line and not line.startswith("#"):
            size, name, image = line.split("\t")
            tables.setdefault(int(size), {})[name] = Permutation([int(number) for number in image.split()])
    return tables


def orders(tables_by_origin):
    """The text of orders.txt: the order of the group that each set of tables makes."""
    lines = [
        "# Source: SymPy (PermutationGroup.order), for the tables of generators.txt and of ours/.",
        "# tables<TAB>size<TAB>generators<TAB>order of the group",
    ]
    for origin, tables in tables_by_origin.items():
        for size in SIZES_FOR_SYMPY:
            names = held_generators(size)
            order = int(PermutationGroup([tables[size][name] for name in names]).order())
            lines.append(f"{origin}\t{size}\t{' '.join(names)}\t{order}")
    return "\n".join(lines) + "\n"


def pieces_of(cube):
    """For each kind of piece its places, and for each facelet the number of its place among them."""
    places, number = {}, {}
    for facelet, (place, _) in enumerate(cube.stickers):
        kind = cube.kind(place)
        if kind:
            of_kind = places.setdefault(kind, [])
            if place not in of_kind:
                of_kind.append(place)
            number[facelet] = of_kind.index(place)
    return places, number


def orbits(tables_by_origin):
    """The text of orbits.txt: the order of the group by which all turns permute the pieces of each kind, told apart."""
    lines = [
        "# Source: SymPy (PermutationGroup.order), for the tables of generators.txt and of ours/, kinds by geometry.py.",
        "# tables<TAB>size<TAB>kind of piece<TAB>how many pieces<TAB>order of the group of their permutations",
    ]
    for origin, tables in tables_by_origin.items():
        for size in SIZES:
            cube = Cube(size)
            places, number = pieces_of(cube)
            first = {}
            for facelet, (place, _) in enumerate(cube.stickers):
                first.setdefault(place, facelet)
            for kind in sorted(places):
                generators = []
                for turn in held_generators(size):
                    image = tables[size][turn].array_form
                    generators.append(Permutation([number[image[first[place]]] for place in places[kind]]))
                order = int(PermutationGroup(generators).order())
                lines.append(f"{origin}\t{size}\t{kind}\t{len(places[kind])}\t{order}")
    return "\n".join(lines) + "\n"


def plans(text):
    """The text of plans.txt: our own plans carried out after their scrambles, and the facelets that they end with."""
    lines = [
        "# Source: geometry.py applied by SymPy permutations to the scrambles and plans of ours/plans.txt.",
        "# size<TAB>methods<TAB>facelets after scramble and plan, from the solved cube",
    ]
    cubes = {size: Cube(size) for size in SIZES}
    for line in text.splitlines():
        if line and not line.startswith("#"):
            size, methods, scramble, plan = line.split("\t")
            lines.append(f"{size}\t{methods}\t{cubes[int(size)].apply(scramble + ' ' + plan)}")
    return "\n".join(lines) + "\n"


def main():
    """Writes all files into the folder named on the command line."""
    folder = pathlib.Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    standard = generators()
    tables = {"standard": read_tables(standard), "ours": read_tables((HERE / "ours" / "move_tables.txt").read_text())}
    written = {
        "generators.txt": standard,
        "sequences.txt": sequences(),
        "parities.txt": parities(),
        "scrambles.txt": scrambles((HERE / "ours" / "scrambles.txt").read_text()),
        "orders.txt": orders(tables),
        "orbits.txt": orbits(tables),
        "plans.txt": plans((HERE / "ours" / "plans.txt").read_text()),
    }
    for name, text in written.items():
        (folder / name).write_text(text, newline="\n")
    print("wrote", ", ".join(sorted(written)))


if __name__ == "__main__":
    main()
