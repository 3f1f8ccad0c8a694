//! The furnace put together: control, safety devices, burners, air side; and house and room from a
//! setup.

use crate::appliance::airside::{AirPath, AirSide, Fans};
use crate::appliance::burner::{self, BurnerIn, Burners};
use crate::appliance::draft::Draft;
use crate::appliance::ignition::{Control, ControlState, ControlStatus, Inputs, Outputs, Timings};
use crate::appliance::safety::{LowGasSwitch, Safety};
use crate::parts::{Level, Levels, OnOff};
use crate::physics::combustion::flame::Look;
use crate::physics::room::Room;
use crate::setup::{Coil, Contact, Motor, Setup, Tripped};
use crate::site::house::{House, Thermostat};
use crate::units::P_STD_PA;
use serde::Serialize;

/// Share of the gross input that the exchanger keeps, for sizing the blower (common practice).
const SIZING_EFFICIENCY: f64 = 0.80;
/// Inducer speed from which it carries off whatever gas does not burn.
const CARRIES_OFF: f64 = 0.15;

/// What the furnace gets at a tick.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct FurnaceIn {
    pub powered: bool,
    /// Level that the thermostat or a jumper calls.
    pub call: Option<Level>,
    pub valve_switch: bool,
    pub burner_flow_m3_s: f64,
    pub inlet_pa: f64,
    pub return_air_k: f64,
}

/// Contacts of the safety devices: closed or not.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Contacts {
    pub switches: Levels<bool>,
    pub limit: bool,
    pub rollout: bool,
    pub low_gas: bool,
}

/// Control, safety devices, burners and air side, stepped together.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Furnace {
    control: Control,
    safety: Safety,
    burners: Burners,
    air: AirSide,
    outputs: Outputs,
    /// The level that the seats stand open for; none while they are shut.
    seats: Option<Level>,
    box_full_pa: f64,
    co_ppm: f64,
}

impl Furnace {
    pub(crate) fn new(setup: &Setup) -> Self {
        let furnace = &setup.furnace;
        let plate = &furnace.plate;
        let rated_m3_s = plate.input.map(|_, input| input.si() / setup.gas.heating_value_j_m3);
        let rise_k = 0.5 * (plate.rise.0.si() + plate.rise.1.si());
        let timings = Timings {
            igniter_s: furnace.igniter_warm_up_s,
            auto_next_min: furnace.auto_next_min,
            ..Timings::default()
        };
        let mut made = Self {
            control: Control::new(timings, plate.input.list()),
            safety: Safety::new(plate.input.list(), low_gas(setup)),
            burners: Burners::new(&furnace.orifices_m, rated_m3_s, furnace.igniter_warm_up_s),
            air: AirSide::new(
                SIZING_EFFICIENCY * plate.input.top().si(),
                rise_k,
                setup.house.inside_k,
            ),
            outputs: Outputs { inducer: None, igniter: false, valve: None, blower: None },
            seats: None,
            box_full_pa: furnace.box_suction_pa,
            co_ppm: 0.0,
        };
        made.set_condition(setup);
        made
    }

    /// After a repair: what changed between two setups. A roll-out switch stays as it is.
    pub(crate) fn refit(&mut self, before: &Setup, setup: &Setup) {
        if low_gas(before) != low_gas(setup) {
            self.safety.set_low_gas(low_gas(setup));
        }
        if before.furnace.orifices_m != setup.furnace.orifices_m {
            self.burners.set_orifices(&setup.furnace.orifices_m);
        }
        self.set_condition(setup);
    }

    fn set_condition(&mut self, setup: &Setup) {
        let condition = &setup.condition;
        // Thin air: less draft, less air for the flames and over the exchanger.
        let air_density = setup.ambient_abs_pa / P_STD_PA;
        let draft = Draft {
            intake_blocked: condition.air.intake_blocked,
            vent_blocked: condition.air.vent_blocked,
            trap_leak: condition.air.trap_leak,
            air_density,
        };
        self.safety.set_draft(draft);
        self.safety.set_sensing(condition.sensing);
        self.safety.set_jumpers(condition.control.jumpers);
        if condition.control.rollout == Tripped::Yes {
            self.safety.roll_out();
        }
        let worn = condition.burners;
        self.burners.set_condition(burner::Condition {
            draft,
            rod: 1.0 - worn.rod_dirty,
            ground: 1.0 - worn.ground_poor,
            igniter: 1.0 - worn.igniter_weak,
            late_s: worn.late_s,
        });
        self.air.set_path(AirPath {
            filter_blocked: condition.air.filter_blocked,
            registers_closed: condition.air.registers_closed,
            air_density,
        });
        self.air.set_fans(Fans {
            inducer: match condition.air.inducer {
                Motor::Turns => 1.0,
                Motor::Dead => 0.0,
            },
            blower: 1.0 - condition.air.blower_slow,
        });
    }

    /// What the control feels.
    pub(crate) fn felt(&self, input: &FurnaceIn, setup: &Setup) -> Inputs {
        let Contacts { switches, limit, rollout, low_gas } = self.contacts();
        Inputs {
            powered: input.powered,
            call: match setup.condition.control.second_contact {
                Contact::Works => input.call,
                Contact::Closed => input.call.map(|_| self.top()),
            },
            switches,
            limit,
            rollout,
            low_gas,
            flame_ua: self.burners.flame_ua(),
        }
    }

    /// Safety devices, control and burners go on by `dt_s`.
    pub(crate) fn step_fire(&mut self, dt_s: f64, input: &FurnaceIn, setup: &Setup) {
        let condition = &setup.condition;
        self.safety.feel(self.air.inducer(), self.air.supply_air_k(), input.inlet_pa);
        let felt = self.felt(input, setup);
        self.outputs = self.control.step(dt_s, &felt);
        self.seats = self.outputs.valve.filter(|_| input.valve_switch).map(|level| match condition
            .valve
            .second_coil
        {
            Coil::Works => level,
            Coil::Dead => level.of()[0],
        });
        let burner_in = BurnerIn {
            flow_m3_s: input.burner_flow_m3_s,
            igniter: self.outputs.igniter,
            inducer: self.air.inducer(),
        };
        if condition.burners.exchanger_hole > 0.0 {
            self.burners.set_blown_in(condition.burners.exchanger_hole * self.air.blower());
        }
        self.burners.step(dt_s, &setup.gas, &burner_in);
        if self.burners.rolls_out() {
            self.safety.roll_out();
        }
    }

    /// Fans and heat exchanger go on by `dt_s`.
    pub(crate) fn step_air(&mut self, dt_s: f64, return_air_k: f64, setup: &Setup) {
        let heat_w = self.burners.useful_w(&setup.gas, self.air.flue_k());
        let (inducer, blower) = (self.outputs.inducer, self.outputs.blower);
        self.air.step(dt_s, inducer, blower, heat_w, return_air_k);
        self.co_ppm = self.burners.co_air_free_ppm();
    }

    pub(crate) fn seats(&self) -> Option<Level> {
        self.seats
    }

    pub(crate) fn box_suction_pa(&self) -> f64 {
        self.box_full_pa * self.air.inducer() * self.air.inducer()
    }

    pub(crate) fn control_state(&self) -> ControlState {
        self.control.state()
    }

    /// The control itself, to be read.
    pub(crate) fn control(&self) -> &Control {
        &self.control
    }

    pub(crate) fn firing(&self) -> Option<Level> {
        self.seats.filter(|_| self.burners.any_lit())
    }

    pub(crate) fn reset_rollout(&mut self) -> bool {
        self.safety.reset_rollout()
    }

    /// What the control says while it has power.
    pub(crate) fn status(&self) -> ControlStatus {
        self.control.status()
    }

    /// How each burner's flame looks, as far as the drawing shows burners: height and yellowness.
    pub(crate) fn flames(&self) -> [(f64, f64); 4] {
        self.burners.flames()
    }

    /// How each burner's flame looks; none where it does not burn.
    pub(crate) fn looks(&self) -> impl Iterator<Item = Option<Look>> + '_ {
        self.burners.looks()
    }

    pub(crate) fn glow(&self) -> f64 {
        self.burners.glow()
    }

    pub(crate) fn inducer(&self) -> f64 {
        self.air.inducer()
    }

    pub(crate) fn blower(&self) -> f64 {
        self.air.blower()
    }

    /// Whether the blower stays well below the speed that it is switched to.
    pub(crate) fn blower_labors(&self) -> bool {
        self.air.blower_labors()
    }

    pub(crate) fn heat_to_air_w(&self) -> f64 {
        self.air.to_air_w()
    }

    pub(crate) fn input_w(&self) -> f64 {
        self.burners.input_w()
    }

    /// Flame current, in microamperes.
    pub(crate) fn flame_ua(&self) -> f64 {
        self.burners.flame_ua()
    }

    /// Excess air over all burners; none without a flame.
    pub(crate) fn excess_air(&self) -> Option<f64> {
        self.burners.any_lit().then(|| self.burners.excess_air())
    }

    /// Temperature rise of the house air, in kelvins.
    pub(crate) fn rise_k(&self) -> f64 {
        self.air.rise_k()
    }

    /// Supply air past the exchanger, in kelvins.
    pub(crate) fn supply_air_k(&self) -> f64 {
        self.air.supply_air_k()
    }

    /// Flue gas, in kelvins.
    pub(crate) fn flue_k(&self) -> f64 {
        self.air.flue_k()
    }

    /// What the control drives.
    pub(crate) fn outputs(&self) -> &Outputs {
        &self.outputs
    }

    /// Level that the control gives volts to the gas valve's coils for.
    pub(crate) fn coils(&self) -> Option<Level> {
        self.outputs.valve
    }

    /// The level of the full rate.
    fn top(&self) -> Level {
        self.safety.switches().top_level()
    }

    /// Draft that the pressure switches feel, in pascals.
    pub(crate) fn draft_pa(&self) -> f64 {
        self.safety.felt_pa()
    }

    /// Share of unburned gas that comes back into the room: none while the inducer carries it off.
    pub(crate) fn spills(&self) -> f64 {
        (1.0 - self.air.inducer() / CARRIES_OFF).clamp(0.0, 1.0)
    }

    pub(crate) fn co_air_free_ppm(&self) -> f64 {
        self.co_ppm
    }

    pub(crate) fn ignites(&self) -> bool {
        self.burners.ignites()
    }

    /// Whether the burners have just lit late and hard.
    pub(crate) fn banged(&self) -> bool {
        self.burners.banged()
    }

    /// Which contacts of the safety devices are closed.
    pub(crate) fn contacts(&self) -> Contacts {
        let safety = &self.safety;
        Contacts {
            switches: safety.switches(),
            limit: safety.limit(),
            rollout: safety.rollout(),
            low_gas: safety.low_gas(),
        }
    }

    /// Whether the limit is about to open or close.
    pub(crate) fn limit_moves(&self) -> bool {
        self.safety.limit_opens_at(self.air.supply_air_k()) == self.safety.limit()
    }

    /// How many burners burn.
    pub(crate) fn lit(&self) -> usize {
        self.burners.looks().flatten().count()
    }

    /// Whether the igniter is on.
    pub(crate) fn igniter(&self) -> bool {
        self.outputs.igniter
    }
}

/// The low-gas switch of a setup.
fn low_gas(setup: &Setup) -> LowGasSwitch {
    match setup.condition.control.low_gas {
        Some(off_its_points) if setup.furnace.low_gas_switch => off_its_points,
        Some(_) | None => LowGasSwitch::from(setup.furnace.low_gas_switch),
    }
}

/// The house of a setup.
pub(crate) fn house(setup: &Setup) -> House {
    let house = &setup.house;
    House::new(house.inside_k, house.loss_w_k, house.mass_j_k)
}

/// The plant room of a setup.
pub(crate) fn room(setup: &Setup) -> Room {
    Room::new(&setup.gas, setup.house.plant_room_m3, setup.house.air_changes_h)
}

/// A thermostat that has looked at the room once.
pub(crate) fn thermostat(setup: &Setup) -> Thermostat {
    let mut thermostat = Thermostat::default();
    let setpoint_k = crate::units::k_from_f(f64::from(setup.house.setpoint_half_f) / 2.0);
    if setup.found.thermostat_mode == OnOff::On {
        thermostat.step(setup.house.inside_k, setpoint_k);
    }
    thermostat
}
