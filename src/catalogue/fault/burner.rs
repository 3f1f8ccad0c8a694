//! Faults of burners, air and altitude.

use super::entry::{Entry, Family, Scale, Severity, anywhere, meter};
use super::remedy::Remedy::{CallOwner, Mend, ShutOffAndTag, Turn};
use super::remedy::wrong;
use crate::catalogue::repair::Repair::{
    BypassLowSwitch, BypassRollout, CleanBurners, CleanOrifices, ClearIntake, ClearVent,
    DrillOrifices, FitAltitudeOrifices, FitOrifices,
};
use crate::parts::Screw;
use crate::units::P_STD_PA;

const FAMILY: Family = Family::Burner;

pub(crate) const PLUGGED_ORIFICE: Entry = Entry {
    number: 39,
    name: "plugged_orifice",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the third orifice blocked", ("0.2", "1"), "1"),
    cause: "A spider's web or scale sits in one orifice.",
    right: &[Mend(CleanOrifices), Mend(FitOrifices)],
    wrong: &[
        wrong(
            Turn(Screw::High),
            "The burners that are free are overfired to make up for the one that is not.",
        ),
        wrong(
            Mend(DrillOrifices),
            "No drilled hole is the size that is stamped, and all of them pass too much.",
        ),
    ],
    misfit: |setup| {
        (setup.furnace.orifices_m.len() < 4).then_some("this furnace has fewer than four burners")
    },
    apply: |setup, share| {
        if let Some(hole_m) = setup.furnace.orifices_m.get_mut(2) {
            *hole_m *= (1.0 - share).max(0.0).sqrt();
        }
    },
};

pub(crate) const OVERSIZE_ORIFICES: Entry = Entry {
    number: 40,
    name: "oversize_orifices",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "more area than right", ("0.03", "0.8"), "0.15"),
    cause: "The orifices were drilled out, or are a size too large.",
    right: &[Mend(FitOrifices)],
    wrong: &[wrong(Turn(Screw::High), "Lower pressure draws in too little air for the flame.")],
    misfit: anywhere,
    apply: |setup, share| {
        for hole_m in &mut setup.furnace.orifices_m {
            *hole_m *= (1.0 + share).sqrt();
        }
    },
};

pub(crate) const LEAN_GAS: Entry = Entry {
    number: 41,
    name: "lean_gas",
    family: FAMILY,
    severity: Severity::new(
        Scale::HeatingValue,
        "of the gas",
        ("850 Btu/ft3", "1000 Btu/ft3"),
        "930 Btu/ft3",
    ),
    cause: "The utility sends a leaner gas than usual, as at the peak of winter.",
    right: &[CallOwner],
    wrong: &[wrong(Turn(Screw::High), "When the usual gas is back, the furnace is overfired.")],
    misfit: meter,
    apply: |setup, heating_value| {
        let gas = &mut setup.gas;
        let share = heating_value / gas.heating_value_j_m3;
        gas.heating_value_j_m3 = heating_value;
        gas.air_per_gas *= share;
        let heavier = 0.62 / gas.specific_gravity;
        gas.specific_gravity = 0.62;
        // The neighbours keep their orifices: they draw what those pass, and make less of it.
        for neighbor in setup.neighbors.values_mut() {
            neighbor.input_w *= share / heavier.sqrt();
        }
    },
};

pub(crate) const NOT_DERATED_FOR_ALTITUDE: Entry = Entry {
    number: 42,
    name: "not_derated_for_altitude",
    family: FAMILY,
    severity: Severity::new(Scale::Height, "above the sea", ("2000 ft", "10000 ft"), "6500 ft"),
    cause: "High above the sea the fans move less air by mass, and nothing was changed for it at \
            orifices or pressure switches.",
    right: &[Mend(FitAltitudeOrifices), ShutOffAndTag],
    wrong: &[wrong(Turn(Screw::High), "Below its pressure the flame yellows and burns back.")],
    misfit: anywhere,
    // ICAO standard atmosphere (Doc 7488).
    apply: |setup, height_m| {
        setup.ambient_abs_pa = P_STD_PA * libm::pow(1.0 - 2.255_77e-5 * height_m, 5.255_88);
    },
};

pub(crate) const DELAYED_IGNITION: Entry = Entry {
    number: 43,
    name: "delayed_ignition",
    family: FAMILY,
    severity: Severity::new(
        Scale::Time,
        "by which gas reaches the igniter late",
        ("0.5 s", "4 s"),
        "3 s",
    ),
    cause: "The igniter stands out of place, or the first burner is dirty, so that gas gathers \
            before it meets the hot surface.",
    right: &[Mend(CleanBurners)],
    wrong: &[wrong(
        Turn(Screw::Low),
        "More gas gathers before it meets the igniter, and the light is harder.",
    )],
    misfit: anywhere,
    apply: |setup, late_s| setup.condition.burners.late_s = late_s,
};

pub(crate) const HOLED_EXCHANGER: Entry = Entry {
    number: 44,
    name: "holed_exchanger",
    family: FAMILY,
    severity: Severity::new(
        Scale::Share,
        "of the burners' air let in by the blower",
        ("0.05", "0.6"),
        "0.25",
    ),
    cause: "A crack in the heat exchanger lets the blower push house air in, which the inducer then \
            does not draw past the burners.",
    right: &[ShutOffAndTag],
    wrong: &[wrong(
        Mend(BypassRollout),
        "Nothing stops the burners any more when the flames come out.",
    )],
    misfit: anywhere,
    apply: |setup, share| setup.condition.burners.exchanger_hole = share,
};

pub(crate) const BLOCKED_VENT: Entry = Entry {
    number: 45,
    name: "blocked_vent",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the vent's area blocked", ("0.2", "0.98"), "0.42"),
    cause: "Leaves, a nest or ice sit in the vent, and the inducer moves less air.",
    right: &[Mend(ClearVent)],
    wrong: &[
        wrong(
            Turn(Screw::High),
            "Less gas suits the little air, and the flue is as blocked as before.",
        ),
        wrong(Mend(BypassLowSwitch), "The burners light with no draft, and make carbon monoxide."),
    ],
    misfit: anywhere,
    apply: |setup, share| setup.condition.air.vent_blocked = share,
};

pub(crate) const BLOCKED_INTAKE: Entry = Entry {
    number: 45,
    name: "blocked_intake",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the intake's area blocked", ("0.2", "0.98"), "0.5"),
    cause: "The opening that brings air for burning is covered, and the inducer moves less air.",
    right: &[Mend(ClearIntake)],
    wrong: &[wrong(
        Turn(Screw::High),
        "Less gas suits the little air, and the opening is as covered as before.",
    )],
    misfit: anywhere,
    apply: |setup, share| setup.condition.air.intake_blocked = share,
};
