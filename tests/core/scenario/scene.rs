//! The kinds of equipment and surroundings that a job has.

use quarterturn::bench::Bench;
use quarterturn::parts::{Position, Room, Scene, TimeOfDay, ValveBody, YardLook};
use quarterturn::scenario::load;

use super::{natural, problems, spoiled};

/// How many different ones there are.
fn kinds<T: PartialEq>(all: impl Iterator<Item = T>) -> usize {
    let mut kinds: Vec<T> = Vec::new();
    for one in all {
        if !kinds.contains(&one) {
            kinds.push(one);
        }
    }
    kinds.len()
}

fn scene(written: &str, seed: u64) -> Scene {
    let text = spoiled(&natural(), "house: (", &format!("scene: ({written}), house: ("));
    load(&text).unwrap().draw(seed).scene
}

/// Looks that are not written are drawn from the seed, each by a stream of its own; the valve's body
/// is what hands work on, and stays.
#[test]
fn looks_come_from_the_seed_and_the_valve_does_not() {
    let job = load(&natural()).unwrap();
    let scenes: Vec<Scene> = (0..60).map(|seed| job.draw(seed).scene).collect();
    assert_eq!(kinds(scenes.iter().map(|it| it.room)), 3);
    assert_eq!(kinds(scenes.iter().map(|it| (it.room, it.yard))), 6);
    assert!(scenes.iter().all(|it| it.valve == ValveBody::Plugs));
    for (seed, drawn) in (0..).zip(&scenes) {
        assert_eq!(scene("yard: Brick", seed).room, drawn.room, "the room has its own stream");
    }
}

/// An author has the last word, for one kind or for several to draw from.
#[test]
fn an_author_chooses() {
    for seed in 0..20 {
        let written = scene("room: Garage, yard: Siding, valve: SideBySide, hour: 17.5", seed);
        let wanted = Scene {
            valve: ValveBody::SideBySide,
            room: Room::Garage,
            yard: YardLook::Siding,
            begins: TimeOfDay { minutes: 17 * 60 + 30 },
        };
        assert_eq!(written, wanted);
        assert_ne!(scene("room: OneOf([Closet, Garage])", seed).room, Room::Basement);
    }
    let bodies = (0..30).map(|seed| scene("valve: OneOf([Plugs, SideBySide])", seed).valve);
    assert_eq!(kinds(bodies), 2);
    assert!(!problems("house: (", "scene: (room: Loft), house: (").is_empty());
}

/// Looks are nothing that could be measured: another room is no other bench.
#[test]
fn looks_are_not_in_the_digest() {
    let mut setup = load(&natural()).unwrap().draw(3);
    let digest = Bench::new(setup.clone()).digest();
    setup.scene.yard = match setup.scene.yard {
        YardLook::Siding => YardLook::Brick,
        YardLook::Brick => YardLook::Siding,
    };
    setup.scene.room = match setup.scene.room {
        Room::Basement => Room::Closet,
        Room::Closet | Room::Garage | Room::Attic => Room::Basement,
    };
    setup.scene.begins = TimeOfDay::from_hours(23.0);
    assert_eq!(Bench::new(setup.clone()).digest(), digest);
    setup.scene.valve = ValveBody::TapScrews;
    assert_ne!(Bench::new(setup).digest(), digest);
}

/// A furnace lies in an attic and stands anywhere else: the author writes either, and the other
/// follows; both where they cannot be together are a problem.
#[test]
fn a_horizontal_furnace_lies_in_an_attic() {
    for seed in 0..20 {
        assert_eq!(scene("position: Horizontal", seed).room, Room::Attic);
        assert_eq!(scene("room: Attic", seed).position(), Position::Horizontal);
        assert_eq!(scene("position: Upright", seed).position(), Position::Upright);
    }
    let drawn = |written: &str| -> Vec<Position> {
        (0..30).map(|seed| scene(written, seed).position()).collect()
    };
    assert!(drawn("yard: Brick").into_iter().all(|position| position == Position::Upright));
    assert_eq!(kinds(drawn("room: OneOf([Attic, Basement])").into_iter()), 2);
    assert_eq!(kinds(drawn("position: OneOf([Upright, Horizontal])").into_iter()), 2);
    let told = |written: &str| problems("house: (", &format!("scene: ({written}), house: ("));
    for both in [
        "position: Horizontal, room: Closet",
        "position: Upright, room: Attic",
        "position: Horizontal, room: OneOf([Attic, Garage])",
        "position: OneOf([Upright, Horizontal]), room: Attic",
    ] {
        let found = told(both);
        assert!(found.iter().any(|it| it.path == "scene.room"), "{both}: {found:?}");
    }
    assert!(told("position: Horizontal, room: Attic").is_empty());
    assert!(told("position: Upright, room: OneOf([Closet, Garage])").is_empty());
}

/// The hour is drawn for each seed in working time, and no later than a day has hours.
#[test]
fn a_job_has_its_hour() {
    let job = load(&natural()).unwrap();
    let begins: Vec<_> = (0..40).map(|seed| job.draw(seed).scene.begins).collect();
    assert!(kinds(begins.iter().copied()) > 4);
    assert!(begins.iter().all(|it| (7 * 60..=16 * 60 + 15).contains(&it.minutes)));
    assert!(!problems("house: (", "scene: (hour: 25), house: (").is_empty());
}
