//! Slips that leave a job looking finished, and those that only some jobs give an occasion for:
//! spoiled.

use super::*;

/// The ways.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil {
        name: id!("spoil-hose-and-adapter-left-on-the-manifold-port"),
        besides: |g| {
            let swaps = g.does(|a| matches!(a, Action::Mend(Repair::SwapMeterHose)));
            !swaps && g.ends(Ending::InService)
        },
        // The hose holds the burner door open.
        trips: &["adapter-left"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            let on_manifold = p.done.iter().rev().find_map(hose_on) == Some(Port::Manifold);
            let half = Action::HoseOn { port: Port::Manifold, push: Push::Halfway };
            match a {
                a if *a == half => Change::Drop,
                Action::HoseOff => drop_if(on_manifold),
                Action::Adapter { port: Port::Manifold, to: Fitted::Off } => Change::Drop,
                Action::Plug { port: Port::Manifold, step } => drop_if(turns_in(*step)),
                _ => Change::Keep,
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-inlet-port-left-open-behind-the-shut-valve"),
        besides: |g| g.ends(Ending::ShutOff) && !g.opens(Port::Manifold),
        trips: &["port-left-open"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            let out = p.count(&Action::Adapter { port: Port::Inlet, to: Fitted::Off }) > 0;
            let last = p.good.times(&TIGHTEN_INLET) <= p.count(&TIGHTEN_INLET) + 1;
            if !out || !last {
                return Change::Keep;
            }
            match a {
                Action::Plug { port: Port::Inlet, step } => drop_if(turns_in(*step)),
                Action::HandValve { hand_valve: HandValve::Furnace, degrees } => {
                    drop_if(*degrees > 0)
                }
                a => drop_if(joint_work(a, Joint::InletPort)),
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-low-screw-run-to-its-bottom-and-set-back"),
        // With the screen clean already, a screw without effect speaks against the valve.
        besides: |g| g.in_use() && !g.does(|a| *a == Action::Mend(Repair::CleanInletScreen)),
        trips: &["big-jumps", "bottomed-once"],
        heeds: Heeds::Faults,
        change: |p, a| {
            let first = !p.done.iter().any(|a| turns(a, p.good.first_screw()));
            if first && turns(a, p.good.first_screw()) {
                let turn = Action::Turn { screw: p.good.first_screw(), eighths: 16 };
                Change::Before(vec![turn.into(); 6])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-low-screw-run-to-its-bottom-and-left-there"),
        besides: Good::turns_no_stage,
        trips: &["big-jumps", "bottomed-left", "not-read-with-cap"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            if is_write(a, Port::Manifold, At::First, Phase::Found) {
                Change::After(turned(p, p.good.first_screw(), &[16; 6]))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-call-while-the-manifold-port-stands-open"),
        besides: |g| g.refits(Port::Manifold) && g.mends_nothing(),
        trips: &["called-with-port-open"],
        heeds: Heeds::Faults,
        change: |p, a| match a {
            Action::Adapter { port: Port::Manifold, to: Fitted::On } => Change::Before(vec![
                Goal::Power(OnOff::On).into(),
                Goal::Called(p.good.first_level(), Means::Thermostat).into(),
                wait(4),
                Goal::HeatOff.into(),
                Goal::Power(OnOff::Off).into(),
                Goal::At(Place::GasValve).into(),
            ]),
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-one-leg-of-the-u-tube-manometer-written-for-low"),
        // Propane stands higher than the water in the column.
        besides: |g| {
            let sound = g.gives("needless-call") && g.mends_nothing() && g.turns_no_stage();
            sound && !g.propane && g.in_use()
        },
        trips: &["one-leg-read"],
        heeds: Heeds::Nothing,
        change: |p, a| match a {
            Action::HoseOn { port: Port::Inlet, push: Push::Fully } => {
                Change::Before(vec![Action::Gauge(Gauge::WaterColumn).into()])
            }
            a if is_write(a, Port::Inlet, At::First, Phase::Found) => {
                Change::Instead(rewrite(a, |reading| reading.thousandths /= 2))
            }
            // The water shows tenths only: time for the gas in the hose to go.
            Action::HoseOff if p.count(&Action::HoseOff) == 0 => Change::Before(vec![wait(60)]),
            Action::PutDown if p.last_is(|a| *a == Action::HoseOff) => {
                Change::Before(vec![Action::Gauge(Gauge::Digital).into()])
            }
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-u-tube-manometer-too-short-for-propane-and-nobody-heeds-the-gas"),
        besides: |g| {
            let traps = g.gives("opened-on-trapped-gas") && g.gives("needless-call");
            traps && g.propane && g.in_use() && g.mends_nothing()
        },
        trips: &["gauge-overstrained", "ignition", "worked-on-after-alarm"],
        heeds: Heeds::Nothing,
        change: |_, a| match a {
            Action::HoseOn { port: Port::Inlet, push: Push::Fully } => {
                Change::Before(vec![Action::Gauge(Gauge::WaterColumn).into()])
            }
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-what-the-readings-do-not-show-left-as-it-was"),
        besides: |g| g.leaves_no_reading_wrong().is_some() && !g.moves_supply(),
        trips: &["fault-left"],
        heeds: Heeds::Nothing,
        change: |p, a| match a {
            Action::Mend(repair) => drop_if(p.good.leaves_no_reading_wrong() == Some(*repair)),
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-wet-or-pinched-hose-used-to-the-end"),
        besides: |g| {
            let swaps = g.times(&Action::Mend(Repair::SwapMeterHose)) == 1 && g.mends() == 1;
            swaps && !g.hose_leaks && g.turns_no_stage() && !g.moves_supply()
        },
        trips: &["meter-fault-left"],
        heeds: Heeds::Nothing,
        // No screw is turned after what it shows either.
        change: |_, a| match a {
            Action::Mend(Repair::SwapMeterHose)
            | Action::Turn { .. }
            | Action::Cap { to: Fitted::Off, .. } => Change::Drop,
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-cap-found-off-left-off"),
        besides: Good::in_use,
        trips: &["cap-off"],
        heeds: Heeds::Faults,
        change: |p, a| match (found_off(&p.good), a) {
            (Some(wanted), Action::Cap { screw, to: Fitted::On }) => drop_if(wanted == *screw),
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-sound-parts-replaced-one-after-the-other"),
        besides: uses_and_mends_nothing,
        trips: &["needless-repair", "parts-on-suspicion"],
        heeds: Heeds::Faults,
        change: |_, a| {
            after_start(
                a,
                &[Repair::ReplaceIgniter, Repair::ReplaceControlBoard, Repair::ReplaceLowSwitch],
            )
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-everything-cleaned-that-can-be"),
        besides: uses_and_mends_nothing,
        trips: &["care-on-suspicion"],
        heeds: Heeds::Faults,
        change: |_, a| {
            after_start(
                a,
                &[
                    Repair::CleanFlameRod,
                    Repair::MendBurnerGround,
                    Repair::CleanBurners,
                    Repair::ClearTrap,
                    Repair::PrimeTrap,
                    Repair::RefitDraftHose,
                ],
            )
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-owner-called-though-the-supply-is-in-order"),
        besides: |g| g.ends(Ending::InService),
        trips: &["needless-call"],
        heeds: Heeds::Faults,
        change: |_, a| match a {
            Action::Tell(Topic::GasSmellDrill) => {
                Change::After(vec![Action::Call(Contact::SupplyOwner).into()])
            }
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-look-round-after-the-alarm"),
        besides: any,
        trips: &["worked-on-after-alarm"],
        heeds: Heeds::Faults,
        change: |p, a| {
            let first = p.count(&Action::Tell(Topic::GetOut)) == 0;
            if first && *a == Action::Tell(Topic::GetOut) {
                Change::Before(look_at_alarm(p))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
];

fn hose_on(action: &Action) -> Option<Port> {
    match action {
        Action::HoseOn { port, .. } => Some(*port),
        _ => None,
    }
}

/// A stage screw whose cap was put on without having been taken off.
fn found_off(good: &Good) -> Option<Screw> {
    let cap = |screw, to| Action::Cap { screw, to };
    good.screws().find(|&screw| {
        good.times(&cap(screw, Fitted::On)) > 0
            && good.times(&cap(screw, Fitted::Off)) == 0
            && !good.turns(screw)
    })
}

fn turns_in(step: PlugStep) -> bool {
    match step {
        PlugStep::StartByHand | PlugStep::StartByKey | PlugStep::SpinIn => true,
        PlugStep::Tighten(eighths) => eighths > 0,
        PlugStep::BreakLoose | PlugStep::SpinOut => false,
    }
}

fn after_start(action: &Action, repairs: &[Repair]) -> Change {
    if *action == START_INLET {
        Change::After(repairs.iter().map(|&repair| Action::Mend(repair).into()).collect())
    } else {
        Change::Keep
    }
}

/// A look at what is near, in the alarm.
fn look_at_alarm(progress: &Progress) -> Vec<Piece> {
    match progress.place {
        Some(Place::Hall) => vec![Action::Look(Subject::CoAlarm).into()],
        _ => vec![Action::Look(Subject::StatusLamp).into()],
    }
}
