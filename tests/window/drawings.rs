//! The drawings against their contract: sound, light, and every part that the program knows.

use std::collections::BTreeMap;

use quarterturn::app::boxes::boxes_in_drawing;
use quarterturn::app::drawings::{NamedDrawing, PAGE, all};
use quarterturn::app::pose;
use quarterturn::parts::{
    Door, HandValve, Level, Levels, OtherAppliance, Place, Screw, Subject, Tool, Window,
};

fn drawings() -> Vec<NamedDrawing> {
    all().expect("the drawings are sound")
}

/// The drawings that show a place.
fn drawings_of(place: Place) -> &'static [&'static str] {
    match place {
        Place::Yard => &["yard_propane", "yard_natural"],
        Place::PlantRoom => &["plant_room"],
        Place::GasValve => &["gas_valve"],
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
