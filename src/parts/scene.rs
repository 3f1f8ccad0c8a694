//! Kinds of equipment and of surroundings that a job may have, as far as hands or eyes meet them.

use serde::{Deserialize, Serialize};

/// How the gas valve is built where pressures are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum ValveBody {
    /// Both ports closed by 1/8 in. NPT plugs.
    #[default]
    Plugs,
    /// Both ports are pressure taps with a captive screw: the hose goes straight over a tap.
    TapScrews,
    /// Plugs as well; inlet and manifold port lie side by side.
    SideBySide,
}

/// The room that the furnace stands in. It changes nothing that can be measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Room {
    /// Block walls and joists overhead.
    #[default]
    Basement,
    /// A finished utility closet.
    Closet,
    /// A garage: gypsum board over a concrete curb.
    Garage,
}

/// What the house wall in the yard is made of. It changes nothing that can be measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum YardLook {
    /// Siding of painted clapboards.
    #[default]
    Siding,
    /// Brick in a running bond.
    Brick,
}

/// Equipment and surroundings of a job that are chosen by their kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub struct Scene {
    /// The gas valve's body.
    pub valve: ValveBody,
    // Looks alone are not in the digest: another wall is no other bench.
    /// The room of the furnace.
    #[serde(skip)]
    pub room: Room,
    /// The wall in the yard.
    #[serde(skip)]
    pub yard: YardLook,
}
