//! A hand that does repairs through actions: shut off, let the pressure go, mend, put back.

use quarterturn::bench::Bench;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::hands::refusal::Refusal;
use quarterturn::parts::{
    Door, Fitted, HandValve, Level, OnOff, OtherAppliance, Place, Port, Push, Screw, Tool,
};
use quarterturn::senses::seen::Display;
use quarterturn::units::PA_PER_INWC;

/// Does something; what is so already is no trouble.
#[track_caller]
pub fn act(bench: &mut Bench, action: Action) {
    match bench.apply(&action) {
        Ok(()) | Err(Refusal::AlreadySo) => {}
        Err(why) => panic!("{action:?}: {why:?}"),
    }
}

/// Lets time go by.
pub fn wait(bench: &mut Bench, seconds: u64) {
    for _ in 0..50 * seconds {
        bench.step();
    }
}

fn plug(bench: &mut Bench, port: Port, step: PlugStep) {
    // A plug that stands loose is not broken loose; one that was taken out is not there.
    match bench.apply(&Action::Plug { port, step }) {
        Ok(()) | Err(Refusal::AlreadyLoose | Refusal::NoPlug) => {}
        Err(why) => panic!("{port:?} {step:?}: {why:?}"),
    }
}

/// Opens a port.
pub fn open(bench: &mut Bench, port: Port) {
    act(bench, Action::Go(Place::GasValve));
    act(bench, Action::Take(Tool::HexKey));
    plug(bench, port, PlugStep::BreakLoose);
    plug(bench, port, PlugStep::SpinOut);
    act(bench, Action::PutDown);
}

/// Closes a port with its plug.
pub fn close(bench: &mut Bench, port: Port) {
    act(bench, Action::Go(Place::GasValve));
    act(bench, Action::Take(Tool::HexKey));
    for step in [PlugStep::StartByHand, PlugStep::SpinIn, PlugStep::Tighten(6)] {
        act(bench, Action::Plug { port, step });
    }
    act(bench, Action::PutDown);
}

/// Everything off and shut, the trapped gas let off at the inlet port.
pub fn isolate(bench: &mut Bench) {
    act(bench, Action::Go(Place::Yard));
    act(bench, Action::HandValve { hand_valve: HandValve::Supply, degrees: 0 });
    isolate_furnace(bench);
    // Everything behind the supply shut-off too.
    open(bench, Port::Inlet);
    act(bench, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 });
    wait(bench, 60);
    act(bench, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
    close(bench, Port::Inlet);
}

/// The furnace off, its manual valve shut, the gas behind it let off at the inlet port.
pub fn isolate_furnace(bench: &mut Bench) {
    act(bench, Action::Go(Place::Hall));
    act(bench, Action::ThermostatMode(OnOff::Off));
    wait(bench, 120);
    act(bench, Action::Go(Place::PlantRoom));
    act(bench, Action::FurnaceSwitch(OnOff::Off));
    act(bench, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
    act(bench, Action::Door { door: Door::Burner, to: Fitted::Off });
    act(bench, Action::Door { door: Door::Blower, to: Fitted::Off });
    open(bench, Port::Inlet);
    wait(bench, 10);
    close(bench, Port::Inlet);
}

/// Everything open and on again, but for the thermostat.
pub fn put_back(bench: &mut Bench) {
    act(bench, Action::Go(Place::Yard));
    act(bench, Action::HandValve { hand_valve: HandValve::Supply, degrees: 90 });
    act(bench, Action::Go(Place::PlantRoom));
    act(bench, Action::Door { door: Door::Burner, to: Fitted::On });
    act(bench, Action::Door { door: Door::Blower, to: Fitted::On });
    act(bench, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 });
    act(bench, Action::FurnaceSwitch(OnOff::On));
    wait(bench, 60);
}

/// Does a repair where it is done; a port that must be open is opened and closed again.
#[track_caller]
pub fn mend(bench: &mut Bench, repair: Repair) {
    let port = match repair {
        Repair::CleanInletTap | Repair::DrillInletTap => Some(Port::Inlet),
        Repair::CleanManifoldTap | Repair::DrillManifoldTap => Some(Port::Manifold),
        _ => None,
    };
    if let Some(port) = port {
        open(bench, port);
    }
    act(bench, Action::Go(repair.place()));
    act(bench, Action::Mend(repair));
    if let Some(port) = port {
        close(bench, port);
    }
}

/// Turns a screw until its stage is set to a pressure, to the eighth of a turn above it.
pub fn set(bench: &mut Bench, screw: Screw, pa: f64) {
    let set_pa = |bench: &Bench| match screw.level() {
        Some(level) => bench.truth().set_pa[level],
        None => bench.truth().supply_set_pa,
    };
    let place = if screw == Screw::Supply { Place::Yard } else { Place::GasValve };
    if screw != Screw::Supply {
        act(bench, Action::Go(Place::PlantRoom));
        act(bench, Action::Door { door: Door::Burner, to: Fitted::Off });
    }
    act(bench, Action::Go(place));
    act(bench, Action::Take(Tool::SlottedDriver));
    act(bench, Action::Cap { screw, to: Fitted::Off });
    let up = set_pa(bench) < pa;
    while (set_pa(bench) < pa) == up {
        let eighths = if up { 1 } else { -1 };
        if bench.apply(&Action::Turn { screw, eighths }).is_err() {
            break;
        }
    }
    act(bench, Action::Cap { screw, to: Fitted::On });
    act(bench, Action::PutDown);
}

/// Calls for a stage and waits until it burns and has settled; gives whether it came to it.
pub fn fire(bench: &mut Bench, stage: Option<Level>) -> bool {
    act(bench, Action::Go(Place::Hall));
    let room_half_f = bench.seen().hall.unwrap().room_half_f;
    let above = if stage == Some(Level::High) { 12 } else { 3 };
    act(bench, Action::Setpoint((room_half_f + above).clamp(90, 180)));
    act(bench, Action::ThermostatMode(OnOff::On));
    for _ in 0..440 {
        if bench.truth().firing == stage {
            wait(bench, 60);
            return true;
        }
        wait(bench, 1);
    }
    false
}

/// Turns the other appliances on or off, and stays where the manometer is.
pub fn others(bench: &mut Bench, to: OnOff) {
    act(bench, Action::Go(Place::Hall));
    act(bench, Action::OtherAppliance { appliance: OtherAppliance::Range, to });
    act(bench, Action::Go(Place::PlantRoom));
    act(bench, Action::OtherAppliance { appliance: OtherAppliance::WaterHeater, to });
    wait(bench, 60);
}

/// Turns a screw in, an eighth at a time with a wait after each, until `reads` gives `wanted` in
/// inches of water, or the screw is at its stop.
pub fn turn_until(bench: &mut Bench, screw: Screw, wanted: f64, reads: fn(&Bench) -> f64) {
    if screw != Screw::Supply {
        act(bench, Action::Go(Place::PlantRoom));
        act(bench, Action::Door { door: Door::Burner, to: Fitted::Off });
    }
    let place = if screw == Screw::Supply { Place::Yard } else { Place::GasValve };
    act(bench, Action::Go(place));
    act(bench, Action::Take(Tool::SlottedDriver));
    act(bench, Action::Cap { screw, to: Fitted::Off });
    let up = reads(bench) < wanted;
    while (reads(bench) < wanted) == up {
        let eighths = if up { 1 } else { -1 };
        if bench.apply(&Action::Turn { screw, eighths }).is_err() {
            break;
        }
        wait(bench, 8);
    }
    act(bench, Action::Cap { screw, to: Fitted::On });
    act(bench, Action::PutDown);
    wait(bench, 20);
}

/// Puts the manometer's hose on a port, switched on; it is not zeroed.
pub fn hook_up(bench: &mut Bench, port: Port) {
    act(bench, Action::Go(Place::PlantRoom));
    act(bench, Action::Door { door: Door::Burner, to: Fitted::Off });
    open(bench, port);
    for action in [
        Action::Take(Tool::Adapter),
        Action::Adapter { port, to: Fitted::On },
        Action::Take(Tool::Hose),
        Action::HoseOn { port, push: Push::Fully },
        Action::MeterPower(OnOff::On),
    ] {
        act(bench, action);
    }
}

/// What the manometer shows, in its unit.
pub fn shown(bench: &Bench) -> f64 {
    match bench.seen().display().expect("the manometer is in sight") {
        Display::Number(shown) => shown.value,
        Display::Dark | Display::OverRange => f64::NAN,
    }
}

/// The true manifold pressure, in inches of water.
pub fn manifold_inwc(bench: &Bench) -> f64 {
    bench.truth().manifold_pa / PA_PER_INWC
}

/// Input against the plate's on high.
pub fn input(bench: &Bench) -> f64 {
    bench.truth().input_w / bench.setup().furnace.plate.input.top().si()
}
