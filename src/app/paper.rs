//! The panels: fills their view, lets them lay themselves out, and carries out what was wished.

use bevy::app::AppExit;
use bevy::prelude::*;
use bevy_egui::{EguiContexts, EguiPostUpdateSet, EguiPrimaryContextPass, egui};

use super::boxes::Boxes;
use super::desk::Desk;
use super::drive::Front;
use super::page::{Choices, Sight};
use super::redraw::Redraw;
use super::session::Session;
use crate::panels::view::{Card, Job, JobChoice, Layout, Opening, Page, Running, Unfinished};
use crate::panels::{Shell, View, Wish};

/// The desk behind the window.
#[derive(Resource)]
pub struct AtDesk(pub Box<dyn Desk>);

/// The panels with what they remember.
#[derive(Resource, Default)]
struct Paper(Shell);

/// What the opening page offers, read when it comes to the front.
#[derive(Resource, Default)]
struct Offer {
    jobs: Vec<JobChoice>,
    unfinished: Vec<Unfinished>,
    seed: u64,
    notice: Option<String>,
}

/// What the panels wished in this frame.
#[derive(Resource, Default)]
struct Wishes(Vec<Wish>);

/// How the panels laid the window out.
#[derive(Resource, Debug, Clone, Copy)]
pub struct Laid {
    /// What is left for the drawing, and which place and part it shows.
    pub layout: Layout,
    /// The window, in points.
    pub window: egui::Rect,
}

impl Default for Laid {
    fn default() -> Self {
        Self {
            layout: Layout { scene: egui::Rect::ZERO, place: None, marked: None },
            window: egui::Rect::ZERO,
        }
    }
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Paper>()
        .init_resource::<Offer>()
        .init_resource::<Wishes>()
        .init_resource::<Laid>()
        .add_systems(Startup, read_offer)
        .add_systems(EguiPrimaryContextPass, show)
        .add_systems(PostUpdate, carry_out.after(EguiPostUpdateSet::EndPass));
}

fn read_offer(mut desk: ResMut<AtDesk>, mut offer: ResMut<Offer>) {
    offer.jobs = desk.0.jobs();
    offer.unfinished = desk.0.unfinished();
    offer.seed = desk.0.seed();
}

#[expect(clippy::too_many_arguments, reason = "a system names all that it reads and writes")]
fn show(
    mut contexts: EguiContexts,
    front: Res<Front>,
    sight: Res<Sight>,
    boxes: Res<Boxes>,
    offer: Res<Offer>,
    choices: Res<Choices>,
    mut paper: ResMut<Paper>,
    mut wishes: ResMut<Wishes>,
    mut laid: ResMut<Laid>,
) -> Result {
    let ctx = contexts.ctx_mut()?;
    let zoom = choices.0.scale_percent.clamp(100, 200) as f32 / 100.0;
    if (ctx.zoom_factor() - zoom).abs() > 1e-3 {
        ctx.set_zoom_factor(zoom);
    }
    let window = ctx.viewport_rect();
    let builder = egui::UiBuilder::new().layer_id(egui::LayerId::background()).max_rect(window);
    let mut root = egui::Ui::new(ctx.clone(), "paper".into(), builder);
    let captions = front.job().map(Session::captions).unwrap_or_default();
    let opening = Opening {
        jobs: &offer.jobs,
        unfinished: &offer.unfinished,
        seed: offer.seed,
        notice: offer.notice.as_deref(),
    };
    let job;
    let page = match (&*front, &sight.0) {
        (Front::Job(session), Some(seen)) => {
            job = at_work(session, seen, &boxes.0, &captions);
            Page::Job(&job)
        }
        (Front::Debrief { page, .. }, _) => Page::Debrief(page),
        (Front::Opening | Front::Job(_), _) => Page::Opening(&opening),
    };
    wishes.0.clear();
    let view = View { settings: &choices.0, page };
    laid.layout = paper.0.ui(&mut root, &view, &mut wishes.0);
    laid.window = window;
    Ok(())
}

fn at_work<'a>(
    session: &'a Session,
    seen: &'a crate::senses::seen::Seen,
    boxes: &'a [crate::panels::view::PartBox],
    captions: &'a [String],
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
        second_chance: session.second_chance(),
    }
}

fn carry_out(
    mut wishes: ResMut<Wishes>,
    mut front: ResMut<Front>,
    mut desk: ResMut<AtDesk>,
    mut offer: ResMut<Offer>,
    mut choices: ResMut<Choices>,
    mut redraw: ResMut<Redraw>,
    mut exit: MessageWriter<AppExit>,
) {
    if wishes.0.is_empty() {
        return;
    }
    redraw.again = true;
    for wish in std::mem::take(&mut wishes.0) {
        match wish {
            Wish::Quit => {
                exit.write(AppExit::Success);
            }
            Wish::Settings(settings) => {
                desk.0.keep_settings(&settings);
                choices.0 = settings;
            }
            Wish::Start { scenario, seed, help } => {
                let started = desk.0.start(&scenario, seed, help);
                open(started, &mut front, &mut offer, choices.0.speed);
            }
            Wish::ResumeAttempt(id) => {
                let resumed = desk.0.resume(&id);
                open(resumed, &mut front, &mut offer, choices.0.speed);
            }
            Wish::Again | Wish::AgainOtherSeed => {
                let other = wish == Wish::AgainOtherSeed;
                if let Front::Job(session) | Front::Debrief { session, .. } = &*front {
                    let seed = if other { desk.0.seed() } else { session.seed() };
                    let started = desk.0.start(session.scenario(), seed, session.help());
                    open(started, &mut front, &mut offer, choices.0.speed);
                }
            }
            Wish::Leave => {
                *front = Front::Opening;
                offer.jobs = desk.0.jobs();
                offer.unfinished = desk.0.unfinished();
                offer.seed = desk.0.seed();
                offer.notice = None;
            }
            Wish::ShowDebrief => {
                if let Front::Job(session) = std::mem::take(&mut *front) {
                    let page = Box::new(desk.0.debrief(&session.finished()));
                    *front = Front::Debrief { session, page };
                }
            }
            Wish::Act(_)
            | Wish::Pause
            | Wish::Resume
            | Wish::Speed(_)
            | Wish::StepBack
            | Wish::RefusalRead
            | Wish::HintShown
            | Wish::NextHint => {
                if let Front::Job(session) = &mut *front {
                    at_the_job(session, wish);
                }
            }
        }
    }
}

fn at_the_job(session: &mut Session, wish: Wish) {
    match wish {
        Wish::Act(action) => session.ask(action),
        Wish::Pause => session.set_running(Running::Paused),
        Wish::Resume => session.set_running(Running::Running),
        Wish::Speed(speed) => session.set_speed(speed),
        Wish::StepBack => session.step_back(),
        Wish::RefusalRead => session.read_refusal(),
        Wish::HintShown => session.hinted(),
        Wish::NextHint => session.take_hint(),
        Wish::Start { .. }
        | Wish::ResumeAttempt(_)
        | Wish::Settings(_)
        | Wish::Leave
        | Wish::ShowDebrief
        | Wish::Again
        | Wish::AgainOtherSeed
        | Wish::Quit => {}
    }
}

/// Puts an attempt in front, or says why there is none.
fn open(
    attempt: Result<super::desk::Attempt, String>,
    front: &mut Front,
    offer: &mut Offer,
    speed: u32,
) {
    match attempt {
        Ok(attempt) => *front = Front::Job(Box::new(Session::new(attempt, speed))),
        Err(why) => {
            *front = Front::Opening;
            offer.notice = Some(why);
        }
    }
}
