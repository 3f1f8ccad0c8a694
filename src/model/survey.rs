//! Everything that is true at a tick, read off the model.

use super::inside::{ControlInside, Inside};
use super::state::Model;
use super::truth::{GasInAir, OtherApplianceTruth, Truth};
use crate::parts::{HandValve, OtherAppliance, Port};

impl Model {
    /// Everything that is true now.
    pub(crate) fn truth(&self) -> Truth {
        let things = &self.things;
        let [vestibule, floor, breathing] = self.room.fractions();
        Truth {
            tick: self.tick,
            supply_pa: self.gas.supply_pa(),
            tee_pa: self.gas.tee_pa(),
            inlet_pa: self.gas.pressure_pa(Port::Inlet),
            manifold_pa: self.gas.pressure_pa(Port::Manifold),
            box_pa: self.gas.box_pa(),
            hose_pa: self.gas.hose_pa(),
            meter_error_pa: self.meter.error_pa(),
            set_pa: self.gas.springs().set_pa(),
            supply_set_pa: self.gas.supply_set_pa(),
            screw_turns: self.gas.springs().turns(),
            bottomed: self.gas.springs().bottomed(),
            burner_flow_m3_s: self.gas.burner_flow(),
            input_w: self.furnace.input_w(),
            others_flow_m3_s: OtherAppliance::ALL.iter().map(|&n| self.gas.appliance_flow(n)).sum(),
            leak_m3_s: self.gas.leaks(),
            firing: self.firing(),
            control: self.furnace.control_state(),
            gas_fraction: GasInAir { vestibule, floor, breathing },
            co_air_free_ppm: self.furnace.co_air_free_ppm(),
            flame_ua: self.furnace.flame_ua(),
            excess_air: self.furnace.excess_air(),
            rise_k: self.furnace.rise_k(),
            draft_pa: self.furnace.draft_pa(),
            vented_m3_s: self.gas.vented(),
            manual_valve: things.handles[HandValve::Furnace],
            valve_switch: things.valve_switch,
            furnace_switch: things.furnace_switch,
            supply_valve: things.handles[HandValve::Supply],
            other_appliances: things.other_appliances.map(|appliance, switch| {
                OtherApplianceTruth {
                    switch,
                    handle: things.handles[appliance.hand_valve()],
                    gone_out: self.guard_dropped(appliance),
                }
            }),
            windows: things.windows,
            low_side: self.low_side,
            caps: things.caps,
            ports: things.ports.map(|_, port| port.truth()),
            doors: things.doors,
            setpoint_half_f: things.setpoint_half_f,
            heating: things.heating,
            stage_jumper: things.stage_jumper,
            tag: things.tag,
            jumpers: self.setup.condition.control.jumpers,
            connector_leak_m3_s: self.gas.connector_leak().unwrap_or(0.0),
        }
    }

    /// What the cutaway shows beside [`Self::truth`].
    pub(crate) fn inside(&self) -> Inside {
        let control = self.furnace.control();
        Inside {
            upstream_pa: self.gas.upstream_pa(),
            supply_flow_m3_s: self.gas.supply_flow(),
            supply: self.gas.supply_inside(),
            valve: self.gas.valve_inside(),
            springs: self.gas.springs_inside(),
            seats_open: self.gas.seats_open(),
            coils: self.furnace.coils(),
            lower_limit: self.room.lower_limit(),
            control: ControlInside {
                felt: self.furnace.felt(&self.furnace_in(), &self.setup),
                in_state_s: control.in_state_s(),
                gas_s: control.gas_s(),
                tries: control.tries(),
                timings: *control.timings(),
            },
        }
    }
}
