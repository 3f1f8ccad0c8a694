//! What was wrong, in the trade's own words: the part of the system, the cause, what was done about
//! it, and what speaks for it. Which cause a fault of the catalogue is stands in
//! `assets/catalogue/causes.ron`.

use enum_map::Enum;
use serde::{Deserialize, Serialize};

named! {
    /// Part of the system that a cause is looked for in first.
    SystemPart {
        /// Supply, as the trade calls it.
        Supply = "supply", t!("system-part-supply");
        /// House piping, as the trade calls it.
        HousePiping = "house-piping", t!("system-part-house-piping");
        /// Gas valve, as the trade calls it.
        GasValve = "gas-valve", t!("system-part-gas-valve");
        /// Burners, orifices and heat exchanger.
        Burners = "burners", t!("system-part-burners");
        /// Combustion air, house air and vent.
        Air = "air", t!("system-part-air");
        /// Controls and safety devices.
        Controls = "controls", t!("system-part-controls");
        /// Measuring gear, as the trade calls it.
        MeasuringGear = "measuring-gear", t!("system-part-measuring-gear");
        /// A leak, as the trade calls it.
        Leak = "leak", t!("system-part-leak");
        /// Nothing found, as the trade calls it.
        Nothing = "nothing", t!("system-part-nothing");
    }
}

named! {
    /// What can be wrong, as finely as it can be told apart with what the van carries.
    Cause {
        /// Supply regulator set too low.
        SupplySetLow = "supply-set-low", t!("cause-supply-set-low");
        /// Supply regulator set too high.
        SupplySetHigh = "supply-set-high", t!("cause-supply-set-high");
        /// Far too much pressure from the supply at rest.
        SupplyTooHigh = "supply-too-high", t!("cause-supply-too-high");
        /// Supply regulator creeps: its seat lets gas by at rest.
        SupplyCreeps = "supply-creeps", t!("cause-supply-creeps");
        /// Vent of the supply regulator blocked.
        RegulatorVentBlocked = "regulator-vent-blocked", t!("cause-regulator-vent-blocked");
        /// Supply regulator lets gas out of its vent.
        RegulatorVents = "regulator-vents", t!("cause-regulator-vents");
        /// Supply regulator too small for the load.
        RegulatorTooSmall = "regulator-too-small", t!("cause-regulator-too-small");
        /// Too little gas comes to the supply regulator.
        TooLittleBeforeRegulator = "too-little-before-regulator", t!("cause-too-little-before-regulator");
        /// Pressure in the main too low.
        MainPressureLow = "main-pressure-low", t!("cause-main-pressure-low");
        /// Line regulator stands wide open.
        LineRegulatorFailed = "line-regulator-failed", t!("cause-line-regulator-failed");
        /// Tank nearly empty, as the trade calls it.
        TankNearlyEmpty = "tank-nearly-empty", t!("cause-tank-nearly-empty");
        /// Tank too cold for what is drawn.
        TankCold = "tank-cold", t!("cause-tank-cold");
        /// Regulator ices up, as the trade calls it.
        RegulatorIcesUp = "regulator-ices-up", t!("cause-regulator-ices-up");
        /// First-stage regulator gives too little.
        FirstStageWeak = "first-stage-weak", t!("cause-first-stage-weak");
        /// One regulator straight on the tank, for a whole house.
        SingleStageRegulator = "single-stage-regulator", t!("cause-single-stage-regulator");
        /// Excess-flow valve shuts under load.
        ExcessFlowShuts = "excess-flow-shuts", t!("cause-excess-flow-shuts");
        /// Gas of a low heating value.
        GasLean = "gas-lean", t!("cause-gas-lean");
        /// Gas has lost its odor.
        OdorFaded = "odor-faded", t!("cause-odor-faded");
        /// Trunk too narrow for all appliances.
        TrunkTooNarrow = "trunk-too-narrow", t!("cause-trunk-too-narrow");
        /// Connector kinked, as the trade calls it.
        ConnectorKinked = "connector-kinked", t!("cause-connector-kinked");
        /// Manual valve found part open.
        ManualValvePartOpen = "manual-valve-part-open", t!("cause-manual-valve-part-open");
        /// Manual valve found shut.
        ManualValveShut = "manual-valve-shut", t!("cause-manual-valve-shut");
        /// Water in the line.
        WaterInLine = "water-in-line", t!("cause-water-in-line");
        /// Air in the line.
        AirInLine = "air-in-line", t!("cause-air-in-line");
        /// Branch to the furnace too narrow or too long.
        BranchTooNarrow = "branch-too-narrow", t!("cause-branch-too-narrow");
        /// Low stage set too low.
        LowSetLow = "low-set-low", t!("cause-low-set-low");
        /// Low stage set too high.
        LowSetHigh = "low-set-high", t!("cause-low-set-high");
        /// High stage set too low.
        HighSetLow = "high-set-low", t!("cause-high-set-low");
        /// High stage set too high.
        HighSetHigh = "high-set-high", t!("cause-high-set-high");
        /// Manifold pressure set too low.
        ManifoldSetLow = "manifold-set-low", t!("cause-manifold-set-low");
        /// Manifold pressure set too high.
        ManifoldSetHigh = "manifold-set-high", t!("cause-manifold-set-high");
        /// High screw run to its bottom.
        HighScrewBottomed = "high-screw-bottomed", t!("cause-high-screw-bottomed");
        /// Cap of a screw found missing.
        CapMissing = "cap-missing", t!("cause-cap-missing");
        /// Springs for another gas.
        SpringsForOtherGas = "springs-for-other-gas", t!("cause-springs-for-other-gas");
        /// Inlet screen of the gas valve blocked.
        InletScreenBlocked = "inlet-screen-blocked", t!("cause-inlet-screen-blocked");
        /// Coil of the high stage dead.
        HighCoilDead = "high-coil-dead", t!("cause-high-coil-dead");
        /// Gas valve lets gas by.
        ValveLetsBy = "valve-lets-by", t!("cause-valve-lets-by");
        /// Gas valve shuts slowly.
        ValveShutsSlowly = "valve-shuts-slowly", t!("cause-valve-shuts-slowly");
        /// Hose of the burner box off the gas valve.
        BoxHoseOff = "box-hose-off", t!("cause-box-hose-off");
        /// Regulator of the gas valve hunts.
        ValveRegulatorHunts = "valve-regulator-hunts", t!("cause-valve-regulator-hunts");
        /// Switch on the gas valve found off.
        ValveSwitchOff = "valve-switch-off", t!("cause-valve-switch-off");
        /// Main coil of the gas valve dead.
        MainCoilDead = "main-coil-dead", t!("cause-main-coil-dead");
        /// Furnace not converted to the gas in the pipes.
        NotConverted = "not-converted", t!("cause-not-converted");
        /// Orifices for another gas.
        OrificesForOtherGas = "orifices-for-other-gas", t!("cause-orifices-for-other-gas");
        /// Orifices too large, as the trade calls it.
        OrificesTooLarge = "orifices-too-large", t!("cause-orifices-too-large");
        /// Orifice plugged, as the trade calls it.
        OrificePlugged = "orifice-plugged", t!("cause-orifice-plugged");
        /// Not derated for the altitude.
        NotDerated = "not-derated", t!("cause-not-derated");
        /// Burners dirty, or igniter out of its place.
        BurnersDirty = "burners-dirty", t!("cause-burners-dirty");
        /// Heat exchanger holed, as the trade calls it.
        ExchangerHoled = "exchanger-holed", t!("cause-exchanger-holed");
        /// Vent blocked, as the trade calls it.
        VentBlocked = "vent-blocked", t!("cause-vent-blocked");
        /// Air opening covered, as the trade calls it.
        AirOpeningCovered = "air-opening-covered", t!("cause-air-opening-covered");
        /// Condensate trap blocked, water in the draft hose.
        TrapBlocked = "trap-blocked", t!("cause-trap-blocked");
        /// Condensate trap dry, as the trade calls it.
        TrapDry = "trap-dry", t!("cause-trap-dry");
        /// Filter blocked, as the trade calls it.
        FilterBlocked = "filter-blocked", t!("cause-filter-blocked");
        /// Registers closed by hand.
        RegistersClosed = "registers-closed", t!("cause-registers-closed");
        /// Blower set too slow.
        BlowerTooSlow = "blower-too-slow", t!("cause-blower-too-slow");
        /// Flame rod under a film.
        FlameRodFilmed = "flame-rod-filmed", t!("cause-flame-rod-filmed");
        /// Burners poorly grounded, as the trade calls it.
        GroundPoor = "ground-poor", t!("cause-ground-poor");
        /// Igniter weak, as the trade calls it.
        IgniterWeak = "igniter-weak", t!("cause-igniter-weak");
        /// Low pressure switch does not close.
        LowSwitchStaysOpen = "low-switch-stays-open", t!("cause-low-switch-stays-open");
        /// Low pressure switch does not open.
        LowSwitchStaysClosed = "low-switch-stays-closed", t!("cause-low-switch-stays-closed");
        /// High pressure switch does not close.
        HighSwitchStaysOpen = "high-switch-stays-open", t!("cause-high-switch-stays-open");
        /// Hose to the pressure switches split.
        DraftHoseSplit = "draft-hose-split", t!("cause-draft-hose-split");
        /// Hose to the pressure switches off.
        DraftHoseOff = "draft-hose-off", t!("cause-draft-hose-off");
        /// Jumper found across a safety switch.
        SafetyJumpered = "safety-jumpered", t!("cause-safety-jumpered");
        /// Inducer does not turn.
        InducerDead = "inducer-dead", t!("cause-inducer-dead");
        /// Fuse of the control blown.
        ControlFuseBlown = "control-fuse-blown", t!("cause-control-fuse-blown");
        /// Roll-out switch found tripped.
        RolloutTripped = "rollout-tripped", t!("cause-rollout-tripped");
        /// Circuit of the thermostat open.
        ThermostatCircuitOpen = "thermostat-circuit-open", t!("cause-thermostat-circuit-open");
        /// Second stage never called.
        SecondStageNotCalled = "second-stage-not-called", t!("cause-second-stage-not-called");
        /// High always called, as the trade calls it.
        HighAlwaysCalled = "high-always-called", t!("cause-high-always-called");
        /// Low-gas switch opens too early.
        LowGasSwitchOpensEarly = "low-gas-switch-opens-early", t!("cause-low-gas-switch-opens-early");
        /// Switch of the furnace found off.
        FurnaceSwitchOff = "furnace-switch-off", t!("cause-furnace-switch-off");
        /// Limit opens too early.
        LimitOpensEarly = "limit-opens-early", t!("cause-limit-opens-early");
        /// Control board dead, as the trade calls it.
        ControlBoardDead = "control-board-dead", t!("cause-control-board-dead");
        /// Manometer's zero off, as the trade calls it.
        MeterZeroOff = "meter-zero-off", t!("cause-meter-zero-off");
        /// Manometer's zero drifts, as the trade calls it.
        MeterZeroDrifts = "meter-zero-drifts", t!("cause-meter-zero-drifts");
        /// Manometer's hose leaks, as the trade calls it.
        MeterHoseLeaks = "meter-hose-leaks", t!("cause-meter-hose-leaks");
        /// Water in the manometer's hose.
        MeterHoseWet = "meter-hose-wet", t!("cause-meter-hose-wet");
        /// Manometer's hose pinched, as the trade calls it.
        MeterHosePinched = "meter-hose-pinched", t!("cause-meter-hose-pinched");
        /// Hole of the inlet port blocked.
        InletTapBlocked = "inlet-tap-blocked", t!("cause-inlet-tap-blocked");
        /// Hole of the manifold port blocked.
        ManifoldTapBlocked = "manifold-tap-blocked", t!("cause-manifold-tap-blocked");
        /// Manometer set to another unit.
        MeterUnitWrong = "meter-unit-wrong", t!("cause-meter-unit-wrong");
        /// Manometer's battery flat, as the trade calls it.
        MeterBatteryLow = "meter-battery-low", t!("cause-meter-battery-low");
        /// Manometer's range too small.
        MeterRangeSmall = "meter-range-small", t!("cause-meter-range-small");
        /// Plug of the inlet port found loose.
        InletPlugLoose = "inlet-plug-loose", t!("cause-inlet-plug-loose");
        /// Plug of the manifold port found loose.
        ManifoldPlugLoose = "manifold-plug-loose", t!("cause-manifold-plug-loose");
        /// Plug found across its thread.
        PlugCrossThreaded = "plug-cross-threaded", t!("cause-plug-cross-threaded");
        /// Boss of a port cracked.
        BossCracked = "boss-cracked", t!("cause-boss-cracked");
        /// Adapter left open in a port.
        AdapterLeftIn = "adapter-left-in", t!("cause-adapter-left-in");
        /// Union leaks, as the trade calls it.
        UnionLeaks = "union-leaks", t!("cause-union-leaks");
        /// Connector leaks, as the trade calls it.
        ConnectorLeaks = "connector-leaks", t!("cause-connector-leaks");
        /// Gas in the air, its source not found.
        GasInTheAir = "gas-in-the-air", t!("cause-gas-in-the-air");
        /// Nothing found wrong, as the trade calls it.
        NothingFound = "nothing-found", t!("cause-nothing-found");
    }
}
