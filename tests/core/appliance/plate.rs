//! What plate and nameplate allow at each port in each test state.

use quarterturn::appliance::plate::{Band, Fuel, GasFigures, Target};
use quarterturn::appliance::test_point::{Port, Stage};
use quarterturn::parts::{Level, Levels};
use quarterturn::units::PA_PER_INWC;

/// A natural-gas plate as two-stage service manuals print it (makers withheld): inlet 4.5 to 10.5,
/// manifold 1.7 and 3.5, each ± 0.3 in. w.c.
fn figures() -> GasFigures {
    let target = |inwc: f64| Target { pa: inwc * PA_PER_INWC, tolerance_pa: 0.3 * PA_PER_INWC };
    GasFigures {
        fuel: Fuel::Natural,
        inlet_min_pa: 4.5 * PA_PER_INWC,
        inlet_max_pa: 10.5 * PA_PER_INWC,
        manifold: Levels::two(target(1.7), target(3.5)),
        orifice_m: 0.0023,
        orifice_stamp: "43".into(),
        decimals: 2,
    }
}

fn allows(port: Port, stage: Stage, lockup_most_inwc: Option<f64>) -> Band {
    figures().allows(port, stage, lockup_most_inwc.map(|inwc| inwc * PA_PER_INWC))
}

/// A reading at an end of a band is allowed, a hundredth of an inch further is not, at either port and
/// in every state. Ends: the plate's own figures; at rest the manifold reads 0.0 on a gauge with a
/// resolution of 0.1 in. w.c. (installation manuals, makers withheld).
#[test]
fn every_port_and_state_has_its_band() {
    let cases = [
        (Port::Inlet, Stage::Rest, 4.5, 10.5),
        (Port::Inlet, Stage::Firing(Level::Low), 4.5, 10.5),
        (Port::Inlet, Stage::Firing(Level::High), 4.5, 10.5),
        (Port::Inlet, Stage::FullLoad, 4.5, 10.5),
        (Port::Manifold, Stage::Rest, -0.05, 0.05),
        (Port::Manifold, Stage::Firing(Level::Low), 1.4, 2.0),
        (Port::Manifold, Stage::Firing(Level::High), 3.2, 3.8),
        (Port::Manifold, Stage::FullLoad, 3.2, 3.8),
    ];
    for (port, stage, least, most) in cases {
        let band = allows(port, stage, None);
        for (inwc, below, above) in [
            (least, false, false),
            (most, false, false),
            (least - 0.01, true, false),
            (most + 0.01, false, true),
        ] {
            let pa = inwc * PA_PER_INWC;
            let found = (band.is_below(pa), band.is_above(pa), band.contains(pa));
            assert_eq!(found, (below, above, !below && !above), "{port:?} {stage:?} {inwc}");
        }
    }
}

/// The nameplate's limit at rest (a fifth above the set pressure; a maker's acceptance rule) binds
/// where it is below the plate's maximum, at rest and at the inlet only, and never widens the plate.
#[test]
fn the_nameplate_binds_at_rest_only() {
    let most = |port, stage, lockup| allows(port, stage, Some(lockup)).most_pa / PA_PER_INWC;
    approx::assert_relative_eq!(most(Port::Inlet, Stage::Rest, 8.4), 8.4, max_relative = 1e-12);
    approx::assert_relative_eq!(most(Port::Inlet, Stage::Rest, 14.0), 10.5, max_relative = 1e-12);
    for (port, stage) in [
        (Port::Inlet, Stage::Firing(Level::Low)),
        (Port::Inlet, Stage::Firing(Level::High)),
        (Port::Inlet, Stage::FullLoad),
        (Port::Manifold, Stage::Rest),
    ] {
        assert_eq!(allows(port, stage, Some(8.4)), allows(port, stage, None), "{port:?} {stage:?}");
    }
}

/// How far a pressure lies outside has the sign of its side; inside, the way to the nearer end is
/// negative, and no number is nowhere inside.
#[test]
fn a_band_tells_how_far_outside() {
    let band = Band { least_pa: 100.0, most_pa: 200.0 };
    for (pa, beyond, out) in
        [(90.0, -10.0, 10.0), (100.0, 0.0, 0.0), (130.0, 0.0, -30.0), (215.0, 15.0, 15.0)]
    {
        assert_eq!((band.beyond_pa(pa), band.out_by_pa(pa)), (beyond, out), "{pa}");
    }
    assert!(!band.contains(f64::NAN) && !band.contains(f64::INFINITY));
}
