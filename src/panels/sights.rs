//! What I can see: the drawing as a list, for those who do not see it and for those who like
//! lists. A line with a part chooses it.

use egui::{Area, Order, Rect, ScrollArea, Ui, vec2};

use super::actions;
use super::captions;
use super::parts;
use super::view::Job;
use super::widgets;
use super::words;
use crate::parts::{Place, Subject, at_hand, job_order};
use crate::senses::seen::Seen;

/// A line of the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sight {
    /// The part it is about, if it can be chosen.
    pub part: Option<&'static str>,
    /// What is seen, in words.
    pub text: String,
}

/// Everything perceived from here, in the order of the job.
#[must_use]
pub fn sights(seen: &Seen) -> Vec<Sight> {
    let mut lines = vec![Sight { part: None, text: place_line(seen) }];
    let furnace_too: &[&str] = match seen.place {
        Place::GasValve => job_order(Place::PlantRoom),
        Place::PlantRoom | Place::Hall | Place::Yard | Place::Away => &[],
    };
    let listed = job_order(seen.place).iter().chain(furnace_too).chain(at_hand());
    for &part in listed {
        if lines.iter().any(|line| line.part == Some(part)) {
            continue;
        }
        let value = words::value(part, seen);
        if value.is_none() && (actions::choices(part, seen).is_empty() || is_elsewhere(part, seen))
        {
            continue;
        }
        let name = parts::name(part);
        let noted = Subject::from_id(parts::canonical(part))
            .and_then(|subject| seen.sheet.note(subject))
            .map(|note| {
                let before = super::sheet::is_stale(note, &seen.sheet);
                if before { t!("sights-before", noted = note.words()) } else { note.words() }
            });
        let text = match (value, noted) {
            (Some(value), Some(noted)) => {
                t!("sights-part-noted", part = name, state = value, noted = noted)
            }
            (Some(value), None) => t!("sights-part", part = name, state = value),
            (None, Some(noted)) => t!("sights-part", part = name, state = noted),
            (None, None) => name,
        };
        lines.push(Sight { part: Some(part), text });
    }
    lines
}

fn place_line(seen: &Seen) -> String {
    let place = match seen.place {
        Place::Yard => t!("sights-yard"),
        Place::PlantRoom => t!("sights-plant-room"),
        Place::GasValve => t!("sights-gas-valve"),
        Place::Hall => t!("sights-hall"),
        Place::Away => t!("sights-away"),
    };
    format!("{place} {}.", super::top_bar::weather(seen))
}

/// Whether a part is only there with the other fuel, or is not in view at all.
fn is_elsewhere(part: &str, seen: &Seen) -> bool {
    let tank = seen.yard.as_ref().is_some_and(|yard| yard.tank_percent.is_some());
    let meter = seen.yard.as_ref().is_some_and(|yard| yard.dial_turns.is_some());
    match part {
        "tank-gauge" | "tank" | "tank-valve" | "first-regulator" => !tank,
        "meter-dial" | "meter-index" | "gas-meter" => !meter,
        "yard-air" | "supply-regulator" | "supply-vent" => seen.yard.is_none(),
        _ => false,
    }
}

/// Shows the list over the drawing's left side. Gives the part that was chosen.
pub fn sights_ui(ui: &Ui, scene: Rect, job: &Job<'_>) -> Option<&'static str> {
    let mut chosen = None;
    let room = vec2((scene.width() - 24.0).max(40.0), (scene.height() - 90.0).max(40.0));
    let width = (330.0 * super::theme::factor_of(ui)).min(room.x);
    Area::new(widgets::id("sights"))
        .order(Order::Middle)
        .fixed_pos(scene.min + vec2(8.0, 8.0))
        .constrain_to(scene)
        .show(ui.ctx(), |ui| {
            widgets::slip().show(ui, |ui| {
                ui.set_width((width - 28.0).max(20.0));
                widgets::section(ui, t!("sights-title"));
                ScrollArea::vertical().id_salt("sights").max_height(room.y).show(ui, |ui| {
                    for line in captions::captions(job)
                        .iter()
                        .chain(&captions::air_words(job.seen, captions::Sniff::Fresh))
                    {
                        ui.label(line);
                    }
                    for sight in sights(job.seen) {
                        match sight.part {
                            None => drop(ui.label(&sight.text)),
                            Some(part) => {
                                if widgets::list_button(ui, &sight.text, None).clicked() {
                                    chosen = Some(part);
                                }
                            }
                        }
                    }
                });
            });
        });
    chosen
}
