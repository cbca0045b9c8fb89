#!/usr/bin/env python3
"""Makes golden.json, which TestGolden compares the fits with: run it in its folder.

The numbers are those of exact rational arithmetic (fractions) on the doubles given, by the
normal equations in plain powers of the gradient, rounded once at the end: another way than
that of the package. numpy.polyfit, a third way, must agree with them to the tolerance
below, or the script stops; how well it does is written into the file.

Made with Python 3.11.2, numpy 1.24.2 (Debian 12 packages python3, python3-numpy).
All measurements are invented.
"""
import json
import platform
import random
from fractions import Fraction
from math import isqrt, sqrt

import numpy

AGREE = 1e-8  # of a standard error; numpy works in plain powers, which costs digits at degree 9


def inverse(a):
    """Gauss-Jordan elimination, exact."""
    n = len(a)
    a = [row[:] + [Fraction(int(i == j)) for j in range(n)] for i, row in enumerate(a)]
    for i in range(n):
        pivot = next(r for r in range(i, n) if a[r][i] != 0)
        a[i], a[pivot] = a[pivot], a[i]
        a[i] = [x / a[i][i] for x in a[i]]
        for r in range(n):
            if r != i:
                a[r] = [x - a[r][i] * y for x, y in zip(a[r], a[i])]
    return [row[n:] for row in a]


def solve(points, degree):
    """Coefficients, (X'WX)^-1 and the weighted sum of squared residuals."""
    n = degree + 1
    xtwx = [[sum(w * g ** (i + j) for g, _, w in points) for j in range(n)] for i in range(n)]
    xtwy = [sum(w * y * g**i for g, y, w in points) for i in range(n)]
    unscaled = inverse(xtwx)
    c = [sum(unscaled[i][j] * xtwy[j] for j in range(n)) for i in range(n)]
    squares = sum(w * (y - value(c, g)) ** 2 for g, y, w in points)
    return c, unscaled, squares


def value(c, g):
    return sum(ck * g**k for k, ck in enumerate(c))


def root(x):
    """Square root of a fraction, right to the last bit or two."""
    scale = Fraction(2) ** 240
    return float(Fraction(isqrt(int(x * scale * scale)), 1) / scale)


def leave_out(points, degree):
    out = []
    for g in sorted({p[0] for p in points}):
        c, _, _ = solve([p for p in points if p[0] != g], degree)
        left = [p for p in points if p[0] == g]
        mean = sum(w * y for _, y, w in left) / sum(w for _, _, w in left)
        out.append({"gradient": float(g), "points": len(left), "cost": float(mean), "predicted": float(value(c, g))})
    return out


def case(name, degree, known, points):
    exact = [tuple(map(Fraction, p)) for p in points]
    c, unscaled, squares = solve(exact, degree)
    df = len(points) - degree - 1
    scale = Fraction(1) if known else squares / df
    low, high = min(p[0] for p in points), max(p[0] for p in points)
    at = [low + (high - low) * k / 8 for k in range(9)]
    se = [root(scale * sum(unscaled[i][j] * Fraction(g) ** (i + j) for i in range(degree + 1) for j in range(degree + 1))) for g in at]
    at = list(map(float, at))
    return {
        "name": name, "degree": degree, "known_variance": known,
        "points": [{"gradient": g, "cost": y, "weight": w} for g, y, w in points],
        "coefficients": list(map(float, c)),
        "covariance": [[float(scale * x) for x in row] for row in unscaled],
        "residual_sd": root(squares / df), "degrees_of_freedom": df,
        "at": at, "cost": [float(value(c, Fraction(g))) for g in at], "se": se,
        "left_out": leave_out(exact, degree),
        "numpy_differs_by": compare(points, degree, known, c, unscaled, scale),
    }


def compare(points, degree, known, c, unscaled, scale):
    """The worst relative difference of numpy's coefficients and covariance."""
    g, y, w = map(numpy.array, zip(*points))
    p, cov = numpy.polyfit(g, y, degree, w=numpy.sqrt(w), cov="unscaled" if known else True)
    worst = 0.0
    sd = [sqrt(scale * unscaled[i][i]) for i in range(degree + 1)]
    for i in range(degree + 1):
        worst = max(worst, abs(p[degree - i] - float(c[i])) / sd[i])
        for j in range(degree + 1):
            worst = max(worst, abs(cov[degree - i][degree - j] - float(scale * unscaled[i][j])) / (sd[i] * sd[j]))
    assert worst < AGREE, worst
    return worst


def invent(seed, gradients, repeats, weights, noise, cost):
    draw = random.Random(seed)
    points = []
    for g in gradients:
        for _ in range(repeats):
            w = draw.choice(weights)
            points.append((g, round(cost(g) + draw.gauss(0, noise / sqrt(w)), 3), w))
    draw.shuffle(points)
    return points


def bowl(g):
    return 3.5 + 16 * g + 50 * g * g + 10 * g**3


wide = [-0.45, -0.4, -0.35, -0.3, -0.2, -0.1, 0.0, 0.1, 0.2, 0.3, 0.35, 0.4, 0.45]
cases = [
    case("one runner, equal weights", 5, False, invent(1, wide, 1, [1.0], 0.15, bowl)),
    case("means of unlike numbers", 3, False, invent(2, wide[2:10], 2, [1.0, 2.0, 5.0], 0.2, bowl)),
    case("known variances", 4, True, invent(3, wide[3:11], 3, [16.0, 25.0, 44.0, 100.0], 1.0, bowl)),
    case("uphill only, crowded", 2, False, invent(4, [0.02, 0.04, 0.05, 0.07, 0.08, 0.1], 4, [1.0, 1.5], 0.1, bowl)),
    case("straight line", 1, False, invent(5, [0.0, 0.05, 0.1, 0.15], 2, [1.0], 0.1, bowl)),
    case("the highest degree", 9, False, invent(6, wide, 2, [0.5, 1.0], 0.1, bowl)),
]
with open("golden.json", "w", encoding="utf-8") as f:
    versions = {"python": platform.python_version(), "numpy": numpy.__version__}
    json.dump({"made_by": "golden.py", "versions": versions, "cases": cases}, f, indent=1)
    f.write("\n")
for k in cases:
    print(k["name"], k["numpy_differs_by"])
