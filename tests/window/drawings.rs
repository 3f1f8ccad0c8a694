//! The drawings against their contract: sound, light, and every part that the program knows.

use std::collections::{BTreeMap, BTreeSet};

use quarterturn::app::boxes::boxes_in_drawing;
use quarterturn::app::drawings::{NamedDrawing, PAGE, all, furnace_room, gas_valve};
use quarterturn::app::pose;
use quarterturn::parts::{
    Door, HandValve, Level, Levels, OtherAppliance, Place, Room, Screw, Subject, Tool, ValveBody,
    Window,
};

fn drawings() -> Vec<NamedDrawing> {
    all().expect("the drawings are sound")
}

/// The drawings that show a place.
fn drawings_of(place: Place) -> &'static [&'static str] {
    match place {
        Place::Yard => &["yard_propane", "yard_natural"],
        Place::PlantRoom => &["plant_room", "plant_room_garage", "attic"],
        Place::GasValve => &["gas_valve", "gas_valve_taps", "gas_valve_side"],
        Place::Hall => &["hall"],
        Place::Away => &[],
    }
}

/// Every part that can be touched or looked at somewhere is drawn there.
#[test]
fn every_part_is_drawn_where_it_can_be_reached() {
    let drawings = drawings();
    let mut wanted: Vec<(&str, &str)> = Vec::new();
    let mut want = |place: Place, id: &'static str| {
        wanted.extend(drawings_of(place).iter().map(|drawing| (*drawing, id)));
    };
    for &subject in Subject::ALL {
        match subject {
            Subject::TankGauge => {}
            Subject::MeterDial => {}
            _ => want(subject.place(), subject.id()),
        }
    }
    want(Place::PlantRoom, HandValve::Furnace.id());
    want(Place::PlantRoom, HandValve::WaterHeater.id());
    want(Place::Hall, HandValve::Range.id());
    want(Place::Yard, HandValve::Supply.id());
    want(Place::PlantRoom, OtherAppliance::WaterHeater.id());
    want(Place::Hall, OtherAppliance::Range.id());
    want(Place::GasValve, Screw::Low.id());
    want(Place::GasValve, Screw::High.id());
    want(Place::Yard, Screw::Supply.id());
    want(Place::PlantRoom, Door::Burner.id());
    want(Place::PlantRoom, Door::Blower.id());
    want(Place::PlantRoom, Window::PlantRoom.id());
    want(Place::Hall, Window::Hall.id());
    want(Place::GasValve, "inlet-port");
    want(Place::GasValve, "manifold-port");
    wanted.push(("yard_propane", "tank-gauge"));
    wanted.push(("yard_natural", "meter-dial"));
    wanted.extend(Tool::ALL.iter().map(|tool| ("tools", tool.id())));
    for id in ["meter-power", "meter-zero", "meter-unit", "meter.display"] {
        wanted.push(("manometer", id));
    }
    for (drawing, id) in wanted {
        let named = drawings.iter().find(|s| s.name == drawing).expect("the drawing");
        let shown = vec![true; named.drawing.groups.len()];
        let parts = boxes_in_drawing(named, &shown);
        let uncovered = parts.iter().any(|(part, _)| part == id);
        let drawn = named.drawing.groups.iter().any(|g| g.id.split('@').next() == Some(id));
        assert!(uncovered || drawn, "{drawing}.svg has no `{id}`");
    }
}

/// The gas valve's bodies differ only in where things are: each has every part that another has, but
/// for the plugs' own positions and the adapters that a pressure tap does not need.
#[test]
fn every_gas_valve_has_the_same_parts() {
    let drawings = drawings();
    let parts = |name: &str| -> BTreeSet<String> {
        let named = drawings.iter().find(|it| it.name == name).expect("the drawing");
        named.drawing.groups.iter().map(|group| group.id.clone()).collect()
    };
    let [plugs, taps, side] =
        [ValveBody::Plugs, ValveBody::TapScrews, ValveBody::SideBySide].map(gas_valve).map(parts);
    assert_eq!(plugs, side);
    let needless = |id: &String| {
        ["@leaning", "@cracked", "-adapter@on"].iter().any(|state| id.ends_with(state))
    };
    let missing: Vec<_> = plugs.difference(&taps).filter(|id| !needless(id)).collect();
    assert!(missing.is_empty(), "{missing:?}");
    assert!(taps.difference(&plugs).all(|id| id.ends_with("@hosed")));
}

/// Upright or lying, on the floor or on a stand: each furnace room has every part of the others, but
/// for its own ground.
#[test]
fn every_furnace_room_has_the_same_parts() {
    let drawings = drawings();
    let [floor, garage, attic] =
        [Room::Basement, Room::Garage, Room::Attic].map(furnace_room).map(|name| {
            let named = drawings.iter().find(|it| it.name == name).expect("the drawing");
            let ids = named.drawing.groups.iter().map(|group| group.id.clone());
            ids.filter(|id| !pose::is_ground(id)).collect::<BTreeSet<String>>()
        });
    assert_eq!(floor, garage);
    let differ: Vec<_> = floor.symmetric_difference(&attic).collect();
    assert!(differ.is_empty(), "{differ:?}");
}

/// In a garage the water heater's fire is raised: 18 in. above the floor at least, where gasoline
/// vapors may lie (IFGC 305.3, NFPA 54 9.1.10; value from memory). A storage heater of 47 in. (common
/// practice, 30 gallons short) gives the scale.
#[test]
fn the_water_heater_of_a_garage_is_raised() {
    let drawings = drawings();
    let bounds = |room: Room, id: &str| {
        let named = drawings.iter().find(|it| it.name == furnace_room(room)).expect("the drawing");
        let group = named.drawing.find(id).expect("the part");
        named.drawing.bounds(group, |_| true).expect("it is drawn")
    };
    let flame = |room| bounds(room, "water-heater.flame").max[1];
    let raised = flame(Room::Basement) - flame(Room::Garage);
    let units_per_inch = (592.0 - 236.0) / 47.0;
    let above_floor = 592.0 - flame(Room::Garage);
    assert!(raised > 100.0 && above_floor > 18.0 * units_per_inch, "{raised} {above_floor}");
    assert!(592.0 - flame(Room::Basement) < 18.0 * units_per_inch);
}

/// The ports of two bodies lie elsewhere: the side by side ones at one height.
#[test]
fn ports_lie_where_their_body_has_them() {
    let drawings = drawings();
    let at = |body: ValveBody, id: &str| {
        let named = drawings.iter().find(|it| it.name == gas_valve(body)).expect("the drawing");
        let group = named.drawing.find(id).expect("the port");
        named.drawing.bounds(group, |_| true).expect("it is drawn").center()
    };
    let level = |body| (at(body, "inlet-port")[1] - at(body, "manifold-port")[1]).abs();
    assert!(level(ValveBody::SideBySide) < 6.0);
    assert!(level(ValveBody::Plugs) > 15.0);
    let screws = |body| (at(body, "low-screw")[1] - at(body, "high-screw")[1]).abs();
    assert!(screws(ValveBody::SideBySide) < 1.0 && screws(ValveBody::Plugs) > 80.0);
}

/// Every mark of a layer has its layer.
#[test]
fn no_mark_is_left_over() {
    for file in std::fs::read_dir("assets/drawings").expect("the drawings") {
        let path = file.expect("a file").path();
        let text = std::fs::read_to_string(&path).expect("a drawing");
        for mark in text.split("<!--").skip(1).filter_map(|rest| rest.split("-->").next()) {
            let picked = matches!(mark, "valve" | "ports" | "water_heater" | "heater_stacks");
            let layer = std::path::Path::new("assets/drawings").join(mark).with_extension("svg");
            assert!(picked || layer.exists(), "{}: {mark}", path.display());
        }
    }
    for named in drawings() {
        assert!(named.drawing.groups.len() > 5, "{}", named.name);
    }
}

/// Whether a group draws a part of a firing level that such a furnace does not have.
fn is_of_another_furnace(id: &str, levels: &[Level]) -> bool {
    let part = id.split(['@', '.']).next();
    Level::ALL.into_iter().filter(|level| !levels.contains(level)).any(|level| {
        let its = [level.cap_id(), level.screw().id(), level.switch_id()];
        part.is_some_and(|part| its.contains(&part))
    })
}

/// The triangles that can be on the page at once, whether the furnace has one level or two.
fn most_at_once(named: &NamedDrawing) -> usize {
    [Levels::one(()).list(), Levels::two((), ()).list()]
        .map(|levels| most_with(named, levels))
        .into_iter()
        .fold(0, usize::max)
}

/// The triangles that can be on the page at once with these levels: of a part's states only the
/// heaviest.
fn most_with(named: &NamedDrawing, levels: &[Level]) -> usize {
    let mut always = 0;
    let mut states: BTreeMap<&str, BTreeMap<&str, usize>> = BTreeMap::new();
    for chunk in &named.drawing.chunks {
        let mut up = Some(chunk.group);
        let mut within = std::iter::from_fn(|| {
            let group = &named.drawing.groups[up?];
            up = group.parent;
            Some(group.id.as_str())
        });
        if within.any(|id| is_of_another_furnace(id, levels)) {
            continue;
        }
        let count = (chunk.core.indices.len() + chunk.rim.indices.len()) / 3;
        let mut at = Some(chunk.group);
        let state = std::iter::from_fn(|| {
            let group = &named.drawing.groups[at?];
            at = group.parent;
            Some(group.id.split_once('@'))
        });
        match state.flatten().next() {
            Some((part, state)) => {
                *states.entry(part).or_default().entry(state).or_default() += count
            }
            None => always += count,
        }
    }
    always + states.values().filter_map(|of| of.values().max()).sum::<usize>()
}

/// Every drawing stays on its page, and light enough to be drawn without a graphics card.
#[test]
fn every_drawing_fits_its_page_and_stays_light() {
    for named in drawings() {
        let triangles = most_at_once(&named);
        assert!(triangles < 40_000, "{}: {triangles} triangles", named.name);
        let whole = named.drawing.bounds(0, |_| true).expect("something is drawn");
        let (w, h) = (named.drawing.size[0], named.drawing.size[1]);
        for (i, most) in [w, h].into_iter().enumerate() {
            assert!(
                whole.min[i] > -22.0 && whole.max[i] < most + 22.0,
                "{}: {whole:?}",
                named.name
            );
        }
        if !matches!(named.name, "tools" | "manometer") {
            assert_eq!(named.drawing.size, PAGE, "{}", named.name);
        }
    }
}

/// An id stands for one thing in a drawing.
#[test]
fn no_id_is_used_twice() {
    for named in drawings() {
        let mut ids: Vec<&str> =
            named.drawing.groups.iter().skip(1).map(|g| g.id.as_str()).collect();
        let count = ids.len();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), count, "{}", named.name);
    }
}

/// What is painted as a piece or a state is one that the program can pose.
#[test]
fn every_state_and_piece_is_known() {
    let places = ["display", "spot", "1", "2", "3", "4", "handwheel"];
    for named in drawings() {
        for group in &named.drawing.groups {
            let piece = group.id.split_once('.').map(|(_, piece)| piece);
            if piece.is_some_and(|piece| !places.contains(&piece)) {
                assert!(pose::moves(&group.id), "{}: `{}`", named.name, group.id);
            }
        }
    }
}
