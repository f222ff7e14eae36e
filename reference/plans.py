"""Carries plans out in the model of geometry.py: `plans | python plans.py`, lines as in ours/plans.txt.

Prints for each size and each choice of methods how many plans there were and how many solved, every face of one colour and
held as before. Exit code 1 where one did not.
"""

import collections
import sys

from geometry import Cube


def main():
    """Reads plans from standard input."""
    cubes, counts = {}, collections.Counter()
    for line in sys.stdin:
        if not line.strip() or line.startswith("#"):
            continue
        size, methods, scramble, plan = line.rstrip("\n").split("\t")
        cube = cubes.setdefault(size, Cube(int(size)))
        solved = cube.apply(scramble + " " + plan) == cube.solved()
        counts[size, methods, solved] += 1
    kinds = sorted({(size, methods) for size, methods, _ in counts})
    for size, methods in kinds:
        good, bad = counts[size, methods, True], counts[size, methods, False]
        print(f"{size}x{size} {methods}: {good} of {good + bad} solve")
    sys.exit(any(not solved for _, _, solved in counts))


if __name__ == "__main__":
    main()
