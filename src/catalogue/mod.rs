//! The catalogue: faults and repairs by name, each an edit of a [`Setup`](crate::setup::Setup), with
//! what is right, what tempts and what harms. It plays no bench; the model does not know it.

pub mod fault;
pub mod repair;
mod springs;
