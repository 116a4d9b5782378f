"""Makes reference.json: freezing-time formulas (Plank 1913, Cleland & Earle 1984, Pham 1986, Pham 1991, Cleland et al.
1987; forms partly from memory), computed independently in Python, and fine-grid times of make.py of ../slab-reference.
Run: python3 make.py"""
import json, math, os

rho, cu, cf, ku, kf, tf, A = 1050.0, 3500.0, 2000.0, 0.49, 1.5, -1.0, (0.735 - 0.087) * 333600.0
ti, ta, tc = 5.0, -18.0, -10.0
enthalpy = lambda t: cf * (t - tf) - A * (1 - tf / t)
k10 = kf + (ku - kf) * tf / -10
Cl, Cs, dH10 = rho * cu, rho * cf, -rho * enthalpy(-10)
latent_at = rho * A * (1 - tf / tc)


def plank(D, h):
    return dH10 / (tf - ta) * (D / 2 / h + D * D / 8 / k10)


def cleland_earle(D, h):
    ste, pk, bi = Cs * (tf - ta) / dH10, Cl * (ti - tf) / dH10, h * D / k10
    P = 0.5072 + 0.2018 * pk + ste * (0.3224 * pk + 0.0105 / bi + 0.0681)
    R = 0.1684 + ste * (0.2740 * pk - 0.0135)
    return dH10 / (tf - ta) * (P * D / h + R * D * D / k10) * (1 - 1.65 * ste / k10 * math.log((tc - ta) / (-10 - ta)))


def pham(D, h):
    tfm = 1.8 + 0.263 * tc + 0.105 * ta
    a = Cl * (ti - tfm) / ((ti + tfm) / 2 - ta) + (latent_at + Cs * (tfm - tc)) / (tfm - ta)
    return D / 2 / h * a * (1 + h * D / k10 / 4)


def brick(b1, b2):
    P = b1 * b2 / 2 / (b1 * b2 + b1 + b2)
    root = math.sqrt((b1 - b2) * (b1 - 1) + (b2 - 1) ** 2)
    r, s = (b1 + b2 + 1 + root) / 3, (b1 + b2 + 1 - root) / 3
    term = lambda m: (m - 1) * (b1 - m) * (b2 - m) * math.log(m / (m - 1))
    return {"ratios": [b1, b2], "p": P, "r": 1 / (4 * root) / 2 * (term(r) - term(s)) + (2 * b1 + 2 * b2 - 1) / 72}


def e_pham(bi, b1, b2):
    return 1 + (1 + 2 / bi) / (b1**2 + 2 * b1 / bi) + (1 + 2 / bi) / (b2**2 + 2 * b2 / bi)


def e_cleland(bi, b1, b2):
    x = lambda b: 2.32 / b**1.77 / (bi**1.34 + 2.32 / b**1.77)
    return 1 + x(b1) / b1 + (1 - x(b1)) * 0.73 / b1**2.5 + x(b2) / b2 + (1 - x(b2)) * 0.5 / b2**3.69


fine = {(10, 8): 10276.244, (10, 25): 3392.267, (25, 8): 26267.076, (25, 25): 9026.625}
json.dump({
    "source": "Plank 1913; Cleland & Earle 1984, J. Food Sci. 49:1034; Pham 1986, Int. J. Refrig. 9:209; Pham 1991; Cleland et al. 1987, Int. J. Refrig. 10:22; formulas partly from memory, numbers computed",
    "units": "mm, W/(m2 K), s; food as ../slab-reference, from 5 degC to -10 degC at the centre in -18 degC air",
    "tolerance": "relative 1e-9 for the formulas; fineGridS is the enthalpy solution on 200 cells, good to 1e-5",
    "how": "make.py beside this file",
    "slabs": [{"thicknessMm": d, "coefficientWm2K": h, "plankS": plank(d / 1e3, h), "clelandEarleS": cleland_earle(d / 1e3, h), "phamS": pham(d / 1e3, h), "fineGridS": s} for (d, h), s in fine.items()],
    "plankTextbookS": 1050 * 250e3 / (-1.75 + 30) * (0.06 / 2 / 30 + 0.06**2 / 8 / 1.108),
    "plankBricks": [brick(2, 3), brick(3.15, 3.16)],
    "equivalentPham": [{"biot": b, "ratios": r, "e": e_pham(b, *r)} for b, r in ((0.5, [2, 3]), (1, [2, 2]), (2, [1, 1]), (0.2, [3.15, 3.15]))],
    "equivalentCleland": [{"biot": b, "ratios": r, "e": e_cleland(b, *r)} for b, r in ((0.35, [3.1496, 3.1496]), (1, [1.5, 2]), (5, [1.5, 2]))],
}, open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "reference.json"), "w"), indent=1)
