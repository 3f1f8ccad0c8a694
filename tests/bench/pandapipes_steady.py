"""A steady solve of the same chains with pandapipes, timed; see docs/performance.md.

Python with the versions of tests/reference/requirements.txt:
`python tests/bench/pandapipes_steady.py`
"""

import time

import pandapipes as pp

AMBIENT_BAR = 1.01325


def chain(nodes):
    net = pp.create_empty_network(fluid="methane")
    last = pp.create_junction(net, pn_bar=0.0174, tfluid_k=288.7)
    pp.create_ext_grid(net, last, p_bar=0.0174, t_k=288.7)
    for _ in range(nodes):
        here = pp.create_junction(net, pn_bar=0.0174, tfluid_k=288.7)
        pp.create_pipe_from_parameters(net, last, here, length_km=0.024 / nodes, inner_diameter_mm=15.8,
                                       k_mm=0.0178)
        last = here
    # 80,000 Btu/h of methane.
    pp.create_sink(net, last, mdot_kg_per_s=0.000433)
    return net


def main():
    print("pandapipes", pp.__version__)
    for nodes in (4, 12, 24, 48, 96):
        net = chain(nodes)
        pp.pipeflow(net, friction_model="swamee-jain")
        best = min(timed(net) for _ in range(7))
        print(f"chain of {nodes:2} nodes {1e3 * best:.2f} ms a steady solve, "
              f"end at {net.res_junction.p_bar.iloc[-1] * 401.463:.3f} in. w.c.")


def timed(net):
    start = time.perf_counter()
    pp.pipeflow(net, friction_model="swamee-jain")
    return time.perf_counter() - start


if __name__ == "__main__":
    main()
