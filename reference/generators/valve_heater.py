"""Heater and cathode of a small indirectly heated valve as two bodies, by scipy's LSODA (rtol 1e-10).

    python3 reference/generators/valve_heater.py > reference/valve-heater.json

  C_w dT_w/dt = (1 - 0.05) V^2/R(T_w) - G (T_w^4 - T_c^4)
  C_c dT_c/dt = G (T_w^4 - T_c^4) - e (T_c^4 - T_a^4) - k (T_c - T_a)
  R = 6.3 V / 0.3 A * (T_w / 1450 K)^1.2; at 6.3 V the cathode is at 1020 K; 15 % of its loss is conduction.
Constants are assumptions from memory; the heat capacities are set by the standard warm-up time of 11 s.
"""
import json
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

V0, I0, TW0, TC0, TA = 6.3, 0.3, 1450.0, 1020.0, 300.0
CW, CC = 0.010, 0.020
P0 = 0.95 * V0 * I0
G = P0 / (TW0**4 - TC0**4)
E_RAD = 0.85 * P0 / (TC0**4 - TA**4)
K_CON = 0.15 * P0 / (TC0 - TA)
KB = 8.617333262e-5


def resistance(tw):
    return V0 / I0 * (tw / TW0) ** 1.2


def lost(tc):
    return E_RAD * (tc**4 - TA**4) + K_CON * (tc - TA)


def rates(volts):
    def f(_t, y):
        tw, tc = y
        v = volts(tw)
        through = G * (tw**4 - tc**4)
        return [(0.95 * v * v / resistance(tw) - through) / CW, (through - lost(tc)) / CC]

    return f


def emission(tc):
    return 2.5e-5 * 5000.0 * tc * tc * np.exp(-1.1 / (KB * tc))


def run(volts, start, until, events=()):
    return solve_ivp(rates(volts), (0, until), start, method="LSODA", rtol=1e-10, atol=1e-9, dense_output=True,
                     events=list(events))


def steady(volts):
    def f(tc):
        tw = (tc**4 + lost(tc) / G) ** 0.25
        return 0.95 * volts**2 / resistance(tw) - lost(tc)

    tc = brentq(f, 301, 3000, xtol=1e-10)
    return [(tc**4 + lost(tc) / G) ** 0.25, tc]


def when(level, rising):
    def f(_t, y):
        return np.log(emission(y[1]) / level)

    f.direction = 1 if rising else -1
    f.terminal = False
    return f


def courses():
    for name, start, volts in (
        ("warm_up_6.3V", [TA, TA], 6.3),
        ("warm_up_5.0V", [TA, TA], 5.0),
        ("cooling_from_6.3V", steady(6.3), 0.0),
        ("cooling_from_5.0V", steady(5.0), 0.0),
    ):
        rising = volts > 0
        levels = (1e-6, 1e-5, 1e-3)
        s = run(lambda _tw: volts, start, 60, [when(x, rising) for x in levels])
        yield name, {
            "columns": ["t_s", "T_wire_K", "T_cathode_K"],
            "rows": [[t, *(round(float(x), 3) for x in s.sol(t))] for t in (0, 0.5, 1, 2, 3, 5, 8, 12, 20, 30, 45, 60)],
            "emission_passes": {f"{x:g} A": round(float(e[0]), 3) for x, e in zip(levels, s.t_events)},
        }


def standard():
    """Four times the rated voltage through three times the hot resistance, until 80 % of the rated voltage."""
    hot = V0 / I0

    def volts(tw):
        return 4 * V0 * resistance(tw) / (resistance(tw) + 3 * hot)

    def at80(_t, y):
        return volts(y[0]) - 0.8 * V0

    at80.direction = 1
    s = run(volts, [TA, TA], 60, [at80])
    return round(float(s.t_events[0][0]), 3)


json.dump(
    {
        "description": "Heater and cathode of a small valve diode as two bodies: temperatures in time",
        "source": f"computed by reference/generators/valve_heater.py: scipy {scipy.__version__}, LSODA, rtol 1e-10",
        "provenance": "computed, independent of this package; the constants are assumptions from memory",
        "constants": {"heatCapacityWire": CW, "heatCapacityCathode": CC, "T_wire_rated": TW0, "T_cathode_rated": TC0},
        "steady": {"columns": ["heater_V", "T_wire_K", "T_cathode_K"],
                   "rows": [[v, *(round(x, 3) for x in steady(v))] for v in (3.0, 4.0, 5.0, 5.5, 6.3, 6.9)]},
        "courses": dict(courses()),
        "standard_warm_up": {
            "computed_s": standard(),
            "published_s": 11,
            "tolerance_s": 0.5,
            "source": "the warm-up time that types with a controlled one are marked with; definition RETMA/JEDEC",
            "provenance": "from memory; not looked up again, no document found that could be read",
        },
        "cooling_published": {
            "statement": "no measured cooling of such a diode was found; what is computed is not checked by a measurement",
        },
    },
    sys.stdout,
    indent=1,
)
print()
