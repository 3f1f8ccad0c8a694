//! Tests of the records.

mod damage;
mod forged;
mod kept;
mod killed;
mod model;
mod play_again;
mod round_trip;
mod wild;

use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, HandOver};
use quarterturn::hands::event::Event;
use quarterturn::hands::refusal::Refusal;
use quarterturn::parts::{Door, Fitted, Height, OnOff, Place, Subject, Tool};
use quarterturn::record::{Ended, Header, Help, Note, Recorder, ScenarioText, Sink};
use quarterturn::scenario::builtin::{Builtin, HEALTHY, JOBS};
use quarterturn::technician::drive::Witness;
use quarterturn::technician::{Technician, play};

/// The header of a job.
pub fn header(job: &Builtin, seed: u64) -> Header {
    Header {
        program: "0.0.0-test".into(),
        scenario: ScenarioText::new(job.id, job.text),
        seed,
        learner: Some("learner “7” \\ ü".into()),
        help: Some(Help::Solo),
    }
}

/// The bench of a job.
pub fn bench(job: &Builtin, seed: u64) -> Bench {
    Bench::new(quarterturn::scenario::load(job.text).unwrap().draw(seed))
}

/// Records whatever is played.
pub struct Taking<S>(pub Recorder<S>);

impl<S: Sink> Witness for Taking<S> {
    fn acted(&mut self, bench: &Bench, action: &Action, _: Result<(), Refusal>) {
        self.0.acted(bench, action);
    }
    fn ticked(&mut self, bench: &Bench, _: Vec<Event>) {
        self.0.ticked(bench);
    }
}

/// A dozen seconds of play with a refusal and notes in it; finished.
pub fn small() -> String {
    let job = &HEALTHY[0];
    let mut bench = bench(job, 3);
    let mut recorder = Recorder::begin(&header(job, 3), String::new()).unwrap();
    let acts: [(u64, Action); 8] = [
        (0, Action::Sniff(Height::Head)),
        (40, Action::Go(Place::PlantRoom)),
        (40, Action::Look(Subject::Plate)),
        (249, Action::Turn { screw: quarterturn::parts::Screw::Low, eighths: 2 }),
        (250, Action::Door { door: Door::Burner, to: Fitted::Off }),
        (300, Action::Take(Tool::HexKey)),
        (511, Action::MeterPower(OnOff::On)),
        (600, Action::Tag(Fitted::On)),
    ];
    for tick in 0..=610 {
        for (_, action) in acts.iter().filter(|(at, _)| *at == tick) {
            let _ = bench.apply(action);
            recorder.acted(&bench, action);
        }
        if tick == 300 {
            recorder.note(&bench, Note::Hint);
        }
        if tick == 610 {
            let action = Action::HandOver(HandOver {
                ending: quarterturn::parts::Ending::InService,
                not_done: vec![quarterturn::parts::Duty::GasRate],
            });
            bench.apply(&action).unwrap();
            recorder.acted(&bench, &action);
        }
        recorder.ticked(&bench);
        if bench.over().is_none() {
            bench.step();
        }
    }
    recorder.end(&bench, Ended::of(bench.over())).unwrap()
}

/// The first job, whole, by the technician, and the digest of the bench at its end.
pub fn whole_job(seed: u64) -> (String, u64) {
    whole_of(&JOBS[0], seed)
}

/// A whole job by the technician, and the digest of the bench at its end.
pub fn whole_of(job: &Builtin, seed: u64) -> (String, u64) {
    let mut bench = bench(job, seed);
    let mut technician = Technician::new(&bench.setup().card);
    let mut taking = Taking(Recorder::begin(&header(job, seed), String::new()).unwrap());
    play(&mut bench, &mut technician, 3 * 3600, &mut taking);
    let text = taking.0.end(&bench, Ended::of(bench.over())).unwrap();
    (text, bench.digest())
}
