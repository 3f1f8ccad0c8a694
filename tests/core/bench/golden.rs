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
    ("healthy-natural", 1, 107506, 0x6fac_0bf0_8f22_1cd8),
    ("healthy-natural", 2, 107506, 0x6fac_0bf0_8f22_1cd8),
    ("healthy-propane", 1, 115026, 0x5761_0a2c_0366_3d99),
    ("healthy-propane", 2, 115026, 0x5761_0a2c_0366_3d99),
    ("borrowed-bag", 1, 111106, 0x3a61_b342_f422_92ad),
    ("borrowed-bag", 2, 107646, 0x48a1_639d_bc4a_5dc2),
    ("first-call-of-the-day", 1, 168526, 0xbede_843c_6f19_150a),
    ("first-call-of-the-day", 2, 159906, 0xdf89_4500_7ea6_446d),
    ("after-the-painters", 1, 105006, 0xe5d8_8157_2dc3_e5d4),
    ("after-the-painters", 2, 112906, 0x03ca_d1fe_c92e_a058),
    ("no-heat-after-cleaning", 1, 106546, 0x5526_6151_dfc4_f594),
    ("no-heat-after-cleaning", 2, 120426, 0x7619_96e0_3ff2_ca12),
    ("propane-cold-morning", 1, 116536, 0x8279_94ed_dfd6_ebaf),
    ("propane-cold-morning", 2, 130196, 0x6200_9307_403b_7eb2),
    ("natural-gas-busy-kitchen", 1, 139866, 0xf483_dc88_1273_3b0e),
    ("natural-gas-busy-kitchen", 2, 147766, 0xa60f_8cc5_5cf7_edbd),
    ("an-order-without-a-fuel", 1, 120476, 0xf6b8_5788_d37f_ec13),
    ("an-order-without-a-fuel", 2, 129186, 0x8eb4_85e1_64c2_c23e),
    ("short-spells", 1, 119786, 0xac90_ab70_9332_2bca),
    ("short-spells", 2, 128936, 0xa695_c0fe_a475_3934),
    ("a-label-of-its-own", 1, 117766, 0x9b49_9685_4b08_1bb5),
    ("a-label-of-its-own", 2, 131446, 0x5d39_d486_e144_7f76),
    ("a-roar-at-night", 1, 118586, 0xbc49_e576_9416_e8b6),
    ("a-roar-at-night", 2, 126486, 0x4f4a_53b8_f8d0_4bc0),
    ("slow-half-of-winter", 1, 121576, 0xb697_d5f5_9463_6145),
    ("slow-half-of-winter", 2, 134006, 0xbb1d_58d7_84b9_6275),
    ("a-hard-light", 1, 134366, 0xe81d_7267_4c90_ef7b),
    ("a-hard-light", 2, 141066, 0x4f7c_9594_6dcf_6cca),
    ("two-meters-two-numbers", 1, 114326, 0x65a1_97fb_3564_010b),
    ("two-meters-two-numbers", 2, 121896, 0x0b3a_2cfe_efb3_c19c),
    ("needle-in-no-hurry", 1, 141226, 0xb36d_b7af_9e07_f4fa),
    ("needle-in-no-hurry", 2, 149106, 0x6c92_bcd1_3096_b5cb),
    ("behind-the-cupboard", 1, 106066, 0x9ffc_bcdc_988a_cbbe),
    ("behind-the-cupboard", 2, 113966, 0x3a06_184c_8b79_e815),
    ("the-new-dial", 1, 148276, 0x3b9d_05fb_8b85_c843),
    ("the-new-dial", 2, 161686, 0x904b_3746_be7d_a56e),
    ("lukewarm-at-dawn", 1, 135486, 0x3059_0f4a_ef2b_417c),
    ("lukewarm-at-dawn", 2, 143386, 0x875c_30fa_42ae_650d),
    ("stops-when-warm", 1, 105006, 0x2c7a_0fdf_606b_a72d),
    ("stops-when-warm", 2, 112906, 0xbc84_cd99_2462_9f94),
    ("lights-and-quits", 1, 106746, 0x615d_0950_9ff8_d5f8),
    ("lights-and-quits", 2, 120426, 0xaf12_f790_4cda_b29e),
    ("hums-and-clicks", 1, 98446, 0x647d_dff2_a919_a128),
    ("hums-and-clicks", 2, 112906, 0xd7a8_3ad0_00d0_9f48),
    ("no-bite-on-high", 1, 170486, 0x6634_0633_18bd_dfdb),
    ("no-bite-on-high", 2, 184166, 0x9686_d2cf_2069_e056),
    ("after-a-quiet-summer", 1, 106746, 0x76cb_6dbf_acb5_cf91),
    ("after-a-quiet-summer", 2, 120426, 0x2a21_c985_0ce6_ad01),
    ("leaves-on-the-lawn", 1, 105006, 0xca54_52b2_85ac_520d),
    ("leaves-on-the-lawn", 2, 112906, 0x978a_e240_14f3_c502),
    ("first-monday-of-frost", 1, 170686, 0x78c2_0ff1_8f95_ab8a),
    ("first-monday-of-frost", 2, 114166, 0x98fb_552c_2e92_5736),
    ("house-on-the-pass", 1, 122336, 0xf7e0_582e_5afa_bb6d),
    ("house-on-the-pass", 2, 128986, 0x1549_5a35_372e_cfc0),
    ("thaw-week", 1, 117966, 0x15f0_25db_3188_5568),
    ("thaw-week", 2, 131446, 0x7df5_ad45_a371_5d99),
    ("the-helpful-cousin", 1, 122146, 0x3809_9757_7e8b_3a3b),
    ("the-helpful-cousin", 2, 130046, 0x0d4d_c243_a945_7d38),
    ("the-second-kitchen", 1, 105006, 0xeaf1_4716_b423_39b7),
    ("the-second-kitchen", 2, 112906, 0x4d46_ccd6_13f7_cdd7),
    ("while-dinner-cooks", 1, 127836, 0x7a28_be16_7804_cac3),
    ("while-dinner-cooks", 2, 122686, 0x03e2_7996_25a6_ffe6),
    ("wet-and-windy", 1, 164266, 0x0898_1573_358e_2c79),
    ("wet-and-windy", 2, 142866, 0x2b9d_2355_d0cf_4610),
    ("a-letter-about-the-yard", 1, 100391, 0xb793_dec0_76ee_21be),
    ("a-letter-about-the-yard", 2, 95211, 0xe4d6_55cb_6d94_3abb),
    ("end-of-the-month", 1, 54216, 0x6e4c_178e_6291_7ac5),
    ("end-of-the-month", 2, 67886, 0x65bf_7668_95be_f2b8),
    ("a-trace-by-the-door", 1, 155286, 0x22dc_610c_31a2_bfb3),
    ("a-trace-by-the-door", 2, 163186, 0x0557_4289_9ec7_43ae),
    ("moved-with-the-house", 1, 2350, 0x10ac_ba57_bb0a_8d26),
    ("moved-with-the-house", 2, 2350, 0x5509_b002_43f1_e918),
];

#[test]
fn slow_golden_runs_end_in_the_same_state() {
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
