//! Springs and orifices for the fuel in the pipes, by plate or label.
//!
//! **Source.** Fitted by plate and label: common practice and installation manuals of two-stage
//! furnaces (makers withheld).
//! **Checked.** `tests/core/faults/mended.rs`.

use super::work::RepairContext;
use crate::appliance::plate::GasFigures;
use crate::catalogue::springs::fit_springs;
use crate::setup::Setup;

/// The springs for the fuel in the pipes, set to the figures: the bench's own where they are that.
pub(crate) fn springs_for_fuel(context: &mut RepairContext<'_>) {
    let fuel = context.setup.fuel;
    if context.sound.furnace.springs_for == fuel {
        let (furnace, sound) = (&mut context.setup.furnace, &context.sound.furnace);
        furnace.springs_for = fuel;
        furnace.valve.springs = sound.valve.springs.clone();
    } else if let Some(figures) = figures_for_fuel(context.setup, context.sound) {
        let set_pa = figures.manifold.map(|_, target| target.pa);
        fit_springs(context.setup, fuel, set_pa);
    }
}

/// The orifices of plate or label for the fuel in the pipes.
pub(crate) fn fit_orifices(context: &mut RepairContext<'_>) {
    if let Some(figures) = figures_for_fuel(context.setup, context.sound) {
        context.setup.furnace.orifices_m.fill(figures.orifice_m);
        context.setup.furnace.orifice_stamp = figures.orifice_stamp;
    }
}

/// Whether plate or label carry figures for the fuel in the pipes.
pub(crate) fn known_fuel(setup: &Setup) -> bool {
    figures_for_fuel(setup, setup.sound.as_deref().unwrap_or(setup)).is_some()
}

/// The figures of plate or label for the fuel in the pipes; the kit's, where its label is missing.
pub(crate) fn figures_for_fuel(setup: &Setup, sound: &Setup) -> Option<GasFigures> {
    [&setup.furnace.plate, &sound.furnace.plate]
        .into_iter()
        .flat_map(|plate| plate.converted_to.iter().chain([&plate.made_for]))
        .find(|figures| figures.fuel == setup.fuel)
        .cloned()
}
