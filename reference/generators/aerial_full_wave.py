"""Full-wave check of wire aerials fed against perfect ground: method of moments for the thin-wire mixed-potential
equation (Harrington, Field Computation by Moment Methods, 1968, chapter 4), pulse currents about the nodes, pulse
charges between them, tested by the line integral of E from midpoint to midpoint. The wire and its mirror image are one
chain fed at the ground; half its impedance is the aerial's. Lossless wire, so the resistance is radiation alone.
Run: python3 reference/generators/aerial_full_wave.py > reference/aerial-full-wave.json   (numpy; about a minute)."""
import json, sys
import numpy as np

C0, MU0 = 299792458.0, 1.25663706212e-6
EPS0 = 1 / (MU0 * C0 * C0)

def nodes(points, n):
    P = np.array(points, float)
    L = np.linalg.norm(np.diff(P, axis=0), axis=1)
    out = [P[0]]
    for k, l in enumerate(L):
        m = max(4, int(round(n * l / L.sum())))
        for i in range(1, m + 1):
            out.append(P[k] + (P[k + 1] - P[k]) * i / m)
    return np.array(out)

X, W = np.polynomial.legendre.leggauss(4)

def psi(points, A, B, a, k):
    """Mean over each straight piece A->B of exp(-jkR)/R seen from every point: (points, pieces)."""
    u = B - A
    L = np.linalg.norm(u, axis=1)
    u = u / L[:, None]
    w = points[:, None, :] - A[None, :, :]
    t = (w * u[None]).sum(2)
    rho = np.sqrt(np.maximum((w * w).sum(2) - t * t, 0) + a * a)
    static = (np.arcsinh((L - t) / rho) + np.arcsinh(t / rho)) / L
    smooth = 0
    for x, wt in zip(X, W):
        R = np.sqrt((t - L * (1 + x) / 2) ** 2 + rho ** 2)
        smooth = smooth + wt / 2 * (np.exp(-1j * k * R) - 1) / R
    return static + smooth

def solve(points, radius, f, n):
    up = nodes(points, n)                                   # from the ground outwards
    down = up[1:][::-1] * np.array([1, 1, -1.0])
    P = np.vstack([down, up])                               # far image end ... ground ... far end
    k, w = 2 * np.pi * f / C0, 2 * np.pi * f
    mid = (P[1:] + P[:-1]) / 2
    N = len(P) - 2                                          # inner nodes
    # Current pulse about node i: half a segment either side of it; two straight halves, kept apart at bends.
    lo, hi = (mid[:-1], P[1:-1]), (P[1:-1], mid[1:])
    A = np.zeros((N, N), complex)
    for ha in (lo, hi):
        da = ha[1] - ha[0]
        ca = (ha[0] + ha[1]) / 2
        for hb in (lo, hi):
            db = hb[1] - hb[0]
            A += (da @ db.T) * psi(ca, hb[0], hb[1], radius, k)
    F = psi(mid, P[:-1], P[1:], radius, k)                  # potential at middles of charge pulses
    D = F[1:, 1:] - F[1:, :-1] - F[:-1, 1:] + F[:-1, :-1]
    Z = 1j * w * MU0 / (4 * np.pi) * A + D / (1j * w * 4 * np.pi * EPS0)
    feed = len(up) - 2
    V = np.zeros(N, complex)
    V[feed] = 1
    I = np.linalg.solve(Z, V)
    full = np.concatenate([[0], I, [0]]) / I[feed]
    upper = full[len(up) - 1:]
    he = ((upper[1:] + upper[:-1]) / 2 * np.diff(up[:, 2])).sum()
    return 1 / I[feed] / 2, he

CASES = [("inverted-L", dict(height=10, length=30), [(0, 0, 0), (0, 0, 10), (30, 0, 10)], .001),
         ("inverted-L", dict(height=6, length=15), [(0, 0, 0), (0, 0, 6), (15, 0, 6)], .0008),
         ("inverted-L", dict(height=20, length=60), [(0, 0, 0), (0, 0, 20), (60, 0, 20)], .0015),
         ("vertical", dict(height=12), [(0, 0, 0), (0, 0, 12)], .001),
         ("sloping", dict(height=4, length=20, farHeight=9), [(0, 0, 0), (0, 0, 4), (np.sqrt(375.), 0, 9)], .001)]

if __name__ == "__main__":
    rows = []
    for shape, sizes, points, a in CASES:
        for f in (200e3, 500e3, 1e6, 1.6e6, 2.5e6):
            (z1, h1), (z, h) = solve(points, a, f, 120), solve(points, a, f, 240)
            rows.append(dict(shape=shape, **sizes, base=0, wireRadius=a, frequency=f, resistance=z.real, reactance=z.imag,
                             effectiveHeight=abs(h), change=dict(reactance=z.imag - z1.imag, resistance=z.real / z1.real - 1)))
            print(shape, sizes, f, z1, z, abs(h), file=sys.stderr)
    json.dump({"_meta": {"made_by": "reference/generators/aerial_full_wave.py, numpy " + np.__version__,
                         "units": "SI; change = 120 to 240 segments",
                         "conventions": "foot on perfect ground, fed there; lossless wire; effectiveHeight = |integral of I dz| / I at the foot"},
               "rows": rows}, sys.stdout, indent=1)
