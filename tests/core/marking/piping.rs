//! The leak check of the whole piping after pipe work: shut in and watched for three minutes (NFPA 54
//! annex C, from memory), its joints soaped, the other appliances lit again.

use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::parts::{Duty, Ending, Gauge, Joint, JointVerdict, OnOff, OtherAppliance, Port};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::{Essential, Severity};
use quarterturn::senses::meter_history::{GasDemand, Spell};
use quarterturn::units::PA_PER_INWC;

use super::sheet::{REST, Sheet, draw, spell};

const RULE: &str = "piping-not-checked";
const TIGHT: Action = Action::WritePiping(JointVerdict::Tight);

/// After a repair, everything burning once more.
fn mended(repair: Repair) -> Sheet {
    let mut sheet = Sheet::new();
    let outcome = Outcome::Changed;
    sheet.did(Action::Mend(repair)).push(EventKind::Mended { repair, outcome, plate: None });
    let off = (sheet.truth.other_appliances, sheet.truth.others_flow_m3_s);
    for (_, it) in &mut sheet.truth.other_appliances {
        it.switch = OnOff::On;
    }
    sheet.truth.others_flow_m3_s = 1e-3;
    sheet.later().did(Action::PutDown);
    (sheet.truth.other_appliances, sheet.truth.others_flow_m3_s) = off;
    sheet
}

/// The line shut in.
fn shut_in() -> GasDemand {
    GasDemand { fed: false, ..draw(REST) }
}

/// A leak check that was written: what the meter showed so long, in seconds and inches of water.
fn checked(sheet: &mut Sheet, demand: GasDemand, seconds: f64, numbers: (f64, f64), what: Action) {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "minutes")]
    let ticks = (seconds * 50.0) as u64;
    let mut shown = spell(Port::Inlet, demand, numbers.0, numbers.1);
    shown.shown.until = ticks;
    written(sheet, shown, what);
}

/// Written at the lowest of the numbers that were shown.
fn written(sheet: &mut Sheet, shown: Spell, what: Action) {
    sheet.truth.hose_pa = shown.shown.least_pa - shown.error_pa;
    let open = std::mem::replace(&mut sheet.truth.supply_valve, HandleAngle::SHUT);
    sheet.did(what).push(EventKind::Showed(shown)).later();
    sheet.truth.supply_valve = open;
}

/// A repair that opens the line asks for it by itself, one that does not asks for nothing.
#[test]
fn opened_piping_is_checked() {
    for (repair, counts) in [
        (Repair::ReplaceTrunk, 1),
        (Repair::ReplaceConnector, 1),
        (Repair::ReplaceSupplyRegulator, 1),
        (Repair::PurgeLine, 1),
        (Repair::CleanBurners, 0),
        (Repair::ClearRegulatorVent, 0),
    ] {
        let mut sheet = mended(repair);
        assert_eq!(sheet.times(RULE), counts, "{repair:?}");
        if counts > 0 {
            assert_eq!(sheet.gates(Essential::WorkAccounted), [RULE], "{repair:?}");
            checked(&mut sheet, shut_in(), 190.0, (7.0, 7.0), TIGHT);
            assert_eq!(sheet.times(RULE), 0, "{repair:?}");
        }
    }
    // A card may ask for it where nothing was opened.
    let mut asked = Sheet::new();
    assert_eq!(asked.times(RULE), 0);
    asked.setup.card.required = vec![Duty::PipingLeakCheck];
    assert_eq!(asked.times(RULE), 1);
    checked(&mut asked, shut_in(), 190.0, (7.0, 7.0), TIGHT);
    assert_eq!(asked.times(RULE), 0);
    // Before the line was opened, it says nothing of the line after it.
    let mut before = Sheet::new();
    checked(&mut before, shut_in(), 190.0, (7.0, 7.0), TIGHT);
    let (repair, outcome) = (Repair::ReplaceTrunk, Outcome::Changed);
    before.did(Action::Mend(repair)).push(EventKind::Mended { repair, outcome, plate: None });
    assert_eq!(before.times(RULE), 1);
    // Where the supply is left shut, no gas is there to check with.
    let mut shut = mended(Repair::ReplaceTrunk);
    shut.truth.supply_valve = HandleAngle::SHUT;
    assert_eq!(shut.handed_over(Ending::ShutOff).times(RULE), 0);
    // Nor behind a manual valve that is left shut, but in the trunk before it.
    for (repair, counts) in [(Repair::ReplaceConnector, 0), (Repair::ReplaceTrunk, 1)] {
        let mut shut = mended(repair);
        shut.truth.manual_valve = HandleAngle::SHUT;
        assert_eq!(shut.handed_over(Ending::ShutOff).times(RULE), counts, "{repair:?}");
    }
}

/// Three minutes are three minutes, and what the gauge saw was the piping: shut in, open to the gauge,
/// nothing burning, pressure in it.
#[test]
fn three_minutes_shut_in() {
    let burning = GasDemand { burning: 1, ..shut_in() };
    for (demand, seconds, pressure, missing) in [
        (shut_in(), 180.0, 7.0, None),
        (shut_in(), 179.0, 7.0, Some("watched for 179 s")),
        (shut_in(), 20.0, 7.0, Some("watched for 20 s")),
        (burning, 190.0, 7.0, Some("an appliance drew gas")),
        (shut_in(), 190.0, 2.0, Some("no working pressure")),
    ] {
        let mut sheet = mended(Repair::ReplaceTrunk);
        checked(&mut sheet, demand, seconds, (pressure, pressure), TIGHT);
        let truth = sheet.finding(RULE).map(|it| it.truth);
        assert_eq!(truth.is_some(), missing.is_some(), "{truth:?}");
        assert!(truth.unwrap_or_default().contains(missing.unwrap_or_default()));
    }
    let at_rest = || spell(Port::Inlet, draw(REST), 7.0, 7.0);
    let long = |it: Spell| Spell {
        shown: quarterturn::senses::meter_history::Span { until: 9_500, ..it.shown },
        ..it
    };
    let lacks = |change: fn(&mut Sheet), shown: Spell| {
        let mut sheet = mended(Repair::ReplaceTrunk);
        sheet.truth.supply_valve = HandleAngle::SHUT;
        sheet.truth.hose_pa = shown.shown.most_pa;
        change(&mut sheet);
        sheet.did(TIGHT).push(EventKind::Showed(long(shown)));
        (sheet.truth.supply_valve, sheet.truth.manual_valve) =
            (HandleAngle::OPEN, HandleAngle::OPEN);
        sheet.finding(RULE).map(|it| it.truth).unwrap_or_default()
    };
    assert_eq!(lacks(|_| (), at_rest()), "");
    let open = lacks(|it| it.truth.supply_valve = HandleAngle::OPEN, at_rest());
    assert!(open.contains("the supply shut-off was open"), "{open}");
    let cut_off = lacks(|it| it.truth.manual_valve = HandleAngle::SHUT, at_rest());
    assert!(cut_off.contains("the manual valve was shut"), "{cut_off}");
    let elsewhere = lacks(|_| (), spell(Port::Manifold, draw(REST), 7.0, 7.0));
    assert!(elsewhere.contains("no manometer"), "{elsewhere}");
}

/// What is written fits the number: a tenth of an inch is a fall. What leaks is not left in use, and a
/// fall tells before three minutes are over.
#[test]
fn the_written_verdict_fits_the_number() {
    use JointVerdict::{Leaking, Tight};
    for (numbers, verdict, ending, counts) in [
        ((7.0, 7.0), Tight, Ending::InService, 0),
        ((6.95, 7.0), Tight, Ending::InService, 0),
        ((6.9, 7.0), Tight, Ending::InService, 1),
        ((6.9, 7.0), Tight, Ending::ShutOff, 1),
        ((6.0, 7.0), Leaking, Ending::InService, 1),
        ((6.0, 7.0), Leaking, Ending::ShutOff, 0),
    ] {
        let mut sheet = mended(Repair::ReplaceTrunk);
        checked(&mut sheet, shut_in(), 190.0, numbers, Action::WritePiping(verdict));
        if ending == Ending::ShutOff {
            sheet.truth.manual_valve = HandleAngle::SHUT;
            sheet.truth.tag = quarterturn::parts::Fitted::On;
        }
        sheet.handed_over(ending);
        assert_eq!(sheet.times("joint-verdict"), counts, "{numbers:?} {verdict:?} {ending:?}");
        assert_eq!(sheet.times(RULE), 0);
    }
    // A number that still rose when the line was shut in has not fallen.
    let mut rose = mended(Repair::ReplaceTrunk);
    let mut shown = spell(Port::Inlet, shut_in(), 6.8, 7.0);
    (shown.shown.until, shown.error_pa) = (9_500, 0.3 * PA_PER_INWC);
    rose.truth.hose_pa = shown.shown.most_pa - shown.error_pa;
    rose.truth.supply_valve = HandleAngle::SHUT;
    rose.did(TIGHT).push(EventKind::Showed(shown)).later();
    rose.truth.supply_valve = HandleAngle::OPEN;
    rose.handed_over(Ending::InService);
    assert_eq!([rose.times("joint-verdict"), rose.times(RULE)], [0, 0]);
    // Found leaking within a minute, made tight and checked again.
    let mut again = mended(Repair::ReplaceTrunk);
    checked(&mut again, shut_in(), 40.0, (3.0, 7.0), Action::WritePiping(Leaking));
    again.did(Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(2) }).later();
    checked(&mut again, shut_in(), 190.0, (7.0, 7.0), TIGHT);
    again.handed_over(Ending::InService);
    assert_eq!([again.times("joint-verdict"), again.times(RULE)], [0, 0]);
}

/// A digital gauge tells a fall of 0.1 in. w.c., a column or a needle one of 0.2. The gauge is the one
/// that was used then, and the line is shut in and watched at the inlet.
#[test]
fn a_fall_is_told_as_far_as_its_gauge_is_read() {
    let fell = |gauges: &[Gauge], fall: f64| {
        let mut sheet = mended(Repair::ReplaceTrunk);
        gauges.iter().for_each(|gauge| {
            sheet.did(Action::Gauge(*gauge));
        });
        checked(&mut sheet, shut_in(), 190.0, (7.0 - fall, 7.0), TIGHT);
        sheet.did(Action::Gauge(Gauge::WaterColumn)).handed_over(Ending::InService);
        sheet.times("joint-verdict")
    };
    for (gauges, most) in [
        (&[][..], 0.1),
        (&[Gauge::WaterColumn], 0.2),
        (&[Gauge::SpringGauge], 0.2),
        (&[Gauge::WaterColumn, Gauge::Digital], 0.1),
    ] {
        assert_eq!(fell(gauges, most - 0.004), 0, "{gauges:?}");
        assert_eq!(fell(gauges, most + 0.004), 1, "{gauges:?}");
    }
    for (port, fed, counts) in
        [(Port::Inlet, false, 1), (Port::Manifold, false, 0), (Port::Inlet, true, 0)]
    {
        let mut sheet = mended(Repair::ReplaceTrunk);
        let mut shown = spell(port, GasDemand { fed, ..draw(REST) }, 6.0, 7.0);
        shown.shown.until = 9_500;
        if fed {
            sheet.truth.hose_pa = 6.0 * PA_PER_INWC;
            sheet.did(TIGHT).push(EventKind::Showed(shown));
        } else {
            written(&mut sheet, shown, TIGHT);
        }
        sheet.handed_over(Ending::InService);
        assert_eq!(sheet.times("joint-verdict"), counts, "{port:?} {fed}");
    }
}

/// Joints in the yard are soaped at their own pressure, as those at the furnace are.
#[test]
fn joints_in_the_yard_are_soaped() {
    let fluid = |joint, pressure: f64, dwell_s| EventKind::FluidJudged {
        joint,
        lowest_pa: pressure * PA_PER_INWC,
        dwell_s,
        firing: None,
        bubbles: false,
        manual_valve: HandleAngle::SHUT,
    };
    for (repair, joint) in [
        (Repair::ReplaceTrunk, Joint::Riser),
        (Repair::ReplaceSupplyRegulator, Joint::SupplyRegulator),
    ] {
        assert_eq!(mended(repair).severity("joint-unchecked"), Some(Severity::Critical));
        for (pressure, dwell_s, wrongly) in [(7.0, 12.0, 0), (7.0, 5.0, 1), (2.0, 12.0, 1)] {
            let mut sheet = mended(repair);
            sheet.did(Action::LeakFluid(joint)).push(fluid(joint, pressure, dwell_s));
            let both = ["joint-unchecked", "joint-checked-wrongly"].map(|it| sheet.times(it));
            assert_eq!(both, [0, wrongly], "{repair:?} {pressure} {dwell_s}");
        }
    }
}

/// After the gas of the house was shut off, each other appliance is seen to burn; after work behind the
/// manual valve none is asked for.
#[test]
fn the_others_are_lit_again() {
    let rule = "others-left-out";
    for (repair, counts) in [(Repair::ReplaceTrunk, 2), (Repair::ReplaceConnector, 0)] {
        assert_eq!(mended(repair).times(rule), 0, "{repair:?}");
        let mut sheet = Sheet::new();
        let outcome = Outcome::Changed;
        sheet.did(Action::Mend(repair)).push(EventKind::Mended { repair, outcome, plate: None });
        assert_eq!(sheet.times(rule), counts, "{repair:?}");
    }
    // One that went out is told as that alone; left shut off, none is lit.
    let mut out = Sheet::new();
    out.setup.found.other_appliances[OtherAppliance::Range] = OnOff::On;
    let (repair, outcome) = (Repair::ReplaceTrunk, Outcome::Changed);
    out.did(Action::Mend(repair)).push(EventKind::Mended { repair, outcome, plate: None });
    let range = &mut out.truth.other_appliances[OtherAppliance::Range];
    (range.switch, range.gone_out) = (OnOff::On, true);
    assert_eq!(out.times(rule), 1);
    let mut shut = Sheet::new();
    shut.did(Action::Mend(repair)).push(EventKind::Mended { repair, outcome, plate: None });
    assert_eq!(shut.handed_over(Ending::ShutOff).times(rule), 0);
    // Less than a cubic centimeter a second is no flame.
    for (flow, counts) in [(0.95e-6, 2), (1.05e-6, 0)] {
        let mut sheet = mended(Repair::ReplaceTrunk);
        for event in &mut sheet.events {
            if let EventKind::Did { before, .. } = &mut event.what {
                before.others_flow_m3_s = before.others_flow_m3_s.min(flow);
            }
        }
        assert_eq!(sheet.times(rule), counts, "{flow}");
    }
    let mut one = mended(Repair::ReplaceTrunk);
    for event in &mut one.events {
        if let EventKind::Did { before, .. } = &mut event.what {
            before.other_appliances[OtherAppliance::Range].switch = OnOff::Off;
        }
    }
    assert_eq!(one.times(rule), 1);
}
