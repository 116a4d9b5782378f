"""Makes reference.json: enthalpy finite volumes on half a slab, solved by scipy's BDF on fine grids, independent of the
library's own solver. Run: python3 make.py (some minutes)."""
import json, math, os
import numpy as np
from scipy.integrate import solve_ivp

RHO, CU, CF, KU, KF, TF, XW, XB, L0 = 1050.0, 3500.0, 2000.0, 0.49, 1.5, -1.0, 0.735, 0.087, 333600.0
A = (XW - XB) * L0
LV, KC, TEV = 2.257e6, 0.12, 100.0


def enthalpy(t):
    return CU * (t - TF) if t >= TF else CF * (t - TF) - A * (1 - TF / t)


def temperature(h):
    b = CF * TF + A + np.minimum(h, 0)
    return np.where(h >= 0, TF + h / CU, (b - np.sqrt(b * b - 4 * CF * A * TF)) / (2 * CF))


def conductivity(t):
    return np.where(t >= TF, KU, KF + (KU - KF) * TF / np.minimum(t, -1e-9))


def inner(h, dx):
    t = temperature(h)
    k = conductivity(t)
    return t, k, 2 * k[:-1] * k[1:] / (k[:-1] + k[1:]) * np.diff(t) / dx


def banded(n, extra=0):
    s = np.zeros((n + extra, n + extra))
    for i in range(n):
        s[i, max(0, i - 1) : i + 2] = 1
    if extra:
        s[:, n:] = 1
        s[n:, n - 1 :] = 1
        s[n:, :] = 1
    return s


def convective(half, n, h, ta, ti, end, events, law=None, rtol=1e-8):
    """Runs until the end or, when `law` is given, until the surface is at 100 degC and then goes on with that law."""
    dx = half / n

    def surface(y):
        t = temperature(y)
        k = float(conductivity(t[-1]))
        return (h * ta + 2 * k / dx * t[-1]) / (h + 2 * k / dx), t, k

    def rhs(_, y):
        t, k, q = inner(y, dx)
        flux = (ta - t[-1]) / (1 / h + dx / 2 / k[-1])
        return np.diff(np.concatenate(([0], q, [flux]))) / (RHO * dx)

    centre = lambda y: (9 * temperature(y[:2])[0] - temperature(y[:2])[1]) / 8
    ev = [(lambda c: (lambda _, y: centre(y) - c))(c) for c in events]
    hot = lambda _, y: surface(y)[0] - TEV
    hot.terminal = law is not None
    y0 = np.full(n, enthalpy(ti))
    s1 = solve_ivp(rhs, (0, end), y0, method="BDF", rtol=rtol, atol=1e-3, jac_sparsity=banded(n), events=ev + [hot])
    times = [e[0] if len(e) else None for e in s1.t_events[:-1]]
    t100 = s1.t_events[-1][0] if len(s1.t_events[-1]) else None
    out = {"times": [None if t is None else float(t) for t in times], "surface100": None if t100 is None else float(t100)}
    if law is None:
        return out
    h100 = enthalpy(TEV)

    def boiling(_, y):
        t, k, q = inner(y[:n], dx)
        to_core = 2 * k[-1] * (TEV - t[-1]) / dx
        speed = (h * (ta - TEV) - to_core) / (RHO * XW * LV)
        return np.append(np.diff(np.concatenate(([0], q, [to_core]))) / (RHO * dx), speed)

    def receding(_, y):
        e, s = y[:n], y[n]
        size = (half - s) / n
        t, k, q = inner(e, size)
        to_core = 2 * k[-1] * (TEV - t[-1]) / size
        speed = ((ta - TEV) / (1 / h + s / KC) - to_core) / (RHO * XW * LV)
        faces = np.concatenate(([e[0]], (e[1:] + e[:-1]) / 2, [h100]))
        v = -speed * np.arange(n + 1) / n
        flux = np.diff(np.concatenate(([0], q, [to_core]))) / RHO + np.diff(v * faces)
        return np.append((flux + e * speed / n) / size, speed)

    y1 = np.append(s1.y_events[-1][0], 0.0)
    s2 = solve_ivp(receding if law == "recedingcrust" else boiling, (t100, end), y1, method="BDF", rtol=rtol, atol=np.append(np.full(n, 1e-3), 1e-12), jac_sparsity=banded(n, 1), events=ev)
    for i, e in enumerate(s2.t_events):
        if out["times"][i] is None and len(e):
            out["times"][i] = float(e[0])
    s = s2.y[n, -1]
    out["lossPercent"] = float(100 * XW * s / half)
    out["crustMm"] = float(1000 * s) if law == "recedingcrust" else None
    return out


def constant():
    """Exact series, case 1."""
    k, rho, cp, h, half, t0, ta = 0.45, 1050.0, 3400.0, 25.0, 0.00635, 70.0, 4.0
    from scipy.optimize import brentq
    bi = h * half / k
    z = [brentq(lambda x: x * math.sin(x) - bi * math.cos(x), i * math.pi + 1e-12, i * math.pi + math.pi / 2 - 1e-13) for i in range(80)]
    rows = []
    for t in (60, 300, 900):
        fo = k / rho / cp * t / half**2
        terms = [(4 * math.sin(x) / (2 * x + math.sin(2 * x)) * math.exp(-x * x * fo), x) for x in z]
        at = lambda f: ta + (t0 - ta) * sum(c * f(x) for c, x in terms)
        rows.append({"seconds": t, "coreC": at(lambda x: 1), "meanC": at(lambda x: math.sin(x) / x), "surfaceC": at(math.cos)})
    return {"conductivityWmK": k, "densityKgM3": rho, "specificHeatKJkgK": cp / 1000, "coefficientWm2K": h, "thicknessMm": 2000 * half, "startC": t0, "airC": ta, "at": rows}


N = 200
freezing = []
for length, h in ((10, 8), (10, 25), (25, 8), (25, 25)):
    r = convective(length / 2000, N, h, -18.0, 5.0, 40000, (-1.5, -5, -10))
    freezing.append({"thicknessMm": length, "coefficientWm2K": h, "seconds": dict(zip(("-1.5", "-5", "-10"), r["times"]))})
heating = []
for length in (6.35, 12.7):
    for law in ("surface100", "recedingcrust"):
        r = convective(length / 2000, N, 40, 204.0, -18.0, 900, (-0.9, 40, 74, 95), law)
        heating.append({"thicknessMm": length, "law": law, "seconds": dict(zip(("-0.9", "40", "74", "95"), r["times"])), "surface100S": r["surface100"], "lossPercent": r["lossPercent"], "crustMm": r["crustMm"]})
scaling = []
for h in (20, 40, 60, 80):
    for length in (4, 6.35, 8, 10, 12.7, 16, 20, 25):
        r = convective(length / 2000, 60, h, 204.0, -18.0, 4000, (74,), "surface100", rtol=1e-7)
        scaling.append({"coefficientWm2K": h, "thicknessMm": length, "coreS": r["times"][0], "surface100S": r["surface100"]})
json.dump({
    "source": "numerical: enthalpy finite volumes with scipy.integrate.solve_ivp (BDF); case constant: exact series, Carslaw & Jaeger 1959",
    "units": "mm, W/(m2 K), degC, s, % of the mass at the start",
    "food": {"densityKgM3": RHO, "waterFraction": XW, "freezingPointC": TF, "latentKJkg": A / 1000, "thawedSpecificHeatKJkgK": CU / 1000, "frozenSpecificHeatKJkgK": CF / 1000, "thawedConductivityWmK": KU, "frozenConductivityWmK": KF},
    "tolerance": "200 cells over the half slab: good to 1e-5; the library is held to 1e-3 at its finer grid and to 5e-3 at its default",
    "how": "make.py beside this file; freezing from 5 degC in -18 degC air; heating from -18 degC in 204 degC air at 40 W/(m2 K), 900 s; scaling on 60 cells",
    "constant": constant(), "freezing": freezing, "heating": heating, "scaling": scaling,
}, open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "reference.json"), "w"), indent=1)
