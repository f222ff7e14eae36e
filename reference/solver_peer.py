"""Solves 3x3 states with the peer solver (PyPI kociemba, C) and writes the length of each solution.

    cargo run --release -p search --example solver_states 1000 > states.txt
    pip install -r reference/requirements-bench.txt
    python reference/solver_peer.py states.txt > reference/solver_peer.tsv

The summary (number, mean and longest length, CPU time of the solving alone) goes to standard error.
"""

import importlib.metadata
import sys
import time

import kociemba


def for_the_peer(state):
    """A state as the peer reads it, U R F D L B; ours are in the order U L F R B D."""
    faces = dict(zip("ULFRBD", (state[first : first + 9] for first in range(0, 54, 9))))
    return "".join(faces[face] for face in "URFDLB")


def main() -> None:
    with open(sys.argv[1], encoding="ascii") as lines:
        states = [line.split()[0] for line in lines if line.strip()]
    kociemba.solve(for_the_peer(states[0]))  # Loads the tables, which are not counted.
    begun = time.process_time()
    lengths = [len(kociemba.solve(for_the_peer(state)).split()) for state in states]
    spent = time.process_time() - begun

    version = importlib.metadata.version("kociemba")
    print(f"# Source: PyPI kociemba {version} (C), turns of its solution of each state, half turns counted as one.")
    print("# States: seed 1000, written by the example solver_states of the crate search. Made by reference/solver_peer.py.")
    for state, length in zip(states, lengths, strict=True):
        print(f"{state}\t{length}")
    print(
        f"{len(states)} states, mean {sum(lengths) / len(states):.3f}, longest {max(lengths)},"
        f" {spent:.2f} s of CPU time, {len(states) / spent:.1f} a second",
        file=sys.stderr,
    )


if __name__ == "__main__":
    main()
