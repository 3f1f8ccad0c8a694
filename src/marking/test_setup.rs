//! Evidence of the manometer's hose on a port: its joint, its zero, and whether anybody was there.

use super::deed::lower;
use super::ledger::{Did, Hit, Ledger};
use crate::hands::action::{Action, PlugStep};
use crate::hands::event::{Event, EventKind};
use crate::model::truth::Truth;
use crate::parts::{Fitted, Gauge, Joint, Place, Port, PortFill};
use crate::units::{TICK_S, TICKS_PER_S};
use crate::words::decimal;

/// Pressure behind a joint from which leak fluid can show anything, in pascals (1 in. w.c.).
const LEAST_PA: f64 = crate::units::PA_PER_INWC;

/// A stretch of the job with the manometer on a port, through one adapter.
struct Session {
    port: Port,
    /// Places in the list of events: from the hose on for the first time to the hose off for the last
    /// time, or to the end.
    begin: usize,
    end: usize,
}

fn sessions(l: &Ledger) -> Vec<Session> {
    let mut all: Vec<Session> = Vec::new();
    // The adapter that the hose was on last is still in its port, or the tap's screw still loosened.
    let mut same_adapter = false;
    for did in l.did() {
        if *did.action == Action::HoseOff {
            if let Some(open) = all.last_mut().filter(|it| it.end == l.events.len()) {
                open.end = did.index;
            }
        } else if parts_the_joint(did.action) {
            same_adapter = false;
        } else if let Action::HoseOn { port, .. } = did.action
            && did.before.port(*port).fill.hose().is_none()
        {
            match all.last_mut().filter(|it| same_adapter && it.port == *port) {
                Some(session) => session.end = l.events.len(),
                None => {
                    all.push(Session { port: *port, begin: did.index, end: l.events.len() });
                }
            }
            same_adapter = true;
        }
    }
    all
}

/// Whether the hose's joint is no longer what it was: the adapter taken out, or the tap's screw turned
/// in.
fn parts_the_joint(action: &Action) -> bool {
    matches!(
        action,
        Action::Adapter { to: Fitted::Off, .. } | Action::Plug { step: PlugStep::SpinIn, .. }
    )
}

/// A lighting within a session: where it began, and when.
struct Lit {
    index: usize,
    tick: u64,
}

fn lights(what: &EventKind) -> bool {
    matches!(what, EventKind::Fired { from: None, to: Some(_) })
}

fn goes_out(what: &EventKind) -> bool {
    matches!(what, EventKind::Fired { to: None, .. })
}

/// The lightings of a session after which the burners burned for at least so many seconds.
fn lasting(l: &Ledger, session: &Session, least_s: f64) -> impl Iterator<Item = Lit> {
    let within = l.events[..session.end].iter().enumerate().skip(session.begin);
    let lit = within.filter(|(_, event)| lights(&event.what));
    let lit = lit.map(|(index, event)| Lit { index, tick: event.tick });
    lit.filter(move |lit| {
        let out = l.events[lit.index..].iter().find(|event| goes_out(&event.what));
        out.is_none_or(|out| seconds(lit.tick, out.tick) >= least_s)
    })
}

fn seconds(from: u64, to: u64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    let ticks = to.saturating_sub(from) as f64;
    ticks * TICK_S
}

/// What fluid on a joint tells.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Check {
    /// There was none in time.
    Missing,
    /// There was too little pressure behind it to show anything.
    TooWeak,
    /// It could show a leak.
    Good,
}

/// What an event is as a leak check of a joint that was begun by a tick.
fn check(event: &Event, joint: Joint, begun_by: u64, burning: bool) -> Check {
    let EventKind::FluidJudged { joint: at, lowest_pa, dwell_s, firing, .. } = event.what else {
        return Check::Missing;
    };
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "seconds of a job")]
    let dwell = (dwell_s / TICK_S).round() as u64;
    let in_time = event.tick.saturating_sub(dwell) <= begun_by;
    if at != joint || !in_time || (burning && firing.is_none()) {
        Check::Missing
    } else if lowest_pa < LEAST_PA {
        Check::TooWeak
    } else {
        Check::Good
    }
}

/// The lighting with which the joint of a session stood unchecked: at the inlet port the first one,
/// with the fluid before it; at the manifold port, where gas stands while they burn, the first
/// that lasted, with the fluid in its first seconds. A manifold with too little pressure to show
/// anything is checked at the next.
fn unchecked(l: &Ledger, session: &Session, within_s: f64) -> Option<Lit> {
    let joint = session.port.joint();
    let best = |from: usize, by: u64, burning: bool| {
        let events = &l.events[from..session.end];
        let checks = events.iter().map(|event| check(event, joint, by, burning));
        checks.max().unwrap_or(Check::Missing)
    };
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a time of the rule file"
    )]
    let within = within_s.max(0.0) as u64 * TICKS_PER_S;
    match session.port {
        Port::Inlet => {
            let first = lasting(l, session, 0.0).next();
            first.filter(|lit| best(session.begin, lit.tick, false) != Check::Good)
        }
        // A check belongs to the lighting before it.
        Port::Manifold => lasting(l, session, within_s)
            .map(|lit| (best(lit.index, lit.tick + within, true), lit))
            .find(|(check, _)| *check != Check::TooWeak)
            .filter(|(check, _)| *check == Check::Missing)
            .map(|(_, lit)| lit),
    }
}

/// The joint with the adapter: at the inlet port unchecked when the burners were lit, at the
/// manifold port not in the first seconds of firing.
pub(super) fn joint_unchecked(l: &Ledger, within_s: f64) -> Vec<Hit> {
    let hit = |session: &Session| {
        let lit = unchecked(l, session, within_s)?;
        let seen = t!("seen-test-joint", port = lower(session.port.label()));
        let truth = match session.port {
            Port::Inlet => t!("true-test-joint-inlet").into(),
            Port::Manifold => t!("true-test-joint-manifold", seconds = decimal(within_s, 0)),
        };
        Some(Hit::new(lit.tick, seen, truth))
    };
    sessions(l).iter().filter_map(hit).collect()
}

/// The gauge that the hose was put to before an event.
fn gauge_at(l: &Ledger, index: usize) -> Gauge {
    let puts = l.did().take_while(|did| did.index < index).filter_map(|did| {
        let Action::Gauge(gauge) = did.action else { return None };
        Some(*gauge)
    });
    puts.last().unwrap_or_default()
}

/// Numbers written at a port with the zero of another port.
pub(super) fn not_zeroed_anew(l: &Ledger) -> Vec<Hit> {
    let all = sessions(l);
    let pairs = all.iter().zip(all.iter().skip(1));
    pairs
        .filter(|(before, session)| before.port != session.port)
        .filter_map(|(before, session)| {
            let (index, tick) = l.wrote().find_map(|(index, tick, fact)| {
                let here = (session.begin..session.end).contains(&index);
                (here && fact.reading.port == session.port).then_some((index, tick))
            })?;
            let zeroed = |event: &Event| matches!(event.what, EventKind::Zeroed { .. });
            let anew = l.events[before.end..index].iter().any(zeroed);
            (!anew && gauge_at(l, index) == Gauge::Digital).then(|| {
                let seen = t!("seen-old-zero", port = lower(session.port.label()));
                let truth = t!("true-old-zero", port = lower(before.port.label()));
                Hit::new(tick, seen, truth)
            })
        })
        .collect()
}

/// Whether gas stands on the manometer's joint.
fn is_under_gas(truth: &Truth) -> bool {
    let fitted = |port: &Port| {
        let fill = truth.port(*port).fill;
        matches!(
            fill,
            PortFill::Hose(_) | PortFill::BareAdapter | PortFill::HoseOnTap(_) | PortFill::TapOpen
        )
    };
    let fed = truth.manual_valve.feeds() && truth.supply_valve.feeds();
    fed && Port::ALL.iter().any(fitted)
}

/// Out of the house for at least so long with gas on the manometer's joint.
pub(super) fn left_unattended(l: &Ledger, least_s: f64) -> Vec<Hit> {
    let mut hits = Vec::new();
    let mut out_since: Option<u64> = None;
    let end = l.end().map(|(tick, _, left)| (tick, left));
    let mut back = |since: u64, tick: u64, truth: &Truth| {
        let away_s = seconds(since, tick);
        if away_s >= least_s && is_under_gas(truth) {
            let seen = t!("seen-unattended", minutes = decimal(away_s / 60.0, 0));
            hits.push(Hit::new(since, seen, t!("true-unattended")));
        }
    };
    for Did { tick, action, before, .. } in l.did() {
        let Action::Go(place) = action else { continue };
        match place {
            Place::Yard | Place::Away => {
                out_since = out_since.or(is_under_gas(before).then_some(tick));
            }
            Place::Hall | Place::PlantRoom | Place::GasValve => {
                if let Some(since) = out_since.take() {
                    back(since, tick, before);
                }
            }
        }
    }
    if let (Some(since), Some((tick, left))) = (out_since, end) {
        back(since, tick, left);
    }
    hits
}
