//! Version 1 of the format: every section and field, with units, limits and defaults.

mod fault;
mod furnace;
mod job;
mod supply;
mod variant;

pub use fault::{Affliction, Choice};
pub use furnace::{Figures, Furnace, Manifold, Plate, Settings, Spring, Valve};
pub use job::{Card, Found, House, Manometer, Marking, RuleChange, StatedHeat};
pub use supply::{
    Copper, Corrugated, Gas, Meter, Neighbor, Neighbors, Pipe, Site, Source, Steel, Supply, Tank,
};
pub use variant::Variant;

use super::shape::section;
use super::value::{Count, Vary};

/// The version of the format that this program writes and reads.
pub const VERSION: u32 = 1;

section! {
    /// A whole job: where it is, what stands there, in which state it is found, what the trainee
    /// is told and which ways of ending it are right.
    Scenario {
        /// Version of the format: 1.
        version: Vary<Count> = required, fixed "for every seat";
        /// A few words for the list of jobs.
        title: String = required, text 120;
        /// What the job is about, in a sentence or two, for the list of jobs. Says nothing of the
        /// faults.
        about: String = required;
        /// Its step in the ladder of jobs: 1 to read, 2 to set, 3 to find, 4 to judge.
        step: Vary<Count> = "1", limits "1" to "4", fixed "for every seat";
        /// What the job teaches, in one sentence, for the list of jobs. Says nothing of the faults.
        aim: Option<String> = (derived "none"), text 240;
        /// Ids of the competencies that the job is for, `C01` to `C22`; `quarterturn explain
        /// competencies` lists them.
        competencies: Vec<String> = "[]", text 3, entries 22;
        /// Hints on this job in the order in which they are given, from a gentle one to a plain
        /// one.
        hints: Vec<String> = "[]", text 400, entries 6;
        /// A note that is shown after the job only: what was wrong, what showed it, and what the
        /// tempting mistake would have been.
        debrief: Option<String> = (derived "none"), text 1600;
        /// Where the house stands.
        site: Site = "()";
        /// The gas in the pipes.
        gas: Gas = required;
        /// Where the gas comes from.
        supply: Supply = required;
        /// Pipe from the supply regulator to the tee in the plant room, in the order of the flow.
        trunk: Vec<Pipe> = required;
        /// Pipe from the tee to the furnace, in the order of the flow. The furnace's manual valve
        /// sits behind the first stretch.
        branch: Vec<Pipe> = required;
        /// The other gas appliances.
        neighbors: Neighbors = required;
        /// The furnace.
        furnace: Furnace = required;
        /// The house around it.
        house: House = "()";
        /// The manometer that the trainee carries.
        manometer: Manometer = "()";
        /// How switches, valves, caps and plugs are found.
        found: Found = "()";
        /// What is wrong: faults of the catalogue, put in one after the other.
        faults: Vec<Affliction> = "[]";
        /// Other settings of the same job, as the other fuel with its supply, plate and card. Each
        /// seat draws the job as it is written or one of these, all with the same chance.
        variants: Vec<Variant> = "[]", entries 3;
        /// What the trainee is told.
        card: Card = required;
        /// How the job is marked.
        marking: Marking = required;
    }
}
