# Makes reference.json: what is in a coated, cooked and reheated piece, by drawing with numpy, written independently of
# the library. Outside check only: python3 with numpy, run as `python3 make.py > reference.json`.
# Food values: USDA SR28 (2015), foods 05665, 18069, 04582, 02047, 20061, 18079, per 100 g.
import json

import numpy as np

NAMES = ["waterG", "energyKcal", "proteinG", "fatG", "saturatedFatG", "carbohydrateG", "fibreG", "sugarsG", "sodiumMg", "cholesterolMg", "ashG"]
FOODS = {
    "turkey": [72.63, 150, 18.73, 8.34, 2.17, 0, 0, 0, 69, 74, 0.92],
    "bread": [36.42, 266, 8.85, 3.33, 0.698, 49.42, 2.7, 5.67, 490, 0, 1.98],
    "oil": [0, 884, 0, 100, 7.365, 0, 0, 0, 0, 0, 0],
    "salt": [0.2, 0, 0, 0, 0, 0, 0, 0, 38758, 0, 99.8],
    "rice-flour": [11.89, 366, 5.95, 1.42, 0.386, 80.13, 2.4, 0.12, 0, 0, 0.61],
    "crumbs": [6.51, 395, 13.35, 5.3, 1.203, 71.98, 4.5, 6.2, 732, 0, 2.87],
}
MIX = [("turkey", "900 g"), ("bread", "80 g"), ("oil", "1 tbsp"), ("salt", "12 g")]
GRAMS = [900, 80, 14, 12]
RELATIVE = [0.005, 0.005, 0.10, 0.005]  # the oil by the spoon, the rest weighed
SPREAD = 0.05
LAYERS = [("rice-flour", 4.0, 0.8, "substrate"), ("crumbs", 12.0, 1.5, "finished"), ("oil", 3.0, 0.6, "substrate")]
PIECE, PIECE_SE = 23.0, 1.1
SURFACE_CM2_PER_G, SEEN_AT = 2.9, 2.5
COOK = dict(y=0.93, u=0.01, fat=0.96, fat_u=0.02)
REHEAT = dict(y=0.87, u=0.015, fat=1.0, fat_u=0.0)


def model(masses, shift, pickups, layer_factor, piece, yields, fats):
    """Every argument with draws along its last axis; returns per piece, per 100 g raw, frozen, eaten and masses."""
    content = np.array([FOODS[name] for name, _ in MIX], float)
    mix = np.tensordot(content.T, masses, 1) / masses.sum(0)
    out = piece * (mix + shift) / 100
    mass = piece.copy()
    for at, (name, _, _, basis) in enumerate(LAYERS):
        p = pickups[at] / 100
        on = p if basis == "substrate" else p / (1 - p)
        layer = mass * on * SURFACE_CM2_PER_G / SEEN_AT
        out = out + layer * layer_factor[at] * np.array(FOODS[name], float)[:, None] / 100
        mass = mass + layer
    coated = mass
    raw = 100 * out / mass
    for stage in range(2):
        after = mass * yields[stage]
        lost = out[3] * (1 - fats[stage])
        out = out.copy()
        out[0] -= mass - after - lost
        out[1] -= 9 * lost
        out[3] -= lost
        out[4] *= fats[stage]
        mass = after
        if stage == 0:
            frozen = 100 * out / mass
    return dict(perPiece=out, per100GRaw=raw, per100GFrozen=frozen, per100GEaten=100 * out / mass), coated, mass


def draw(rng, n, spread=1.0):
    z = lambda: rng.standard_normal(n) * spread
    masses = np.array([g * (1 + r * z()) for g, r in zip(GRAMS, RELATIVE)])
    content = np.array([FOODS[name] for name, _ in MIX], float)
    part = SPREAD * content * np.array(GRAMS)[:, None] / sum(GRAMS)
    shift = np.sqrt((part**2).sum(0))[:, None] * np.array([z() for _ in NAMES])
    pickups = np.array([p + u * z() for _, p, u, _ in LAYERS])
    factor = np.array([1 + SPREAD * z() for _ in LAYERS])
    piece = PIECE + PIECE_SE * z()
    yields = np.array([COOK["y"] + COOK["u"] * z(), REHEAT["y"] + REHEAT["u"] * z()])
    fats = np.array([COOK["fat"] + COOK["fat_u"] * z(), REHEAT["fat"] + REHEAT["fat_u"] * z()])
    return model(masses, shift, pickups, factor, piece, yields, fats)


centre, coated, eaten = draw(np.random.default_rng(0), 1, spread=0.0)
draws, blocks = 250_000, 8
sums = {}
for block in range(blocks):
    views, _, _ = draw(np.random.default_rng(100 + block), draws)
    for view, out in views.items():
        part = sums.setdefault(view, [np.zeros(len(NAMES)), np.zeros(len(NAMES))])
        part[0] += out.sum(1)
        part[1] += ((out - centre[view]) ** 2).sum(1)
total = draws * blocks
expected = {}
for view, (first, second) in sums.items():
    shift = first / total - centre[view][:, 0]
    sd = np.sqrt(second / total - shift**2)
    expected[view] = {
        name: {"value": float(centre[view][k, 0]), "mean": float(first[k] / total), "sd": float(sd[k])}
        for k, name in enumerate(NAMES)
    }
print(
    json.dumps(
        {
            "source": "USDA SR28 (2015) for the food values; the chain mix, coating, cook, reheat written out in numpy in make.py beside this file",
            "how": f"values: the model at its centre; mean and sd: {total} normal draws",
            "units": "g, mg and kcal per piece and per 100 g",
            "tolerance": "values 1e-9 relative; sd 0.5 % of itself plus five standard errors of the drawn sd for propagation (first order)",
            "draws": total,
            "foods": {name: dict(zip(NAMES, values)) for name, values in FOODS.items()},
            "oilTablespoonG": 14,
            "mix": MIX,
            "layers": [dict(food=f, percent=p, se=u, basis=b, atSurfaceCm2PerG=SEEN_AT) for f, p, u, b in LAYERS],
            "piece": {"massG": PIECE, "seG": PIECE_SE, "surfaceMm2": PIECE * SURFACE_CM2_PER_G * 100},
            "cook": COOK,
            "reheat": REHEAT,
            "coatedG": float(coated[0]),
            "eatenG": float(eaten[0]),
            "expected": expected,
        },
        indent=1,
    )
)
