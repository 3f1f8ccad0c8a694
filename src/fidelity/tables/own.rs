//! The project's own tables.

macro_rules! tables {
    ($($name:literal),+ $(,)?) => {
        /// Name and text of every table in `assets/reference`, in the order of the guide.
        pub const TABLES: &[(&str, &str)] = &[
            $(($name, include_str!(concat!("../../../assets/reference/", $name))),)+
        ];
    };
}

tables!(
    "pipe_equations.csv",
    "pipe_fitting_equivalent_lengths.csv",
    "pipe_gas_factors.csv",
    "pipe_legacy_editions.csv",
    "pipe_lp_copper_10psi_drop1psi.csv",
    "pipe_lp_copper_11inwc_drop0p5.csv",
    "pipe_lp_sch40_10psi_drop1psi.csv",
    "pipe_lp_sch40_10psi_drop1psi_unrounded.csv",
    "pipe_lp_sch40_11inwc_drop0p5.csv",
    "pipe_lp_sch40_2psi_drop1psi.csv",
    "pipe_ng_copper_0p3inwc.csv",
    "pipe_ng_copper_0p5inwc.csv",
    "pipe_ng_copper_1p0inwc.csv",
    "pipe_ng_copper_2psi_drop1psi.csv",
    "pipe_ng_sch40_0p3inwc.csv",
    "pipe_ng_sch40_0p5inwc.csv",
    "pipe_ng_sch40_2psi_drop1psi.csv",
    "pipe_ng_sch40_3p0inwc.csv",
    "pipe_ng_sch40_3psi_drop2psi.csv",
    "pipe_ng_sch40_5psi_drop3p5psi.csv",
    "pipe_sg_multipliers.csv",
    "csst_flow_law_fit.csv",
    "csst_lp_11inwc_drop0p5.csv",
    "csst_lp_5psi_drop3p5psi.csv",
    "csst_ng_0p5inwc.csv",
    "csst_ng_2psi_drop1psi.csv",
    "csst_ng_3p0inwc.csv",
    "csst_ng_5psi_drop3p5psi.csv",
    "csst_rules.csv",
    "orifice_capacity_computed.csv",
    "orifice_drill_sizes.csv",
    "orifice_nfpa54_propane_11inwc.csv",
    "orifice_nfpa54_utility_rows.csv",
    "appliance_firing_ratio.csv",
    "leak_orifice_flow.csv",
    "meter_clocking.csv",
    "meter_clocking_published.csv",
    "gas_properties.csv",
    "altitude_derate.csv",
    "altitude_examples.csv",
    "combustion_facts.csv",
    "combustion_products.csv",
    "dilution_equations.csv",
    "dilution_test_vectors.csv",
    "regulator_force_balance_examples.csv",
    "regulator_worked_examples.csv",
    "airside.csv",
    "manometer_conversions.csv",
    "test_vectors.csv",
);
