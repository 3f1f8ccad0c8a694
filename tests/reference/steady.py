"""Steady networks: flows and pressures at once, by SciPy's Powell hybrid method; and pandapipes."""

import numpy as np
from scipy.optimize import root

import laws
from laws import P_STD, T_STD, drive, law_of


def solve_scipy(case, gas, ambient=P_STD, t=T_STD):
    """Pressures by node and flows by element. Unknowns are all of both; drops are written as losses
    of a flow, so that no law is inverted."""
    nodes, elements = case["nodes"], case["elements"]
    at = {n["id"]: k for k, n in enumerate(nodes)}
    free = [k for k, n in enumerate(nodes) if "pressure_pa" not in n]
    law = [law_of(e, gas, t) for e in elements]
    ends = [(at[e["from"]], at[e["to"]]) for e in elements]
    fixed = np.array([n.get("pressure_pa", 0.0) for n in nodes])
    top = max(fixed.max(), 100.0)
    demand = np.array([n.get("demand_m3_s", 0.0) for n in nodes])
    scale_q = np.abs(demand).max() or 1e-4

    def unpack(x):
        p = fixed.copy()
        p[free] = x[: len(free)] * top
        return p, x[len(free):] * scale_q

    def residual(x, share):
        p, q = unpack(x)
        out = []
        for (a, b), own, flow in zip(ends, law, q):
            if isinstance(own, laws.Pipe):
                out.append((drive(p[a], p[b], ambient) - own.loss(flow)) / top)
            elif isinstance(own, laws.Tubing):
                out.append((own.flow(drive(p[a], p[b], ambient)) - flow) / scale_q)
            elif isinstance(own, laws.Opening):
                out.append((own.flow(p[a], p[b], ambient) - flow) / scale_q)
            else:
                out.append((own.steady(p[a], p[b], ambient) - flow) / scale_q)
        for k in free:
            gain = sum(f for (_, b), f in zip(ends, q) if b == k)
            loss = sum(f for (a, _), f in zip(ends, q) if a == k)
            out.append((gain - loss - share * demand[k]) / scale_q)
        return np.array(out)

    guess = case.get("guess", {})
    p0 = [guess.get(nodes[k]["id"], 0.9 * top) for k in free]
    x = np.concatenate([np.array(p0) / top, np.full(len(elements), 0.3)])
    for share in (0.3, 0.6, 1.0):
        best = None
        for method, tol in (("hybr", 1e-13), ("lm", 1e-13)):
            found = root(residual, x, args=(share,), method=method, tol=tol)
            size = np.abs(residual(found.x, share)).max()
            if best is None or size < best[0]:
                best = (size, found.x)
            if size < 1e-10:
                break
        x = best[1]
    if best[0] > 1e-8:
        raise RuntimeError(f"{case['id']}: residual {best[0]:.1e}")
    p, q = unpack(x)
    return {n["id"]: p[at[n["id"]]] for n in nodes}, {e["id"]: f for e, f in zip(elements, q)}


def solve_pandapipes(case, gas, t=T_STD, friction="same"):
    """The line part by pandapipes in gas mode at 1.01325 bar ambient.

    `friction` is `same` for the model's friction law, put in place of its own by exchanging the two
    functions that give the factor and its slope, or one of its own: `nikuradse`, `colebrook`,
    `swamee-jain`.
    """
    import pandapipes
    from pandapipes.pf import derivative_calculation as inner
    from pandapipes.pf.internals_toolbox import branch_area  # noqa: F401  (fails early on a changed layout)

    net = pandapipes.create_empty_network()
    rho_n = gas.rho * (T_STD / 273.15) * (101325.0 / P_STD)
    fluid = pandapipes.create_constant_fluid(
        gas.name, "gas", density=rho_n, viscosity=gas.mu, heat_capacity=2200.0,
        molar_mass=1e3 * 0.0289647 * gas.sg, compressibility=1.0, der_compressibility=0.0)
    pandapipes.properties.fluids._add_fluid_to_net(net, fluid)
    at = {}
    for n in case["nodes"]:
        p_bar = n.get("pressure_pa", 1500.0) / 1e5
        at[n["id"]] = pandapipes.create_junction(net, pn_bar=p_bar, tfluid_k=t, height_m=0.0)
        if "pressure_pa" in n:
            pandapipes.create_ext_grid(net, at[n["id"]], p_bar=p_bar, t_k=t)
        elif n.get("demand_m3_s", 0.0):
            pandapipes.create_sink(net, at[n["id"]], mdot_kg_per_s=n["demand_m3_s"] * gas.rho)
    for e in case["elements"]:
        own = law_of(e, gas, t)
        pandapipes.create_pipe_from_parameters(
            net, at[e["from"]], at[e["to"]], length_km=own.length / 1e3,
            inner_diameter_mm=own.d * 1e3, k_mm=own.eps * 1e3, u_w_per_m2k=0.0, text_k=t)
    kept = inner.calc_lambda, inner.calc_der_lambda
    if friction == "same":
        inner.calc_lambda, inner.calc_der_lambda = _lambda, _der_lambda
    try:
        pandapipes.pipeflow(
            net, friction_model="nikuradse" if friction == "same" else friction, iter=200,
            tol_p=1e-11, tol_m=1e-12, tol_res=1e-12, use_numba=False, mode="hydraulics",
            tolerance_colebrook=1e-10)
    finally:
        inner.calc_lambda, inner.calc_der_lambda = kept
    p = {name: 1e5 * net.res_junction.p_bar.at[k] for name, k in at.items()}
    q = {e["id"]: net.res_pipe.mdot_from_kg_per_s.iat[k] / gas.rho for k, e in enumerate(case["elements"])}
    return p, q


def _factor(re, d, k):
    re = np.maximum(re, 1e-6)
    rough = (-2.0 * np.log10(k / d / 3.7)) ** -2
    lam, code = (64.0 / re) ** 16, (0.1388 * re**-0.152) ** 16
    total = lam + code + rough**16
    return total ** (1 / 16), -(lam + 0.152 * code) / total


def _lambda(m, eta, d, k, gas_mode, friction_model, lengths, options, area):
    re = np.abs(m) * d / (eta * area)
    return _factor(re, d, k)[0], re


def _der_lambda(m, eta, d, k, friction_model, lambda_pipe, area, re, lengths):
    safe = np.where(np.abs(m) < 1e-12, 1e-12, m)
    return lambda_pipe * _factor(re, d, k)[1] / safe
