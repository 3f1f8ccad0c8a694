//! The supply outside.

use super::furnace::{hand_valve, joint};
use super::here::{calls, probe_at, sniff, walks};
use super::list::List;
use super::valve::screw_ways;
use crate::parts::{HandValve, Height, Joint, Place, Screw};
use crate::senses::seen::Seen;

pub(super) fn add(id: &str, seen: &Seen, list: &mut List) {
    if id == "exit-gate" && matches!(seen.place, Place::Yard | Place::Away) {
        walks(seen, list);
        calls(list);
    }
    let Some(yard) = seen.yard.as_ref() else { return };
    match id {
        "supply-cock" => hand_valve(HandValve::Supply, yard.supply_valve, list),
        "supply-cap" | "supply-screw" => screw_ways(Screw::Supply, yard.cap, seen, list),
        "supply-regulator" | "first-regulator" | "tank-valve" | "riser" => {
            Joint::from_id(id).into_iter().for_each(|it| joint(it, seen, list));
        }
        "yard-air" => {
            sniff(Height::Head, list);
            sniff(Height::Floor, list);
            probe_at(Height::Floor, seen, list);
            probe_at(Height::Head, seen, list);
        }
        _ => {}
    }
}
