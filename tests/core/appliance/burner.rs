//! Burners: lighting, flames, flame current, late lights, and what wrong orifices look like.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use quarterturn::appliance::burner::{BurnerIn, Burners, Condition, INDUCER_REDUCED};
use quarterturn::appliance::draft::Draft;
use quarterturn::parts::Levels;
use quarterturn::physics::combustion::flame::{Flammable, Jet, Stability};
use quarterturn::physics::fluid::Gas;
use quarterturn::physics::orifice::drill_diameter_m;
use quarterturn::units::{PA_PER_INWC, W_PER_BTU_H};

/// What gives the plate's input through #44 at 3.5 in. w.c. (NFPA 54 Annex E uses 0.80 to 0.90).
const DISCHARGE: f64 = 0.834;
const PLATE_W: f64 = 80_000.0 * W_PER_BTU_H;

/// Flow through one hole by Q = Cd·A·√(2ΔP/ρ), in standard m³/s.
fn hole_flow(gas: &Gas, hole_m: f64, pa: f64) -> f64 {
    let area = DISCHARGE * std::f64::consts::FRAC_PI_4 * hole_m * hole_m;
    area * (2.0 * pa / gas.density_std_kg_m3()).sqrt()
}

fn rated(gas: &Gas) -> f64 {
    PLATE_W / gas.heating_value_j_m3
}

fn natural_hole() -> f64 {
    drill_diameter_m("#44").unwrap()
}

fn propane_hole() -> f64 {
    drill_diameter_m("#55").unwrap()
}

/// A furnace of four burners with a hole each, at a manifold pressure.
struct Rig {
    burners: Burners,
    gas: Gas,
    flow: f64,
    inducer: f64,
}

impl Rig {
    fn new(gas: Gas, holes: &[f64], inwc: f64, inducer: f64) -> Self {
        let flow = holes.iter().map(|&hole| hole_flow(&gas, hole, inwc * PA_PER_INWC)).sum();
        let burners = Burners::new(holes, Levels::two(0.7 * rated(&gas), rated(&gas)), 17.0);
        Self { burners, gas, flow, inducer }
    }

    fn run(&mut self, seconds: f64, flow: f64, igniter: bool) {
        for _ in 0..(seconds * 50.0).round() as u32 {
            let input = BurnerIn { flow_m3_s: flow, igniter, inducer: self.inducer };
            self.burners.step(0.02, &self.gas, &input);
        }
    }

    /// Warm igniter, gas, flames.
    fn light(mut self) -> Self {
        self.run(17.0, 0.0, true);
        self.run(10.0, self.flow, true);
        self.run(5.0, self.flow, false);
        self
    }

    fn share(&self) -> f64 {
        self.flow / rated(&self.gas)
    }

    fn yellow(&self) -> f64 {
        self.burners.flames().iter().fold(0.0, |most, flame| most.max(flame.1))
    }

    fn lit(&self) -> usize {
        self.burners.looks().flatten().count()
    }
}

/// Healthy on either fuel and stage: four steady blue flames at their height, excess air of 30 to 70
/// %, carbon monoxide far under 100 ppm, flame current in its usual 2 to 6 µA, no bang.
#[test]
fn healthy_burners_burn_blue() {
    let cases = [
        (Gas::natural(), natural_hole(), 3.5, 1.0, 1.0),
        (Gas::natural(), natural_hole(), 1.7, INDUCER_REDUCED, 0.7),
        (Gas::propane(), propane_hole(), 10.0, 1.0, 1.0),
        (Gas::propane(), propane_hole(), 4.9, INDUCER_REDUCED, 0.7),
    ];
    for (gas, hole, inwc, inducer, height) in cases {
        let rig = Rig::new(gas, &[hole; 4], inwc, inducer).light();
        let context = format!("{inwc} in. w.c.: {:?}", rig.burners);
        assert_eq!(rig.lit(), 4, "{context}");
        for look in rig.burners.looks().flatten() {
            assert_eq!(look.stability, Stability::Steady, "{context}");
            assert_abs_diff_eq!(look.height, height, epsilon = 0.06);
            assert_eq!(look.yellow, 0.0, "{context}");
        }
        assert!((0.3..0.7).contains(&rig.burners.excess_air()), "{context}");
        assert!(rig.burners.co_air_free_ppm() < 50.0, "{context}");
        assert!((2.0..6.0).contains(&rig.burners.flame_ua()), "{context}");
        assert!(!rig.burners.banged() && !rig.burners.rolls_out(), "{context}");
        let input = rig.flow * rig.gas.heating_value_j_m3;
        assert_relative_eq!(rig.burners.input_w(), input, max_relative = 1e-9);
    }
}

/// The igniter is hot within its warm-up; the flames run from the first burner to the last, each
/// some tenths of a second after the one before.
#[test]
fn flames_carry_over_in_turn() {
    let mut rig = Rig::new(Gas::natural(), &[natural_hole(); 4], 1.7, INDUCER_REDUCED);
    assert_eq!(rig.burners.glow(), 0.0);
    rig.run(17.0, 0.0, true);
    assert!(rig.burners.glow() > 0.9 && rig.burners.ignites());
    let mut times = Vec::new();
    for tick in 0..200 {
        rig.run(0.02, rig.flow, true);
        while times.len() < rig.lit() {
            times.push(f64::from(tick) * 0.02);
        }
    }
    assert_eq!(times.len(), 4);
    for pair in times.windows(2) {
        assert!((0.2..=0.5).contains(&(pair[1] - pair[0])), "{times:?}");
    }
    rig.run(0.1, 0.0, false);
    assert_eq!(rig.lit(), 0);
    assert_eq!(rig.burners.flame_ua(), 0.0);
}

/// Any number of burners proves its flame at the last one.
#[test]
fn furnaces_with_other_numbers_of_burners_prove_their_flame() {
    for count in [1, 2, 3, 5, 6, 8] {
        let gas = Gas::natural();
        let hole = natural_hole() * (4.0 / f64::from(count)).sqrt();
        let rig = Rig::new(gas, &vec![hole; count as usize], 3.5, 1.0).light();
        assert_eq!(rig.lit(), count as usize);
        assert!(rig.burners.flame_ua() > 2.0, "{count}");
    }
}

/// A plugged orifice leaves one burner dark: its neighbour lights late, across it; input falls by a
/// quarter, oxygen rises. Two dark ones in a row stop the flames, and the rod feels nothing. (The
/// size stands for a plugged hole.)
#[test]
fn a_plugged_orifice_is_a_dark_burner() {
    let (hole, plugged) = (natural_hole(), 0.1e-3);
    let whole = Rig::new(Gas::natural(), &[hole; 4], 3.5, 1.0).light();
    let one = Rig::new(Gas::natural(), &[hole, plugged, hole, hole], 3.5, 1.0).light();
    assert_eq!(one.lit(), 3);
    assert_relative_eq!(one.burners.input_w() / whole.burners.input_w(), 0.75, max_relative = 0.01);
    assert!(one.burners.excess_air() > 1.25 * whole.burners.excess_air());
    assert!(one.burners.flame_ua() > 2.0);
    let mut slow = Rig::new(Gas::natural(), &[hole, plugged, hole, hole], 3.5, 1.0);
    slow.run(17.0, 0.0, true);
    slow.run(1.0, slow.flow, true);
    assert_eq!(slow.lit(), 1);
    let two = Rig::new(Gas::natural(), &[hole, plugged, plugged, hole], 3.5, 1.0).light();
    assert_eq!(two.lit(), 1);
    assert_eq!(two.burners.flame_ua(), 0.0);
}

/// Gas that does not light gathers, and a late igniter lights it hard, the harder the longer it
/// gathered; the inducer carries gas off, so that after a purge the light is soft.
#[test]
fn a_late_light_is_hard() {
    let healthy = || Rig::new(Gas::natural(), &[natural_hole(); 4], 1.7, INDUCER_REDUCED);
    // The igniter comes on when gas has been flowing for a while, and warms while it flows.
    let heat_j = |unlit_s: f64| {
        let mut rig = healthy();
        rig.run(unlit_s, rig.flow, false);
        for _ in 0..1500 {
            rig.run(0.02, rig.flow, true);
            if let Some(light) = rig.burners.hard_light() {
                assert!(rig.burners.banged());
                let gas = light.gas_m3 * rig.gas.heating_value_j_m3;
                assert_relative_eq!(light.heat_j, gas, max_relative = 1e-12);
                return light.heat_j;
            }
        }
        0.0
    };
    let heats = [0.0, 1.0, 4.0].map(heat_j);
    assert!(heats[0] > 0.0 && heats[0] < heats[1] && heats[1] < heats[2], "{heats:?}");

    let mut purged = healthy();
    purged.run(5.0, purged.flow, false);
    purged.run(30.0, 0.0, false);
    let purged = purged.light();
    assert_eq!(purged.lit(), 4);
    assert!(purged.burners.hard_light().is_none());
}

/// A weak igniter glows and does not light; the gas goes unlit.
#[test]
fn a_weak_igniter_does_not_light() {
    let mut rig = Rig::new(Gas::natural(), &[natural_hole(); 4], 1.7, INDUCER_REDUCED);
    rig.burners.set_condition(Condition { igniter: 0.6, ..Condition::default() });
    let rig = rig.light();
    assert_eq!(rig.lit(), 0);
    let mut dim = Rig::new(Gas::natural(), &[natural_hole(); 4], 1.7, INDUCER_REDUCED);
    dim.burners.set_condition(Condition { igniter: 0.6, ..Condition::default() });
    dim.run(30.0, 0.0, true);
    assert!(dim.burners.glow() > 0.1 && dim.burners.glow() < 0.5);
}

/// A dirty rod or a poor ground lowers the flame current and leaves the flames as they are.
#[test]
fn rod_and_ground_scale_the_flame_current() {
    let clean = Rig::new(Gas::natural(), &[natural_hole(); 4], 1.7, INDUCER_REDUCED).light();
    for condition in [
        Condition { rod: 0.25, ..Condition::default() },
        Condition { ground: 0.25, ..Condition::default() },
        Condition { rod: 0.5, ground: 0.5, ..Condition::default() },
    ] {
        let mut rig = Rig::new(Gas::natural(), &[natural_hole(); 4], 1.7, INDUCER_REDUCED);
        rig.burners.set_condition(condition);
        let rig = rig.light();
        let share = rig.burners.flame_ua() / clean.burners.flame_ua();
        assert_relative_eq!(share, 0.25, max_relative = 1e-9);
        assert!(rig.burners.flame_ua() < 1.0);
        assert_eq!(rig.burners.flames(), clean.burners.flames());
    }
}

/// A blocked vent or intake, and thin air, take air from the flames: less excess air, more carbon
/// monoxide, in the end yellow.
#[test]
fn restricted_air_makes_carbon_monoxide() {
    let with = |draft: Draft| {
        let mut rig = Rig::new(Gas::natural(), &[natural_hole(); 4], 3.5, 1.0);
        rig.burners.set_condition(Condition { draft, ..Condition::default() });
        rig.light()
    };
    let clean = with(Draft::default());
    for draft in [
        Draft { vent_blocked: 0.65, ..Draft::default() },
        Draft { intake_blocked: 0.72, ..Draft::default() },
        Draft { air_density: 0.74, ..Draft::default() },
    ] {
        let rig = with(draft);
        assert!(rig.burners.excess_air() < clean.burners.excess_air() - 0.2, "{draft:?}");
        let co = rig.burners.co_air_free_ppm();
        assert!(co > 200.0, "{draft:?}: {co}");
        assert!(rig.yellow() > 0.2, "{draft:?}: {}", rig.yellow());
    }
}

/// Over-firing by a screw (115 % and 135 %): more carbon monoxide, then yellow and a longer flame.
#[test]
fn over_firing_shows_in_flame_and_flue() {
    let at = |share: f64| {
        let inwc = 3.5 * share * share;
        let rig = Rig::new(Gas::natural(), &[natural_hole(); 4], inwc, 1.0).light();
        (rig.burners.co_air_free_ppm(), rig.yellow(), rig.burners.flames()[0].0)
    };
    let (rated, over, far) = (at(1.0), at(1.15), at(1.35));
    assert!(over.0 > 2.0 * rated.0 && far.0 > 20.0 * rated.0, "{rated:?} {over:?} {far:?}");
    assert!(rated.1 == 0.0 && far.1 > 0.3);
    assert!(far.2 > 1.3 * rated.2);
}

/// What a missed or half-done conversion looks like. Rates by the square-root law: propane through
/// natural-gas orifices at 3.5 in. w.c. is about 153 % (Wobbe 2,040 against 1,330); natural gas
/// through propane orifices 27/39 % or so.
#[test]
fn wrong_orifices_look_wrong() {
    // Unconverted on propane: manifold exactly right, yellow, sooty, carbon monoxide.
    let unconverted = Rig::new(Gas::propane(), &[natural_hole(); 4], 3.5, 1.0).light();
    assert_abs_diff_eq!(unconverted.share(), 1.53, epsilon = 0.01);
    assert!(unconverted.yellow() > 0.8);
    assert!(unconverted.burners.looks().flatten().all(|look| look.soot > 0.5));
    assert!(unconverted.burners.co_air_free_ppm() > 1_000.0);
    assert!(!unconverted.burners.rolls_out());

    // Propane springs with natural-gas orifices: huge flames that roll out.
    let half_done = Rig::new(Gas::propane(), &[natural_hole(); 4], 7.5, 1.0).light();
    assert!(half_done.share() > 2.1 && half_done.burners.rolls_out());
    assert_eq!(half_done.yellow(), 1.0);

    // Propane orifices on natural gas: tiny sharp flames, little flame current.
    let reverse = Rig::new(Gas::natural(), &[propane_hole(); 4], 1.7, INDUCER_REDUCED).light();
    assert!(reverse.share() < 0.35);
    assert_eq!(reverse.yellow(), 0.0);
    let sharp = reverse.burners.looks().flatten().all(|look| look.primary > 0.7);
    assert!(sharp && reverse.burners.flame_ua() < 1.5, "{:?}", reverse.burners);

    // One oversize orifice of four: that burner alone makes the carbon monoxide.
    let (hole, wide) = (natural_hole(), 1.25 * natural_hole());
    let drilled = Rig::new(Gas::natural(), &[hole, hole, wide, hole], 3.5, 1.0).light();
    let looks: Vec<_> = drilled.burners.looks().flatten().collect();
    assert!(looks[2].yellow > 0.4 && looks[0].yellow == 0.0, "{looks:?}");
    assert!(drilled.burners.co_air_free_ppm() > 400.0);
}

fn jet(hole_m: f64, flow_m3_s: f64, excess_air: f64) -> Jet {
    let rated_m3_s = rated(&Gas::natural()) / 4.0;
    Jet { hole_m, throat_m: 0.016, flow_m3_s, rated_m3_s, excess_air }
}

/// A flame under far too high a pressure (a valve that lets 2 psi through) is blown off and stays
/// out; at half a psi it only lifts.
#[test]
fn far_too_much_pressure_blows_flames_off() {
    let blown = Rig::new(Gas::natural(), &[natural_hole(); 4], 55.4, 1.0).light();
    assert_eq!(blown.lit(), 0);
    let gas = Gas::natural();
    let hole = natural_hole();
    let stability =
        |inwc: f64| jet(hole, hole_flow(&gas, hole, inwc * PA_PER_INWC), 0.4).look(&gas).stability;
    assert_eq!(
        [3.5, 14.5, 55.4].map(stability),
        [Stability::Steady, Stability::Lifting, Stability::BlownOff]
    );
}

/// A flame burns back only where its primary mixture burns by itself and comes slowly.
#[test]
fn a_slow_rich_in_air_mixture_burns_back() {
    let gas = Gas::natural();
    let slow = |hole: f64| jet(hole, 0.2 * rated(&gas) / 4.0, 0.4).look(&gas);
    assert_eq!(slow(propane_hole()).stability, Stability::BurningBack);
    assert_eq!(slow(natural_hole()).stability, Stability::Steady);
}

/// Lighting needs a mixture within the flammable limits (NFPA 325): with all the air in the world
/// there is a rich core; with hardly any air even the outermost mixture is too rich.
#[test]
fn only_a_flammable_mixture_lights() {
    let gas = Gas::natural();
    let flow = rated(&gas) / 4.0;
    assert_eq!(jet(natural_hole(), flow, 0.4).lights(&gas), Flammable::Yes);
    assert_eq!(jet(natural_hole(), flow, -0.6).lights(&gas), Flammable::TooRich);
    // A hole so small that its own jet is leaner than the lower limit.
    let lean = Jet { throat_m: 0.08, ..jet(1.0e-3, flow, 4.0) };
    assert_eq!(lean.lights(&gas), Flammable::TooLean);
    // Limits: 5.0 and 15.0 % by volume, that is 19 and 5.67 volumes of air.
    assert_relative_eq!(1.0 / gas.lower_limit - 1.0, 19.0, max_relative = 1e-9);
    assert_relative_eq!(1.0 / gas.upper_limit - 1.0, 17.0 / 3.0, max_relative = 1e-9);
}
