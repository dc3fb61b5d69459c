"""The work of test/measure/maths.ts done by numpy and scipy, on the same data, in the same process run.

Called with the folder of the data; prints one JSON object: name -> [median milliseconds, check value].
"""

import json
import sys
from pathlib import Path
from statistics import median
from time import perf_counter

import numpy as np
from scipy.optimize import linear_sum_assignment

folder = Path(sys.argv[1])
work = json.loads((folder / "work.json").read_text())


def data(name):
    return np.fromfile(folder / name, dtype=np.float64)


def mean_and_sd(name):
    values = data(name)

    def run():
        return values.mean() + values.std(ddof=1)

    return run


def assignment(name, size):
    costs = data(name).reshape(size, size)

    def run():
        rows, columns = linear_sum_assignment(costs)
        return costs[rows, columns].sum()

    return run


def clearances(name, size, aim, forbidden):
    sizes = data(name)
    bores, shafts = sizes[:size], sizes[size:]
    barred = np.array(forbidden, dtype=int).reshape(-1, 2)

    def run():
        costs = np.abs(bores[:, None] - shafts[None, :] - aim)
        costs[barred[:, 0], barred[:, 1]] = np.inf
        rows, columns = linear_sum_assignment(costs)
        return costs[rows, columns].sum()

    return run


def chain(links, draws, seed, part):
    def run():
        rng = np.random.default_rng(seed)
        total = np.zeros(draws)
        for coefficient, spread in links:
            if spread["shape"] == "normal":
                x = rng.normal(spread["mean"], spread["sd"], draws)
            else:
                x = rng.uniform(spread["low"], spread["high"], draws)
            total += coefficient * x
        total.sort()
        width = round(part * draws)
        spans = total[width:] - total[: draws - width]
        least = spans[spans.argmin()]
        below = (draws - width) // 2
        symmetric = total[below + width] - total[below]
        assert np.isfinite(total.mean())
        return total.std(ddof=1) + least + symmetric

    return run


def in_a_row(flags, length):
    """Number of windows of `length` that are all true."""
    count = np.concatenate(([0], np.cumsum(flags)))
    return int((count[length:] - count[:-length] == length).sum())


def some_of(flags, wanted, length):
    """Number of true points whose window of `length`, short at the start, has `wanted` true ones."""
    count = np.concatenate((np.zeros(length, dtype=int), np.cumsum(flags)))
    return int((flags & (count[length:] - count[:-length] >= wanted)).sum())


def chart(name):
    values = data(name)

    def run():
        ranges = np.abs(np.diff(values))
        sigma = ranges.mean() / (2 / np.sqrt(np.pi))
        off = values - values.mean()
        far = np.abs(off)
        step = np.sign(np.diff(values))
        turns = step[1:] * step[:-1] < 0
        return (
            int((far > 3 * sigma).sum())
            + in_a_row(off > 0, 9)
            + in_a_row(off < 0, 9)
            + in_a_row(off > 0, 8)
            + in_a_row(off < 0, 8)
            + in_a_row(step > 0, 5)
            + in_a_row(step < 0, 5)
            + in_a_row(turns, 12)
            + some_of(off > 2 * sigma, 2, 3)
            + some_of(off < -2 * sigma, 2, 3)
            + some_of(off > sigma, 4, 5)
            + some_of(off < -sigma, 4, 5)
            + in_a_row(far < sigma, 15)
            + in_a_row(far > sigma, 8)
        )

    return run


kinds = {
    "mean_and_sd": mean_and_sd,
    "assignment": assignment,
    "clearances": clearances,
    "chain": chain,
    "chart": chart,
}

found = {}
for item in work:
    run = kinds[item["kind"]](*item["arguments"])
    check = run()
    times = []
    for _ in range(item["rounds"]):
        start = perf_counter()
        check = run()
        times.append(1000 * (perf_counter() - start))
    found[item["name"]] = [median(times), float(check)]
print(json.dumps(found))
