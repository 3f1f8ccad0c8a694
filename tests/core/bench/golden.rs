//! Golden runs: the reference technician's jobs, every shipped one on two seeds, end in exactly these states, in any profile and on
//! any machine (`tests/wasm/run` plays them in WebAssembly).
//!
//! When a number changes, look at the kept records (`record::kept`). If they come out differently
//! too, the model has changed: `docs/model-versions.md` says what to do. If not, the technician or a
//! scenario has changed: say why in the commit. Then write the new numbers here.

use quarterturn::bench::Bench;
use quarterturn::scenario::{builtin, load};
use quarterturn::technician::drive::Nobody;
use quarterturn::technician::proof::LIMIT_S;
use quarterturn::technician::{Technician, play};

/// Scenario, seed, last tick and digest.
pub const GOLDEN: &[(&str, u64, u64, u64)] = &[
    ("healthy-natural", 1, 113806, 0xaafd_52dc_0fee_cc6b),
    ("healthy-natural", 2, 113806, 0xaafd_52dc_0fee_cc6b),
    ("healthy-propane", 1, 114466, 0x44d5_ba51_6b72_1567),
    ("healthy-propane", 2, 114466, 0x44d5_ba51_6b72_1567),
    ("borrowed-bag", 1, 105946, 0x554b_ec3e_a1d3_1a3d),
    ("borrowed-bag", 2, 119206, 0xc1ff_c1b5_f29f_21a0),
    ("first-call-of-the-day", 1, 174626, 0x5de2_848d_7752_91f9),
    ("first-call-of-the-day", 2, 165906, 0x4fb7_2b78_c588_ede3),
    ("after-the-painters", 1, 105946, 0x565b_3ad0_2f5d_c790),
    ("after-the-painters", 2, 119206, 0xf23a_b883_5130_7274),
    ("no-heat-after-cleaning", 1, 114446, 0x426d_87e0_602f_fcd3),
    ("no-heat-after-cleaning", 2, 126726, 0xc9d8_e687_370c_4968),
    ("propane-cold-morning", 1, 124686, 0x4953_ca67_ab18_42b8),
    ("propane-cold-morning", 2, 136946, 0x3636_08f7_c953_3d16),
    ("natural-gas-busy-kitchen", 1, 141646, 0x5838_311b_d9b0_c2b8),
    ("natural-gas-busy-kitchen", 2, 154906, 0x7138_b991_406f_22ee),
    ("an-order-without-a-fuel", 1, 128416, 0xfe34_4b56_732a_5a79),
    ("an-order-without-a-fuel", 2, 135826, 0x54ab_9742_04ab_7d35),
    ("short-spells", 1, 121166, 0x7953_9b41_d3b0_e1b7),
    ("short-spells", 2, 135676, 0x1c3c_0fc4_00ba_c7d5),
    ("a-label-of-its-own", 1, 125916, 0x5c08_18c1_9228_9c65),
    ("a-label-of-its-own", 2, 138196, 0x55ca_0473_c340_cb19),
    ("a-roar-at-night", 1, 120066, 0x7d42_e4a0_51fb_8965),
    ("a-roar-at-night", 2, 133326, 0x629c_cf9b_c91f_9976),
    ("slow-half-of-winter", 1, 129816, 0xb2dd_a71e_42d0_eac2),
    ("slow-half-of-winter", 2, 140846, 0x63d1_509d_81e6_1796),
    ("a-hard-light", 1, 135406, 0x826e_7757_7e09_1432),
    ("a-hard-light", 2, 147466, 0xeaa6_0e26_a651_7bf0),
    ("two-meters-two-numbers", 1, 136866, 0x2cbb_305d_b10a_a063),
    ("two-meters-two-numbers", 2, 121316, 0xddda_13d1_0377_4315),
    ("needle-in-no-hurry", 1, 142646, 0x0997_8d5d_508c_48df),
    ("needle-in-no-hurry", 2, 155926, 0x98ac_2e05_5929_a62a),
    ("behind-the-cupboard", 1, 106886, 0xad0c_cdac_ebc3_6663),
    ("behind-the-cupboard", 2, 120166, 0xc43d_4b7e_99af_ac66),
    ("the-new-dial", 1, 155096, 0xdff3_9a4e_0c1f_b0e7),
    ("the-new-dial", 2, 167376, 0x0131_25ef_3de4_08ba),
    ("lukewarm-at-dawn", 1, 137206, 0x93a8_4032_75ba_2016),
    ("lukewarm-at-dawn", 2, 150486, 0xe37e_e696_ff73_d62b),
    ("stops-when-warm", 1, 105946, 0xae5b_d865_2c20_6bdb),
    ("stops-when-warm", 2, 119206, 0x36d0_b8c0_6497_df6c),
    ("lights-and-quits", 1, 114646, 0x026f_cac3_2ff9_50a0),
    ("lights-and-quits", 2, 126726, 0xb68b_27b2_aeb5_f755),
    ("hums-and-clicks", 1, 106146, 0x9022_bb44_e448_fd84),
    ("hums-and-clicks", 2, 119206, 0x902b_29fe_6c5a_edce),
    ("no-bite-on-high", 1, 184586, 0xc9de_1f95_24f2_47ab),
    ("no-bite-on-high", 2, 196866, 0xcc3a_a2ba_332b_0741),
    ("after-a-quiet-summer", 1, 114646, 0xe14c_bd68_bdd4_9490),
    ("after-a-quiet-summer", 2, 126726, 0xf469_038e_4e63_ce32),
    ("leaves-on-the-lawn", 1, 105946, 0x5d43_d57b_0301_dd7c),
    ("leaves-on-the-lawn", 2, 119206, 0xa4ef_de89_719b_2cf9),
    ("first-monday-of-frost", 1, 184586, 0x7e2b_f090_1c79_e872),
    ("first-monday-of-frost", 2, 120166, 0xde29_028c_0330_d5b6),
    ("house-on-the-pass", 1, 123816, 0x7418_1a3c_fca2_cd59),
    ("house-on-the-pass", 2, 135826, 0xcb0f_c7f5_c287_4412),
    ("thaw-week", 1, 126116, 0x9a5e_4bf6_9aa2_4292),
    ("thaw-week", 2, 138196, 0xb242_4991_dda7_af8d),
    ("the-helpful-cousin", 1, 123506, 0xb08f_e0c4_a17f_6344),
    ("the-helpful-cousin", 2, 136786, 0x5bb7_1e3c_93a8_0ed2),
    ("the-second-kitchen", 1, 105946, 0xe2ae_2255_46c7_252e),
    ("the-second-kitchen", 2, 119206, 0xff7c_21e3_fecc_45b5),
    ("while-dinner-cooks", 1, 134676, 0x866e_710f_9310_bd1e),
    ("while-dinner-cooks", 2, 122586, 0x7d4c_e327_e3e1_6134),
    ("wet-and-windy", 1, 171006, 0x38d4_5a06_41ae_ba39),
    ("wet-and-windy", 2, 142646, 0x0cbb_717e_7887_21ac),
    ("a-letter-about-the-yard", 1, 86071, 0x9cfe_6644_b906_b272),
    ("a-letter-about-the-yard", 2, 112211, 0x7771_593b_211e_2de2),
    ("end-of-the-month", 1, 56216, 0x3c7a_af64_3bcd_6df5),
    ("end-of-the-month", 2, 68486, 0x5b82_93bd_e0d1_83ad),
    ("a-trace-by-the-door", 1, 162826, 0x5f69_0094_d973_e4b5),
    ("a-trace-by-the-door", 2, 176086, 0xcb67_62f0_a349_d03e),
    ("moved-with-the-house", 1, 2550, 0x24f6_2a8b_21db_7a6b),
    ("moved-with-the-house", 2, 2550, 0x857d_c85e_4da0_3620),
];

#[test]
fn golden_runs_end_in_the_same_state() {
    let mut found = Vec::new();
    for job in &builtin::LADDER {
        let scenario = load(job.text).unwrap();
        for seed in [1, 2] {
            let setup = scenario.draw(seed);
            let mut technician = Technician::new(&setup.card);
            let mut bench = Bench::new(setup);
            play(&mut bench, &mut technician, LIMIT_S, &mut Nobody);
            found.push((job.id, seed, bench.tick(), bench.digest()));
        }
    }
    let list: String = found
        .iter()
        .map(|(id, seed, tick, digest)| {
            format!("    (\"{id}\", {seed}, {tick}, {digest:#018x}),\n")
        })
        .collect();
    assert!(found == GOLDEN, "the runs end so now:\n{list}");
}
