//! Forms: what is done with a number, or with several choices at once.

use egui::{DragValue, Ui};

use super::actions::Form;
use super::command::Command;
use super::finding::{FindingState, finding_ui};
use super::hand_over::{self, HandOverState};
use super::widgets::{self, Stepper};
use super::words;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{HandValve, Port, Screw};
use crate::senses::seen::Seen;
use crate::site::house::SETPOINTS_HALF_F;

/// What is set in the forms and not yet done.
#[derive(Debug, Clone, PartialEq)]
pub struct FormState {
    /// Angle of a hand valve, degrees.
    pub degrees: i16,
    /// Turn of a screw, eighths.
    pub eighths: i16,
    /// Turn of a plug, eighths.
    pub tighten: i16,
    /// Setpoint in half degrees; none until changed.
    pub setpoint_half_f: Option<i16>,
    /// Finding that is being filled in.
    pub finding: FindingState,
    /// The end of the job.
    pub hand_over: HandOverState,
}

impl Default for FormState {
    fn default() -> Self {
        Self {
            degrees: 45,
            eighths: 2,
            tighten: 4,
            setpoint_half_f: None,
            finding: FindingState::default(),
            hand_over: HandOverState::default(),
        }
    }
}

/// Shows a form. The reading's form is the row on the sheet, so it is not repeated here.
pub fn form_ui(
    ui: &mut Ui,
    form: Form,
    seen: &Seen,
    state: &mut FormState,
    out: &mut Vec<Command>,
) {
    match form {
        Form::HandValve(hand_valve) => hand_valve_ui(ui, hand_valve, state, out),
        Form::Turn(screw) => turn_ui(ui, screw, state, out),
        Form::Tighten(port) => tighten_ui(ui, port, state, out),
        Form::Setpoint => setpoint_ui(ui, seen, state, out),
        Form::Finding => finding_ui(ui, &seen.sheet, &mut state.finding, out),
        Form::HandOver => hand_over::hand_over_ui(ui, &mut state.hand_over, out),
        Form::Write => {}
    }
}

fn hand_valve_ui(
    ui: &mut Ui,
    hand_valve: HandValve,
    state: &mut FormState,
    out: &mut Vec<Command>,
) {
    ui.horizontal_wrapped(|ui| {
        let label = ui.label(t!("form-angle"));
        ui.add(DragValue::new(&mut state.degrees).range(0..=90).speed(1.0).suffix("°"))
            .labelled_by(label.id);
        if ui.button(t!("form-angle-do")).clicked() {
            out.push(Command::Act(Action::HandValve { hand_valve, degrees: state.degrees }));
        }
    });
}

fn turn_ui(ui: &mut Ui, screw: Screw, state: &mut FormState, out: &mut Vec<Command>) {
    ui.horizontal_wrapped(|ui| {
        ui.label(t!("form-turn"));
        Stepper { name: t!("form-screw"), range: (-16, 16), step: 1 }.ui(
            ui,
            &mut state.eighths,
            |eighths| words::turns(i32::from(eighths)),
        );
        if ui.button(t!("form-screw-do")).clicked() {
            out.push(Command::Act(Action::Turn { screw, eighths: state.eighths }));
        }
    });
    widgets::quiet(ui, t!("form-screw-help"));
}

fn tighten_ui(ui: &mut Ui, port: Port, state: &mut FormState, out: &mut Vec<Command>) {
    ui.horizontal_wrapped(|ui| {
        ui.label(t!("form-turn"));
        Stepper { name: t!("form-plug"), range: (-8, 8), step: 1 }.ui(
            ui,
            &mut state.tighten,
            |eighths| words::turns(i32::from(eighths)),
        );
        if ui.button(t!("form-plug-do")).clicked() {
            let step = PlugStep::Tighten(state.tighten);
            out.push(Command::Act(Action::Plug { port, step }));
        }
    });
    widgets::quiet(ui, t!("form-plug-help"));
}

fn setpoint_ui(ui: &mut Ui, seen: &Seen, state: &mut FormState, out: &mut Vec<Command>) {
    let Some(hall) = seen.hall.as_ref() else { return };
    ui.horizontal_wrapped(|ui| {
        let label = ui.label(t!("form-setpoint"));
        let now = state.setpoint_half_f.unwrap_or(hall.setpoint_half_f);
        let mut degrees = f64::from(now) / 2.0;
        let field = ui
            .add(
                DragValue::new(&mut degrees)
                    .range(
                        f64::from(SETPOINTS_HALF_F.0) / 2.0..=f64::from(SETPOINTS_HALF_F.1) / 2.0,
                    )
                    .speed(0.5)
                    .fixed_decimals(1)
                    .suffix(t!("form-degrees")),
            )
            .labelled_by(label.id);
        if field.changed() {
            #[expect(clippy::cast_possible_truncation, reason = "45 to 90, doubled")]
            let half = (degrees * 2.0).round() as i16;
            state.setpoint_half_f = Some(half);
        }
        if ui.button(t!("form-setpoint-do")).clicked() {
            out.push(Command::Act(Action::Setpoint(state.setpoint_half_f.unwrap_or(now))));
            state.setpoint_half_f = None;
        }
    });
}
