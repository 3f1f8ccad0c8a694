//! Paper, tools and hot-spots: every panel is a function of a view and gives commands back. Knows
//! egui, knows no engine.
//!
//! [`Shell`] lays them out; [`view`] is what it is given, [`command`] what it gives back. What can be
//! done stands in [`actions`], how things stand in [`words`], the next step in [`coach`].

pub mod actions;
pub mod background;
pub mod captions;
mod clear;
pub mod coach;
mod coach_line;
pub mod command;
pub mod cutaway;
pub mod debrief;
pub mod drawing_text;
mod end_card;
pub mod entry;
pub mod finding;
pub mod forms;
pub mod hand;
pub mod hand_over;
pub mod handling;
pub mod hotspots;
pub mod instrument_display;
mod keys;
pub mod labels;
pub mod menu;
pub mod opening;
pub mod parts;
mod plate;
pub mod popup;
pub mod settings;
mod settings_page;
pub mod sheet;
pub mod sights;
pub mod spot;
pub mod spread;
pub mod theme;
pub mod top_bar;
pub mod view;
mod widgets;
pub mod words;
mod work;

use egui::Ui;

use debrief::trace::TraceState;
use opening::OpeningState;
use view::Page;
use work::WorkState;

pub use command::Command;
pub use view::{Layout, View};

/// All panels with the little they must remember between frames: what is chosen, what is being
/// typed, what is folded.
#[derive(Debug, Default)]
pub struct Shell {
    opening: OpeningState,
    work: Option<WorkState>,
    trace: TraceState,
    /// How many jobs have been begun or gone on with.
    runs: u64,
    recalled: Option<coach::Remembered>,
}

impl Shell {
    /// Takes in what the coach keeps in mind of the attempt that is shown next, or from an earlier
    /// point on; nothing for one that begins.
    pub fn recall(&mut self, remembered: Option<&coach::Remembered>) {
        self.recalled = remembered.cloned();
    }

    /// Shows everything that is not the drawing: lays the panels out in `root` (the whole window),
    /// adds what is commanded to `out` and says what is left for the drawing.
    ///
    /// The part boxes in `view` may be those of the frame before. Call it once a pass; it may run
    /// more than once a frame. In the first pass of all, before the fonts are in, it shows
    /// nothing.
    pub fn ui(&mut self, root: &mut Ui, view: &View<'_>, out: &mut Vec<Command>) -> Layout {
        let nothing = Layout::nothing();
        theme::apply(root.ctx(), view.settings);
        if !theme::is_ready(root.ctx()) {
            root.ctx().request_repaint();
            return nothing;
        }
        // The root was made before the style came; take what holds now.
        root.reset_style();
        match view.page {
            Page::Opening(opening) => {
                self.work = None;
                opening::opening_ui(root, view, opening, &mut self.opening, out);
                nothing
            }
            Page::Job(job) => {
                let fresh = self.work.as_ref().is_none_or(|work| work.is_of_another(job));
                if fresh {
                    self.work = None;
                    self.trace = TraceState::default();
                    self.runs += 1;
                }
                let run = self.runs;
                let recalled = self.recalled.take().filter(|_| fresh).unwrap_or_default();
                let state = self.work.get_or_insert_with(|| WorkState::new(job, run, recalled));
                work::work_ui(root, view, job, state, out)
            }
            Page::Debrief(debrief) => {
                self.work = None;
                debrief::debrief_ui(root, view, debrief, &mut self.trace, out);
                nothing
            }
        }
    }
}
