//! Quarterturn: a practice simulator for setting gas pressures on a single- or two-stage furnace.
//!
//! Read in this order: [`words`], [`units`] and [`rng`], then [`physics`] (gas in pipes and parts),
//! `appliance`, `site` and `instrument` (what stands in the house and in the hand), [`parts`] and
//! [`setup`], [`model`], [`catalogue`], [`senses`] and [`hands`], [`sound`], [`bench`] (all of it together: one
//! way in, one way out), [`measure`], `scenario`, `record`, `marking` and `technician`.

// Its macros `t!` and `id!` are known in all modules below.
#[macro_use]
pub mod words;

pub mod appliance;
pub mod bench;
pub mod catalogue;
pub mod hands;
pub mod instrument;
pub mod marking;
pub mod measure;
pub mod model;
pub mod parts;
pub mod physics;
pub mod procedure;
pub mod record;
pub mod rng;
pub mod rules;
pub mod scenario;
pub mod senses;
pub mod setup;
pub mod site;
pub mod sound;
pub mod technician;
pub mod units;

#[cfg(feature = "fidelity")]
pub mod chart;
#[cfg(feature = "cli")]
pub mod cli;
#[cfg(feature = "fidelity")]
pub mod fidelity;
#[cfg(feature = "panels")]
pub mod panels;

#[cfg(feature = "app")]
pub mod app;
