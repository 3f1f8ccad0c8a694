//! How a job ends.

use serde::{Deserialize, Serialize};

/// How a job ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ending {
    /// The furnace is back in service.
    InService,
    /// The furnace runs, and the owner of the supply has been called to put the supply right.
    SupplyOwnerCalled,
    /// Shut off, tagged and explained.
    ShutOff,
}
