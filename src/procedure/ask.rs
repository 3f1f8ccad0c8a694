//! A goal asked for its next step: through its parts, or by itself.

use super::goal::{Goal, Step, at, hand_empty, in_hand};
use super::{Awaited, Memory, air, fire, isolate, joint, measured, meter, piping, port, restore};
use crate::parts::{Door, Fitted, HandValve, Level, OnOff, Opening, OtherAppliance};
use crate::senses::seen::Seen;

impl Goal {
    /// The next step towards it.
    #[must_use]
    pub fn step(self, seen: &Seen, memory: &Memory) -> Step {
        self.toward(seen, memory).1
    }

    /// The part of it that is not met yet, and the next step towards that.
    #[must_use]
    pub fn toward(self, seen: &Seen, memory: &Memory) -> (Goal, Step) {
        let Some(parts) = self.parts(memory) else {
            return (self, self.alone(seen, memory).then(memory, || Step::Met));
        };
        for part in parts {
            let (leaf, step) = part.toward(seen, memory);
            if step != Step::Met {
                return (leaf, step);
            }
        }
        (self, Step::Met)
    }

    /// The goals that make it up, in their order; none where it is one by itself.
    fn parts(self, memory: &Memory) -> Option<Vec<Goal>> {
        Some(match self {
            Self::Isolated => isolate::isolated(memory),
            Self::GasOn => vec![
                Self::Valve(HandValve::Furnace, Opening::Open),
                Self::ValveSwitch(OnOff::On),
                Self::Door(Door::Blower, Fitted::On),
                Self::Power(OnOff::On),
            ],
            Self::Others(to) => {
                vec![
                    Self::Other(OtherAppliance::WaterHeater, to),
                    Self::Other(OtherAppliance::Range, to),
                ]
            }
            Self::Burning(level, means) => fire::burning(level, means),
            Self::Stopped => fire::stopped(memory),
            Self::ClosedUp => Level::ALL
                .into_iter()
                .map(|level| Self::Capped(level.screw()))
                .chain([
                    Self::HandEmpty,
                    Self::Door(Door::Burner, Fitted::On),
                    Self::Door(Door::Blower, Fitted::On),
                    Self::Aired(Opening::Closed),
                ])
                .collect(),
            Self::AsFound => restore::as_found(memory),
            Self::PipingChecked => piping::checked(memory),
            Self::At(_)
            | Self::HandEmpty
            | Self::InHand(_)
            | Self::Looked(_)
            | Self::LookedHere(_)
            | Self::Smelt(_)
            | Self::HeatOff
            | Self::Standing
            | Self::Power(_)
            | Self::Door(..)
            | Self::Valve(..)
            | Self::ValveSwitch(_)
            | Self::Jumper(_)
            | Self::Aired(_)
            | Self::MeterInSight
            | Self::MeterOn
            | Self::MeterWarm
            | Self::MeterReady
            | Self::PlugOut(_)
            | Self::AdapterIn(_)
            | Self::HoseOn(_)
            | Self::HoseOnAsFound(_)
            | Self::HoseOff
            | Self::AdapterOut(_)
            | Self::Closed(_)
            | Self::JointChecked(_)
            | Self::PipingWatched
            | Self::Other(..)
            | Self::Lit(_)
            | Self::Called(..)
            | Self::ThermostatAsFound
            | Self::Capped(_)
            | Self::Uncapped(_)
            | Self::Told(_)
            | Self::Tagged
            | Self::Measured(..)
            | Self::FindingWritten => return None,
        })
    }

    /// The step of a goal that is one by itself.
    fn alone(self, seen: &Seen, memory: &Memory) -> Step {
        match self {
            Self::At(place) => at(seen, &[place]),
            Self::HandEmpty => hand_empty(seen),
            Self::InHand(tool) => in_hand(seen, tool),
            Self::Looked(subject) => air::looked(seen, memory, subject),
            Self::LookedHere(subject) => air::looked_here(seen, memory, subject),
            Self::Smelt(height) => air::smelt(memory, height),
            Self::HeatOff => isolate::heat_off(seen, memory),
            Self::Standing => isolate::standing(seen, memory),
            Self::Power(to) => isolate::power(seen, memory, to),
            Self::Door(door, to) => isolate::door(seen, memory, door, to),
            Self::Valve(hand_valve, to) => isolate::valve(seen, memory, hand_valve, to),
            Self::ValveSwitch(to) => isolate::valve_switch(seen, memory, to),
            Self::Jumper(to) => isolate::jumper(seen, memory, to),
            Self::Aired(to) => air::window(seen, memory, to),
            Self::MeterInSight => meter::in_sight(seen),
            Self::MeterOn => meter::on(seen, memory),
            Self::MeterWarm => meter::warm(seen, memory),
            Self::MeterReady => meter::ready(seen, memory),
            Self::PlugOut(port) => port::plug_out(seen, memory, port),
            Self::AdapterIn(port) => port::adapter_in(seen, memory, port),
            Self::HoseOn(port) => port::ready_on(seen, memory, port),
            Self::HoseOnAsFound(port) => port::hose_on(seen, memory, port, || Step::Met),
            Self::HoseOff => port::hose_off(seen, memory),
            Self::AdapterOut(port) => port::adapter_out(seen, memory, port),
            Self::Closed(port) => port::closed(seen, memory, port),
            Self::JointChecked(joint) => joint::checked(seen, memory, joint),
            Self::PipingWatched => piping::watched(seen, memory),
            Self::Other(which, to) => fire::other(seen, memory, which, to),
            Self::Called(level, means) => fire::called(seen, memory, level, means),
            Self::Lit(level) => fire::lit(seen, level),
            Self::ThermostatAsFound => restore::thermostat(seen, memory),
            Self::Capped(screw) => restore::capped(seen, memory, screw),
            Self::Uncapped(screw) => restore::uncapped(seen, memory, screw),
            Self::Told(topic) => restore::told(seen, memory, topic),
            Self::Tagged => restore::tagged(seen, memory),
            Self::Measured(spot, level) => measured::written(seen, memory, spot, level),
            Self::FindingWritten if seen.sheet.findings.is_empty() => Step::Wait(Awaited::Finding),
            Self::FindingWritten => Step::Met,
            // What has parts is asked through them.
            Self::Isolated
            | Self::GasOn
            | Self::Others(_)
            | Self::Burning(..)
            | Self::Stopped
            | Self::ClosedUp
            | Self::PipingChecked
            | Self::AsFound => Step::Met,
        }
    }
}
