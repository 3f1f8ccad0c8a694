//! The table of parts against the drawings and against the lists of named things.

use std::collections::BTreeSet;
use std::fs;

use quarterturn::parts::{
    Door, HandValve, Joint, OtherAppliance, Part, Place, Port, Screw, Tool, Window, at_hand,
    job_order, part,
};

/// Groups of the drawings that nobody touches.
const NOT_TOUCHED: [&str; 11] = [
    "backdrop",
    "tray",
    "tool-roll",
    "room",
    "wall",
    "sky",
    "weather",
    "light",
    "dim",
    "pane",
    "view",
];

/// The ids of the drawings' parts: `high-cap` of `high-cap@off`; pieces such as `high-cap.slot`
/// left aside.
fn drawn() -> BTreeSet<String> {
    let mut ids = BTreeSet::new();
    for entry in fs::read_dir("assets/drawings").unwrap() {
        let text = fs::read_to_string(entry.unwrap().path()).unwrap();
        let elements = text.split(" id=\"").skip(1).filter_map(|rest| rest.split('"').next());
        let whole = elements.filter(|id| !id.contains('.'));
        ids.extend(whole.filter_map(|id| id.split('@').next()).map(str::to_owned));
    }
    ids.retain(|id| !NOT_TOUCHED.contains(&id.as_str()));
    ids
}

/// Whatever is drawn as a part has its row, and whatever a job meets in its order is drawn.
#[test]
fn what_is_drawn_stands_in_the_table() {
    let drawn = drawn();
    assert!(drawn.len() > 80, "{}", drawn.len());
    let unknown: Vec<_> = drawn.iter().filter(|id| part(id).is_none()).collect();
    assert!(unknown.is_empty(), "no part: {unknown:?}");
    let listed = Place::ALL.iter().flat_map(|&place| job_order(place)).chain(at_hand());
    let not_drawn: BTreeSet<_> = listed.filter(|&&id| !drawn.contains(id)).collect();
    assert!(not_drawn.is_empty(), "not drawn: {not_drawn:?}");
}

/// What the program names by an id of its own is a part of the same name.
#[test]
fn named_things_are_parts_of_the_same_name() {
    fn hold<T: Copy>(all: &[T], id: fn(T) -> &'static str, label: fn(T) -> &'static str) {
        for &one in all {
            let name = part(id(one)).map(|part| part.name);
            assert_eq!(name, Some(label(one)), "{}", id(one));
        }
    }
    hold(Port::ALL, Port::id, Port::label);
    hold(HandValve::ALL, HandValve::id, HandValve::label);
    hold(Screw::ALL, Screw::id, Screw::label);
    hold(Door::ALL, Door::id, Door::label);
    hold(Window::ALL, Window::id, Window::label);
    hold(OtherAppliance::ALL, OtherAppliance::id, OtherAppliance::label);
    hold(Tool::ALL, Tool::id, Tool::label);
    hold(Joint::ALL, Joint::id, Joint::label);
    for &screw in Screw::ALL {
        assert_eq!(part(screw.id()).and_then(|part: &Part| part.screw), Some(screw));
    }
    for &port in Port::ALL {
        assert_eq!(part(port.id()).and_then(|part: &Part| part.port), Some(port));
    }
}
