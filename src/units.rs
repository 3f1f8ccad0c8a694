//! Units: SI inside, the trade's units at the edges.
//!
//! Inside the model every number is SI: pascals (gauge unless a name says `abs`), standard cubic
//! metres per second (60 °F, 14.696 psia), watts, kelvins, metres, seconds.
//! The newtypes here stand where a number enters or leaves (scenario files, the job sheet);
//! inner loops use bare `f64` with the unit in the name.
//!
//! Which inch of water, which Btu: the conventional inch of water column (4 °C, 9.80665 m/s²),
//! 249.088 91 Pa, and the International Table Btu, 1055.055 852 62 J (ISO 31 / NIST SP 811).

mod quantity;
mod shown;

pub use quantity::{
    Flow, HeatRate, HeatingValue, Length, Pressure, QuantityError, Temperature, TemperatureStep,
    TimeSpan, Volume,
};
pub use shown::{PressureUnit, Shown, full_stop, hundredths_inwc, inwc};

/// Pascals in one conventional inch of water column.
pub const PA_PER_INWC: f64 = 249.088_91;
/// Degrees Fahrenheit in a kelvin, of a difference.
pub const F_PER_K: f64 = 1.8;
/// Pascals in one pound-force per square inch.
pub const PA_PER_PSI: f64 = 6_894.757_293_168;
/// Joules in one International Table Btu.
const J_PER_BTU: f64 = 1_055.055_852_62;
/// Watts in one Btu per hour.
pub const W_PER_BTU_H: f64 = J_PER_BTU / 3_600.0;
/// Metres in one foot.
pub const M_PER_FT: f64 = 0.304_8;
/// Metres in one inch.
pub const M_PER_IN: f64 = 0.025_4;
/// Cubic metres in one cubic foot.
pub const M3_PER_FT3: f64 = M_PER_FT * M_PER_FT * M_PER_FT;
/// Standard cubic metres per second in one standard cubic foot per hour.
pub const M3_S_PER_CFH: f64 = M3_PER_FT3 / 3_600.0;
/// Joules per cubic metre in one Btu per cubic foot.
pub const J_M3_PER_BTU_FT3: f64 = J_PER_BTU / M3_PER_FT3;
/// Standard temperature of gas volumes, 60 °F in kelvins.
pub const T_STD_K: f64 = 288.705_555_555_555_6;
/// Standard pressure of gas volumes, 14.696 psia in pascals.
pub const P_STD_PA: f64 = 14.696 * PA_PER_PSI;
/// Length of one step of the model, in seconds.
pub const TICK_S: f64 = 0.02;
/// Steps in one simulated second.
pub const TICKS_PER_S: u64 = 50;

/// Kelvins from degrees Fahrenheit.
#[must_use]
pub fn k_from_f(deg_f: f64) -> f64 {
    (deg_f + 459.67) / 1.8
}

/// Degrees Fahrenheit from kelvins.
#[must_use]
pub fn f_from_k(kelvin: f64) -> f64 {
    kelvin * 1.8 - 459.67
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The unit factors agree with NIST SP 811 (2008), appendix B.
    #[test]
    fn factors_match_nist_sp_811() {
        approx::assert_relative_eq!(PA_PER_INWC, 249.0889, max_relative = 1e-6);
        approx::assert_relative_eq!(PA_PER_PSI, 6.894_757e3, max_relative = 1e-6);
        approx::assert_relative_eq!(J_PER_BTU, 1.055_056e3, max_relative = 1e-6);
        approx::assert_relative_eq!(W_PER_BTU_H, 2.930_711e-1, max_relative = 1e-6);
        approx::assert_relative_eq!(M3_PER_FT3, 2.831_685e-2, max_relative = 1e-6);
        approx::assert_relative_eq!(k_from_f(60.0), T_STD_K, max_relative = 1e-12);
        approx::assert_relative_eq!(f_from_k(273.15), 32.0, max_relative = 1e-9);
    }
}
