//! Closing a port, and proving it tight at its own working pressure.

use super::hose::back_to_zero;
use super::mend::check;
use super::mind::Mind;
use super::run_furnace::run_full;
use super::step::{Step, fluid_first, give_gas, go, hose_off, isolate, pause, reach, stop, think};
use crate::parts::{Place, Port, PortFill};
use crate::procedure::Goal;
use crate::senses::seen::Seen;

/// Isolates, takes hose and adapter off, starts the plug by hand, snugs it, gives gas back and
/// checks the joint: the inlet plug with the manual valve on, the manifold plug while the burners
/// fire on high.
pub(super) fn close_port(port: Port) -> Vec<Step> {
    let mut steps = shut_port(port);
    steps.push(think(move |me, _| gas_and_proof(me, port)));
    steps
}

/// The same without gas and proof.
pub(super) fn shut_port(port: Port) -> Vec<Step> {
    let mut steps = isolate();
    steps.push(go(Place::GasValve));
    steps.extend(hose_off());
    steps.extend(back_to_zero(port));
    steps.extend([reach(Goal::Closed(port)), reach(Goal::HandEmpty)]);
    steps
}

/// Gas given back and the joint proven; what is left shut off for gas in the air gets none any more.
fn gas_and_proof(me: &mut Mind, port: Port) -> Vec<Step> {
    if me.know.leave_shut_off && me.know.alarm.count > 0 {
        return Vec::new();
    }
    let mut steps = Vec::new();
    if port == Port::Inlet {
        steps.push(fluid_first());
    }
    steps.extend(give_gas());
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
            steps.extend(check(port.joint()));
        }
        Port::Manifold => {
            steps.extend(run_full());
            steps.extend(check(port.joint()));
            steps.extend(stop());
        }
    }
    steps
}

/// Closes the port that the hose or the adapter is in, if any; seen from the gas valve.
pub(super) fn close_open(seen: &Seen) -> Vec<Step> {
    let Some(burners) = seen.furnace.as_ref().and_then(|f| f.burners.as_ref()) else {
        return Vec::new();
    };
    let open = |port: Port| {
        let fill = burners.ports[port].fill;
        fill.hose().is_some() || matches!(fill, PortFill::BareAdapter | PortFill::TapOpen)
    };
    if open(Port::Inlet) {
        close_port(Port::Inlet)
    } else if open(Port::Manifold) {
        close_port(Port::Manifold)
    } else {
        Vec::new()
    }
}
