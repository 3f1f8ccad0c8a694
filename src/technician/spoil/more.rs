//! Turning what was right, opening under gas, leaving ports unfit, leaving unsafe: spoiled.

use super::*;

/// The ways.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil {
        name: id!("spoil-warning-tag-not-hung"),
        besides: any,
        trips: &["not-tagged"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(*a == Action::Tag(Fitted::On)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-customer-not-told-that-it-is-unsafe"),
        besides: any,
        trips: &["householder-not-told"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(*a == Action::Tell(Topic::Unsafe)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-low-turned-there-and-back-though-right"),
        besides: Good::turns_no_stage,
        trips: &["needless-turn", "not-read-with-cap"],
        heeds: Heeds::Nothing,
        change: |p, a| turn_after_low(p, a, &[1, -1]),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-low-turned-up-and-left-so"),
        besides: Good::turns_no_stage,
        trips: &["big-jumps", "left-outside-band", "needless-turn", "not-read-with-cap"],
        heeds: Heeds::Nothing,
        change: |p, a| turn_after_low(p, a, &[2, 2, 2, 2]),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-high-left-as-it-was-found-though-out-of-its-band"),
        besides: |g| !g.turns(g.first_screw()),
        trips: &["left-outside-band"],
        heeds: Heeds::Nothing,
        change: |p, a| drop_if(turns(a, p.good.full_screw())),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-own-supply-turned-up-five-times-as-far-as-needed"),
        besides: |g| g.raises_supply() && g.five_times_shows,
        trips: &["big-jumps", "supply-over-maximum"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            if *a == (Action::Cap { screw: Screw::Supply, to: Fitted::On }) && p.place.is_some() {
                // Four times as far again as was right.
                let turn = |eighths| Action::Turn { screw: Screw::Supply, eighths };
                let mut left = 4 * p.good.supply_eighths();
                let mut turns = Vec::new();
                while left > 0 {
                    turns.push(turn(left.min(16)));
                    left -= 16;
                }
                Change::Before(turns.into_iter().map(Piece::Do).collect())
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-manual-valve-open-while-the-manifold-plug-is-loosened"),
        besides: |g| g.opens(Port::Manifold),
        trips: &["loosened-with-cock-open"],
        heeds: Heeds::Faults,
        change: |p, a| {
            let closed = p.count(&TIGHTEN_INLET) > 0;
            let loose = p.count(&Action::Plug { port: Port::Manifold, step: PlugStep::BreakLoose });
            drop_if(
                closed
                    && loose == 0
                    && *a == Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 },
            )
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-hose-pulled-off-the-manifold-while-high-burns"),
        besides: any,
        trips: &["opened-manifold-firing"],
        heeds: Heeds::Nothing,
        change: |p, a| {
            if is_write(a, Port::Manifold, At::Full, Phase::Found) {
                let on = Action::HoseOn { port: Port::Manifold, push: Push::Fully };
                let pull = Action::HoseOff;
                Change::After(vec![
                    Goal::At(Place::GasValve).into(),
                    pull.into(),
                    on.into(),
                    back(p),
                ])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-adapter-left-in-the-manifold-port"),
        besides: |g| g.is_staged() && g.ends(Ending::InService),
        trips: &["gas-from-open-port", "joint-checked-wrongly"],
        heeds: Heeds::Nothing,
        change: leave_manifold_adapter,
        hurry: never,
    },
    Spoil {
        // It burns at its full rate all the same, so that the joint is checked as it should be.
        name: id!("spoil-adapter-left-in-the-manifold-port-of-a-single-stage-furnace"),
        besides: |g| !g.is_staged() && g.ends(Ending::InService),
        trips: &["gas-from-open-port"],
        heeds: Heeds::Nothing,
        change: leave_manifold_adapter,
        hurry: never,
    },
    Spoil {
        name: id!("spoil-no-plug-in-the-manifold-port"),
        besides: |g| g.ends(Ending::InService),
        trips: &["gas-from-open-port"],
        heeds: Heeds::Nothing,
        change: |_, a| match a {
            Action::Plug { port: Port::Manifold, step } => drop_if(closes(*step)),
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-number-written-while-it-still-moves"),
        besides: |g| !g.propane && !g.turns(Screw::Supply) && g.mends_nothing(),
        trips: &["read-unsettled"],
        heeds: Heeds::Nothing,
        change: keep,
        hurry: |p| {
            let now = p.last_is(|a| {
                matches!(
                    a,
                    Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On }
                )
            });
            if now { 15 } else { 0 }
        },
    },
];

/// After low was written as found: cap off, these turns, cap on.
fn turn_after_low(p: &Progress, a: &Action, eighths: &[i16]) -> Change {
    if !is_write(a, Port::Manifold, At::First, Phase::Found) {
        return Change::Keep;
    }
    Change::After(turned(p, p.good.first_screw(), eighths))
}

fn closes(step: PlugStep) -> bool {
    match step {
        PlugStep::StartByHand | PlugStep::StartByKey | PlugStep::SpinIn => true,
        PlugStep::Tighten(eighths) => eighths > 0,
        PlugStep::BreakLoose | PlugStep::SpinOut => false,
    }
}

fn leave_manifold_adapter(_: &Progress, action: &Action) -> Change {
    match action {
        Action::Adapter { port: Port::Manifold, to: Fitted::Off } => Change::Drop,
        Action::Plug { port: Port::Manifold, step } => drop_if(closes(*step)),
        _ => Change::Keep,
    }
}
