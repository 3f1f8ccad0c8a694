//! Paper, tools and hot-spots: every panel is a function of a view and gives wishes back. Knows
//! egui, knows no engine.

pub mod debrief;
pub mod settings;
pub mod view;
pub mod wish;

pub use view::{Layout, View};
pub use wish::Wish;

/// All panels with the little they must remember between frames: what is chosen, what is being
/// typed, what is folded.
#[derive(Debug, Default)]
pub struct Shell {}

impl Shell {
    /// Shows everything that is not the drawing: lays the panels out in `root` (the whole window),
    /// adds what is wished to `out` and says what is left for the drawing.
    ///
    /// `view.page`'s part boxes lie in the drawing's rectangle of the frame before; the panels put
    /// their hot-spots there. Call it once a pass; it may run more than once a frame.
    pub fn ui(&mut self, root: &mut egui::Ui, view: &View<'_>, out: &mut Vec<Wish>) -> Layout {
        let _ = (view, out);
        Layout { scene: root.max_rect(), place: None, marked: None }
    }
}
