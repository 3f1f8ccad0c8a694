"""The sizing code's tables by three friction laws; prints what the guide says of them.

The printed cells are those of the test of the pipe law (IFGC 2018, tables named there).
"""

import re
from math import pi
from pathlib import Path

import fluids
from scipy.optimize import brentq

from laws import CFH, COPPER, IN, INWC, NATURAL, ROUGHNESS, STEEL, Gas, friction

TEXT = (Path(__file__).parents[1] / "core/physics/pipe.rs").read_text(encoding="utf-8")
STEEL_IDS = [STEEL[n] for n in ("1/2", "3/4", "1", "1-1/4", "1-1/2", "2")]
COPPER_IDS = [0.305] + [COPPER[n] for n in ("3/8", "1/2", "5/8", "3/4", "1")]
# The tables' propane: specific gravity 1.50; 2,488 Btu/ft3 makes heat of their flows.
TABLE_PROPANE = Gas("propane", 1.50, 0.8e-5, 1.13)
TABLES = [("STEEL_NATURAL", STEEL_IDS, "steel", NATURAL, 1.0), ("COPPER_NATURAL", COPPER_IDS, "copper", NATURAL, 1.0),
          ("STEEL_PROPANE", STEEL_IDS, "steel", TABLE_PROPANE, 2.488),
          ("COPPER_PROPANE", COPPER_IDS, "copper", TABLE_PROPANE, 2.488)]
LAWS = {"model": friction, "Churchill 1977": fluids.friction.Churchill_1977,
        "Colebrook": lambda re_, rr: fluids.friction.Clamond(re_, rr) if re_ > 2040 else 64 / re_}


def cells(name):
    body = TEXT[TEXT.index(f"const {name}:"):]
    for length, row in re.findall(r"\(([\d.]+), \[([^\]]+)\]\)", body[: body.index("\n];")]):
        yield float(length), [float(x) for x in row.split(",")]


def flow(law, gas, d, eps, length):
    def off(q):
        g = gas.rho * q / (pi / 4 * d * d)
        return law(4 * gas.rho * q / (pi * d * gas.mu), eps / d) * length / d * g * g / (2 * gas.rho) - 0.5 * INWC

    return brentq(off, 1e-6, 1.0)


def main():
    found = {}
    for name, ids, material, gas, per in TABLES:
        for feet, row in cells(name):
            for printed, inches in zip(row, ids):
                if not printed:
                    continue
                d = inches * IN
                re_ = 4 * gas.rho * printed / per * CFH / (pi * d * gas.mu)
                if re_ < 1800:
                    continue
                for law, f in LAWS.items():
                    gap = flow(f, gas, d, ROUGHNESS[material], feet * 0.3048) / CFH * per - printed
                    half = 0.5 if printed < 1000 else 5.0
                    beyond = max(0.0, abs(gap) - half) * (1 if gap > 0 else -1) / printed * 100
                    found.setdefault((law, re_ >= 4000), []).append(beyond)
    for (law, high), off in sorted(found.items()):
        span = "Re 4,000 and more" if high else "Re 1,800 to 4,000"
        print(f"{law:15s} {span}: {min(off):+.1f} to {max(off):+.1f} % over {len(off)} cells")


if __name__ == "__main__":
    main()
