//! The measuring chain: the gas is right and the display is not; and leaks.

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault::{self, *};
use quarterturn::measure::pattern::{Start, measure};
use quarterturn::parts::Port;
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::seen::Display;

use super::row::{Natural, Propane, Row, Sign::*, check};

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // The gas does not know of the manometer.
    (MeterZeroOff, Natural, "==== ===", &[MeterRight, Quiet]),
    (MeterZeroDrifts, Natural, "==== ===", &[MeterRight, Quiet]),
    (MeterZeroedUnderPressure, Natural, "==== ===", &[MeterRight, Quiet]),
    (HoledMeterHose, Natural, "==== ===", &[MeterRight, Quiet]),
    (WaterInMeterHose, Natural, "==== ===", &[MeterRight, Quiet]),
    (PinchedMeterHose, Natural, "==== ===", &[MeterRight, Quiet]),
    (BlockedInletTap, Natural, "==== ===", &[MeterRight, Quiet]),
    (BlockedManifoldTap, Natural, "==== ===", &[MeterRight, Quiet]),
    (MeterSetToKilopascals, Natural, "==== ===", &[MeterRight, Quiet]),
    (MeterSetToMillibars, Natural, "==== ===", &[MeterRight, Quiet]),
    (LowMeterBattery, Natural, "==== ===", &[MeterRight, Quiet]),
    (SmallMeterRange, Natural, "==== ===", &[MeterRight, Quiet]),
    // Small leaks do not show on the manifold.
    (CrossThreadedPlug, Natural, "==== ===", &[Leak, Gathers]),
    (CrossThreadedPlug, Propane, "==== ===", &[Leak, Gathers]),
    // A leak before the valve keeps the regulator from locking up.
    (LooseInletPlug, Natural, "-=== ===", &[Leak, Gathers]),
    (LooseInletPlug, Propane, "-=== ===", &[Leak, Gathers]),
    (LooseManifoldPlug, Natural, "==== ===", &[Leak, Gathers]),
    (LooseManifoldPlug, Propane, "==== ===", &[Leak, Gathers]),
    (CrackedBoss, Natural, "==== ===", &[Leak, Gathers]),
    (CrackedBoss, Propane, "==== ===", &[Leak, Gathers]),
    // A jet at the first call, beside a flame.
    (AdapterLeftIn, Natural, "=... ...", &[Leak, Gathers, Fire]),
    (AdapterLeftIn, Propane, "=... ...", &[Leak, Gathers, Fire]),
    // Alone it changes nothing; see below.
    (FadedOdorant, Natural, "==== ===", &[Quiet]),
];

#[test]
fn measuring_faults_leave_the_gas_alone() {
    check(ROWS);
}

pub const ALL: &[Row] = ROWS;

/// What the manometer shows on a port, in its own numbers; none where it shows no number.
fn shown(fault: Option<Fault>, port: Port) -> Vec<Option<f64>> {
    let of = fault.unwrap_or(MeterZeroOff);
    let mut setup = healthy_for(of, Fuel::Natural).unwrap();
    if let Some(fault) = fault {
        fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
    }
    let pattern = measure(setup, Start::Hooked(port));
    let number = |display: Display| match display {
        Display::Number(number) => Some(number.value),
        Display::Dark | Display::OverRange => None,
    };
    pattern.points.iter().map(|point| number(point.display)).collect()
}

/// Display with a fault less the display of a sound manometer, at rest, low, high, others, at rest.
fn off(fault: Fault, port: Port) -> Vec<f64> {
    let (is, was) = (shown(Some(fault), port), shown(None, port));
    is.iter().zip(was).map(|(is, was)| is.unwrap() - was.unwrap()).collect()
}

/// A wrong zero is the same at every reading; one learned under pressure is as wrong as that
/// pressure, and shows a minus sign when nothing presses.
#[test]
fn a_wrong_zero_is_wrong_by_the_same_everywhere() {
    for (fault, by) in [(MeterZeroOff, -0.4), (MeterZeroedUnderPressure, -3.5)] {
        for port in [Port::Inlet, Port::Manifold] {
            let off = off(fault, port);
            assert!(off.iter().all(|it| (it - by).abs() < 0.02), "{fault:?} {port:?} {off:?}");
        }
    }
    let manifold = shown(Some(MeterZeroedUnderPressure), Port::Manifold);
    assert!(manifold[0].unwrap() < -3.0 && manifold[2].unwrap().abs() < 0.05, "{manifold:?}");
}

/// A drifting zero creeps on at a steady flame.
#[test]
fn a_drifting_zero_creeps() {
    let off = off(MeterZeroDrifts, Port::Manifold);
    assert!(off.windows(2).all(|two| two[1] >= two[0] - 0.01), "{off:?}");
    assert!(off[3] - off[0] > 0.05, "{off:?}");
}

/// A hose with a hole shows about a fifth too little at every reading under pressure.
#[test]
fn a_holed_hose_reads_low() {
    let (is, was) = (shown(Some(HoledMeterHose), Port::Manifold), shown(None, Port::Manifold));
    for i in [1, 2, 3] {
        let share = is[i].unwrap() / was[i].unwrap();
        assert!((0.75..0.88).contains(&share), "{share}");
    }
}

/// Water holds a change back: rising pressure reads low, falling pressure reads high.
#[test]
fn water_reads_low_going_up_and_high_coming_down() {
    let manifold = off(WaterInMeterHose, Port::Manifold);
    assert!(manifold[1] < -0.1 && manifold[2] < -0.1 && manifold[4] > 0.1, "{manifold:?}");
}

/// A pinch and a blocked tap come late: the reading is still on its way up when a sound one stands.
#[test]
fn a_pinch_and_a_blocked_tap_come_late() {
    for fault in [PinchedMeterHose, BlockedManifoldTap] {
        let off = off(fault, Port::Manifold);
        assert!(off[1] < -0.03 && off[2] < -0.03, "{fault:?} {off:?}");
    }
    // The other port does not know of it.
    let other = off(BlockedManifoldTap, Port::Inlet);
    assert!(other.iter().all(|it| it.abs() < 0.02), "{other:?}");
    // A tap that is shut altogether shows nothing at all.
    let mut setup = healthy_for(BlockedInletTap, Fuel::Natural).unwrap();
    BlockedInletTap.apply(&mut setup, 0.0);
    let pattern = measure(setup, Start::Hooked(Port::Inlet));
    for point in &pattern.points {
        assert!(matches!(point.display, Display::Number(it) if it.value.abs() < 0.01), "{point:?}");
    }
}

/// A wrong unit is wrong by its own factor (NIST SP 811: 249.0889 Pa to the inch of water).
#[test]
fn a_wrong_unit_is_wrong_by_its_factor() {
    let was = shown(None, Port::Inlet);
    for (fault, factor) in [(MeterSetToKilopascals, 0.249_089), (MeterSetToMillibars, 2.490_889)] {
        for (is, was) in shown(Some(fault), Port::Inlet).iter().zip(&was) {
            let ratio = is.unwrap() / was.unwrap();
            assert!((ratio / factor - 1.0).abs() < 0.004, "{fault:?} {ratio}");
        }
    }
}

/// A weak battery first freezes the display, then lets it go out; a small range shows no number.
#[test]
fn a_weak_battery_freezes_and_a_small_range_gives_up() {
    let flat = shown(Some(LowMeterBattery), Port::Inlet);
    assert_eq!(flat[0], flat[1], "frozen at what it showed at rest");
    assert_eq!(flat[3], None);
    let small = shown(Some(SmallMeterRange), Port::Inlet);
    assert!(small.iter().all(Option::is_none), "{small:?}");
    assert!(shown(Some(SmallMeterRange), Port::Manifold).iter().all(Option::is_some));
}
