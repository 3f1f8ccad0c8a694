//! Keys of the page at work. Function keys always; Space where nothing has the keyboard; single
//! letters and digits where nothing is typed and they are not switched off.

use egui::{Event, Key, Modifiers, Ui};

use super::command::Command;
use super::menu::MenuItem;
use super::settings::Settings;
use super::top_bar::PLACES;
use super::view::{Job, Running};
use crate::hands::action::Action;
use crate::parts::OnOff;

/// What the keys ask of the window itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Pressed {
    /// F1: a hint from the coach.
    Hint,
    /// F2: the job sheet, where it is folded.
    Sheet,
    /// F3: what can be seen.
    Sights,
    /// F7: the cutaway, where it may be looked at.
    Cutaway,
    /// F6: the keyboard to drawing or sheet.
    Region,
    /// Escape: close what lies on top, else let the chosen part go.
    Escape,
}

/// Reads the keys; what they command goes to `out`, what they ask of the window comes back.
pub(super) fn keys(
    ui: &Ui,
    settings: &Settings,
    job: &Job<'_>,
    menu: &[MenuItem],
    out: &mut Vec<Command>,
) -> Option<Pressed> {
    let typing = ui.ctx().text_edit_focused();
    let idle = ui.memory(|memory| memory.focused()).is_none();
    if take(ui, Key::F5) || (idle && !typing && take(ui, Key::Space)) {
        out.push(match job.pace.running {
            Running::Running => Command::Pause,
            Running::Paused => Command::Resume,
        });
    }
    if settings.single_keys == OnOff::On && !typing && job.seen.over.is_none() {
        single(ui, job, menu, out);
    }
    if !typing && ui.input(|input| input.key_pressed(Key::Escape)) {
        return Some(Pressed::Escape);
    }
    [
        (Key::F1, Pressed::Hint),
        (Key::F2, Pressed::Sheet),
        (Key::F3, Pressed::Sights),
        (Key::F6, Pressed::Region),
        (Key::F7, Pressed::Cutaway),
    ]
    .into_iter()
    .find_map(|(key, pressed)| take(ui, key).then_some(pressed))
}

fn single(ui: &Ui, job: &Job<'_>, menu: &[MenuItem], out: &mut Vec<Command>) {
    for (place, key) in PLACES {
        if job.seen.place != place && take(ui, key) {
            out.push(Command::Act(Action::Go(place)));
        }
    }
    // A key held down is no answer to whether a repair shall be done.
    let held = ui.input(|input| {
        input.events.iter().any(|event| matches!(event, Event::Key { repeat: true, .. }))
    });
    for item in menu {
        let mend = matches!(item.choice.action, Action::Mend(_));
        if item.key.is_some_and(|key| take(ui, key)) && !(mend && held) {
            out.push(Command::Act(item.choice.action.clone()));
        }
    }
}

fn take(ui: &Ui, key: Key) -> bool {
    ui.input_mut(|input| input.consume_key(Modifiers::NONE, key))
}
