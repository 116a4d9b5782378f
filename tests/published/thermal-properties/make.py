"""Makes reference.json: an independent calculation with numpy, from the equations of the ASHRAE Handbook -
Refrigeration (2006), chapter 9 (Choi & Okos 1986, Chen 1985, Tchigeov 1979, Levy 1981, Miles). Run: python3 make.py"""
import json, math, os
import numpy as np

C = {
    "water": [[0.57109, 1.7625e-3, -6.7036e-6], [997.18, 3.1439e-3, -3.7574e-3], [4.1762, -9.0864e-5, 5.4731e-6]],
    "ice": [[2.2196, -6.2489e-3, 1.0154e-4], [916.89, -0.13071, 0], [2.0623, 6.0769e-3, 0]],
    "protein": [[0.17881, 1.1958e-3, -2.7178e-6], [1329.9, -0.51840, 0], [2.0082, 1.2089e-3, -1.3129e-6]],
    "fat": [[0.18071, -2.7604e-4, -1.7749e-7], [925.59, -0.41757, 0], [1.9842, 1.4733e-3, -4.8008e-6]],
    "carbohydrate": [[0.20141, 1.3874e-3, -4.3312e-6], [1599.1, -0.31046, 0], [1.5488, 1.9625e-3, -5.9399e-6]],
    "fibre": [[0.18331, 1.2497e-3, -3.1683e-6], [1311.5, -0.36589, 0], [1.8459, 1.8306e-3, -4.6509e-6]],
    "ash": [[0.32962, 1.4011e-3, -2.9069e-6], [2423.8, -0.28063, 0], [1.0926, 1.8896e-3, -3.6817e-6]],
}


def prop(name, t):
    k, rho, cp = (np.polynomial.polynomial.polyval(t, c) for c in C[name])
    return float(k), float(rho), float(cp)


def mix(masses, t):
    names = [n for n, x in masses.items() if x > 0]
    x = np.array([masses[n] for n in names])
    x = x / x.sum()
    k, rho, cp = np.array([prop(n, t) for n in names]).T
    v = (x / rho) / (x / rho).sum()
    return {
        "densityKgM3": float(1 / (x / rho).sum()), "specificHeatKJkgK": float((x * cp).sum()),
        "parallel": float((v * k).sum()), "series": float(1 / (v / k).sum()), "geometric": float(np.prod(k**v)),
    }


def levy(k1, k2, r1):
    lam = k1 / k2
    sigma = (lam - 1) ** 2 / ((lam + 1) ** 2 + lam / 2)
    b = 2 / sigma - 1 + 2 * r1
    f = 0.5 * (b - math.sqrt(b * b - 8 * r1 / sigma))
    return k2 * ((2 + lam) + 2 * (lam - 1) * f) / ((2 + lam) - (lam - 1) * f)


lean = {"water": 0.7172, "protein": 0.2155, "fat": 0.0603, "carbohydrate": 0.0, "fibre": 0.0, "ash": 0.0100}
total = sum(lean.values())
lean = {n: x / total for n, x in lean.items()}
formed = {"water": 0.62, "protein": 0.17, "fat": 0.09, "carbohydrate": 0.095, "fibre": 0.007, "ash": 0.018}
L0 = 333.6


def frozen(m, tf, t):
    ice = (m["water"] - 0.4 * m["protein"]) * (1 - tf / t)
    out = mix({**m, "water": m["water"] - ice, "ice": ice}, t)
    return {"iceFraction": ice, **out}


xw, xb, xs, tf = lean["water"], 0.4 * lean["protein"], 1 - lean["water"], -1.7
chen = lambda t, xs, xwb, tf: (t + 40) * (1.55 + 1.26 * xs - xwb * L0 * tf / (-40 * t))
cu = 4.19 - 2.30 * xs - 0.628 * xs**3
hf = chen(tf, xs, xw - xb, tf)
out = {
    "source": "Choi & Okos 1986 coefficients as in ASHRAE Handbook - Refrigeration 2006 ch. 9 tables 1-2; Chen 1985, Tchigeov 1979, Levy 1981 forms from memory of the same chapter",
    "units": "k W/(m K), density kg/m3, specific heat kJ/(kg K), enthalpy kJ/kg from -40 degC, fractions by mass",
    "tolerance": "relative 1e-9",
    "how": "make.py beside this file, numpy",
    "components": {n: {str(t): dict(zip(("conductivityWmK", "densityKgM3", "specificHeatKJkgK"), prop(n, t)))
                       for t in ((20, 60, 100) if n == "water" else (-40, -18, -10) if n == "ice" else (-18, 20, 100))} for n in C},
    "mixtures": {"lean": {"masses": lean, "at": {str(t): mix(lean, t) for t in (5, 20, 60)}},
                 "formed": {"masses": formed, "at": {str(t): mix(formed, t) for t in (5, 20, 60)}}},
    "frozenAtMinus18": {"lean": {"freezingPointC": -1.7, **frozen(lean, -1.7, -18)}, "formed": {"freezingPointC": -2.0, **frozen(formed, -2.0, -18)}},
    "levy": [{"k1": a, "k2": b, "r1": r, "k": levy(a, b, r)} for a, b, r in ((2.36, 0.40, 0.55), (0.2, 0.6, 0.2))],
    "iceAndEnthalpy": {"waterFraction": xw, "solidsFraction": xs, "boundWaterFraction": xb, "freezingPointC": tf,
                       "at": {str(t): {"ice": (xw - xb) * (1 - tf / t), "iceTchigeov": 1.105 * xw / (1 + 0.7138 / math.log(tf - t + 1)),
                                       "enthalpyChenKJkg": chen(t, xs, xw - xb, tf)} for t in (-2, -5, -10, -18, -20, -30)},
                       "thawedSpecificHeatChen": cu, "enthalpyAtFreezingPoint": hf,
                       "thawed": {"5": hf + (5 - tf) * cu, "25": hf + (25 - tf) * cu}},
    "tchigeovCarcass": {"waterFraction": 0.58, "freezingPointC": -1.7, "temperatureC": -20, "ice": 1.105 * 0.58 / (1 + 0.7138 / math.log(-1.7 + 20 + 1))},
}
xs2, xb2 = 0.42, 0.4 * 0.1748
out["chenCarcass"] = {"solidsFraction": xs2, "boundWaterFraction": xb2, "freezingPointC": -1.7,
                      "minus20": chen(-20, xs2, 0.58 - xb2, -1.7), "atFreezingPoint": chen(-1.7, xs2, 0.58 - xb2, -1.7)}
out["chenCarcass"]["plus10"] = out["chenCarcass"]["atFreezingPoint"] + 11.7 * (4.19 - 2.30 * xs2 - 0.628 * xs2**3)
json.dump(out, open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "reference.json"), "w"), indent=1)
