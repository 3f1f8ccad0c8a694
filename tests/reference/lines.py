"""Single lines and openings by `fluids`, and the friction law beside others."""

from math import pi

import fluids
import numpy as np
from fluids.compressible import isothermal_gas
from fluids.control_valve import size_control_valve_g
from fluids.friction import friction_factor
from scipy.optimize import brentq

from laws import (CFH, COPPER, IN, INWC, NATURAL, P_STD, PROPANE, PSI, ROUGHNESS, STEEL, T_STD, friction)
from out import digits, write

AMBIENT = 101_325.0
SEED = 20260703


def same_law(gas, d, length, eps, p1, p2, t):
    """Standard flow by the isothermal law of `fluids`, whose kinetic term the model leaves out; the
    friction factor is the model's, found together with the flow."""
    rho1 = gas.rho * (p1 + AMBIENT) / P_STD * T_STD / t

    def off(m):
        re = 4 * m / (pi * d * gas.mu)
        return isothermal_gas(rho=rho1, fd=friction(re, eps / d), P1=p1 + AMBIENT, P2=p2 + AMBIENT, L=length, D=d) - m

    return brentq(off, 1e-9, 5.0, xtol=1e-15, rtol=1e-13) / gas.rho


def pipe_cases(rng):
    cases = []
    for k in range(48):
        material = "copper" if k % 3 == 2 else "steel"
        table = COPPER if material == "copper" else STEEL
        nominal = str(rng.choice(list(table)))
        gas = PROPANE if k % 2 else NATURAL
        inlet = ((7 if gas is NATURAL else 11) * INWC, 2 * PSI, 10 * PSI)[k % 3 if k > 20 else 0]
        length = round(float(rng.uniform(20, 120 if inlet < 5000 else 300)), 2)
        drop = inlet * float(rng.uniform(0.01, 0.3)) if k % 4 else float(rng.uniform(1, 20))
        t = (T_STD, 275.0, 305.0)[k % 3]
        d = table[nominal] * IN
        flow = same_law(gas, d, length, ROUGHNESS[material], digits(inlet), digits(inlet - drop), t)
        case = {"id": f"pipe-{k + 1}", "kind": "line", "inlet_pa": inlet}
        if gas is PROPANE:
            case["gas"] = "propane"
        if t != T_STD:
            case["temperature_k"] = t
        case["element"] = {"type": "pipe", "material": material, "nominal": nominal, "length_m": length}
        if k % 2:
            case |= {"group": "line-drop", "flow_m3_s": flow, "expect": {"drop_pa": drop}}
        else:
            case |= {"group": "line-flow", "outlet_pa": inlet - drop, "expect": {"flow_m3_s": flow}}
        cases.append(case)
    return cases


def opening_cases(rng):
    """IEC 60534 by `fluids`: the flow coefficient that a gas flow needs, choked or not."""
    cases = []
    for k in range(24):
        gas = PROPANE if k % 2 else NATURAL
        p1 = float(rng.choice([7 * INWC, 11 * INWC, 2 * PSI, 10 * PSI, 60 * PSI]))
        p2 = 0.0 if k % 3 else p1 * float(rng.uniform(0.2, 0.9))
        t = (T_STD, 275.0, 305.0)[k % 3]
        flow = float(rng.uniform(5, 300)) * CFH
        # An ideal gas of the model's density.
        molar = 1e3 * gas.rho * 8.31446261815324 * T_STD / P_STD
        normal = flow * (P_STD / 101_325.0) * (273.15 / T_STD)
        kv = size_control_valve_g(
            T=t, MW=molar, mu=gas.mu, gamma=gas.gamma, Z=1.0, P1=p1 + AMBIENT, P2=p2 + AMBIENT, Q=normal,
            xT=0.72, allow_laminar=False)
        case = {"id": f"opening-{k + 1}", "kind": "line", "group": "opening-iec", "inlet_pa": p1, "outlet_pa": p2,
                "element": {"type": "opening", "cv": digits(fluids.control_valve.Kv_to_Cv(kv))},
                "expect": {"flow_m3_s": flow}}
        if gas is PROPANE:
            case["gas"] = "propane"
        if t != T_STD:
            case["temperature_k"] = t
        cases.append(case)
    return cases


LAWS = ["Clamond", "Churchill_1977", "Haaland", "Swamee_Jain_1976"]
RE = [500, 700, 1000, 1400, 2000, 2300, 3000, 4000, 5000, 7000, 10000, 14000, 20000, 30000, 50000, 70000, 100000]
RATIOS = {"steel-half-inch": 17.8e-6 / (0.622 * IN), "copper-half-inch": 1.5e-6 / (0.527 * IN)}


def friction_cases():
    cases = []
    for name, ratio in RATIOS.items():
        for re in RE:
            laminar = re < 1300
            group = ("friction-laminar" if laminar else "friction-transition" if re < 4000 else "friction-turbulent")
            if not laminar and re < 4000:
                # One law for all Reynolds numbers, the laminar line until it meets the turbulent one.
                f = fluids.friction.Churchill_1977(re, ratio)
            else:
                f = friction_factor(re, ratio, Method=None if laminar else "Clamond")
            cases.append({"id": f"{name}-{re}", "kind": "property", "group": group, "quantity": "friction-factor",
                          "re": re, "roughness_ratio": digits(ratio), "expect": f})
    return cases


def table():
    """The table of the guide: laminar law, the model, and others."""
    print("| Re | 64/Re | model | Colebrook | Churchill 1977 | Haaland | Swamee-Jain |")
    print("|---|---|---|---|---|---|---|")
    ratio = RATIOS["steel-half-inch"]
    for re in RE:
        row = [f"{64 / re:.4f}", f"{friction(re, ratio):.4f}"]
        for law in LAWS:
            f = friction_factor(re, ratio, Method=law) if re >= 2040 or law == "Churchill_1977" else None
            if law == "Churchill_1977":
                f = fluids.friction.Churchill_1977(re, ratio)
            row.append(f"{f:.4f}" if f else "")
        print(f"| {re} | " + " | ".join(row) + " |")


def main(folder):
    rng = np.random.default_rng(SEED)
    cases = pipe_cases(rng) + opening_cases(rng) + friction_cases()
    iso = {"source": "fluids 1.3.1, isothermal_gas, with the model's friction law"}
    groups = {
        "line-flow": {**iso, "condition": "Steel and copper, natural gas and propane, 4 Pa to 3 psi of drop"},
        "line-drop": {**iso, "condition": "Steel and copper, natural gas and propane, 4 Pa to 3 psi of drop"},
        "opening-iec": {"source": "fluids 1.3.1, size_control_valve_g (IEC 60534-2-1), xT 0.72",
                        "condition": "Flow coefficients from 7 in. w.c. to 60 psi, choked and not"},
        "friction-laminar": {
            "source": "fluids 1.3.1, friction_factor (Hagen-Poiseuille)", "condition": "Re 500 to 1,000",
            "claim": "Below Re 1,300 the friction factor is the laminar one.",
            "band": {"relative": 0.01}, "reason": "The blend of laminar and turbulent law adds up to 0.1 % at Re 1,000."},
        "friction-turbulent": {
            "source": "fluids 1.3.1, friction_factor (Colebrook-White in Clamond's form)",
            "condition": "1/2 in. steel and copper, Re 4,000 to 100,000",
            "claim": "The sizing code's friction law stays near Colebrook-White.",
            "band": {"relative": 0.10},
            "reason": "The two are different laws. Moody (1944) gives his chart, which is Colebrook-White, as good "
                      "to about 10 % in commercial pipe (from memory).",
            "known_miss": "The code's friction falls with Re^-0.152 and no faster, so it stays above smooth copper: 9 % "
                          "at Re 10,000, 30 % at Re 100,000, which a house line does not reach at 7 in. w.c. Tried: with "
                          "Colebrook's law the tables' cells above Re 4,000 come out up to 14 % high, with the "
                          "model's within 0.7 %."},
        "friction-transition": {
            "source": "fluids 1.3.1, Churchill_1977", "condition": "1/2 in. steel and copper, Re 1,400 to 3,000",
            "claim": "Between laminar and turbulent flow the friction factor follows a law of all regimes.",
            "band": {"relative": 0.10}, "reason": "As for turbulent flow.",
            "known_miss": "The model has no dip: from Re 1,385 on it follows the sizing code, which takes house "
                          "lines as turbulent throughout. Tried: with Churchill's law the cells of the code's tables "
                          "between Re 1,800 and 4,000 come out 4 % low to 21 % high, with the model's law 0 to 0.7 % "
                          "high beyond rounding (tests/reference/sizing_tables.py). The tables govern what is built."},
    }
    head = {"title": "Single lines, openings, friction", "source": "fluids 1.3.1", "truth": "solver",
            "note": f"made by tests/reference/lines.py, seed {SEED}",
            "defaults": {"gas": "natural", "ambient_pa": AMBIENT}}
    write(f"{folder}/lines.json", head, groups, cases)
    table()


if __name__ == "__main__":
    from pathlib import Path

    main(Path(__file__).parent)
