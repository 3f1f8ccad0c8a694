//! Pressures along the pipe, from tank or main to the burners: color and width by pressure, a value
//! at each place, dots that move with the gas.

use egui::{Color32, Ui, vec2};

use super::body::{Type, figure, flow, loss, say, share, shown, tint, write};
use crate::model::inside::Inside;
use crate::panels::plate::{BRASS, IRON, Plate};
use crate::panels::settings::Motion;
use crate::panels::theme;
use crate::panels::view::{Behind, Job, Running, View};
use crate::parts::OnOff;
use crate::physics::valve::HandleAngle;
use crate::units::{M3_S_PER_CFH, PressureUnit, TICK_S};

/// Size that the figure is drawn for.
const SIZE: (f32, f32) = (368.0, 500.0);
/// From the first place to the last.
const LENGTH: f32 = 460.0;
/// Middle of the pipe.
const X: f32 = 52.0;
/// How far a dot goes in a second at a hundred cubic feet an hour.
const PACE: f32 = 60.0;

/// How far the dots have come: above the tee, to the furnace, and at which tick.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::panels) struct Dots {
    tick: u64,
    come: [f32; 2],
}

/// A place where a pressure stands.
struct Place {
    salt: &'static str,
    name: &'static str,
    pa: f64,
}

/// Shows the pipe with its places.
pub(super) fn pipe_ui(
    ui: &mut Ui,
    view: &View<'_>,
    job: &Job<'_>,
    behind: &Behind<'_>,
    dots: &mut Dots,
) {
    let (truth, unit) = (behind.truth, view.settings.unit);
    let places = places(job, behind);
    let flows = [behind.inside.supply_flow_m3_s, truth.burner_flow_m3_s];
    let moving = view.settings.motion == Motion::Full && job.pace.running == Running::Running;
    dots.follow(truth.tick, flows, moving);
    if moving && flows.iter().any(|&it| it > 1e-7) {
        ui.ctx().request_repaint_after(core::time::Duration::from_millis(90));
    }
    let rect = figure(ui, vec2(SIZE.0, SIZE.1));
    let painter = ui.painter().clone();
    let plate = Plate::within(&painter, rect, vec2(SIZE.0, SIZE.1));
    // What comes before the supply regulator is another scale altogether: always full.
    let low = places.iter().skip_while(|place| place.salt != "supply");
    let full_pa = low.map(|place| place.pa).fold(1.0, f64::max);
    let tee = places.iter().position(|place| place.salt == "tee").unwrap_or(0);
    let step = step_of(&places);
    let shares: Vec<f32> = places.iter().map(|place| share(place.pa, full_pa)).collect();
    for (at, shares) in shares.windows(2).enumerate() {
        let [here, next] = shares else { continue };
        let (top, foot) = (y_of(at, step), y_of(at + 1, step));
        let middle = 0.5 * (top + foot);
        let come = dots.come.get(usize::from(at > tee)).copied().unwrap_or(0.0);
        run(&plate, (top, middle), *here, come);
        run(&plate, (middle, foot), *next, come);
    }
    branch(&plate, y_of(tee, step), shares.get(tee).copied().unwrap_or(0.0));
    between(ui, &plate, unit, behind, &places);
    for (at, place) in places.iter().enumerate() {
        let y = y_of(at, step);
        plate.disc((X, y), 6.0, theme::SHEET);
        let value = shown(place.pa, unit);
        let name = write(ui, &plate, (104.0, y), place.name, Type::Name);
        let font = egui::FontId::new(17.0 * theme::factor_of(ui), theme::semibold());
        let right = plate.at(SIZE.0, y);
        let spot = painter.text(right, egui::Align2::RIGHT_CENTER, &value, font, theme::INK);
        let text = t!("cutaway-place", name = place.name, value = &value);
        say(ui, name.union(spot), place.salt, &text);
    }
}

/// From one place to the next.
fn step_of(places: &[Place]) -> f32 {
    let gaps = u8::try_from(places.len()).unwrap_or(u8::MAX).saturating_sub(1);
    LENGTH / f32::from(gaps.max(1))
}

fn y_of(at: usize, step: f32) -> f32 {
    let steps = u8::try_from(at).unwrap_or(u8::MAX);
    22.0 + step * f32::from(steps)
}

/// The places from the supply to the burner box.
fn places(job: &Job<'_>, behind: &Behind<'_>) -> Vec<Place> {
    let (truth, inside) = (behind.truth, behind.inside);
    let tank = job.seen.yard.as_ref().map(|yard| yard.tank_percent.is_some());
    let source = match tank {
        Some(true) => t!("cutaway-tank"),
        Some(false) => t!("cutaway-main"),
        None => t!("cutaway-source"),
    };
    let place = |salt, name, pa| Place { salt, name, pa };
    // A tank has a regulator of its own before the one at the house.
    let between = two_regulators(inside).then_some(inside.supply.before_pa);
    let between = between.map(|pa| place("between", t!("cutaway-between"), pa));
    let first = [place("source", source, inside.upstream_pa)];
    let rest = [
        place("supply", t!("cutaway-after-supply"), truth.supply_pa),
        place("tee", t!("cutaway-tee"), truth.tee_pa),
        place("inlet", t!("cutaway-inlet"), truth.inlet_pa),
        place("manifold", t!("cutaway-manifold"), truth.manifold_pa),
        place("box", t!("cutaway-box"), truth.box_pa),
    ];
    first.into_iter().chain(between).chain(rest).collect()
}

/// Whether there is a regulator before the supply regulator.
fn two_regulators(inside: &Inside) -> bool {
    inside.supply.before_pa < 0.98 * inside.upstream_pa
}

/// A length of pipe with its gas and dots: the denser, the higher the pressure.
fn run(plate: &Plate<'_>, (top, foot): (f32, f32), share: f32, come: f32) {
    let width = 7.0 + 25.0 * share;
    plate.tube(&[(X, top), (X, foot)], width, tint(share));
    let apart = 26.0 - 15.0 * share;
    let dark = Color32::from_rgb(0x1f, 0x2d, 0x3a);
    let mut y = top + come.rem_euclid(apart);
    while y < foot {
        plate.painter.circle_filled(plate.at(X, y), 2.3 * plate.scale, dark);
        y += apart;
    }
}

/// The pipe to the other appliances, from the tee.
fn branch(plate: &Plate<'_>, y: f32, share: f32) {
    plate.tube(&[(X, y), (6.0, y)], 7.0 + 12.0 * share, tint(share));
}

/// What stands between the places, what it takes, and how it is set.
fn between(ui: &mut Ui, plate: &Plate<'_>, unit: PressureUnit, behind: &Behind<'_>, at: &[Place]) {
    let (truth, inside) = (behind.truth, behind.inside);
    let handle = |angle: HandleAngle| t!("cutaway-handle", degrees = i64::from(angle.deg()));
    let valve = match (truth.valve_switch, inside.coils) {
        (OnOff::Off, _) => t!("cutaway-switched-off").to_owned(),
        (OnOff::On, None) => t!("cutaway-coils-off").to_owned(),
        (OnOff::On, Some(_)) => t!("cutaway-coils-on").to_owned(),
    };
    let first = two_regulators(inside).then(|| {
        let passes = flow(inside.supply_flow_m3_s);
        (Sign::Regulator, t!("cutaway-first-regulator"), passes)
    });
    let rest = [
        (Sign::Regulator, t!("cutaway-supply-regulator"), flow(inside.supply_flow_m3_s)),
        (Sign::Valve(truth.supply_valve), t!("cutaway-house-line"), handle(truth.supply_valve)),
        (Sign::Valve(truth.manual_valve), t!("cutaway-branch"), handle(truth.manual_valve)),
        (Sign::Regulator, t!("cutaway-gas-valve"), valve),
        (Sign::Holes, t!("cutaway-orifices"), flow(truth.burner_flow_m3_s)),
    ];
    let step = step_of(at);
    for (k, ((sign, name, state), pair)) in
        first.into_iter().chain(rest).zip(at.windows(2)).enumerate()
    {
        let [here, next] = pair else { continue };
        let y = y_of(k, step) + step / 2.0;
        symbol(plate, y, sign);
        let lost = loss(here.pa - next.pa, unit);
        let text = t!("cutaway-takes", loss = lost, state = state);
        // At the tee a line more stands above.
        let low = if here.salt == "tee" { 6.0 } else { 0.0 };
        let first = write(ui, plate, (104.0, y + low - 8.5), name, Type::Small);
        let second = write(ui, plate, (104.0, y + low + 8.5), &text, Type::Small);
        let said = t!("cutaway-place", name = name, value = text);
        say(ui, first.union(second), &format!("after-{}", here.salt), &said);
        if here.salt == "tee" {
            let others = t!("cutaway-others", flow = flow(truth.others_flow_m3_s));
            let spot = write(ui, plate, (104.0, y - step / 2.0 + 17.5), &others, Type::Small);
            say(ui, spot, "others", &others);
        }
    }
}

/// What stands between two places.
enum Sign {
    /// A regulator, or the gas valve with the one in it.
    Regulator,
    /// A hand valve with its handle.
    Valve(HandleAngle),
    /// The orifices, one for each burner.
    Holes,
}

/// The sign of what stands there.
fn symbol(plate: &Plate<'_>, y: f32, sign: Sign) {
    match sign {
        Sign::Regulator => {
            plate.disc((X, y), 16.0, BRASS);
            let zigzag =
                [(-10.0, 6.0), (-6.0, -6.0), (-2.0, 6.0), (2.0, -6.0), (6.0, 6.0), (10.0, -6.0)];
            for pair in zigzag.windows(2) {
                let [from, to] = pair else { continue };
                plate.line((X + from.0, y + from.1), (X + to.0, y + to.1), 2.0);
            }
        }
        Sign::Valve(angle) => {
            plate.disc((X, y), 14.0, theme::STEEL);
            // Along the pipe is open.
            let turn = (90.0 - f32::from(angle.deg())).to_radians();
            let (dx, dy) = (libm::sinf(turn) * 21.0, libm::cosf(turn) * 21.0);
            plate.tube(&[(X - dx, y - dy), (X + dx, y + dy)], 6.0, BRASS);
        }
        Sign::Holes => {
            for x in [-18.0_f32, -6.0, 6.0, 18.0] {
                plate.block((X + x - 4.0, y - 6.0), (8.0, 12.0), 1.0, IRON);
            }
        }
    }
}

impl Dots {
    /// Goes on with the gas since the last look.
    fn follow(&mut self, tick: u64, flows: [f64; 2], moving: bool) {
        let ticks = tick.saturating_sub(self.tick).min(50);
        self.tick = tick;
        if !moving {
            return;
        }
        for (come, m3_s) in self.come.iter_mut().zip(flows) {
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_precision_loss,
                reason = "a way on the screen"
            )]
            let way = (m3_s.max(0.0) / M3_S_PER_CFH / 100.0 * ticks as f64 * TICK_S) as f32;
            *come = (*come + way * PACE).rem_euclid(10_000.0);
        }
    }
}
