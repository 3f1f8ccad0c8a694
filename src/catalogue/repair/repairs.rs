//! The repairs by name.

/// Declares the repairs with their ids.
macro_rules! repairs {
    ($( $(#[doc = $doc:literal])+ $variant:ident = $id:literal; )+) => {
        /// A repair, done by hand.
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord,
            serde::Serialize, serde::Deserialize,
        )]
        pub enum Repair { $( $(#[doc = $doc])+ #[serde(rename = $id)] $variant, )+ }

        impl Repair {
            /// All of them, from the yard to the manometer.
            pub const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];

            /// The id in scripts and records.
            #[must_use]
            pub fn id(self) -> &'static str {
                match self { $( Self::$variant => $id, )+ }
            }

            /// The one with this id.
            #[must_use]
            pub fn from_id(id: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.id() == id)
            }
        }
    };
}

repairs! {
    /// Another supply regulator of the right size, set as it should be.
    ReplaceSupplyRegulator = "replace-supply-regulator";
    /// Another first-stage regulator at the tank.
    ReplaceFirstStage = "replace-first-stage";
    /// Two regulators in a row instead of one straight on the tank.
    FitTwoStageRegulators = "fit-two-stage-regulators";
    /// Another excess-flow valve, of the right size.
    ReplaceExcessFlowValve = "replace-excess-flow-valve";
    /// Ice, mud or paint off the regulator's vent.
    ClearRegulatorVent = "clear-regulator-vent";
    /// The vent plugged or taped over. Wrong.
    PlugRegulatorVent = "plug-regulator-vent";
    /// A drill through the blocked vent, and into the diaphragm. Wrong.
    DrillRegulatorVent = "drill-regulator-vent";
    /// Ice in the regulator thawed with warm cloths.
    ThawRegulator = "thaw-regulator";
    /// Ice in the regulator thawed with a flame. Wrong.
    FlameOnRegulator = "flame-on-regulator";
    /// Another connector, of full bore.
    ReplaceConnector = "replace-connector";
    /// The kink bent straight by hand. Wrong.
    StraightenConnector = "straighten-connector";
    /// Water out of the branch, and a drip leg fitted to it.
    EmptyDripLeg = "empty-drip-leg";
    /// The trunk re-piped for the whole load.
    ReplaceTrunk = "replace-trunk";
    /// Air out of the branch.
    PurgeLine = "purge-line";
    /// Dirt off the gas valve's screen.
    CleanInletScreen = "clean-inlet-screen";
    /// The screen taken out for good. Wrong.
    RemoveInletScreen = "remove-inlet-screen";
    /// Another gas valve, with springs for the fuel.
    ReplaceGasValve = "replace-gas-valve";
    /// Another coil for the high stage.
    ReplaceSecondCoil = "replace-high-coil";
    /// The springs for the fuel in the pipes.
    FitSprings = "fit-springs";
    /// The whole conversion kit: springs, orifices, low-gas switch, label.
    FitConversionKit = "fit-conversion-kit";
    /// The burner box's hose back on the gas valve.
    RefitBoxHose = "refit-box-hose";
    /// The orifices of plate or label for the fuel in the pipes.
    FitOrifices = "fit-orifices";
    /// What sits in an orifice taken out.
    CleanOrifices = "clean-orifices";
    /// A drill through the orifices. Wrong.
    DrillOrifices = "drill-orifices";
    /// Smaller orifices, as the height above the sea asks for.
    FitAltitudeOrifices = "fit-altitude-orifices";
    /// Burners cleaned, igniter set in its place.
    CleanBurners = "clean-burners";
    /// What blocks the flue taken out.
    ClearVent = "clear-vent";
    /// What covers the air opening taken off.
    ClearIntake = "clear-intake";
    /// The film off the flame rod.
    CleanFlameRod = "clean-flame-rod";
    /// Burners and cabinet joined well to ground.
    MendBurnerGround = "mend-burner-ground";
    /// Another igniter in its bracket.
    ReplaceIgniter = "replace-igniter";
    /// Another low pressure switch.
    ReplaceFirstSwitch = "replace-low-switch";
    /// Another high pressure switch.
    ReplaceFullSwitch = "replace-high-switch";
    /// Another hose to the pressure switches.
    ReplaceDraftHose = "replace-draft-hose";
    /// The hose pushed back onto the pressure switches.
    RefitDraftHose = "refit-draft-hose";
    /// The condensate trap cleared, water out of housing and hose.
    ClearTrap = "clear-trap";
    /// The condensate trap filled with water.
    PrimeTrap = "prime-trap";
    /// Another control board for the furnace.
    ReplaceControlBoard = "replace-control-board";
    /// The second stage's wire mended, the thermostat set up for two stages.
    MendSecondStageWire = "mend-second-stage-wire";
    /// The thermostat's wire mended.
    MendThermostatWire = "mend-thermostat-wire";
    /// Another filter of the same size.
    ReplaceFilter = "replace-filter";
    /// All registers of the house opened.
    OpenRegisters = "open-registers";
    /// Another inducer, its gasket renewed.
    ReplaceInducer = "replace-inducer";
    /// Another motor and capacitor in the blower.
    ReplaceBlowerMotor = "replace-blower-motor";
    /// Another fuse of the same rating on the control board, what blew it put right.
    ReplaceControlFuse = "replace-control-fuse";
    /// Another low-gas switch on the gas valve.
    ReplaceLowGasSwitch = "replace-low-gas-switch";
    /// A wire across the low pressure switch. Wrong.
    BypassFirstSwitch = "bypass-low-switch";
    /// A wire across the high pressure switch. Wrong.
    BypassFullSwitch = "bypass-high-switch";
    /// A wire across the limit. Wrong.
    BypassLimit = "bypass-limit";
    /// A wire across the roll-out switches. Wrong.
    BypassRollout = "bypass-rollout";
    /// A wire across the low-gas switch. Wrong.
    BypassLowGasSwitch = "bypass-low-gas-switch";
    /// All such wires taken off.
    RemoveBypasses = "remove-bypasses";
    /// Another hose on the manometer.
    SwapMeterHose = "swap-meter-hose";
    /// A fresh battery in the manometer.
    ReplaceMeterBattery = "replace-meter-battery";
    /// Another manometer, with range enough.
    BorrowMeter = "borrow-meter";
    /// The inlet port's tapped hole cleaned.
    CleanInletTap = "clean-inlet-tap";
    /// The manifold port's tapped hole cleaned.
    CleanManifoldTap = "clean-manifold-tap";
    /// A drill into the inlet port. Wrong.
    DrillInletTap = "drill-inlet-tap";
    /// A drill into the manifold port. Wrong.
    DrillManifoldTap = "drill-manifold-tap";
}
