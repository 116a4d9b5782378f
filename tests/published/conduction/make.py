"""Makes reference.json: exact conduction solutions (Carslaw & Jaeger 1959) with scipy.special and brentq.
Run: python3 make.py"""
import json, math, os
import numpy as np
from scipy.optimize import brentq
from scipy.special import erf, erfc, erfcx, j0, j1, jn_zeros

PI = math.pi


def slab_roots(bi, n):
    return [brentq(lambda z: z * math.sin(z) - bi * math.cos(z), i * PI + 1e-12, i * PI + PI / 2 - 1e-13) for i in range(n)]


def cyl_roots(bi, n):
    edges = [1e-9] + list(jn_zeros(0, n))
    return [brentq(lambda z: z * j1(z) - bi * j0(z), edges[i] if i == 0 else jn_zeros(1, n)[i - 1], edges[i + 1]) for i in range(n)]


def sph_root(bi):
    return brentq(lambda z: (1 - bi) * math.sin(z) - z * math.cos(z), 1e-6, PI - 1e-12)


slab_c = lambda z: 4 * math.sin(z) / (2 * z + math.sin(2 * z))
cyl_c = lambda z: 2 / z * j1(z) / (j0(z) ** 2 + j1(z) ** 2)
sph_c = lambda z: 4 * (math.sin(z) - z * math.cos(z)) / (2 * z - math.sin(2 * z))


def slab(bi, fo):
    t = [(slab_c(z) * math.exp(-z * z * fo), z) for z in slab_roots(bi, 60)]
    return {"centre": sum(a for a, z in t), "half": sum(a * math.cos(z / 2) for a, z in t), "surface": sum(a * math.cos(z) for a, z in t),
            "mean": sum(a * math.sin(z) / z for a, z in t), "cylinderCentre": sum(cyl_c(z) * math.exp(-z * z * fo) for z in cyl_roots(bi, 40))}


def semi(x, t, alpha, h, k):
    eta, g = x / 2 / math.sqrt(alpha * t), h * math.sqrt(alpha * t) / k
    return erfc(eta) - math.exp(-eta * eta) * erfcx(eta + g)


def stefan(st):
    return brentq(lambda l: l * math.exp(l * l) * erf(l) - st / math.sqrt(PI), 1e-9, 5)


def neumann(ks, cs, rho, kl, cl, latent, tw, tf, ti):
    a_s, a_l = ks / rho / cs, kl / rho / cl
    nu = math.sqrt(a_s / a_l)
    f = lambda l: (math.exp(-l * l) / erf(l) - kl / ks * nu * (ti - tf) / (tf - tw) * math.exp(-((nu * l) ** 2)) / erfc(nu * l)
                   - l * math.sqrt(PI) * latent / (cs * (tf - tw)))
    return brentq(f, 1e-6, 3), a_s, a_l


bis = (0.01, 0.1, 0.5, 1, 2, 5, 10, 100)
k, rho, cp, h, t = 0.45, 1050.0, 3400.0, 25.0, 300.0
sides = {"lengthMm": 40, "widthMm": 40, "thicknessMm": 12.7}
brick = 1.0
for s in sides.values():
    half = s / 2000
    brick *= slab(h * half / k, k / rho / cp * t / half**2)["centre"]
food = (1.5, 2000.0, 1050.0, 0.5, 3500.0, 230e3, -18.0, -1.0, 5.0)
ice = (2.22, 2050.0, 1000.0, 0.58, 4186.0, 333.5e3, -18.0, 0.0, 20.0)


def front(case):
    lam, a_s, a_l = neumann(*case)
    ks, cs, rho_, kl, cl, latent, tw, tf, ti = case
    nu = math.sqrt(a_s / a_l)
    out = {"lambda": lam}
    for t in (600, 3600):
        temps = {}
        for x in (5, 10, 15, 20, 30, 50):
            e = x / 1000 / 2 / math.sqrt(a_s * t)
            temps[str(x)] = float(tw + (tf - tw) * erf(e) / erf(lam) if e <= lam else ti - (ti - tf) * erfc(e * nu) / erfc(nu * lam))
        out[str(t)] = {"frontMm": 2000 * lam * math.sqrt(a_s * t), "temperatureC": temps}
    return out


def lacroix(bi):
    """Lacroix & Castaigne 1987: the first root of a slab as a polynomial in ln Bi, read in a handbook chapter."""
    x = math.log(bi)
    return 0.860972 + 0.312133 * x + 0.007986 * x**2 - 0.016192 * x**3 - 0.001190 * x**4 + 0.000581 * x**5


def lin(bi, b1, b2):
    """Lin et al. 1993: cooling rate of a brick, E*omega^2/3 with omega the first root of the sphere (E partly from memory)."""
    e0 = 1 + 1 / b1 + 1 / b2
    f = lambda b: 1 / b**2 + 0.01 * -1 * math.exp(b - b * b / 6)
    einf = 0.75 + 0.75 * f(b1) + 0.75 * f(b2)
    e = (bi ** (4 / 3) + 1.85) / (bi ** (4 / 3) / einf + 1.85 / e0)
    rate = sum(slab_roots(bi * b, 1)[0] ** 2 / b**2 for b in (1, b1, b2))
    return {"biot": bi, "ratios": [b1, b2], "linRate": e * sph_root(bi) ** 2 / 3, "exactRate": rate,
            "exactLag": math.prod(slab_c(slab_roots(bi * b, 1)[0]) for b in (1, b1, b2))}


json.dump({
    "source": "Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, chapters 2, 3, 7, 9, 11; numbers computed",
    "units": "dimensionless unless a name says otherwise; times in s",
    "tolerance": "absolute 1e-7",
    "how": "make.py beside this file, scipy.special, scipy.optimize.brentq",
    "roots": [{"biot": b, "slab": slab_roots(b, 4), "slabC": [slab_c(z) for z in slab_roots(b, 2)], "cylinder": cyl_roots(b, 1)[0],
               "cylinderC": float(cyl_c(cyl_roots(b, 1)[0])), "sphere": sph_root(b), "sphereC": sph_c(sph_root(b))} for b in bis],
    "theta": [{"biot": b, "fourier": f, **{n: float(v) for n, v in slab(b, f).items()}}
              for b, f in ((0.1, 1), (1, 0.05), (1, 0.2), (1, 1), (10, 0.05), (10, 0.5), (0.5, 2))],
    "brick": {**sides, "conductivityWmK": k, "densityKgM3": rho, "specificHeatKJkgK": cp / 1000, "coefficientWm2K": h, "timeMin": t / 60,
              "startC": 5, "airC": 180, "theta": brick, "centreC": 180 + (5 - 180) * brick},
    "semiInfinite": {"5mm": float(semi(0.005, 60, 1.3e-7, 25, 0.45)), "0mm": float(semi(0, 60, 1.3e-7, 25, 0.45))},
    "stefan": [{"stefan": s, "lambda": stefan(s)} for s in (0.01, 0.1, 0.25, 0.5, 1, 2, 5)],
    "lacroixCastaigne": [{"biot": b, "root": lacroix(b), "lag": 2 * math.sin(lacroix(b)) / (lacroix(b) + math.sin(lacroix(b)) * math.cos(lacroix(b)))} for b in (0.5, 1, 5, 10)],
    "lin": [lin(0.35, 3.1496, 3.1496), lin(1, 1.5, 2), lin(5, 1.5, 2), lin(0.35, 1, 1)],
    "neumannIce": front(ice), "neumannFood": front(food),
}, open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "reference.json"), "w"), indent=1)
