//! Playing scripts on a healthy rig.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::parts::{Level, Phase, Place, Port, Stage};
use quarterturn::senses::seen::Seen;
use quarterturn::technician::drive::{Nobody, Stopped};
use quarterturn::technician::play;
use quarterturn::technician::script::{ScriptPlayer, Stop, read};
use quarterturn::units::PressureUnit;

use crate::bench::rig;

fn run(text: &str) -> (Stopped, Option<Stop>, Seen) {
    let mut bench = Bench::new(rig::healthy(Fuel::Natural));
    let mut player = ScriptPlayer::new(read("test.script", text).unwrap());
    let stopped = play(&mut bench, &mut player, 3600, &mut Nobody);
    (stopped, player.stop().cloned(), bench.seen())
}

fn reason(text: &str) -> (usize, String) {
    let stop = run(text).1.expect("a stop");
    (stop.line, stop.reason)
}

/// A refused action stops the script with its line and the reason; `try` goes on.
#[test]
fn a_refused_action_stops_the_script() {
    assert_eq!(
        reason("go hall\n\n# no driver in hand\nturn low-screw 1/8\ngo yard"),
        (4, "That is not within reach from here.".to_owned())
    );
    let (stopped, stop, seen) = run("go hall\ntry turn low-screw 1/8\ngo plant-room");
    assert_eq!((stopped, stop), (Stopped::PlayerFinished, None));
    assert_eq!(seen.place, Place::PlantRoom);
}

/// A condition that does not come true in its time stops the script at that time, not before.
#[test]
fn an_until_that_does_not_come_stops_the_script() {
    let (stopped, stop, seen) = run("wait 2 s\nuntil heard alarm within 7 s\ngo hall");
    let stop = stop.unwrap();
    assert_eq!(stopped, Stopped::PlayerFinished);
    assert_eq!((stop.line, stop.text.as_str()), (2, "until heard alarm within 7 s"));
    assert_eq!(stop.reason, "It did not come true within 7 s.");
    assert_eq!(seen.tick, 9 * 50);
    let (_, stop, seen) = run("try until heard alarm within 7 s\ngo hall");
    assert_eq!((stop, seen.place), (None, Place::Hall));
}

/// A wait lasts as long as it says, to the tick, and none at all when it says so.
#[test]
fn a_wait_lasts_to_the_tick() {
    for (line, ticks) in
        [("wait 0 s", 0), ("wait 0.02 s", 1), ("wait 3.14 s", 157), ("wait 1 min", 3000)]
    {
        assert_eq!(run(line).2.tick, ticks, "{line}");
    }
    assert_eq!(run("wait 20 min\nwait 20 min").2.tick, 120_000);
}

/// Through the whole of a reading: the furnace lights, the manifold pressure is waited for and
/// written as the manometer shows it. On low the healthy rig has 1.7 in. w.c. on its plate.
#[test]
fn a_script_reads_the_low_manifold_pressure() {
    let (stopped, stop, seen) = run("
        go hall
        thermostat-mode off
        go plant-room
        furnace-switch off
        door burner-door off
        go gas-valve
        valve-switch off
        meter-power on
        wait 20 s
        meter-zero
        take hex-key
        plug manifold-port break-loose
        plug manifold-port spin-out
        put-down
        take adapter
        adapter manifold-port on
        take hose
        hose-on manifold-port fully
        valve-switch on
        furnace-switch on
        go hall
        setpoint 67.5 degF
        thermostat-mode on
        until heard burners-low within 4 min
        go plant-room
        until meter between 1.5 inH2O and 1.9 inH2O within 30 s
        until meter steady 0.02 inH2O for 5 s within 60 s
        write manifold-port low found
        write manifold-port rest found -0.01 kPa
    ");
    assert_eq!((stopped, stop), (Stopped::PlayerFinished, None));
    let low = seen.sheet.reading(Port::Manifold, Stage::Firing(Level::Low), Phase::Found).unwrap();
    assert_eq!(low.unit, PressureUnit::InWc);
    assert!((1_650..=1_750).contains(&low.thousandths), "{low:?}");
    let rest = seen.sheet.reading(Port::Manifold, Stage::Rest, Phase::Found).unwrap();
    assert_eq!((rest.thousandths, rest.unit), (-10, PressureUnit::KPa));
}

/// A dark display gives nothing to write.
#[test]
fn a_dark_display_gives_nothing_to_write() {
    let (line, reason) = reason("write inlet-port rest found");
    assert_eq!((line, reason.as_str()), (1, "The manometer shows no number to write."));
}

/// A job that is over before its script is told as such.
#[test]
fn a_job_that_is_over_leaves_the_rest_of_the_script() {
    let mut bench = Bench::new(rig::healthy(Fuel::Natural));
    let script = read("x", "go hall\nhand-over in-service\ngo yard").unwrap();
    let mut player = ScriptPlayer::new(script);
    assert_eq!(play(&mut bench, &mut player, 60, &mut Nobody), Stopped::Over);
    assert_eq!(player.stop(), None);
    assert_eq!(player.left_over().map(|step| step.line), Some(3));
}
