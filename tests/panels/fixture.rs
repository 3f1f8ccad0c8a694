//! A trainee's view made by hand, and a window to show it in.

use egui::{Rect, Ui, pos2, vec2};
use egui_kittest::Harness;
use enum_map::EnumMap;
use quarterturn::appliance::ignition::ControlStatus;
use quarterturn::model::inside::Inside;
use quarterturn::model::truth::Truth;
use quarterturn::panels::debrief::{
    CauseView, DebriefView, EssentialView, FindingView, SheetRow, TickView, TraceView, Verdict,
    Weight,
};
use quarterturn::panels::settings::Settings;
use quarterturn::panels::view::{
    Behind, Card, Help, Job, JobChoice, Opening as OpeningPage, Pace, Page, PartBox, Running,
    SecondChance, Tried, Unfinished, View,
};
use quarterturn::panels::{Command, Layout, Shell};
use quarterturn::parts::{
    Fitted, Level, Levels, LowSide, OnOff, Opening, Place, PortFill, Scene, Subject, job_order,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::competency;
use quarterturn::scenario::Step;
use quarterturn::senses::seen::{
    BurnersSeen, Burning, Condition, Cracked, Display, FlameSeen, FurnaceSeen, GaugeSeen, HallSeen,
    Heard, MeterInView, MeterSeen, Note, Observation, OtherApplianceSeen, PortSeen, Seen,
    SheetSeen, Smell, Sound, YardSeen,
};
use quarterturn::setup::SupplyRight;
use quarterturn::units::PressureUnit;
use std::sync::Arc;

/// The manometer in `seen`, to be changed.
pub fn meter(seen: &mut Seen) -> &mut MeterSeen {
    let MeterInView::InSight(meter) = &mut seen.meter else { panic!("out of sight") };
    meter
}

/// A sound furnace, everything as found, seen from `place`.
pub fn seen(place: Place) -> Seen {
    let at_furnace = matches!(place, Place::PlantRoom | Place::GasValve);
    Seen {
        scene: Scene::default(),
        tick: 0,
        place,
        hand: None,
        levels: Levels::two((), ()).list(),
        outside_f: -7,
        altitude_ft: 300,
        meter: MeterInView::InSight(MeterSeen {
            display: Display::Dark,
            unit: PressureUnit::InWc,
            gauge: GaugeSeen::Digital,
            hose: None,
            low_side: LowSide::Air,
            hose_look: Default::default(),
        }),
        measured: None,
        clipped: Fitted::Off,
        sounds: vec![Sound::Inducer],
        heard: Heard { inducer: 1.0, ..Heard::default() },
        smell: Smell::None,
        sniffed: None,
        detector: None,
        yard: (place == Place::Yard).then_some(YardSeen {
            fluid: EnumMap::default(),
            supply_valve: HandleAngle::OPEN,
            cap: Fitted::On,
            screw_eighths: None,
            tank_percent: Some(60.0),
            dial_turns: None,
            frost: 0.0,
        }),
        furnace: at_furnace.then(furnace),
        hall: (place == Place::Hall).then_some(HallSeen {
            room_half_f: 134,
            setpoint_half_f: 140,
            mode: OnOff::On,
            call: Some(Level::High),
            co_ppm: 0.0,
            window: Opening::Closed,
            range: OtherApplianceSeen { handle: HandleAngle::OPEN, burning: Burning::Off },
            registers_closed: 0.0,
        }),
        sheet: Arc::new(SheetSeen {
            notes: vec![Note {
                subject: Subject::DripLeg,
                tick: 0,
                finding: Observation::Condition(Condition::Good),
            }],
            ..SheetSeen::default()
        }),
        over: None,
    }
}

fn furnace() -> FurnaceSeen {
    FurnaceSeen {
        burner_door: Fitted::On,
        blower_door: Fitted::On,
        switch: OnOff::On,
        manual_valve: HandleAngle::OPEN,
        water_heater: OtherApplianceSeen { handle: HandleAngle::OPEN, burning: Burning::Burning },
        window: Opening::Closed,
        status: ControlStatus::NoCall,
        stage_jumper: Fitted::Off,
        conversion_label: Fitted::On,
        tag: Fitted::Off,
        inducer: 0.0,
        blower: 0.0,
        burners: None,
    }
}

/// What is seen behind the burner door, once it is off.
pub fn burners(fill: PortFill) -> BurnersSeen {
    let port = PortSeen { fill, cracked: Cracked::Sound };
    BurnersSeen {
        glow: 0.0,
        flames: [FlameSeen::default(); 4],
        low_gas_switch: Fitted::On,
        valve_switch: OnOff::On,
        wires: Default::default(),
        caps: Levels::two(Fitted::On, Fitted::On),
        screw_eighths: Levels::two(None, None),
        ports: EnumMap::from_fn(|_| port),
        fluid: EnumMap::default(),
        signs: Default::default(),
    }
}

/// At the gas valve with the burner door off.
pub fn seen_open(fill: PortFill) -> Seen {
    let mut seen = seen(Place::GasValve);
    let furnace = seen.furnace.as_mut().unwrap();
    furnace.burner_door = Fitted::Off;
    furnace.burners = Some(burners(fill));
    seen
}

/// Which page a window shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    Opening,
    Job,
    Debrief,
}

/// A window with everything that the shell of an engine would keep.
pub struct App {
    pub shell: Shell,
    pub seen: Seen,
    pub settings: Settings,
    pub which: Which,
    pub help: Help,
    pub refusal: Option<&'static str>,
    pub running: Running,
    pub parts: Vec<PartBox>,
    pub second_chance: SecondChance,
    pub commands: Vec<Command>,
    pub layout: Option<Layout>,
    pub debrief: DebriefView,
    pub hints: Vec<String>,
    pub captions: Vec<String>,
    pub behind: Option<(Truth, Inside)>,
}

impl App {
    pub fn new(which: Which, seen: Seen) -> Self {
        Self {
            shell: Shell::default(),
            seen,
            settings: Settings::default(),
            which,
            help: Help::Solo,
            refusal: None,
            running: Running::Running,
            parts: Vec::new(),
            second_chance: SecondChance::None,
            commands: Vec::new(),
            layout: None,
            debrief: debrief(),
            hints: Vec::new(),
            captions: vec!["valve clicks".to_owned()],
            behind: None,
        }
    }

    pub fn ui(&mut self, ui: &mut Ui) {
        let jobs = jobs();
        let unfinished = [Unfinished {
            id: "attempt-1".into(),
            title: "No heat on cold mornings".into(),
            text: "12 minutes in".into(),
        }];
        let opening = OpeningPage { jobs: &jobs, unfinished: &unfinished, seed: 41, notice: None };
        let job = Job {
            seen: &self.seen,
            card: Card {
                title: "No heat on cold mornings",
                text: "Check inlet and manifold pressures on both stages.",
                supply_owner: "Northfield Propane",
                required: &[],
                supply: SupplyRight::OwnerOnly,
                hold_s: 60.0,
                settle_s: 20.0,
                hints: &self.hints,
                hints_left: 2,
            },
            help: self.help,
            seed: 41,
            pace: Pace { running: self.running, speed: 1 },
            clock_s: 27_730.0,
            parts: &self.parts,
            refusal: self.refusal,
            captions: &self.captions,
            behind: self.behind.as_ref().map(|(truth, inside)| Behind { truth, inside }),
            second_chance: self.second_chance,
        };
        let page = match self.which {
            Which::Opening => Page::Opening(&opening),
            Which::Job => Page::Job(&job),
            Which::Debrief => Page::Debrief(&self.debrief),
        };
        let view = View { settings: &self.settings, page };
        self.layout = Some(self.shell.ui(ui, &view, &mut self.commands));
        if let Some(layout) = self.layout.clone().filter(|layout| layout.scene.is_positive()) {
            self.parts = boxes(self.seen.place, layout.scene);
        }
    }
}

/// A window of this size showing `app`.
pub fn window(app: App, width: f32, height: f32) -> Harness<'static, App> {
    Harness::builder()
        .with_size(vec2(width, height))
        .with_max_steps(20)
        .build_ui_state(|ui, app: &mut App| app.ui(ui), app)
}

fn jobs() -> [JobChoice; 2] {
    let job = |id: &str, title: &str, fuel: &str| JobChoice {
        id: id.into(),
        title: title.into(),
        text: "Measure, find out why, set it right or call.".into(),
        fuel: fuel.into(),
        step: if id == "cold" { Step::Read } else { Step::Judge },
        aim: "Tell a supply that gives too little from a stage that is set wrong.".into(),
        competencies: competency::find("C07").into_iter().collect(),
        standing: if id == "cold" { Tried::Never } else { Tried::Passed(3) },
    };
    [job("cold", "No heat on cold mornings", "propane"), job("new", "A new furnace", "natural gas")]
}

/// Boxes for every part of a place, in rows, the cabinet around them.
pub fn boxes(place: Place, scene: Rect) -> Vec<PartBox> {
    let mut boxes = vec![PartBox { id: "furnace".into(), rect: scene.shrink(4.0), pivot: None }];
    let listed = job_order(place).iter().chain(AT_HAND);
    for (i, part) in listed.filter(|&&part| part != "furnace").enumerate() {
        let (row, column) = (i / 8, i % 8);
        #[expect(clippy::cast_precision_loss, reason = "small numbers")]
        let at =
            scene.min + vec2(0.03 + 0.12 * column as f32, 0.06 + 0.18 * row as f32) * scene.size();
        // Some parts are drawn smaller than a finger.
        let side = if i % 3 == 0 { 9.0 } else { 0.06 * scene.width() };
        let rect = Rect::from_min_size(at, vec2(side, side));
        boxes.push(PartBox { id: (*part).into(), rect, pivot: None });
    }
    let low = scene.max - vec2(0.25, 0.2) * scene.size();
    let display = Rect::from_min_max(low, pos2(scene.right() - 10.0, scene.bottom() - 10.0));
    for id in ["meter.display", "thermostat.display", "meter-index.display", "backdrop"] {
        boxes.push(PartBox { id: id.into(), rect: display, pivot: None });
    }
    boxes
}

const AT_HAND: &[&str] = &[
    "hex-key",
    "adapter",
    "hose",
    "slotted-driver",
    "meter-power",
    "meter-zero",
    "meter-unit",
    "meter",
];

/// A debrief with something of everything.
pub fn debrief() -> DebriefView {
    let trace = |name: &str, base: f64| TraceView {
        name: name.into(),
        points: (0..200).map(|i| (f64::from(i) * 3.0, base + f64::from(i % 7))).collect(),
    };
    let essential = |name: &str, verdict| EssentialView {
        name: name.into(),
        verdict,
        why: "Seen at 3:10.".into(),
    };
    DebriefView {
        title: "No heat on cold mornings".into(),
        result: "Handed over in service; one essential missed.".into(),
        points: None,
        essentials: vec![
            essential("Meter true", Verdict::Met),
            essential("Every disturbed joint leak-checked", Verdict::Missed),
            essential("Alarm response", Verdict::NotDue),
        ],
        findings: vec![FindingView {
            rule: "leak-check-manifold".into(),
            title: "Manifold plug not checked under pressure".into(),
            weight: Weight::Serious,
            lost: 0.0,
            limit: None,
            at_s: Some(300.0),
            seen: "Leak fluid on the plug, burners off.".into(),
            truth: "No pressure behind the plug.".into(),
            why: "A leak there shows only while it fires.".into(),
            practise: "Check a manifold plug while the burners run on high.".into(),
        }],
        traces: vec![trace("Inlet", 2900.0), trace("Manifold", 1220.0), trace("Supply", 3100.0)],
        ticks: vec![TickView { at_s: 300.0, text: "brushed leak fluid".into() }],
        in_this_job: Some(vec!["The manual valve was found 10° open of 90°.".into()]),
        note: "The tempting mistake is to turn a screw first.".into(),
        hints: "1 of the 3 hints on this job taken.".into(),
        causes: vec![CauseView {
            head: "Connector kinked: still there, furnace in use".into(),
            is_right: false,
            lines: vec!["You wrote 4.41 in. w.c. for the inlet port, high fire.".into()],
        }],
        house: vec!["The furnace is starved on its full rate.".into()],
        aftermath: vec!["The furnace ran all night.".into()],
        next: "“Behind the new cupboard”, and in it: look along the branch.".into(),
        sheet: vec![SheetRow {
            line: "Inlet port, high fire".into(),
            found: "4.41 in. w.c. (true 4.40 in. w.c.)".into(),
            left: String::new(),
        }],
        sheet_notes: vec!["Handed over: back in service".into()],
        care: vec!["Practice evidence; it confers no qualification.".into()],
    }
}
