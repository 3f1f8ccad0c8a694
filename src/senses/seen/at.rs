//! What is seen at one part, wherever it stands; nothing where it is out of sight.

use super::{BurnersSeen, FluidSeen, Seen};
use crate::parts::{Fitted, HandValve, Joint, Port, PortFill, Screw};
use crate::physics::valve::HandleAngle;
use crate::units::TICK_S;

impl Seen {
    /// Time of day, in hours after midnight: by it the sky is light or dark.
    #[must_use]
    pub fn hour(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "ticks of a job stay far below 2^52")]
        let since_s = self.tick as f64 * TICK_S;
        (self.scene.begins.seconds() + since_s) / 3600.0
    }

    /// What is behind the burner door, while it is off.
    fn burners(&self) -> Option<&BurnersSeen> {
        self.furnace.as_ref()?.burners.as_ref()
    }

    /// The angle of a hand valve's handle.
    #[must_use]
    pub fn handle(&self, hand_valve: HandValve) -> Option<HandleAngle> {
        Some(match hand_valve {
            HandValve::Furnace => self.furnace.as_ref()?.manual_valve,
            HandValve::WaterHeater => self.furnace.as_ref()?.water_heater.handle,
            HandValve::Range => self.hall.as_ref()?.range.handle,
            HandValve::Supply => self.yard.as_ref()?.supply_valve,
        })
    }

    /// What is in a port.
    #[must_use]
    pub fn fill(&self, port: Port) -> Option<PortFill> {
        Some(self.burners()?.ports[port].fill)
    }

    /// Whether the cap of a screw is on.
    #[must_use]
    pub fn cap(&self, screw: Screw) -> Option<Fitted> {
        match screw.level() {
            Some(level) => Some(self.burners()?.caps[level]),
            None => Some(self.yard.as_ref()?.cap),
        }
    }

    /// What the leak fluid on a joint shows.
    #[must_use]
    pub fn fluid(&self, joint: Joint) -> Option<FluidSeen> {
        match joint.is_in_yard() {
            true => Some(self.yard.as_ref()?.fluid[joint]),
            false => Some(self.burners()?.fluid[joint]),
        }
    }
}
