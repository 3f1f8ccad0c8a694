//! Hand valves.

use quarterturn::physics::orifice::cv_area_m2;
use quarterturn::physics::valve::{HandValveKind, HandValveLaw, HandleAngle};
use quarterturn::units::{M3_S_PER_CFH, PA_PER_INWC};

/// Closed within a few degrees, monotone, fully open in line, half open about the middle.
#[test]
fn area_grows_with_the_angle() {
    for kind in [HandValveKind::Ball, HandValveKind::PlugCock] {
        let valve = HandValveLaw::new(kind, 0.0127);
        assert_eq!(valve.cd_area_m2(0.0), 0.0);
        assert_eq!(valve.cd_area_m2(3.0), 0.0);
        assert_eq!(valve.cd_area_m2(-10.0), 0.0);
        assert_eq!(valve.cd_area_m2(f64::NAN), 0.0);
        assert_eq!(valve.cd_area_m2(90.0), valve.full_cd_area_m2);
        assert_eq!(valve.cd_area_m2(120.0), valve.full_cd_area_m2);
        let areas: Vec<f64> = (0..=90).map(|deg| valve.cd_area_m2(f64::from(deg))).collect();
        assert!(areas.windows(2).all(|w| w[1] >= w[0]));
        let half = valve.cd_area_m2(48.0) / valve.full_cd_area_m2;
        assert!((0.3..0.5).contains(&half), "{half}");
    }
}

/// A half-inch full-port ball valve has a Cv of 20–35, a plug cock of 8–14 (common practice), and Cv
/// itself is 1 US gal/min of water at 1 psi: 2.4e-5 m³/s·√(…) makes 17 mm² of free jet.
#[test]
fn flow_coefficients_are_of_the_usual_size() {
    let ball = HandValveLaw::new(HandValveKind::Ball, 0.0127).full_cd_area_m2;
    let plug = HandValveLaw::new(HandValveKind::PlugCock, 0.0127).full_cd_area_m2;
    assert!((20.0..35.0).contains(&(ball / cv_area_m2(1.0))));
    assert!((8.0..14.0).contains(&(plug / cv_area_m2(1.0))));
    approx::assert_relative_eq!(cv_area_m2(1.0), 1.698e-5, max_relative = 1e-3);
}

/// A handle that counts as shut lets nothing through a ball valve; a degree further gas passes, a
/// sixth of an 80,000 Btu/h furnace's at the least (77.7 ft³/h at 1,030 Btu/ft³) out of a 3/4 in.
/// valve under 7 in. w.c.; a handle that counts as open leaves nine tenths of the bore; from half way
/// on even a plug cock takes less than 0.05 in. w.c. from that furnace (computed from the equation at
/// the head of `physics/valve.rs`).
#[test]
fn shut_and_open_are_what_the_bore_says() {
    let valve = HandValveLaw::new(HandValveKind::Ball, 0.824 * 0.0254);
    let angles = (0..=90).filter_map(HandleAngle::from_deg);
    let (shut, feeding): (Vec<_>, Vec<_>) = angles.partition(|angle| angle.is_shut());
    let area = |angle: &HandleAngle| valve.cd_area_m2(f64::from(angle.deg()));
    assert!(shut.iter().all(|angle| area(angle) == 0.0 && !angle.feeds() && !angle.is_open()));
    assert!(feeding.iter().all(|angle| area(angle) > 0.0 && angle.feeds()));
    let speed_m_s = (2.0 * 7.0 * PA_PER_INWC / (0.6 * 1.225_f64)).sqrt();
    let least_cfh = area(&feeding[0]) * speed_m_s / M3_S_PER_CFH;
    assert!(least_cfh > 77.7 / 6.0, "{least_cfh}");
    let open: Vec<_> = feeding.iter().filter(|angle| angle.is_open()).collect();
    assert!(open.iter().all(|angle| area(angle) > 0.9 * valve.full_cd_area_m2));
    assert!(HandleAngle::OPEN.is_open() && HandleAngle::SHUT.is_shut() && open.len() == 6);
    let half: Vec<_> = feeding.iter().filter(|angle| !angle.starves()).collect();
    assert!(half.len() == 46 && HandleAngle::SHUT.starves());
    let cock = HandValveLaw::new(HandValveKind::PlugCock, 0.824 * 0.0254);
    for angle in half {
        let through_m_s = 77.7 * M3_S_PER_CFH / cock.cd_area_m2(f64::from(angle.deg()));
        let loss_pa = 0.5 * 0.6 * 1.225 * through_m_s * through_m_s;
        assert!(loss_pa < 0.05 * PA_PER_INWC, "{angle}: {loss_pa} Pa");
    }
    assert!(HandleAngle::from_deg(-1).is_none() && HandleAngle::from_deg(91).is_none());
}
