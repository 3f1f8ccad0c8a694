//! The grid of readings and the row in which one is written. Nothing fills itself in.

use egui::{Button, Color32, Key, RichText, TextEdit, Ui, WidgetInfo, WidgetType, vec2};

use crate::hands::action::Action;
use crate::panels::command::Command;
use crate::panels::entry::{thousandths, written};
use crate::panels::spread::Spread;
use crate::panels::theme;
use crate::panels::widgets;
use crate::panels::words;
use crate::parts::{Level, Phase, Port, Reading, Stage};
use crate::senses::seen::{Display, MeterSeen, SheetSeen};
use crate::units::PressureUnit;
use crate::words::fixed;

/// Rows of the grid for a furnace with these levels.
pub fn rows(levels: &'static [Level]) -> impl Iterator<Item = (Port, Stage)> {
    let inlet = Stage::of(levels).map(|stage| (Port::Inlet, stage));
    let firing = Stage::of(levels).filter(move |stage| stage.level(levels).is_some());
    let manifold = firing.map(|stage| (Port::Manifold, stage));
    inlet.chain(manifold)
}

/// A cell of the grid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cell {
    /// The port that the reading is taken at.
    pub port: Port,
    /// The state of the furnace that it is taken in.
    pub stage: Stage,
    /// Before or after work.
    pub phase: Phase,
}

impl Cell {
    /// In words: `Manifold, low, found`.
    #[must_use]
    pub fn name(self) -> String {
        t!("grid-cell", row = row_name(self.port, self.stage), phase = phase_name(self.phase))
    }
}

/// What is being written.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct EntryState {
    /// Into which cell; none while nothing is written.
    pub cell: Option<Cell>,
    /// The number as typed so far.
    pub text: String,
    /// The unit, once it was chosen; else the settings' unit.
    pub unit: Option<PressureUnit>,
    /// Why it cannot be written.
    pub problem: Option<String>,
    /// Where the keyboard should go next.
    pub focus: NextFocus,
}

/// Where the keyboard should go next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum NextFocus {
    /// Stay where it is.
    #[default]
    Stay,
    /// Into the number field.
    Field,
    /// Back to a cell.
    Cell(Cell),
}

fn row_name(port: Port, stage: Stage) -> String {
    let port = match port {
        Port::Inlet => t!("grid-inlet"),
        Port::Manifold => t!("grid-manifold"),
    };
    let stage = match stage {
        Stage::Rest => t!("grid-lock-up"),
        Stage::Firing(level) => words::level(level),
        Stage::FullLoad => t!("grid-full-load"),
        Stage::RestAgain => t!("grid-lock-up-again"),
    };
    t!("grid-row", port = port, stage = stage)
}

fn phase_name(phase: Phase) -> &'static str {
    match phase {
        Phase::Found => t!("grid-found"),
        Phase::Left => t!("grid-left"),
    }
}

/// Shows the grid and the row for writing; above that what the manometer shows, where the sheet
/// lies over it.
pub(super) fn grid_ui(
    ui: &mut Ui,
    unit: PressureUnit,
    (sheet, levels, meter): (&SheetSeen, &'static [Level], Option<&MeterSeen>),
    entry: &mut EntryState,
    spread: Spread,
    out: &mut Vec<Command>,
) {
    if spread == Spread::Wide {
        // Above the grid, in room of its own: in sight, and nothing moves when a cell is chosen.
        let room = vec2(ui.available_width(), 64.0 * theme::factor_of(ui));
        let layout = egui::Layout::top_down(egui::Align::LEFT);
        ui.allocate_ui_with_layout(room, layout, |ui| {
            ui.set_min_size(room);
            written_ui(ui, unit, entry, out);
        });
    }
    // As wide as four digits, so that the columns stand whatever is written.
    let cell_width = (ui.available_width() * 0.2).max(40.0);
    let grid = egui::Grid::new("readings").num_columns(3).spacing(vec2(6.0, 2.0));
    // Names of states take a second line where type is large.
    let names = (ui.available_width() - 2.0 * cell_width - 12.0).max(cell_width);
    grid.max_col_width(names).show(ui, |ui| {
        widgets::section(ui, &t!("grid-title", unit = unit.label()));
        ui.label(t!("grid-as-found"));
        ui.label(t!("grid-as-left"));
        ui.end_row();
        for (port, stage) in rows(levels) {
            ui.label(row_name(port, stage));
            for phase in [Phase::Found, Phase::Left] {
                cell_ui(ui, Cell { port, stage, phase }, unit, sheet, entry, cell_width);
            }
            ui.end_row();
        }
    });
    match spread {
        Spread::Wide => {}
        Spread::Narrow => written_ui(ui, unit, entry, out),
        Spread::Over => {
            if let (Some(_), Some(meter)) = (entry.cell, meter) {
                glass_ui(ui, meter);
            }
            written_ui(ui, unit, entry, out);
        }
    }
}

/// The row in which a number is written, or how to come to it.
fn written_ui(ui: &mut Ui, unit: PressureUnit, entry: &mut EntryState, out: &mut Vec<Command>) {
    match entry.cell {
        Some(cell) => row_ui(ui, cell, unit, entry, out),
        None => {
            widgets::quiet(ui, t!("grid-press"));
        }
    }
}

/// The manometer's glass, as the drawing has it.
fn glass_ui(ui: &mut Ui, meter: &MeterSeen) {
    let text = match meter.display {
        Display::Dark => t!("grid-meter-dark").to_owned(),
        Display::OverRange => t!("glass-over", unit = meter.unit.label()),
        Display::Number(shown) => t!(
            "grid-meter",
            number = fixed(shown.value, shown.unit.decimals()).replace('-', "−"),
            unit = shown.unit.label()
        ),
    };
    let frame = egui::Frame::new()
        .fill(theme::GLASS)
        .stroke(egui::Stroke::new(1.5, theme::INK))
        .corner_radius(egui::CornerRadius::same(3))
        .inner_margin(egui::Margin::symmetric(8, 3));
    frame.show(ui, |ui| ui.label(RichText::new(text).family(theme::semibold())));
}

fn cell_ui(
    ui: &mut Ui,
    cell: Cell,
    unit: PressureUnit,
    sheet: &SheetSeen,
    entry: &mut EntryState,
    width: f32,
) {
    let reading = sheet.reading(cell.port, cell.stage, cell.phase);
    let text = match reading {
        None => String::new(),
        Some(reading) if reading.unit == unit => written(reading.thousandths),
        Some(reading) => format!("{} {}", written(reading.thousandths), reading.unit.label()),
    };
    let mut button = Button::new(widgets::pen(text)).min_size(vec2(width, widgets::TARGET));
    if entry.cell == Some(cell) {
        button = button.stroke(egui::Stroke::new(2.5, theme::PEN)).fill(theme::SHADE);
    } else {
        button = button.fill(Color32::TRANSPARENT);
    }
    let response = widgets::seen_when_focused(ui.add(button));
    let said = match reading {
        None => t!("grid-empty").to_owned(),
        Some(reading) => format!("{} {}", written(reading.thousandths), reading.unit.label()),
    };
    let name = t!("grid-said", cell = cell.name(), reading = said);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
    if entry.focus == NextFocus::Cell(cell) {
        response.request_focus();
        response.scroll_to_me(None);
        entry.focus = NextFocus::Stay;
    }
    if response.clicked() {
        entry.cell = Some(cell);
        entry.text.clear();
        entry.problem = None;
        entry.focus = NextFocus::Field;
    }
}

fn row_ui(
    ui: &mut Ui,
    cell: Cell,
    unit: PressureUnit,
    entry: &mut EntryState,
    out: &mut Vec<Command>,
) {
    ui.add_space(2.0);
    let label = ui.label(widgets::pen(cell.name()));
    let unit = entry.unit.unwrap_or(unit);
    let mut go = false;
    // The same field wherever the sheet lies: it keeps the keyboard when the sheet opens wide.
    let field = widgets::id("reading");
    ui.horizontal_wrapped(|ui| {
        let field = ui
            .add(
                TextEdit::singleline(&mut entry.text)
                    .id(field)
                    .desired_width(72.0)
                    .text_color(theme::PEN),
            )
            .labelled_by(label.id);
        let field = widgets::ringed(ui, field);
        if entry.focus == NextFocus::Field {
            field.request_focus();
            field.scroll_to_me(Some(egui::Align::Center));
            entry.focus = NextFocus::Stay;
        }
        if field.changed() {
            entry.problem = None;
        }
        go |= field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        let turn = ui.button(unit.label());
        widgets::named(&turn, WidgetType::Button, t!("grid-unit", unit = unit.label()));
        if turn.clicked() {
            entry.unit = Some(unit.next());
        }
        go |= ui.button(t!("grid-write")).clicked();
    });
    if go {
        write(cell, unit, entry, out);
    }
    if let Some(problem) = &entry.problem {
        widgets::live(&ui.label(RichText::new(format!("✗ {problem}")).color(theme::DANGER)));
    }
}

fn write(cell: Cell, unit: PressureUnit, entry: &mut EntryState, out: &mut Vec<Command>) {
    match thousandths(&entry.text) {
        Ok(thousandths) => {
            let Cell { port, stage, phase } = cell;
            let reading = Reading { port, stage, phase, thousandths, unit };
            out.push(Command::Act(Action::Write(reading)));
            entry.text.clear();
            entry.problem = None;
            entry.cell = None;
            entry.focus = NextFocus::Cell(cell);
        }
        Err(problem) => {
            entry.problem = Some(problem);
            entry.focus = NextFocus::Field;
        }
    }
}
