//! Kinds of equipment that a job's furnace may have, as far as hands or eyes meet them.

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

/// Equipment of a job that is chosen by its kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub struct Scene {
    /// The gas valve's body.
    pub valve: ValveBody,
}
