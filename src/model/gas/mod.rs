//! The gas side of the station: the network from tank or main to the burners, with the places where
//! hands and faults reach into it.

mod build;
mod inside;
mod refit;
mod side;
mod sizes;
mod valve;
mod wear;
mod worn;

pub(crate) use refit::SupplyRegulator;
pub(crate) use side::{GasSide, PortPath};
