//! Faults from tank or main to the inlet port.

use super::entry::{Entry, Family, Scale, Severity, anywhere, meter, tank};
use super::remedy::Operation::{OpenManualValve, OpenSlowly, TryAgain};
use super::remedy::Remedy::{CallOwner, Mend, Operate, ShutOffAndTag, Turn};
use super::remedy::wrong;
use crate::appliance::safety::{LowGasSwitch, Points};
use crate::catalogue::repair::Repair::{
    BypassLowGasSwitch, ClearRegulatorVent, DrillRegulatorVent, EmptyDripLeg,
    FitTwoStageRegulators, FlameOnRegulator, PlugRegulatorVent, PurgeLine, RemoveInletScreen,
    ReplaceConnector, ReplaceControlBoard, ReplaceExcessFlowValve, ReplaceFirstStage,
    ReplaceGasValve, ReplaceIgniter, ReplaceLowGasSwitch, ReplaceSupplyRegulator, ReplaceTrunk,
    StraightenConnector, ThawRegulator,
};
use crate::parts::Screw;
use crate::physics::pipe::ehd_constants;
use crate::physics::valve::HandleAngle;
use crate::setup::{Bore, SeatState, Setup, SupplyKind};
use crate::units::PA_PER_INWC;

const FAMILY: Family = Family::Supply;
pub(crate) const SUPPLY_SET_LOW: Entry = Entry {
    number: 1,
    name: "supply_set_low",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "below the right setting",
        ("0.3 inH2O", "5 inH2O"),
        "3 inH2O",
    ),
    cause: "The spring of the supply regulator is backed off, so that less pressure lifts the \
            diaphragm and shuts the seat.",
    right: &[Turn(Screw::Supply), CallOwner],
    wrong: &[wrong(
        Turn(Screw::High),
        "The manifold reads no higher, the screw ends at its bottom, and the furnace \
            is overfired the day the supply is put right.",
    )],
    misfit: anywhere,
    apply: |setup, pa| move_supply(setup, -pa),
};

pub(crate) const SUPPLY_SET_HIGH: Entry = Entry {
    number: 2,
    name: "supply_set_high",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "above the right setting",
        ("0.3 inH2O", "8 inH2O"),
        "4 inH2O",
    )
    .on_propane("2.5 inH2O"),
    cause: "The spring of the supply regulator is screwed in too far, or is the wrong one, so that \
            the seat stays open up to a higher pressure.",
    right: &[Turn(Screw::Supply), CallOwner],
    wrong: &[wrong(
        Mend(ReplaceGasValve),
        "A sound valve is swapped, and the next one sees the same pressure beyond \
            what it may.",
    )],
    misfit: anywhere,
    apply: move_supply,
};

/// Spring and lock-up move alike.
fn move_supply(setup: &mut Setup, by_pa: f64) {
    let least_pa = setup.supply.droop_pa + 0.3 * PA_PER_INWC;
    let by_pa = by_pa.max(least_pa - setup.supply.set_pa);
    setup.supply.set_pa += by_pa;
    setup.supply.lockup_pa += by_pa;
}

pub(crate) const CREEPING_SUPPLY_SEAT: Entry = Entry {
    number: 3,
    name: "creeping_supply_seat",
    family: FAMILY,
    severity: Severity::new(
        Scale::Flow,
        "let by with the seat shut",
        ("0.01 ft3/h", "2 ft3/h"),
        "0.2 ft3/h",
    ),
    cause: "A nick or grit in the seat of the supply regulator lets gas by when it should be \
            shut, so that the pressure climbs while nothing burns.",
    right: &[Mend(ReplaceSupplyRegulator), CallOwner],
    wrong: &[wrong(
        Turn(Screw::Supply),
        "Set down until it looks right at rest, it starves everything while gas \
            flows, and the seat goes on failing.",
    )],
    misfit: anywhere,
    apply: |setup, flow| setup.condition.supply.lets_by_m3_s = flow,
};

pub(crate) const BLOCKED_REGULATOR_VENT: Entry = Entry {
    number: 4,
    name: "blocked_regulator_vent",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the vent blocked", ("0.9", "1"), "0.999"),
    cause: "Ice, an insect's nest or paint in the vent shuts the air in the bonnet in, so that it \
            works as a second, stiff spring on the diaphragm.",
    right: &[Mend(ClearRegulatorVent), Mend(ReplaceSupplyRegulator), CallOwner],
    wrong: &[
        wrong(
            Mend(DrillRegulatorVent),
            "The drill goes on into the diaphragm, and gas comes out of the vent.",
        ),
        wrong(
            Mend(PlugRegulatorVent),
            "With no breath left the regulator shuts late, and too much pressure reaches \
            the appliances.",
        ),
    ],
    misfit: anywhere,
    apply: |setup, share| setup.condition.supply.vent_blocked = share,
};

pub(crate) const TORN_REGULATOR_DIAPHRAGM: Entry = Entry {
    number: 5,
    name: "torn_regulator_diaphragm",
    family: FAMILY,
    severity: Severity::new(Scale::Diameter, "of the hole", ("0.3 mm", "4 mm"), "2 mm"),
    cause: "A split in the diaphragm lets gas into the bonnet and out of the vent, and the bonnet's \
            pressure helps the spring to hold the seat open.",
    right: &[ShutOffAndTag, Mend(ReplaceSupplyRegulator), CallOwner],
    wrong: &[wrong(
        Mend(PlugRegulatorVent),
        "The gas that came out of the vent now pushes the seat open, and the line's \
            pressure reaches the appliances.",
    )],
    misfit: anywhere,
    apply: |setup, hole_m| setup.condition.supply.diaphragm_hole_m = hole_m,
};

pub(crate) const UNDERSIZED_REGULATOR: Entry = Entry {
    number: 6,
    name: "undersized_regulator",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "lost at the flow `supply.droop_flow`, below its set pressure",
        ("0.8 inH2O", "5 inH2O"),
        "3 inH2O",
    )
    .on_propane("4 inH2O"),
    cause: "A regulator made for less gas than the house draws has to open far, and gives up \
            pressure for that.",
    right: &[Mend(ReplaceSupplyRegulator), CallOwner],
    wrong: &[wrong(
        Turn(Screw::Supply),
        "Set up until it holds under load, it stands too high whenever little is \
            drawn.",
    )],
    misfit: anywhere,
    apply: |setup, droop_pa| {
        let supply = &mut setup.supply;
        supply.droop_pa = supply.droop_pa.max(droop_pa.min(0.8 * supply.set_pa));
        supply.capacity_m3_s = supply.capacity_m3_s.min(1.3 * supply.droop_flow_m3_s);
    },
};

pub(crate) const UNDERSIZED_TRUNK: Entry = Entry {
    number: 7,
    name: "undersized_trunk",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the right diameter", ("0.5", "0.9"), "0.62"),
    cause: "The pipe that all appliances share is too narrow for their load; the drop goes with \
            about the fifth power of the diameter.",
    right: &[Mend(ReplaceTrunk), CallOwner],
    wrong: &[wrong(
        Turn(Screw::High),
        "Set to the plate with everything on, it overfires as soon as the others are \
            off.",
    )],
    misfit: anywhere,
    apply: |setup, share| {
        for run in &mut setup.trunk {
            run.bore = narrowed(run.bore, share);
        }
    },
};

/// A bore with a share of its diameter; of tubing the next smaller published size.
fn narrowed(bore: Bore, share: f64) -> Bore {
    match bore {
        Bore::Steel(id_m) => Bore::Steel(id_m * share),
        Bore::Copper(id_m) => Bore::Copper(id_m * share),
        Bore::Corrugated(ehd) => {
            let wanted = f64::from(ehd) * share;
            let known = |it: &u32| u16::try_from(*it).ok().and_then(ehd_constants).is_some();
            let smaller = (1..=ehd).rev().filter(known).find(|&it| f64::from(it) <= wanted);
            Bore::Corrugated(smaller.or_else(|| (1..=ehd).find(known)).unwrap_or(ehd))
        }
    }
}

pub(crate) const KINKED_CONNECTOR: Entry = Entry {
    number: 8,
    name: "kinked_connector",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the bore shut by the kink", ("0.3", "0.97"), "0.81")
        .on_propane("0.87"),
    cause: "The flexible connector behind the furnace was bent too sharply, and the kink leaves a \
            slit for the gas.",
    right: &[Mend(ReplaceConnector)],
    wrong: &[
        wrong(
            Mend(StraightenConnector),
            "The tube cracks where it was bent twice, and gas leaks behind the furnace.",
        ),
        wrong(
            Turn(Screw::High),
            "The screw comes to its bottom, and a new connector later makes it overfire.",
        ),
    ],
    misfit: anywhere,
    apply: |setup, share| setup.condition.line.connector_kinked = share,
};

pub(crate) const PARTLY_OPEN_MANUAL_VALVE: Entry = Entry {
    number: 9,
    name: "partly_open_manual_valve",
    family: FAMILY,
    severity: Severity::new(Scale::Angle, "degrees from shut", ("7", "60"), "9.7")
        .on_propane("8.7"),
    cause: "The handle of the furnace's manual valve was not turned all the way in line with the \
            pipe.",
    right: &[Operate(OpenManualValve)],
    wrong: &[wrong(
        Turn(Screw::High),
        "The screw comes to its bottom, and whoever opens the handle overfires the \
            furnace.",
    )],
    misfit: anywhere,
    apply: |setup, degrees| setup.found.manual_valve = angle(degrees),
};

pub(crate) const SHUT_MANUAL_VALVE: Entry = Entry {
    number: 10,
    name: "shut_manual_valve",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The furnace's manual valve was left shut.",
    right: &[Operate(OpenManualValve)],
    wrong: &[
        wrong(Mend(ReplaceIgniter), "A sound part is swapped for want of a look at the handle."),
        wrong(
            Mend(ReplaceControlBoard),
            "A sound part is swapped for want of a look at the handle.",
        ),
    ],
    misfit: anywhere,
    apply: |setup, _| setup.found.manual_valve = HandleAngle::SHUT,
};

fn angle(degrees: f64) -> HandleAngle {
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates")]
    let degrees = degrees.round().clamp(0.0, 90.0) as i16;
    HandleAngle::from_deg(degrees).unwrap_or(HandleAngle::OPEN)
}

pub(crate) const WATER_IN_LINE: Entry = Entry {
    number: 11,
    name: "water_in_line",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "head of the water in the sag",
        ("0.2 inH2O", "3 inH2O"),
        "1.5 inH2O",
    ),
    cause: "Without a drip leg, water has gathered in a sag of the branch; the gas throws it aside \
            and it runs back.",
    right: &[Mend(EmptyDripLeg)],
    wrong: &[wrong(
        Mend(RemoveInletScreen),
        "What the screen held back goes to the valve's seats, and they no longer \
            shut.",
    )],
    misfit: anywhere,
    apply: |setup, head_pa| setup.condition.line.water_pa = head_pa,
};

pub(crate) const LOW_MAIN_PRESSURE: Entry = Entry {
    number: 12,
    name: "low_main_pressure",
    family: FAMILY,
    severity: Severity::new(Scale::Pressure, "in the main", ("2 inH2O", "12 inH2O"), "6.5 inH2O"),
    cause: "The pressure in the utility's main is down, and the regulator cannot give more than it \
            gets.",
    right: &[CallOwner],
    wrong: &[wrong(
        Turn(Screw::Supply),
        "It is not the trainee's to turn, and once the main is right again \
            everything stands too high.",
    )],
    misfit: meter,
    apply: |setup, pa| setup.condition.supply.upstream_pa = Some(pa),
};

pub(crate) const LINE_REGULATOR_WIDE_OPEN: Entry = Entry {
    number: 13,
    name: "line_regulator_wide_open",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The regulator that should bring pounds down to inches has failed open or was left \
            out, and the line's whole pressure stands at the appliances.",
    right: &[ShutOffAndTag, CallOwner, Mend(ReplaceSupplyRegulator)],
    wrong: &[wrong(
        Turn(Screw::Low),
        "The screw has nothing to do with it, and the furnace stays under the line's \
            whole pressure.",
    )],
    misfit: meter,
    apply: |setup, _| setup.condition.supply.seat = SeatState::WideOpen,
};

pub(crate) const NEARLY_EMPTY_TANK: Entry = Entry {
    number: 14,
    name: "nearly_empty_tank",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the tank filled", ("0.00005", "0.1"), "0.0001"),
    cause: "What little liquid is left touches little of the tank's wall, so that it cools as it \
            boils and its pressure falls away.",
    right: &[CallOwner],
    wrong: &[wrong(
        Turn(Screw::High),
        "What is turned in to live with a low tank overfires after the next filling.",
    )],
    misfit: tank,
    apply: |setup, share| {
        if let SupplyKind::Tank { level, .. } = &mut setup.supply.kind {
            *level = share;
        }
        // Odorant boils off last: what is left of the liquid smells more (common practice).
        setup.condition.odorant.left = 2.0;
    },
};

pub(crate) const COLD_TANK: Entry = Entry {
    number: 15,
    name: "cold_tank",
    family: FAMILY,
    severity: Severity::new(
        Scale::Temperature,
        "of the liquid",
        ("-43.5 degF", "-22 degF"), // 11 psi at -20 degF carry a first stage of 10 (from memory)
        "-39.5 degF",
    ),
    cause: "In hard cold and at a high draw the liquid boils its own warmth away, and its vapour \
            pressure falls towards nothing.",
    right: &[CallOwner],
    wrong: &[
        wrong(
            Mend(FlameOnRegulator),
            "A flame at a tank or its regulator can start what nobody can stop.",
        ),
        wrong(
            Turn(Screw::High),
            "What is turned in on the coldest morning overfires on a mild day.",
        ),
    ],
    misfit: tank,
    apply: |setup, liquid_k| {
        setup.condition.supply.liquid_k = Some(liquid_k);
        // Only a cold day keeps the liquid so cold.
        setup.outside_k = setup.outside_k.min(liquid_k + 6.0);
    },
};

pub(crate) const FREEZING_REGULATOR: Entry = Entry {
    number: 16,
    name: "freezing_regulator",
    family: FAMILY,
    severity: Severity::new(
        Scale::Time,
        "of full flow until the orifice is shut",
        ("60 s", "1800 s"),
        "130 s",
    ),
    cause: "Moisture in the gas freezes in the regulator's orifice while gas flows, and thaws when \
            it rests.",
    right: &[Mend(ThawRegulator), CallOwner],
    wrong: &[wrong(
        Mend(FlameOnRegulator),
        "The flame splits the diaphragm, and gas comes out beside it.",
    )],
    misfit: tank,
    apply: |setup, time_s| setup.condition.supply.ices_up_s = Some(time_s),
};

pub(crate) const WEAK_FIRST_STAGE: Entry = Entry {
    number: 17,
    name: "weak_first_stage",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "between the stages",
        ("0.55 psi", "5 psi"),
        "1.35 psi",
    ),
    cause: "The first-stage regulator gives so little that the second stage stands wide open and \
            starves under the whole load.",
    right: &[Mend(ReplaceFirstStage), CallOwner],
    wrong: &[wrong(
        Turn(Screw::Supply),
        "The second stage stands wide open as it is; set up, it only stands too high \
            at rest.",
    )],
    misfit: tank,
    apply: |setup, pa| setup.condition.supply.upstream_pa = Some(pa),
};

pub(crate) const SINGLE_STAGE_REGULATOR: Entry = Entry {
    number: 18,
    name: "single_stage_regulator",
    family: FAMILY,
    severity: Severity::new(
        Scale::Temperature,
        "of the tank when it was set",
        ("30 degF", "100 degF"),
        "80 degF",
    ),
    cause: "One regulator stands straight on the tank; the tank's pressure, which goes with the \
            weather, pushes on its seat.",
    right: &[Mend(FitTwoStageRegulators), CallOwner],
    wrong: &[wrong(Turn(Screw::Supply), "Set for today's weather, it is wrong in the next.")],
    misfit: tank,
    apply: |setup, set_k| setup.condition.supply.single_stage_set_k = Some(set_k),
};

pub(crate) const EARLY_EXCESS_FLOW_VALVE: Entry = Entry {
    number: 19,
    name: "early_excess_flow_valve",
    family: FAMILY,
    severity: Severity::new(
        Scale::Flow,
        "at which it shuts",
        ("10 ft3/h", "300 ft3/h"),
        "110 ft3/h",
    )
    .on_propane("45 ft3/h"),
    cause: "The excess-flow valve has a weak spring or was chosen too small, slams shut at a flow \
            that the house draws, and bleeds until both sides are equal.",
    right: &[Operate(OpenSlowly), Mend(ReplaceExcessFlowValve), CallOwner],
    wrong: &[wrong(
        Turn(Screw::Supply),
        "The regulator is sound; set up it stands too high as soon as the valve \
            before it opens.",
    )],
    misfit: anywhere,
    apply: |setup, flow| setup.condition.supply.excess_flow_m3_s = Some(flow),
};

pub(crate) const EARLY_LOW_GAS_SWITCH: Entry = Entry {
    number: 19,
    name: "early_low_gas_switch",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "below which it opens",
        ("7 inH2O", "13 inH2O"),
        "12 inH2O",
    ),
    cause: "The propane kit's low-gas switch has drifted and opens at a pressure that is right.",
    right: &[Mend(ReplaceLowGasSwitch)],
    wrong: &[wrong(
        Mend(BypassLowGasSwitch),
        "Nothing stops the burners any more when the gas really runs short.",
    )],
    misfit: |setup| {
        (!setup.furnace.low_gas_switch).then_some("there is no low-gas switch on this furnace")
    },
    apply: |setup, opens_pa| {
        let closes_pa = opens_pa + 0.3 * PA_PER_INWC;
        setup.condition.control.low_gas =
            Some(LowGasSwitch::Fitted(Points { closes_pa, opens_pa }));
    },
};

pub(crate) const AIR_IN_LINE: Entry = Entry {
    number: 20,
    name: "air_in_line",
    family: FAMILY,
    severity: Severity::new(Scale::Volume, "of air", ("0.5 L", "60 L"), "8 L").on_propane("4 L"),
    cause: "After the line was open, air stands in it and must pass the burners before gas does.",
    right: &[Mend(PurgeLine)],
    wrong: &[
        wrong(
            Operate(TryAgain),
            "Air and gas are pushed into the burner chamber, and the light that comes at \
            last is a hard one.",
        ),
        wrong(Mend(ReplaceIgniter), "A sound part is swapped, and the air is still in the line."),
    ],
    misfit: anywhere,
    apply: |setup, m3| setup.condition.line.air_m3 = m3,
};
