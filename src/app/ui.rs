//! The panels: fills their view, lets them lay themselves out, and carries out what was commanded.

use bevy::app::AppExit;
use bevy::prelude::*;
use bevy_egui::{EguiContexts, EguiPostUpdateSet, EguiPrimaryContextPass, egui};

use super::boxes::Boxes;
use super::drive::Screen;
use super::page::{Choices, CurrentSeen};
use super::redraw::Redraw;
use super::session::Session;
use super::store::Store;
use crate::panels::view::{
    Behind, Card, Job, JobChoice, Layout, Opening, Page, Running, Unfinished,
};
use crate::panels::{Command, Shell, View};

/// The store behind the window.
#[derive(Resource)]
pub struct StoreResource(pub Box<dyn Store>);

/// The panels with what they remember.
#[derive(Resource, Default)]
struct PanelShell(Shell);

/// What the opening page offers, read when it comes to the front.
#[derive(Resource, Default)]
struct OpeningData {
    jobs: Vec<JobChoice>,
    unfinished: Vec<Unfinished>,
    seed: u64,
    notice: Option<String>,
}

/// What the panels command in this frame.
#[derive(Resource, Default)]
struct PanelCommands(Vec<Command>);

/// How the panels laid the window out.
#[derive(Resource, Debug, Clone, PartialEq)]
pub struct WindowLayout {
    /// What is left for the drawing, and which place and part it shows.
    pub layout: Layout,
    /// The window, in points.
    pub window: egui::Rect,
}

impl Default for WindowLayout {
    fn default() -> Self {
        Self {
            layout: Layout { scene: egui::Rect::ZERO, ..Layout::nothing() },
            window: egui::Rect::ZERO,
        }
    }
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<PanelShell>()
        .init_resource::<OpeningData>()
        .init_resource::<PanelCommands>()
        .init_resource::<WindowLayout>()
        .add_systems(Startup, read_opening_data)
        .add_systems(EguiPrimaryContextPass, show)
        .add_systems(PostUpdate, carry_out.after(EguiPostUpdateSet::EndPass));
}

fn read_opening_data(mut store: ResMut<StoreResource>, mut opening_data: ResMut<OpeningData>) {
    opening_data.jobs = store.0.jobs();
    opening_data.unfinished = store.0.unfinished();
    opening_data.seed = store.0.seed();
}

#[expect(clippy::too_many_arguments, reason = "a system names all that it reads and writes")]
fn show(
    mut contexts: EguiContexts,
    screen: Res<Screen>,
    current: Res<CurrentSeen>,
    boxes: Res<Boxes>,
    opening_data: Res<OpeningData>,
    choices: Res<Choices>,
    mut shell: ResMut<PanelShell>,
    mut commands: ResMut<PanelCommands>,
    mut laid: ResMut<WindowLayout>,
) -> Result {
    let ctx = contexts.ctx_mut()?;
    let zoom = choices.0.scale_percent.clamp(100, 200) as f32 / 100.0;
    if (ctx.zoom_factor() - zoom).abs() > 1e-3 {
        ctx.set_zoom_factor(zoom);
    }
    let window = ctx.viewport_rect();
    let builder = egui::UiBuilder::new().layer_id(egui::LayerId::background()).max_rect(window);
    let mut root = egui::Ui::new(ctx.clone(), "paper".into(), builder);
    let captions = screen.job().map(Session::captions).unwrap_or_default();
    let opening = Opening {
        jobs: &opening_data.jobs,
        unfinished: &opening_data.unfinished,
        seed: opening_data.seed,
        notice: opening_data.notice.as_deref(),
    };
    let (job, behind);
    let page = match (&*screen, &current.0) {
        (Screen::Job(session), Some(seen)) => {
            behind = session.behind();
            let behind = behind.as_ref().map(|(truth, inside)| Behind { truth, inside });
            job = at_work(session, seen, &boxes.0, &captions, behind);
            Page::Job(&job)
        }
        (Screen::Debrief { page, .. }, _) => Page::Debrief(page),
        (Screen::Opening | Screen::Job(_), _) => Page::Opening(&opening),
    };
    commands.0.clear();
    let view = View { settings: &choices.0, page };
    let layout = shell.0.ui(&mut root, &view, &mut commands.0);
    laid.set_if_neq(WindowLayout { layout, window });
    Ok(())
}

fn at_work<'a>(
    session: &'a Session,
    seen: &'a crate::senses::seen::Seen,
    boxes: &'a [crate::panels::view::PartBox],
    captions: &'a [String],
    behind: Option<Behind<'a>>,
) -> Job<'a> {
    let card = session.card();
    let (hints, hints_left) = session.hints();
    Job {
        seen,
        card: Card {
            title: &card.title,
            text: &card.text,
            supply_owner: &card.supply_owner,
            supply: card.supply,
            hold_s: card.hold_s,
            settle_s: card.settle_s,
            required: &card.required,
            hints,
            hints_left,
        },
        help: session.help(),
        seed: session.seed(),
        pace: session.pace(),
        clock_s: session.clock_s(),
        parts: boxes,
        refusal: session.refusal(),
        captions,
        behind,
        second_chance: session.second_chance(),
    }
}

fn carry_out(
    mut commands: ResMut<PanelCommands>,
    mut screen: ResMut<Screen>,
    mut store: ResMut<StoreResource>,
    mut opening_data: ResMut<OpeningData>,
    mut choices: ResMut<Choices>,
    mut shell: ResMut<PanelShell>,
    mut redraw: ResMut<Redraw>,
    mut exit: MessageWriter<AppExit>,
) {
    if commands.0.is_empty() {
        return;
    }
    redraw.again = true;
    for command in std::mem::take(&mut commands.0) {
        match command {
            Command::Quit => {
                exit.write(AppExit::Success);
            }
            Command::Settings(settings) => {
                store.0.keep_settings(&settings);
                choices.0 = settings;
            }
            Command::Start { scenario, seed, help } => {
                let started = store.0.start(&scenario, seed, help);
                open(started, &mut screen, &mut opening_data, choices.0.speed);
            }
            Command::ResumeAttempt(id) => {
                let resumed = store.0.resume(&id);
                open(resumed, &mut screen, &mut opening_data, choices.0.speed);
                shell.0.recall(screen.job().map(Session::remembered));
            }
            Command::Again | Command::AgainOtherSeed => {
                let other = command == Command::AgainOtherSeed;
                if let Screen::Job(session) | Screen::Debrief { session, .. } = &*screen {
                    let seed = if other { store.0.seed() } else { session.seed() };
                    let started = store.0.start(session.scenario(), seed, session.help());
                    open(started, &mut screen, &mut opening_data, choices.0.speed);
                }
            }
            Command::Leave => {
                *screen = Screen::Opening;
                opening_data.jobs = store.0.jobs();
                opening_data.unfinished = store.0.unfinished();
                opening_data.seed = store.0.seed();
                opening_data.notice = None;
            }
            Command::ShowDebrief => {
                if let Screen::Job(session) = std::mem::take(&mut *screen) {
                    let page = Box::new(store.0.debrief(&session.finished()));
                    *screen = Screen::Debrief { session, page };
                }
            }
            Command::Act(_)
            | Command::Pause
            | Command::Resume
            | Command::Speed(_)
            | Command::StepBack
            | Command::RefusalRead
            | Command::HintShown
            | Command::CutawayOpened
            | Command::NextHint => {
                if let Screen::Job(session) = &mut *screen {
                    let back = command == Command::StepBack;
                    at_the_job(session, command);
                    if back {
                        shell.0.recall(Some(session.remembered()));
                    }
                }
            }
        }
    }
}

fn at_the_job(session: &mut Session, command: Command) {
    match command {
        Command::Act(action) => session.ask(action),
        Command::Pause => session.set_running(Running::Paused),
        Command::Resume => session.set_running(Running::Running),
        Command::Speed(speed) => session.set_speed(speed),
        Command::StepBack => session.step_back(),
        Command::RefusalRead => session.read_refusal(),
        Command::HintShown => session.hinted(),
        Command::CutawayOpened => session.opened_cutaway(),
        Command::NextHint => session.take_hint(),
        Command::Start { .. }
        | Command::ResumeAttempt(_)
        | Command::Settings(_)
        | Command::Leave
        | Command::ShowDebrief
        | Command::Again
        | Command::AgainOtherSeed
        | Command::Quit => {}
    }
}

/// Puts an attempt in front, or says why there is none.
fn open(
    attempt: Result<super::store::Attempt, String>,
    screen: &mut Screen,
    opening_data: &mut OpeningData,
    speed: u32,
) {
    match attempt {
        Ok(attempt) => *screen = Screen::Job(Box::new(Session::new(attempt, speed))),
        Err(why) => {
            *screen = Screen::Opening;
            opening_data.notice = Some(why);
        }
    }
}
