//! Hot-spots over the drawing, and names beside its parts.

use egui::{Rect, pos2, vec2};
use egui_kittest::kittest::Queryable;
use quarterturn::hands::action::Action;
use quarterturn::panels::Command;
use quarterturn::panels::labels::{Wanted, place};
use quarterturn::panels::spot::spots;
use quarterturn::panels::view::PartBox;
use quarterturn::parts::{Place, Subject};
use quarterturn::physics::valve::HandleAngle;

use crate::fixture::{App, Which, boxes, seen, window};

/// WCAG 2.2, 2.5.8: nothing that can be pressed is smaller than 24 points either way, however
/// small it is drawn, and it stays inside the drawing.
#[test]
fn hot_spots_are_large_enough() {
    let scene = Rect::from_min_size(pos2(0.0, 48.0), vec2(960.0, 672.0));
    for &at in Place::ALL {
        let spots = spots(scene, at, &boxes(at, scene));
        assert!(spots.len() > 10);
        for spot in spots {
            assert!(spot.rect.width() >= 24.0 && spot.rect.height() >= 24.0, "{spot:?}");
            assert!(scene.expand(0.1).contains_rect(spot.rect), "{spot:?}");
        }
    }
    let corner = PartBox {
        id: "plate".into(),
        rect: Rect::from_min_size(scene.min, vec2(2.0, 2.0)),
        pivot: None,
    };
    assert!(scene.contains_rect(spots(scene, Place::PlantRoom, &[corner])[0].rect));
}

/// Pieces and states are no hot-spots of their own.
#[test]
fn a_part_has_one_hot_spot() {
    let scene = Rect::from_min_size(pos2(0.0, 0.0), vec2(960.0, 672.0));
    let rect = Rect::from_min_size(pos2(100.0, 100.0), vec2(40.0, 40.0));
    let boxes = ["high-cap", "high-cap@off", "meter.display", "backdrop"].map(|id| PartBox {
        id: id.into(),
        rect,
        pivot: None,
    });
    let spots = spots(scene, Place::GasValve, &boxes);
    assert_eq!(spots.len(), 1);
    assert_eq!(spots[0].part, "high-cap");
}

/// A small part inside a large one is the one that the other button chooses; the slip beside it does what
/// it says.
#[test]
fn a_click_on_a_part_opens_its_ways() {
    let mut harness = window(App::new(Which::Job, seen(Place::PlantRoom)), 1280.0, 720.0);
    harness.get_by_label("Rating plate").click_secondary();
    harness.run();
    // One button in the slip, one on the sheet.
    let read = harness.get_all_by_label("Read the rating plate").next().unwrap();
    read.click();
    harness.run();
    assert_eq!(harness.state().commands, [Command::Act(Action::Look(Subject::Plate))]);
}

/// The name of a hot-spot says how the part stands.
#[test]
fn a_hot_spot_says_how_its_part_stands() {
    let mut app = App::new(Which::Job, seen(Place::PlantRoom));
    app.seen.furnace.as_mut().unwrap().manual_valve = HandleAngle::SHUT;
    let harness = window(app, 1280.0, 720.0);
    assert!(harness.query_by_label("Manual shut-off valve, shut").is_some());
}

/// Names never overlap each other nor foreign parts, and stay inside the drawing.
#[test]
fn names_do_not_collide() {
    let scene = Rect::from_min_size(pos2(0.0, 0.0), vec2(600.0, 400.0));
    let mut parts = Vec::new();
    for row in 0..7 {
        for column in 0..9 {
            let at = pos2(20.0 + 64.0 * column as f32, 15.0 + 56.0 * row as f32);
            parts.push(Rect::from_min_size(at, vec2(22.0, 22.0)));
        }
    }
    let wanted: Vec<Wanted> =
        parts.iter().map(|&part| Wanted { part, size: vec2(58.0, 16.0) }).collect();
    let spots = place(scene, &wanted, &parts);
    let placed: Vec<Rect> = spots.iter().flatten().copied().collect();
    assert!(placed.len() > 10, "only {} names found room", placed.len());
    for (i, one) in placed.iter().enumerate() {
        assert!(scene.contains_rect(*one));
        assert!(placed.iter().skip(i + 1).all(|other| !other.intersects(*one)));
        assert!(parts.iter().all(|part| !part.shrink(0.1).intersects(*one)));
    }
}
