//! What is to be reached, and the answer when a goal is asked for its next step.

use super::awaited::Awaited;
use super::memory::Memory;
use crate::hands::action::{Action, Topic};
use crate::parts::{
    Door, Fitted, HandValve, Height, Joint, Level, OnOff, Opening, OtherAppliance, Place, Port,
    Screw, Spot, Subject, Tool,
};
use crate::senses::seen::Seen;

/// How the high level is called.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Means {
    /// By the thermostat's setpoint.
    Thermostat,
    /// By the setpoint, no further above the room than a call of the first level needs: a room that
    /// cools meanwhile calls no other level.
    LeastSetpoint,
    /// By the wire between R and W2, with a call of the thermostat.
    Wire,
}

/// A state that a person can bring about and see.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Goal {
    /// The person stands at a place.
    At(Place),
    /// Nothing is in the hand.
    HandEmpty,
    /// A tool is in the hand.
    InHand(Tool),
    /// Something was looked at closely, with what stands in front of it out of the way.
    Looked(Subject),
    /// The same since the person came here, whatever was noted before.
    LookedHere(Subject),
    /// The air was smelt at a height since the person came here.
    Smelt(Height),
    /// The thermostat's heat switch is off.
    HeatOff,
    /// Burners are out and the fans have stopped.
    Standing,
    /// Heat off, furnace still, power off, manual valve shut, burner door off, valve switch off.
    Isolated,
    /// Service switch of the furnace.
    Power(OnOff),
    /// Door of the furnace, on or off.
    Door(Door, Fitted),
    /// A hand valve, open or shut.
    Valve(HandValve, Opening),
    /// The switch on the gas valve.
    ValveSwitch(OnOff),
    /// The wire between R and W2.
    Jumper(Fitted),
    /// The plant room's window.
    Aired(Opening),
    /// Manual valve open, valve switch on, blower door and power on.
    GasOn,
    /// The manometer is in sight: the person stands where it hangs, or carries it.
    MeterInSight,
    /// The manometer is on and past its first moments.
    MeterOn,
    /// The manometer has been on for so long that its zero no longer drifts.
    MeterWarm,
    /// The manometer is on, shows inches of water and was zeroed in open air.
    MeterReady,
    /// Nothing is in a port but the adapter, or the hose on it.
    PlugOut(Port),
    /// The adapter is in a port.
    AdapterIn(Port),
    /// The hose is on a port, pushed fully on, the manometer ready before.
    HoseOn(Port),
    /// The hose is on a port, pushed fully on, the manometer left as it came out of the bag.
    HoseOnAsFound(Port),
    /// The hose is off, with no pressure left in it.
    HoseOff,
    /// The adapter is out of a port.
    AdapterOut(Port),
    /// A plug is in a port and snug.
    Closed(Port),
    /// A joint was brushed with leak fluid, watched, written down and wiped.
    JointChecked(Joint),
    /// The whole piping was checked for leaks: shut in, the manometer on the inlet port, watched,
    /// written down, and gas given back.
    PipingChecked,
    /// The shut-in piping was watched and written down.
    PipingWatched,
    /// Another appliance of the house, on or off.
    Other(OtherAppliance, OnOff),
    /// All other appliances, on or off.
    Others(OnOff),
    /// The furnace burns on a level, or stands with nothing called.
    Burning(Option<Level>, Means),
    /// Burning is heard on a level.
    Lit(Option<Level>),
    /// The thermostat calls what a level wants.
    Called(Option<Level>, Means),
    /// The call for heat has ended, the wire is off.
    Stopped,
    /// The cap is on a screw.
    Capped(Screw),
    /// The cap is off a screw and the driver in the hand.
    Uncapped(Screw),
    /// Doors, caps, window, hand: as they belong.
    ClosedUp,
    /// Other appliances and thermostat are as they were found.
    AsFound,
    /// Setpoint and heat switch are as they were found.
    ThermostatAsFound,
    /// The householder was told something.
    Told(Topic),
    /// The warning tag hangs.
    Tagged,
    /// What an instrument shows at a spot stands on the sheet, read while the furnace burned on a
    /// level.
    Measured(Spot, Level),
    /// What was wrong stands on the job sheet, or that nothing was.
    FindingWritten,
}

/// The answer of a goal.
#[derive(Debug, Clone, PartialEq)]
pub enum Step {
    /// The goal is met.
    Met,
    /// This action leads on.
    Do(Action),
    /// Time has to pass.
    Wait(Awaited),
}

impl Step {
    /// This step, or the one after it once it is met or left out.
    pub(super) fn then(self, memory: &Memory, next: impl FnOnce() -> Step) -> Step {
        match self {
            Self::Met => next(),
            Self::Do(action) if memory.leaves_out(&action) => next(),
            Self::Wait(awaited) if memory.waited_out.contains(&awaited) => next(),
            Self::Do(_) | Self::Wait(_) => self,
        }
    }
}

/// An action, and the way to where it can be done; neither where the action is left out.
pub(super) fn after(memory: &Memory, way: impl FnOnce() -> Step, action: Action) -> Step {
    if memory.leaves_out(&action) {
        return Step::Met;
    }
    way().then(memory, || Step::Do(action))
}

/// Does something unless it is done.
pub(super) fn unless(done: bool, action: Action) -> Step {
    if done { Step::Met } else { Step::Do(action) }
}

/// Walks to the first of these places unless the person stands at one of them.
pub(super) fn at(seen: &Seen, places: &[Place]) -> Step {
    match places.first() {
        Some(first) if !places.contains(&seen.place) => Step::Do(Action::Go(*first)),
        Some(_) | None => Step::Met,
    }
}

/// In front of the furnace, standing or kneeling.
pub(super) fn at_furnace(seen: &Seen) -> Step {
    at(seen, &[Place::PlantRoom, Place::GasValve])
}

/// Kneeling at the gas valve; the way leads through the plant room.
pub(super) fn at_valve(seen: &Seen) -> Step {
    at(seen, &[Place::GasValve])
}

pub(super) fn hand_empty(seen: &Seen) -> Step {
    unless(seen.hand.is_none(), Action::PutDown)
}

pub(super) fn in_hand(seen: &Seen, tool: Tool) -> Step {
    match seen.hand {
        Some(held) if held == tool => Step::Met,
        Some(_) => Step::Do(Action::PutDown),
        None => Step::Do(Action::Take(tool)),
    }
}
