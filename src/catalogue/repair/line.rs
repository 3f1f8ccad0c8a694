//! Repairs on the pipes: trunk, branch, connector, drip leg.
//!
//! **Source.** Shut off, let the pressure go, work, check for leaks: common practice; no used or
//! bent connector again, none inside the cabinet: common practice and IFGC 2018 section 411. Size
//! of the crack in a straightened tube: from memory.
//! **Checked.** `tests/core/faults/mended.rs`, `tests/core/faults/made_worse.rs`.

use super::work::Edit;

/// Crack in a tube that was bent twice, as the diameter of a hole, in metres.
const CRACK_M: f64 = 1.5e-3;
/// Share of a kink that bending back leaves.
const KINK_LEFT: f64 = 0.5;

pub(crate) const REPLACE_CONNECTOR: Edit = |context| {
    let line = &mut context.setup.condition.line;
    line.connector_kinked = 0.0;
    line.connector_crack_m = 0.0;
};

pub(crate) const STRAIGHTEN_CONNECTOR: Edit = |context| {
    let line = &mut context.setup.condition.line;
    line.connector_kinked *= KINK_LEFT;
    line.connector_crack_m = CRACK_M;
};

pub(crate) const EMPTY_DRIP_LEG: Edit = |context| {
    context.setup.condition.line.water_pa = 0.0;
};

pub(crate) const REPLACE_TRUNK: Edit = |context| {
    context.setup.trunk.clone_from(&context.sound.trunk);
};

pub(crate) const PURGE_LINE: Edit = |context| {
    context.setup.condition.line.air_m3 = 0.0;
};
