//! Arriving, opening, reading, setting: spoiled.

use super::*;

/// The ways.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil {
        name: id!("spoil-nothing-smelt-or-probed"),
        // A valve that lets by is found by the detector alone.
        besides: |g| g.is_quiet() && !g.renews_leaking_valve,
        trips: &["no-sniff-on-arrival"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(matches!(a, Action::Sniff(_) | Action::Probe(_))),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-smelt-and-probed-at-head-height-only"),
        besides: Good::is_quiet,
        trips: &["head-height-only"],
        heeds: Heeds::Faults,
        change: |_, a| {
            drop_if(matches!(a, Action::Sniff(Height::Floor) | Action::Probe(Height::Floor)))
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-manual-valve-not-shut-before-the-inlet-port"),
        besides: Good::shuts_first,
        trips: &["opened-inlet-under-gas"],
        heeds: Heeds::Faults,
        change: |p, a| {
            let out = Action::Plug { port: Port::Inlet, step: PlugStep::SpinOut };
            let shut = Action::Cock { cock: Cock::Furnace, degrees: 0 };
            drop_if(*a == shut && p.count(&out) == 0)
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-no-wait-after-breaking-the-inlet-plug-loose"),
        besides: any,
        trips: &["opened-on-trapped-gas"],
        heeds: Heeds::Faults,
        change: keep,
        hurry: |p| {
            at_once_if(
                p.last_is(|a| *a == Action::Plug { port: Port::Inlet, step: PlugStep::BreakLoose }),
            )
        },
    },
    Spoil {
        name: id!("spoil-power-left-on"),
        besides: Good::mends_nothing,
        trips: &["power-left-on"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(*a == Action::FurnaceSwitch(OnOff::Off)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-meter-never-zeroed"),
        besides: |g| g.in_use() && !g.turns(Screw::Supply),
        trips: &["meter-off"],
        heeds: Heeds::Nothing,
        change: |_, a| drop_if(*a == Action::MeterZero),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-hose-half-on-at-the-manifold"),
        besides: |g| g.writes(Port::Manifold, Stage::High),
        trips: &["hose-half-on"],
        heeds: Heeds::Nothing,
        change: |_, a| match a {
            Action::HoseOn { port: Port::Manifold, .. } => Change::Instead(vec![
                Action::HoseOn { port: Port::Manifold, push: Push::Halfway }.into(),
            ]),
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-right-number-written-only-when-the-hose-is-off-again"),
        besides: |g| !g.moves_supply(),
        trips: &[],
        heeds: Heeds::Faults,
        change: |p, a| {
            let late = |a: &Action| is_write(a, Port::Inlet, Stage::HighWithOthers, Phase::Found);
            if late(a) {
                return Change::Drop;
            }
            let since = p.done.iter().rev().take_while(|one| **one != Action::HoseOff);
            match since.into_iter().find(|one| late(one)) {
                Some(write) if *a == Action::HoseOff => Change::After(vec![write.clone().into()]),
                _ => Change::Keep,
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-zeroed-with-the-manifold-pressure-on-it"),
        besides: |g| g.turns(Screw::Low),
        trips: &["zeroed-under-pressure"],
        heeds: Heeds::Faults,
        change: |_, a| {
            if is_write(a, Port::Manifold, Stage::Low, Phase::Left) {
                Change::After(vec![Action::MeterZero.into()])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-inlet-with-the-others-on-not-written"),
        besides: |g| !g.moves_supply(),
        trips: &["never-read-with-others"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(is_write(a, Port::Inlet, Stage::HighWithOthers, Phase::Found)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-inlet-at-rest-only"),
        besides: |g| g.turns(Screw::Low) && !g.moves_supply(),
        trips: &["never-read-running", "turned-before-inlet"],
        heeds: Heeds::Faults,
        change: |_, a| {
            drop_if(matches!(a, Action::Write(r)
                if r.port == Port::Inlet && r.stage != Stage::Rest))
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-high-never-written"),
        besides: |g| !g.turns(Screw::High) && !g.moves_supply(),
        trips: &["stage-never-read"],
        heeds: Heeds::Faults,
        change: |_, a| {
            drop_if(matches!(a, Action::Write(r)
                if r.port == Port::Manifold && r.stage == Stage::High))
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-hold-at-rest-cut-short"),
        besides: |g| g.times_written(Port::Inlet, Stage::Rest) == 1 && g.in_use(),
        trips: &["hold-too-short"],
        heeds: Heeds::Faults,
        change: keep,
        hurry: |p| {
            let at_rest = p.done.iter().any(|a| matches!(a, Action::HoseOn { .. }));
            let written =
                p.done.iter().any(|a| is_write(a, Port::Inlet, Stage::Rest, Phase::Found));
            let waits = p.last_is(|a| {
                matches!(a, Action::Go(Place::Hall) | Action::Neighbor { .. } | Action::PutDown)
            });
            // Long enough for the meter to settle, far too short for a seat that creeps.
            let now = at_rest && !written && waits && p.count(&Action::Wipe(Joint::InletPort)) > 0;
            if now { 5 } else { 0 }
        },
    },
    Spoil {
        name: id!("spoil-a-number-for-the-wrong-port"),
        besides: any,
        trips: &["wrong-port"],
        heeds: Heeds::Faults,
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
        name: id!("spoil-a-low-number-written-for-high"),
        besides: |g| g.writes(Port::Manifold, Stage::High),
        trips: &["wrong-stage"],
        heeds: Heeds::Faults,
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
        name: id!("spoil-the-number-in-the-wrong-unit"),
        besides: any,
        trips: &["wrong-unit"],
        heeds: Heeds::Faults,
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
        name: id!("spoil-a-number-that-no-meter-showed"),
        besides: any,
        trips: &["invented"],
        heeds: Heeds::Faults,
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
        name: id!("spoil-low-turned-before-it-was-written-as-found"),
        besides: |g| g.turns(Screw::Low),
        trips: &["turned-before-found"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(is_write(a, Port::Manifold, Stage::Low, Phase::Found)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-big-jump-there-and-back"),
        besides: any,
        trips: &["big-jumps"],
        heeds: Heeds::Faults,
        change: |p, a| {
            let low = |a: &Action| matches!(a, Action::Turn { screw: Screw::Low, .. });
            let first = !p.done.iter().any(low);
            if matches!(a, Action::Turn { screw: Screw::Low, .. }) && first {
                Change::Before(vec![
                    Action::Turn { screw: Screw::Low, eighths: 6 }.into(),
                    Action::Turn { screw: Screw::Low, eighths: -6 }.into(),
                ])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-the-high-screw-cranked-against-a-low-supply"),
        besides: any,
        trips: &["big-jumps", "cranked"],
        heeds: Heeds::Faults,
        change: |p, a| {
            if is_write(a, Port::Manifold, Stage::High, Phase::Found) {
                Change::After(turned(p, Screw::High, &[16]))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-the-low-screw-turned-while-high-burns"),
        besides: |g| g.turns(Screw::Low),
        trips: &["wrong-screw"],
        heeds: Heeds::Faults,
        change: |p, a| {
            if is_write(a, Port::Manifold, Stage::High, Phase::Found) {
                Change::After(turned(p, Screw::Low, &[1]))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
];
