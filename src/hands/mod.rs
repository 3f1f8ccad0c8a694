//! What hands can do: the actions, why they are refused, and what they change; what happened.

pub mod action;
mod apply;
mod cycle;
mod done;
pub mod effect;
pub mod event;
mod finding;
mod fluid;
mod job;
mod look;
mod measure;
mod mend;
mod meter;
mod ports;
mod reach;
pub mod refusal;
mod reporting;
mod screws;
mod switches;
mod tools;

pub(crate) use apply::Hands;
pub(crate) use fluid::judge_all_fluid;
pub(crate) use job::Job;
