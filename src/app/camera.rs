//! One camera over the whole window for the drawing and the panels: a second one would cost a
//! software renderer as much again. The page is brought into the rectangle that the panels leave
//! free by the camera's own position and scale.

use bevy::camera::{CameraUpdateSystems, ScalingMode};
use bevy::prelude::*;
use bevy_egui::{EguiGlobalSettings, EguiPostUpdateSet, PrimaryEguiContext, egui};

use super::drawings::PAGE;
use super::page::{BACKGROUND, PageRect, TheCamera};
use super::redraw::Redraw;
use super::ui::WindowLayout;

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<PageRect>()
        .insert_resource(ClearColor(BACKGROUND))
        .add_systems(Startup, spawn)
        .add_systems(
            PostUpdate,
            fit.after(EguiPostUpdateSet::EndPass)
                .before(CameraUpdateSystems)
                .before(TransformSystems::Propagate),
        );
}

fn spawn(mut commands: Commands, mut settings: ResMut<EguiGlobalSettings>) {
    settings.auto_create_primary_context = false;
    commands.spawn((
        Name::new("camera"),
        TheCamera,
        PrimaryEguiContext,
        Camera2d,
        // Edges are soft by themselves.
        Msaa::Off,
        Projection::from(OrthographicProjection::default_2d()),
    ));
}

/// The greatest rectangle of the page's shape inside `free`, in its middle.
fn letterbox(free: egui::Rect) -> egui::Rect {
    if !free.is_positive() {
        return egui::Rect::ZERO;
    }
    let scale = (free.width() / PAGE[0]).min(free.height() / PAGE[1]);
    egui::Rect::from_center_size(free.center(), egui::vec2(PAGE[0], PAGE[1]) * scale)
}

/// Brings the page into the free rectangle.
fn fit(
    laid: Res<WindowLayout>,
    mut page: ResMut<PageRect>,
    mut redraw: ResMut<Redraw>,
    camera: Single<(&mut Projection, &mut Transform), With<TheCamera>>,
) {
    let rect = letterbox(laid.layout.scene);
    if page.set_if_neq(PageRect(rect)) {
        // Hot-spots lie where the page was: lay them out again.
        redraw.again = true;
    }
    let window = laid.window;
    if !rect.is_positive() || !window.is_positive() {
        return;
    }
    let units_per_point = PAGE[0] / rect.width();
    let (width, height) = (window.width() * units_per_point, window.height() * units_per_point);
    let aside = (window.center() - rect.center()) * units_per_point;
    let (mut projection, mut transform) = camera.into_inner();
    let at = Vec3::new(aside.x, -aside.y, transform.translation.z);
    let have = match &*projection {
        Projection::Orthographic(ortho) => Some(ortho.area.size()),
        Projection::Perspective(_) | Projection::Custom(_) => None,
    };
    let scaled =
        have.is_none_or(|size| (size - Vec2::new(width, height)).abs().max_element() > 1e-2);
    if scaled {
        *projection = Projection::from(OrthographicProjection {
            scaling_mode: ScalingMode::Fixed { width, height },
            ..OrthographicProjection::default_2d()
        });
        redraw.changed = true;
    }
    if (transform.translation - at).length() > 1e-3 {
        transform.translation = at;
        redraw.changed = true;
    }
}
