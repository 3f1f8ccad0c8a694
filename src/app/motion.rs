//! How groups move to where they shall stand, in real time. Nothing flows back from here.

use bevy::prelude::*;

use super::drive::Screen;
use super::page::{AppSystems, Choices, OnPage};
use super::pose::{Pose, Shown};
use super::redraw::{CHANGING_S, Moving, Redraw};
use super::scene::{Aim, Drawings, Now, Part, Veil};
use crate::panels::settings::Motion;

/// Time constant with which a group follows, in seconds.
const FOLLOW_S: f32 = 0.07;
/// How long warm air or dust is seen before it is gone, in seconds.
const DRIFT_S: f32 = 2.6;

#[derive(Resource, Default)]
struct Clock {
    since_s: f32,
    total_s: f32,
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Clock>().add_systems(Update, animate.in_set(AppSystems::Animate));
}

#[expect(
    clippy::too_many_arguments,
    clippy::type_complexity,
    reason = "a system names all that it reads and writes"
)]
fn animate(
    time: Res<Time<Real>>,
    choices: Res<Choices>,
    screen: Res<Screen>,
    page: Res<OnPage>,
    drawings: Res<Drawings>,
    mut clock: ResMut<Clock>,
    mut redraw: ResMut<Redraw>,
    mut materials: ResMut<Assets<ColorMaterial>>,
    mut parts: Query<(
        &Part,
        &Aim,
        &mut Now,
        &mut Transform,
        &mut Visibility,
        &InheritedVisibility,
        Option<&Veil>,
    )>,
) {
    clock.since_s += time.delta_secs();
    let changed = page.is_changed() || parts.iter().any(|(_, aim, now, ..)| !settled(aim, now));
    let pause = if changed { CHANGING_S } else { redraw.running_on.as_secs_f32() };
    if clock.since_s < pause && !page.is_changed() {
        if changed {
            redraw.motion = Moving::Changing;
        }
        return;
    }
    redraw.motion = Moving::Nothing;
    let dt = clock.since_s.min(0.25);
    clock.since_s = 0.0;
    clock.total_s += dt;
    let full = match choices.0.motion {
        Motion::Full => true,
        Motion::Reduced => false,
    };
    // What runs by itself stands while time stands.
    let lively = full && screen.runs();
    for (part, aim, mut now, mut transform, mut visibility, inherited, veil) in &mut parts {
        let shown = match aim.0.shown {
            Shown::Yes => Visibility::Inherited,
            Shown::No => Visibility::Hidden,
        };
        redraw.changed |= visibility.set_if_neq(shown);
        if aim.0.shown == Shown::No || (!inherited.get() && *visibility != shown) {
            continue;
        }
        let mut next = follow(&aim.0, &now, if full { dt } else { f32::INFINITY });
        if lively && inherited.get() {
            #[expect(clippy::cast_precision_loss, reason = "a small index as a phase")]
            let phase = part.group as f32;
            next.spun = (now.spun + aim.0.spin_rev_s * dt).fract();
            let paced_s = clock.total_s * aim.0.pace;
            next.flare = 1.0 + aim.0.flicker * flicker(paced_s, phase);
            next.swayed_deg = aim.0.sway_deg * flicker(0.7 * paced_s, phase + 3.0);
            let drifts = aim.0.drift != [0.0; 2];
            if drifts {
                next.drifted = (now.drifted + dt / DRIFT_S).fract();
            }
            if aim.0.spin_rev_s != 0.0 || aim.0.flicker != 0.0 || drifts {
                redraw.motion = redraw.motion.max(Moving::RunningOn);
            }
        }
        if !settled(aim, &next) {
            redraw.motion = Moving::Changing;
        }
        if now.set_if_neq(next) && inherited.get() {
            redraw.changed = true;
        }
        let drawing = drawings.0.get(part.drawing).map(|named| &named.drawing);
        let group = drawing.and_then(|drawing| drawing.groups.get(part.group));
        let drift = aim.0.drift.map(|way| way * (next.drifted - 0.5));
        transform.set_if_neq(about(group.map_or([0.0; 2], |group| group.pivot), &next, drift));
        if let Some(veil) = veil {
            // It comes and goes softly as it drifts.
            let soft = if aim.0.drift == [0.0; 2] { 1.0 } else { swell(next.drifted) };
            tint(&mut materials, veil, &next, soft);
        }
    }
}

/// Colours a veil, if it is not so already.
fn tint(materials: &mut Assets<ColorMaterial>, veil: &Veil, now: &Now, soft: f32) {
    let [r, g, b] = now.tint;
    let color = Color::srgba(r, g, b, now.alpha * soft);
    if materials.get(&veil.0).is_some_and(|material| material.color != color)
        && let Some(mut material) = materials.get_mut(&veil.0)
    {
        material.color = color;
    }
}

fn settled(aim: &Aim, now: &Now) -> bool {
    aim.0.shown == Shown::No
        || (aim.0.turn_deg == now.turn_deg
            && aim.0.scale == now.scale
            && aim.0.alpha == now.alpha
            && aim.0.tint == now.tint)
}

/// One stretch of time closer to the aim; there when it is near.
fn follow(aim: &Pose, now: &Now, dt: f32) -> Now {
    let share = if dt.is_finite() { 1.0 - (-dt / FOLLOW_S).exp() } else { 1.0 };
    let toward = |from: f32, to: f32, near: f32| {
        if (to - from).abs() <= near { to } else { from + (to - from) * share }
    };
    // A hand that goes round takes the short way.
    let mut from = now.turn_deg;
    if aim.turn_deg.rem_euclid(360.0) == aim.turn_deg && (aim.turn_deg - from).abs() > 180.0 {
        from += 360.0 * (aim.turn_deg - from).signum();
    }
    Now {
        turn_deg: toward(from, aim.turn_deg, 0.3),
        scale: [
            toward(now.scale[0], aim.scale[0], 0.004),
            toward(now.scale[1], aim.scale[1], 0.004),
        ],
        alpha: toward(now.alpha, aim.alpha, 0.01),
        tint: [
            toward(now.tint[0], aim.tint[0], 0.01),
            toward(now.tint[1], aim.tint[1], 0.01),
            toward(now.tint[2], aim.tint[2], 0.01),
        ],
        spun: now.spun,
        flare: now.flare,
        swayed_deg: now.swayed_deg,
        drifted: now.drifted,
    }
}

/// Between −1 and 1, never the same for two flames; its fastest part swings under 2.5 times a
/// second.
fn flicker(t_s: f32, phase: f32) -> f32 {
    let wave = |hz: f32, shift: f32| (std::f32::consts::TAU * (hz * t_s + shift * phase)).sin();
    0.5 * wave(2.3, 0.37) + 0.3 * wave(1.4, 0.61) + 0.2 * wave(0.8, 0.13)
}

/// How much is to be seen of what comes and goes: most halfway.
fn swell(drifted: f32) -> f32 {
    (std::f32::consts::PI * drifted).sin()
}

/// The transform that turns and scales about a pivot given in the drawing's units, y down, and then
/// shifts.
fn about(pivot: [f32; 2], now: &Now, drift: [f32; 2]) -> Transform {
    let at = Vec3::new(pivot[0], -pivot[1], 0.0);
    let shift = Vec3::new(drift[0], -drift[1], 0.0);
    let turn_deg = now.turn_deg + now.swayed_deg + now.spun * 360.0;
    let rotation = Quat::from_rotation_z(-turn_deg.to_radians());
    let scale = Vec3::new(now.scale[0], now.scale[1] * now.flare, 1.0);
    Transform { translation: at - rotation * (scale * at) + shift, rotation, scale }
}
