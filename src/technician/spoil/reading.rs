//! The manometer trusted, ports read, numbers written: spoiled.

use super::super::edit::{Edit, What, after, before, hurry, instead, leave_out};
use super::super::step::{Step, act, go, pause};
use super::good::Good;
use super::steps::hose_on;
use super::way::Spoil;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Contact};
use crate::parts::{Cause, Fitted, Gauge, Joint, Phase, Place, Port, Push, Reading, Stage};
use crate::procedure::Goal;
use crate::units::PressureUnit;

/// Ways of spoiling readings.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil::new(id!("spoil-meter-never-zeroed"), &["meter-off"], |_| {
        vec![leave_out(Action::MeterZero)]
    })
    .careless(),
    Spoil::new(id!("spoil-meter-not-zeroed-at-the-second-port"), &["not-zeroed-anew"], |_| {
        vec![instead(Action::MeterZero, Vec::new())]
    })
    .at_last(),
    Spoil::new(
        id!("spoil-hose-joint-at-the-inlet-not-leak-checked"),
        &["test-joint-unchecked"],
        |_| vec![instead(Goal::JointChecked(Joint::InletPort), Vec::new())],
    )
    .besides(finds_no_leak_at_the_hose),
    Spoil::new(
        id!("spoil-hose-joint-at-the-manifold-not-leak-checked"),
        &["test-joint-unchecked"],
        |_| vec![instead(Goal::JointChecked(Joint::ManifoldPort), Vec::new())],
    )
    .besides(finds_no_leak_at_the_hose),
    Spoil::new(id!("spoil-ten-minutes-away-with-the-hose-on"), &["left-unattended"], |_| {
        let away = vec![go(Place::Yard), pause(610.0), go(Place::PlantRoom)];
        vec![after(What::Write(Port::Inlet, Stage::Rest, Phase::Found), away)]
    }),
    Spoil::new(id!("spoil-hose-half-on-at-the-manifold"), &["hose-half-on"], |_| {
        let half = Action::HoseOn { port: Port::Manifold, push: Push::Halfway };
        vec![instead(hose_on(Port::Manifold), vec![act(half)])]
    })
    .at_last()
    .careless(),
    Spoil::new(
        id!("spoil-a-right-number-written-only-when-the-hose-is-off-again"),
        &[],
        |g| match g.wrote(Port::Inlet, Stage::FullLoad, Phase::Found) {
            Some(reading) => {
                vec![leave_out(LOADED), after(Action::HoseOff, vec![act(Action::Write(reading))])]
            }
            None => Vec::new(),
        },
    )
    .at_last()
    // After the supply was moved, the number as found is right no longer.
    .besides(|g| !g.moves_supply),
    Spoil::new(
        id!("spoil-zeroed-with-the-manifold-pressure-on-it"),
        &["zeroed-under-pressure"],
        |g| {
            let first = What::Write(Port::Manifold, g.at_first(), Phase::Left);
            vec![after(first, vec![act(Action::MeterZero)])]
        },
    )
    .at_last(),
    Spoil::new(
        id!("spoil-hose-pulled-off-the-manifold-while-high-burns"),
        &["opened-manifold-firing"],
        |g| {
            let kneel = go(Place::GasValve);
            let pulled = vec![kneel, act(Action::HoseOff), act(hose_on(Port::Manifold))];
            vec![after(What::Write(Port::Manifold, g.at_full(), Phase::Found), pulled)]
        },
    )
    .at_last()
    .careless(),
    Spoil::new(
        id!("spoil-inlet-with-the-others-on-not-written"),
        &["never-read-with-others"],
        |_| vec![leave_out(LOADED)],
    )
    // A supply that was moved is asked for again.
    .besides(|g| !g.moves_supply),
    Spoil::new(
        id!("spoil-inlet-not-written-again-at-rest-after-flow"),
        &["lock-up-unread"],
        |_| {
            // However often it is written: a number from before would stand for one that is left out.
            vec![leave_out(What::Such(|action| {
                matches!(action, Action::Write(it)
                if (it.port, it.stage) == (Port::Inlet, Stage::RestAgain))
            }))]
        },
    ),
    Spoil::new(
        id!("spoil-the-number-from-before-flow-written-for-after-flow"),
        &["wrong-stage"],
        |g| {
            let reading = g.wrote(Port::Inlet, Stage::RestAgain, Phase::Found);
            let rest = g.wrote(Port::Inlet, Stage::Rest, Phase::Found);
            let (Some(again), Some(rest)) = (reading, rest) else { return Vec::new() };
            let early = Action::Write(Reading { thousandths: rest.thousandths, ..again });
            let what = What::Write(Port::Inlet, Stage::Rest, Phase::Found);
            let leave = leave_out(What::Write(Port::Inlet, Stage::RestAgain, Phase::Found));
            vec![after(what, vec![act(early)]), leave]
        },
    )
    // A series that is begun anew reads it again.
    .besides(|g| {
        g.times_written(Port::Inlet, Stage::Rest) == 1
            && g.times_written(Port::Inlet, Stage::RestAgain) == 1
    }),
    Spoil::new(
        id!("spoil-inlet-at-rest-only"),
        &["never-read-running", "turned-before-inlet"],
        |_| {
            vec![leave_out(What::Such(|action| {
                matches!(action, Action::Write(it)
                    if it.port == Port::Inlet && it.stage != Stage::Rest)
            }))]
        },
    )
    // A supply that was moved is asked for again; a call needs the numbers too.
    .besides(|g| !g.moves_supply && g.times(&Action::Call(Contact::SupplyOwner)) == 0),
    Spoil::new(id!("spoil-high-never-written"), &["stage-never-read"], |g| {
        let full = |phase| leave_out(What::Write(Port::Manifold, g.at_full(), phase));
        vec![full(Phase::Found), full(Phase::Left)]
    })
    // What was moved is asked for again.
    .besides(|g| !g.moves_supply && !g.turns(g.full().screw())),
    Spoil::new(id!("spoil-hold-at-rest-cut-short"), &["hold-too-short"], |_| {
        // Long enough for the meter to settle, far too short for a seat that creeps.
        vec![hurry(What::Write(Port::Inlet, Stage::Rest, Phase::Found), 5)]
    })
    // A second hold at rest makes up for the first.
    .besides(|g| g.times_written(Port::Inlet, Stage::Rest) == 1),
    Spoil::new(id!("spoil-a-number-written-while-it-still-moves"), &["read-unsettled"], |_| {
        vec![hurry(LOADED, 15)]
    })
    .careless()
    // On propane everything burns for minutes before the number is written.
    .besides(|g| !g.propane),
    Spoil::new(id!("spoil-a-number-for-the-wrong-port"), &["wrong-port"], |g| {
        with_number_of(g, g.at_first(), (Port::Inlet, g.at_first()))
    })
    .at_last(),
    Spoil::new(id!("spoil-a-low-number-written-for-high"), &["wrong-stage"], |g| {
        with_number_of(g, g.at_full(), (Port::Manifold, g.at_first()))
    })
    .at_last()
    // With one level there is no other number.
    .besides(Good::is_staged),
    Spoil::new(id!("spoil-the-number-in-the-wrong-unit"), &["wrong-unit"], |g| {
        written(g, Port::Inlet, g.at_full(), instead, |it| Reading {
            unit: PressureUnit::Mbar,
            ..it
        })
    })
    .at_last(),
    Spoil::new(
        id!("spoil-a-number-that-no-meter-showed"),
        // The line is not read either.
        &["inlet-state-unread", "invented"],
        |g| {
            written(g, Port::Inlet, g.at_first(), instead, |it| Reading {
                thousandths: it.thousandths + 3000,
                ..it
            })
        },
    )
    // A series that is begun anew reads it again.
    .besides(|g| g.times_written(Port::Inlet, g.at_first()) == 1),
    Spoil::new(id!("spoil-a-slip-struck-out-at-once"), &[], |g| guessed(g, 1)).at_last(),
    Spoil::new(id!("spoil-a-number-guessed-at-until-it-is-right"), &["invented"], |g| {
        guessed(g, 10)
    })
    .at_last(),
    Spoil::new(id!("spoil-a-number-cut-off-at-the-whole-inch"), &["written-coarsely"], |g| {
        written(g, Port::Inlet, g.at_full(), instead, |it| Reading {
            thousandths: it.thousandths - it.thousandths % 1000,
            ..it
        })
    })
    .at_last()
    .besides(|g| g.wrote(Port::Inlet, g.at_full(), Phase::Found).is_some_and(tells_tenths)),
    Spoil::new(id!("spoil-inlet-on-the-first-level-not-written"), &["inlet-state-unread"], |g| {
        vec![leave_out(What::Write(Port::Inlet, g.at_first(), Phase::Found))]
    })
    // A series that is begun anew reads it again.
    .besides(|g| g.times_written(Port::Inlet, g.at_first()) == 1),
    Spoil::new(id!("spoil-everything-written-as-left"), &["nothing-as-found"], |g| {
        let found = g.readings().filter(|it| it.phase == Phase::Found);
        let as_left = found.map(|it| {
            let left = Action::Write(Reading { phase: Phase::Left, ..it });
            instead(What::Write(it.port, it.stage, Phase::Found), vec![act(left)])
        });
        as_left.collect()
    })
    // Whatever was moved or mended is read as left too.
    .besides(|g| !g.turns_a_level && !g.moves_supply && g.mends().next().is_none()),
    Spoil::new(
        id!("spoil-one-leg-of-the-u-tube-manometer-written-for-low"),
        &["one-leg-read"],
        |g| {
            let mut edits =
                vec![before(hose_on(Port::Inlet), vec![act(Action::Gauge(Gauge::WaterColumn))])];
            edits.extend(written(g, Port::Inlet, g.at_first(), instead, |it| Reading {
                thousandths: it.thousandths / 2,
                ..it
            }));
            // The water shows tenths only: time for the gas in the hose to go.
            let off = vec![pause(60.0), act(Action::HoseOff), act(Action::Gauge(Gauge::Digital))];
            edits.push(instead(Action::HoseOff, off));
            edits
        },
    )
    .careless()
    // Propane stands higher than the water in the column.
    .besides(|g| !g.propane),
    Spoil::new(
        id!("spoil-a-u-tube-manometer-too-short-for-propane-and-nobody-heeds-the-gas"),
        &["gauge-overstrained", "ignition", "worked-on-after-alarm"],
        |_| vec![before(hose_on(Port::Inlet), vec![act(Action::Gauge(Gauge::WaterColumn))])],
    )
    .careless()
    // Natural gas stands lower than the water in the column; a level that is to be set is left unset.
    .besides(|g| g.propane && !g.turns_a_level),
    Spoil::new(id!("spoil-a-wet-or-pinched-hose-used-to-the-end"), &["meter-fault-left"], |_| {
        // No screw is turned after what it shows either.
        let uncaps = |action: &Action| {
            matches!(action, Action::Turn { .. } | Action::Cap { to: Fitted::Off, .. })
        };
        vec![leave_out(Action::Mend(Repair::SwapMeterHose)), leave_out(What::Such(uncaps))]
    })
    .careless()
    // A hose with a hole lets gas out besides, and it hangs on the hole whether an alarm calls.
    .besides(|g| g.findings().any(|it| HOSE_READS_LATE.contains(&it.cause))),
];

/// What keeps a pressure from the manometer through a tight hose.
const HOSE_READS_LATE: [Cause; 2] = [Cause::MeterHoseWet, Cause::MeterHosePinched];

/// The inlet with the other appliances on, as found.
const LOADED: What = What::Write(Port::Inlet, Stage::FullLoad, Phase::Found);

/// Whether no check of a joint with the hose on it finds anything to mend.
fn finds_no_leak_at_the_hose(good: &Good) -> bool {
    !good.mends_by(Repair::SwapMeterHose) && !good.mends_by(Repair::ReplaceGasValve)
}

/// Whether a number cut off at the whole inch is another, and large enough to be a reading still.
fn tells_tenths(reading: Reading) -> bool {
    reading.thousandths >= 5000 && reading.thousandths % 1000 >= 150
}

/// So many numbers that no meter showed before the right one, on the same line.
fn guessed(good: &Good, times: i32) -> Vec<Edit> {
    let what = What::Write(Port::Inlet, good.at_first(), Phase::Found);
    let right = good.wrote(Port::Inlet, good.at_first(), Phase::Found).into_iter();
    let edits = right.map(|right| {
        let wrong = |i: i32| {
            let thousandths = 10 * right.thousandths + 1000 * i;
            act(Action::Write(Reading { thousandths, ..right }))
        };
        before(what.clone(), (1..=times).map(wrong).collect())
    });
    edits.collect()
}

/// The manifold in a state as found, written with the number that was written last of another place.
fn with_number_of(good: &Good, stage: Stage, (port, other): (Port, Stage)) -> Vec<Edit> {
    let reading = good.wrote(Port::Manifold, stage, Phase::Found);
    let number = reading.and_then(|it| good.wrote_before(it, port, other));
    let Some(thousandths) = number else { return Vec::new() };
    written(good, Port::Manifold, stage, instead, |it| Reading { thousandths, ..it })
}

/// A reading as found, written otherwise after it or in its place.
fn written(
    good: &Good,
    port: Port,
    stage: Stage,
    put: fn(What, Vec<Step>) -> Edit,
    otherwise: impl Fn(Reading) -> Reading,
) -> Vec<Edit> {
    let reading = good.wrote(port, stage, Phase::Found).into_iter();
    let what = What::Write(port, stage, Phase::Found);
    reading.map(|it| put(what.clone(), vec![act(Action::Write(otherwise(it)))])).collect()
}
