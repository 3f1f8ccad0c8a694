//! What a screen reader asks for reaches the panels: the engine publishes their tree but does not
//! hand them the requests.

use bevy::a11y::ActionRequest;
use bevy::prelude::*;
use bevy_egui::input::EguiInputEvent;
use bevy_egui::{EguiInputSet, PrimaryEguiContext, egui};

pub(super) fn plugin(app: &mut App) {
    app.add_message::<ActionRequest>().add_systems(
        PreUpdate,
        hand_over.after(EguiInputSet::FocusContext).before(EguiInputSet::WriteEguiEvents),
    );
}

fn hand_over(
    mut requests: MessageReader<ActionRequest>,
    context: Single<Entity, With<PrimaryEguiContext>>,
    mut out: MessageWriter<EguiInputEvent>,
) {
    for request in requests.read() {
        out.write(EguiInputEvent {
            context: *context,
            event: egui::Event::AccessKitActionRequest(request.0.clone()),
        });
    }
}
