//! Arriving, isolating and opening a port: spoiled.

use super::super::edit::{What, after, before, hurry, leave_out};
use super::super::step::{act, go, pause, reach};
use super::steps::{AT_ONCE, plug};
use super::way::Spoil;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, PlugStep, Topic};
use crate::parts::{Door, Fitted, HandValve, Height, OnOff, Opening, Place, Port, Subject};
use crate::procedure::{Goal, Means};

/// Ways of spoiling what comes before the readings.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil::new(id!("spoil-nothing-smelt-or-probed"), &["no-sniff-on-arrival"], |_| {
        let nose = |action: &Action| matches!(action, Action::Sniff(_) | Action::Probe(_));
        vec![leave_out(What::Such(nose))]
    })
    // What lets gas by may be found by nose and detector alone.
    .besides(|g| !g.alarmed && !g.mends_by(Repair::ReplaceGasValve)),
    Spoil::new(id!("spoil-smelt-and-probed-at-head-height-only"), &["head-height-only"], |_| {
        let low = |action: &Action| {
            matches!(action, Action::Sniff(Height::Floor) | Action::Probe(Height::Floor))
        };
        vec![leave_out(What::Such(low))]
    })
    // What lets gas by may be found by nose and detector alone.
    .besides(|g| !g.alarmed),
    Spoil::new(id!("spoil-customer-not-told-that-work-starts"), &["work-not-announced"], |_| {
        vec![leave_out(Action::Tell(Topic::WorkStarts))]
    }),
    Spoil::new(id!("spoil-propane-lit-with-the-window-shut"), &["not-aired"], |_| {
        vec![leave_out(Goal::Aired(Opening::Open))]
    })
    // What leaks calls the alarm where no window is open.
    .besides(|g| !g.alarmed && !g.mends_by(Repair::ReplaceGasValve)),
    Spoil::new(id!("spoil-lit-on-parts-for-the-other-gas"), &["wrong-conversion-fired"], |g| {
        let lit = vec![
            reach(Goal::GasOn),
            reach(Goal::Burning(Some(g.first()), Means::Thermostat)),
            pause(5.0),
            reach(Goal::HeatOff),
            reach(Goal::Standing),
            reach(Goal::Power(OnOff::Off)),
            reach(Goal::Valve(HandValve::Furnace, Opening::Closed)),
            reach(Goal::Door(Door::Burner, Fitted::On)),
        ];
        vec![before(Goal::Tagged, lit)]
    })
    // A furnace without this gas's springs and orifices is left shut off before it was lit once.
    .with_work_of_its_own()
    .besides(|g| g.wrong_parts),
    Spoil::new(id!("spoil-a-look-round-after-the-alarm"), &["worked-on-after-alarm"], |_| {
        let look = vec![go(Place::PlantRoom), act(Action::Look(Subject::Plate))];
        vec![before(Action::Tell(Topic::GetOut), look)]
    }),
    Spoil::new(id!("spoil-low-gas-switch-not-looked-at"), &["conversion-not-proven"], |_| {
        vec![leave_out(Action::Look(Subject::LowGasSwitch))]
    })
    // Only a furnace on propane is asked for that switch.
    .besides(|g| g.propane),
    Spoil::new(id!("spoil-power-left-on"), &["power-left-on"], |_| {
        vec![leave_out(Action::FurnaceSwitch(OnOff::Off))]
    })
    // With the power on, most repairs are refused.
    .besides(|g| g.mends().next().is_none()),
    Spoil::new(
        id!("spoil-manual-valve-not-shut-before-the-inlet-port"),
        &["opened-inlet-under-gas"],
        |_| {
            let open = reach(Goal::Valve(HandValve::Furnace, Opening::Open));
            vec![before(plug(Port::Inlet, PlugStep::SpinOut), vec![open])]
        },
    ),
    Spoil::new(
        id!("spoil-no-wait-after-breaking-the-inlet-plug-loose"),
        &["opened-on-trapped-gas"],
        |_| vec![hurry(plug(Port::Inlet, PlugStep::SpinOut), AT_ONCE)],
    ),
    Spoil::new(
        id!("spoil-manual-valve-open-while-the-manifold-plug-is-loosened"),
        &["loosened-with-cock-open"],
        |_| {
            let open = reach(Goal::Valve(HandValve::Furnace, Opening::Open));
            vec![before(plug(Port::Manifold, PlugStep::BreakLoose), vec![open])]
        },
    ),
    Spoil::new(
        id!("spoil-a-call-while-the-manifold-port-stands-open"),
        &["called-with-port-open"],
        |g| {
            let call = vec![
                reach(Goal::Power(OnOff::On)),
                reach(Goal::Called(Some(g.first()), Means::Thermostat)),
                pause(4.0),
                reach(Goal::HeatOff),
                reach(Goal::Power(OnOff::Off)),
            ];
            vec![after(Goal::PlugOut(Port::Manifold), call)]
        },
    ),
];
