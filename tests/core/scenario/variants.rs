//! What a seed draws beside numbers: words as found, and whole settings of a job such as the fuel.

use std::collections::BTreeSet;

use quarterturn::appliance::plate::Fuel;
use quarterturn::parts::{Ending, OnOff, OtherAppliance};
use quarterturn::scenario::{Code, ProblemLevel, builtin, check, find, load};
use quarterturn::setup::SupplyKind;
use quarterturn::technician::proof::{Spoiling, prove_seed};

use super::{natural, spoiled};

fn order() -> String {
    builtin::find("an-order-without-a-fuel").unwrap().text.to_owned()
}

/// A word is drawn from its list by a stream of its own: all of them come up, about as often as
/// they stand there, and a range elsewhere changes none of the draws.
#[test]
fn words_are_drawn() {
    let text = spoiled(&natural(), "found: On", "found: OneOf([On, On, Off])");
    let job = load(&text).unwrap();
    let drawn = |text: &str, seed| {
        load(text).unwrap().draw(seed).found.other_appliances[OtherAppliance::Range]
    };
    let on = (0..300)
        .filter(|&seed| job.draw(seed).found.other_appliances[OtherAppliance::Range] == OnOff::On)
        .count();
    // Two of three, within four standard deviations of 300 draws (binomial: 8.2).
    assert!((167..=233).contains(&on), "{on}");
    let other = spoiled(&text, "house: (", "found: (valve_switch: OneOf([On, Off])), house: (");
    for seed in 0..20 {
        assert_eq!(drawn(&text, seed), drawn(&other, seed));
        assert_eq!(job.draw(seed), job.draw(seed));
    }
    let switches: BTreeSet<_> =
        (0..20).map(|seed| load(&other).unwrap().draw(seed).found.valve_switch as u8).collect();
    assert_eq!(switches.len(), 2);
    let healthy = load(&other).unwrap();
    assert!((0..20).all(|seed| healthy.draw_healthy(seed).found.valve_switch == OnOff::On));
}

/// A choice that is written wrongly is told of at its place.
#[test]
fn words_written_wrongly() {
    let many = format!("OneOf([{}])", ["On"; 13].join(", "));
    for (to, code) in [
        ("OneOf([])", Code::BadLength),
        (many.as_str(), Code::BadLength),
        ("OneOf([On, Of])", Code::UnknownName),
        ("OneOf([OneOf([On])])", Code::WrongKind),
        ("OneOf(On)", Code::WrongKind),
        ("OneOf(On, Off)", Code::WrongKind),
        ("OneOf(words: [On])", Code::WrongKind),
        ("Between(On, Off)", Code::UnknownName),
        ("Oneof([On, Off])", Code::UnknownName),
        ("OneOf", Code::WrongKind),
        ("OneOf([true])", Code::WrongKind),
        ("\"On\"", Code::WrongKind),
    ] {
        let text = spoiled(&natural(), "found: On", &format!("found: {to}"));
        let found = check("job.ron", &text);
        let hit = found.iter().find(|it| it.code == code && it.severity == ProblemLevel::Error);
        let hit = hit.unwrap_or_else(|| panic!("{to}: {found:#?}"));
        assert_eq!(hit.path, "neighbors.range.found", "{to}");
        assert!(text.lines().nth(hit.line - 1).unwrap().contains(to), "{to}: {hit:#?}");
    }
}

/// The shipped order draws both fuels, each with its own supply, pipe and figures; on propane the
/// label counts. Both come up about as often.
#[test]
fn the_fuel_is_drawn() {
    let job = load(&order()).unwrap();
    assert_eq!(job.fuels(), [Fuel::Natural, Fuel::Propane]);
    let mut propane = 0;
    for seed in 0..200 {
        let setup = job.draw(seed);
        let tank = matches!(setup.supply.kind, SupplyKind::Tank { .. });
        assert_eq!(tank, setup.fuel == Fuel::Propane);
        assert_eq!(setup.furnace.plate.figures().fuel, setup.fuel);
        assert_eq!(job.draw_healthy(seed).fuel, setup.fuel);
        // Natural gas is lighter than air, propane heavier (NFPA 58: 1.52).
        assert_eq!(setup.gas.specific_gravity > 1.0, tank);
        propane += usize::from(tank);
    }
    // Half, within four standard deviations of 200 draws (binomial: 7.1).
    assert!((72..=128).contains(&propane), "{propane}");
}

/// What does not fit together in a setting is told of where the setting writes it; what the setting
/// leaves as in the job is named with the setting, and nothing is told twice.
#[test]
fn settings_are_checked_whole() {
    let of = |from: &str, to: &str| check("job.ron", &spoiled(&order(), from, to));
    let errors = of("set: \"12.0 inH2O\"", "set: \"13.5 inH2O\"");
    let hit = errors.iter().find(|it| it.path == "variants[0].supply.set").unwrap();
    assert_eq!((hit.severity, hit.code), (ProblemLevel::Error, Code::Contradiction));
    assert!(order().lines().nth(hit.line - 1).unwrap().contains("12.0 inH2O"), "{hit:#?}");

    // The manometer is the job's, the lock-up that it cannot show the variant's.
    let text = spoiled(&order(), "manometer: (", "manometer: (range: \"15 inH2O\", ");
    let text = spoiled(&text, "lockup: \"13.1", "lockup: \"15.2");
    let warned = check("job.ron", &spoiled(&text, "lockup_max: \"14.0", "lockup_max: \"16.0"));
    let warned: Vec<_> = warned.iter().filter(|it| it.path == "manometer.range").collect();
    let [only] = warned.as_slice() else { panic!("{warned:#?}") };
    assert_eq!((only.path.as_str(), only.severity), ("manometer.range", ProblemLevel::Warning));
    assert!(only.message.ends_with("That is so in `variants[0]`."), "{}", only.message);

    // A fault of both settings is told once.
    let twice = of("endings: [InService]", "endings: [SupplyOwnerCalled]");
    assert_eq!(twice.len(), 1, "{twice:#?}");

    let gas_only = spoiled(&natural(), "card: (", "variants: [(gas: (fuel: Propane))], card: (");
    let found = check("job.ron", &gas_only);
    assert!(found.iter().any(|it| it.message.contains("marked for natural gas")), "{found:#?}");
    assert!(found.iter().any(|it| it.path == "supply.source"), "{found:#?}");
}

/// A setting that writes nothing, too many of them, and fields that it does not have.
#[test]
fn settings_written_wrongly() {
    let with = |list: &str| spoiled(&natural(), "card: (", &format!("variants: {list}, card: ("));
    let found = check("job.ron", &with("[()]"));
    assert!(
        found.iter().any(|it| it.path == "variants[0]" && it.severity == ProblemLevel::Warning)
    );
    let found = check("job.ron", &with("[(), (), (), ()]"));
    assert!(found.iter().any(|it| it.code == Code::BadLength && it.path == "variants"));
    let found = check("job.ron", &with("[(manometer: ())]"));
    let hit = found.iter().find(|it| it.code == Code::UnknownField).unwrap();
    assert_eq!(hit.path, "variants[0].manometer");
    let found = check("job.ron", &with("[(gas: (fuel: Natural, heating_value: \"9 Btu/ft3\"))]"));
    let hit = found.iter().find(|it| it.code == Code::OutOfRange).unwrap();
    assert_eq!(hit.path, "variants[0].gas.heating_value");
}

/// The fields inside a setting are explained as those of the job.
#[test]
fn settings_are_explained() {
    assert_eq!(find("variants[0].gas.fuel"), find("gas.fuel"));
    let fuel = find("fuel").unwrap();
    assert!(fuel.iter().all(|it| !it.path.starts_with("variants.")), "{fuel:#?}");
    assert_eq!(find("variants.gas").unwrap().len(), 1);
    assert!(find("variants.manometer").is_err());
}

/// A setting may have endings of its own; both the marking and the check go by them.
#[test]
fn a_setting_may_end_otherwise() {
    let with = |own: &str| {
        let text = spoiled(
            &order(),
            "faults: [OneOf([low_stage_set_low, low_stage_set_high, high_stage_set_low, high_stage_set_high])]",
            "faults: [low_stage_set_low]",
        );
        spoiled(
            &text,
            "            gas: (fuel: Propane),",
            &format!(
                "            gas: (fuel: Propane),\n            faults: [holed_exchanger],{own}"
            ),
        )
    };
    let found = check("job.ron", &with(""));
    let hit = found.iter().find(|it| it.path == "marking.endings[0]").unwrap();
    assert!(hit.message.contains("`ShutOff` can be right"), "{}", hit.message);
    assert!(hit.message.contains("`variants[0]`. It may write `endings`"), "{}", hit.message);
    let text = with("\n            endings: [ShutOff],");
    assert!(check("job.ron", &text).is_empty(), "{:#?}", check("job.ron", &text));
    let job = load(&text).unwrap();
    for seed in 0..8 {
        let wanted = if job.setting(seed) == 1 { Ending::ShutOff } else { Ending::InService };
        assert_eq!(job.right_endings(seed), [wanted]);
        let proof = prove_seed(&job, seed, Spoiling::No).unwrap();
        assert!(proof.is_full() && proof.ending == Some(wanted), "{proof:?}");
    }
    let wrong = check("job.ron", &with("\n            endings: [InService],"));
    assert!(wrong.iter().any(|it| it.path == "variants[0].endings[0]"), "{wrong:#?}");
}

/// What a setting on another fuel leaves to the job is named; so is the way to another fuel where a
/// word is drawn that cannot be.
#[test]
fn the_likeliest_slips_point_the_way() {
    let text = spoiled(&natural(), "card: (", "variants: [(gas: (fuel: Propane))], card: (");
    let found = check("job.ron", &text);
    for field in ["supply", "furnace"] {
        let said = format!("writes no `{field}`");
        assert!(found.iter().any(|it| it.path == "variants[0]" && it.message.contains(&said)));
    }
    let text = spoiled(&natural(), "fuel: Natural", "fuel: OneOf([Natural, Propane])");
    let found = check("job.ron", &text);
    assert!(found.iter().any(|it| it.message.contains("`variants`")), "{found:#?}");
    let text = spoiled(&order(), "faults: [OneOf(", "faults: [Oneof(");
    assert!(check("job.ron", &text).iter().any(|it| it.nearest.as_deref() == Some("OneOf")));
    // One error on a fault that cannot be there, and nothing on what would follow from it.
    let text =
        spoiled(&order(), "OneOf([low_stage_set_low,", "OneOf([cold_tank, low_stage_set_low,");
    let found = check("job.ron", &text);
    assert!(
        found.iter().all(|it| it.path == "faults[0]" && it.message.contains("`faults` of its own"))
    );
    assert_eq!(found.len(), 1, "{found:#?}");
}
