//! Excess air, carbon monoxide and flame current of the shipped burners.

use super::bench::{in_range, setup};
use crate::appliance::burner::{BurnerIn, Burners, Condition, INDUCER_REDUCED};
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::physics::combustion::{co_air_free_ppm, flue_gas};
use crate::physics::fluid::Gas;
use crate::units::TICK_S;
use crate::words::decimal;

pub(super) fn checks() -> Vec<Check> {
    vec![excess_air(), over_firing(), healthy_co(), air_free(), co_order(), flame_current(), rod()]
}

/// Burners of a healthy bench, lit.
struct Lit {
    burners: Burners,
    gas: Gas,
    rated_m3_s: f64,
    first_share: f64,
}

impl Lit {
    fn new(id: &str, condition: Condition) -> Option<Self> {
        let setup = setup(id)?;
        let furnace = &setup.furnace;
        let levels = furnace.plate.input.map(|_, input| input.si() / setup.gas.heating_value_j_m3);
        let rated_m3_s = *levels.top();
        let first_share = levels.first() / rated_m3_s;
        let mut burners = Burners::new(&furnace.orifices_m, levels, 17.0);
        burners.set_condition(condition);
        let mut lit = Self { burners, gas: setup.gas, rated_m3_s, first_share };
        lit.run(850, 0.0, INDUCER_REDUCED, true);
        lit.run(250, first_share, INDUCER_REDUCED, true);
        Some(lit)
    }

    fn run(&mut self, ticks: u32, load: f64, inducer: f64, igniter: bool) {
        let flow_m3_s = load * self.rated_m3_s;
        for _ in 0..ticks {
            self.burners.step(TICK_S, &self.gas, &BurnerIn { flow_m3_s, igniter, inducer });
        }
    }

    /// Burns at a share of the rated flow with the inducer at full speed.
    fn at(&mut self, load: f64) -> &Burners {
        self.run(50, load, 1.0, false);
        &self.burners
    }

    /// Burns at the first level's rate and the inducer's reduced speed.
    fn reduced(&mut self) -> &Burners {
        self.run(50, self.first_share, INDUCER_REDUCED, false);
        &self.burners
    }
}

const BENCHES: [&str; 2] = ["healthy-natural", "healthy-propane"];

fn benches() -> impl Iterator<Item = (&'static str, Lit)> {
    BENCHES.into_iter().filter_map(|id| Some((id, Lit::new(id, Condition::default())?)))
}

fn excess_air() -> Check {
    let mut rows = Vec::new();
    for (id, mut lit) in benches() {
        let reduced = 100.0 * lit.reduced().excess_air();
        let full = 100.0 * lit.at(1.0).excess_air();
        rows.push(in_range(&t!("row-low", id = id), [30.0, 60.0], reduced));
        rows.push(in_range(&t!("row-high", id = id), [30.0, 60.0], full));
    }
    check("parts.burner.excess-air", rows)
}

/// The inducer's air is fixed: more gas leaves less of it over.
fn over_firing() -> Check {
    let mut rows = Vec::new();
    for (id, mut lit) in benches() {
        let rated = 1.0 + lit.at(1.0).excess_air();
        for load in [0.8, 0.9, 1.1, 1.2, 1.3] {
            let by_hand = 100.0 * (rated / load - 1.0);
            let found = 100.0 * lit.at(load).excess_air();
            let label = t!("row-id-rated-gas", id = id, percent = decimal(100.0 * load, 0));
            rows.push(Row::new(label, by_hand, found).on(id, 100.0 * load));
        }
    }
    check("parts.burner.over-firing", rows)
}

fn healthy_co() -> Check {
    let mut rows = Vec::new();
    for (id, mut lit) in benches() {
        rows.push(Row::new(t!("row-low", id = id), 100.0, lit.reduced().co_air_free_ppm()));
        rows.push(Row::new(t!("row-high", id = id), 100.0, lit.at(1.0).co_air_free_ppm()));
        rows.push(Row::new(t!("row-110-rated", id = id), 100.0, lit.at(1.1).co_air_free_ppm()));
    }
    check("parts.burner.healthy-co", rows)
}

fn air_free() -> Check {
    let rows = [(50.0, 7.0), (1_200.0, 6.0), (100.0, 11.05)]
        .into_iter()
        .map(|(ppm, o2)| {
            let by_hand = ppm * 20.9 / (20.9 - o2);
            Row::new(
                t!("row-ppm-o", ppm = ppm.to_string(), o2 = o2.to_string()),
                by_hand,
                co_air_free_ppm(ppm, o2 / 100.0),
            )
        })
        .collect();
    check("parts.burner.co-air-free", rows)
}

/// Order and size of carbon monoxide as air runs short.
fn co_order() -> Check {
    let mut rows = Vec::new();
    for (id, mut lit) in benches() {
        let co = [0.9, 1.0, 1.1, 1.2, 1.3, 1.4].map(|load| lit.at(load).co_air_free_ppm());
        let least = co.windows(2).map(|pair| pair[1] - pair[0]).fold(f64::INFINITY, f64::min);
        rows.push(Row::new(t!("row-least-rise-from-90", id = id), 0.0, least));
        let rise = 10.0 * co[1];
        rows.push(Row::new(t!("row-140-against-ten-times", id = id), rise, co[5]));
    }
    let short = flue_gas(&Gas::natural(), 0.0).co_air_free_ppm;
    rows.push(Row::new(t!("row-excess-air-against-400"), 400.0, short));
    let blocked = Condition {
        draft: crate::appliance::draft::Draft { vent_blocked: 0.75, ..Default::default() },
        ..Condition::default()
    };
    if let Some(mut lit) = Lit::new(BENCHES[0], blocked) {
        let ppm = lit.at(1.0).co_air_free_ppm();
        rows.push(Row::new(t!("row-three-quarters-vent-blocked"), 100.0, ppm));
    }
    check("parts.burner.co-order", rows)
}

fn flame_current() -> Check {
    let mut rows = Vec::new();
    for (id, mut lit) in benches() {
        rows.push(in_range(&t!("row-low", id = id), [1.8, 4.0], lit.reduced().flame_ua()));
        rows.push(in_range(&t!("row-high", id = id), [1.8, 4.0], lit.at(1.0).flame_ua()));
        rows.push(in_range(&t!("row-gas-off", id = id), [0.0, 0.4], lit.at(0.0).flame_ua()));
    }
    check("parts.flame.current", rows)
}

/// A dirty rod's current is weak first, then too little.
fn rod() -> Check {
    let mut rows = Vec::new();
    for (name, share, range) in [
        ("clean", 1.0, [1.5, 4.0]),
        (t!("row-dirty-half-current-left"), 0.5, [0.5, 1.5]),
        (t!("row-filthy-tenth-left"), 0.1, [0.0, 0.4]),
    ] {
        for (what, condition) in [
            ("rod", Condition { rod: share, ..Condition::default() }),
            ("ground", Condition { ground: share, ..Condition::default() }),
        ] {
            if let Some(mut lit) = Lit::new(BENCHES[0], condition) {
                rows.push(in_range(&format!("{what}, {name}"), range, lit.reduced().flame_ua()));
            }
        }
    }
    check("parts.flame.dirty-rod", rows)
}
