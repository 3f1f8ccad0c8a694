//! The job as hands have taken it: what is written, what was mended, how it ended.

use super::cycle::CycleWatch;
use crate::catalogue::repair::Repair;
use crate::senses::seen::SheetSeen;
use crate::setup::Setup;
use serde::{Serialize, Serializer};
use std::sync::Arc;

/// The job so far.
#[derive(Debug, Clone, Default, Serialize)]
pub(crate) struct Job {
    /// What the bench was built from, once a repair has changed the model's setup.
    pub(crate) built_from: Option<Box<Setup>>,
    /// The repairs done, in order.
    pub(crate) mended: Vec<Repair>,
    #[serde(serialize_with = "whole")]
    pub(crate) sheet: Arc<SheetSeen>,
    /// How far the present cycle has come.
    pub(crate) cycle: CycleWatch,
}

impl Job {
    /// The sheet to write on. Whoever looks at it meanwhile keeps it as it was.
    pub(super) fn sheet_mut(&mut self) -> &mut SheetSeen {
        Arc::make_mut(&mut self.sheet)
    }
}

/// The sheet as its fields stand, whoever shares it.
fn whole<S: Serializer>(sheet: &Arc<SheetSeen>, to: S) -> Result<S::Ok, S::Error> {
    SheetSeen::serialize(sheet, to)
}
