//! Ports closed and joints proven: spoiled.

use super::super::edit::{What, after, before, hurry, instead, leave_out};
use super::super::step::{act, reach};
use super::good::Good;
use super::steps::{AT_ONCE, plug};
use super::way::Spoil;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Ending, HandValve, Joint, JointVerdict, Port, Tool};
use crate::procedure::Goal;

/// Ways of spoiling how a port is closed.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil::new(id!("spoil-inlet-plug-started-with-the-key"), &["cross-thread-left"], |_| {
        let by_key = vec![
            reach(Goal::AdapterOut(Port::Inlet)),
            reach(Goal::InHand(Tool::HexKey)),
            act(plug(Port::Inlet, PlugStep::StartByKey)),
            act(plug(Port::Inlet, SNUG)),
        ];
        vec![instead(Goal::Closed(Port::Inlet), by_key)]
    })
    .at_last()
    .careless(),
    Spoil::new(
        id!("spoil-inlet-plug-cross-threaded-taken-out-and-started-again"),
        &["cross-thread-caught"],
        |_| {
            let first = vec![
                reach(Goal::AdapterOut(Port::Inlet)),
                reach(Goal::InHand(Tool::HexKey)),
                act(plug(Port::Inlet, PlugStep::StartByKey)),
                act(plug(Port::Inlet, PlugStep::SpinOut)),
                reach(Goal::HandEmpty),
            ];
            vec![before(Goal::Closed(Port::Inlet), first)]
        },
    )
    .at_last(),
    Spoil::new(
        id!("spoil-inlet-plug-left-short-of-snug-bubbles-ignored"),
        &["bubbles-left"],
        |_| {
            let short = vec![act(plug(Port::Inlet, PlugStep::Tighten(2)))];
            vec![instead(What::StepTo(Goal::Closed(Port::Inlet), plug(Port::Inlet, SNUG)), short)]
        },
    )
    .at_last()
    // Of a furnace that is left shut off no bubbles are asked for.
    .besides(Good::in_use),
    Spoil::new(
        id!("spoil-inlet-boss-cracked-bubbles-ignored"),
        &["boss-cracked", "bubbles-left"],
        |_| vec![after(Goal::Closed(Port::Inlet), vec![act(plug(Port::Inlet, SNUG))])],
    )
    .at_last()
    .careless(),
    Spoil::new(id!("spoil-inlet-plug-not-leak-checked"), &["joint-unchecked"], |_| {
        vec![leave_out(Goal::JointChecked(Joint::InletPort))]
    })
    .at_last(),
    Spoil::new(
        id!("spoil-inlet-plug-left-short-of-snug-and-not-leak-checked"),
        &["joint-unchecked", "plug-loose"],
        |_| {
            let short = vec![act(plug(Port::Inlet, PlugStep::Tighten(2)))];
            let snug = What::StepTo(Goal::Closed(Port::Inlet), plug(Port::Inlet, SNUG));
            vec![instead(snug, short), leave_out(Goal::JointChecked(Joint::InletPort))]
        },
    )
    .at_last()
    .careless(),
    Spoil::new(id!("spoil-a-tight-joint-written-as-leaking"), &["joint-verdict"], |_| {
        let (joint, verdict) = (Joint::InletPort, JointVerdict::Leaking);
        vec![instead(INLET_JUDGED, vec![act(Action::WriteJoint { joint, verdict })])]
    })
    .at_last()
    // Of a furnace that is left shut off no verdict is asked for.
    .besides(Good::in_use),
    Spoil::new(id!("spoil-leak-fluid-left-on-the-inlet-plug"), &["joint-not-judged"], |_| {
        vec![leave_out(INLET_JUDGED), leave_out(Action::Wipe(Joint::InletPort))]
    })
    .at_last()
    // Of a furnace that is left shut off no verdict is asked for.
    .besides(Good::in_use),
    Spoil::new(id!("spoil-manifold-plug-wiped-at-once"), &["joint-checked-wrongly"], |_| {
        let (joint, verdict) = (Joint::ManifoldPort, JointVerdict::Tight);
        vec![hurry(Action::WriteJoint { joint, verdict }, AT_ONCE)]
    })
    .at_last()
    // Proven twice since it was closed, the joint has a good check left.
    .besides(|g| g.times(&Action::LeakFluid(Joint::ManifoldPort)) == 2),
    Spoil::new(
        id!("spoil-inlet-port-left-open-behind-the-shut-valve"),
        &["port-left-open"],
        |_| {
            let bare = vec![reach(Goal::AdapterOut(Port::Inlet))];
            let opens = |action: &Action| {
                matches!(action, Action::HandValve { hand_valve: HandValve::Furnace, degrees }
                    if *degrees > 0)
            };
            vec![
                instead(Goal::Closed(Port::Inlet), bare),
                leave_out(What::Such(opens)),
                leave_out(Goal::JointChecked(Joint::InletPort)),
            ]
        },
    )
    .at_last()
    // Gas comes to it where the manual valve is opened again.
    .besides(|g| !g.in_use() && !g.opens(Port::Manifold)),
    Spoil::new(id!("spoil-no-plug-in-the-manifold-port"), &["gas-from-open-port"], |_| {
        let bare = vec![reach(Goal::AdapterOut(Port::Manifold))];
        vec![instead(Goal::Closed(Port::Manifold), bare)]
    })
    .at_last()
    .careless()
    // With gas in the air nobody calls the owner from inside.
    .besides(|g| g.ends(Ending::InService)),
    Spoil::new(
        id!("spoil-adapter-left-in-the-manifold-port"),
        &["gas-from-open-port", "joint-checked-wrongly"],
        |_| vec![leave_out(Goal::Closed(Port::Manifold))],
    )
    .at_last()
    .careless()
    // With gas in the air nobody calls the owner from inside.
    .besides(|g| g.fits_adapter() && g.is_staged() && g.ends(Ending::InService)),
    // It burns at its full rate all the same, so that the joint is checked as it should be.
    Spoil::new(
        id!("spoil-adapter-left-in-the-manifold-port-of-a-single-stage-furnace"),
        &["gas-from-open-port"],
        |_| vec![leave_out(Goal::Closed(Port::Manifold))],
    )
    .at_last()
    .careless()
    .besides(|g| g.fits_adapter() && !g.is_staged() && g.ends(Ending::InService)),
    Spoil::new(id!("spoil-hose-and-adapter-left-on-the-manifold-port"), &["adapter-left"], |_| {
        vec![leave_out(Goal::HoseOff), leave_out(Goal::Closed(Port::Manifold))]
    })
    .at_last()
    .careless(),
];

/// The verdict on the inlet port, tight or not.
const INLET_JUDGED: What =
    What::Such(|action| matches!(action, Action::WriteJoint { joint: Joint::InletPort, .. }));

/// As far as a plug is tightened.
const SNUG: PlugStep = PlugStep::Tighten(6);
