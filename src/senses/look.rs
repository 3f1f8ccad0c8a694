//! Looking closely: what is noted, in words and as a finding that a program can use.

use super::seen::{Condition, Delivery, Finding, REGISTERS_SHOW};
use super::signs::FILM_SHOWS;
use crate::appliance::ignition::ControlState;
use crate::appliance::plate::GasFigures;
use crate::appliance::safety::Hose;
use crate::model::Model;
use crate::parts::Subject;
use crate::setup::{HoseState, SupplyKind};
use crate::units::{M_PER_IN, PA_PER_INWC, W_PER_BTU_H};

/// What a look at a subject tells, in words and as a finding; none where there is no such thing.
pub(crate) fn sight(model: &Model, subject: Subject) -> Option<(String, Finding)> {
    let good = |text: &str| (text.to_owned(), Finding::Condition(Condition::Good));
    let bad = |text: &str| (text.to_owned(), Finding::Condition(Condition::Bad));
    Some(match subject {
        Subject::Plate => plate(model),
        Subject::ConversionLabel => label(model),
        Subject::Orifices => {
            let stamp = &model.setup.furnace.orifice_stamp;
            let text = format!("Orifices stamped {stamp}.{}", plugged(model));
            (text, Finding::Stamp(stamp.clone()))
        }
        Subject::SpringMark => {
            let fuel = model.setup.furnace.springs_for;
            (format!("Springs marked for {}.", fuel.label()), Finding::SpringsFor(fuel))
        }
        Subject::LowGasSwitch => {
            if model.setup.furnace.low_gas_switch {
                good("Low gas switch of the propane kit, wired in.")
            } else {
                ("No low gas switch here.".into(), Finding::Absent)
            }
        }
        Subject::SupplyVent
        | Subject::Vent
        | Subject::AirOpening
        | Subject::Connector
        | Subject::DripLeg
        | Subject::Filter
        | Subject::FlameRod
        | Subject::Registers => by_eye(model, subject)?,
        Subject::DraftHose => draft_hose(model),
        Subject::BoxHose => match model.setup.condition.valve.box_hose {
            HoseState::On => good("The hose from the burner box to the gas valve is on and whole."),
            HoseState::Off => bad("The hose from the burner box to the gas valve is off."),
        },
        Subject::Flames => flames_note(model),
        Subject::TankGauge => {
            let level = 100.0 * model.gas.tank()?.level();
            let level = (level / 5.0).round() * 5.0;
            (format!("The tank gauge stands at {level:.0} %."), Finding::Number(level))
        }
        Subject::MeterDial => {
            let turns = model.gas.dial_turns()?;
            let SupplyKind::Meter { dial_m3 } = model.setup.supply.kind else { return None };
            let feet = dial_m3 / crate::units::M3_PER_FT3;
            (
                format!("Test dial of {feet} ft³ a turn; it stands at {:.2}.", turns % 1.0),
                Finding::Number(turns),
            )
        }
        Subject::CoAlarm => good("The CO alarm shows 0 ppm."),
        Subject::StatusLamp => (
            format!("The control says: {}.", model.furnace.status()),
            Finding::Condition(control_condition(model.furnace.control_state())),
        ),
        Subject::SupplyRegulator => nameplate(model),
    })
}

/// What is seen of an orifice that is narrower than the others.
fn plugged(model: &Model) -> &'static str {
    let holes_m = &model.setup.furnace.orifices_m;
    let widest_m = holes_m.iter().copied().fold(0.0, f64::max);
    if holes_m.iter().any(|&hole_m| hole_m < 0.9 * widest_m) {
        " Something sits in one of them."
    } else {
        ""
    }
}

/// What a look at a passage for gas or air tells: what blocks it can be seen.
fn by_eye(model: &Model, subject: Subject) -> Option<(String, Finding)> {
    let condition = &model.setup.condition;
    let (blocked, bad, good) = match subject {
        Subject::SupplyVent => (
            condition.supply.vent_blocked,
            "The regulator's vent is closed up: ice, mud or paint sits in it.",
            "The regulator's vent is open and points down.",
        ),
        Subject::Vent => (
            condition.air.vent_blocked,
            "Something sits in the end of the flue.",
            "The flue runs outside by itself, joints closed.",
        ),
        Subject::AirOpening => (
            condition.air.intake_blocked,
            "The air opening is partly covered.",
            "The air opening is free.",
        ),
        Subject::Connector if condition.line.connector_crack_m > 0.0 => (
            condition.line.connector_crack_m,
            "The connector has been bent straight; the tube is creased there.",
            "",
        ),
        Subject::Connector => (
            condition.line.connector_kinked,
            "The connector has a kink behind the furnace.",
            "The connector is whole, not kinked, outside the cabinet.",
        ),
        Subject::DripLeg => (
            condition.line.water_pa,
            "There is no drip leg, and the branch sags.",
            "The drip leg hangs below the tee, capped.",
        ),
        Subject::Filter => (
            condition.air.filter_blocked,
            "The filter is grey and matted with dust.",
            "The filter is clean and in place.",
        ),
        Subject::FlameRod => (
            condition.burners.rod_dirty - FILM_SHOWS,
            "The flame rod has a pale film on it.",
            "The flame rod is clean, and its tip reaches into the flame's place.",
        ),
        Subject::Registers => (
            condition.air.registers_closed - REGISTERS_SHOW,
            "Many of the registers are closed.",
            "The registers stand open.",
        ),
        Subject::Plate
        | Subject::ConversionLabel
        | Subject::Orifices
        | Subject::SpringMark
        | Subject::LowGasSwitch
        | Subject::Flames
        | Subject::TankGauge
        | Subject::MeterDial
        | Subject::CoAlarm
        | Subject::StatusLamp
        | Subject::SupplyRegulator
        | Subject::DraftHose
        | Subject::BoxHose => return None,
    };
    Some(if blocked > 0.0 {
        (bad.to_owned(), Finding::Condition(Condition::Bad))
    } else {
        (good.to_owned(), Finding::Condition(Condition::Good))
    })
}

/// Hose and trap between the inducer and its switches: what is off, split, wet or dry.
fn draft_hose(model: &Model) -> (String, Finding) {
    let condition = &model.setup.condition;
    let mut seen = Vec::new();
    match condition.sensing.hose {
        Hose::Sound => {}
        Hose::Split => seen.push("The draft hose is split near its end."),
        Hose::Off => seen.push("The draft hose has come off and hangs down."),
    }
    if condition.sensing.water_pa > 0.0 {
        seen.push("Water stands in the inducer's housing and in the hose.");
    }
    if condition.air.trap_leak > 0.0 {
        seen.push("The condensate trap is dry.");
    }
    if seen.is_empty() {
        let text = "The draft hose is on at both ends, and the trap holds water.";
        return (text.to_owned(), Finding::Condition(Condition::Good));
    }
    (seen.join(" "), Finding::Condition(Condition::Bad))
}

fn plate(model: &Model) -> (String, Finding) {
    let plate = &model.setup.furnace.plate;
    let kbtu = |w: f64| w / W_PER_BTU_H;
    let text = format!(
        "Model {}. {} Input {:.0} / {:.0} Btu/h. Gas valve: at most {:.1} in. w.c.",
        plate.model,
        figures(&plate.made_for),
        kbtu(plate.input_high.si()),
        kbtu(plate.input_low.si()),
        plate.valve_max.si() / PA_PER_INWC,
    );
    (text, Finding::Figures(plate.made_for.clone()))
}

fn label(model: &Model) -> (String, Finding) {
    match &model.setup.furnace.plate.converted_to {
        Some(label) => (
            format!("This furnace has been converted. {}", figures(label)),
            Finding::Figures(label.clone()),
        ),
        None => ("There is no conversion label.".into(), Finding::Absent),
    }
}

fn nameplate(model: &Model) -> (String, Finding) {
    let supply = &model.setup.supply;
    let (lowest_pa, highest_pa) = supply.delivery_limits_pa;
    let inwc = |pa: f64| pa / PA_PER_INWC;
    (
        format!(
            "Delivers {:.1} to {:.1} in. w.c.; at rest at most {:.1}.",
            inwc(lowest_pa),
            inwc(highest_pa),
            inwc(supply.lockup_max_pa),
        ),
        Finding::Delivery(Delivery { lowest_pa, highest_pa, rest_pa: supply.lockup_max_pa }),
    )
}

fn flames_note(model: &Model) -> (String, Finding) {
    let all = model.furnace.looks().count();
    let flames: Vec<_> = model.furnace.looks().flatten().collect();
    let lit = flames.len();
    let yellow = flames.iter().fold(0.0, |most: f64, flame| most.max(flame.yellow));
    let flames = |n: usize| if n == 1 { "flame" } else { "flames" };
    if lit == 0 {
        ("No burner is lit.".into(), Finding::Absent)
    } else if lit < all {
        let text = format!("{lit} of {} burners lit.", COUNTS[all.min(COUNTS.len() - 1)]);
        (text, Finding::Condition(Condition::Bad))
    } else {
        let count = capital(COUNTS[all.min(COUNTS.len() - 1)]);
        let (looks, condition) = if yellow < 0.3 {
            (format!("blue {}, steady, into the tubes", flames(all)), Condition::Good)
        } else {
            (format!("{} with long yellow tips", flames(all)), Condition::Bad)
        };
        (format!("{count} {looks}."), Finding::Condition(condition))
    }
}

/// Whether the control's state is one that calls for somebody.
fn control_condition(state: ControlState) -> Condition {
    match state {
        ControlState::Retry
        | ControlState::Lockout
        | ControlState::LimitOpen
        | ControlState::RolloutOpen => Condition::Bad,
        ControlState::Standby
        | ControlState::InducerStart
        | ControlState::PressureSwitchProving
        | ControlState::PrePurge
        | ControlState::IgniterWarmUp
        | ControlState::TrialForIgnition
        | ControlState::FlameProving
        | ControlState::BlowerOnDelay
        | ControlState::LowStage
        | ControlState::HighStageCall
        | ControlState::HighInducer
        | ControlState::HighPressureSwitchProving
        | ControlState::HighStage
        | ControlState::PostPurge
        | ControlState::BlowerOffDelay => Condition::Good,
    }
}

/// Numbers of burners in words.
const COUNTS: [&str; 10] =
    ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "many"];

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn figures(figures: &GasFigures) -> String {
    let inwc = |pa: f64| pa / PA_PER_INWC;
    let d = usize::from(figures.decimals);
    format!(
        "For {}: inlet {:.1} to {:.1}, manifold low {:.d$} ± {:.d$}, high {:.d$} ± {:.d$} in. w.c., \
         orifice {} ({:.4} in.).",
        figures.fuel.label(),
        inwc(figures.inlet_min_pa),
        inwc(figures.inlet_max_pa),
        inwc(figures.low.pa),
        inwc(figures.low.tolerance_pa),
        inwc(figures.high.pa),
        inwc(figures.high.tolerance_pa),
        figures.orifice_stamp,
        figures.orifice_m / M_PER_IN,
    )
}
