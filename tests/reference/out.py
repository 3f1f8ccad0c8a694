"""Writing files of cases: one case a line, figures to ten digits."""

import json
import math


def digits(x, n=10):
    if isinstance(x, dict):
        return {k: digits(v, n) for k, v in x.items()}
    if isinstance(x, (list, tuple)):
        return [digits(v, n) for v in x]
    if isinstance(x, bool) or not isinstance(x, float):
        return x if not hasattr(x, "item") else digits(x.item(), n)
    if not math.isfinite(x):
        raise ValueError("a figure is not finite")
    return 0.0 if x == 0 else float(f"{x:.{n}g}")


def write(name, head, groups, cases):
    """`head`: title and source; `groups`: name to texts."""
    lines = ['{"format": "quarterturn-reference-cases", "version": 1,']
    for key, value in head.items():
        lines.append(f" {json.dumps(key)}: {json.dumps(value, ensure_ascii=False)},")
    inner = ",\n".join(
        f"  {json.dumps(k)}: {json.dumps(v, ensure_ascii=False)}" for k, v in groups.items())
    lines.append(' "groups": {\n' + inner + "\n },")
    body = ",\n".join(
        json.dumps(digits(c), ensure_ascii=False, separators=(",", ":")) for c in cases)
    lines.append(' "cases": [\n' + body + "\n ]}")
    with open(name, "w", encoding="utf-8") as file:
        file.write("\n".join(lines) + "\n")
    print(f"{name}: {len(cases)} cases")
