//! What can show a slip. Each is a question to the list of what happened and to the end state.

use serde::{Deserialize, Serialize};

use crate::units::{Pressure, TimeSpan};

/// A question to the evidence.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Evidence {
    /// Work went on inside after a strong smell or an alarm.
    WorkedOnAfterAlarm,
    /// Gas ignited where it must not.
    Ignition,
    /// Nothing was smelt or probed before the first thing was touched.
    NoSniffOnArrival,
    /// On propane, the floor was not smelt or probed before gas was worked on.
    HeadHeightOnly,
    /// The inlet port was opened with the manual valve open.
    OpenedInletUnderGas,
    /// A port was opened on trapped gas.
    OpenedOnTrappedGas,
    /// The manifold port was opened while the burners fired.
    OpenedManifoldFiring,
    /// Gas flowed from an open port or a bare adapter.
    GasFromOpenPort,
    /// Heat was called with a port open.
    CalledWithPortOpen,
    /// A plug was loosened with the manual valve open.
    LoosenedWithCockOpen,
    /// A plug was taken out with the power on.
    PowerLeftOn,
    /// A number was written that is not what the meter showed there, in this way.
    Written(Slip),
    /// A reading was written with a meter that was off by more than this.
    MeterOff(Pressure),
    /// A reading was written with the hose over the first barb only.
    HoseHalfOn,
    /// The meter was zeroed with more than this on it.
    ZeroedUnderPressure(Pressure),
    /// Low or high was never read at the manifold.
    StageNeverRead,
    /// The inlet was not read in each state of the furnace alone: at rest, and on each level.
    InletStateUnread,
    /// Numbers were written, and none of them as found.
    NothingAsFound,
    /// The inlet was never read while the furnace fired.
    NeverReadRunning,
    /// The inlet was never read with the others on.
    NeverReadWithOthers,
    /// The no-flow hold was shorter than the card asks.
    HoldTooShort,
    /// A stage screw was turned before its pressure was written as found.
    TurnedBeforeFound,
    /// A stage screw was turned before the inlet was read on its level, or the trainee's own supply
    /// screw before the inlet was read at rest and under load.
    TurnedBeforeInlet,
    /// A screw was turned with no number on the meter to turn it by.
    TurnedUnseen,
    /// A stage is set above its band with something else holding its pressure down.
    Cranked,
    /// A stage is left outside its band.
    LeftOutsideBand,
    /// A screw was turned more than half a turn at once; turns within this time of each other count
    /// as one.
    BigJumps(TimeSpan),
    /// A stage screw is left at its bottom.
    BottomedLeft,
    /// A stage screw was run to its bottom and backed out again.
    BottomedOnce,
    /// A stage's screw was turned while the other stage burned, or none.
    WrongScrew,
    /// A stage screw was turned whose setting was right as found.
    NeedlessTurn,
    /// A cap is left off.
    CapOff,
    /// A stage was not read again with its cap on after it was set.
    NotReadWithCap,
    /// The supply regulator was turned or worked on though it belongs to somebody else.
    SupplyNotYours,
    /// The inlet was not read again at rest and under full load after the supply was set.
    SupplyNotRechecked,
    /// A supply that the trainee may set is left below what it must deliver.
    SupplyLeftLow,
    /// The supply was set above its limits.
    SupplyOverMaximum,
    /// Label, springs, orifices or low-gas switch were not looked at.
    ConversionNotProven,
    /// The wire between R and W2 is left on.
    JumperLeft,
    /// A wire is left across the contact of a safety device.
    SafetyBypassed,
    /// A repair was done that is dangerous in itself.
    DangerousRepair,
    /// A sound part was swapped: the first so many.
    NeedlessRepair(usize),
    /// More sound parts than so many were swapped.
    PartsOnSuspicion(usize),
    /// More sound things than so many were cleaned, cleared or joined anew.
    CareOnSuspicion(usize),
    /// The furnace was handed over in use with a fault that a repair would have mended.
    FaultLeft,
    /// A fault between the gas and the number on the display was never mended.
    MeterFaultLeft,
    /// A plug is left across its thread.
    CrossThreadLeft,
    /// A plug was started across its thread and mended.
    CrossThreadCaught,
    /// A boss was cracked.
    BossCracked,
    /// A plug is left short of snug.
    PlugLoose,
    /// The adapter or the hose is left in a port.
    AdapterLeft,
    /// A port is left open.
    PortLeftOpen,
    /// A disturbed joint was not checked at all after it was closed.
    JointUnchecked,
    /// A disturbed joint was checked without its working pressure, or too briefly.
    JointCheckedWrongly,
    /// Bubbles grew and the joint was left.
    BubblesLeft,
    /// A joint stands on the sheet as leaking and is in use, or as tight where bubbles grew.
    JointVerdict,
    /// Fluid was put on a joint, and what it showed was neither written nor wiped off.
    JointNotJudged,
    /// The valve switch is left off.
    ValveSwitchOff,
    /// The manual valve or the supply shut-off is left closed or part open.
    CockNotOpen,
    /// Power or thermostat are not as they were found.
    ControlsNotRestored,
    /// A furnace door is left off.
    DoorOff,
    /// The other appliances are not as they were found.
    OthersNotRestored,
    /// No full cycle from the thermostat after the last hand on the gas.
    NoFinalCycle,
    /// The owner of the supply was not called though the supply is out of its limits.
    OwnerNotCalled,
    /// The owner of the supply was called with nothing wrong with it, or the emergency number with no
    /// gas in the air.
    NeedlessCall,
    /// The job did not end as the finding asks.
    WrongEnding,
    /// Shut off, but not tagged or not really shut off.
    NotTagged,
    /// Shut off, but the householder was not told.
    HouseholderNotTold,
    /// Work that was not done was not named at hand-over.
    NotDoneUnsaid,
    /// What stands on the sheet as wrong, or does not stand there.
    Finding(OfFinding),
}

/// What a finding on the sheet, or the want of one, shows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum OfFinding {
    /// What was wrong stands in no finding.
    CauseNotNamed,
    /// A finding names what was not wrong.
    WrongCause,
    /// A finding names what was not wrong, and that word does harm.
    WrongCauseHarms,
    /// A finding's answer is not what was done.
    AnswerContradicts,
    /// Nothing speaks for a finding.
    Unbacked,
    /// No finding was written, with nothing wrong.
    NoneWritten,
}

/// What a number on the sheet is, where it is not what the meter showed there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Slip {
    /// It stood at the other port.
    OtherPort,
    /// It stood at that port in another state of the furnace, its valves or the other appliances.
    OtherState,
    /// The same digits stood there in another unit.
    OtherUnit,
    /// It stands at one leg of the water column alone.
    OneLeg,
    /// It was shown there in passing, before the pressure came to rest.
    Unsettled,
    /// It is what stood there, rounded or cut off too coarsely to judge the plate by.
    Coarse,
    /// Nothing that the meter showed explains it.
    Unfounded,
}
