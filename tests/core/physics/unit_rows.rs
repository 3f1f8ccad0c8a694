//! Unit factors against published conversion rows.

use quarterturn::units::{M_PER_FT, M3_S_PER_CFH, PA_PER_INWC, PA_PER_PSI};

/// Public conversion rows of the conventional inch (NIST SP 811): 11 in. w.c. = 27.40 mbar, 10 in.
/// w.c. = 2490.9 Pa, 3.5 in. w.c. = 8.718 mbar, 1 in. w.c. = 25.4 mm w.c. One psi is 27.7 in. w.c.
/// in the code's text (IFGC 402.4); the often quoted 27.7076 belongs to the inch of water at 60 °F,
/// 248.84 Pa.
#[test]
fn pressure_rows() {
    let close =
        |got: f64, want: f64, eps: f64| approx::assert_abs_diff_eq!(got, want, epsilon = eps);
    close(11.0 * PA_PER_INWC / 100.0, 27.40, 0.005);
    close(PA_PER_PSI / PA_PER_INWC, 27.7, 0.03);
    close(PA_PER_PSI / 248.84, 27.7076, 5e-4);
    close(10.0 * PA_PER_INWC, 2_490.9, 0.05);
    close(3.5 * PA_PER_INWC / 100.0, 8.718, 5e-4);
    close(PA_PER_INWC / 9.806_65, 25.4, 1e-4);
}

/// 1 ft³/h = 7.8658e-6 m³/s (NIST SP 811); one revolution of a 1 ft³ dial in 36 s is 100 ft³/h.
#[test]
fn flow_rows() {
    approx::assert_relative_eq!(M3_S_PER_CFH, 7.865_791e-6, max_relative = 1e-6);
    approx::assert_relative_eq!(
        M_PER_FT.powi(3) / 36.0 / M3_S_PER_CFH,
        100.0,
        max_relative = 1e-12
    );
}
