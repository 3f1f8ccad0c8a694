//! Gas in the air of a room, and the house's temperature.

use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::physics::fluid::Gas;
use crate::physics::room::{Leaks, Room, Ventilation, dilute};
use crate::site::house::House;

pub(super) fn checks() -> Vec<Check> {
    vec![table(), worked_leaks(), balance(), decay(), level()]
}

/// Concentration for a source of 1 m³/h in 1 m³, by air changes an hour, after these minutes.
const MINUTES: [f64; 7] = [10.0, 20.0, 40.0, 80.0, 160.0, 320.0, 640.0];
const PUBLISHED: [(f64, [f64; 7]); 5] = [
    (0.5, [0.1599, 0.307, 0.5669, 0.9732, 1.4728, 1.861, 1.9903]),
    (1.0, [0.1535, 0.2835, 0.4866, 0.7364, 0.9305, 0.9952, 1.0]),
    (2.0, [0.1417, 0.2433, 0.3682, 0.4653, 0.4976, 0.5, 0.5]),
    (4.0, [0.1216, 0.1841, 0.2326, 0.2488, 0.25, 0.25, 0.25]),
    (8.0, [0.0921, 0.1163, 0.1244, 0.125, 0.125, 0.125, 0.125]),
];

fn table() -> Check {
    let mut rows = Vec::new();
    for (changes_h, published) in PUBLISHED {
        let mut stepped = 0.0;
        let mut passed_s = 0.0;
        for (minutes, reference) in MINUTES.into_iter().zip(published) {
            while passed_s < 60.0 * minutes {
                stepped = dilute(stepped, 0.0, 1.0 / 3_600.0, changes_h / 3_600.0, 20.0);
                passed_s += 20.0;
            }
            let label = t!(
                "row-changes-h-min",
                changes_h = changes_h.to_string(),
                minutes = minutes.to_string()
            );
            rows.push(Row::new(label, reference, stepped).on(format!("{changes_h}/h"), minutes));
        }
    }
    check("closed.room.dilution-table", rows)
}

/// Two leaks in a closet-size room, worked by hand.
fn worked_leaks() -> Check {
    let n = 0.35 / 3_600.0;
    let leak = |m3_h: f64| m3_h / 3_600.0 / 30.0;
    let after = |m3_h: f64, minutes: f64| 100.0 * dilute(0.0, 0.0, leak(m3_h), n, 60.0 * minutes);
    let purge_min = libm::log(4.76 / 1.0) / 0.35 * 60.0;
    let purged = 100.0 * dilute(0.0476, 0.0, 0.0, n, 60.0 * purge_min);
    let rows = vec![
        Row::new(t!("row-tenth-m3-h-for-good"), 100.0 * 0.10 / (0.35 * 30.0), after(0.10, 1e5)),
        Row::new(t!("row-half-m3-h-for-good"), 100.0 * 0.50 / (0.35 * 30.0), after(0.50, 1e5)),
        Row::new(t!("row-half-m3-h-for-a-time"), 1.0, after(0.50, 40.4)),
        Row::new(t!("row-aired-from-4-76"), 1.0, purged),
    ];
    check("closed.room.worked-leaks", rows)
}

/// Without air changes all that leaked is still there.
fn balance() -> Check {
    let mut rows = Vec::new();
    for (name, gas) in [(t!("row-natural-gas"), Gas::natural()), ("propane", Gas::propane())] {
        for (place, vestibule_m3_s, floor_m3_s, breathing_m3_s) in [
            ("vestibule", 2e-5, 0.0, 0.0),
            ("floor", 0.0, 2e-5, 0.0),
            (t!("row-breathing-height"), 0.0, 0.0, 2e-5),
        ] {
            let mut room = Room::new(&gas, 30.0, 0.0);
            for _ in 0..9_000 {
                let leaks = Leaks { vestibule_m3_s, floor_m3_s, breathing_m3_s };
                room.step(0.2, leaks, Ventilation::default());
            }
            let label = t!("row-leak", name = name, place = place);
            rows.push(Row::new(label, 2e-5 * 1_800.0 * 1e3, room.gas_m3() * 1e3));
        }
    }
    check("closed.room.balance", rows)
}

/// The house cools as an exponential.
fn decay() -> Check {
    let (loss_w_k, mass_j_k, outside_k) = (350.0, 2.5e7, 264.0);
    let mut house = House::new(294.0, loss_w_k, mass_j_k);
    let rows = (1..=6_u32)
        .map(|k| {
            for _ in 0..18_000 {
                house.step(0.2, 0.0, outside_k);
            }
            let hours = f64::from(k);
            let by_hand = outside_k + 30.0 * libm::exp(-loss_w_k * hours * 3_600.0 / mass_j_k);
            Row::new(format!("{hours:.0} h"), by_hand - 273.15, house.inside_k() - 273.15)
                .on("", hours)
        })
        .collect();
    check("closed.house.decay", rows)
}

/// Heat and loss balance where the temperature levels off.
fn level() -> Check {
    let rows = [(56_000.0, 350.0), (80_000.0, 600.0)]
        .into_iter()
        .map(|(btu_h, loss_w_k)| {
            let heat_w = 0.8 * btu_h * crate::units::W_PER_BTU_H;
            let mut house = House::new(294.0, loss_w_k, 2.5e7);
            for _ in 0..2_000 {
                house.step(3_600.0, heat_w, 264.0);
            }
            let label = t!(
                "row-heat-into-house",
                btu_h = btu_h.to_string(),
                loss_w_k = loss_w_k.to_string()
            );
            Row::new(label, heat_w / loss_w_k, house.inside_k() - 264.0)
        })
        .collect();
    check("closed.house.level", rows)
}
