"""Check values for fits of bench measurements: synthetic readings with known truth and noise, fitted by SciPy.

Every problem is stated exactly in docs/physics/measuring.md. SciPy's least_squares (method "lm", central differences
replaced by exact Jacobians where the model is linear) gives parameters and standard errors (covariance scaled by the
residual variance, n - p degrees of freedom). Truth is kept beside the fit, so that coverage can be checked too.
Run: python3 measure_fits.py OUT.json SEED
"""
import json, sys
import numpy as np
from scipy.optimize import least_squares, brentq
PI2 = 2 * np.pi

def fitted(residual, start, scale):
    r = least_squares(residual, start, x_scale=scale, method='lm', xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=20000)
    n, p = len(r.fun), len(start)
    s2 = float(r.fun @ r.fun) / (n - p)
    cov = np.linalg.inv(r.jac.T @ r.jac) * s2
    return r.x, np.sqrt(np.diag(cov)), float(r.fun @ r.fun)

def resonance(rng):
    """Frequencies at known added capacitances: ln f is compared; L and self-capacitance unknown."""
    L = 10 ** rng.uniform(np.log10(80e-6), np.log10(3e-3)); C0 = rng.uniform(3e-12, 30e-12)
    C = np.sort(rng.uniform(50e-12, 600e-12, rng.integers(4, 9)))
    f = 1 / (PI2 * np.sqrt(L * (C + C0))) * np.exp(rng.normal(0, 10 ** rng.uniform(-4, -2.3), len(C)))
    g = lambda x: np.log(f) + 0.5 * np.log(np.exp(x[0])) + 0.5 * np.log(C + x[1] * 1e-12) + np.log(PI2)
    x, se, ssr = fitted(g, [np.log(L * 1.2), C0 * 1e12 + 2], [1, 10])
    return dict(kind='resonance', points=[dict(capacitance=float(a), frequency=float(b)) for a, b in zip(C, f)],
                truth=dict(inductance=L, selfCapacitance=C0),
                fit=dict(inductance=float(np.exp(x[0])), selfCapacitance=float(x[1] * 1e-12)),
                standardError=dict(inductance=float(np.exp(x[0]) * se[0]), selfCapacitance=float(se[1] * 1e-12)))

def dial(rng, outlier):
    """Pointer positions (0 open .. 1 meshed) of stations of known frequency; positions are compared."""
    L = 10 ** rng.uniform(np.log10(120e-6), np.log10(2.5e-3)); Cs = rng.uniform(15e-12, 90e-12)
    lo, hi = rng.uniform(8e-12, 20e-12), rng.uniform(330e-12, 560e-12)
    n = int(rng.integers(4, 12)); t = np.sort(rng.uniform(0.03, 0.97, n))
    f = np.round(1 / (PI2 * np.sqrt(L * (lo + (hi - lo) * t + Cs))), -3)
    exact = (1 / ((PI2 * f) ** 2 * L) - Cs - lo) / (hi - lo)
    sigma = rng.uniform(0.002, 0.012); read = exact + rng.normal(0, sigma, n); bad = []
    if outlier and n >= 6:
        k = int(rng.integers(1, n - 1)); read[k] += rng.choice([-1, 1]) * rng.uniform(0.12, 0.25); bad = [k]
    keep = np.array([i not in bad for i in range(n)])
    A = np.stack([1 / (PI2 * f[keep]) ** 2 / (hi - lo), -np.ones(keep.sum()) / (hi - lo) * 1e-12], 1)
    y = read[keep] + lo / (hi - lo)
    sc = np.linalg.norm(A, axis=0); q, *_ = np.linalg.lstsq(A / sc, y, rcond=None); x = q / sc
    res = y - A @ x; s2 = float(res @ res) / (keep.sum() - 2); cov = np.linalg.inv((A / sc).T @ (A / sc)) * s2 / np.outer(sc, sc)
    Lf = 1 / x[0]
    return dict(kind='dial', capacitor=dict(law='semicircular', minimum=lo, maximum=hi),
                readings=[dict(position=float(a), frequency=float(b)) for a, b in zip(read, f)], suspects=bad,
                truth=dict(inductance=L, strayCapacitance=Cs), fit=dict(inductance=float(Lf), strayCapacitance=float(x[1] * 1e-12)),
                standardError=dict(inductance=float(np.sqrt(cov[0, 0]) * Lf ** 2), strayCapacitance=float(np.sqrt(cov[1, 1]) * 1e-12)))

def diode(V, Is, n, Rs, T):
    Vt = 1.380649e-23 * T / 1.602176634e-19
    f = lambda i, v: i - Is * np.expm1((v - i * Rs) / (n * Vt))
    return np.array([brentq(f, 0, (v / Rs if Rs > 0 else 1e3) + 1e-15, args=(v,), xtol=1e-22, rtol=1e-14, maxiter=500) for v in V])

def detector(rng):
    """Forward volts and amperes; ln of currents is compared; saturation current, ideality, series resistance unknown."""
    Is = 10 ** rng.uniform(-8, -5.3); n = rng.uniform(1.02, 1.9); Rs = 10 ** rng.uniform(0.7, 2.3); T = float(rng.uniform(288, 305))
    top = n * 0.0257 * np.log(2e-3 / Is) + 2e-3 * Rs
    V = np.round(np.geomspace(0.02, top, int(rng.integers(8, 16))), 4)
    I = diode(V, Is, n, Rs, T) * np.exp(rng.normal(0, rng.uniform(0.003, 0.03), len(V)))
    g = lambda x: np.log(I) - np.log(diode(V, np.exp(x[0]), x[1], np.exp(x[2]), T))
    x, se, _ = fitted(g, [np.log(Is) + 0.3, n + 0.1, np.log(Rs) + 0.2], [1, 1, 1])
    return dict(kind='detector', temperature=T, points=[dict(voltage=float(a), current=float(b)) for a, b in zip(V, I)],
                truth=dict(saturationCurrent=Is, ideality=n, seriesResistance=Rs),
                fit=dict(saturationCurrent=float(np.exp(x[0])), ideality=float(x[1]), seriesResistance=float(np.exp(x[2]))),
                standardError=dict(saturationCurrent=float(np.exp(x[0]) * se[0]), ideality=float(se[1]), seriesResistance=float(np.exp(x[2]) * se[2])))

def width(rng):
    """Relative voltages across a tuned circuit around resonance; ln of levels is compared; height, resonance, Q unknown."""
    f0 = 10 ** rng.uniform(5.2, 6.2); Q = 10 ** rng.uniform(1, 2.6)
    f = f0 * (1 + np.linspace(-2.2, 2.2, int(rng.integers(7, 22))) / (2 * Q)); h = rng.uniform(0.3, 3)
    curve = lambda f, h, f0, Q: h / np.sqrt(1 + Q ** 2 * (f / f0 - f0 / f) ** 2)
    a = curve(f, h, f0, Q) * np.exp(rng.normal(0, rng.uniform(0.003, 0.03), len(f)))
    g = lambda x: np.log(a) - np.log(curve(f, np.exp(x[0]), f0 * (1 + x[1] / Q), np.exp(x[2])))
    x, se, _ = fitted(g, [np.log(a.max()), 0.05, np.log(Q * 1.1)], [1, 1, 1])
    return dict(kind='width', points=[dict(frequency=float(p), level=float(q)) for p, q in zip(f, a)],
                truth=dict(resonance=f0, q=Q), fit=dict(resonance=float(f0 * (1 + x[1] / Q)), q=float(np.exp(x[2]))),
                standardError=dict(resonance=float(f0 / Q * se[1]), q=float(np.exp(x[2]) * se[2])))

def decay(rng):
    """A dying oscillation as recorded: amplitude, frequency, phase, decay unknown; volts are compared."""
    rate = float(rng.choice([44100, 48000, 96000])); f0 = rng.uniform(600, rate / 6); Q = 10 ** rng.uniform(0.8, 2.2)
    n = int(min(4000, 6 * Q / (np.pi * f0) * rate)); t = np.arange(n) / rate
    A, ph = rng.uniform(0.2, 0.9), rng.uniform(-3, 3); off = rng.normal(0, 0.01)
    v = A * np.exp(-np.pi * f0 / Q * t) * np.cos(PI2 * f0 * t + ph) + off + rng.normal(0, A * 10 ** rng.uniform(-3.3, -1.7), n)
    g = lambda x: v - (x[0] * np.cos(PI2 * f0 * (1 + x[2] / Q) * t) + x[1] * np.sin(PI2 * f0 * (1 + x[2] / Q) * t)) * np.exp(-np.pi * f0 / np.exp(x[3]) * t) - x[4]
    x, se, _ = fitted(g, [A * np.cos(ph), -A * np.sin(ph), 0.0, np.log(Q), 0], [1, 1, 1, 1, 1])
    return dict(kind='decay', sampleRate=rate, samples=[round(float(q), 7) for q in v], truth=dict(frequency=f0, q=Q),
                fit=dict(frequency=float(f0 * (1 + x[2] / Q)), q=float(np.exp(x[3]) * (1 + x[2] / Q))),
                standardError=dict(frequency=float(f0 / Q * se[2]), q=float(np.exp(x[3]) * se[3])))

def main(out, seed):
    rng = np.random.default_rng(seed); rows = []
    for _ in range(40): rows += [resonance(rng), dial(rng, False), dial(rng, True), detector(rng), width(rng)]
    rows += [decay(rng) for _ in range(8)]
    json.dump(dict(source='measure_fits.py, SciPy least_squares, seed %d' % seed, rows=rows), open(out, 'w'))
    for kind in ('resonance', 'dial', 'detector', 'width', 'decay'):
        z = [(r['truth'][k] - r['fit'][k]) / r['standardError'][k] for r in rows if r['kind'] == kind for k in r['fit']]
        print(kind, len(z), 'rms of (truth - fit)/standard error: %.2f' % np.sqrt(np.mean(np.square(z))), 'max %.1f' % max(map(abs, z)))
if __name__ == '__main__': main(sys.argv[1], int(sys.argv[2]))
