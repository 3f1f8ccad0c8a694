//! Screws turned: spoiled.

use super::super::edit::{Edit, What, after, before, instead, leave_out};
use super::super::step::{act, pause, reach};
use super::good::Good;
use super::steps::{measured, turn, turned};
use super::way::Spoil;
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{Ending, Fitted, OnOff, Phase, Port, Screw, Spot, Stage, Subject, Tool};
use crate::procedure::Goal;

/// Ways of spoiling the setting of pressures.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil::new(id!("spoil-the-suppliers-regulator-turned"), &["supply-not-yours"], |_| {
        // There and back, so that what is read after it is what was found.
        let mut there = turned(Screw::Supply, &[1, -1]);
        there.push(reach(Goal::InHand(Tool::GasDetector)));
        vec![after(Action::Look(Subject::SupplyVent), there)]
    })
    // Left shut off, the supply as it stands is charged too once its screw was turned.
    .besides(Good::in_use),
    Spoil::new(id!("spoil-own-supply-left-too-low"), &["supply-left-low"], |_| {
        vec![leave_out(What::Turn(Screw::Supply))]
    })
    // Starved, the full rate cannot be set.
    .besides(|g| !g.turns(g.full().screw()) || !g.supply_starves),
    Spoil::new(
        id!("spoil-own-supply-turned-up-five-times-as-far-as-needed"),
        &["supply-over-maximum"],
        |g| {
            // Four times as far again as was right, as far at once as a hand turns.
            let left = 4 * g.supply_eighths();
            let mut turns = vec![turn(Screw::Supply, 16); usize::try_from(left / 16).unwrap_or(0)];
            turns.extend((left % 16 > 0).then(|| turn(Screw::Supply, left % 16)));
            vec![before(Action::Cap { screw: Screw::Supply, to: Fitted::On }, turns)]
        },
    )
    .careless()
    .besides(|g| g.five_times_shows),
    Spoil::new(
        id!("spoil-supply-not-written-again-at-rest-after-it-was-set"),
        &["lock-up-unread", "supply-not-rechecked"],
        |_| {
            let left = |stage| leave_out(What::Write(Port::Inlet, stage, Phase::Left));
            vec![left(Stage::Rest), left(Stage::RestAgain)]
        },
    )
    // A series that is begun anew reads it again; a lock-up that was read as found was read.
    .besides(|g| {
        g.times_written(Port::Inlet, Stage::Rest) == 2
            && g.wrote(Port::Inlet, Stage::RestAgain, Phase::Found).is_none()
    }),
    Spoil::new(
        id!("spoil-own-supply-turned-with-nothing-read-as-found"),
        &["turned-before-inlet"],
        |_| {
            vec![leave_out(What::Such(|action| {
                matches!(action, Action::Write(it)
                    if it.port == Port::Inlet && it.phase == Phase::Found)
            }))]
        },
    )
    // A series that is begun anew is read as found too.
    .besides(|g| g.turns(Screw::Supply) && g.times_written(Port::Inlet, Stage::FullLoad) == 2),
    Spoil::new(
        id!("spoil-first-levels-screw-turned-with-the-meter-off"),
        &["turned-unseen"],
        |g| {
            let first = g.first().screw();
            let turn =
                |action: &&Action| matches!(action, Action::Turn { screw, .. } if *screw == first);
            let unseen = g.actions().find(turn).map(|turn| {
                let power = |to| act(Action::MeterPower(to));
                let blind = vec![power(OnOff::Off), act(turn.clone()), power(OnOff::On)];
                instead(What::Turn(first), blind)
            });
            unseen.into_iter().collect()
        },
    ),
    Spoil::new(
        id!("spoil-low-turned-before-it-was-written-as-found"),
        &["turned-before-found"],
        |g| vec![leave_out(What::Write(Port::Manifold, g.at_first(), Phase::Found))],
    )
    // It is the other screw that was turned.
    .besides(Good::turns_first),
    Spoil::new(
        id!("spoil-high-left-as-it-was-found-though-out-of-its-band"),
        &["left-outside-band"],
        |g| vec![leave_out(What::Turn(g.full().screw()))],
    )
    .careless(),
    Spoil::new(
        id!("spoil-flue-not-analyzed-after-a-screw-was-turned"),
        &["combustion-not-taken"],
        |g| {
            // Analyzed as found, and not again.
            let found = What::Write(Port::Manifold, g.at_full(), Phase::Found);
            let analyzed = measured(Spot::Flue, vec![pause(120.0)]);
            vec![after(found, analyzed), leave_out(Action::WriteMeasured(Spot::Flue))]
        },
    )
    .at_last()
    .careless()
    .with_work_of_its_own()
    // Orifices and lean gas are found by the flue alone.
    .besides(|g| g.turns_a_level && g.ends(Ending::InService) && g.mends().next().is_none()),
    Spoil::new(id!("spoil-first-screw-turned-the-wrong-way-and-back"), &["wrong-way"], |g| {
        let first = g.level_turns().next().into_iter();
        let wrong = first.map(|(screw, eighths)| {
            let step = |sign: i16| turn(screw, sign * eighths.signum());
            before(What::Turn(screw), [-1, -1, -1, 1, 1, 1].map(step).to_vec())
        });
        wrong.collect()
    }),
    Spoil::new(id!("spoil-a-big-jump-there-and-back"), &["big-jumps"], |g| {
        let first = g.first().screw();
        vec![before(What::Turn(first), vec![turn(first, 6), turn(first, -6)])]
    }),
    Spoil::new(
        id!("spoil-low-screw-run-to-its-bottom-and-set-back"),
        &["big-jumps", "bottomed-once"],
        |g| {
            let first = g.first().screw();
            vec![before(What::Turn(first), vec![turn(first, 16); 6])]
        },
    )
    // With the screen clean already, a screw without effect speaks against the valve.
    .besides(|g| !g.mends_by(Repair::CleanInletScreen)),
    Spoil::new(
        id!("spoil-low-screw-run-to-its-bottom-and-left-there"),
        &["big-jumps", "bottomed-left", "not-read-with-cap"],
        |g| after_first(g, &[16; 6]),
    )
    .at_last()
    .careless()
    // What is out of its band is set after it.
    .besides(|g| !g.turns_a_level),
    Spoil::new(
        id!("spoil-low-turned-there-and-back-though-right"),
        &["needless-turn", "not-read-with-cap"],
        |g| after_first(g, &[1, -1]),
    )
    .at_last()
    .careless()
    // What is out of its band is set after it.
    .besides(|g| !g.turns_a_level),
    Spoil::new(
        id!("spoil-gas-turned-for-a-rise-that-was-read-too-soon"),
        &["not-read-with-cap", "rise-by-gas", "rise-disturbed", "rise-too-early"],
        |g| {
            // The thermometer is still as cold as the room.
            let mut steps = measured(Spot::ReturnAir, vec![pause(60.0)]);
            steps.extend(measured(Spot::SupplyAir, vec![pause(1.0)]));
            steps.extend(turned(g.full().screw(), &[1, -1]));
            vec![after(What::Write(Port::Manifold, g.at_full(), Phase::Found), steps)]
        },
    )
    .at_last()
    .careless()
    .with_work_of_its_own()
    // What is out of its band is set after it.
    .besides(|g| !g.turns_a_level),
    Spoil::new(
        id!("spoil-low-turned-up-and-left-so"),
        &["big-jumps", "left-outside-band", "not-read-with-cap"],
        |g| after_first(g, &[2; 4]),
    )
    .at_last()
    .careless()
    // What is out of its band is set after it.
    .besides(|g| !g.turns_a_level),
    Spoil::new(id!("spoil-the-low-screw-turned-while-high-burns"), &["wrong-screw"], |g| {
        after_full(g, g.first().screw(), 1)
    })
    .at_last()
    // A screw that was right is turned needlessly too.
    .besides(Good::turns_first),
    Spoil::new(
        id!("spoil-the-high-screw-cranked-against-a-low-supply"),
        &["big-jumps", "cranked"],
        |g| after_full(g, g.full().screw(), 16),
    )
    .at_last(),
    Spoil::new(id!("spoil-low-cap-left-off"), &["cap-off"], |g| {
        vec![leave_out(Action::Cap { screw: g.first().screw(), to: Fitted::On })]
    })
    // Another gas valve brings another cap.
    .besides(|g| !g.mends_after_turning(g.first().screw())),
    Spoil::new(id!("spoil-a-cap-found-off-left-off"), &["cap-off"], |g| {
        let off = g.cap_found_off().into_iter();
        off.map(|screw| leave_out(Action::Cap { screw, to: Fitted::On })).collect()
    }),
    Spoil::new(id!("spoil-low-not-written-again-with-the-cap-on"), &["not-read-with-cap"], |g| {
        vec![leave_out(What::Write(Port::Manifold, g.at_first(), Phase::Left))]
    })
    // With another screw turned, its first reading was with the cap on; after a repair all are read again.
    .besides(|g| g.turns_first() && !g.mends_after_turning(g.first().screw())),
];

/// The first level's screw turned once it was written as found.
fn after_first(good: &Good, eighths: &[i16]) -> Vec<Edit> {
    let written = What::Write(Port::Manifold, good.at_first(), Phase::Found);
    vec![after(written, turned(good.first().screw(), eighths))]
}

/// A screw turned once the full rate was written as found.
fn after_full(good: &Good, screw: Screw, eighths: i16) -> Vec<Edit> {
    let written = What::Write(Port::Manifold, good.at_full(), Phase::Found);
    vec![after(written, turned(screw, &[eighths]))]
}
