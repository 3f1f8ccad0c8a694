//! Version 1 of the format: every section and field, with units, limits and defaults.

mod fault;
mod furnace;
mod job;
mod supply;
mod variant;

pub use fault::{Affliction, Choice};
pub use furnace::{Figures, Furnace, Manifold, Plate, Settings, Spring, Valve};
pub use job::{Card, Found, House, Manometer, Marking, RuleChange, Scene, StatedHeat};
pub use supply::{
    Copper, Corrugated, Gas, Meter, Neighbor, Neighbors, Pipe, Site, Source, Steel, Supply, Tank,
};
pub use variant::Variant;

use super::shape::section;
use super::value::{Count, Vary};

/// The version of the format that this program writes and reads.
pub const VERSION: u32 = 1;

section! {
    Scenario(id!("format-scenario")) {
        version(id!("format-scenario-version")): Vary<Count> = required,
            fixed id!("fixed-every-seed");
        title(id!("format-scenario-title")): String = required, text 120;
        about(id!("format-scenario-about")): String = required;
        step(id!("format-scenario-step")): Vary<Count> = "1", limits "1" to "4",
            fixed id!("fixed-every-seed");
        aim(id!("format-scenario-aim")): Option<String> = (derived id!("default-none")), text 240;
        competencies(id!("format-scenario-competencies")): Vec<String> = "[]", text 3, entries 22;
        hints(id!("format-scenario-hints")): Vec<String> = "[]", text 400, entries 6;
        debrief(id!("format-scenario-debrief")): Option<String> = (derived id!("default-none")),
            text 1600;
        site(id!("format-scenario-site")): Site = "()";
        gas(id!("format-scenario-gas")): Gas = required;
        supply(id!("format-scenario-supply")): Supply = required;
        trunk(id!("format-scenario-trunk")): Vec<Pipe> = required;
        branch(id!("format-scenario-branch")): Vec<Pipe> = required;
        neighbors(id!("format-scenario-neighbors")): Neighbors = required;
        furnace(id!("format-scenario-furnace")): Furnace = required;
        scene(id!("format-scenario-scene")): Scene = "()";
        house(id!("format-scenario-house")): House = "()";
        manometer(id!("format-scenario-manometer")): Manometer = "()";
        found(id!("format-scenario-found")): Found = "()";
        faults(id!("format-scenario-faults")): Vec<Affliction> = "[]";
        variants(id!("format-scenario-variants")): Vec<Variant> = "[]", entries 3;
        card(id!("format-scenario-card")): Card = required;
        marking(id!("format-scenario-marking")): Marking = required;
    }
}
