//! Time: the only system that moves the bench. Pause and speed are the session's own; the
//! engine's time is never stopped, or its messages would pile up.

use bevy::prelude::*;

use super::session::Session;
use crate::panels::debrief::DebriefView;
use crate::panels::view::Running;

/// What the window shows: the opening page, a job or its debrief.
#[derive(Resource, Default)]
pub enum Screen {
    /// The opening page, no job under way.
    #[default]
    Opening,
    /// A job at work, or over and not yet left.
    Job(Box<Session>),
    /// What came of it.
    Debrief {
        /// The job that is over.
        session: Box<Session>,
        /// What the page shows.
        page: Box<DebriefView>,
    },
}

impl Screen {
    /// The job at work.
    #[must_use]
    pub fn job(&self) -> Option<&Session> {
        match self {
            Self::Job(session) => Some(session),
            Self::Opening | Self::Debrief { .. } => None,
        }
    }

    /// Whether the bench is stepped: a job is at work, not over and not paused.
    #[must_use]
    pub fn runs(&self) -> bool {
        self.job().is_some_and(|job| {
            job.over().is_none()
                && match job.pace().running {
                    Running::Running => true,
                    Running::Paused => false,
                }
        })
    }
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Screen>()
        .insert_resource(Time::<Fixed>::from_hz(50.0))
        .add_systems(FixedUpdate, run);
}

fn run(mut screen: ResMut<Screen>) {
    match &mut *screen {
        Screen::Job(session) => session.run(),
        Screen::Opening | Screen::Debrief { .. } => {}
    }
}
