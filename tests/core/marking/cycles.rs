//! What counts as the last cycle, told by its events alone: who touched what before it, what ended it, and
//! where somebody stood. A furnace answers the thermostat within two seconds.

use quarterturn::appliance::ignition::ControlState;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::EventKind;
use quarterturn::parts::{Door, Ending, Fitted, HandValve, Level, OnOff, Place, Port, Screw};

use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::shared;

use super::sheet::Sheet;

/// A piece of the job; ten seconds pass after each but where it says so.
#[derive(Clone)]
enum Piece {
    Do(Action),
    /// The control goes from one state to the other.
    Control(ControlState, ControlState),
    Fires(Option<Level>, Option<Level>),
    Cycle,
    /// The next comes so many ticks later.
    Soon(u64),
}

use ControlState as C;
use Piece::{Control, Cycle, Do, Fires, Soon};

const LOW: Option<Level> = Some(Level::Low);
const HIGH: Option<Level> = Some(Level::High);
const BEGIN: Piece = Control(C::Standby, C::InducerStart);
const LIT: Piece = Fires(None, LOW);
const UP: Piece = Fires(LOW, HIGH);
const END: Piece = Control(C::Burning(Level::High), C::PostPurge);
const SET: Piece = Do(Action::Setpoint(120));

fn go(place: Place) -> Piece {
    Do(Action::Go(place))
}

fn touch() -> Piece {
    Do(Action::FurnaceSwitch(OnOff::On))
}

/// What is found of the cycle: how it is told, and whether its end was missed.
fn found(pieces: &[Piece]) -> (Option<String>, bool) {
    let mut sheet = Sheet::new();
    let mut next = pieces.iter().peekable();
    while let Some(piece) = next.next() {
        match piece.clone() {
            Do(action) => sheet.did(action),
            Control(from, to) => sheet.push(EventKind::Control { from, to }),
            Fires(from, to) => sheet.push(EventKind::Fired { from, to }),
            Cycle => sheet.push(EventKind::Cycle),
            Soon(ticks) => sheet.pass(ticks),
        };
        if !matches!(piece, Soon(_)) && !matches!(next.peek(), Some(Soon(_))) {
            sheet.later();
        }
    }
    sheet.handed_over(Ending::InService);
    (sheet.finding("no-final-cycle").map(|it| it.seen), sheet.times("shut-down-unwatched") > 0)
}

fn is_seen(pieces: &[Piece]) -> bool {
    found(pieces).0.is_none()
}

/// The cycle of a whole job with these pieces in the place of what happens while it burns.
fn with(meanwhile: &[Piece]) -> Vec<Piece> {
    let before = [touch(), go(Place::PlantRoom), BEGIN];
    [&before[..], meanwhile, &[Fires(HIGH, None), Cycle]].concat()
}

/// A whole cycle is seen; where nobody laid a hand on the furnace, none is asked for.
#[test]
fn a_whole_cycle_is_seen() {
    assert!(is_seen(&with(&[LIT, UP, END])));
    assert!(is_seen(&[go(Place::Hall)]));
    let told = found(&[touch()]).0.unwrap();
    assert!(told.contains("no cycle"), "{told}");
    let cut = found(&with(&[LIT, UP])).0.unwrap();
    assert!(cut.contains("not ended by the thermostat"), "{cut}");
    let limit = Control(C::Burning(Level::High), C::LimitOpen);
    assert!(!is_seen(&with(&[LIT, UP, limit])));
    assert!(!is_seen(&with(&[LIT, UP, Control(C::PrePurge, C::PostPurge)])));
    // One that ended before is not this one's end.
    let again = [&with(&[LIT, UP, END])[..], &[touch(), BEGIN, LIT, UP, Cycle]].concat();
    let told = found(&again).0.unwrap();
    assert!(told.contains("not ended by the thermostat"), "{told}");
}

/// A hand on gas, controls, springs or doors after it began asks for another; one on the thermostat, or on
/// anything else, does not. A control that starts anew begins anew.
#[test]
fn every_hand_on_the_furnace_asks_for_another() {
    let port = Port::Inlet;
    for action in [
        Action::Turn { screw: Screw::High, eighths: 1 },
        Action::Cap { screw: Screw::High, to: Fitted::On },
        Action::Plug { port, step: quarterturn::hands::action::PlugStep::SpinIn },
        Action::Adapter { port, to: Fitted::Off },
        Action::ValveSwitch(OnOff::On),
        Action::FurnaceSwitch(OnOff::On),
        Action::StageJumper(Fitted::Off),
        Action::Mend(quarterturn::catalogue::repair::Repair::ReplaceFilter),
        Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 },
        Action::Door { door: Door::Burner, to: Fitted::On },
    ] {
        let told = found(&with(&[LIT, UP, END, Do(action.clone())])).0.unwrap_or_default();
        assert!(told.contains("no cycle"), "{action:?} {told}");
        let whole = [&[Do(action)], &with(&[LIT, UP, END])[1..]].concat();
        assert!(is_seen(&whole));
    }
    for action in [Action::PutDown, Action::Setpoint(130)] {
        assert!(is_seen(&with(&[LIT, UP, Do(action), END])));
    }
    let anew = Control(C::Retry, C::InducerStart);
    assert!(is_seen(&with(&[touch(), anew, LIT, UP, END])));
    let other = Control(C::Retry, C::PrePurge);
    assert!(!is_seen(&with(&[touch(), other, LIT, UP, END])));
}

/// It is seen from the furnace: lighting, and each level for a moment at least. In the house the walk to the
/// thermostat is none; out of it a part is missed.
#[test]
fn it_is_seen_at_the_furnace() {
    let (room, valve, hall, yard, away) =
        (Place::PlantRoom, Place::GasValve, Place::Hall, Place::Yard, Place::Away);
    assert!(is_seen(&with(&[go(valve), LIT, UP, END])));
    for place in [hall, yard, away] {
        assert!(!is_seen(&with(&[go(place), LIT, go(room), UP, END])), "{place:?}");
    }
    assert!(is_seen(&with(&[LIT, go(hall), UP, go(room), END])));
    assert!(is_seen(&with(&[LIT, go(hall), go(valve), UP, END])));
    assert!(!is_seen(&with(&[LIT, go(hall), UP, END])));
    assert!(!is_seen(&with(&[LIT, go(yard), go(room), UP, END])));
    assert!(!is_seen(&with(&[LIT, UP, go(yard), END])));
    assert!(is_seen(&with(&[LIT, UP, END, go(yard)])));
    // One level alone is not each.
    assert!(!is_seen(&with(&[LIT, END])));
    assert!(!is_seen(&with(&[Fires(None, HIGH), END])));
    assert!(!is_seen(&with(&[END])));
    // Back on low is not on high.
    let back = [LIT, go(hall), UP, Fires(HIGH, LOW), go(room), END];
    assert!(!is_seen(&with(&back)));
    // Of two cycles one is enough.
    let unseen = with(&[go(hall), LIT, UP, END]);
    let both = [&unseen[..], &with(&[LIT, UP, END])[1..]].concat();
    assert!(is_seen(&both));
    assert!(found(&unseen).0.unwrap().contains("not seen at the furnace"));
}

/// Who takes the call away at the thermostat has seen it: what comes within two seconds is the furnace's
/// answer. A hand that was there longer ago, or before the cycle, ended nothing.
#[test]
fn the_thermostat_is_answered_within_two_seconds() {
    let (hall, yard) = (Place::Hall, Place::Yard);
    let mode = Do(Action::ThermostatMode(OnOff::Off));
    let ends = |hand: &Piece, ticks: u64| {
        let walk = [hand.clone(), Soon(0), go(yard), Soon(ticks), END];
        is_seen(&with(&[&[LIT, UP, go(hall)][..], &walk].concat()))
    };
    for hand in [&SET, &mode] {
        assert!(ends(hand, 50));
        assert!(ends(hand, 100));
        assert!(!ends(hand, 101));
    }
    assert!(!ends(&Do(Action::PutDown), 50));
    // The last hand counts; one after the end, or before the cycle, is another's.
    let late =
        [LIT, UP, go(hall), SET, Soon(0), SET, Soon(0), go(yard), Soon(20), END, Soon(0), SET];
    assert!(is_seen(&with(&late)));
    let early = [
        touch(),
        go(Place::PlantRoom),
        SET,
        Soon(0),
        BEGIN,
        Soon(0),
        LIT,
        Soon(0),
        UP,
        Soon(0),
        END,
        Soon(0),
        Fires(HIGH, None),
        Cycle,
    ];
    assert!(is_seen(&early));
}

/// The end of the cycle is heard in the house.
#[test]
fn its_end_is_heard_in_the_house() {
    let rests = |place: Place| {
        let before = [touch(), go(Place::PlantRoom), BEGIN, LIT, UP, END, go(place)];
        found(&[&before[..], &[Fires(HIGH, None), Cycle]].concat())
    };
    for (place, missed) in [
        (Place::PlantRoom, false),
        (Place::GasValve, false),
        (Place::Hall, false),
        (Place::Yard, true),
        (Place::Away, true),
    ] {
        assert_eq!(rests(place), (None, missed), "{place:?}");
    }
}

/// A cycle that is missing behind a valve that is left shut follows from the valve, whatever else stands
/// aslant; behind valves that are aslant alone it is charged beside them.
#[test]
fn no_cycle_is_asked_behind_a_shut_valve() {
    let charged = |manual: i16| {
        let mut sheet = Sheet::new();
        sheet.did(Action::FurnaceSwitch(OnOff::On));
        sheet.truth.manual_valve = HandleAngle::from_deg(manual).unwrap();
        sheet.truth.supply_valve = HandleAngle::from_deg(80).unwrap();
        ["cock-not-open", "no-final-cycle"].map(|it| sheet.times(it) > 0)
    };
    assert_eq!(charged(0), [true, false]);
    assert_eq!(charged(80), [true, true]);
    // A book that does not ask after the valve asks after the cycle.
    let mut book = shared().unwrap();
    book.rules.retain(|it| it.id != "cock-not-open");
    let mut sheet = Sheet::new();
    sheet.did(Action::FurnaceSwitch(OnOff::On));
    sheet.truth.manual_valve = HandleAngle::SHUT;
    let marks = sheet.marks_by(&book, &[Ending::InService]);
    assert!(marks.findings.iter().any(|it| it.rule == "no-final-cycle"));
}
