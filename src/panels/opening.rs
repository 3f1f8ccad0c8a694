//! The opening pages: the caution, then the choice of a job.

use egui::{
    CentralPanel, Frame, Margin, RichText, ScrollArea, TextEdit, Ui, WidgetInfo, WidgetType,
};

use super::kit;
use super::settings_page::settings_ui;
use super::theme;
use super::view::{Help, JobChoice, Opening, View};
use super::wish::Wish;

/// The caution that stands before everything, a sentence each.
pub const CAUTION: [&str; 4] = [
    "Quarterturn is a practice simulator. It confers no qualification and is no authority.",
    "On real gas the appliance's own plate and instructions, the local code and a licensed \
     technician decide.",
    "Do not carry a figure or a step from here to a real appliance.",
    "If you smell gas where you are now: no switches, no flames, get everybody out, and call from \
     outside.",
];

/// What the opening pages remember.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct OpeningState {
    /// Whether the caution was read in this run.
    pub caution: Caution,
    /// The job that is chosen; none is the first.
    pub job: Option<String>,
    /// The seed as typed; none until changed.
    pub seed: Option<String>,
    /// How much help.
    pub help: Help,
}

/// Whether the caution was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Caution {
    /// Not yet.
    #[default]
    Unread,
    /// It was.
    Read,
}

/// Shows the opening.
pub fn opening_ui(
    root: &mut Ui,
    view: &View<'_>,
    opening: &Opening<'_>,
    state: &mut OpeningState,
    out: &mut Vec<Wish>,
) {
    let frame = Frame::new().fill(theme::PAPER).inner_margin(Margin::symmetric(32, 20));
    CentralPanel::no_frame().frame(frame).show(root, |ui| {
        super::ground::grid(ui.painter(), ui.max_rect().expand(40.0));
        ScrollArea::vertical().id_salt("opening").auto_shrink(false).show(ui, |ui| {
            ui.label(RichText::new("Quarterturn").text_style(theme::digits()));
            ui.label("Gas pressures on a two-stage furnace, from arrival to handing over.");
            ui.add_space(10.0);
            match state.caution {
                Caution::Unread => caution_ui(ui, state),
                Caution::Read => choose_ui(ui, view, opening, state, out),
            }
        });
    });
}

fn caution_ui(ui: &mut Ui, state: &mut OpeningState) {
    let width = ui.available_width().min(640.0 * theme::factor_of(ui));
    kit::slip().inner_margin(Margin::same(20)).show(ui, |ui| {
        ui.set_max_width((width - 44.0).max(60.0));
        ui.heading("Before you start");
        for line in CAUTION {
            ui.label(line);
        }
        ui.add_space(8.0);
        if kit::main_button(ui, "I have read this").clicked() {
            state.caution = Caution::Read;
        }
    });
}

fn choose_ui(
    ui: &mut Ui,
    view: &View<'_>,
    opening: &Opening<'_>,
    state: &mut OpeningState,
    out: &mut Vec<Wish>,
) {
    if let Some(notice) = opening.notice {
        kit::live(&ui.label(RichText::new(format!("✗ {notice}")).color(theme::DANGER)));
    }
    let wide = ui.available_width() > 820.0 * theme::factor_of(ui);
    if wide {
        ui.columns_const(|[left, right]| {
            jobs_ui(left, opening, state, out);
            side_ui(right, view, opening, out);
        });
    } else {
        jobs_ui(ui, opening, state, out);
        ui.add_space(12.0);
        side_ui(ui, view, opening, out);
    }
}

fn jobs_ui(ui: &mut Ui, opening: &Opening<'_>, state: &mut OpeningState, out: &mut Vec<Wish>) {
    kit::slip().show(ui, |ui| {
        ui.set_width(ui.available_width());
        ui.heading("Choose a job");
        let chosen = chosen(opening, state).map(|job| job.id.clone());
        for job in opening.jobs {
            job_ui(ui, job, chosen.as_deref() == Some(job.id.as_str()), state);
        }
        ui.add_space(6.0);
        let helps = Help::ALL.map(|help| (help, help.label()));
        if let Some(help) = kit::choice(ui, "Help", state.help, &helps) {
            state.help = help;
        }
        kit::quiet(
            ui,
            match state.help {
                Help::Coached => {
                    "Led step by step to the first reading, then from reading to reading."
                }
                Help::Solo => "No prompting; a hint when you ask for one.",
            },
        );
        let seed = seed_ui(ui, opening, state);
        ui.add_space(6.0);
        let start = ui.horizontal(|ui| kit::main_button(ui, "Start")).inner;
        if let (true, Some(job), Ok(seed)) = (start.clicked(), self::chosen(opening, state), &seed)
        {
            out.push(Wish::Start { scenario: job.id.clone(), seed: *seed, help: state.help });
        }
    });
}

fn chosen<'a>(opening: &Opening<'a>, state: &OpeningState) -> Option<&'a JobChoice> {
    let wanted = state.job.as_deref();
    let found = opening.jobs.iter().find(|job| Some(job.id.as_str()) == wanted);
    found.or_else(|| opening.jobs.first())
}

fn job_ui(ui: &mut Ui, job: &JobChoice, now: bool, state: &mut OpeningState) {
    let title = RichText::new(&job.title).family(theme::semibold());
    let button = ui.radio(now, title);
    let name = format!("{}, {}", job.title, job.fuel);
    button.widget_info(|| WidgetInfo::selected(WidgetType::RadioButton, true, now, &name));
    if button.clicked() {
        state.job = Some(job.id.clone());
    }
    ui.indent(&job.id, |ui| {
        ui.label(&job.text);
        kit::quiet(ui, &job.fuel);
    });
}

fn seed_ui(ui: &mut Ui, opening: &Opening<'_>, state: &mut OpeningState) -> Result<u64, ()> {
    let mut text = state.seed.clone().unwrap_or_else(|| opening.seed.to_string());
    ui.horizontal_wrapped(|ui| {
        let label = ui.label("Seed");
        let field =
            ui.add(TextEdit::singleline(&mut text).desired_width(150.0)).labelled_by(label.id);
        if field.changed() {
            state.seed = Some(text.clone());
        }
        kit::quiet(ui, "The same job with the same seed is the same house.");
    });
    let seed = text.trim().parse().map_err(|_| ());
    if seed.is_err() {
        let words = "✗ A seed is a whole number, 0 to 18446744073709551615.";
        kit::live(&ui.label(RichText::new(words).color(theme::DANGER)));
    }
    seed
}

fn side_ui(ui: &mut Ui, view: &View<'_>, opening: &Opening<'_>, out: &mut Vec<Wish>) {
    if !opening.unfinished.is_empty() {
        kit::slip().show(ui, |ui| {
            ui.set_width(ui.available_width());
            ui.heading("Go on where you stopped");
            for attempt in opening.unfinished {
                let text = format!("{}, {}", attempt.title, attempt.text);
                if kit::list_button(ui, &text, None).clicked() {
                    out.push(Wish::ResumeAttempt(attempt.id.clone()));
                }
            }
        });
        ui.add_space(10.0);
    }
    kit::slip().show(ui, |ui| {
        ui.set_width(ui.available_width());
        settings_ui(ui, view.settings, out);
    });
    ui.add_space(10.0);
    ui.horizontal(|ui| {
        if ui.button("Close Quarterturn").clicked() {
            out.push(Wish::Quit);
        }
    });
}
