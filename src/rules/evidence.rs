//! What can show a slip. Each is a question to the list of what happened and to the end state, in
//! the order of a job.

use serde::{Deserialize, Serialize};

use crate::units::{Pressure, TemperatureStep, TimeSpan};

/// A question to the evidence.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Evidence {
    /// Gas in the air, and what could light it.
    Hazard(Hazard),
    /// Barriers before a port is opened.
    Isolation(Isolation),
    /// Ports and joints as they are left.
    Sealing(Sealing),
    /// Numbers on the job sheet.
    Writing(Writing),
    /// What was never read or looked at.
    Unread(Unread),
    /// Work that the card asks for and that was not done; grave where it is not named as not done
    /// either.
    LeftOut(LeftOut),
    /// Screws and springs of the firing levels.
    Setting(Setting),
    /// The supply and its regulator.
    Supply(Supply),
    /// Repairs and the faults that they answer.
    Mending(Mending),
    /// How everything was put back.
    Leaving(Leaving),
    /// How the job ended, and what was said.
    Closing(Closing),
}

/// Gas in the air, and what could light it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Hazard {
    /// Work went on inside after a strong smell or an alarm, or somebody went back too early.
    WorkedOnAfterAlarm,
    /// Gas ignited where it must not.
    Ignition,
    /// Nothing was smelt or probed before the first thing was touched.
    NoSniffOnArrival,
    /// On propane, the floor was not smelt or probed before gas was worked on.
    HeadHeightOnly,
    /// On propane, no window was opened before the burners were lit.
    NotAired,
    /// Burners were lit on parts that are not for the gas in the pipes.
    WrongConversionFired,
    /// The house was left for so long with the manometer on a port that stands under gas.
    LeftUnattended(TimeSpan),
}

/// Barriers before a port is opened.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Isolation {
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
}

/// Ports and joints as they are left.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Sealing {
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
    /// A joint, or the piping, stands on the sheet as leaking and is in use; or as tight where bubbles
    /// grew, or where the number fell.
    JointVerdict,
    /// Fluid was put on a joint, and what it showed was neither written nor wiped off.
    JointNotJudged,
    /// The joint with the manometer's adapter was not checked; at the manifold port within this
    /// time of lighting.
    TestJointUnchecked(TimeSpan),
}

/// Numbers on the job sheet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Writing {
    /// A number was written that is not what the meter showed there, in this way.
    Number(Slip),
    /// A reading was written with a meter that was off by more than this.
    MeterOff(Pressure),
    /// A reading was written with the hose over the first barb only.
    HoseHalfOn,
    /// The meter was zeroed with more than this on it.
    ZeroedUnderPressure(Pressure),
    /// A reading was written at another port without a new zero.
    NotZeroedAnew,
    /// A gauge got more pressure than it takes.
    GaugeOverstrained,
    /// The meter's dial was timed while other appliances drew gas.
    RateWithOthersOn,
    /// The temperature rise was written with a door off or a blocked filter.
    RiseDisturbed,
    /// The supply air was written before the furnace had burned so long on its level.
    RiseTooEarly(TimeSpan),
    /// A temperature rise outside the plate's band, written after its level had burned so long, stands
    /// on the sheet of a furnace in use with no finding and no call.
    RiseLeftOff(TimeSpan),
}

/// What was never read or looked at.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Unread {
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
    /// The inlet was not read at rest after flow, with the meter on since the burners stopped, or
    /// sooner than this after it; the card's hold is enough where that is shorter.
    LockUpUnread(TimeSpan),
    /// The inlet was not read again at rest and under full load after the supply was set.
    SupplyNotRechecked,
    /// Label, springs, orifices or low-gas switch were not looked at, or only after a screw was
    /// turned.
    ConversionNotProven,
    /// The flue was not analysed at the full rate after the gas to the burners was changed.
    CombustionNotTaken,
}

/// Work beyond the pressures that a card can ask for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum LeftOut {
    /// Vent, air opening, filter and carbon monoxide alarm, looked at before the burners are lit.
    ArrivalLooks,
    /// Return and supply air at each firing level.
    TemperatureRise,
    /// The flue at the full rate.
    Combustion,
    /// The meter's dial timed at the full rate.
    GasRate,
    /// The piping shut in and watched; due too where a repair opened it, whatever the card asks for.
    PipingLeakCheck,
}

/// Screws and springs of the firing levels.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Setting {
    /// A stage screw was turned before its pressure was written as found.
    TurnedBeforeFound,
    /// A stage screw was turned before the inlet was read on its level, or the trainee's own supply
    /// screw before the inlet was read at rest and under load.
    TurnedBeforeInlet,
    /// A screw was turned with no number on the meter to turn it by.
    TurnedUnseen,
    /// A stage is set above its band with something else holding its pressure down.
    Cranked,
    /// A stage is left outside its band; grave when it over-fires far above the plate.
    LeftOutsideBand,
    /// A firing level's screw was turned more than half a turn at once; turns within this time of each
    /// other count as one.
    BigJumps(TimeSpan),
    /// A stage screw is left at its bottom.
    BottomedLeft,
    /// A stage screw was run to its bottom and backed out again.
    BottomedOnce,
    /// A stage's screw was turned while the other stage burned, or none; grave when that stage is
    /// left outside its band.
    WrongScrew,
    /// A screw was turned by more than so many eighths away from what the plate asks for.
    WrongWay(i16),
    /// A stage screw was turned whose setting was right as found, as far as a meter tells.
    NeedlessTurn,
    /// A stage screw was turned that was right as found, after a temperature rise off the plate.
    RiseByGas,
    /// A cap is left off.
    CapOff,
    /// A stage was not read again with its cap on after it was set.
    NotReadWithCap,
}

/// The supply and its regulator.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Supply {
    /// The supply regulator was turned or worked on though it belongs to somebody else.
    SupplyNotYours,
    /// A supply that the trainee may set is left below what it must deliver.
    SupplyLeftLow,
    /// The supply was set above its limits.
    SupplyOverMaximum,
    /// The supply is left locking up higher than its regulator or the gas valve may see.
    LockUpOverLimit,
}

/// Repairs and the faults that they answer.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Mending {
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
    /// The furnace was handed over in use with a fault that a repair would have mended; grave when
    /// it leaves gas leaking, carbon monoxide over its limit, or the furnace far over-fired.
    FaultLeft,
    /// A fault between the gas and the number on the display was never mended.
    MeterFaultLeft,
    /// The furnace was left to burn with carbon monoxide in its flue over its limit.
    CarbonMonoxideLeft,
    /// The furnace was left to burn far above the plate's input.
    OverFiredLeft,
}

/// How everything was put back.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Leaving {
    /// The wire between R and W2 is left on.
    JumperLeft,
    /// The valve switch is left off.
    ValveSwitchOff,
    /// The manual valve or the supply shut-off is left closed or part open; grave when it stands nearer
    /// across its pipe than along it.
    CockNotOpen,
    /// The service switch or the thermostat is left off, or set lower than found by more than this.
    FurnaceLeftOff(TemperatureStep),
    /// Setpoint, tag, windows, or the doors of a furnace that is shut off, are not as they must be; a
    /// setpoint lower than found by more than this is worse.
    ControlsNotRestored(TemperatureStep),
    /// A door of a furnace that should run is left off.
    DoorOff,
    /// The other appliances are not turned as they were found.
    OthersNotRestored,
    /// An appliance that went out for want of gas was not lit again.
    OthersLeftOut,
    /// No full cycle after the last hand on the gas and the doors: called and ended by the thermostat,
    /// ignition and each level seen at the furnace.
    NoFinalCycle,
    /// Nobody was in the house when the last cycle came to rest.
    ShutDownUnwatched,
}

/// How the job ended, and what was said.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Closing {
    /// The owner of the supply was not called though the supply is out of its limits.
    OwnerNotCalled,
    /// The owner of the supply was called with nothing wrong with it, or the emergency number with no
    /// gas in the air.
    NeedlessCall,
    /// Left in use otherwise than the finding asks; grave when it burns on though it must not.
    WrongEnding,
    /// Left shut off though it should run.
    ShutOffWithoutNeed,
    /// Shut off, but not tagged or not really shut off.
    NotTagged,
    /// Shut off, but the householder was not told.
    HouseholderNotTold,
    /// The householder was not told that the work begins before the heat went off.
    WorkNotAnnounced,
    /// The householder was not told what to do at a smell of gas.
    DrillNotTold,
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
