//! Springs that the work left outside the plate.

use super::super::ledger::Ledger;
use super::super::numbers::Number;
use crate::appliance::plate::Band;
use crate::hands::event::EventKind;
use crate::parts::{Level, Port, Stage};
use crate::units::PA_PER_INWC;

/// With less than this between inlet and spring, in pascals, the spring cannot show.
const HEAD_PA: f64 = PA_PER_INWC;
/// How far out of its band a spring is told of, in pascals.
const TELLS_PA: f64 = 0.05 * PA_PER_INWC;

/// A level that was turned and is left outside its band.
#[derive(Debug, Clone, Copy)]
pub(super) struct LeftOutside {
    pub(super) level: Level,
    pub(super) set_pa: f64,
    pub(super) band: Band,
    pub(super) is_high: bool,
}

impl LeftOutside {
    /// The last number of its manifold on the sheet.
    pub(super) fn read<'a>(&self, all: &'a [Number]) -> Option<&'a Number> {
        let full = self.level.is_top().then_some(Stage::FullLoad);
        let stages: Vec<Stage> = [Stage::Firing(self.level)].into_iter().chain(full).collect();
        all.iter().rfind(|it| it.is_for(Port::Manifold, &stages))
    }
}

/// Every level whose screw was turned and whose spring is left outside its band.
pub(super) fn left_outside(l: &Ledger) -> Vec<LeftOutside> {
    let Some((_, _, left)) = l.left() else { return Vec::new() };
    let figures = l.plate().figures();
    let turned = |level: Level| {
        let own = |what: &EventKind| matches!(what, EventKind::Turned { screw, .. } if *screw == level.screw());
        l.events.iter().any(|event| own(&event.what))
    };
    let levels = l.levels().iter().copied().filter(|level| turned(*level));
    let each = levels.map(|level| {
        let (set_pa, target) = (left.set_pa[level], figures.manifold[level]);
        LeftOutside { level, set_pa, band: target.band(), is_high: set_pa > target.pa }
    });
    each.filter(|it| it.band.out_by_pa(it.set_pa) > TELLS_PA).collect()
}

/// Whether a low inlet held the manifold below its spring when a number was read: the inlet stood
/// less than an inch of water above the spring at the level's last turn.
pub(super) fn held_by(l: &Ledger, number: &Number, set_pa: f64) -> bool {
    let level = number.reading.stage.level(l.levels());
    let last = l.events.iter().rev().find_map(|event| {
        let EventKind::Turned { screw, inlet_pa, .. } = event.what else { return None };
        (screw.level() == level).then_some(inlet_pa)
    });
    last.is_some_and(|inlet_pa| inlet_pa - set_pa < HEAD_PA)
}
