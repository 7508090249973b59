"""Finite-element check of ferrite rods: axisymmetric magnetostatics in u = r*A_phi, div((1/(mu r)) grad u) = -J, bilinear
elements on a graded grid that holds the rod's faces and the coil, far boundary 8 rod lengths away. Two excitations: a
uniform field H0 along the rod, and the coil as a thin sheet of turns. Independent of the one-dimensional sum it checks.
Run: python3 reference/generators/ferrite_rod.py > reference/ferrite-rods.json   (numpy, scipy; about a minute)."""
import json, sys
import numpy as np, scipy, scipy.sparse as sp, scipy.sparse.linalg as sla

MU0 = 4e-7 * np.pi

def graded(marks, fine, far, growth):
    """Grid through every mark with steps about `fine` near it, growing geometrically out to `far`."""
    xs = [marks[0]]
    for a, b in zip(marks[:-1], marks[1:]):
        half, s, x = [], fine, 0.0
        while x < (b - a) / 2:
            half.append(s); x += s; s *= growth
        half = np.array(half) * ((b - a) / 2 / sum(half))
        steps = np.concatenate([half, half[::-1]])
        xs.extend(a + np.cumsum(steps))
    s, x = fine, xs[-1]
    out = []
    while x < far:
        x += s; s *= growth; out.append(x)
    return np.array(xs), np.array(out)

def rod(length, diameter, mu, turns, winding, centre, radius, fine, growth):
    a, half = diameter / 2, length / 2
    far = 8 * length
    inner, outer = graded([0, a, radius], fine, far, growth)
    r = np.concatenate([inner, outer])
    marks = sorted({-half, half, round(centre - winding / 2, 9), round(centre + winding / 2, 9)})
    mid, up = graded(marks, fine, far, growth)
    z = np.concatenate([-graded([-marks[0]], fine, far, growth)[1][::-1], mid, up])
    nr, nz = len(r), len(z)
    idx = lambda i, j: i * nz + j
    hr, hz = np.diff(r), np.diff(z)
    rc, zc = (r[1:] + r[:-1]) / 2, (z[1:] + z[:-1]) / 2
    inside = (rc[:, None] < a) & (abs(zc)[None, :] < half)
    nu = np.where(inside, 1 / mu, 1.0) / MU0
    # integral over the element of (1/r)(...) with 1/r taken by its mean: ln(r2/r1)/hr, the axis element by u ~ r^2.
    w = np.where(r[:-1] > 0, np.log(r[1:] / np.maximum(r[:-1], 1e-300)), 2.0) / hr
    cr = nu * w[:, None] * hz[None, :] / hr[:, None]
    cz = nu * w[:, None] * hr[:, None] / hz[None, :]
    I, J = np.meshgrid(np.arange(nr - 1), np.arange(nz - 1), indexing="ij")
    n = [idx(I, J), idx(I + 1, J), idx(I, J + 1), idx(I + 1, J + 1)]
    rows, cols, vals = [], [], []
    Kr = np.array([[2, -2, 1, -1], [-2, 2, -1, 1], [1, -1, 2, -2], [-1, 1, -2, 2]]) / 6
    Kz = np.array([[2, 1, -2, -1], [1, 2, -1, -2], [-2, -1, 2, 1], [-1, -2, 1, 2]]) / 6
    for p in range(4):
        for q in range(4):
            rows.append(n[p].ravel()); cols.append(n[q].ravel())
            vals.append((cr * Kr[p, q] + cz * Kz[p, q]).ravel())
    N = nr * nz
    K = sp.csr_matrix((np.concatenate(vals), (np.concatenate(rows), np.concatenate(cols))), shape=(N, N))
    R, Z = np.meshgrid(r, z, indexing="ij")
    edge = (R == 0) | (R == r[-1]) | (Z == z[0]) | (Z == z[-1])
    edge = edge.ravel()
    free = np.where(~edge)[0]
    lu = sla.splu(K[free][:, free].tocsc())
    def solve(fixed, load):
        u = fixed.copy()
        u[free] = lu.solve((load - K @ fixed)[free])
        return u
    # uniform field
    uf = np.where(edge, MU0 * R.ravel() ** 2 / 2, 0.0)
    uu = solve(uf, np.zeros(N))
    ia, ib, jm = np.argmin(abs(r - a)), np.argmin(abs(r - radius)), np.argmin(abs(z))
    flux = lambda u, i: 2 * np.pi * u.reshape(nr, nz)[i]
    mu_mid = float(np.interp(0, z, flux(uu, ia)) / (MU0 * np.pi * a * a))
    # coil: sheet of turns/winding amperes a metre at r = radius
    lo, hi = centre - winding / 2, centre + winding / 2
    on = (zc > lo) & (zc < hi)
    per = turns / winding
    load = np.zeros((nr, nz))
    load[ib, :-1] += np.where(on, hz, 0) / 2 * per
    load[ib, 1:] += np.where(on, hz, 0) / 2 * per
    uc = solve(np.zeros(N), load.ravel())
    link = lambda u: float((load[ib] * flux(u, ib)).sum())
    return mu_mid, link(uc), link(uu) / MU0

CASES = [dict(length=l, diameter=d, permeability=mu, turns=n, winding=w, position=p, coilDiameter=d + .001)
         for l, d, mu, n, w, p in
         ((.10, .010, 125, 60, .03, 0), (.10, .010, 400, 60, .03, 0), (.20, .010, 125, 60, .03, 0), (.20, .010, 125, 60, .03, .5),
          (.20, .010, 400, 60, .03, .5), (.16, .008, 250, 50, .06, .2), (.05, .010, 125, 40, .01, 0), (.14, .010, 20, 70, .05, 0.3),
          # so permeable that only the shape counts
          (.02, .010, 1e5, 20, .005, 0), (.05, .010, 1e5, 20, .005, 0), (.10, .010, 1e5, 20, .005, 0), (.20, .010, 1e5, 20, .005, 0))]

if __name__ == "__main__":
    out = []
    for c in CASES:
        centre = c["position"] * (c["length"] - c["winding"]) / 2
        got = []
        for fine, growth in ((4e-4, 1.12), (2e-4, 1.08)):
            got.append(rod(c["length"], c["diameter"], c["permeability"], c["turns"], c["winding"], centre, c["coilDiameter"] / 2, fine, growth))
        air = rod(c["length"], c["diameter"], 1.0, c["turns"], c["winding"], centre, c["coilDiameter"] / 2, 2e-4, 1.08)
        out.append(dict(c, fluxmetricPermeability=got[1][0], inductance=got[1][1], linkedArea=got[1][2], airInductance=air[1],
                        change=[b / a - 1 for a, b in zip(*got)]))
        print(c, got, air, file=sys.stderr)
    json.dump({"_meta": {"made_by": f"reference/generators/ferrite_rod.py, numpy {np.__version__}, scipy {scipy.__version__}",
                         "units": "SI; change = coarse to fine grid",
                         "conventions": "position: 0 coil in the middle, 1 flush with the end; linkedArea = flux linkage per mu0*H0 (m^2), effective height = 2 pi/lambda * linkedArea; coil a thin sheet"},
               "rows": out}, sys.stdout, indent=1)
