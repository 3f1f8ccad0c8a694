//! Repairs: spoiled.

use super::super::edit::{Edit, before, leave_out};
use super::super::step::act;
use super::way::Spoil;
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::Port;
use crate::procedure::Goal;

/// Ways of spoiling repairs.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil::new(
        id!("spoil-a-jumper-left-across-the-roll-out-switches"),
        &["safety-bypassed"],
        |_| mended(&[Repair::BypassRollout]),
    ),
    Spoil::new(id!("spoil-orifices-drilled-out"), &["dangerous-repair"], |_| {
        mended(&[Repair::DrillOrifices])
    })
    .careless()
    // With one level it lights at its full rate: whether a cycle then comes to its end, and so what
    // the drill costs, hangs on the seed. A level that is set afterwards is set needlessly.
    .besides(|g| g.is_staged() && !g.turns_a_level),
    Spoil::new(
        id!("spoil-orifices-drilled-out-and-those-of-the-plate-fitted-again"),
        &["dangerous-repair"],
        |_| mended(&[Repair::DrillOrifices, Repair::FitOrifices]),
    )
    // Where the orifices are what is wrong, those of the plate mend it.
    .besides(|g| !g.mends_by(Repair::FitOrifices)),
    Spoil::new(id!("spoil-sound-igniter-replaced"), &["needless-repair"], |_| {
        mended(&[Repair::ReplaceIgniter])
    }),
    Spoil::new(
        id!("spoil-sound-parts-replaced-one-after-the-other"),
        &["needless-repair", "parts-on-suspicion"],
        |_| {
            mended(&[
                Repair::ReplaceIgniter,
                Repair::ReplaceControlBoard,
                Repair::ReplaceFirstSwitch,
            ])
        },
    ),
    Spoil::new(id!("spoil-everything-cleaned-that-can-be"), &["care-on-suspicion"], |_| {
        mended(&[
            Repair::CleanFlameRod,
            Repair::MendBurnerGround,
            Repair::CleanBurners,
            Repair::ClearTrap,
            Repair::PrimeTrap,
            Repair::RefitDraftHose,
        ])
    }),
    Spoil::new(
        id!("spoil-line-purged-at-the-union-no-fluid-there"),
        &["joint-unchecked", "piping-not-checked"],
        |_| mended(&[Repair::PurgeLine]),
    )
    .with_work_of_its_own()
    // With the supply shut at the end there is no gas to check with.
    .besides(|g| g.in_use()),
    Spoil::new(id!("spoil-what-the-readings-do-not-show-left-as-it-was"), &["fault-left"], |g| {
        let one = g.leaves_no_reading_wrong().into_iter();
        one.map(|repair| leave_out(Action::Mend(repair))).collect()
    })
    .careless(),
];

/// Mended while the furnace is isolated for the inlet port.
fn mended(repairs: &[Repair]) -> Vec<Edit> {
    let mends = repairs.iter().map(|&repair| act(Action::Mend(repair))).collect();
    vec![before(Goal::Closed(Port::Inlet), mends)]
}
