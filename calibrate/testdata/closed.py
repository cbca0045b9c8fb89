"""Fits the same small problems as TestAgainstSciPy, by SciPy, and writes closed.json.

Level ground, so that the model is its closed form; fade shape 1 and braking 1 known; the
noise held. Debian's python3-numpy and python3-scipy: python3 closed.py, in this folder. It
prints the time of one fit, for comparison.
"""
import json
import time

import numpy as np
from scipy import optimize, stats

MEDIAN = np.array([12, 0.10, 0.02])
LOGSD = np.array([0.4, 0.3, 0.5])
DISTANCE = np.array([5000, 10000, 21097.5, 42195, 10000])
TOOK = np.array([1200, 2520, 5760, 12900, 2900])
YEARS = np.array([0, 0.5, 1.0, 1.5, 2.0])  # the answer is for the last
NOISE = 0.03


def fitted(z, shift):
    p, k, fade = MEDIAN * np.exp(LOGSD * z)
    h = 3.6 * DISTANCE / (3600 * p * np.exp(shift))
    return np.log(3600) + np.log(np.expm1(fade * h) / fade) / (1 - k)


def objective(x, tails, drift):
    z, walk = x[:3], x[3:]
    shift = np.zeros(5)
    if drift:  # a walk back from the last day, in steps of half a year
        shift = np.concatenate([np.cumsum(walk[::-1])[::-1] * drift * np.sqrt(0.5), [0]])
    r = np.log(TOOK) - fitted(z, shift)
    if tails is None:
        loss = np.sum((r / NOISE) ** 2) / 2
    else:
        scale = NOISE * stats.norm.ppf(0.95) / stats.t.ppf(0.95, tails)
        loss = -np.sum(stats.t.logpdf(r / scale, tails))
    return loss + x @ x / 2


def hessian(f, x, h=1e-3):
    n = len(x)
    out = np.zeros((n, n))
    for i in range(n):
        for j in range(n):
            a, b = np.eye(n)[i] * h, np.eye(n)[j] * h
            out[i, j] = (f(x + a + b) - f(x + a - b) - f(x - a + b) + f(x - a - b)) / (4 * h * h)
    return out


cases = []
for name, tails, drift in [("normal", None, 0), ("tails of 4", 4, 0), ("drift", None, 0.05)]:
    f = lambda x: objective(x, tails, drift)
    start = np.zeros(3 if not drift else 7)
    begun = time.perf_counter()
    best = optimize.minimize(f, start, method="BFGS", options={"gtol": 1e-9})
    best = optimize.minimize(f, best.x, method="Nelder-Mead", options={"xatol": 1e-9, "fatol": 1e-13, "maxiter": 40000, "maxfev": 40000})
    took = time.perf_counter() - begun
    cov = np.linalg.inv(hessian(f, best.x))[:3, :3]
    cases.append({
        "name": name, "tails": tails or 0, "drift": drift,
        "numbers": list(MEDIAN * np.exp(LOGSD * best.x[:3])), "se": list(LOGSD * np.sqrt(np.diag(cov))),
    })
    print(name, cases[-1]["numbers"], cases[-1]["se"], f"{1000 * took:.0f} ms")

residuals = lambda z: np.concatenate([(np.log(TOOK) - fitted(z, 0)) / NOISE, z])
begun = time.perf_counter()
for _ in range(20):
    optimize.least_squares(residuals, np.zeros(3))
print(f"least_squares, on the closed form of five results: {50 * (time.perf_counter() - begun):.1f} ms")
json.dump(cases, open("closed.json", "w"), indent=1)
