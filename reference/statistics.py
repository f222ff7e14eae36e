"""Vectors for statistics, by SciPy and NumPy: intervals of Beta distributions, quantiles, lines of least squares.

Written to the folder that is given. Numbers have twelve digits; inputs are drawn from a fixed seed.
"""

import sys
from pathlib import Path

import numpy
from scipy import stats

DRAWN = numpy.random.Generator(numpy.random.PCG64(20261130))


def written(*numbers):
    return " ".join(f"{number:.12g}" for number in numbers)


def shares():
    for of in (1, 2, 3, 5, 10, 30, 100, 1000, 20000):
        for right in sorted({0, 1, of // 3, of // 2, of - 1, of}):
            for level in (0.5, 0.9, 0.95):
                belief = stats.beta(right + 0.5, of - right + 0.5)
                low, high = belief.interval(level)
                low, high = (0.0 if right == 0 else low), (1.0 if right == of else high)
                yield f"share {right} {of} {level} {written(low, high)}"


def higher():
    for (a, m), (b, n) in [((3, 10), (7, 10)), ((0, 5), (5, 5)), ((40, 100), (45, 100)), ((1, 1), (0, 1)), ((8, 20), (80, 200))]:
        x = numpy.linspace(0.0, 1.0, 2_000_001)[1:-1]
        one, other = stats.beta(a + 0.5, m - a + 0.5), stats.beta(b + 0.5, n - b + 0.5)
        # The share of the first that lies above the second: the integral of its density times the other's distribution, by steps of
        # the other's quantiles, where the density is integrable at both ends.
        u = (numpy.arange(200_000) + 0.5) / 200_000
        chance = float(numpy.mean(other.cdf(one.ppf(u))))
        yield f"higher {a} {m} {b} {n} {written(chance)}"


def quantiles():
    for count in (1, 2, 5, 12, 100):
        numbers = numpy.round(DRAWN.lognormal(4.0, 0.3, count), 2)
        for part in (0.0, 0.1, 0.25, 0.5, 0.9, 1.0):
            yield f"quantile {part} {written(numpy.quantile(numbers, part, method='linear'))} {written(*numbers)}"
    for count in (8, 20, 100):
        numbers = numpy.round(DRAWN.lognormal(4.0, 0.3, count), 2)
        for part in (0.25, 0.5):
            interval = stats.quantile_test(numbers, q=0.0, p=part).confidence_interval(0.95)
            yield f"between {part} {written(interval.low, interval.high)} {written(*numbers)}"


def lines():
    for count in (3, 10, 60):
        letters = DRAWN.integers(14, 30, count)
        seconds = numpy.round(12 + 2.3 * letters + DRAWN.normal(0, 6, count), 2)
        found = stats.linregress(letters, seconds)
        wide = stats.t.ppf(0.975, count - 2)
        left = seconds - found.intercept - found.slope * letters
        spread = numpy.sqrt(numpy.sum(left**2) / (count - 2))
        pairs = " ".join(f"{a}:{b:.12g}" for a, b in zip(letters, seconds))
        yield (
            f"line {written(found.intercept, found.slope, wide * found.intercept_stderr, wide * found.stderr, spread)} {pairs}"
        )


def main():
    folder = Path(sys.argv[1])
    made = [line for part in (shares, higher, quantiles, lines) for line in part()]
    (folder / "statistics.txt").write_text("\n".join(made) + "\n")


main()
