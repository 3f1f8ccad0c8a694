//! Reading scripts: what they say, and what is wrong with them.

use proptest::prelude::*;
use quarterturn::appliance::ignition::ControlStatus;
use quarterturn::hands::action::Action;
use quarterturn::parts::{Level, Phase, Place, Port, Stage};
use quarterturn::procedure::Until;
use quarterturn::rng::stream;
use quarterturn::scenario::Code;
use quarterturn::senses::seen::Sound;
use quarterturn::technician::script::{
    MAX_BYTES, MAX_LINES, Order, Otherwise, action_line, read, read_bytes,
};
use quarterturn::units::PA_PER_INWC;

use crate::bench::random::action;

/// Every action there is, written as a line, reads back as itself.
#[test]
fn every_action_round_trips() {
    let mut stream = stream(5, "script");
    let actions: Vec<Action> = (0..MAX_LINES / 3).map(|_| action(&mut stream)).collect();
    let text: String = actions.iter().map(|action| action_line(action) + "\n").collect();
    let script = read("all.script", &text).unwrap();
    let orders: Vec<_> = script.steps.into_iter().map(|step| step.order).collect();
    let wanted: Vec<_> = actions.into_iter().map(Order::Do).collect();
    for (order, wanted) in orders.iter().zip(&wanted) {
        assert_eq!(order, wanted);
    }
    assert_eq!(orders.len(), wanted.len());
}

fn order(line: &str) -> Order {
    read("one.script", line).unwrap_or_else(|it| panic!("{line}: {it:?}")).steps.remove(0).order
}

/// Waits, conditions, remarks, `try`, and the shorter ways of writing things.
#[test]
fn waits_and_conditions_say_what_they_mean() {
    let wait = |until, limit_s| Order::Wait { until, limit_s };
    assert_eq!(order("wait 30 s"), wait(Until::Seconds(30.0), 31.0));
    assert_eq!(
        order("  until heard burners-low within 4 min # so"),
        wait(Until::Heard(Sound::Burners(Level::Low)), 240.0)
    );
    assert_eq!(
        order("until quiet inducer blower within 1 h"),
        wait(Until::Quiet(vec![Sound::Inducer, Sound::Blower]), 3600.0)
    );
    assert_eq!(
        order("until status burning on low within 5min"),
        wait(Until::Status(ControlStatus::beginning_with("burning on low")), 300.0)
    );
    let Order::Wait { until: Until::MeterBetween(low, high), limit_s } =
        order("until meter between 3.4 inH2O and 0.9 kPa within 60 s")
    else {
        panic!("a range");
    };
    assert!((low - 3.4 * PA_PER_INWC).abs() < 1e-9 && (high - 900.0).abs() < 1e-9);
    assert!((limit_s - 60.0).abs() < 1e-12);
    let Order::Wait { until: Until::MeterSteady { within_pa, for_s }, .. } =
        order("until meter steady 0.02 inH2O for 5 s within 60 s")
    else {
        panic!("steady");
    };
    assert!((within_pa - 0.02 * PA_PER_INWC).abs() < 1e-9 && (for_s - 5.0).abs() < 1e-12);
    assert_eq!(
        order("until room at-least 68 degF within 30 min"),
        wait(Until::RoomAtLeast(136), 1800.0)
    );
    assert_eq!(
        order("write manifold-port low found"),
        Order::WriteShown {
            port: Port::Manifold,
            stage: Stage::Firing(Level::Low),
            phase: Phase::Found
        }
    );
    let script = read("x", "\u{feff}# first\r\n\r\ntry go yard\r\ngo hall").unwrap();
    assert_eq!(script.steps.len(), 2);
    assert_eq!((script.steps[0].line, script.steps[0].otherwise), (3, Otherwise::GoOn));
    assert_eq!(script.steps[1].order, Order::Do(Action::Go(Place::Hall)));
    assert_eq!(script.steps[1].otherwise, Otherwise::Stop);
}

/// Each mistake is told with its line, its column and the nearest word.
#[test]
fn mistakes_are_located() {
    let cases: [(&str, usize, Code, Option<&str>); 25] = [
        ("fly yard", 1, Code::UnknownName, None),
        ("goo yard", 1, Code::UnknownName, Some("go")),
        ("go yrad", 4, Code::UnknownName, Some("yard")),
        ("go", 4, Code::MissingField, None),
        ("go yard now", 9, Code::Syntax, None),
        ("try", 5, Code::MissingField, None),
        ("try take hexkey", 10, Code::UnknownName, Some("hex-key")),
        ("turn low-screw 2", 16, Code::BadQuantity, None),
        ("turn low-screw 99999/8", 16, Code::BadQuantity, None),
        ("plug inlet-port tigten 2/8", 17, Code::UnknownName, Some("tighten")),
        ("setpoint 70", 10, Code::BadQuantity, None),
        ("setpoint 70.3 degF", 10, Code::OutOfRange, None),
        ("cock manual-valve half", 19, Code::BadQuantity, None),
        ("cock manual-valve 45", 22, Code::Syntax, None),
        ("wait 30", 6, Code::BadQuantity, None),
        ("wait 30 bananas", 6, Code::BadQuantity, None),
        ("wait -3 s", 6, Code::OutOfRange, None),
        ("wait 13 h", 6, Code::OutOfRange, None),
        ("until heard burners-lo within 4 min", 13, Code::UnknownName, Some("burners-low")),
        ("until heard hiss", 18, Code::Syntax, None),
        ("until quiet within 4 min", 13, Code::MissingField, None),
        ("until status burnin on low within 4 min", 14, Code::UnknownName, Some("burning on low")),
        ("until meter between 4 kPa and 3 kPa within 4 s", 21, Code::Contradiction, None),
        ("write inlet-port low found 3.5004 inH2O", 28, Code::BadQuantity, None),
        ("hand-over in-service combustion", 22, Code::Syntax, None),
    ];
    let text: String = cases.iter().map(|(line, ..)| format!("{line}\n")).collect();
    let problems = read("wrong.script", &text).unwrap_err();
    assert_eq!(problems.len(), cases.len(), "{problems:#?}");
    for (i, ((line, column, code, nearest), problem)) in cases.iter().zip(&problems).enumerate() {
        assert_eq!((problem.line, problem.column, problem.code), (i + 1, *column, *code), "{line}");
        assert_eq!(problem.nearest.as_deref(), *nearest, "{line}");
        assert_eq!(problem.file, "wrong.script");
        assert!(!problem.message.is_empty());
    }
    let go = &problems[2];
    assert_eq!(go.found, "yrad");
    assert_eq!(go.expected, "yard, plant-room, gas-valve, hall, away");
}

/// Limits, and bytes that are no text.
#[test]
fn what_is_too_much_or_no_text_is_told() {
    let code = |bytes: &[u8]| read_bytes("x", bytes).unwrap_err()[0].code;
    assert_eq!(code(&vec![b' '; MAX_BYTES + 1]), Code::TooLarge);
    assert_eq!(code("\n".repeat(MAX_LINES + 1).as_bytes()), Code::TooLarge);
    let problems = read_bytes("x", b"go yard\nlook \xff").unwrap_err();
    assert_eq!((problems[0].code, problems[0].line, problems[0].column), (Code::NotUtf8, 2, 6));
    let problems = read("x", &"nonsense\n".repeat(500)).unwrap_err();
    assert_eq!((problems.len(), problems[100].code), (101, Code::TooMany));
    assert_eq!(code(" x".repeat(100).as_bytes()), Code::BadLength);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Random bytes never bring it down.
    #[test]
    fn random_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..600)) {
        let _ = read_bytes("x", &bytes);
    }

    /// Nor do random words that scripts are made of; and every problem lies within its line.
    #[test]
    fn random_words_never_panic(
        words in prop::collection::vec(
            prop::sample::select(vec![
                "go", "until", "meter", "between", "steady", "within", "heard", "wait", "5", "s",
                "inH2O", "write", "low", "found", "turn", "low-screw", "2/8", "-", "try", "#", "\n",
                "plug", "tighten", "inlet-port", "é", "1e999", "nan", "hand-over", "not-done", "and",
            ]),
            0..80,
        )
    ) {
        let text = words.join(" ");
        if let Err(problems) = read("x", &text) {
            for problem in problems {
                let line = text.lines().nth(problem.line - 1).unwrap();
                prop_assert!(problem.column <= line.chars().count() + 2, "{:?} in {:?}", problem, line);
            }
        }
    }
}
