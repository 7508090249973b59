#!python3
"""Series resistance and inductance of small air coils at any skin depth, from first principles.

Every turn is a closed ring; its round section is cut into sectors of an annulus (polar cells), each an axisymmetric
current ring of uniform density. Coaxial-ring mutual inductances (Maxwell) between cells, geometric mean distance for a
cell with itself, one voltage per turn, the same total current in every turn. No model of skin or proximity effect is
used, so the result checks such models. x = a*sqrt(omega*mu0/rho), a the wire radius.
Run: python3 coil_ac_resistance.py [out.json]   (numpy, scipy; about a minute)
"""
import json, math, sys
import numpy as np
from scipy.special import ellipe, ellipkm1

MU0 = 4e-7 * math.pi


def cells(a, n_r, n_t):
    """Polar cells of a disc, rings thinner towards the surface: centre offsets, areas, mean distance to itself."""
    edges = a * np.sin(np.linspace(0, math.pi / 2, n_r + 1))
    out = []
    for k in range(n_r):
        lo, hi = edges[k], edges[k + 1]
        n = max(4, int(round(n_t * (lo + hi) / (2 * a) / 4)) * 4)
        for t in range(n):
            th = 2 * math.pi * (t + 0.5) / n
            half = math.pi / n
            area = (hi * hi - lo * lo) * half
            rc = (2 / 3) * (hi**3 - lo**3) / (hi * hi - lo * lo) * math.sin(half) / half
            gmd = 0.2235 * ((hi - lo) + 2 * half * (lo + hi) / 2)
            out.append((rc * math.cos(th), rc * math.sin(th), area, gmd))
    return np.array(out)


def solve(radii, zs, a, xs, n_r=9, n_t=32):
    c = cells(a, n_r, n_t)
    n, m = len(radii), len(c)
    r = (np.asarray(radii)[:, None] + c[None, :, 0]).ravel()
    z = (np.asarray(zs)[:, None] + c[None, :, 1]).ravel()
    area = np.tile(c[:, 2], n)
    gmd = np.tile(c[:, 3], n)
    d2 = (r[:, None] - r[None, :]) ** 2 + (z[:, None] - z[None, :]) ** 2
    s2 = (r[:, None] + r[None, :]) ** 2 + (z[:, None] - z[None, :]) ** 2
    np.fill_diagonal(d2, gmd**2)
    np.fill_diagonal(s2, (2 * r) ** 2 + gmd**2)
    m1 = d2 / s2
    k2 = 1 - m1
    k = np.sqrt(k2)
    M = MU0 * np.sqrt(r[:, None] * r[None, :]) * ((2 / k - k) * ellipkm1(m1) - 2 / k * ellipe(k2))
    # Uniform current: M weighted by area.
    w = area / (math.pi * a * a)
    l0 = float(w @ M @ w)
    rows = []
    for x in xs:
        rho = 1.7241e-8
        omega = rho * x * x / (MU0 * a * a)
        Z = 1j * omega * M + np.diag(rho * 2 * math.pi * r / area)
        B = np.zeros((n * m, n))
        for t in range(n):
            B[t * m : (t + 1) * m, t] = 1
        Y = np.linalg.solve(Z, B)  # currents for one volt on each turn
        G = B.T @ Y
        v = np.linalg.solve(G, np.ones(n))
        zt = v.sum()
        r0 = sum(2 * math.pi * q for q in radii) * rho / (math.pi * a * a)
        rows.append({"x": x, "R_over_Rdc": float(zt.real / r0), "L_over_L_uniform": float(zt.imag / omega / l0)})
    return l0, rows


CASES = [
    ("single ring", [0.02], [0.0], 0.001),
    ("solenoid", [0.02] * 12, [0.001 * i for i in range(12)], 0.0001),
    ("solenoid", [0.02] * 12, [0.001 * i for i in range(12)], 0.00025),
    ("solenoid", [0.02] * 12, [0.001 * i for i in range(12)], 0.00035),
    ("solenoid", [0.02] * 12, [0.001 * i for i in range(12)], 0.00045),
    ("solenoid", [0.005] * 14, [0.001 * i for i in range(14)], 0.0003),
    ("multilayer", [0.02 + 0.001 * (i // 5) for i in range(15)], [0.001 * (i % 5) for i in range(15)], 0.0002),
    ("multilayer", [0.02 + 0.001 * (i // 5) for i in range(15)], [0.001 * (i % 5) for i in range(15)], 0.00035),
    ("multilayer", [0.02 + 0.0015 * (i // 7) for i in range(14)], [0.001 * (i % 7) for i in range(14)], 0.00045),
    ("spiral", [0.01 + 0.001 * i for i in range(14)], [0.0] * 14, 0.0002),
    ("spiral", [0.01 + 0.001 * i for i in range(14)], [0.0] * 14, 0.00035),
    ("spiral", [0.01 + 0.001 * i for i in range(14)], [0.0] * 14, 0.00045),
]

if __name__ == "__main__":
    out = []
    for name, radii, zs, a in CASES:
        xs = (0.5, 1.0, 2.0, 3.0, 5.0)
        l0, rows = solve(radii, zs, a, xs)
        l1, coarse = solve(radii, zs, a, xs, 7, 24)
        for p, q in zip(rows, coarse):
            p["R_with_fewer_cells"] = q["R_over_Rdc"]
        out.append({"kind": name, "radii": radii, "z": zs, "wire_radius": a, "L_uniform": l0, "points": rows})
        print(name, a, [(p["x"], round(p["R_over_Rdc"], 4), round(p["R_over_Rdc"] / p["R_with_fewer_cells"] - 1, 4), round(p["L_over_L_uniform"], 4)) for p in rows], flush=True)
    json.dump(
        {
            "_meta": {
                "provenance": "computed by generators/coil_ac_resistance.py (numpy, scipy); depends on nothing but the listed inputs",
                "units": "SI; x = wire radius * sqrt(omega mu0 / rho); R relative to the direct-current resistance of the same rings",
                "accuracy": "R_with_fewer_cells is the same with about half the cells: the difference bounds the error of subdivision",
            },
            "cases": out,
        },
        open(sys.argv[1] if len(sys.argv) > 1 else "../coil-ac-resistance.json", "w"),
        indent=1,
    )
