"""Makes reference.json: lumped block, flat plate, radiation, wet surface, crust front; computed with scipy.
Run: python3 make.py"""
import json, math, os
from scipy.optimize import brentq

SIGMA = 5.670374419e-8
hr = lambda e, tw, ts: e * SIGMA * ((tw + 273.15) ** 2 + (ts + 273.15) ** 2) * (tw + ts + 546.3)
psat = lambda t: 611.21 * math.exp((18.678 - t / 234.5) * t / (257.14 + t))
Y = lambda p: 0.622 * p / (101325 - p)
flux = lambda ts, h, pv: h / (1010 * 0.857 ** (2 / 3)) * (Y(psat(ts)) - Y(pv))
wet = lambda ta, pv, ratio=0: brentq(lambda t: 40 * (1 + ratio) * (ta - t) - flux(t, 40, pv) * (2.5008e6 - 2360 * t), 0, 99.9)

h, kc, drive, rw, lv = 40.0, 0.12, 104.0, 771.75, 2.257e6
depth = lambda t: kc / h * (math.sqrt(1 + 2 * h * h * drive * t / (kc * rw * lv)) - 1)
dry_s = lambda s: rw * lv * (s / h + s * s / 2 / kc) / drive
json.dump({
    "source": "lumped block; Pohlhausen flat plate; Stefan-Boltzmann; Buck 1996 and the Lewis analogy; receding-front balance after Farkas, Singh & Rumsey 1996; computed",
    "units": "SI, degC, s, Pa", "tolerance": "relative 1e-6", "how": "make.py beside this file",
    "block": {"massG": 100, "areaMm2": 11300, "specificHeatKJkgK": 0.9, "coefficientWm2K": 40, "startC": 20, "airC": 204,
              "temperatureC": {str(t): 204 - 184 * math.exp(-t / (0.1 * 900 / 0.0113 / 40)) for t in (60, 120, 240)}},
    "flatPlate": {"reynolds": 5 * 0.04 / 2.84e-5, "coefficientWm2K": 0.664 * math.sqrt(5 * 0.04 / 2.84e-5) * 0.69 ** (1 / 3) * 0.0351 / 0.04},
    "radiation": [{"wallC": w, "surfaceC": s, "coefficientWm2K": hr(0.9, w, s)} for w, s in ((204, 20), (204, 100), (180, 100), (204, 150))],
    "wetBulb": [{"airC": a, "vapourPa": p, "surfaceC": wet(a, p)} for a in (160, 180, 204) for p in (1200, 5000, 20000)],
    "wetBulbWithRadiation": {"airC": 204, "vapourPa": 1200, "ratio": 0.5, "surfaceC": wet(204, 1200, 0.5)},
    "fluxAt60": flux(60, 40, 1200),
    "crustMm": [{"seconds": t, "mm": 1000 * depth(t)} for t in (60, 300, 608.3)],
    "crustSeconds": [{"mm": s, "seconds": dry_s(s / 1000), "surfaceC": 204 - drive / (1 + h * s / 1000 / kc)} for s in (0.25, 0.5, 1, 2)],
}, open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "reference.json"), "w"), indent=1)
