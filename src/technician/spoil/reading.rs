//! Arriving, opening, reading, setting: spoiled.

use super::*;

/// The ways.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil {
        name: "nothing smelt or probed",
        job: PROPANE,
        trips: &["no-sniff-on-arrival"],
        change: |_, a| drop_if(matches!(a, Action::Sniff(_) | Action::Probe(_))),
        hurry: never,
    },
    Spoil {
        name: "smelt and probed at head height only",
        job: PROPANE,
        trips: &["head-height-only"],
        change: |_, a| {
            drop_if(matches!(a, Action::Sniff(Height::Floor) | Action::Probe(Height::Floor)))
        },
        hurry: never,
    },
    Spoil {
        name: "manual valve not shut before the inlet port",
        job: NATURAL,
        trips: &["opened-inlet-under-gas"],
        change: |p, a| {
            let shut = Action::Cock { cock: Cock::Furnace, degrees: 0 };
            drop_if(*a == shut && p.count(&shut) == 0)
        },
        hurry: never,
    },
    Spoil {
        name: "no wait after breaking the inlet plug loose",
        job: NATURAL,
        trips: &["opened-on-trapped-gas"],
        change: keep,
        hurry: |p| {
            at_once_if(
                p.last_is(|a| *a == Action::Plug { port: Port::Inlet, step: PlugStep::BreakLoose }),
            )
        },
    },
    Spoil {
        name: "power left on",
        job: NATURAL,
        trips: &["power-left-on"],
        change: |_, a| drop_if(*a == Action::FurnaceSwitch(OnOff::Off)),
        hurry: never,
    },
    Spoil {
        name: "meter never zeroed",
        job: NATURAL,
        trips: &["meter-off"],
        change: |_, a| drop_if(*a == Action::MeterZero),
        hurry: never,
    },
    Spoil {
        name: "hose half on at the manifold",
        job: NATURAL,
        trips: &["hose-half-on"],
        change: |_, a| match a {
            Action::HoseOn { port: Port::Manifold, .. } => {
                Change::Instead(vec![Action::HoseOn { port: Port::Manifold, push: Push::Halfway }])
            }
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: "a right number written only when the hose is off again",
        job: PROPANE,
        trips: &[],
        change: |p, a| {
            let late = |a: &Action| is_write(a, Port::Inlet, Stage::HighWithOthers, Phase::Found);
            if late(a) {
                return Change::Drop;
            }
            match p.done.iter().find(|one| late(one)) {
                Some(write) if *a == Action::HoseOff && p.count(&Action::HoseOff) == 0 => {
                    Change::After(vec![write.clone()])
                }
                _ => Change::Keep,
            }
        },
        hurry: never,
    },
    Spoil {
        name: "zeroed with the manifold pressure on it",
        job: PROPANE,
        trips: &["zeroed-under-pressure"],
        change: |_, a| {
            if is_write(a, Port::Manifold, Stage::Low, Phase::Left) {
                Change::After(vec![Action::MeterZero])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "inlet with the others on not written",
        job: PROPANE,
        trips: &["never-read-with-others"],
        change: |_, a| drop_if(is_write(a, Port::Inlet, Stage::HighWithOthers, Phase::Found)),
        hurry: never,
    },
    Spoil {
        name: "inlet at rest only",
        job: PROPANE,
        trips: &["never-read-running", "turned-before-inlet"],
        change: |_, a| {
            drop_if(matches!(a, Action::Write(r)
                if r.port == Port::Inlet && r.stage != Stage::Rest))
        },
        hurry: never,
    },
    Spoil {
        name: "high never written",
        job: PROPANE,
        trips: &["stage-never-read"],
        change: |_, a| {
            drop_if(matches!(a, Action::Write(r)
                if r.port == Port::Manifold && r.stage == Stage::High))
        },
        hurry: never,
    },
    Spoil {
        name: "hold at rest cut short",
        job: PROPANE,
        trips: &["hold-too-short"],
        change: keep,
        hurry: |p| {
            let at_rest = p.done.iter().any(|a| matches!(a, Action::HoseOn { .. }));
            let written =
                p.done.iter().any(|a| is_write(a, Port::Inlet, Stage::Rest, Phase::Found));
            let waits = p
                .last_is(|a| *a == Action::Go(Place::Hall) || matches!(a, Action::Neighbor { .. }));
            // Long enough for the meter to settle, far too short for a seat that creeps.
            let now = at_rest && !written && waits && p.count(&Action::Wipe(Joint::InletPort)) > 0;
            if now { 5 } else { 0 }
        },
    },
    Spoil {
        name: "a number for the wrong port",
        job: NATURAL,
        trips: &["wrong-port"],
        change: |_, a| {
            if is_write(a, Port::Inlet, Stage::Low, Phase::Found) {
                Change::After(rewrite(a, |reading| {
                    reading.port = Port::Manifold;
                    reading.thousandths += 900;
                }))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "a low number written for high",
        job: PROPANE,
        trips: &["wrong-stage"],
        change: |_, a| {
            if is_write(a, Port::Manifold, Stage::Low, Phase::Found) {
                Change::After(rewrite(a, |reading| reading.stage = Stage::High))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "the number in the wrong unit",
        job: NATURAL,
        trips: &["wrong-unit"],
        change: |_, a| {
            if is_write(a, Port::Inlet, Stage::High, Phase::Found) {
                Change::Instead(rewrite(a, |reading| reading.unit = PressureUnit::Mbar))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "a number that no meter showed",
        job: NATURAL,
        trips: &["invented"],
        change: |_, a| {
            if is_write(a, Port::Inlet, Stage::Low, Phase::Found) {
                Change::Instead(rewrite(a, |reading| reading.thousandths += 3000))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "low turned before it was written as found",
        job: PROPANE,
        trips: &["turned-before-found"],
        change: |_, a| drop_if(is_write(a, Port::Manifold, Stage::Low, Phase::Found)),
        hurry: never,
    },
    Spoil {
        name: "a big jump there and back",
        job: PROPANE,
        trips: &["big-jumps"],
        change: |p, a| {
            let first = !p.done.iter().any(|a| matches!(a, Action::Turn { .. }));
            if matches!(a, Action::Turn { screw: Screw::Low, .. }) && first {
                Change::Before(vec![
                    Action::Turn { screw: Screw::Low, eighths: 6 },
                    Action::Turn { screw: Screw::Low, eighths: -6 },
                ])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "the high screw cranked against a low supply",
        job: PROPANE,
        trips: &["big-jumps", "cranked"],
        change: |p, a| {
            if is_write(a, Port::Manifold, Stage::High, Phase::Found) {
                let turn = Action::Turn { screw: Screw::High, eighths: 16 };
                Change::After(kneel(
                    p,
                    vec![
                        Action::Take(Tool::SlottedDriver),
                        Action::Cap { screw: Screw::High, to: Fitted::Off },
                        turn,
                        Action::Cap { screw: Screw::High, to: Fitted::On },
                        Action::PutDown,
                    ],
                ))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "the low screw turned while high burns",
        job: PROPANE,
        trips: &["wrong-screw"],
        change: |p, a| {
            if is_write(a, Port::Manifold, Stage::High, Phase::Found) {
                Change::After(kneel(
                    p,
                    vec![
                        Action::Take(Tool::SlottedDriver),
                        Action::Cap { screw: Screw::Low, to: Fitted::Off },
                        Action::Turn { screw: Screw::Low, eighths: 1 },
                        Action::Cap { screw: Screw::Low, to: Fitted::On },
                        Action::PutDown,
                    ],
                ))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
];
