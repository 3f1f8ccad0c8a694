//! Faults in a scenario: how they are written, what is refused, how they are drawn.

use quarterturn::catalogue::fault::{Fault, Severity};
use quarterturn::rng::stream;
use quarterturn::scenario::{Code, ProblemLevel, Scenario, builtin, check, load};
use quarterturn::setup::Setup;
use quarterturn::units::PA_PER_INWC;

use super::{natural, only, problems, propane, spoiled};

const AT: &str = "    card: (";

/// The natural-gas job with this list of faults.
fn with(faults: &str) -> String {
    spoiled(&natural(), AT, &format!("    faults: {faults},\n{AT}"))
}

fn loaded(faults: &str) -> Scenario {
    load(&with(faults)).unwrap_or_else(|problems| panic!("{faults}: {problems:#?}"))
}

/// Every fault can be written with its name alone, and every severity in its own words, its ends
/// included; what is put in is noted in the setup, in order.
#[test]
fn slow_every_fault_can_be_written() {
    let mut propane_only = 0;
    for &fault in Fault::ALL {
        let severity = &fault.entry().severity;
        let quoted = |text: &str| {
            if severity.is_bare() { text.to_owned() } else { format!("\"{text}\"") }
        };
        let mut ways = vec![fault.name().to_owned()];
        if *severity != Severity::PLAIN {
            for text in [severity.least, severity.most, severity.typical[0], severity.typical[1]] {
                ways.push(format!("{}({})", fault.name(), quoted(text)));
            }
            let (low, high) = (quoted(severity.least), quoted(severity.most));
            ways.push(format!("{}(Between({low}, {high}))", fault.name()));
        }
        for way in ways {
            let on_natural = with(&format!("[{way}]"));
            let on_propane = spoiled(&propane(), AT, &format!("    faults: [{way}],\n{AT}"));
            // A sealed box lets the fault of its hose in.
            let sealed =
                spoiled(&on_natural, "settings: (", "box_suction: \"0.4 inH2O\", settings: (");
            let texts = [on_natural, on_propane, sealed];
            let Some(scenario) = texts.iter().find_map(|text| load(text).ok()) else {
                panic!("{way}: {:#?}", check("job.ron", &texts[1]));
            };
            propane_only += u32::from(load(&texts[0]).is_err());
            let setup = scenario.draw(1);
            assert_eq!(setup.faults.len(), 1, "{way}");
            assert_eq!(setup.faults[0].0, fault, "{way}");
        }
    }
    assert!(propane_only > 10, "faults of tank and conversion do not fit a meter");
}

/// A severity lands in the setup as it is written, and is noted there.
#[test]
fn severities_reach_the_setup() {
    let plain = loaded("[]").draw(3);
    assert!(plain.faults.is_empty());
    let setup = loaded("[high_stage_set_low(\"0.5 inH2O\"), kinked_connector(0.9)]").draw(3);
    let turned = plain.furnace.valve.springs.top().found_turns
        - setup.furnace.valve.springs.top().found_turns;
    let by_pa = turned * setup.furnace.valve.springs.top().pa_per_turn;
    approx::assert_relative_eq!(by_pa, 0.5 * PA_PER_INWC, max_relative = 1e-9);
    assert_eq!(setup.condition.line.connector_kinked, 0.9);
    let noted: Vec<_> = setup.faults.iter().map(|(fault, _)| fault.name()).collect();
    assert_eq!(noted, ["high_stage_set_low", "kinked_connector"]);
}

/// Ranges and choices are drawn from streams of their own: nothing else moves, and the same seed
/// gives the same fault.
#[test]
fn draws_come_from_streams_of_their_own() {
    let plain = loaded("[]");
    let scenario = loaded("[OneOf([kinked_connector(Between(0.5, 0.9)), dead_high_coil])]");
    let mut seen = [0, 0];
    for seed in 0..40 {
        let mut setup = scenario.draw(seed);
        let (fault, severity) = setup.faults[0];
        let wanted = stream(seed, "faults[0]").below(2);
        assert_eq!(fault == Fault::DeadHighCoil, wanted == 1);
        if fault == Fault::KinkedConnector {
            let drawn = stream(seed, "faults[0].kinked_connector").between(0.5, 0.9);
            assert_eq!(severity.to_bits(), drawn.to_bits());
        }
        seen[wanted as usize] += 1;
        let sound: Setup = plain.draw(seed);
        setup.condition = sound.condition.clone();
        setup.faults.clear();
        assert_eq!(setup.sound.take().as_deref(), Some(&sound));
        assert_eq!(setup, sound, "seed {seed}");
    }
    assert!(seen.iter().all(|&count| count > 8), "{seen:?}");
}

/// What is wrong with a fault is told at its place, with the nearest name and the range.
#[test]
fn bad_faults_are_told() {
    let new = |list: &str| format!("    faults: [{list}],\n{AT}");
    let problem = only(AT, &new("kinked_conector(0.8)"), "kinked_conector", Code::UnknownName);
    assert_eq!(problem.nearest.as_deref(), Some("kinked_connector"));
    assert_eq!(problem.path, "faults[0]");
    let problem = only(AT, &new("kinked_connector(1.2)"), "1.2", Code::OutOfRange);
    assert_eq!(problem.expected, "0.3 to 0.97");
    only(AT, &new("kinked_connector(\"0.8\")"), "\"0.8\"", Code::WrongKind);
    only(AT, &new("supply_set_low(2.75)"), "2.75", Code::WrongKind);
    only(AT, &new("supply_set_low(\"3 ft\")"), "\"3 ft\"", Code::BadQuantity);
    let backwards = "supply_set_low(Between(\"3 inH2O\", \"2 inH2O\"))";
    only(AT, &new(backwards), "Between(\"3 inH2O\", \"2", Code::Contradiction);
    only(AT, &new("dead_high_coil(1)"), "dead_high_coil", Code::WrongKind);
    only(AT, &new("\"dead_high_coil\""), "\"dead_high_coil\"", Code::WrongKind);
    only(AT, &new("OneOf([])"), "OneOf([])", Code::BadLength);
    only(AT, &new("OneOf(dead_high_coil)"), "OneOf(dead", Code::WrongKind);
    only(AT, &new("nearly_empty_tank"), "nearly_empty_tank", Code::Contradiction);
    only(AT, &new("burner_box_hose_off"), "burner_box_hose_off", Code::Contradiction);
}

/// A fault that is put in twice is warned of; the scenario loads.
#[test]
fn twice_is_unusual() {
    let twice =
        "    faults: [dead_high_coil, OneOf([plugged_orifice, dead_high_coil])],\n    card: (";
    let found = problems(AT, twice);
    assert_eq!(found.len(), 1, "{found:#?}");
    assert_eq!((found[0].severity, found[0].path.as_str()), (ProblemLevel::Warning, "faults[1]"));
}

/// The scenarios that ship without faults draw a sound bench.
#[test]
fn without_faults_the_bench_is_sound() {
    for job in builtin::JOBS.iter().chain(&builtin::HEALTHY) {
        let setup = load(job.text).unwrap().draw(5);
        assert!(setup.condition.is_sound() && setup.faults.is_empty(), "{}", job.id);
    }
}
