//! The cutaway: what stands behind the sheet steel, for those who are coached. It lies where the
//! sheet does, beside the drawing, and shows the model's own state: pressures along the pipe, the
//! gas valve and the supply regulator cut open, the control's sequence, gas in the air.

mod air;
mod body;
mod pipe;
mod sequence;
mod supply;
mod valve;

use egui::{
    Button, Rect, ScrollArea, Stroke, StrokeKind, Ui, UiBuilder, WidgetInfo, WidgetType, vec2,
};

use super::theme;
use super::view::{Behind, Job, View};
use super::widgets;

pub use body::{flow, loss, shown};
pub(super) use pipe::Dots;

/// A leaf of the cutaway.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Leaf {
    /// Pressures along the pipe.
    #[default]
    Pressures,
    /// The gas valve cut open.
    Valve,
    /// The supply regulator cut open.
    Supply,
    /// What the control goes through, state by state.
    Sequence,
    /// Gas in the air.
    Air,
}

impl Leaf {
    /// All, in their order on the pane.
    pub const ALL: [Self; 5] =
        [Self::Pressures, Self::Valve, Self::Supply, Self::Sequence, Self::Air];

    /// The word on its tab.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Pressures => t!("cutaway-pressures"),
            Self::Valve => t!("cutaway-valve"),
            Self::Supply => t!("cutaway-supply"),
            Self::Sequence => t!("cutaway-sequence"),
            Self::Air => t!("cutaway-air"),
        }
    }
}

/// What the cutaway remembers: which leaf lies open, and how far the dots have come.
#[derive(Debug, Default)]
pub(super) struct CutawayState {
    pub(super) leaf: Leaf,
    pub(super) dots: Dots,
}

/// Whether the pane stays open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum PaneAfter {
    /// It goes on lying there.
    Stay,
    /// Its button closed it.
    Close,
}

/// Width of the pane at a size of type.
#[must_use]
pub(super) fn width(view: &View<'_>) -> f32 {
    400.0 * theme::text_factor(view.settings).min(1.5)
}

/// Shows the pane in `rect`.
pub(super) fn cutaway_ui(
    root: &mut Ui,
    rect: Rect,
    view: &View<'_>,
    job: &Job<'_>,
    behind: &Behind<'_>,
    state: &mut CutawayState,
) -> PaneAfter {
    root.painter().rect_filled(rect, 0.0, theme::BOARD);
    let page = rect.shrink2(vec2(10.0, 10.0));
    let outline = Stroke::new(2.0, theme::INK);
    root.painter().rect(page, 3.0, theme::SHEET, outline, StrokeKind::Middle);
    let inner = page.shrink2(vec2(12.0, 8.0));
    let mut ui = root.new_child(UiBuilder::new().id(widgets::id("cutaway")).max_rect(inner));
    ui.set_clip_rect(page.intersect(root.clip_rect()));
    let ui = &mut ui;
    let mut after = PaneAfter::Stay;
    ui.horizontal(|ui| {
        widgets::section(ui, t!("cutaway-title"));
        let room = ui.available_width() - 90.0 * theme::factor_of(ui);
        ui.add_space(room.max(0.0));
        let close = ui.button(t!("cutaway-close"));
        if widgets::ringed(ui, close).clicked() {
            after = PaneAfter::Close;
        }
    });
    tabs_ui(ui, state);
    ui.add_space(2.0);
    let unit = view.settings.unit;
    ScrollArea::vertical().id_salt(("cutaway", state.leaf as u8)).auto_shrink(false).show(
        ui,
        |ui| match state.leaf {
            Leaf::Pressures => pipe::pipe_ui(ui, view, job, behind, &mut state.dots),
            Leaf::Valve => valve::valve_ui(ui, unit, behind),
            Leaf::Supply => supply::supply_ui(ui, unit, behind),
            Leaf::Sequence => sequence::sequence_ui(ui, behind),
            Leaf::Air => air::air_ui(ui, behind),
        },
    );
    after
}

fn tabs_ui(ui: &mut Ui, state: &mut CutawayState) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        ui.spacing_mut().button_padding.x = 7.0;
        for leaf in Leaf::ALL {
            let now = leaf == state.leaf;
            let tab = Button::selectable(now, leaf.label()).frame_when_inactive(true);
            let tab = ui.add(tab.min_size(vec2(widgets::TARGET, widgets::TARGET)));
            let tab = widgets::ringed(ui, tab);
            let name = t!("cutaway-tab", leaf = leaf.label());
            tab.widget_info(|| WidgetInfo::selected(WidgetType::RadioButton, true, now, &name));
            if tab.clicked() {
                state.leaf = leaf;
            }
        }
    });
}
