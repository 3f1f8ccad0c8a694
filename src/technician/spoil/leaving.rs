//! Closing, restoring, handing over: spoiled.

use super::*;

/// Ways of spoiling what stands at the end of a job.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil {
        name: id!("spoil-low-cap-left-off"),
        // Another gas valve brings another cap.
        besides: |g| {
            let another = |repair| repair == Repair::ReplaceGasValve;
            g.turns(g.first_screw())
                && g.in_use()
                && !g.mends_after_turning(g.first_screw(), another)
        },
        trips: &["cap-off"],
        heeds: Heeds::Faults,
        change: |p, a| drop_if(*a == Action::Cap { screw: p.good.first_screw(), to: Fitted::On }),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-low-not-written-again-with-the-cap-on"),
        // After a repair both stages are read again from the beginning.
        besides: |g| {
            g.turns(g.first_screw())
                && g.in_use()
                && !g.mends_after_turning(g.first_screw(), |_| true)
        },
        trips: &["not-read-with-cap"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(is_write(a, Port::Manifold, At::First, Phase::Left)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-the-suppliers-regulator-turned"),
        besides: Good::in_use,
        trips: &["supply-not-yours"],
        heeds: Heeds::Faults,
        change: |p, a| {
            if *a == Action::Look(Subject::SupplyVent) {
                // There and back, so that what is read after it is what was found.
                let mut pieces = turned(p, Screw::Supply, &[1, -1]);
                pieces.push(Goal::InHand(Tool::GasDetector).into());
                Change::After(pieces)
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-own-supply-left-too-low"),
        // Starved, the furnace hides whatever else there is to find.
        besides: |g| (g.turns_no_stage() && g.mends_nothing()) || !g.low_supply_starves,
        trips: &["supply-left-low"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(matches!(a, Action::Turn { screw: Screw::Supply, .. })),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-jumper-left-across-the-roll-out-switches"),
        besides: uses_and_mends_nothing,
        trips: &["safety-bypassed"],
        heeds: Heeds::Faults,
        change: |_, a| mend_after(*a == START_INLET, Repair::BypassRollout),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-orifices-drilled-out"),
        // With one level it lights at its full rate: whether a cycle then comes to its end, and so
        // what the drill costs, hangs on the seed.
        besides: |g| g.is_staged() && uses_and_mends_nothing(g),
        trips: &["dangerous-repair"],
        heeds: Heeds::Nothing,
        change: |_, a| mend_after(*a == START_INLET, Repair::DrillOrifices),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-sound-igniter-replaced"),
        besides: uses_and_mends_nothing,
        trips: &["needless-repair"],
        heeds: Heeds::Faults,
        change: |_, a| mend_after(*a == START_INLET, Repair::ReplaceIgniter),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-line-purged-at-the-union-no-fluid-there"),
        besides: uses_and_mends_nothing,
        trips: &["joint-unchecked"],
        heeds: Heeds::Faults,
        change: |_, a| mend_after(*a == START_INLET, Repair::PurgeLine),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-supply-not-written-again-at-rest-after-it-was-set"),
        besides: |g| g.turns(Screw::Supply) && g.times_written(Port::Inlet, At::Rest) == 2,
        trips: &["supply-not-rechecked"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(is_write(a, Port::Inlet, At::Rest, Phase::Left)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-window-left-open"),
        besides: any,
        trips: &["controls-not-restored"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(matches!(a, Action::Window { to: Opening::Closed, .. })),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-owner-called-before-anything-was-read"),
        besides: |g| g.ends(Ending::SupplyOwnerCalled),
        trips: &["owner-not-called"],
        heeds: Heeds::Faults,
        change: |p, a| {
            let call = Action::Call(Contact::SupplyOwner);
            if *a == Action::Look(Subject::SupplyVent) {
                Change::After(vec![call.into()])
            } else {
                drop_if(*a == call && !p.done.is_empty())
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-low-gas-switch-not-looked-at"),
        besides: |g| g.propane && g.in_use(),
        trips: &["conversion-not-proven"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(*a == Action::Look(Subject::LowGasSwitch)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-inlet-plug-started-with-the-key"),
        besides: Good::in_use,
        trips: &["cross-thread-left"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            let step = |step| Action::Plug { port: Port::Inlet, step };
            // Once it is in, it leans, and that is overlooked.
            let leans = p.count(&START_INLET) > 0;
            if *a == START_INLET {
                let tight = step(PlugStep::Tighten(6));
                let by_key = step(PlugStep::StartByKey);
                Change::Instead(vec![
                    Goal::InHand(Tool::HexKey).into(),
                    by_key.into(),
                    tight.into(),
                ])
            } else {
                drop_if(leans && matches!(a, Action::Plug { port: Port::Inlet, .. }))
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-inlet-plug-cross-threaded-taken-out-and-started-again"),
        besides: any,
        trips: &["cross-thread-caught"],
        heeds: Heeds::Faults,
        change: |_, a| {
            if *a == START_INLET {
                let step = |step| Action::Plug { port: Port::Inlet, step };
                Change::Before(vec![
                    Goal::InHand(Tool::HexKey).into(),
                    step(PlugStep::StartByKey).into(),
                    step(PlugStep::SpinOut).into(),
                    Goal::HandEmpty.into(),
                ])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-inlet-plug-left-short-of-snug-bubbles-ignored"),
        // With a joint that leaks, gas at the burners is not laid at the valve's door.
        besides: |g| g.in_use() && !g.renews_leaking_valve,
        trips: &["plug-loose"],
        heeds: Heeds::Faults,
        change: |_, a| {
            if *a == TIGHTEN_INLET {
                Change::Instead(vec![
                    Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(2) }.into(),
                ])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-inlet-boss-cracked-bubbles-ignored"),
        besides: |g| g.in_use() && g.mends_nothing(),
        trips: &["boss-cracked", "bubbles-left"],
        heeds: Heeds::Nothing,
        change: |_, a| {
            if *a == TIGHTEN_INLET {
                Change::After(vec![TIGHTEN_INLET.into()])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-inlet-plug-not-leak-checked"),
        // Opened twice, the joint of the manometer would go unchecked too.
        besides: |g| g.times(&TIGHTEN_INLET) == 1,
        trips: &["joint-unchecked"],
        heeds: Heeds::Faults,
        change: |p, a| drop_if(p.count(&TIGHTEN_INLET) > 0 && joint_work(a, Joint::InletPort)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-manifold-plug-wiped-at-once"),
        besides: |g| g.times(&Action::LeakFluid(Joint::ManifoldPort)) == 2,
        trips: &["joint-checked-wrongly"],
        heeds: Heeds::Faults,
        change: keep,
        hurry: |p| {
            let second = p.count(&Action::LeakFluid(Joint::ManifoldPort)) == 2;
            at_once_if(second && p.last_is(|a| *a == Action::LeakFluid(Joint::ManifoldPort)))
        },
    },
    Spoil {
        name: id!("spoil-jumper-between-r-and-w2-left-on"),
        besides: Good::in_use,
        trips: &["jumper-left"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            let closed =
                p.count(&Action::Plug { port: Port::Manifold, step: PlugStep::Tighten(6) }) > 0;
            drop_if(closed && *a == Action::StageJumper(Fitted::Off))
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-valve-switch-left-off"),
        besides: any,
        trips: &["valve-switch-off"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            if *a == BURNER_DOOR_ON {
                Change::Before(vec![Goal::ValveSwitch(OnOff::Off).into(), back(p)])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-manual-valve-left-part-open"),
        besides: any,
        trips: &["cock-not-open"],
        heeds: Heeds::Nothing,
        change: |_, a| {
            if *a == BURNER_DOOR_ON {
                let part = Action::HandValve { hand_valve: HandValve::Furnace, degrees: 60 };
                Change::Before(vec![part.into()])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-manual-valve-left-closed"),
        besides: any,
        trips: &["cock-not-open"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            if *a == BURNER_DOOR_ON {
                let shut = Goal::Valve(HandValve::Furnace, Opening::Closed);
                Change::Before(vec![shut.into(), back(p)])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-burner-door-left-off"),
        besides: Good::in_use,
        trips: &["door-off"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(*a == BURNER_DOOR_ON),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-range-left-off"),
        besides: |g| g.last_for(OtherAppliance::Range) == Some(OnOff::On),
        trips: &["others-not-restored"],
        heeds: Heeds::Faults,
        change: |p, a| {
            let on = Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On };
            drop_if(p.closing() && *a == on)
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-thermostat-not-set-back"),
        besides: Good::in_use,
        trips: &["controls-not-restored"],
        heeds: Heeds::Faults,
        // A degree off, and not so far that it calls no more.
        change: |p, a| match p.good.setpoint() {
            Some(found) if p.closing() && *a == Action::Setpoint(found) => {
                Change::Instead(vec![Action::Setpoint(found - 2).into()])
            }
            Some(_) | None => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-no-final-cycle"),
        besides: any,
        trips: &["no-final-cycle"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            let found = p.good.setpoint();
            let call = matches!(a, Action::Setpoint(half_f) if Some(*half_f) != found)
                || (*a == Action::ThermostatMode(OnOff::On) && !p.closing_restores());
            drop_if(p.closing() && call)
        },
        hurry: |p| at_once_if(p.closing()),
    },
    Spoil {
        name: id!("spoil-supplier-not-called"),
        besides: any,
        trips: &["owner-not-called"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(*a == Action::Call(Contact::SupplyOwner)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-handed-over-as-if-all-were-well"),
        besides: |g| g.ends(Ending::SupplyOwnerCalled),
        trips: &["wrong-ending"],
        heeds: Heeds::Faults,
        change: |_, a| match a {
            Action::HandOver(said) => Change::Instead(vec![
                Action::HandOver(HandOver {
                    ending: Ending::InService,
                    not_done: said.not_done.clone(),
                })
                .into(),
            ]),
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-work-not-done-not-named"),
        besides: any,
        trips: &["not-done-unsaid"],
        heeds: Heeds::Faults,
        change: |_, a| match a {
            Action::HandOver(said) => Change::Instead(vec![
                Action::HandOver(HandOver { ending: said.ending, not_done: Vec::new() }).into(),
            ]),
            _ => Change::Keep,
        },
        hurry: never,
    },
];

/// A repair after an action, if it is the one.
fn mend_after(now: bool, repair: Repair) -> Change {
    if now { Change::After(vec![Action::Mend(repair).into()]) } else { Change::Keep }
}
