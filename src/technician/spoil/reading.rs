//! Arriving, opening, reading, setting: spoiled.

use super::*;

/// Ways of spoiling arrival and readings.
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
            let shut = Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 };
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
        besides: |g| g.writes(Port::Manifold, At::Full),
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
            let late = |a: &Action| is_write(a, Port::Inlet, At::FullLoad, Phase::Found);
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
        besides: |g| g.turns(g.first_screw()),
        trips: &["zeroed-under-pressure"],
        heeds: Heeds::Faults,
        change: |_, a| {
            if is_write(a, Port::Manifold, At::First, Phase::Left) {
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
        change: |_, a| drop_if(is_write(a, Port::Inlet, At::FullLoad, Phase::Found)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-inlet-at-rest-only"),
        // A call needs the numbers too.
        besides: |g| {
            let calls = g.does(|a| *a == Action::Call(Contact::SupplyOwner));
            g.turns(g.first_screw()) && !g.moves_supply() && !calls
        },
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
        besides: |g| !g.turns(g.full_screw()) && !g.moves_supply(),
        trips: &["stage-never-read"],
        heeds: Heeds::Faults,
        change: |_, a| {
            drop_if(matches!(a, Action::Write(r)
                if r.port == Port::Manifold && At::Full.is(r.stage)))
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-hold-at-rest-cut-short"),
        besides: |g| g.times_written(Port::Inlet, At::Rest) == 1 && g.in_use(),
        trips: &["hold-too-short"],
        heeds: Heeds::Faults,
        change: keep,
        hurry: |p| {
            let at_rest = p.done.iter().any(|a| matches!(a, Action::HoseOn { .. }));
            let written = p.done.iter().any(|a| is_write(a, Port::Inlet, At::Rest, Phase::Found));
            let waits = p.last_is(|a| {
                matches!(
                    a,
                    Action::Go(Place::Hall) | Action::OtherAppliance { .. } | Action::PutDown
                )
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
        change: |p, a| {
            if is_write(a, Port::Manifold, At::First, Phase::Found) {
                with_number_of(p, a, Port::Inlet, At::First)
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-low-number-written-for-high"),
        besides: |g| g.is_staged(),
        trips: &["wrong-stage"],
        heeds: Heeds::Faults,
        change: |p, a| {
            if is_write(a, Port::Manifold, At::Full, Phase::Found) {
                with_number_of(p, a, Port::Manifold, At::First)
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
            if is_write(a, Port::Inlet, At::Full, Phase::Found) {
                Change::Instead(rewrite(a, |reading| reading.unit = PressureUnit::Mbar))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        // The line is not read either.
        name: id!("spoil-a-number-that-no-meter-showed"),
        besides: |g| g.times_written(Port::Inlet, At::First) == 1,
        trips: &["inlet-state-unread", "invented"],
        heeds: Heeds::Faults,
        change: |_, a| {
            if is_write(a, Port::Inlet, At::First, Phase::Found) {
                Change::Instead(rewrite(a, |reading| reading.thousandths += 3000))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-low-turned-before-it-was-written-as-found"),
        besides: |g| g.turns(g.first_screw()),
        trips: &["turned-before-found"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(is_write(a, Port::Manifold, At::First, Phase::Found)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-big-jump-there-and-back"),
        besides: any,
        trips: &["big-jumps"],
        heeds: Heeds::Faults,
        change: |p, a| {
            let low = |a: &Action| turns(a, p.good.first_screw());
            let first = !p.done.iter().any(low);
            if turns(a, p.good.first_screw()) && first {
                Change::Before(vec![
                    Action::Turn { screw: p.good.first_screw(), eighths: 6 }.into(),
                    Action::Turn { screw: p.good.first_screw(), eighths: -6 }.into(),
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
            if is_write(a, Port::Manifold, At::Full, Phase::Found) {
                Change::After(turned(p, p.good.full_screw(), &[16]))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-the-low-screw-turned-while-high-burns"),
        besides: |g| g.turns(g.first_screw()),
        trips: &["wrong-screw"],
        heeds: Heeds::Faults,
        change: |p, a| {
            if is_write(a, Port::Manifold, At::Full, Phase::Found) {
                Change::After(turned(p, p.good.first_screw(), &[1]))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
];

/// Written with the number that was written last for another place instead.
fn with_number_of(p: &Progress, action: &Action, port: Port, at: At) -> Change {
    let other = p.done.iter().rev().find_map(|one| {
        let Action::Write(it) = one else { return None };
        (it.port == port && at.is(it.stage)).then_some(it.thousandths)
    });
    let Some(thousandths) = other else { return Change::Keep };
    let Action::Write(it) = action else { return Change::Keep };
    Change::Instead(vec![Action::Write(Reading { thousandths, ..*it }).into()])
}
