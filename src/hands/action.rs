//! The one way in: everything a person, a script or a technician can do.

use serde::{Deserialize, Serialize};

use crate::catalogue::repair::Repair;
use crate::parts::{
    Cause, Door, Duty, Ending, Fitted, Gauge, HandValve, Height, Joint, JointVerdict, LowSide,
    OnOff, Opening, OtherAppliance, Place, Port, Push, Reading, Screw, Spot, Subject, Tool, Window,
    WrittenFinding,
};
use crate::physics::valve::HandleAngle;
use crate::units::PressureUnit;

/// One thing done by hand, by eye or by voice. Plain data; numbers are whole, so that a record
/// reads back to exactly the same action.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Action {
    /// Walk to a place.
    Go(Place),
    /// Look at something closely; what is seen is noted.
    Look(Subject),
    /// Smell the air at a height.
    Sniff(Height),
    /// Hold the gas detector at a height (it must be in hand).
    Probe(Height),
    /// Take a tool into the empty hand.
    Take(Tool),
    /// Put down what is in the hand.
    PutDown,
    /// Open or close a window.
    Window {
        /// Window in hall or plant room.
        window: Window,
        /// What it shall be.
        to: Opening,
    },
    /// Take a furnace door off or put it on.
    Door {
        /// Burner door or blower door.
        door: Door,
        /// What it shall be.
        to: Fitted,
    },
    /// The furnace's service switch.
    FurnaceSwitch(OnOff),
    /// The thermostat's heat switch.
    ThermostatMode(OnOff),
    /// The thermostat's setpoint, in half degrees Fahrenheit (141 is 70.5 °F).
    Setpoint(i16),
    /// The short wire between R and W2 on the furnace control.
    StageJumper(Fitted),
    /// The switch on the gas valve.
    ValveSwitch(OnOff),
    /// Turn a hand valve to an angle from shut, in degrees (0 shut, 90 open).
    #[serde(rename = "cock")]
    HandValve {
        /// Hand valve that is turned.
        #[serde(rename = "cock")]
        hand_valve: HandValve,
        /// The handle's angle, 0 to 90.
        degrees: i16,
    },
    /// Turn another appliance on (it then burns at its full rate) or off.
    #[serde(rename = "neighbor")]
    OtherAppliance {
        /// Appliance that is turned on or off.
        #[serde(rename = "neighbor")]
        appliance: OtherAppliance,
        /// What it shall be.
        to: OnOff,
    },
    /// Take the cap off a screw or put it on (slotted driver).
    Cap {
        /// Screw under the cap.
        screw: Screw,
        /// What it shall be.
        to: Fitted,
    },
    /// Turn a screw (slotted driver), in eighths of a turn, clockwise positive.
    Turn {
        /// Screw that is turned.
        screw: Screw,
        /// Eighths of a turn, −16 to 16, clockwise positive.
        eighths: i16,
    },
    /// A plug in a port.
    Plug {
        /// Port that the plug belongs to.
        port: Port,
        /// What to do with it.
        step: PlugStep,
    },
    /// Screw the barbed adapter into an open port, or take it out.
    Adapter {
        /// Port that the adapter goes into.
        port: Port,
        /// What it shall be.
        to: Fitted,
    },
    /// Push the manometer's hose onto the adapter in a port.
    HoseOn {
        /// Port with the adapter.
        port: Port,
        /// Over both barbs, or the first only.
        push: Push,
    },
    /// Pull the hose off; its end is open to the air.
    HoseOff,
    /// The manometer's power button.
    MeterPower(OnOff),
    /// The manometer's zero button.
    MeterZero,
    /// The manometer's unit button, up to the wanted unit.
    MeterUnit(PressureUnit),
    /// Put the manometer's low side to something.
    MeterLowSide(LowSide),
    /// Brush leak fluid on a joint.
    LeakFluid(Joint),
    /// Wipe a joint dry.
    Wipe(Joint),
    /// Reset the roll-out switches.
    ResetRollout,
    /// Mend, replace or clean something.
    Mend(Repair),
    /// Hold the instrument in hand to a spot. The microammeter is clipped in there.
    Measure(Spot),
    /// Take the microammeter's clips off the flame rod's wire.
    Unclip,
    /// Press the stopwatch's button.
    Stopwatch(StartStop),
    /// Write on the job sheet what the instrument at a spot shows.
    WriteMeasured(Spot),
    /// Put the hose to another instrument for pressure.
    Gauge(Gauge),
    /// Fill the water column to its zero again.
    FillColumn,
    /// Write a reading on the job sheet.
    Write(Reading),
    /// Write on the job sheet what a leak check showed.
    WriteJoint {
        /// Joint that was checked.
        joint: Joint,
        /// Verdict of the leak check.
        verdict: JointVerdict,
    },
    /// Write on the job sheet what the leak check of the whole piping showed: the manometer on the inlet
    /// port, the supply shut, nothing burning.
    WritePiping(JointVerdict),
    /// Write on the job sheet what was wrong, what was done about it, and what speaks for it.
    WriteFinding(WrittenFinding),
    /// Strike a finding from the job sheet.
    StrikeFinding(Cause),
    /// Hang or remove the warning tag on the furnace.
    Tag(Fitted),
    /// Call somebody by telephone.
    Call(Contact),
    /// Tell the householder something.
    Tell(Topic),
    /// End the job: hand over and leave.
    HandOver(HandOver),
}

impl Action {
    /// The hand valve that this shuts, if it does.
    #[must_use]
    pub fn shuts(&self) -> Option<HandValve> {
        let Self::HandValve { hand_valve, degrees } = self else { return None };
        HandleAngle::from_deg(*degrees).filter(|it| it.is_shut()).map(|_| *hand_valve)
    }
}

/// A press of the stopwatch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum StartStop {
    /// Start, counting from nought.
    Start,
    /// Stop, with the time left standing.
    Stop,
}

/// A step with a port plug. Turning needs the hex key, but for the fingers' part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PlugStep {
    /// Break it loose with the short arm.
    BreakLoose,
    /// Spin it out with the long arm and lift it off.
    SpinOut,
    /// Set it to the hole and start the thread with the fingers.
    StartByHand,
    /// Set it to the hole and start it with the key.
    StartByKey,
    /// Spin it in, key between the fingers, until it stops.
    SpinIn,
    /// Tighten with the short arm, in eighths of a turn (negative loosens), −8 to 8.
    Tighten(i16),
}

/// Person or office to call.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Contact {
    /// Whoever owns the supply: the gas utility or the propane supplier.
    SupplyOwner,
    /// The emergency number, for gas in the house.
    Emergency,
}

/// Something to say to the householder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Topic {
    /// That heat will be off for a while and gas may be smelt.
    WorkStarts,
    /// Where the shut-offs are and what to do at a smell of gas.
    GasSmellDrill,
    /// That the appliance is unsafe and stays off.
    Unsafe,
    /// To leave the house at once.
    GetOut,
}

/// What is said at the end.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct HandOver {
    /// How the job ends.
    pub ending: Ending,
    /// What was not done here and must still be done on a real job.
    pub not_done: Vec<Duty>,
}
