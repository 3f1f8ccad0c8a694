//! The gas valve on the bench: settling, and its manifold against the inlet.

use super::bench::{in_range, setup};
use super::run::Run;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::units::{PA_PER_INWC, TICK_S};
use crate::words::decimal;

pub(super) fn checks() -> Vec<Check> {
    vec![settling(), inlet()]
}

/// Seconds until a trace stays within `share` of its last value.
fn settled_s(trace: &[f64], share: f64) -> f64 {
    let Some(&last) = trace.last() else { return f64::NAN };
    let outside = trace.iter().rposition(|pa| (pa / last - 1.0).abs() > share);
    #[expect(clippy::cast_precision_loss, reason = "a few hundred ticks")]
    outside.map_or(0.0, |tick| (tick + 1) as f64 * TICK_S)
}

fn settling() -> Check {
    let mut rows = Vec::new();
    for id in ["healthy-natural", "healthy-propane"] {
        let Some(setup) = setup(id) else { continue };
        let mut run = Run::at_rest(setup);
        let trace = run.manifold_to_full(14);
        let tenth = settled_s(&trace, 0.10);
        rows.push(in_range(&t!("row-low-high-within-tenth", id = id), [0.5, 5.0], tenth));
        let hundredth = settled_s(&trace, 0.01);
        rows.push(in_range(&t!("row-low-high-within-1", id = id), [1.0, 10.0], hundredth));
    }
    check("parts.valve.settling", rows)
}

/// Over the plate's inlet range the manifold stays within the makers' tolerance.
fn inlet() -> Check {
    let mut rows = Vec::new();
    for (id, offsets) in
        [("healthy-natural", [-1.5, 2.0, 3.3]), ("healthy-propane", [-0.5, 0.5, 1.8])]
    {
        for offset in offsets {
            let Some(mut setup) = setup(id) else { continue };
            setup.supply.set_pa += offset * PA_PER_INWC;
            setup.supply.lockup_pa += offset * PA_PER_INWC;
            let wanted = setup.furnace.plate.figures().manifold.top().pa / PA_PER_INWC;
            let mut run = Run::at_rest(setup);
            let state = run.full();
            let found = state.manifold_pa / PA_PER_INWC;
            let inlet = state.inlet_pa / PA_PER_INWC;
            let label = t!("row-id-inlet", id = id, inlet = decimal(inlet, 1));
            rows.push(
                Row::new(label, wanted, if run.refused { f64::NAN } else { found }).on(id, inlet),
            );
        }
    }
    check("parts.valve.inlet-range", rows)
}
