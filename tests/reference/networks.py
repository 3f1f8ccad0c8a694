"""Steady networks: at least a hundred, drawn with a fixed seed."""

import numpy as np
from pandapipes.pf.pipeflow_setup import PipeflowNotConverged

from laws import CFH, INWC, NATURAL, P_STD, PROPANE, PSI, T_STD, Regulator, valve_area  # noqa: F401
from out import digits, write
from steady import solve_pandapipes, solve_scipy

SEED = 20260701
AMBIENT = 101_325.0


def joins(rng, count, loops):
    """A random tree over `count` nodes, with `loops` more links."""
    pairs = [(int(rng.integers(max(0, k - 4), k)), k) for k in range(1, count)]
    tries = 0
    while loops and tries < 200:
        a, b = sorted(int(x) for x in rng.choice(count, 2, replace=False))
        tries += 1
        if (a, b) not in pairs:
            pairs.append((a, b))
            loops -= 1
    return pairs


def lines(rng, name, gas, source_pa, sizes, material, count, loops, drop_pa, reach):
    """A network of pipes with demands that take about `drop_pa` from end to end."""
    pairs = joins(rng, count, loops)
    nodes = [{"id": "n0", "pressure_pa": source_pa}]
    nodes += [{"id": f"n{k}"} for k in range(1, count)]
    elements = []
    for k, (a, b) in enumerate(pairs):
        e = {"id": f"p{k}", "type": "pipe", "from": f"n{a}", "to": f"n{b}", "material": material,
             "nominal": str(rng.choice(sizes)), "length_m": round(float(rng.uniform(*reach)), 2)}
        if rng.random() < 0.5:
            e["fittings_m"] = round(float(rng.uniform(0.3, 4.0)), 2)
        elements.append(e)
    takers = [k for k in range(1, count) if rng.random() < 0.7] or [count - 1]
    shares = {k: float(rng.uniform(0.2, 1.0)) for k in takers}
    case = {"id": name, "kind": "network", "nodes": nodes, "elements": elements}
    # One figure scales all demands so that the farthest node loses what was asked for.
    low, high = 1e-6, 1e-2
    for _ in range(40):
        mid = (low * high) ** 0.5
        put(case, shares, mid)
        try:
            lost = source_pa - min(solve_scipy(case, gas, AMBIENT)[0].values())
        except RuntimeError:  # more than the lines can carry
            lost = float("inf")
        low, high = (mid, high) if lost < drop_pa else (low, mid)
        if high / low < 1.02:
            break
    put(case, shares, low)
    return case


def put(case, shares, size):
    for k, share in shares.items():
        case["nodes"][k]["demand_m3_s"] = digits(share * size, 5)


def finish(case, gas, solve, ambient=AMBIENT, t=T_STD):
    p, q = solve(case, gas)
    case["expect"] = {
        "pressures_pa": {n["id"]: p[n["id"]] for n in case["nodes"] if "pressure_pa" not in n},
        "flows_m3_s": {e["id"]: q[e["id"]] for e in case["elements"]}}
    case.pop("guess", None)
    if gas is PROPANE:
        case["gas"] = "propane"
    if ambient != AMBIENT:
        case["ambient_pa"] = ambient
    if t != T_STD:
        case["temperature_k"] = t
    return case


def line_networks(rng):
    """Line parts: pandapipes with the model's friction law, checked against SciPy on the way."""
    steel, copper = ["1/2", "3/4", "1", "1-1/4"], ["3/8", "1/2", "5/8", "3/4"]
    plan = [
        ("lines-natural-low", NATURAL, 7 * INWC, steel, "steel", 20, (0,), 1.0),
        ("lines-natural-loops", NATURAL, 7 * INWC, steel, "steel", 16, (1, 2, 3), 1.5),
        ("lines-propane-low", PROPANE, 11 * INWC, copper, "copper", 14, (0, 1), 1.0),
        ("lines-medium", NATURAL, 2 * PSI, steel, "steel", 7, (0, 1), 20.0),
        ("lines-medium", PROPANE, 10 * PSI, copper, "copper", 7, (0, 1), 70.0),
        ("lines-rusted", NATURAL, 7 * INWC, steel, "rusted-steel", 6, (0, 1), 3.0),
    ]
    cases, worst, gap, failed = [], 0.0, {}, {}
    for group, gas, source, sizes, material, many, loops, drop in plan:
        for _ in range(many):
            count = int(rng.integers(2, 15))
            extra = min(int(rng.choice(loops)), max(0, count - 3))
            name = f"{group}-{len(cases) + 1}"
            wanted = drop * INWC * float(rng.uniform(0.5, 1.3))
            case = lines(rng, name, gas, source, sizes, material, count, extra, wanted, (1.5, 18.0))
            case["group"] = group
            here, own = solve_pandapipes(case, gas)[0], solve_scipy(case, gas, AMBIENT)[0]
            worst = max(worst, max(abs(here[k] - own[k]) for k in own))
            for law in ("colebrook", "swamee-jain", "nikuradse"):
                try:
                    other = solve_pandapipes(case, gas, friction=law)[0]
                except PipeflowNotConverged:
                    failed[law] = failed.get(law, 0) + 1
                    continue
                off = [(source - other[k]) / (source - own[k]) - 1 for k in own if source - own[k] > 20]
                gap.setdefault((group, law), []).extend(off)
            cases.append(finish(case, gas, lambda c, g: solve_pandapipes(c, g)))
    print(f"pandapipes and SciPy differ by at most {worst:.2e} Pa")
    print(f"  pandapipes found no solution by its own laws: {failed}")
    for (group, law), off in gap.items():
        off = np.array(off) * 100
        print(f"  {group:22s} drop by {law:12s}: {off.min():+.1f} .. {off.max():+.1f} %, mean {off.mean():+.1f} %")
    return cases


def tubing_networks(rng, first):
    """A manifold of corrugated tubing, some with a steel trunk."""
    cases = []
    for k in range(14):
        gas = NATURAL if k % 3 else PROPANE
        source = (7 if gas is NATURAL else 11) * INWC if k % 4 else 2 * PSI
        runs = int(rng.integers(1, 7))
        nodes = [{"id": "meter", "pressure_pa": source}, {"id": "manifold"}]
        elements = [{"id": "trunk", "type": "pipe", "from": "meter", "to": "manifold",
                     "material": "steel", "nominal": "1", "length_m": 6.0}]
        if k % 2:
            elements[0] = {"id": "trunk", "type": "tubing", "from": "meter", "to": "manifold",
                           "ehd": int(rng.choice([30, 31, 37, 39])), "length_m": 9.0}
        for r in range(runs):
            nodes.append({"id": f"a{r}", "demand_m3_s": digits(float(rng.uniform(10, 70)) * CFH, 5)})
            e = {"id": f"run{r}", "type": "tubing", "from": "manifold", "to": f"a{r}",
                 "ehd": int(rng.choice([19, 23, 25, 30])), "length_m": round(float(rng.uniform(2, 14)), 2)}
            if rng.random() < 0.4:
                e["extra_fittings"] = int(rng.integers(1, 5))
            elements.append(e)
        if runs > 2 and k % 5 == 0:
            elements.append({"id": "tie", "type": "tubing", "from": "a0", "to": "a1", "ehd": 18,
                             "length_m": 3.0})
        case = {"id": f"tubing-{first + k}", "kind": "network", "group": "tubing", "nodes": nodes,
                "elements": elements}
        cases.append(finish(case, gas, lambda c, g: solve_scipy(c, g, AMBIENT)))
    return cases


def appliance_networks(rng, first):
    """Lines, hand valves at any angle, and orifices to the room; heights and temperatures differ."""
    cases = []
    for k in range(24):
        gas = NATURAL if k % 3 else PROPANE
        source = (7 if gas is NATURAL else 11) * INWC
        ambient = [101_325.0, P_STD, 84_500.0, 97_000.0][k % 4]
        t = [T_STD, 278.0, 300.0][k % 3] if k >= 12 else T_STD
        branches = int(rng.integers(1, 5))
        nodes = [{"id": "meter", "pressure_pa": source}, {"id": "room", "pressure_pa": 0.0}, {"id": "t0"}]
        elements = [{"id": "main", "type": "pipe", "from": "meter", "to": "t0", "material": "steel",
                     "nominal": str(rng.choice(["3/4", "1"])), "length_m": round(float(rng.uniform(3, 20)), 2)}]
        for b in range(branches):
            nodes += [{"id": f"v{b}"}, {"id": f"m{b}"}]
            bore = float(rng.choice([12.0, 15.0, 20.0]))
            angle = float(rng.choice([90.0, 90.0, 60.0, 35.0]))
            elements += [
                {"id": f"pipe{b}", "type": "pipe", "from": "t0", "to": f"v{b}", "material": "copper",
                 "nominal": str(rng.choice(["1/2", "5/8", "3/4"])), "length_m": round(float(rng.uniform(1, 9)), 2)},
                {"id": f"valve{b}", "type": "valve", "from": f"v{b}", "to": f"m{b}",
                 "style": str(rng.choice(["ball", "plug-cock"])), "bore_mm": bore, "angle_deg": angle},
                {"id": f"jet{b}", "type": "opening", "from": f"m{b}", "to": "room",
                 "diameter_mm": round(float(rng.uniform(1.2, 4.2 if gas is NATURAL else 2.6)), 2), "cd": 0.82}]
            if b and rng.random() < 0.4:
                elements.append({"id": f"tie{b}", "type": "pipe", "from": f"v{b - 1}", "to": f"v{b}",
                                 "inside_mm": 13.4, "roughness_mm": 0.0015, "length_m": 2.5})
        group = "appliances" if t == T_STD else "appliances-warm-cold"
        case = {"id": f"appliances-{first + k}", "kind": "network", "group": group, "nodes": nodes,
                "elements": elements}
        if t != T_STD:
            for n in nodes:
                n["temperature_k"] = t
        cases.append(finish(case, gas, lambda c, g: solve_scipy(c, g, ambient, t), ambient, t))
    return cases


def regulator_parts(rng, set_pa, inlet_pa, wide):
    """A regulator of usual size whose screw stands so that the seat is at zero lift at `set_pa`."""
    effect = str(rng.choice(["opens", "closes", "none"]))
    parts = {"spring_n_m": round(float(rng.uniform(250, 700)), 1), "pitch_mm": 0.8, "bind_mm": 60.0,
             "max_turns": 60.0, "diaphragm_mm2": 1290.0, "seat_mm2": 6.5, "inlet_effect": effect,
             "width_mm": wide, "seal_mm": round(float(rng.uniform(0.05, 0.2)), 3), "blend_mm": 0.02,
             "toe_slope": 0.04, "max_lift_mm": 6.0, "seat_lag_s": 0.03}
    push = {"opens": 1, "closes": -1, "none": 0}[effect] * parts["seat_mm2"]
    force = 1e-6 * (parts["diaphragm_mm2"] * set_pa - push * (inlet_pa - set_pa))
    parts["turns"] = round(force / (parts["spring_n_m"] * parts["pitch_mm"] * 1e-3), 4)
    return parts


def regulator_networks(rng, first):
    """Two stages or one: source, line, regulator, line, loads as demands or orifices."""
    cases = []
    for k in range(16):
        gas = NATURAL if k % 2 else PROPANE
        inlet = [2 * PSI, 5 * PSI, 10 * PSI, 7 * INWC][k % 4]
        set_pa = 3.5 * INWC if inlet < 2000 else (7 if gas is NATURAL else 11) * INWC
        wide = 12.0 if inlet > 2000 else 25.0
        nodes = [{"id": "supply", "pressure_pa": round(inlet, 2)}, {"id": "in"}, {"id": "out"}]
        elements = [
            {"id": "service", "type": "pipe", "from": "supply", "to": "in", "material": "copper" if k % 2 else "steel",
             "nominal": "1/2", "length_m": 5.0},
            {"id": "regulator", "type": "regulator", "from": "in", "to": "out",
             "parts": regulator_parts(rng, set_pa, inlet, wide)}]
        guess = {"in": 0.97 * inlet, "out": 0.97 * set_pa}
        room = False
        for b in range(int(rng.integers(1, 5))):
            nodes.append({"id": f"a{b}"})
            guess[f"a{b}"] = 0.93 * set_pa
            elements.append({"id": f"pipe{b}", "type": "pipe", "from": "out", "to": f"a{b}", "material": "steel",
                             "nominal": "3/4", "length_m": round(float(rng.uniform(2, 15)), 2)})
            if rng.random() < 0.5:
                nodes[-1]["demand_m3_s"] = digits(float(rng.uniform(10, 60)) * CFH, 5)
            else:
                room = True
                elements.append({"id": f"jet{b}", "type": "opening", "from": f"a{b}", "to": "room",
                                 "area_mm2": round(float(rng.uniform(3, 12)), 3)})
        if room:
            nodes.append({"id": "room", "pressure_pa": 0.0})
        case = {"id": f"regulators-{first + k}", "kind": "network", "group": "regulators", "nodes": nodes,
                "elements": elements, "guess": guess}
        cases.append(finish(case, gas, lambda c, g: solve_scipy(c, g, AMBIENT)))
    return cases


def main(folder):
    rng = np.random.default_rng(SEED)
    cases = line_networks(rng)
    for more in (tubing_networks, appliance_networks, regulator_networks):
        cases += more(rng, len(cases) + 1)
    panda = "pandapipes 0.16.0 in gas mode, its friction factor exchanged for the model's law"
    same = {"source": panda}
    scipy = {"source": "SciPy 1.16.3, scipy.optimize.root over all pressures and flows, same laws"}
    groups = {
        "lines-natural-low": {**same, "condition": "Trees of Schedule 40 steel, natural gas at 7 in. w.c., 2 to 14 nodes"},
        "lines-natural-loops": {**same, "condition": "Schedule 40 steel with one to three loops, natural gas at 7 in. w.c."},
        "lines-propane-low": {**same, "condition": "Copper tube, propane at 11 in. w.c., trees and loops"},
        "lines-medium": {**same, "condition": "Steel with natural gas at 2 psi, copper with propane at 10 psi"},
        "lines-rusted": {**same, "condition": "Rusted steel (0.15 mm), natural gas at 7 in. w.c."},
        "tubing": {**scipy, "condition": "Manifolds of corrugated tubing, 7 and 11 in. w.c. and 2 psi"},
        "appliances": {**scipy, "condition": "Lines, hand valves from 35 to 90 degrees, orifices to the room; four ambient pressures"},
        "appliances-warm-cold": {**scipy, "condition": "The same with gas at 278, 288.7 and 300 K"},
        "regulators": {**scipy, "condition": "A regulator (spring, diaphragm, seat) between lines; demands and orifices; 7 in. w.c. to 10 psi"},
    }
    head = {"title": "Steady gas networks", "source": scipy["source"], "truth": "solver",
            "note": f"made by tests/reference/networks.py, seed {SEED}",
            "defaults": {"gas": "natural", "ambient_pa": AMBIENT}}
    write(f"{folder}/networks.json", head, groups, cases)


if __name__ == "__main__":
    from pathlib import Path

    main(Path(__file__).parent)
