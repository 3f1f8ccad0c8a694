//! States under test by their place in the furnace's list of levels.

use crate::parts::Stage;

/// A state under test, whatever the furnace's levels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum At {
    /// At rest: nothing burns.
    Rest,
    /// The level at which the burners light.
    First,
    /// The full rate, the furnace alone.
    Full,
    /// The full rate, with every other appliance on.
    FullLoad,
}

impl At {
    /// Whether the stage stands at this place in the furnace's list.
    pub fn is(self, stage: Stage) -> bool {
        match (self, stage) {
            (Self::Rest, Stage::Rest) | (Self::FullLoad, Stage::FullLoad) => true,
            (Self::First, Stage::Firing(level)) => level.is_first(),
            (Self::Full, Stage::Firing(level)) => level.is_top(),
            (Self::Rest | Self::First | Self::Full | Self::FullLoad, _) => false,
        }
    }
}
