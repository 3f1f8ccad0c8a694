//! Work beyond the pressures that a card asks for: by the job, or as its author lists it.

use quarterturn::parts::Duty::{ArrivalLooks, Combustion, GasRate, TemperatureRise};
use quarterturn::scenario::{Code, ProblemLevel, check, load};

use super::{natural, propane, spoiled};

/// The text of a job whose card lists this.
fn listing(text: &str, required: &str) -> String {
    spoiled(text, "card: (", &format!("card: (required: {required}, "))
}

/// A job asks for looks, rise and combustion; where there is a gas meter, it is to be clocked too.
#[test]
fn what_is_asked_for_goes_by_the_job() {
    let asked = |text: &str| load(text).unwrap().draw(1).card.required;
    let without_meter = vec![ArrivalLooks, TemperatureRise, Combustion];
    assert_eq!(asked(&propane()), without_meter);
    assert_eq!(asked(&natural()), [without_meter, vec![GasRate]].concat());
}

/// What the author lists stands on the card, and an empty list asks for nothing.
#[test]
fn an_author_may_ask_for_less() {
    let listed = |list: &str| load(&listing(&natural(), list)).unwrap().draw(1).card.required;
    assert_eq!(listed("[GasRate, ArrivalLooks]"), [GasRate, ArrivalLooks]);
    assert_eq!(listed("[]"), []);
}

/// A gas rate on propane, a piece of work listed twice and one that does not exist are refused with
/// their place; work that never falls due is told.
#[test]
fn what_cannot_be_done_is_refused() {
    let one = |text: &str| {
        let found = check("job.ron", text);
        assert_eq!(found.len(), 1, "{found:#?}");
        found.into_iter().next().unwrap()
    };
    let no_meter = one(&listing(&propane(), "[Combustion, GasRate]"));
    assert_eq!((&*no_meter.path, no_meter.code), ("card.required[1]", Code::Contradiction));
    assert!(no_meter.message.contains("gas rate at the meter"), "{no_meter:?}");
    let twice = one(&listing(&natural(), "[Combustion, Combustion]"));
    assert_eq!((&*twice.path, twice.code), ("card.required[1]", Code::Contradiction));
    let unknown = one(&listing(&natural(), "[GasRat]"));
    assert_eq!((unknown.code, unknown.nearest.as_deref()), (Code::UnknownName, Some("GasRate")));
    let stays_off = spoiled(&natural(), "endings: [InService]", "endings: [ShutOff]");
    let found = check("job.ron", &listing(&stays_off, "[Combustion]"));
    let never = found.iter().find(|it| it.path == "card.required").unwrap();
    assert_eq!(never.severity, ProblemLevel::Warning);
}
