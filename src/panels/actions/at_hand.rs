//! Tools, the manometer and the clipboard: at hand everywhere.

use super::list::{List, put_down_label, take_label};
use crate::hands::action::Action;
use crate::parts::{Joint, JointVerdict, LowSide, OnOff, Tool};
use crate::senses::seen::{Display, Seen};
use crate::units::PressureUnit;

pub(super) fn add(id: &str, seen: &Seen, list: &mut List) {
    if let Some(tool) = Tool::from_id(id) {
        if tool == Tool::GasDetector {
            super::here::probe(seen, list);
        }
        match seen.hand {
            Some(held) => list.add(put_down_label(held), Action::PutDown),
            None => list.add(take_label(tool), Action::Take(tool)),
        }
    }
    match id {
        "meter" => {
            power(seen, list);
            zero(list);
            units(seen, list);
            low_side(seen, list);
        }
        "meter-power" => power(seen, list),
        "meter-zero" => zero(list),
        "meter-unit" => units(seen, list),
        "meter-minus" | "box-hose" => low_side(seen, list),
        "job-sheet" => {
            list.add(t!("piping-write-tight"), Action::WritePiping(JointVerdict::Tight));
            list.add(t!("piping-write-leaking"), Action::WritePiping(JointVerdict::Leaking));
            for &joint in Joint::ALL.iter().filter(|joint| seen.sheet.has_line_for(**joint)) {
                verdicts(joint, list);
            }
        }
        _ => {}
    }
}

fn power(seen: &Seen, list: &mut List) {
    match seen.meter.display {
        Display::Dark => list.add(t!("meter-on"), Action::MeterPower(OnOff::On)),
        Display::Number(_) | Display::OverRange => {
            list.add(t!("meter-off"), Action::MeterPower(OnOff::Off));
        }
    }
}

fn zero(list: &mut List) {
    list.add(t!("meter-zero"), Action::MeterZero);
}

fn units(seen: &Seen, list: &mut List) {
    for unit in PressureUnit::ALL {
        if unit != seen.meter.unit {
            list.add(t!("meter-unit", unit = unit.label()), Action::MeterUnit(unit));
        }
    }
}

fn low_side(seen: &Seen, list: &mut List) {
    match seen.meter.low_side {
        LowSide::Air => {
            list.add(t!("meter-low-side-box"), Action::MeterLowSide(LowSide::BurnerBox))
        }
        LowSide::BurnerBox => {
            list.add(t!("meter-low-side-air"), Action::MeterLowSide(LowSide::Air));
        }
    }
}

/// What a leak check at a joint showed, to be written down.
pub(super) fn verdicts(joint: Joint, list: &mut List) {
    let name = joint.label().to_lowercase();
    let tight = t!("joint-write-tight", joint = &name);
    list.add(tight, Action::WriteJoint { joint, verdict: JointVerdict::Tight });
    let leaking = t!("joint-write-leaking", joint = &name);
    list.add(leaking, Action::WriteJoint { joint, verdict: JointVerdict::Leaking });
}
