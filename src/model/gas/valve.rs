//! The springs of the gas valve, one for each firing level, and how its regulator is made to
//! behave.

use crate::model::inside::SpringInside;
use crate::parts::{Level, Levels};
use crate::physics::fluid::Gas;
use crate::physics::regulator::{Behaviour, InletEffect, Regulator, RegulatorSpec, Spring};
use crate::setup::{SpringSetup, Stacking, ValveSetup};
use serde::Serialize;

/// Pitch of the stage screws, in metres per turn (common practice).
const PITCH_M: f64 = 8.0e-4;
/// Turns before the bottom at which the coils touch.
const BIND_BEFORE_BOTTOM: f64 = 0.5;
/// Fall of the manifold from a tenth of the rate to the full rate, as a share (common practice).
const DROOP_SHARE: f64 = 0.01;
/// Rise of the manifold at no flow over its set point, as a share (common practice).
const LOCKUP_SHARE: f64 = 0.08;

/// One spring under its screw.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
struct Stage {
    spring: Spring,
    turns: f64,
    max_turns: f64,
    /// Lift of the seat at the stage's own flow, in metres: the spring is pressed this much more
    /// by the screw, so that the set pressure holds at that flow.
    lift_m: f64,
}

/// The spring of each firing level.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(crate) struct StageSprings {
    stages: Levels<Stage>,
    stacking: Stacking,
    base: RegulatorSpec,
    /// The level whose spring is loaded; none once a screw has been turned since.
    loaded: Option<Level>,
}

/// How the burners pull on the valve at each stage.
#[derive(Debug, Clone, Copy)]
pub(crate) struct StageFlow {
    /// Pressure the stage is meant for, in pascals.
    pub pa: f64,
    /// Flow at that pressure, in standard m³/s.
    pub flow_m3_s: f64,
}

impl StageSprings {
    /// Finds seat and diaphragm for the valve, and the offsets of its springs.
    pub(crate) fn new(
        valve: &ValveSetup,
        flows: Levels<StageFlow>,
        gas: &Gas,
        ambient_abs_pa: f64,
    ) -> Self {
        let full = *flows.top();
        let inlet_pa = full.pa + valve.loss_pa.max(50.0) * 2.0;
        let mut behaviour = Behaviour::new(
            full.pa,
            full.pa * (1.0 + LOCKUP_SHARE),
            full.pa * DROOP_SHARE,
            inlet_pa.max(full.pa * (1.0 + LOCKUP_SHARE) + 20.0),
            full.flow_m3_s,
        );
        let share = full.flow_m3_s / valve.loss_flow_m3_s.max(1e-9);
        behaviour.wide_open_drop_pa = (0.5 * valve.loss_pa * share * share).max(5.0);
        behaviour.pa_per_turn = valve.springs.top().pa_per_turn;
        behaviour.bind_turns = 400.0;
        behaviour.max_turns = 400.0;
        behaviour.preload_lag_s = valve.settle_s / 3.0;
        behaviour.inlet_effect = InletEffect::None;
        behaviour.seat_area_m2 = 0.0;
        let base = RegulatorSpec::from_behaviour(&behaviour, gas, ambient_abs_pa)
            .unwrap_or_else(|_| plain_spec(&behaviour));
        let stage = |setup: &SpringSetup, flow: StageFlow| Stage {
            spring: Spring {
                rate_n_m: setup.pa_per_turn / PITCH_M * base.diaphragm_area_m2,
                pitch_m: PITCH_M,
                bind_m: (setup.turns - BIND_BEFORE_BOTTOM).max(0.5) * PITCH_M,
                max_turns: setup.turns,
            },
            turns: setup.found_turns.clamp(0.0, setup.turns),
            max_turns: setup.turns,
            lift_m: base.seat.lift_for_area(seat_area(&base, gas, ambient_abs_pa, flow, inlet_pa)),
        };
        Self {
            stages: valve.springs.map(|level, spring| stage(spring, flows[level])),
            stacking: valve.stacking,
            base,
            loaded: None,
        }
    }

    /// The regulator's fixed parts with the first spring in place.
    pub(crate) fn spec(&self) -> RegulatorSpec {
        let first = self.stages.first();
        RegulatorSpec { spring: roomy(first), turns: first.regulator_turns(), ..self.base }
    }

    /// Loads the spring of a level, with the seats shut that of the first; does nothing when it is
    /// loaded already.
    pub(super) fn load(&mut self, regulator: &mut Regulator, seats: Option<Level>) {
        let level = seats.unwrap_or(self.stages.first_level());
        if self.loaded == Some(level) {
            return;
        }
        self.loaded = Some(level);
        let own = &self.stages[level];
        let (main, stacked) = match self.stacking {
            Stacking::NextOnFirst if !level.is_first() => (self.stages.first(), Some(own)),
            Stacking::NextOnFirst | Stacking::Independent => (own, None),
        };
        regulator.set_spec(RegulatorSpec { spring: roomy(main), ..*regulator.spec() });
        regulator.set_turns(main.regulator_turns());
        regulator.set_extra_preload_n(stacked.map_or(0.0, |stage| {
            let own_n = stage.spring.force_n(stage.turns * PITCH_M);
            own_n + main.spring.rate_n_m * (stage.lift_m - main.lift_m)
        }));
    }

    /// Turns a level's screw; returns whether it came to its stop.
    pub(crate) fn turn(&mut self, level: Level, turns: f64) -> bool {
        let stage = &mut self.stages[level];
        let wanted = stage.turns + turns;
        stage.turns = wanted.clamp(0.0, stage.max_turns);
        self.loaded = None;
        (stage.turns - wanted).abs() > 1e-9
    }

    /// Turns of each screw in from fully out.
    pub(crate) fn turns(&self) -> Levels<f64> {
        self.stages.map(|_, stage| stage.turns)
    }

    /// Each spring under its screw, and whether it presses on the diaphragm.
    pub(crate) fn inside(&self) -> Levels<SpringInside> {
        let loaded = self.loaded.unwrap_or(self.stages.first_level());
        let shared = self.stacking == Stacking::NextOnFirst;
        self.stages.map(|level, stage| SpringInside {
            turns: stage.turns,
            travel_turns: stage.max_turns,
            pressing: level == loaded || (shared && level.is_first()),
        })
    }

    /// Whether each screw stands at its bottom.
    pub(crate) fn bottomed(&self) -> Levels<bool> {
        self.stages.map(|_, stage| stage.turns >= stage.max_turns - 1e-9)
    }

    /// What each level is set to, in pascals over the burner box; a coil-bound spring counts with
    /// the force it really gives.
    pub(crate) fn set_pa(&self) -> Levels<f64> {
        let mut set_pa = self.stages.map(|_, stage| {
            stage.spring.force_n(stage.turns * PITCH_M) / self.base.diaphragm_area_m2
        });
        match self.stacking {
            Stacking::Independent => {}
            Stacking::NextOnFirst => {
                let first_pa = *set_pa.first();
                if set_pa.list().len() > 1 {
                    *set_pa.top_mut() += first_pa;
                }
            }
        }
        set_pa
    }
}

impl Stage {
    fn regulator_turns(&self) -> f64 {
        self.turns + self.lift_m / PITCH_M
    }
}

/// The spring with room for the offset, so that bind and stop stay where the screw has them.
fn roomy(stage: &Stage) -> Spring {
    Spring {
        bind_m: stage.spring.bind_m + stage.lift_m.max(0.0),
        max_turns: stage.max_turns + stage.lift_m.max(0.0) / PITCH_M,
        ..stage.spring
    }
}

fn seat_area(
    base: &RegulatorSpec,
    gas: &Gas,
    ambient_abs_pa: f64,
    flow: StageFlow,
    inlet_pa: f64,
) -> f64 {
    let law = crate::physics::orifice::OpeningLaw::new(gas, crate::units::T_STD_K);
    let area = crate::physics::orifice::area_for_flow_m2(
        &law,
        flow.flow_m3_s,
        inlet_pa,
        flow.pa,
        ambient_abs_pa,
    );
    let widest = base.seat.area(base.seat.max_lift_m).0;
    area.min(0.95 * widest)
}

/// A usable regulator when a scenario's numbers fit none: set point and spring as asked, the usual
/// seat. `check` warns of such numbers before they get here.
pub(super) fn plain_spec(wanted: &Behaviour) -> RegulatorSpec {
    let rate_n_m = wanted.pa_per_turn / wanted.pitch_m * wanted.diaphragm_area_m2;
    let law_area = 3.0e-5;
    RegulatorSpec {
        spring: Spring {
            rate_n_m,
            pitch_m: wanted.pitch_m,
            bind_m: wanted.bind_turns * wanted.pitch_m,
            max_turns: wanted.max_turns,
        },
        diaphragm_area_m2: wanted.diaphragm_area_m2,
        seat_area_m2: 0.0,
        inlet_effect: InletEffect::None,
        seat: crate::physics::regulator::SeatProfile {
            width_m: law_area / 5e-4,
            seal_m: 5e-5,
            blend_m: 2e-5,
            toe_slope: 0.05,
            max_lift_m: 1e-3,
        },
        turns: wanted.set_pa / wanted.pa_per_turn,
        seat_lag_s: wanted.seat_lag_s,
        preload_lag_s: wanted.preload_lag_s,
    }
}
