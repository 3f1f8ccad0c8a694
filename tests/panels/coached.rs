//! The coach leads from arrival to the first reading, from what is seen alone.

use egui_kittest::kittest::Queryable;
use quarterturn::appliance::plate::{Fuel, GasFigures, Target};
use quarterturn::bench::action::{Action, Fitted, OnOff, Push};
use quarterturn::bench::part::{Cock, Place, Port, Subject, Tool};
use quarterturn::bench::seen::{
    Call, Display, Finding, FlameSeen, Note, Over, PortFill, Seen, Smell, Sound,
};
use quarterturn::panels::Wish;
use quarterturn::panels::coach::coach;
use quarterturn::panels::view::Help;
use quarterturn::units::{PressureUnit, Shown};

use crate::fixture::{App, Which, burners, seen, window};

/// A house that does what it is told, just enough of it to follow the coach. The real model stands
/// behind the same seam; here only what is *seen* matters.
struct PaperHouse {
    now: Seen,
    hidden: Option<quarterturn::bench::seen::FurnaceSeen>,
    hall: quarterturn::bench::seen::HallSeen,
}

impl PaperHouse {
    fn new() -> Self {
        let mut inside = seen(Place::PlantRoom);
        let furnace = inside.furnace.take();
        Self { now: seen(Place::Yard), hidden: furnace, hall: seen(Place::Hall).hall.unwrap() }
    }

    fn furnace(&mut self) -> &mut quarterturn::bench::seen::FurnaceSeen {
        self.now.furnace.as_mut().expect("not at the furnace")
    }

    fn go(&mut self, to: Place) {
        if self.now.furnace.is_some() {
            self.hidden = self.now.furnace.take();
        }
        self.now.hall = None;
        self.now.yard = None;
        self.now.place = to;
        match to {
            Place::PlantRoom | Place::GasValve => self.now.furnace = self.hidden.clone(),
            Place::Hall => self.now.hall = Some(self.hall.clone()),
            Place::Yard => self.now.yard = seen(Place::Yard).yard,
            Place::Away => {}
        }
    }

    fn port(&mut self) -> &mut PortFill {
        &mut self.furnace().burners.as_mut().unwrap().ports[1].fill
    }

    fn look(&mut self, subject: Subject) {
        let target = |pa| Target { pa, tolerance_pa: 75.0 };
        let figures = GasFigures {
            fuel: Fuel::Propane,
            inlet_min_pa: 2740.0,
            inlet_max_pa: 3487.0,
            low: target(1220.0),
            high: target(2491.0),
            orifice_m: 1.4e-3,
            orifice_stamp: "54".into(),
            decimals: 1,
        };
        let note = Note { subject, tick: 0, text: "noted".into(), finding: Finding::Figures(figures) };
        self.now.sheet.notes.push(note);
    }

    fn apply(&mut self, action: &Action) {
        use quarterturn::bench::action::PlugStep;
        match action {
            Action::Go(place) => self.go(*place),
            Action::Sniff(height) => self.now.sniffed = Some((*height, Smell::None)),
            Action::Look(subject) => self.look(*subject),
            Action::FurnaceSwitch(to) => self.furnace().switch = *to,
            Action::Cock { cock: Cock::Furnace, degrees } => self.furnace().cock_deg = *degrees,
            Action::Door { to, .. } => {
                let furnace = self.furnace();
                furnace.burner_door = *to;
                furnace.burners = (*to == Fitted::Off).then(|| burners(PortFill::Snug));
            }
            Action::ValveSwitch(to) => {
                self.furnace().burners.as_mut().unwrap().valve_switch = *to;
            }
            Action::MeterPower(OnOff::On) => self.shows(0.07),
            Action::MeterZero => self.shows(0.0),
            Action::Take(tool) => self.now.hand = Some(*tool),
            Action::PutDown => self.now.hand = None,
            Action::Plug { port: Port::Manifold, step } => {
                assert_eq!(self.now.hand, Some(Tool::HexKey));
                *self.port() = match step {
                    PlugStep::BreakLoose => PortFill::HandTight,
                    PlugStep::SpinOut => PortFill::Open,
                    other => panic!("the coach asked for {other:?}"),
                };
            }
            Action::Adapter { port: Port::Manifold, to: Fitted::On } => {
                assert_eq!(self.now.hand.take(), Some(Tool::Adapter));
                *self.port() = PortFill::BareAdapter;
            }
            Action::HoseOn { port: Port::Manifold, push } => {
                assert_eq!(self.now.hand.take(), Some(Tool::Hose));
                assert_eq!(self.now.meter.display, self.number(0.0), "hose on before zero");
                *self.port() = PortFill::Hose(*push);
                self.now.meter.hose = Some((Port::Manifold, *push));
            }
            Action::Setpoint(to) => {
                self.hall.setpoint_half_f = *to;
                let above = to - self.hall.room_half_f;
                self.hall.call = if above > 4 { Call::Second } else { Call::First };
                self.now.hall = Some(self.hall.clone());
            }
            other => panic!("the coach asked for {other:?}"),
        }
    }

    fn number(&self, value: f64) -> Display {
        Display::Number(Shown { value, unit: PressureUnit::InWc })
    }

    fn shows(&mut self, value: f64) {
        self.now.meter.display = self.number(value);
    }

    /// Lets it light, as the coach asks to wait for.
    fn wait(&mut self) {
        let furnace = self.furnace();
        let lit = FlameSeen { height: 0.7, yellow: 0.0 };
        let burners = furnace.burners.as_mut().unwrap();
        burners.flames = [lit; 4];
        self.now.sounds = vec![Sound::Inducer, Sound::BurnersLow];
        self.shows(4.87);
    }
}

/// From arrival to the reading in fewer than 30 steps, and never gas to an open port: power off
/// and valve shut before the port opens, hose on before the valve opens again.
#[test]
fn the_coach_leads_to_the_first_reading() {
    let mut house = PaperHouse::new();
    let mut steps = Vec::new();
    loop {
        let hint = coach(&house.now).expect("a next step");
        assert!(steps.len() < 30, "too long a way: {steps:#?}");
        let opening = |seen: &Seen| {
            seen.furnace.as_ref().is_some_and(|furnace| {
                let open = furnace.burners.as_ref().is_some_and(|burners| {
                    matches!(burners.ports[1].fill, PortFill::Open | PortFill::BareAdapter)
                });
                open && (furnace.cock_deg > 0 || furnace.switch == OnOff::On)
            })
        };
        match &hint.action {
            Some(action) => house.apply(action),
            None if house.now.sounds.contains(&Sound::BurnersLow) => {
                assert!(hint.text.contains("Manifold, low, found"), "{}", hint.text);
                break;
            }
            None => house.wait(),
        }
        if let (Place::GasValve, Some(furnace)) = (house.now.place, house.now.furnace.as_mut()) {
            let calls = house.hall.call == Call::First;
            let on = furnace.switch == OnOff::On && house.now.meter.hose.is_some();
            furnace.inducer = if calls && on { 0.6 } else { 0.0 };
        }
        assert!(!opening(&house.now), "gas or power at an open port after {:?}", hint.text);
        steps.push(hint.text);
    }
    assert_eq!(house.now.meter.hose, Some((Port::Manifold, Push::Fully)));
    assert!(house.now.sheet.note(Subject::Plate).is_some());
}

/// Danger comes before everything; an ended job has no next step.
#[test]
fn danger_comes_first() {
    let mut strong = seen(Place::PlantRoom);
    strong.smell = Smell::Strong;
    let hint = coach(&strong).unwrap();
    assert_eq!(hint.action, Some(Action::Go(Place::Away)));
    let mut over = seen(Place::PlantRoom);
    over.over = Some(Over::Ignition);
    assert_eq!(coach(&over), None);
}

/// Coached: the line is there from the start, does the step when asked, and can be skipped. Solo:
/// it comes when asked for, once, and says so to the record.
#[test]
fn the_line_is_there_when_it_should_be() {
    let mut app = App::new(Which::Job, seen(Place::PlantRoom));
    app.help = Help::Coached;
    let mut harness = window(app, 1280.0, 720.0);
    harness.get_by_label("Do the next step for me").click();
    harness.run();
    assert!(matches!(harness.state().wishes[0], Wish::Act(Action::Sniff(_))));
    harness.get_by_label("No more hints").click();
    harness.run();
    assert!(harness.query_by_label("No more hints").is_none());

    let mut harness = window(App::new(Which::Job, seen(Place::PlantRoom)), 1280.0, 720.0);
    assert!(harness.query_by_label("No more hints").is_none());
    harness.get_by_label("Give me a hint, F1").click();
    harness.run();
    assert!(harness.query_by_label("No more hints").is_some());
    assert_eq!(harness.state().wishes, [Wish::HintShown]);
}
