#!python3
"""Inductance of woven coils (basket on pegs, spider on a slotted disc) along the actual path of the wire.

Neumann's double integral over the three-dimensional curve; the wire's thickness by its geometric mean distance
a*exp(-1/4) from itself within half a turn, as for an even current. The ends are not joined (no return lead). Nothing is
replaced by rings. The wire lies level at a post and crosses to the other side over half the space between two posts, in a
straight line; from turn to turn it climbs evenly.
Run: python3 woven_coils.py [out.json]   (numpy; a minute)
"""
import json, math, sys
import numpy as np

MU0 = 4e-7 * math.pi


def side(theta, posts, over):
    """-1..1: side of the posts at an angle counted over all turns."""
    period = 2 * math.pi * 2 * over / posts
    u = (theta / period) % 1.0
    s = np.where(u < 0.5, u, u - 0.5) * 2 * over  # in post spacings from the last crossing, 0..over
    edge = np.minimum(s, over - s)
    return np.where(u < 0.5, 1, -1) * np.minimum(1, edge / 0.25)


def neumann(points, a):
    d = np.diff(points, axis=0)
    m = (points[1:] + points[:-1]) / 2
    n = len(m)
    length = np.linalg.norm(d, axis=1)
    s = np.cumsum(length)
    turn = s[-1] / TURNS
    g2 = (a * math.exp(-0.25)) ** 2
    total = 0.0
    for i in range(0, n, 200):
        j = slice(i, min(n, i + 200))
        r2 = ((m[j, None, :] - m[None, :, :]) ** 2).sum(-1)
        near = np.abs(s[j, None] - s[None, :]) < turn / 2
        r2 = r2 + np.where(near, g2, 0)
        total += ((d[j] @ d.T) / np.sqrt(r2)).sum()
    return MU0 / (4 * math.pi) * total, float(s[-1])


TURNS = 12
CASES = [
    {"kind": "basket", "pegCircle": 0.08, "pegs": 13, "over": 2, "pegDiameter": 0.003, "overall": 0.0009, "wire": 0.0007},
    {"kind": "basket", "pegCircle": 0.06, "pegs": 11, "over": 1, "pegDiameter": 0.004, "overall": 0.0008, "wire": 0.0005},
    {"kind": "spider", "innerDiameter": 0.04, "slots": 9, "over": 1, "discThickness": 0.0015, "overall": 0.0008, "wire": 0.0005},
    {"kind": "spider", "innerDiameter": 0.05, "slots": 15, "over": 2, "discThickness": 0.003, "overall": 0.0007, "wire": 0.0004},
]
if __name__ == "__main__":
    for c in CASES:
        for per in (720, 1440):
            t = np.linspace(0, 2 * math.pi * TURNS, TURNS * per + 1)
            turns = t / (2 * math.pi)
            if c["kind"] == "basket":
                away = (c["pegDiameter"] + c["overall"]) / 2
                r = c["pegCircle"] / 2 + away * side(t, c["pegs"], c["over"])
                z = c["overall"] * turns
            else:
                away = (c["discThickness"] + c["overall"]) / 2
                # The middle of the first turn lies half a wire above the hub.
                r = (c["innerDiameter"] + c["overall"]) / 2 + c["overall"] * (turns - 0.5)
                z = away * side(t, c["slots"], c["over"])
            c["L_coarse" if per == 720 else "L"], c["length"] = neumann(np.stack([r * np.cos(t), r * np.sin(t), z], 1), c["wire"] / 2)
        c["turns"] = TURNS
        print(c, flush=True)
    json.dump({"_meta": {"provenance": "computed by generators/woven_coils.py (numpy); depends on nothing but the listed inputs", "units": "SI", "accuracy": "L_coarse is the same with half the points"}, "cases": CASES}, open(sys.argv[1] if len(sys.argv) > 1 else "../woven-coils.json", "w"), indent=1)
