#!/usr/bin/env python3
"""Reference ground-wave field strength over a smooth homogeneous spherical earth.

Written from the equations (Wait / Fock / van der Pol-Bremmer); no third-party code.
Needs: numpy, scipy (Debian python3-numpy, python3-scipy); mpmath only for the optional
self-check.   Time factor exp(+j w t).  All distances km, frequencies kHz, E in dB(uV/m)
for cymomotive force 300 V (e.m.r.p. 1 kW): 300 mV/m at 1 km on perfect ground.

  python3 groundwave_ref.py             # prints a few values
  python3 groundwave_ref.py --grid ../groundwave.json   # compares with the grid
  python3 groundwave_ref.py --selfcheck # mpmath contour integral vs series
"""
import cmath
import functools
import json
import math
import sys

import numpy as np
from scipy.special import ai_zeros, airye, wofz

C0 = 299792458.0
EPS0 = 8.854187817e-12
A_EARTH_KM = 6370.0
E1KM_DBUV = 20 * math.log10(3.0e5)            # 109.542
OM = cmath.exp(-2j * math.pi / 3)             # W(t) = Ai(OM*t) is the outgoing solution


def k_from_ns(ns=315.0):
    """Effective-earth-radius factor from surface refractivity (N-units)."""
    return 1.0 / (1.0 - 0.04665 * math.exp(0.005577 * ns))


def constants(f_khz, sigma, eps, k_earth):
    """wavenumber (rad/km), surface impedance Delta, nu, q, effective radius (km)."""
    w = 2 * math.pi * f_khz * 1e3
    kw = w / C0 * 1e3
    eta = eps - 1j * sigma / (EPS0 * w)       # minus sign <-> exp(+jwt)
    delta = cmath.sqrt(eta - 1) / eta         # vertical polarisation
    a = k_earth * A_EARTH_KM
    nu = (kw * a / 2) ** (1 / 3)
    return kw, delta, nu, -1j * nu * delta, a


# ---------------------------------------------------------------- flat earth
def norton(kw, delta, d):
    """Sommerfeld-Norton attenuation F, and z with z**2 = p = -j k d Delta**2 / 2 (complex)."""
    z = cmath.sqrt(-0.5j * kw * d) * delta    # = e^{-j pi/4} sqrt(kd/2) Delta
    return 1 - 1j * math.sqrt(math.pi) * z * wofz(-z), z


def curved_short(kw, delta, q, d):
    """Flat-earth F plus the first two curvature terms (in 1/q^3 and 1/q^6)."""
    F, z = norton(kw, delta, d)
    p = z * z                                  # p = -j k d Delta^2 / 2
    s = 1j * math.sqrt(math.pi) * z            # sign chosen so that F = 1 - s*w(-z)
    q3 = q ** 3
    if abs(q) < 0.02:                           # the closed form loses digits here: use the
        x = (p / (1j * q * q)).real             # q -> 0 limit of both terms; p = j q^2 x
        return F + 1j * math.sqrt(math.pi) / 4 * (cmath.exp(1j * math.pi / 4) * math.sqrt(x)) ** 3 \
            - 7 / 60 * (cmath.exp(1j * math.pi / 4) * math.sqrt(x)) ** 6
    t1 = (1 - s - (1 + 2 * p) * F) / (4 * q3)
    t2 = (1 - s * (1 - p) - 2 * p + 5 * p * p / 6 + (p * p / 2 - 1) * F) / (4 * q3 * q3)
    return F + t1 + t2


# ---------------------------------------------------------------- residue series
def _newton(t, q, it=30):
    for _ in range(it):
        a, ap, _, _ = airye(OM * t)            # common scale factor cancels
        W, Wp = a, OM * ap
        dt = (Wp - q * W) / (t * W - q * Wp)
        t -= dt
        if abs(dt) < 1e-13 * max(1.0, abs(t)):
            return t, True
    return t, False


def _aip_zero(s):
    """s-th zero (positive magnitude) of Ai' : exact for s<=50, asymptotic beyond."""
    if s <= len(_AIP):
        return -_AIP[s - 1]
    m = 3 * math.pi * (4 * s - 3) / 8
    return m ** (2 / 3) * (1 - 7 / 48 * m ** -2 + 35 / 288 * m ** -4)


_AIP = ai_zeros(50)[1]


@functools.lru_cache(maxsize=None)
def roots(q, n):
    """First n roots of W'(t) - q W(t) = 0, by continuation dt/dq = 1/(t - q^2) from q = 0.

    Straight line in q, step halved until Newton stays close to the predictor; every root is
    tracked separately, so none is lost or found twice."""
    out = []
    for s in range(1, n + 1):
        t = _aip_zero(s) * cmath.exp(-1j * math.pi / 3)
        t, _ = _newton(t, 0)
        lam, h = 0.0, 0.25
        while lam < 1 - 1e-12:
            h = min(h, 1 - lam)
            qa, qm, qb = lam * q, (lam + h / 2) * q, (lam + h) * q
            f = lambda tt, qq: q / (tt - qq * qq)
            k1 = f(t, qa)
            k2 = f(t + h / 2 * k1, qm)
            k3 = f(t + h / 2 * k2, qm)
            k4 = f(t + h * k3, qb)
            pred = t + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
            tn, ok = _newton(pred, qb)
            gap = math.pi / max(1.0, math.sqrt(abs(t)))     # spacing of neighbouring roots
            if ok and abs(tn - pred) < 0.05 * gap:
                t, lam, h = tn, lam + h, h * 2
            else:
                h /= 2
                if h < 1e-6:
                    raise RuntimeError("continuation failed")
        out.append(t)
    return np.array(out)


def residue(nu, q, theta, tol=1e-7, nmax=4000):
    """|E/E0| complex, by the residue series; enough terms for relative tol."""
    x = nu * theta
    # exp(-x*Im) with Im ~ sin60 * m^(2/3): choose the count for tol, then add a margin
    need = (math.log(1 / tol) + 6) / (x * math.sin(math.pi / 3))
    n = int(need ** 1.5 * 8 / (3 * math.pi) / 4) + 12
    if n > nmax:
        raise ValueError("too short for the residue series")
    n = 1 << (n - 1).bit_length()              # share cached root sets
    t = roots(q, n)
    g = np.exp(-1j * x * t) / (t - q * q)
    return cmath.sqrt(math.pi * x) * cmath.exp(-1j * math.pi / 4) * complex(g.sum())


def field(f_khz, d_km, sigma, eps, k_earth=None, method=None, x_switch=0.10):
    """(E dB(uV/m), method).  Default switch: residue series whenever x >= x_switch."""
    k_earth = k_earth or k_from_ns()
    kw, delta, nu, q, a = constants(f_khz, sigma, eps, k_earth)
    th = d_km / a
    if method is None:
        method = "residue" if nu * th >= x_switch else "flat+curvature"
    if method == "residue":
        V = residue(nu, q, th)
    else:
        V = curved_short(kw, delta, q, d_km)
        if V is None or method == "flat":
            V = norton(kw, delta, d_km)[0]
    return E1KM_DBUV - 20 * math.log10(d_km) + 20 * math.log10(abs(V)), method


# ---------------------------------------------------------------- mixed path
def millington(f_khz, sections, k_earth=None):
    """sections: [(length_km, sigma, eps), ...] from transmitter to receiver."""
    def one_way(secs):
        tot, run = 0.0, 0.0
        for L, s, e in secs:
            if run:
                tot -= field(f_khz, run, s, e, k_earth)[0]
            run += L
            tot += field(f_khz, run, s, e, k_earth)[0]
        return tot
    fwd, rev = one_way(sections), one_way(sections[::-1])
    return 0.5 * (fwd + rev), fwd, rev


def selfcheck():
    """Contour integral with mpmath, independent of roots and of the short-distance series."""
    import mpmath as mp
    mp.mp.dps = 18
    om = mp.e ** (-2j * mp.pi / 3)
    for f, d, s, e in ((1000, 30, 3e-3, 22), (1000, 100, 5, 70), (150, 50, 1e-3, 15),
                       (250, 500, 1e-4, 3), (1602, 20, 1e-4, 3), (700, 10, 1e-2, 30)):
        kw, delta, nu, q, a = constants(f, s, e, k_from_ns())
        x = nu * d / a
        W = lambda t: mp.airyai(om * t)
        Wp = lambda t: om * mp.airyai(om * t, derivative=1)
        # closing clockwise round the roots = integral along two rays enclosing arg t = -60 deg
        g = lambda t: mp.e ** (-1j * x * t) * W(t) / (Wp(t) - q * W(t))
        # rays start at t0 = +j*c above every root
        t0 = mp.mpc(0, 2.0)
        R = [0, 1, 3, 10, 30, 30 + 40 / x]
        r1 = mp.e ** (-1j * mp.radians(25)); r2 = mp.e ** (-1j * mp.radians(140))
        I = mp.quad(lambda u: g(t0 + u * r1) * r1, R) - mp.quad(lambda u: g(t0 + u * r2) * r2, R)
        # residue of W/(W'-qW) at a root is 1/(t-q^2); clockwise contour -> -2 pi j * sum
        S = I / (-2j * mp.pi)
        V = mp.sqrt(mp.pi * x) * mp.e ** (-1j * mp.pi / 4) * S
        r = residue(nu, q, d / a)
        c = curved_short(kw, delta, q, d)
        print(f, d, s, "integral %.5f dB  series %.5f dB  short %.5f dB" % (
            20 * mp.log10(abs(V)), 20 * math.log10(abs(r)), 20 * math.log10(abs(c))))


def compare(path):
    g = json.load(open(path))
    k = g["k_earth"]
    res = {}
    for r in (dict(zip(g["row_order"], row)) for row in g["rows"]):
        e, m = field(r["f_khz"], r["d_km"], r["sigma"], r["eps_r"], k)
        res.setdefault("all", []).append(e - r["E_lfmf"])
    v = np.array(res["all"])
    print("n", len(v), "max", abs(v).max(), "rms", math.sqrt((v ** 2).mean()))


if __name__ == "__main__":
    if "--selfcheck" in sys.argv:
        selfcheck()
    elif "--grid" in sys.argv:
        compare(sys.argv[sys.argv.index("--grid") + 1])
    else:
        for f, d, s, e in ((1000, 1, 1e9, 1), (1000, 100, 3e-3, 22), (150, 1000, 5, 70)):
            print(f, d, s, e, field(f, d, s, e))
