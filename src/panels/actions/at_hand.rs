//! Tools and the clipboard, at hand everywhere, and the manometer where it is in sight.

use super::list::{List, put_down_label, take_label};
use crate::hands::action::Action;
use crate::parts::{Joint, JointVerdict, LowSide, OnOff, Tool};
use crate::senses::seen::{Display, MeterSeen, Seen};
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
    let Some(meter) = seen.meter() else { return sheet(id, seen, list) };
    match id {
        "meter" => {
            power(meter, list);
            zero(list);
            units(meter, list);
            low_side(meter, list);
        }
        "meter-power" => power(meter, list),
        "meter-zero" => zero(list),
        "meter-unit" => units(meter, list),
        "meter-minus" | "box-hose" => low_side(meter, list),
        _ => sheet(id, seen, list),
    }
}

fn sheet(id: &str, seen: &Seen, list: &mut List) {
    if id != "job-sheet" {
        return;
    }
    list.add(t!("piping-write-tight"), Action::WritePiping(JointVerdict::Tight));
    list.add(t!("piping-write-leaking"), Action::WritePiping(JointVerdict::Leaking));
    for &joint in Joint::ALL.iter().filter(|joint| seen.sheet.has_line_for(**joint)) {
        verdicts(joint, list);
    }
}

fn power(meter: &MeterSeen, list: &mut List) {
    match meter.display {
        Display::Dark => list.add(t!("meter-on"), Action::MeterPower(OnOff::On)),
        Display::Number(_) | Display::OverRange => {
            list.add(t!("meter-off"), Action::MeterPower(OnOff::Off));
        }
    }
}

fn zero(list: &mut List) {
    list.add(t!("meter-zero"), Action::MeterZero);
}

fn units(meter: &MeterSeen, list: &mut List) {
    for unit in PressureUnit::ALL {
        if unit != meter.unit {
            list.add(t!("meter-unit", unit = unit.label()), Action::MeterUnit(unit));
        }
    }
}

fn low_side(meter: &MeterSeen, list: &mut List) {
    match meter.low_side {
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
