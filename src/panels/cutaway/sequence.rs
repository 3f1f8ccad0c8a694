//! The control's sequence as a strip: its states in their order, the present one lit, what it waits
//! for and for how long.

use egui::{Align2, FontId, Rect, RichText, Sense, Stroke, StrokeKind, Ui, WidgetType, pos2, vec2};

use crate::appliance::ignition::ControlState as S;
use crate::model::inside::ControlInside;
use crate::panels::theme;
use crate::panels::view::Behind;
use crate::panels::widgets;
use crate::panels::words;
use crate::parts::{Level, is_staged};
use crate::words::decimal;

/// Shows the strip and the contacts under it.
pub(super) fn sequence_ui(ui: &mut Ui, behind: &Behind<'_>) {
    let control = &behind.inside.control;
    let levels = control.felt.switches.list();
    let now = behind.truth.control;
    let mut order = strip(levels);
    if !order.contains(&now) {
        // What interrupts the sequence shows only while it does.
        order.insert(0, now);
    }
    ui.spacing_mut().item_spacing.y = 2.0;
    for state in order {
        row_ui(ui, state, state == now, control);
    }
    ui.add_space(4.0);
    contacts_ui(ui, behind);
}

/// The states of a furnace with these levels, in the order of a call.
fn strip(levels: &'static [Level]) -> Vec<S> {
    let mut order = vec![
        S::Standby,
        S::InducerStart,
        S::PressureSwitchProving,
        S::PrePurge,
        S::IgniterWarmUp,
        S::TrialForIgnition,
        S::FlameProving,
        S::BlowerOnDelay,
    ];
    for &level in levels {
        if !level.is_first() {
            order.extend([S::InducerUp, S::NextSwitchProving]);
        }
        order.push(S::Burning(level));
    }
    order.extend([S::PostPurge, S::BlowerOffDelay]);
    order
}

/// The name of a state.
fn name(state: S) -> &'static str {
    match state {
        S::Standby => t!("sequence-standby"),
        S::InducerStart => t!("sequence-inducer-start"),
        S::PressureSwitchProving => t!("sequence-switch-proving"),
        S::PrePurge => t!("sequence-pre-purge"),
        S::IgniterWarmUp => t!("sequence-igniter"),
        S::TrialForIgnition => t!("sequence-trial"),
        S::FlameProving => t!("sequence-flame-proving"),
        S::BlowerOnDelay => t!("sequence-blower-on"),
        S::Burning(level) if !is_staged(level.of()) => t!("sequence-burning"),
        S::Burning(level) if level.is_first() => t!("sequence-burning-first"),
        S::Burning(_) => t!("sequence-burning-top"),
        S::NextLevelCall => t!("sequence-next-call"),
        S::InducerUp => t!("sequence-inducer-up"),
        S::NextSwitchProving => t!("sequence-next-switch"),
        S::LimitOpen => t!("sequence-limit"),
        S::RolloutOpen => t!("sequence-rollout"),
        S::PostPurge => t!("sequence-post-purge"),
        S::BlowerOffDelay => t!("sequence-blower-off"),
        S::Retry => t!("sequence-retry"),
        S::Lockout => t!("sequence-lockout"),
    }
}

/// What a state waits for, in words, and for how long at most, in seconds.
fn waits(state: S, control: &ControlInside) -> (&'static str, Option<f64>) {
    let t = &control.timings;
    match state {
        S::Standby => (t!("sequence-for-call"), None),
        S::InducerStart => (t!("sequence-for-time"), Some(t.inducer_start_s)),
        S::PressureSwitchProving => (t!("sequence-for-switch"), Some(t.switch_wait_s)),
        S::PrePurge => (t!("sequence-for-time"), Some(t.pre_purge_s)),
        S::IgniterWarmUp => (t!("sequence-for-time"), Some(t.igniter_s)),
        S::TrialForIgnition => (t!("sequence-for-flame"), Some(t.trial_s)),
        S::FlameProving => (t!("sequence-for-time"), Some(t.proving_s)),
        S::BlowerOnDelay => (t!("sequence-for-blower"), Some(t.blower_on_s)),
        S::Burning(_) => (t!("sequence-for-end"), None),
        S::NextLevelCall => (t!("sequence-for-time"), None),
        S::InducerUp => (t!("sequence-for-time"), Some(t.inducer_up_s)),
        S::NextSwitchProving => (t!("sequence-for-next-switch"), Some(t.next_switch_wait_s)),
        S::LimitOpen => (t!("sequence-for-limit"), None),
        S::RolloutOpen => (t!("sequence-for-reset"), None),
        S::PostPurge => (t!("sequence-for-time"), Some(t.post_purge_s)),
        S::BlowerOffDelay => (t!("sequence-for-time"), Some(t.blower_off_s)),
        S::Retry => (t!("sequence-for-time"), Some(t.retry_s)),
        S::Lockout => (t!("sequence-for-power"), Some(t.lockout_s)),
    }
}

fn row_ui(ui: &mut Ui, state: S, now: bool, control: &ControlInside) {
    let factor = theme::factor_of(ui);
    let (what, limit_s) = waits(state, control);
    let height = if now { 42.0 } else { 22.0 } * factor;
    let (rect, row) = ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::hover());
    let painter = ui.painter().clone();
    let (fill, ink) = if now { (theme::PEN, theme::PAPER) } else { (theme::SHADE, theme::INK) };
    painter.rect(rect, 3.0, fill, Stroke::new(1.0, theme::INK), StrokeKind::Inside);
    let body = FontId::new(15.0 * factor, theme::semibold());
    let small = FontId::proportional(13.0 * factor);
    let left = pos2(rect.left() + 8.0, rect.top() + 11.5 * factor);
    painter.text(left, Align2::LEFT_CENTER, name(state), body, ink);
    let counted_s = if state == S::BlowerOnDelay { control.gas_s } else { control.in_state_s };
    let right = pos2(rect.right() - 8.0, left.y);
    let seconds = |s: f64| decimal(s, 0);
    let timer = match (now, limit_s) {
        (true, Some(limit)) => {
            t!("sequence-of", passed = seconds(counted_s), limit = seconds(limit))
        }
        (true, None) => t!("sequence-since", passed = seconds(counted_s)),
        (false, Some(limit)) => t!("sequence-most", limit = seconds(limit)),
        (false, None) => String::new(),
    };
    painter.text(right, Align2::RIGHT_CENTER, &timer, small.clone(), ink);
    let said = if now {
        let under = pos2(left.x, rect.top() + 30.0 * factor);
        painter.text(under, Align2::LEFT_CENTER, what, small, ink);
        bar(&painter, rect, counted_s, limit_s);
        t!("sequence-said-now", state = name(state), waits = what, timer = &timer)
    } else {
        t!("sequence-said", state = name(state), timer = &timer)
    };
    widgets::named(&row, WidgetType::Label, said);
}

/// How much of the time has passed, along the foot of the row.
fn bar(painter: &egui::Painter, rect: Rect, passed_s: f64, limit_s: Option<f64>) {
    let Some(limit_s) = limit_s else { return };
    let share = super::body::share(passed_s, limit_s.max(1.0));
    let foot = Rect::from_min_max(pos2(rect.left() + 2.0, rect.bottom() - 6.0), rect.max)
        .shrink2(vec2(0.0, 1.0));
    let whole = Rect::from_min_max(foot.min, pos2(rect.right() - 2.0, foot.bottom()));
    painter.rect_filled(whole, 1.0, theme::INK);
    let done = Rect::from_min_size(whole.min, vec2(whole.width() * share, whole.height()));
    painter.rect_filled(done, 1.0, theme::FLAME_CORE);
}

/// The contacts that the control reads, and what it drives.
fn contacts_ui(ui: &mut Ui, behind: &Behind<'_>) {
    let control = &behind.inside.control;
    let felt = &control.felt;
    let closed = |it: bool| if it { t!("sequence-closed") } else { t!("sequence-open") };
    let power = if felt.powered { t!("sequence-power") } else { t!("sequence-no-power") };
    let call = match felt.call {
        None => t!("sequence-no-call").to_owned(),
        Some(level) if !is_staged(level.of()) => t!("sequence-call").to_owned(),
        Some(level) => t!("sequence-call-level", level = words::level(level)),
    };
    ui.label(RichText::new(t!("sequence-calls", power = power, call = call)));
    let staged = is_staged(felt.switches.list());
    for (level, &it) in felt.switches.iter() {
        ui.label(match staged {
            true => t!("sequence-switch-level", level = words::level(level), state = closed(it)),
            false => t!("sequence-switch", state = closed(it)),
        });
    }
    ui.label(t!(
        "sequence-safeties",
        limit = closed(felt.limit),
        rollout = closed(felt.rollout),
        low_gas = closed(felt.low_gas)
    ));
    ui.label(t!(
        "sequence-flame",
        current = decimal(felt.flame_ua, 1),
        least = decimal(control.timings.flame_min_ua, 1),
        tries = control.tries,
        all = control.timings.tries
    ));
}
