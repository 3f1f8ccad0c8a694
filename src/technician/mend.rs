//! Mending: what has to be so first, the repair, the joint that it opened checked afterwards.

use super::open::{hose_back_on, hose_off, isolate};
use super::plan::{Step, Technician, act, go, think, with};
use super::task::pause;
use crate::catalogue::repair::{Need, Repair};
use crate::hands::action::Action;
use crate::parts::{Cock, Door, Fitted, Joint, JointVerdict, OnOff, Place, Port, Tool};
use crate::senses::seen::{Cracked, FluidSeen, Seen};

impl Technician {
    /// Puts a repair on the list, with what it is for. One that needs the line without pressure
    /// waits for the open inlet port.
    pub(super) fn plan_repair(&mut self, words: &str, repair: Repair) {
        self.know.note(words);
        let list = if repair.needs().contains(&Need::NoPressure) {
            &mut self.know.to_mend_open
        } else {
            &mut self.know.to_mend
        };
        if !list.contains(&repair) {
            list.push_back(repair);
        }
    }
}

/// Does every repair on the list that can be done with the furnace isolated.
pub(super) fn mend_all() -> Step {
    think(next_isolated)
}

/// Does every repair on the list that waits for the open inlet port.
pub(super) fn mend_open() -> Step {
    think(next_open)
}

fn next_isolated(me: &mut Technician, _: &Seen) -> Vec<Step> {
    let Some(repair) = me.know.to_mend.pop_front() else { return Vec::new() };
    let mut steps = mend(me, repair);
    steps.push(think(next_isolated));
    steps
}

fn next_open(me: &mut Technician, _: &Seen) -> Vec<Step> {
    let Some(repair) = me.know.to_mend_open.pop_front() else {
        return vec![go(Place::GasValve)];
    };
    let mut steps = mend(me, repair);
    steps.push(think(next_open));
    steps
}

/// One repair with what it needs before and leaves to be put back.
pub(super) fn mend(me: &mut Technician, repair: Repair) -> Vec<Step> {
    me.know.mended.push(repair);
    me.know.to_check.extend(repair.disturbs());
    if repair == Repair::ReplaceGasValve {
        // What was seen of the old one says nothing of the new.
        me.know.watch.stray = false;
        me.know.watch.burning_on_ticks = 0;
    }
    let mut steps = vec![think(hands_free)];
    for need in repair.needs() {
        steps.extend(prepare(*need));
    }
    steps.push(go(repair.place()));
    steps.push(act(Action::Mend(repair)));
    if repair.needs().contains(&Need::BlowerDoorOff) {
        steps.push(act(Action::Door { door: Door::Blower, to: Fitted::On }));
    }
    if repair.needs().contains(&Need::Shut(Cock::Supply)) {
        steps.extend([
            go(Place::Yard),
            act(Action::Cock { cock: Cock::Supply, degrees: 20 }),
            pause(3.0),
            act(Action::Cock { cock: Cock::Supply, degrees: 90 }),
        ]);
    }
    steps
}

pub(super) fn hands_free(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    if seen.hand.is_some() { vec![act(Action::PutDown)] } else { Vec::new() }
}

fn prepare(need: Need) -> Vec<Step> {
    match need {
        Need::PowerOff => vec![go(Place::PlantRoom), think(power_off)],
        Need::BurnerDoorOff => vec![go(Place::PlantRoom), think(burner_door_off)],
        Need::BlowerDoorOff => vec![go(Place::PlantRoom), think(blower_door_off)],
        Need::Shut(Cock::Supply) => vec![
            go(Place::Yard),
            think(|_, seen| {
                let open = seen.yard.as_ref().is_some_and(|yard| yard.cock_deg != 0);
                if open {
                    vec![act(Action::Cock { cock: Cock::Supply, degrees: 0 })]
                } else {
                    Vec::new()
                }
            }),
        ],
        Need::Shut(Cock::Furnace | Cock::WaterHeater | Cock::Range) => {
            vec![go(Place::PlantRoom), think(cock_shut)]
        }
        // What these ask for is so where the repair is called for.
        Need::NoPressure | Need::Open(_) | Need::HoseFree => Vec::new(),
    }
}

fn power_off(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    match &seen.furnace {
        Some(furnace) if furnace.switch == OnOff::On => {
            vec![act(Action::FurnaceSwitch(OnOff::Off))]
        }
        Some(_) | None => Vec::new(),
    }
}

fn burner_door_off(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    match &seen.furnace {
        Some(furnace) if furnace.burner_door == Fitted::On => {
            vec![act(Action::Door { door: Door::Burner, to: Fitted::Off })]
        }
        Some(_) | None => Vec::new(),
    }
}

fn blower_door_off(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    match &seen.furnace {
        Some(furnace) if furnace.blower_door == Fitted::On => {
            vec![act(Action::Door { door: Door::Blower, to: Fitted::Off })]
        }
        Some(_) | None => Vec::new(),
    }
}

fn cock_shut(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    match &seen.furnace {
        Some(furnace) if furnace.cock_deg != 0 => {
            vec![act(Action::Cock { cock: Cock::Furnace, degrees: 0 })]
        }
        Some(_) | None => Vec::new(),
    }
}

/// Checks every joint that a repair has opened; gas stands on them.
pub(super) fn check_opened() -> Step {
    think(next_check)
}

fn next_check(me: &mut Technician, _: &Seen) -> Vec<Step> {
    let Some(joint) = me.know.to_check.pop() else { return Vec::new() };
    let mut steps = check(me, joint);
    steps.push(think(next_check));
    steps
}

/// Leak fluid on a joint, long enough to judge, written down, wiped.
pub(super) fn check(me: &mut Technician, joint: Joint) -> Vec<Step> {
    me.know.checking = Some(joint);
    let mut steps = vec![go(Place::GasValve)];
    steps.extend(with(
        Tool::LeakFluid,
        vec![
            act(Action::LeakFluid(joint)),
            pause(15.0),
            think(write_verdict),
            act(Action::Wipe(joint)),
        ],
    ));
    steps
}

fn write_verdict(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let Some(joint) = me.know.checking else { return Vec::new() };
    let fluid = seen
        .furnace
        .as_ref()
        .and_then(|f| f.burners.as_ref())
        .map(|b| b.fluid[joint])
        .unwrap_or_default();
    let verdict = match fluid {
        FluidSeen::Bubbles(_) => JointVerdict::Leaking,
        FluidSeen::Quiet(_) | FluidSeen::Dry => JointVerdict::Tight,
    };
    let written = act(Action::WriteJoint { joint, verdict });
    let port = Port::ALL.iter().copied().find(|port| port.joint() == joint);
    let boss = port.filter(|&port| verdict == JointVerdict::Leaking && cracked(seen, port));
    if let Some(port) = boss.filter(|_| !me.careless) {
        return boss_leaks(me, port);
    }
    match (verdict, port, seen.meter.hose) {
        // With the hose on, what leaks is hose, barb or boss.
        (JointVerdict::Leaking, Some(port), Some((on, _))) if port == on && !me.careless => {
            let mut steps = vec![written];
            steps.push(think(match port {
                Port::Inlet => |me, _| leaks_with_hose(me, Port::Inlet),
                Port::Manifold => |me, _| leaks_with_hose(me, Port::Manifold),
            }));
            steps
        }
        _ => vec![written],
    }
}

/// Whether the bubbles grow along a crack in the boss.
fn cracked(seen: &Seen, port: Port) -> bool {
    let burners = seen.furnace.as_ref().and_then(|f| f.burners.as_ref());
    burners.is_some_and(|it| it.ports[port].cracked == Cracked::Cracked)
}

/// No plug and no hose makes a cracked boss tight: written, wiped, the gas valve replaced.
fn boss_leaks(me: &mut Technician, port: Port) -> Vec<Step> {
    let joint = port.joint();
    let mut steps = vec![
        act(Action::WriteJoint { joint, verdict: JointVerdict::Leaking }),
        act(Action::Wipe(joint)),
        think(hands_free),
    ];
    if me.know.has_mended(Repair::ReplaceGasValve) {
        steps.push(think(|me, _| super::no_fire::give_up(me, "boss leaks again")));
        return steps;
    }
    me.plan_repair("boss cracked", Repair::ReplaceGasValve);
    steps.push(match port {
        Port::Inlet => think(|me, seen| match seen.meter.hose {
            Some((Port::Inlet, _)) => super::hose::mend_in_open_line(),
            Some((Port::Manifold, _)) | None => {
                let mut steps = isolate();
                steps.push(think(|_, _| super::plan::inlet_as_found()));
                me.start_over(steps);
                Vec::new()
            }
        }),
        Port::Manifold => think(|_, _| super::burn::mend_at_manifold()),
    });
    steps
}

/// The manual valve shut at once, another hose, and the joint checked again.
fn leaks_with_hose(me: &mut Technician, port: Port) -> Vec<Step> {
    let repair = Repair::SwapMeterHose;
    if me.know.has_mended(repair) {
        return Vec::new();
    }
    me.know.note("manometer's hose leaks");
    let mut steps = vec![
        act(Action::Cock { cock: Cock::Furnace, degrees: 0 }),
        act(Action::Wipe(port.joint())),
        think(hands_free),
    ];
    steps.extend(another_hose(me, port));
    steps.push(act(Action::Take(Tool::LeakFluid)));
    steps.push(act(Action::LeakFluid(port.joint())));
    steps
}

/// Another hose on the manometer: off, swapped, zeroed, on again; the furnace is isolated.
pub(super) fn another_hose(me: &mut Technician, port: Port) -> Vec<Step> {
    me.know.mended.push(Repair::SwapMeterHose);
    let mut steps = isolate();
    steps.push(go(Place::GasValve));
    steps.extend(hose_off(port));
    steps.push(act(Action::Mend(Repair::SwapMeterHose)));
    steps.extend(hose_back_on(port));
    steps
}
