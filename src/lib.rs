//! Quarterturn: a practice simulator for setting gas pressures on a two-stage furnace.
//!
//! Read in this order: [`units`] and [`rng`], then [`physics`] (gas in pipes and parts),
//! `appliance`, `site` and `instrument` (what stands in the house and in the hand), [`parts`] and
//! [`setup`], [`model`], [`catalogue`], [`senses`] and [`hands`], [`bench`] (all of it together: one
//! way in, one way out), [`measure`], `scenario`, `record`, `marking` and `technician`.

pub mod appliance;
pub mod bench;
pub mod catalogue;
pub mod fidelity;
pub mod hands;
pub mod instrument;
pub mod marking;
pub mod measure;
pub mod model;
pub mod parts;
pub mod physics;
pub mod record;
pub mod rng;
pub mod rules;
pub mod scenario;
pub mod senses;
pub mod setup;
pub mod site;
pub mod technician;
pub mod units;

#[cfg(feature = "cli")]
pub mod cli;
#[cfg(feature = "panels")]
pub mod panels;

#[cfg(feature = "app")]
pub mod app;
