//! Faults of manometer, hose and ports, and leaks.

use super::entry::{Entry, Family, Scale, Severity, anywhere};
use super::remedy::Operation::{
    ChangeUnit, RefitPlug, TightenPlug, TryAgain, WarmAndZero, ZeroMeter,
};
use super::remedy::Remedy::{CallOwner, Mend, Operate, Turn};
use super::remedy::wrong;
use crate::catalogue::repair::Repair::{
    BorrowMeter, CleanInletTap, CleanManifoldTap, DrillInletTap, DrillManifoldTap, ReplaceGasValve,
    ReplaceMeterBattery, ReplaceSupplyRegulator, SwapMeterHose,
};
use crate::parts::{Port, Screw};
use crate::setup::PlugFound;
use crate::units::PressureUnit;

const FAMILY: Family = Family::Measuring;

pub(crate) const METER_ZERO_OFF: Entry = Entry {
    number: 57,
    name: "meter_zero_off",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "shown too much",
        ("-2 inH2O", "2 inH2O"),
        "-0.4 inH2O",
    ),
    cause: "The manometer's zero has moved, and nobody has set it.",
    right: &[Operate(ZeroMeter)],
    wrong: &[wrong(Turn(Screw::High), "Every stage is set wrong by as much as the zero is off.")],
    misfit: anywhere,
    apply: |setup, pa| setup.meter.zero_error_pa = pa,
};

pub(crate) const METER_ZERO_DRIFTS: Entry = Entry {
    number: 58,
    name: "meter_zero_drifts",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "of drift while it warms",
        ("-1 inH2O", "1 inH2O"),
        "0.5 inH2O",
    ),
    cause: "The manometer came from a cold van into a warm room, and its zero moves while it warms.",
    right: &[Operate(WarmAndZero)],
    wrong: &[wrong(Turn(Screw::High), "The screw chases the meter, and the flame pays.")],
    misfit: anywhere,
    apply: |setup, pa| {
        setup.meter.drift_pa = pa;
        setup.meter.drift_s = setup.meter.drift_s.max(480.0);
    },
};

pub(crate) const METER_ZEROED_UNDER_PRESSURE: Entry = Entry {
    number: 59,
    name: "meter_zeroed_under_pressure",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "on it when it was zeroed",
        ("0.3 inH2O", "14 inH2O"),
        "3.5 inH2O",
    ),
    cause: "Somebody pressed the zero button with gas on the hose, and the manometer learned that \
            pressure as nothing.",
    right: &[Operate(ZeroMeter)],
    wrong: &[wrong(
        Turn(Screw::High),
        "Set to what the meter shows, the furnace gets as much too much as the meter \
            learned.",
    )],
    misfit: anywhere,
    apply: |setup, pa| {
        // It learned what it felt, its own error with it.
        setup.condition.meter.wear.learned_pa = pa + setup.meter.zero_error_pa;
    },
};

pub(crate) const HOLED_METER_HOSE: Entry = Entry {
    number: 60,
    name: "holed_meter_hose",
    family: FAMILY,
    severity: Severity::new(Scale::Diameter, "of the hole", ("0.2 mm", "4 mm"), "2 mm"),
    cause: "The manometer's hose is cracked: gas flows through the barb to the hole, and the meter \
            feels what is left.",
    right: &[Mend(SwapMeterHose)],
    wrong: &[wrong(
        Turn(Screw::High),
        "What reads right in a leaking hose is too much at the burners.",
    )],
    misfit: anywhere,
    apply: |setup, hole_m| setup.condition.meter.hose_hole_m = hole_m,
};

pub(crate) const WATER_IN_METER_HOSE: Entry = Entry {
    number: 61,
    name: "water_in_meter_hose",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "held back by the drops",
        ("0.05 inH2O", "1 inH2O"),
        "0.3 inH2O",
    ),
    cause: "Drops of water in the manometer's hose stick, and let a change of pressure by only when \
            it is large enough to move them.",
    right: &[Mend(SwapMeterHose)],
    wrong: &[wrong(
        Turn(Screw::High),
        "The drops hold the reading back, and the stage is set past it.",
    )],
    misfit: anywhere,
    apply: |setup, pa| setup.condition.meter.wear.water_pa = pa,
};

pub(crate) const PINCHED_METER_HOSE: Entry = Entry {
    number: 61,
    name: "pinched_meter_hose",
    family: FAMILY,
    severity: Severity::new(
        Scale::Time,
        "in which the reading comes most of its way",
        ("2 s", "60 s"),
        "20 s",
    ),
    cause: "The manometer's hose is pinched, and the pressure comes through slowly.",
    right: &[Mend(SwapMeterHose)],
    wrong: &[wrong(
        Turn(Screw::High),
        "The early number is not the pressure, and the stage is set past it.",
    )],
    misfit: anywhere,
    apply: |setup, time_s| setup.meter.lag_s = setup.meter.lag_s.max(time_s),
};

/// How much of a tapped hole is free.
const TAP: Severity = Severity::new(Scale::Diameter, "left free", ("0 mm", "0.1 mm"), "0.01 mm");

pub(crate) const BLOCKED_INLET_TAP: Entry = Entry {
    number: 62,
    name: "blocked_inlet_tap",
    family: FAMILY,
    severity: TAP,
    cause: "Sealant, paint or scale sits in the tapped hole of the inlet port.",
    right: &[Mend(CleanInletTap)],
    wrong: &[
        wrong(Mend(DrillInletTap), "The boss cracks and leaks."),
        wrong(
            Mend(ReplaceSupplyRegulator),
            "A sound regulator is swapped for want of a second place to measure.",
        ),
    ],
    misfit: anywhere,
    apply: |setup, free_m| setup.condition.ports[Port::Inlet].tap_free_m = Some(free_m),
};

pub(crate) const BLOCKED_MANIFOLD_TAP: Entry = Entry {
    number: 62,
    name: "blocked_manifold_tap",
    family: FAMILY,
    severity: TAP,
    cause: "Sealant, paint or scale sits in the tapped hole of the manifold port.",
    right: &[Mend(CleanManifoldTap)],
    wrong: &[
        wrong(Mend(DrillManifoldTap), "The boss cracks and leaks."),
        wrong(Mend(ReplaceGasValve), "A sound valve is swapped for want of a clean hole."),
    ],
    misfit: anywhere,
    apply: |setup, free_m| setup.condition.ports[Port::Manifold].tap_free_m = Some(free_m),
};

pub(crate) const METER_SET_TO_KILOPASCALS: Entry = Entry {
    number: 64,
    name: "meter_set_to_kilopascals",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The manometer was left at kilopascals: a quarter of the number in inches of water.",
    right: &[Operate(ChangeUnit)],
    wrong: &[wrong(
        Turn(Screw::High),
        "A quarter of the number is read as too little gas, and the screw ends at \
            its bottom.",
    )],
    misfit: anywhere,
    apply: |setup, _| setup.condition.meter.wear.unit = Some(PressureUnit::KPa),
};

pub(crate) const METER_SET_TO_MILLIBARS: Entry = Entry {
    number: 64,
    name: "meter_set_to_millibars",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The manometer was left at millibars: two and a half times the number in inches of water.",
    right: &[Operate(ChangeUnit)],
    wrong: &[wrong(
        Turn(Screw::High),
        "Two and a half times the number is read as too much gas, and the furnace is \
            starved.",
    )],
    misfit: anywhere,
    apply: |setup, _| setup.condition.meter.wear.unit = Some(PressureUnit::Mbar),
};

pub(crate) const LOW_METER_BATTERY: Entry = Entry {
    number: 65,
    name: "low_meter_battery",
    family: FAMILY,
    severity: Severity::new(
        Scale::Time,
        "until the display stands still",
        ("0 s", "7200 s"),
        "300 s",
    ),
    cause: "The manometer's battery is nearly flat: the display stands still, and then goes out.",
    right: &[Mend(ReplaceMeterBattery), Mend(BorrowMeter)],
    wrong: &[wrong(
        Turn(Screw::High),
        "A number that stands still is trusted, and the screw goes on turning.",
    )],
    misfit: anywhere,
    apply: |setup, time_s| setup.condition.meter.wear.battery_s = Some(time_s),
};

pub(crate) const SMALL_METER_RANGE: Entry = Entry {
    number: 65,
    name: "small_meter_range",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "that it shows at most",
        ("1 inH2O", "12 inH2O"),
        "5 inH2O",
    )
    .on_propane("10.5 inH2O"),
    cause: "The wrong manometer was brought: its range ends below the pressures of this job.",
    right: &[Mend(BorrowMeter)],
    wrong: &[wrong(Turn(Screw::High), "Turned down until a number shows, it is off the plate.")],
    misfit: anywhere,
    apply: |setup, pa| setup.meter.range_pa = pa,
};

pub(crate) const CROSS_THREADED_PLUG: Entry = Entry {
    number: 67,
    name: "cross_threaded_plug",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The plug of the manifold port was started with the key, across its thread.",
    right: &[Operate(RefitPlug), Mend(ReplaceGasValve)],
    wrong: &[wrong(Operate(TightenPlug), "More force strips the thread or cracks the boss.")],
    misfit: anywhere,
    apply: |setup, _| setup.condition.ports[Port::Manifold].plug = PlugFound::Leaning,
};

/// How loosely a plug stands in.
const LOOSE: Severity =
    Severity::new(Scale::Turns, "turns past finger-tight", ("0", "0.45"), "0.1");

pub(crate) const LOOSE_INLET_PLUG: Entry = Entry {
    number: 68,
    name: "loose_inlet_plug",
    family: FAMILY,
    severity: LOOSE,
    cause: "The plug of the inlet port was not tightened, or has no sealant on its thread.",
    right: &[Operate(TightenPlug)],
    wrong: &[wrong(
        Mend(ReplaceGasValve),
        "A sound valve is swapped for want of a turn with the key.",
    )],
    misfit: anywhere,
    apply: |setup, turns| setup.found.plugs_past_hand[Port::Inlet] = turns,
};

pub(crate) const LOOSE_MANIFOLD_PLUG: Entry = Entry {
    number: 68,
    name: "loose_manifold_plug",
    family: FAMILY,
    severity: LOOSE,
    cause: "The plug of the manifold port was not tightened, or has no sealant on its thread.",
    right: &[Operate(TightenPlug)],
    wrong: &[wrong(
        Mend(ReplaceGasValve),
        "A sound valve is swapped for want of a turn with the key.",
    )],
    misfit: anywhere,
    apply: |setup, turns| setup.found.plugs_past_hand[Port::Manifold] = turns,
};

pub(crate) const CRACKED_BOSS: Entry = Entry {
    number: 69,
    name: "cracked_boss",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The plug of the manifold port was driven in so hard that the boss has a crack.",
    right: &[Mend(ReplaceGasValve)],
    wrong: &[wrong(Operate(TightenPlug), "Each turn opens the crack further.")],
    misfit: anywhere,
    apply: |setup, _| {
        setup.condition.ports[Port::Manifold].plug = PlugFound::Cracked;
        setup.found.plugs_past_hand[Port::Manifold] = 1.5;
    },
};

pub(crate) const ADAPTER_LEFT_IN: Entry = Entry {
    number: 70,
    name: "adapter_left_in",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The barbed adapter was left in the manifold port instead of the plug, open to the room.",
    right: &[Operate(RefitPlug)],
    wrong: &[wrong(Operate(TryAgain), "Gas jets out of the bare adapter at every call.")],
    misfit: anywhere,
    apply: |setup, _| setup.condition.ports[Port::Manifold].plug = PlugFound::Adapter,
};

pub(crate) const FADED_ODORANT: Entry = Entry {
    number: 0,
    name: "faded_odorant",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the odour left", ("0", "0.6"), "0.15"),
    cause: "New pipe, soil or a long time in a steel tank has taken most of the odour out of the \
            gas.",
    right: &[CallOwner],
    wrong: &[wrong(
        Mend(ReplaceSupplyRegulator),
        "No part gives gas its smell back, and nose alone finds no leak meanwhile.",
    )],
    misfit: anywhere,
    apply: |setup, share| setup.condition.odorant.left = share,
};
