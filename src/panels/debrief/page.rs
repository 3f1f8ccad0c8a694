//! The debrief as a page.

use egui::{CentralPanel, Frame, Margin, RichText, ScrollArea, Ui};

use super::trace::{TraceState, trace_ui};
use super::{DebriefView, EssentialView, FindingView, Verdict, Weight};
use crate::panels::command::Command;
use crate::panels::opening::CAUTION;
use crate::panels::theme;
use crate::panels::view::View;
use crate::panels::widgets;
use crate::words::decimal;

/// Shows the debrief: the verdict, what was wrong, the house, what to practise next; then essentials,
/// sheet, pressures, findings, what it is worth.
pub fn debrief_ui(
    root: &mut Ui,
    view: &View<'_>,
    debrief: &DebriefView,
    state: &mut TraceState,
    out: &mut Vec<Command>,
) {
    let frame = Frame::new().fill(theme::PAPER).inner_margin(Margin::symmetric(32, 20));
    CentralPanel::no_frame().frame(frame).show(root, |ui| {
        crate::panels::background::grid(ui.painter(), ui.max_rect().expand(40.0));
        ScrollArea::vertical().id_salt("debrief").auto_shrink(false).show(ui, |ui| {
            head_ui(ui, debrief, out);
            causes_ui(ui, debrief);
            lines_ui(ui, t!("debrief-house"), &debrief.house);
            lines_ui(ui, t!("debrief-night"), &debrief.aftermath);
            if !debrief.next.is_empty() {
                lines_ui(ui, t!("debrief-next"), std::slice::from_ref(&debrief.next));
            }
            essentials_ui(ui, &debrief.essentials);
            sheet_ui(ui, debrief);
            job_ui(ui, debrief);
            if !debrief.traces.is_empty() {
                paper(ui, |ui| {
                    ui.heading(t!("debrief-pressures"));
                    trace_ui(ui, debrief, view.settings.unit, state);
                });
            }
            findings_ui(ui, &debrief.findings, state);
            lines_ui(ui, t!("debrief-worth"), &debrief.care);
            paper(ui, |ui| {
                for line in CAUTION {
                    widgets::quiet(ui, line.text());
                }
            });
        });
    });
}

fn paper(ui: &mut Ui, content: impl FnOnce(&mut Ui)) {
    widgets::slip().inner_margin(Margin::same(14)).show(ui, |ui| {
        ui.set_width(ui.available_width());
        content(ui);
    });
    ui.add_space(10.0);
}

fn head_ui(ui: &mut Ui, debrief: &DebriefView, out: &mut Vec<Command>) {
    let title = t!("debrief-title", job = &debrief.title);
    ui.label(RichText::new(title).text_style(egui::TextStyle::Heading));
    widgets::live(&ui.label(&debrief.result));
    if let Some((reached, possible)) = debrief.points {
        ui.label(t!(
            "debrief-points",
            reached = decimal(reached, 0),
            possible = decimal(possible, 0)
        ));
    }
    if !debrief.hints.is_empty() {
        ui.label(&debrief.hints);
    }
    ui.horizontal_wrapped(|ui| {
        for (text, command) in [
            (t!("debrief-again"), Command::Again),
            (t!("debrief-other-house"), Command::AgainOtherSeed),
            (t!("debrief-to-jobs"), Command::Leave),
        ] {
            if ui.button(text).clicked() {
                out.push(command);
            }
        }
    });
    ui.add_space(8.0);
}

/// What was wrong, each with the trainee's own numbers.
fn causes_ui(ui: &mut Ui, debrief: &DebriefView) {
    paper(ui, |ui| {
        ui.heading(t!("debrief-causes"));
        if debrief.causes.is_empty() {
            ui.label(t!("debrief-no-cause"));
        }
        for cause in &debrief.causes {
            let color = if cause.is_right { theme::SETTLED } else { theme::DANGER };
            ui.label(RichText::new(&cause.head).color(color).family(theme::semibold()));
            for line in &cause.lines {
                ui.label(line);
            }
        }
    });
}

/// The job sheet: a line for each port and state, as found and as left, with what was true then.
fn sheet_ui(ui: &mut Ui, debrief: &DebriefView) {
    if debrief.sheet.is_empty() && debrief.sheet_notes.is_empty() {
        return;
    }
    paper(ui, |ui| {
        ui.heading(t!("debrief-sheet"));
        for row in &debrief.sheet {
            ui.label(RichText::new(&row.line).family(theme::semibold()));
            for (what, text) in [(t!("debrief-found"), &row.found), (t!("debrief-left"), &row.left)]
            {
                if !text.is_empty() {
                    ui.label(t!("debrief-sheet-number", what = what, number = text));
                }
            }
        }
        for note in &debrief.sheet_notes {
            ui.label(note);
        }
    });
}

fn essentials_ui(ui: &mut Ui, essentials: &[EssentialView]) {
    if essentials.is_empty() {
        return;
    }
    paper(ui, |ui| {
        ui.heading(t!("essentials-title"));
        for essential in essentials {
            let (mark, word, color) = match essential.verdict {
                Verdict::Met => ("✓", t!("essentials-met"), theme::SETTLED),
                Verdict::Missed => ("✗", t!("essentials-missed"), theme::DANGER),
                Verdict::NotDue => ("–", t!("essentials-not-due"), theme::QUIET),
                Verdict::Open => ("–", t!("essentials-open"), theme::QUIET),
            };
            let text =
                t!("essentials-line", mark = mark, essential = &essential.name, verdict = word);
            ui.label(RichText::new(text).color(color).family(theme::semibold()));
            if !essential.why.is_empty() {
                ui.label(&essential.why);
            }
        }
    });
}

/// What was in the job, and what its author says of it.
fn job_ui(ui: &mut Ui, debrief: &DebriefView) {
    let Some(lines) = &debrief.in_this_job else { return };
    paper(ui, |ui| {
        ui.heading(t!("in-job-title"));
        if lines.is_empty() {
            ui.label(t!("in-job-nothing"));
        }
        for line in lines {
            ui.label(format!("• {line}"));
        }
        if !debrief.note.is_empty() {
            ui.add_space(4.0);
            ui.label(&debrief.note);
        }
    });
}

fn findings_ui(ui: &mut Ui, findings: &[FindingView], state: &mut TraceState) {
    if findings.is_empty() {
        return;
    }
    ui.heading(t!("findings-title"));
    let mut sorted: Vec<&FindingView> = findings.iter().collect();
    sorted.sort_by_key(|finding| finding.weight);
    for (i, finding) in sorted.into_iter().enumerate() {
        paper(ui, |ui| {
            ui.push_id(i, |ui| finding_ui(ui, finding, state));
        });
    }
}

fn finding_ui(ui: &mut Ui, finding: &FindingView, state: &mut TraceState) {
    let (mark, color) = match finding.weight {
        Weight::Serious => (t!("finding-serious"), theme::DANGER),
        Weight::Plain => (t!("finding-plain"), theme::INK),
        Weight::Slight => (t!("finding-slight"), theme::QUIET),
    };
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(mark).color(color).family(theme::semibold()));
        ui.label(RichText::new(&finding.title).text_style(theme::section()));
        if finding.lost > 0.0 {
            ui.label(lost_words(finding.lost, finding.limit));
        }
        if let Some(at_s) = finding.at_s {
            let show = ui.button(t!("finding-at", time = super::trace::minutes(at_s)));
            let name =
                t!("finding-at-name", finding = &finding.title, time = super::trace::minutes(at_s));
            widgets::named(&show, egui::WidgetType::Button, name);
            if show.clicked() {
                state.marked_s = Some(at_s);
            }
        }
    });
    for (what, text) in [
        (t!("finding-seen"), &finding.seen),
        (t!("finding-true"), &finding.truth),
        (t!("finding-why"), &finding.why),
        (t!("finding-practise"), &finding.practise),
    ] {
        if !text.is_empty() {
            ui.horizontal_wrapped(|ui| {
                ui.label(RichText::new(what).family(theme::semibold()));
                ui.label(text);
            });
        }
    }
    if !finding.rule.is_empty() {
        widgets::quiet(ui, t!("finding-rule", rule = &finding.rule));
    }
}

/// What a finding costs, and that its group stops losing where it does.
fn lost_words(lost: f64, limit: Option<f64>) -> String {
    let points = |count: f64| {
        let whole = (count - count.round()).abs() < 0.05;
        let shown = decimal(count, usize::from(!whole));
        if shown == "1" {
            t!("finding-point").to_owned()
        } else {
            t!("finding-points", points = shown)
        }
    };
    match limit {
        None => t!("finding-lost", points = points(lost)),
        Some(limit) => {
            t!("finding-worth", points = points(lost), most = points(limit))
        }
    }
}

fn lines_ui(ui: &mut Ui, title: &str, lines: &[String]) {
    if lines.is_empty() {
        return;
    }
    paper(ui, |ui| {
        ui.heading(title);
        for line in lines {
            ui.label(line);
        }
    });
}

#[cfg(test)]
mod tests {
    use super::lost_words;

    /// Slips that were caught in time cost parts of a point: what is shown adds up.
    #[test]
    fn parts_of_points_are_shown() {
        assert_eq!(lost_words(1.0, None), "−1 point");
        assert_eq!(lost_words(1.2, None), "−1.2 points");
        assert_eq!(lost_words(12.0, None), "−12 points");
        assert_eq!(
            lost_words(2.8, Some(20.0)),
            "worth 2.8 points; the findings of this kind cost 20 points in all"
        );
    }
}
