//! The furnace: its plate, its ignition control, its safety devices, burners and air side.

pub mod airside;
pub mod burner;
pub mod draft;
pub mod ignition;
pub mod level;
pub mod plate;
pub mod safety;
pub mod test_point;
