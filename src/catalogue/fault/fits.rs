//! What a bench must have so that a fault can be put into it.

use serde::Deserialize;

use crate::appliance::plate::Fuel;
use crate::parts::ValveBody;
use crate::setup::{Setup, SupplyKind};

/// Suction in the burner box from which the furnace counts as one with a sealed box, in pascals.
const SEALED_PA: f64 = 10.0;

/// What a bench must have so that a fault can be put into it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Deserialize)]
pub enum Fits {
    /// Nothing: the fault fits every bench.
    #[default]
    Anywhere,
    /// A propane supply from a tank.
    Tank,
    /// A natural-gas supply through a meter.
    Meter,
    /// A furnace that was made for natural gas and converted to propane, on propane.
    ConvertedToPropane,
    /// A furnace that burns natural gas by its plate, on natural gas.
    NaturalGas,
    /// Four burners or more.
    FourBurners,
    /// A sealed burner box.
    SealedBurnerBox,
    /// The low-gas-pressure switch of a propane kit.
    LowGasSwitch,
    /// A furnace with two firing levels.
    TwoLevels,
    /// Ports that are closed by plugs.
    PortPlugs,
}

impl Fits {
    /// Why a bench lacks it, if it does.
    #[must_use]
    pub fn misfit(self, setup: &Setup) -> Option<&'static str> {
        (!self.holds(setup)).then(|| self.lack())
    }

    fn holds(self, setup: &Setup) -> bool {
        let furnace = &setup.furnace;
        let plate = &furnace.plate;
        match self {
            Self::Anywhere => true,
            Self::Tank => matches!(setup.supply.kind, SupplyKind::Tank { .. }),
            Self::Meter => matches!(setup.supply.kind, SupplyKind::Meter { .. }),
            Self::ConvertedToPropane => {
                let converted = plate.converted_to.as_ref();
                setup.fuel == Fuel::Propane
                    && plate.made_for.fuel == Fuel::Natural
                    && converted.is_some_and(|to| to.fuel == Fuel::Propane)
            }
            Self::NaturalGas => {
                setup.fuel == Fuel::Natural && plate.figures().fuel == Fuel::Natural
            }
            Self::FourBurners => furnace.orifices_m.len() >= 4,
            Self::SealedBurnerBox => furnace.box_suction_pa >= SEALED_PA,
            Self::LowGasSwitch => furnace.low_gas_switch,
            Self::TwoLevels => plate.input.list().len() > 1,
            Self::PortPlugs => setup.scene.valve != ValveBody::TapScrews,
        }
    }

    fn lack(self) -> &'static str {
        match self {
            Self::Anywhere => "",
            Self::Tank => t!("misfit-tank"),
            Self::Meter => t!("misfit-meter"),
            Self::ConvertedToPropane => t!("misfit-converted-to-propane"),
            Self::NaturalGas => t!("misfit-natural-gas"),
            Self::FourBurners => t!("misfit-four-burners"),
            Self::SealedBurnerBox => t!("misfit-sealed-burner-box"),
            Self::LowGasSwitch => t!("misfit-low-gas-switch"),
            Self::TwoLevels => t!("misfit-two-levels"),
            Self::PortPlugs => t!("misfit-port-plugs"),
        }
    }
}
