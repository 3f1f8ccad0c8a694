"""The flow laws, written from their equations in the documentation of the model, not from its code.

Everything is SI: gauge pascals over one ambient pressure, standard m3/s (60 degF, 14.696 psia).
"""

from dataclasses import dataclass
from math import acos, exp, log, log10, pi, sqrt

from scipy.optimize import brentq

INWC = 249.08891
PSI = 6894.757293168
P_STD = 14.696 * PSI
T_STD = 288.705555555555556
CFH = 0.3048**3 / 3600.0
AIR = 1.2241
IN = 0.0254

# Inside diameters in inches: ASME B36.10M Schedule 40; IFGC table 402.4(9), type K/L.
STEEL = {"1/2": 0.622, "3/4": 0.824, "1": 1.049, "1-1/4": 1.380, "1-1/2": 1.610, "2": 2.067}
COPPER = {"3/8": 0.402, "1/2": 0.527, "5/8": 0.652, "3/4": 0.745, "1": 0.995}
ROUGHNESS = {"steel": 17.8e-6, "copper": 1.5e-6, "rusted-steel": 150e-6}
# C and n of the tubing law, by equivalent hydraulic diameter.
TUBING = {
    13: (158.1, 0.5369), 15: (209.0, 0.5211), 18: (356.5, 0.4927), 19: (423.2, 0.5001),
    23: (677.9, 0.4795), 25: (835.7, 0.4914), 30: (1542.6, 0.5151), 31: (1780.4, 0.5132),
    37: (2745.9, 0.4869), 39: (3077.9, 0.4752), 46: (5748.9, 0.5062), 48: (6445.8, 0.4932),
}


@dataclass(frozen=True)
class Gas:
    name: str
    sg: float
    mu: float
    gamma: float

    @property
    def rho(self):
        return self.sg * AIR


NATURAL = Gas("natural", 0.60, 1.2e-5, 1.30)
PROPANE = Gas("propane", 1.52, 0.8e-5, 1.13)


def friction(re, rr):
    """Darcy friction factor: Hagen-Poiseuille, the code's sizing equation, the fully rough limit."""
    rough = (-2.0 * log10(rr / 3.7)) ** -2 if rr > 0 else 0.0
    parts = 64.0 / re, 0.1388 * re**-0.152, rough
    top = max(parts)
    return top * sum((x / top) ** 16 for x in parts) ** (1 / 16)


def drive(p1, p2, ambient):
    """w = (P1^2 - P2^2) / (2 p_std), absolute pressures."""
    return ((p1 + ambient) ** 2 - (p2 + ambient) ** 2) / (2 * P_STD)


class Pipe:
    """Darcy-Weisbach: w = f (L/D) G^2 / (2 rho_ref)."""

    def __init__(self, d, length, eps, gas, t):
        self.d, self.length, self.eps, self.gas, self.t = d, length, eps, gas, t
        self.rho_ref = gas.rho * T_STD / t

    def re(self, q):
        return 4 * self.gas.rho * abs(q) / (pi * self.d * self.gas.mu)

    def loss(self, q):
        """w that a flow needs; odd."""
        if q == 0.0:
            return 0.0
        g = self.gas.rho * abs(q) / (pi / 4 * self.d**2)
        w = friction(self.re(q), self.eps / self.d) * self.length / self.d * g * g / (2 * self.rho_ref)
        return w if q > 0 else -w

    def flow(self, w):
        if abs(w) < 1e-13:
            # Hagen-Poiseuille; brentq has no root to look for.
            g = abs(w) * 2 * self.rho_ref * self.d**2 / (64 * self.gas.mu * self.length)
            return g * pi / 4 * self.d**2 / self.gas.rho * (1 if w >= 0 else -1)
        x = brentq(lambda x: log(self.loss(exp(x)) / abs(w)), -60, 5, xtol=1e-14, rtol=1e-14)
        return exp(x) if w > 0 else -exp(x)


class Tubing:
    """Q = C (dH/L)^n sqrt(0.60/SG): ft3/h, in. w.c., ft."""

    def __init__(self, ehd, length, extra, gas, t):
        self.c, self.n = TUBING[ehd]
        self.feet = length / 0.3048 + 1.3 * extra
        self.scale = self.c * CFH * sqrt(0.60 / gas.sg * T_STD / t)

    def flow(self, w):
        # The documented rounding through zero, w0 = 0.25 Pa.
        s = w * (w * w + 0.25**2) ** ((self.n - 1) / 2)
        return self.scale * s * (1 / (INWC * self.feet)) ** self.n


class Opening:
    """Q = CdA Y sqrt(2 rho1 dP) / rho_std; IEC 60534 expansion factor and choking."""

    def __init__(self, area, gas, t):
        self.area, self.gas, self.t = area, gas, t

    def unit(self, p1, p2, ambient):
        if p1 < p2:
            return -self.unit(p2, p1, ambient)
        up = p1 + ambient
        xc = 0.72 * self.gas.gamma / 1.40
        x = min((p1 - p2) / up, xc)
        d = x * up
        root = d / (d * d + 1.0) ** 0.25  # sqrt(d), rounded within 1 Pa of zero
        rho1 = self.gas.rho * up / P_STD * T_STD / self.t
        return (1 - x / (3 * xc)) * sqrt(2 * rho1) * root / self.gas.rho

    def flow(self, p1, p2, ambient):
        return self.area * self.unit(p1, p2, ambient)


def valve_area(style, bore, angle):
    """Overlap of two circles, times the area that K = (L/d) f_T leaves."""
    ratio, seal = {"ball": (3.0, 6.0), "plug-cock": (18.0, 4.0)}[style]
    full = pi / 4 * bore**2 / sqrt(ratio * 0.025)
    turned = min(max((angle - seal) / (90.0 - seal), 0.0), 1.0)
    h = 1 - turned
    return full * 2 / pi * (acos(h) - h * sqrt(1 - h * h))


class Regulator:
    """Force balance of a spring, a diaphragm and a seat; lift follows with a lag."""

    def __init__(self, parts, gas, t):
        self.p, self.opening = parts, Opening(1.0, gas, t)
        self.sign = {"opens": 1, "closes": -1, "none": 0}[parts["inlet_effect"]]

    def preload(self, turns=None):
        turns = self.p["turns"] if turns is None else turns
        return self.p["spring_n_m"] * turns * self.p["pitch_mm"] * 1e-3

    def wanted_lift(self, p_in, p_out, ref=0.0, preload=None):
        preload = self.preload() if preload is None else preload
        ad, push = self.p["diaphragm_mm2"] * 1e-6, self.sign * self.p["seat_mm2"] * 1e-6
        force = ad * (p_out - ref) - push * (p_in - p_out)
        lift = (preload - force) / self.p["spring_n_m"]
        return min(max(lift, -1.5e-3 * self.p["seal_mm"]), 1e-3 * self.p["max_lift_mm"])

    def area(self, lift):
        """Toe, then growing slope, then linear."""
        seal, blend = self.p["seal_mm"] * 1e-3, self.p["blend_mm"] * 1e-3
        slope, width = self.p["toe_slope"], self.p["width_mm"] * 1e-3
        toe, rise = seal - blend, 2 * blend
        x = lift + seal
        if x <= 0:
            return 0.0
        if x < toe:
            return width * slope * x * x / (2 * toe)
        t = lift + blend
        if t < rise:
            return width * (slope * toe / 2 + slope * t + (1 - slope) * t * t / (2 * rise))
        return width * (slope * toe / 2 + (1 + slope) * rise / 2 + t - rise)

    def flow(self, lift, p_in, p_out, ambient):
        return self.area(lift) * self.opening.unit(p_in, p_out, ambient)

    def steady(self, p_in, p_out, ambient):
        return self.flow(self.wanted_lift(p_in, p_out), p_in, p_out, ambient)


def law_of(e, gas, t):
    """The law of an element as it stands in a file of cases."""
    if e["type"] == "pipe":
        if "nominal" in e:
            d = {"copper": COPPER}.get(e["material"], STEEL)[e["nominal"]] * IN
        else:
            d = e["inside_mm"] * 1e-3
        eps = e["roughness_mm"] * 1e-3 if "roughness_mm" in e else ROUGHNESS[e["material"]]
        return Pipe(d, e["length_m"] + e.get("fittings_m", 0.0), eps, gas, t)
    if e["type"] == "tubing":
        return Tubing(e["ehd"], e["length_m"], e.get("extra_fittings", 0), gas, t)
    if e["type"] == "opening":
        area = e["area_mm2"] * 1e-6 if "area_mm2" in e else e["cd"] * pi / 4 * (e["diameter_mm"] * 1e-3) ** 2
        return Opening(area, gas, t)
    if e["type"] == "valve":
        return Opening(valve_area(e["style"], e["bore_mm"] * 1e-3, e["angle_deg"]), gas, t)
    return Regulator(e["parts"], gas, t)
