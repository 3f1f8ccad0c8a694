//! What the sheet says: the job, the figures once they were read, the notes.

use egui::Ui;

use crate::appliance::plate::GasFigures;
use crate::panels::actions;
use crate::panels::command::Command;
use crate::panels::entry::pressure;
use crate::panels::instrument_display;
use crate::panels::view::{Job, View};
use crate::panels::widgets;
use crate::panels::words;
use crate::parts::{Duty, Subject};
use crate::senses::seen::{Measured, Note, Observation, SheetSeen, WrittenMeasured};
use crate::setup::SupplyRight;
use crate::units::{F_PER_K, PressureUnit, full_stop};
use crate::words::{Id, decimal};

/// The job: open on arrival, a paragraph a sentence; folded to its first lines once the work has
/// begun, unless it is opened again.
pub(super) fn card_ui(ui: &mut Ui, job: &Job<'_>) {
    let arrived = job.seen.sheet.notes.is_empty();
    let card = egui::CollapsingHeader::new(job.card.title)
        .id_salt(("card", arrived))
        .default_open(arrived);
    let shown = card.show(ui, |ui| {
        for sentence in job.card.text.split_inclusive(". ") {
            ui.label(sentence.trim_end());
        }
        ui.label(t!("sheet-supply", owner = job.card.supply_owner));
        ui.label(match job.card.supply {
            SupplyRight::Trainee => t!("sheet-supply-yours"),
            SupplyRight::OwnerOnly => t!("sheet-supply-theirs"),
        });
        if job.card.hold_s > 0.0 {
            ui.label(t!("sheet-hold", seconds = decimal(job.card.hold_s, 0)));
        }
        if !job.card.required.is_empty() {
            ui.label(t!("sheet-required", work = named(job.card.required)));
        }
        ui.label(t!("sheet-settle", seconds = decimal(job.card.settle_s, 0)));
        widgets::quiet(
            ui,
            t!("sheet-seed", seed = job.seed.to_string(), help = job.help.label().to_lowercase()),
        );
    });
    if shown.fully_closed() {
        widgets::two_lines(ui, job.card.text);
    }
}

/// The figures that were read.
pub(super) fn figures_ui(ui: &mut Ui, view: &View<'_>, job: &Job<'_>) {
    for line in figure_lines(&job.seen.sheet, view.settings.unit) {
        ui.label(line);
    }
}

/// Pieces of work, by name.
fn named(required: &[Duty]) -> String {
    let names: Vec<&str> = required.iter().map(|duty| duty.label()).collect();
    names.join("; ")
}

/// The author's hints that were taken, and the next one for the asking.
pub(super) fn hints_ui(ui: &mut Ui, job: &Job<'_>, out: &mut Vec<Command>) {
    let (given, left) = (job.card.hints, job.card.hints_left);
    for (i, hint) in given.iter().enumerate() {
        let said = ui.label(widgets::pen(t!("sheet-hint", number = i + 1, hint = hint)));
        if i + 1 == given.len() {
            widgets::live(&said);
        }
    }
    if left > 0 {
        let all = given.len() + left;
        let text = t!("sheet-next-hint", number = given.len() + 1, all = all);
        if widgets::list_button(ui, &text, None).clicked() {
            out.push(Command::NextHint);
        }
    }
}

/// The figures read so far, a line each; what was not read is not there.
fn figure_lines(sheet: &SheetSeen, unit: PressureUnit) -> Vec<String> {
    let mut lines = Vec::new();
    let of = |subject: Subject| sheet.note(subject).map(|note| &note.finding);
    let plate = of(Subject::Plate);
    if plate.is_none() {
        lines.push(t!("sheet-plate-unread").into());
    }
    if let Some(Observation::Plate(plate)) = plate {
        lines.push(figures_line(t!("sheet-plate"), &plate.figures, unit));
        let degrees = |kelvins: f64| decimal(kelvins * F_PER_K, 0);
        let (least, most) = plate.rise_k;
        lines.push(t!("sheet-rise", least = degrees(least), most = degrees(most)));
    }
    let label = of(Subject::ConversionLabel);
    if let Some(Observation::Label(figures)) = label {
        lines.push(figures_line(t!("sheet-label"), figures, unit));
    } else if label.is_some() {
        lines.push(t!("sheet-no-label").into());
    }
    if let Some(Observation::Delivery(it)) = of(Subject::SupplyRegulator) {
        lines.push(full_stop(t!(
            "sheet-delivery",
            least = pressure(it.least_pa, unit, 1),
            most = pressure(it.most_pa, unit, 1),
            rest = pressure(it.rest_pa, unit, 1),
            unit = unit.label()
        )));
    }
    lines
}

fn figures_line(paper: &str, figures: &GasFigures, unit: PressureUnit) -> String {
    let d = figures.decimals;
    let one = figures.manifold.list().len() == 1;
    let levels = figures.manifold.iter().map(|(level, target)| {
        let (pa, tolerance) =
            (pressure(target.pa, unit, d), pressure(target.tolerance_pa, unit, d));
        if one {
            t!("sheet-target", pressure = pa, tolerance = tolerance)
        } else {
            let level = words::level(level);
            t!("sheet-level-target", level = level, pressure = pa, tolerance = tolerance)
        }
    });
    let manifold: Vec<String> = levels.collect();
    full_stop(t!(
        "sheet-figures",
        paper = paper,
        fuel = figures.fuel.label(),
        inlet_min = pressure(figures.inlet_min_pa, unit, 1),
        inlet_max = pressure(figures.inlet_max_pa, unit, 1),
        manifold = manifold.join(", "),
        unit = unit.label()
    ))
}

/// What was noted from looking closely.
pub(super) fn notes_ui(ui: &mut Ui, sheet: &SheetSeen) {
    widgets::section(ui, t!("sheet-notes"));
    if sheet.notes.is_empty() {
        widgets::quiet(ui, t!("sheet-no-notes"));
    }
    for note in &sheet.notes {
        ui.label(widgets::pen(note.subject.label()));
        ui.label(note.words());
        if is_stale(note, sheet) {
            widgets::quiet(ui, BEFORE.text());
        }
    }
    for written in &sheet.measured {
        let WrittenMeasured { spot, figures, tick } = written;
        let measured = Measured { spot: *spot, figures: figures.clone() };
        ui.label(widgets::pen(instrument_display::line(&measured)));
        if sheet.done.iter().any(|done| done.tick >= *tick) {
            widgets::quiet(ui, BEFORE.text());
        }
    }
}

/// Written under what was noted before something was mended that it tells of.
const BEFORE: Id = id!("sheet-before");

/// Whether a repair that was done since tells against a note.
#[must_use]
pub(crate) fn is_stale(note: &Note, sheet: &SheetSeen) -> bool {
    let since = sheet.done.iter().filter(|done| done.tick >= note.tick);
    since.into_iter().any(|done| actions::outdates(done.repair, note.subject))
}
