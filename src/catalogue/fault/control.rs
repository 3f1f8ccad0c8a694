//! Faults of control, safety devices and house air: many look like faults of the gas.

use super::entry::{Entry, Family, Scale, Severity, anywhere};
use super::remedy::Operation::{ResetAndLeave, ResetRollout, ValveSwitchOn};
use super::remedy::Remedy::{Mend, Operate, Turn};
use super::remedy::wrong;
use crate::appliance::safety::{Hose, SwitchState};
use crate::catalogue::repair::Repair::{
    BypassHighSwitch, BypassLimit, BypassLowSwitch, BypassRollout, CleanFlameRod, ClearTrap,
    MendBurnerGround, MendThermostatWire, OpenRegisters, PrimeTrap, RefitDraftHose,
    ReplaceControlBoard, ReplaceDraftHose, ReplaceFilter, ReplaceGasValve, ReplaceHighSwitch,
    ReplaceIgniter, ReplaceLowSwitch,
};
use crate::parts::{OnOff, Screw};
use crate::setup::{Tripped, Wire};

const FAMILY: Family = Family::Control;

pub(crate) const DIRTY_FLAME_ROD: Entry = Entry {
    number: 46,
    name: "dirty_flame_rod",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the flame current lost", ("0.2", "1"), "0.8"),
    cause: "A film of oxide on the flame rod holds the flame current back.",
    right: &[Mend(CleanFlameRod)],
    wrong: &[
        wrong(Turn(Screw::High), "More gas is to reach the rod, and overfires the furnace."),
        wrong(Mend(ReplaceGasValve), "A sound valve is swapped, and the flame is still not seen."),
    ],
    misfit: anywhere,
    apply: |setup, share| setup.condition.burners.rod_dirty = share,
};

pub(crate) const POOR_BURNER_GROUND: Entry = Entry {
    number: 47,
    name: "poor_burner_ground",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the flame current lost", ("0.2", "1"), "0.75"),
    cause: "Rust between burners and cabinet, or a crack in the rod's porcelain, keeps the flame \
            current from its way to ground.",
    right: &[Mend(MendBurnerGround)],
    wrong: &[wrong(
        Mend(ReplaceGasValve),
        "A sound valve is swapped, and the flame is still not seen.",
    )],
    misfit: anywhere,
    apply: |setup, share| setup.condition.burners.ground_poor = share,
};

pub(crate) const WEAK_IGNITER: Entry = Entry {
    number: 48,
    name: "weak_igniter",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of its heat lost", ("0.1", "1"), "0.5"),
    cause: "The igniter has aged or is cracked, and does not get hot enough to light gas.",
    right: &[Mend(ReplaceIgniter)],
    wrong: &[wrong(
        Turn(Screw::Low),
        "More gas gathers in front of an igniter that cannot light it.",
    )],
    misfit: anywhere,
    apply: |setup, share| setup.condition.burners.igniter_weak = share,
};

pub(crate) const LOW_PRESSURE_SWITCH_OPEN: Entry = Entry {
    number: 49,
    name: "low_pressure_switch_open",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The contact of the low pressure switch does not close, whatever the draft.",
    right: &[Mend(ReplaceLowSwitch)],
    wrong: &[wrong(
        Mend(BypassLowSwitch),
        "Nothing stops the burners any more when the flue is blocked.",
    )],
    misfit: anywhere,
    apply: |setup, _| setup.condition.sensing.low = SwitchState::StuckOpen,
};

pub(crate) const SPLIT_DRAFT_HOSE: Entry = Entry {
    number: 49,
    name: "split_draft_hose",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The hose from the exchanger to the pressure switches is split, and part of the draft is \
            lost on the way.",
    right: &[Mend(ReplaceDraftHose)],
    wrong: &[wrong(
        Mend(BypassHighSwitch),
        "High burns its gas whether or not the inducer brings its air.",
    )],
    misfit: anywhere,
    apply: |setup, _| setup.condition.sensing.hose = Hose::Split,
};

pub(crate) const DRAFT_HOSE_OFF: Entry = Entry {
    number: 49,
    name: "draft_hose_off",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The hose to the pressure switches has come off, and they feel nothing.",
    right: &[Mend(RefitDraftHose), Mend(ReplaceDraftHose)],
    wrong: &[wrong(
        Mend(BypassLowSwitch),
        "Nothing stops the burners any more when the flue is blocked.",
    )],
    misfit: anywhere,
    apply: |setup, _| setup.condition.sensing.hose = Hose::Off,
};

pub(crate) const LOW_PRESSURE_SWITCH_CLOSED: Entry = Entry {
    number: 50,
    name: "low_pressure_switch_closed",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The contact of the low pressure switch has welded and never opens.",
    right: &[Mend(ReplaceLowSwitch)],
    wrong: &[wrong(Mend(BypassLowSwitch), "A wire across a welded contact welds it for good.")],
    misfit: anywhere,
    apply: |setup, _| setup.condition.sensing.low = SwitchState::StuckClosed,
};

pub(crate) const BLOCKED_CONDENSATE_TRAP: Entry = Entry {
    number: 51,
    name: "blocked_condensate_trap",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "held off by the water",
        ("0.1 inH2O", "1.6 inH2O"),
        "0.45 inH2O",
    ),
    cause: "The trap is blocked, and condensate stands in the inducer housing and in the draft \
            hose.",
    right: &[Mend(ClearTrap)],
    wrong: &[wrong(
        Mend(BypassLowSwitch),
        "The water rises on, and the burners run without the draft that the switch \
            asks for.",
    )],
    misfit: anywhere,
    apply: |setup, pa| setup.condition.sensing.water_pa = pa,
};

pub(crate) const DRY_CONDENSATE_TRAP: Entry = Entry {
    number: 51,
    name: "dry_condensate_trap",
    family: FAMILY,
    severity: Severity::new(
        Scale::Share,
        "of the inducer's air let in by the trap",
        ("0.05", "0.7"),
        "0.2",
    ),
    cause: "The trap was never primed or has dried out, and the inducer draws room air through it \
            instead of air past the burners.",
    right: &[Mend(PrimeTrap)],
    wrong: &[wrong(
        Mend(BypassHighSwitch),
        "High burns its gas with the air that the trap takes away.",
    )],
    misfit: anywhere,
    apply: |setup, share| setup.condition.air.trap_leak = share,
};

pub(crate) const HIGH_PRESSURE_SWITCH_OPEN: Entry = Entry {
    number: 52,
    name: "high_pressure_switch_open",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The contact of the high pressure switch does not close, whatever the draft.",
    right: &[Mend(ReplaceHighSwitch)],
    wrong: &[wrong(
        Mend(BypassHighSwitch),
        "High burns its gas whether or not the inducer brings its air.",
    )],
    misfit: anywhere,
    apply: |setup, _| setup.condition.sensing.high = SwitchState::StuckOpen,
};

pub(crate) const BLOCKED_FILTER: Entry = Entry {
    number: 53,
    name: "blocked_filter",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the filter blocked", ("0.3", "0.98"), "0.88"),
    cause: "The filter is full of dust, and too little air takes the heat away.",
    right: &[Mend(ReplaceFilter)],
    wrong: &[wrong(Mend(BypassLimit), "The exchanger overheats with nothing to stop it.")],
    misfit: anywhere,
    apply: |setup, share| setup.condition.air.filter_blocked = share,
};

pub(crate) const CLOSED_REGISTERS: Entry = Entry {
    number: 53,
    name: "closed_registers",
    family: FAMILY,
    severity: Severity::new(Scale::Share, "of the registers closed", ("0.2", "0.95"), "0.88"),
    cause: "Too many registers are closed, and too little air takes the heat away.",
    right: &[Mend(OpenRegisters)],
    wrong: &[wrong(Mend(BypassLimit), "The exchanger overheats with nothing to stop it.")],
    misfit: anywhere,
    apply: |setup, share| setup.condition.air.registers_closed = share,
};

pub(crate) const TRIPPED_ROLL_OUT: Entry = Entry {
    number: 54,
    name: "tripped_roll_out",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "Flames came out of the burners once and opened a roll-out switch, which waits for a \
            hand.",
    right: &[Operate(ResetRollout)],
    wrong: &[
        wrong(Mend(BypassRollout), "The next flame that comes out burns on."),
        wrong(Operate(ResetAndLeave), "What drove the flames out is still there."),
    ],
    misfit: anywhere,
    apply: |setup, _| setup.condition.control.rollout = Tripped::Yes,
};

pub(crate) const VALVE_SWITCH_OFF: Entry = Entry {
    number: 55,
    name: "valve_switch_off",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The switch on the gas valve was left off.",
    right: &[Operate(ValveSwitchOn)],
    wrong: &[
        wrong(Mend(ReplaceIgniter), "A sound part is swapped for want of a look at the switch."),
        wrong(
            Mend(ReplaceControlBoard),
            "A sound part is swapped for want of a look at the switch.",
        ),
    ],
    misfit: anywhere,
    apply: |setup, _| setup.found.valve_switch = OnOff::Off,
};

pub(crate) const DEAD_THERMOSTAT_CIRCUIT: Entry = Entry {
    number: 56,
    name: "dead_thermostat_circuit",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The 24 volts do not come through: a broken wire or a dead thermostat.",
    right: &[Mend(MendThermostatWire)],
    wrong: &[wrong(Mend(ReplaceGasValve), "Work on gas cannot mend a wire.")],
    misfit: anywhere,
    apply: |setup, _| setup.condition.control.thermostat = Wire::Open,
};
