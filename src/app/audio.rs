//! Sound: what the attempt gives to hear goes to the device, as loud as the settings say.

mod board;
mod out;

use bevy::prelude::*;

use super::drive::Screen;
use super::page::{AppSystems, Choices};
use crate::parts::OnOff;
use crate::sound::soundscape::Soundscape;
use board::{Board, Player};
use out::{Playing, Source, play};

/// Samples a second that are made; the server brings them to what its device takes.
const RATE_HZ: u32 = 48_000;

/// What the window tells of sound, and the thread that plays it as long as the window is there.
#[derive(Resource)]
struct Speaker {
    board: Board,
    _playing: Option<Playing>,
}

pub(super) fn plugin(app: &mut App) {
    let board = Board::default();
    let playing = play(Player::new(board.clone(), RATE_HZ), RATE_HZ);
    app.insert_resource(Speaker { board, _playing: playing })
        .add_systems(Update, speak.after(AppSystems::Mirror));
}

fn speak(speaker: Res<Speaker>, choices: Res<Choices>, mut screen: ResMut<Screen>) {
    let percent = match choices.0.sound {
        OnOff::On => choices.0.volume_percent,
        OnOff::Off => 0,
    };
    // Taking up what sounded is no change of what is shown.
    match screen.bypass_change_detection() {
        Screen::Job(session) => {
            let moments = session.take_moments();
            speaker.board.tell(session.scape(), percent, &moments);
        }
        Screen::Opening | Screen::Debrief { .. } => {
            speaker.board.tell(Soundscape::default(), percent, &[]);
        }
    }
}

impl Source for Player {
    fn begin(&mut self) {
        self.forget();
    }

    fn fill(&mut self, samples: &mut [f32]) {
        Self::fill(self, samples);
    }
}
