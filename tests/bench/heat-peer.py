"""Slab and piece of heat.bench.mjs with scipy's solve_ivp (BDF, sparse Jacobian pattern) on as many cells; prints JSON.
Reads {"slab": {...}, "piece": {...}, "repeats": n} from standard input; lengths in m, times in s."""
import json, sys, time
import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.sparse import diags

RHO, CU, CF, KU, KF, TF, A = 1050.0, 3500.0, 2000.0, 0.49, 1.5, -1.0, (0.735 - 0.087) * 333600.0


def temperature(h):
    b = CF * TF + A + np.minimum(h, 0)
    return np.where(h >= 0, TF + h / CU, (b - np.sqrt(b * b - 4 * CF * A * TF)) / (2 * CF))


def conductivity(t):
    return np.where(t >= TF, KU, KF + (KU - KF) * TF / np.minimum(t, -1e-9))


def solve(halves, n, h, air, start, target, rtol):
    dims = len(halves)
    d = [half / n for half in halves]
    shape = (n,) * dims

    def rhs(_, y):
        t = temperature(y).reshape(shape)
        k = conductivity(t)
        out = np.zeros(shape)
        for axis in range(dims):
            lo = [slice(None)] * dims
            hi = list(lo)
            lo[axis], hi[axis] = slice(0, -1), slice(1, None)
            k1, k2 = k[tuple(lo)], k[tuple(hi)]
            q = 2 * k1 * k2 / (k1 + k2) * (t[tuple(hi)] - t[tuple(lo)]) / d[axis] ** 2
            out[tuple(lo)] += q
            out[tuple(hi)] -= q
            end = [slice(None)] * dims
            end[axis] = -1
            end = tuple(end)
            out[end] += (air - t[end]) / (1 / h + d[axis] / 2 / k[end]) / d[axis]
        return (out / RHO).ravel()

    size = n**dims
    offsets = [n**axis for axis in range(dims)]
    pattern = diags([np.ones(size)] + [np.ones(size - o) for o in offsets for _ in (0, 1)], [0] + [s for o in offsets for s in (o, -o)])

    def centre(y):
        t = temperature(y).reshape(shape)
        for _ in range(dims):
            t = (9 * t[0] - t[1]) / 8
        return float(t)

    event = lambda _, y: centre(y) - target
    event.terminal = True
    begin = CF * (start - TF) - A * (1 - TF / start)
    run = solve_ivp(rhs, (0, 5000), np.full(size, begin), method="BDF", rtol=rtol, atol=rtol * 1e5, jac_sparsity=pattern, events=event)
    return float(run.t_events[0][0])


asked = json.load(sys.stdin)
out = {"version": scipy.__version__}
for name in ("slab", "piece"):
    case = asked[name]
    spent = []
    for _ in range(case["repeats"]):
        began = time.perf_counter()
        seconds = solve(case["halves"], case["cells"], case["h"], case["air"], case["start"], case["target"], case["rtol"])
        spent.append(1000 * (time.perf_counter() - began))
    out[name] = {"seconds": seconds, "ms": sorted(spent)[len(spent) // 2]}
print(json.dumps(out))
