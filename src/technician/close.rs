//! Closing a port, and proving it tight at its own working pressure.

use super::hose::back_to_zero;
use super::open::{check_joint, give_gas, hose_off, isolate};
use super::plan::{Step, Technician, act, go, think, with};
use super::run_furnace;
use super::task::pause;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Fitted, Place, Port, PortFill, Tool};
use crate::senses::seen::Seen;

/// Isolates, takes hose and adapter off, starts the plug by hand, snugs it, gives gas back and
/// checks the joint: the inlet plug with the manual valve on, the manifold plug while the burners
/// fire on high.
pub(super) fn close_port(port: Port) -> Vec<Step> {
    let mut steps = isolate();
    steps.push(go(Place::GasValve));
    steps.extend(hose_off(port));
    steps.extend(back_to_zero(port));
    steps.extend([act(Action::Adapter { port, to: Fitted::Off }), act(Action::PutDown)]);
    steps.extend(with(
        Tool::HexKey,
        vec![
            act(Action::Plug { port, step: PlugStep::StartByHand }),
            act(Action::Plug { port, step: PlugStep::SpinIn }),
            act(Action::Plug { port, step: PlugStep::Tighten(6) }),
        ],
    ));
    steps.push(think(match port {
        Port::Inlet => |me, _| gas_and_proof(me, Port::Inlet),
        Port::Manifold => |me, _| gas_and_proof(me, Port::Manifold),
    }));
    steps
}

/// Gas given back and the joint proven; what is left shut off for gas in the air gets none any more.
fn gas_and_proof(me: &mut Technician, port: Port) -> Vec<Step> {
    if me.know.leave_shut_off && me.know.alarms > 0 {
        return Vec::new();
    }
    let mut steps = give_gas();
    steps.extend(prove(port));
    steps
}

/// Checks a closed port's joint: the inlet's with the manual valve on, the manifold's while the
/// burners fire on high.
pub(super) fn prove(port: Port) -> Vec<Step> {
    let mut steps = Vec::new();
    match port {
        Port::Inlet => {
            steps.push(pause(5.0));
            steps.extend(check_joint(port));
        }
        Port::Manifold => {
            steps.extend(run_furnace::run_high());
            steps.extend(check_joint(port));
            steps.push(think(|_, seen| run_furnace::jumper(seen, Fitted::Off)));
            steps.push(go(Place::Hall));
            steps.push(think(|_, seen| run_furnace::call_off(seen)));
        }
    }
    steps
}

/// Closes the port that the hose or the adapter is in, if any; seen from the gas valve.
pub(super) fn close_open(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    let Some(burners) = seen.furnace.as_ref().and_then(|f| f.burners.as_ref()) else {
        return Vec::new();
    };
    let open =
        |port: Port| matches!(burners.ports[port].fill, PortFill::Hose(_) | PortFill::BareAdapter);
    if open(Port::Inlet) {
        close_port(Port::Inlet)
    } else if open(Port::Manifold) {
        close_port(Port::Manifold)
    } else {
        Vec::new()
    }
}
