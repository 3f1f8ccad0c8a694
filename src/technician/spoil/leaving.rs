//! Closing, restoring, handing over: spoiled.

use super::*;

/// The ways.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil {
        name: "low cap left off",
        job: PROPANE,
        trips: &["cap-off"],
        change: |_, a| drop_if(*a == Action::Cap { screw: Screw::Low, to: Fitted::On }),
        hurry: never,
    },
    Spoil {
        name: "low not written again with the cap on",
        job: PROPANE,
        trips: &["not-read-with-cap"],
        change: |_, a| drop_if(is_write(a, Port::Manifold, Stage::Low, Phase::Left)),
        hurry: never,
    },
    Spoil {
        name: "the supplier's regulator turned",
        job: PROPANE,
        trips: &["supply-not-yours"],
        change: |_, a| {
            if *a == Action::Look(Subject::SupplyVent) {
                Change::After(vec![
                    Action::PutDown,
                    Action::Take(Tool::SlottedDriver),
                    Action::Cap { screw: Screw::Supply, to: Fitted::Off },
                    Action::Turn { screw: Screw::Supply, eighths: 1 },
                    Action::Cap { screw: Screw::Supply, to: Fitted::On },
                    Action::PutDown,
                    Action::Take(Tool::GasDetector),
                ])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "own supply left too low",
        job: NATURAL,
        trips: &["supply-left-low"],
        change: |_, a| drop_if(matches!(a, Action::Turn { screw: Screw::Supply, .. })),
        hurry: never,
    },
    Spoil {
        name: "a wire left across the roll-out switches",
        job: NATURAL,
        trips: &["safety-bypassed"],
        change: |_, a| mend_after(*a == START_INLET, Repair::BypassRollout),
        hurry: never,
    },
    Spoil {
        name: "orifices drilled out",
        job: NATURAL,
        trips: &["dangerous-repair"],
        change: |_, a| mend_after(*a == START_INLET, Repair::DrillOrifices),
        hurry: never,
    },
    Spoil {
        name: "sound igniter replaced",
        job: PROPANE,
        trips: &["needless-repair"],
        change: |_, a| mend_after(*a == START_INLET, Repair::ReplaceIgniter),
        hurry: never,
    },
    Spoil {
        name: "line purged at the union, no fluid there",
        job: NATURAL,
        trips: &["joint-unchecked"],
        change: |_, a| mend_after(*a == START_INLET, Repair::PurgeLine),
        hurry: never,
    },
    Spoil {
        name: "supply not written again at rest after it was set",
        job: NATURAL,
        trips: &["supply-not-rechecked"],
        change: |_, a| drop_if(is_write(a, Port::Inlet, Stage::Rest, Phase::Left)),
        hurry: never,
    },
    Spoil {
        name: "window left open",
        job: PROPANE,
        trips: &["controls-not-restored"],
        change: |_, a| drop_if(matches!(a, Action::Window { to: Opening::Closed, .. })),
        hurry: never,
    },
    Spoil {
        name: "owner called before anything was read",
        job: PROPANE,
        trips: &["owner-not-called"],
        change: |p, a| {
            let call = Action::Call(Contact::SupplyOwner);
            if *a == Action::Look(Subject::SupplyVent) {
                Change::After(vec![call])
            } else {
                drop_if(*a == call && !p.done.is_empty())
            }
        },
        hurry: never,
    },
    Spoil {
        name: "low gas switch not looked at",
        job: PROPANE,
        trips: &["conversion-not-proven"],
        change: |_, a| drop_if(*a == Action::Look(Subject::LowGasSwitch)),
        hurry: never,
    },
    Spoil {
        name: "inlet plug started with the key",
        job: NATURAL,
        trips: &["cross-thread-left"],
        change: |_, a| match a {
            a if *a == START_INLET => Change::Instead(vec![Action::Plug {
                port: Port::Inlet,
                step: PlugStep::StartByKey,
            }]),
            Action::Plug { port: Port::Inlet, step: PlugStep::SpinIn } => Change::Drop,
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: "inlet plug cross-threaded, taken out and started again",
        job: NATURAL,
        trips: &["cross-thread-caught"],
        change: |_, a| {
            if *a == START_INLET {
                let step = |step| Action::Plug { port: Port::Inlet, step };
                Change::Before(vec![step(PlugStep::StartByKey), step(PlugStep::SpinOut)])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "inlet plug left short of snug, bubbles ignored",
        job: NATURAL,
        trips: &["bubbles-left", "plug-loose"],
        change: |_, a| {
            if *a == TIGHTEN_INLET {
                Change::Instead(vec![Action::Plug {
                    port: Port::Inlet,
                    step: PlugStep::Tighten(2),
                }])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "inlet boss cracked, bubbles ignored",
        job: NATURAL,
        trips: &["boss-cracked", "bubbles-left"],
        change: |_, a| {
            if *a == TIGHTEN_INLET { Change::After(vec![TIGHTEN_INLET]) } else { Change::Keep }
        },
        hurry: never,
    },
    Spoil {
        name: "inlet plug not leak-checked",
        job: NATURAL,
        trips: &["joint-unchecked"],
        change: |p, a| drop_if(p.count(&TIGHTEN_INLET) > 0 && joint_work(a, Joint::InletPort)),
        hurry: never,
    },
    Spoil {
        name: "manifold plug wiped at once",
        job: NATURAL,
        trips: &["joint-checked-wrongly"],
        change: keep,
        hurry: |p| {
            let second = p.count(&Action::LeakFluid(Joint::ManifoldPort)) == 2;
            at_once_if(second && p.last_is(|a| *a == Action::LeakFluid(Joint::ManifoldPort)))
        },
    },
    Spoil {
        name: "wire between R and W2 left on",
        job: NATURAL,
        trips: &["jumper-left"],
        change: |p, a| {
            let closed =
                p.count(&Action::Plug { port: Port::Manifold, step: PlugStep::Tighten(6) }) > 0;
            drop_if(closed && *a == Action::StageJumper(Fitted::Off))
        },
        hurry: never,
    },
    Spoil {
        name: "valve switch left off",
        job: NATURAL,
        trips: &["valve-switch-off"],
        change: |p, a| {
            if *a == BURNER_DOOR_ON {
                Change::Before(kneel(p, vec![Action::ValveSwitch(OnOff::Off)]))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "manual valve left part open",
        job: NATURAL,
        trips: &["cock-not-open"],
        change: |_, a| {
            if *a == BURNER_DOOR_ON {
                Change::Before(vec![Action::Cock { cock: Cock::Furnace, degrees: 60 }])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "manual valve left closed",
        job: NATURAL,
        trips: &["cock-not-open"],
        change: |_, a| {
            if *a == BURNER_DOOR_ON {
                Change::Before(vec![Action::Cock { cock: Cock::Furnace, degrees: 0 }])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "burner door left off",
        job: NATURAL,
        trips: &["door-off"],
        change: |_, a| drop_if(*a == BURNER_DOOR_ON),
        hurry: never,
    },
    Spoil {
        name: "range left off",
        job: NATURAL,
        trips: &["others-not-restored"],
        change: |p, a| {
            let on = Action::Neighbor { neighbor: Neighbor::Range, to: OnOff::On };
            drop_if(p.closing() && *a == on)
        },
        hurry: never,
    },
    Spoil {
        name: "thermostat not set back",
        job: PROPANE,
        trips: &["controls-not-restored"],
        change: |p, a| {
            // The found setpoint of this job is 68 °F.
            drop_if(p.closing() && *a == Action::Setpoint(136))
        },
        hurry: never,
    },
    Spoil {
        name: "no final cycle",
        job: PROPANE,
        trips: &["no-final-cycle"],
        change: |p, a| {
            let call = matches!(a, Action::Setpoint(half_f) if *half_f != 136)
                || (*a == Action::ThermostatMode(OnOff::On) && !p.closing_restores());
            drop_if(p.closing() && call)
        },
        hurry: |p| at_once_if(p.closing()),
    },
    Spoil {
        name: "supplier not called",
        job: PROPANE,
        trips: &["owner-not-called"],
        change: |_, a| drop_if(*a == Action::Call(Contact::SupplyOwner)),
        hurry: never,
    },
    Spoil {
        name: "handed over as if all were well",
        job: PROPANE,
        trips: &["wrong-ending"],
        change: |_, a| match a {
            Action::HandOver(said) => Change::Instead(vec![Action::HandOver(HandOver {
                ending: Ending::InService,
                not_done: said.not_done.clone(),
            })]),
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: "work not done not named",
        job: NATURAL,
        trips: &["not-done-unsaid"],
        change: |_, a| match a {
            Action::HandOver(said) => Change::Instead(vec![Action::HandOver(HandOver {
                ending: said.ending,
                not_done: Vec::new(),
            })]),
            _ => Change::Keep,
        },
        hurry: never,
    },
];

/// A repair after an action, if it is the one.
fn mend_after(now: bool, repair: Repair) -> Change {
    if now { Change::After(vec![Action::Mend(repair)]) } else { Change::Keep }
}
