//! The debrief as data: the cause in the trainee's own numbers, the sheet beside what was true, and
//! sheets with nonsense on them.

use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::marking::debrief::{
    Account, CameFrom, Debrief, Job, Left, NumberIs, SheetNumber, debrief,
};
use quarterturn::marking::{Brief, Observer};
use quarterturn::parts::{
    Answer, Cause, Ending, Level, Phase, Place, Port, Reading, Stage, WrittenFinding,
};
use quarterturn::rules::shared;
use quarterturn::scenario::{builtin, load};
use quarterturn::technician::play;
use quarterturn::technician::script::{ScriptPlayer, read};
use quarterturn::units::PressureUnit;

use super::{At, Good};

fn told(good: &Good, id: &str, done: &[At]) -> Debrief {
    let observer: Observer = good.observed(done);
    let marks = good.marked(&observer, &shared().unwrap());
    let brief = Brief { right_endings: good.endings.clone() };
    let job = Job { brief: &brief, id: Some(id), note: Some("The author's words."), night: None };
    debrief(&observer.ledger, marks, observer.trace, job)
}

/// A script that is played on a job, and its debrief.
fn scripted(id: &str, text: &str) -> Debrief {
    let scenario = load(builtin::find(id).unwrap().text).unwrap();
    let mut bench = Bench::new(scenario.draw(1));
    let mut observer = Observer::new(&bench);
    let mut player = ScriptPlayer::new(read("cranked.script", text).unwrap());
    play(&mut bench, &mut player, 3 * 3600, &mut observer);
    let brief = Brief { right_endings: scenario.right_endings(1) };
    let marks = observer.marks(&shared().unwrap(), &brief);
    let job = Job { brief: &brief, id: Some(id), note: Some("The author's words."), night: None };
    debrief(&observer.ledger, marks, observer.trace, job)
}

/// The kinked connector is not replaced, and the high screw is turned up by a turn and a half.
fn cranked() -> Debrief {
    scripted("behind-the-cupboard", include_str!("../debriefs/cranked.script"))
}

/// A screw that was turned up against a starved inlet: the first thing told is the number that the
/// trainee wrote, what the spring is really set to, and that the inlet held the reading down; then the
/// kink that was there, what it means for the house, and the one job to practise.
#[test]
fn the_cause_stands_first_in_the_trainees_own_numbers() {
    let told = cranked();
    let account = &told.account;
    let [own, kink] = account.causes.as_slice() else { panic!("{:#?}", account.causes) };
    assert_eq!((own.cause, own.from, own.left), (Cause::HighSetHigh, CameFrom::Work, Left::InUse));
    let first = &own.read[0];
    assert!(first.starts_with("You wrote 3.07 in. w.c. for the manifold on high fire"), "{first}");
    assert!(first.ends_with("the starved inlet held the reading down."), "{first}");
    assert_eq!((kink.cause, kink.from), (Cause::ConnectorKinked, CameFrom::Arrival));
    assert!(!kink.is_named && kink.left == Left::InUse);
    assert!(kink.read[0].contains("at least 5.00 in. w.c. is asked for"), "{:?}", kink.read);
    let spring = account.house.iter().find(|it| it.contains("by the spring that you left"));
    assert!(spring.is_some_and(|it| it.contains("above the plate")), "{:?}", account.house);
    let next = account.next.as_ref().unwrap();
    assert_eq!((next.job.as_str(), next.rule.as_deref()), ("no-bite-on-high", Some("cranked")));

    let text = told.text();
    let places = [
        "not yet met; missing: ",
        first.as_str(),
        "What it means for the house",
        "Practice next",
        "The author's words.",
        "The job sheet",
        "Essentials",
        "Findings",
    ]
    .map(|part| text.find(part).unwrap_or_else(|| panic!("{part}: {text}")));
    assert!(places.is_sorted(), "{places:?}: {text}");
}

/// Good work: the cause is named and put right, every number on the sheet is right and within a tenth of
/// an inch of what was true, and the account comes back whole from JSON.
#[test]
fn the_sheet_stands_beside_the_truth_and_comes_back_from_data() {
    for (id, seed) in [("behind-the-cupboard", 1), ("propane-cold-morning", 2), ("borrowed-bag", 3)]
    {
        let good = Good::on(id, seed);
        let account = told(&good, id, &good.done).account;
        let numbers: Vec<&SheetNumber> =
            account.sheet.lines.iter().flat_map(|it| [&it.found, &it.left]).flatten().collect();
        assert!(numbers.len() >= 6, "{id}: {numbers:?}");
        for number in numbers {
            let off_pa = (number.value - number.truth.unwrap()).abs() * number.unit.pa();
            assert_eq!(number.is, NumberIs::Right, "{id}: {number:?}");
            assert!(off_pa < 25.0, "{id}: {number:?}");
        }
        assert!(account.causes.iter().all(|it| it.is_named && it.left != Left::InUse), "{id}");
        assert!(account.sheet.remarks.is_empty(), "{id}: {:?}", account.sheet.remarks);
        let json = serde_json::to_string(&account).unwrap();
        assert_eq!(serde_json::from_str::<Account>(&json).unwrap(), account, "{id}");
    }
}

/// The sheet of a job with these numbers written at its end, and nothing else done.
fn nonsense(ending: Ending, writes: Vec<Action>) -> Debrief {
    let good = Good::on("natural-gas-busy-kitchen", 1);
    let mut done = vec![good.done[good.end()].clone()];
    let (tick, Action::HandOver(said)) = &mut done[0] else { panic!("the hand-over") };
    said.ending = ending;
    *tick = 500;
    let writes = writes.into_iter().map(|action| (100, action));
    let done: Vec<At> = writes.chain([(400, Action::Go(Place::Hall))]).chain(done).collect();
    told(&good, "natural-gas-busy-kitchen", &done)
}

fn number(port: Port, stage: Stage, thousandths: i32) -> Action {
    let (phase, unit) = (Phase::Found, PressureUnit::InWc);
    Action::Write(Reading { port, stage, phase, thousandths, unit })
}

/// Nonsense on a sheet is told in one sentence each, and everything else goes on.
#[test]
fn nonsense_on_the_sheet_is_told_in_one_sentence() {
    let empty = nonsense(Ending::InService, Vec::new());
    assert_eq!(empty.account.sheet.remarks.len(), 1, "{:?}", empty.account.sheet.remarks);
    assert!(empty.account.sheet.remarks[0].starts_with("The sheet is empty"));

    let fires = [Level::Low, Level::High].map(Stage::Firing);
    let stages = [Stage::Rest, fires[0], fires[1], Stage::FullLoad];
    let all = Port::ALL.iter().flat_map(|port| stages.map(|it| number(*port, it, 99_900)));
    let wild = nonsense(Ending::InService, all.collect());
    let remarks = &wild.account.sheet.remarks;
    assert_eq!(remarks.len(), 1, "{remarks:?}");
    assert!(remarks[0].contains("never shown by the meter") && remarks[0].contains("99.9"));
    assert!(wild.text().contains("99.9 in. w.c. (true "), "{}", wild.text());

    let ten = (0..10).map(|i| number(Port::Inlet, Stage::Rest, 5_000 + 100 * i));
    let ten = nonsense(Ending::InService, ten.collect());
    let again = ten.account.sheet.remarks.iter().filter(|it| it.contains("for one line"));
    assert_eq!(again.collect::<Vec<_>>().len(), 1, "{:?}", ten.account.sheet.remarks);
    assert_eq!(ten.account.sheet.lines[0].found.as_ref().unwrap().written, 10);

    let finding = WrittenFinding {
        cause: Cause::ExchangerHoled,
        answer: Answer::ShutOff,
        evidence: Vec::new(),
    };
    let other = nonsense(Ending::InService, vec![Action::WriteFinding(finding)]);
    let remarks = &other.account.sheet.remarks;
    let contradicts = remarks.iter().filter(|it| it.contains("the job ended otherwise"));
    assert_eq!(contradicts.count(), 1, "{remarks:?}");
    for debrief in [empty, wild, ten, other] {
        let json = serde_json::to_string(&debrief.account).unwrap();
        assert_eq!(serde_json::from_str::<Account>(&json).unwrap(), debrief.account);
        assert!(!debrief.text().is_empty() && debrief.account.next.is_some());
    }
}

/// A job that was stopped is told as such, and offered again.
#[test]
fn a_job_that_was_stopped_is_offered_again() {
    let good = Good::on("healthy-natural", 1);
    let account = told(&good, "healthy-natural", &good.done[..10]).account;
    assert!(account.causes.is_empty());
    assert_eq!(account.house.len(), 1);
    let next = account.next.unwrap();
    assert_eq!((next.job.as_str(), next.rule), ("healthy-natural", None));
}
