//! The one next step, with a picture: the job that is chosen, and how it is begun.

use egui::{CollapsingHeader, Margin, RichText, Sense, TextEdit, Ui, WidgetType, vec2};

use super::picture::picture;
use super::state::{OpeningState, chosen, seed_of, suggested};
use crate::panels::command::Command;
use crate::panels::theme;
use crate::panels::view::{Help, JobChoice, Opening};
use crate::panels::widgets;

/// Shows the chosen job. Without a choice it is the next one on the ladder.
pub(super) fn next_ui(
    ui: &mut Ui,
    opening: &Opening<'_>,
    state: &mut OpeningState,
    room: f32,
    out: &mut Vec<Command>,
) {
    let Some(job) = chosen(opening, state) else { return };
    let is_next = suggested(opening).is_some_and(|next| next.id == job.id);
    widgets::slip().inner_margin(Margin::same(14)).show(ui, |ui| {
        ui.set_width(ui.available_width());
        let factor = theme::factor_of(ui);
        let height = (room - 300.0 * factor).min(0.32 * ui.available_width());
        if height > 60.0 {
            let size = vec2(ui.available_width(), height);
            let (rect, drawn) = ui.allocate_exact_size(size, Sense::hover());
            picture(ui.painter(), rect, job.step);
            widgets::named(&drawn, WidgetType::Image, job.step.label());
            ui.add_space(4.0);
        }
        let over = if is_next { t!("opening-next") } else { t!("opening-chosen") };
        widgets::quiet(ui, over);
        ui.label(RichText::new(&job.title).heading());
        widgets::quiet(
            ui,
            t!(
                "opening-job-line",
                step = job.step.label(),
                fuel = &job.fuel,
                standing = job.standing.words()
            ),
        );
        widgets::two_lines(ui, if job.aim.is_empty() { &job.text } else { &job.aim });
        ui.add_space(4.0);
        start_ui(ui, opening, job, state, out);
        ui.add_space(2.0);
        about_ui(ui, opening, job, state);
    });
}

/// The button that the page is about, and with how much help it starts.
fn start_ui(
    ui: &mut Ui,
    opening: &Opening<'_>,
    job: &JobChoice,
    state: &mut OpeningState,
    out: &mut Vec<Command>,
) {
    let seed = seed_of(opening, state);
    ui.horizontal_wrapped(|ui| {
        let start = widgets::main_button(ui, t!("opening-start"));
        if let (true, Ok(seed)) = (start.clicked(), seed) {
            out.push(Command::Start { scenario: job.id.clone(), seed, help: state.help });
        }
        ui.add_space(8.0);
        let helps = Help::ALL.map(|help| (help, help.label()));
        if let Some(help) = widgets::choice(ui, t!("opening-help"), state.help, &helps) {
            state.help = help;
        }
    });
    widgets::quiet(
        ui,
        match state.help {
            Help::Coached => t!("opening-coached"),
            Help::Solo => t!("opening-solo"),
        },
    );
}

/// What need not be read before the start, folded: what it is about, what it is practice for, the
/// seed.
fn about_ui(ui: &mut Ui, opening: &Opening<'_>, job: &JobChoice, state: &mut OpeningState) {
    let wrong = seed_of(opening, state).is_err();
    let fold = CollapsingHeader::new(t!("opening-about")).id_salt(("about", &job.id));
    // A seed that is no number holds the start up: it must be in sight.
    let fold = fold.open(wrong.then_some(true));
    let shown = fold.show(ui, |ui| {
        if !job.aim.is_empty() {
            sentences(ui, &job.text);
        }
        if !job.competencies.is_empty() {
            ui.add_space(4.0);
            widgets::section(ui, t!("opening-practice"));
            for one in &job.competencies {
                let name = format!("{} {}", one.id, one.name());
                ui.label(RichText::new(name).family(theme::semibold()));
                ui.label(one.criterion());
            }
            widgets::quiet(ui, t!("opening-practice-only"));
        }
        ui.add_space(4.0);
        seed_ui(ui, opening, state);
    });
    widgets::ringed(ui, shown.header_response);
}

/// A text as one paragraph a sentence.
fn sentences(ui: &mut Ui, text: &str) {
    for sentence in text.split_inclusive(". ") {
        ui.label(sentence.trim_end());
    }
}

fn seed_ui(ui: &mut Ui, opening: &Opening<'_>, state: &mut OpeningState) {
    let mut text = state.seed.clone().unwrap_or_else(|| opening.seed.to_string());
    ui.horizontal_wrapped(|ui| {
        let label = ui.label(t!("opening-seed"));
        let field = ui.add(TextEdit::singleline(&mut text).desired_width(150.0));
        let field = widgets::ringed(ui, field).labelled_by(label.id);
        if field.changed() {
            state.seed = Some(text.clone());
        }
        widgets::quiet(ui, t!("opening-seed-same"));
    });
    if seed_of(opening, state).is_err() {
        let words = t!("opening-seed-wrong");
        widgets::live(&ui.label(RichText::new(words).color(theme::DANGER)));
    }
}
