//! What the sheet says: the job, the figures once they were read, the notes.

use egui::Ui;

use crate::appliance::plate::GasFigures;
use crate::panels::entry::pressure;
use crate::panels::face;
use crate::panels::kit;
use crate::panels::view::{Job, View};
use crate::panels::ways;
use crate::panels::wish::Wish;
use crate::parts::Subject;
use crate::senses::seen::{Finding, Measured, Note, SheetSeen, WrittenMeasured};
use crate::setup::SupplyRight;
use crate::units::{PressureUnit, full_stop};

/// The job and the figures that were read.
pub(super) fn paper_ui(ui: &mut Ui, view: &View<'_>, job: &Job<'_>, out: &mut Vec<Wish>) {
    kit::section(ui, "Job sheet");
    // Open on arrival; folded once the work has begun, unless it is opened again.
    let arrived = job.seen.sheet.notes.is_empty();
    let card = egui::CollapsingHeader::new(job.card.title)
        .id_salt(("card", arrived))
        .default_open(arrived);
    card.show(ui, |ui| {
        ui.label(job.card.text);
        ui.label(format!("Supply: {}.", job.card.supply_owner));
        ui.label(match job.card.supply {
            SupplyRight::Trainee => "You may set the supply regulator inside its limits.",
            SupplyRight::OwnerOnly => "The supply regulator is its owner's: call, do not touch.",
        });
        if job.card.hold_s > 0.0 {
            ui.label(format!("Hold at rest: {:.0} s at least.", job.card.hold_s));
        }
        ui.label(format!("A reading counts {:.0} s after a change.", job.card.settle_s));
        kit::quiet(ui, format!("Seed {}, {}.", job.seed, job.help.label().to_lowercase()));
    });
    for line in figure_lines(&job.seen.sheet, view.settings.unit) {
        ui.label(line);
    }
    hints_ui(ui, job, out);
}

/// The author's hints that were taken, and the next one for the asking.
fn hints_ui(ui: &mut Ui, job: &Job<'_>, out: &mut Vec<Wish>) {
    let (given, left) = (job.card.hints, job.card.hints_left);
    for (i, hint) in given.iter().enumerate() {
        let said = ui.label(kit::pen(format!("Hint {}: {hint}", i + 1)));
        if i + 1 == given.len() {
            kit::live(&said);
        }
    }
    if left > 0 {
        let all = given.len() + left;
        let text = format!("Hint {} of {all} on this job", given.len() + 1);
        if kit::list_button(ui, &text, None).clicked() {
            out.push(Wish::NextHint);
        }
    }
}

/// The figures read so far, a line each; what was not read is not there.
#[must_use]
pub(crate) fn figure_lines(sheet: &SheetSeen, unit: PressureUnit) -> Vec<String> {
    let mut lines = Vec::new();
    let of = |subject: Subject| sheet.note(subject).map(|note| &note.finding);
    match of(Subject::Plate) {
        Some(Finding::Figures(figures)) => lines.push(figures_line("Plate", figures, unit)),
        Some(_) => {}
        None => lines.push("Plate: not read yet.".into()),
    }
    match of(Subject::ConversionLabel) {
        Some(Finding::Figures(figures)) => {
            lines.push(figures_line("Conversion label, which governs", figures, unit));
        }
        Some(_) => lines.push("No conversion label.".into()),
        None => {}
    }
    if let Some(Finding::Delivery(limits)) = of(Subject::SupplyRegulator) {
        lines.push(full_stop(format!(
            "Supply regulator: {} to {}, at rest at most {} {}",
            pressure(limits.lowest_pa, unit, 1),
            pressure(limits.highest_pa, unit, 1),
            pressure(limits.rest_pa, unit, 1),
            unit.label()
        )));
    }
    lines
}

fn figures_line(paper: &str, figures: &GasFigures, unit: PressureUnit) -> String {
    let d = figures.decimals;
    full_stop(format!(
        "{paper}, {}: inlet {} to {}, manifold low {} ± {}, high {} ± {} {}",
        figures.fuel.label(),
        pressure(figures.inlet_min_pa, unit, 1),
        pressure(figures.inlet_max_pa, unit, 1),
        pressure(figures.low.pa, unit, d),
        pressure(figures.low.tolerance_pa, unit, d),
        pressure(figures.high.pa, unit, d),
        pressure(figures.high.tolerance_pa, unit, d),
        unit.label()
    ))
}

/// What was noted from looking closely.
pub(super) fn notes_ui(ui: &mut Ui, sheet: &SheetSeen) {
    kit::section(ui, "Notes");
    if sheet.notes.is_empty() {
        kit::quiet(ui, "Nothing yet. What you look at closely is noted here.");
    }
    for note in &sheet.notes {
        ui.label(kit::pen(note.subject.label()));
        ui.label(&note.text);
        if is_stale(note, sheet) {
            kit::quiet(ui, BEFORE);
        }
    }
    for written in &sheet.measured {
        let WrittenMeasured { spot, figures, tick } = written;
        let measured = Measured { spot: *spot, figures: figures.clone() };
        ui.label(kit::pen(face::line(&measured)));
        if sheet.done.iter().any(|done| done.tick >= *tick) {
            kit::quiet(ui, BEFORE);
        }
    }
}

/// Written under what was noted before something was mended that it tells of.
const BEFORE: &str = "(before the repair)";

/// Whether a repair that was done since tells against a note.
#[must_use]
pub(crate) fn is_stale(note: &Note, sheet: &SheetSeen) -> bool {
    let since = sheet.done.iter().filter(|done| done.tick >= note.tick);
    since.into_iter().any(|done| ways::outdates(done.repair, note.subject))
}
