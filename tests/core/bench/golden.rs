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
    ("healthy-natural", 1, 112006, 0xfedc_6d2b_d280_ea1e),
    ("healthy-natural", 2, 112006, 0xfedc_6d2b_d280_ea1e),
    ("healthy-propane", 1, 119526, 0x6ee6_0717_da67_7534),
    ("healthy-propane", 2, 119526, 0x6ee6_0717_da67_7534),
    ("borrowed-bag", 1, 115606, 0x830b_1a1f_13a4_1e75),
    ("borrowed-bag", 2, 112146, 0x1f09_e7c5_cf2f_447e),
    ("first-call-of-the-day", 1, 173026, 0xfa45_d326_8ad6_1189),
    ("first-call-of-the-day", 2, 164406, 0x168b_188c_aa70_83e5),
    ("after-the-painters", 1, 109506, 0x30c4_d7fa_a881_4ea5),
    ("after-the-painters", 2, 117406, 0x0528_4d60_8c82_f825),
    ("no-heat-after-cleaning", 1, 111046, 0x8fd7_37d9_ebe4_5e38),
    ("no-heat-after-cleaning", 2, 124926, 0x3685_1d94_26f7_400e),
    ("propane-cold-morning", 1, 121036, 0xa252_8ea6_c8af_b7ca),
    ("propane-cold-morning", 2, 134696, 0x5a7a_9ea2_5e4a_0fc6),
    ("natural-gas-busy-kitchen", 1, 144366, 0xabb4_41b3_327b_aec0),
    ("natural-gas-busy-kitchen", 2, 152266, 0x2630_f63e_fe6e_5559),
    ("an-order-without-a-fuel", 1, 124976, 0x5df1_c8de_622c_1e6a),
    ("an-order-without-a-fuel", 2, 133686, 0x5d9d_2f05_fec7_42cf),
    ("short-spells", 1, 124286, 0xcb23_ffa4_d666_7bae),
    ("short-spells", 2, 133436, 0x4492_4ed3_24c7_ac04),
    ("a-label-of-its-own", 1, 122266, 0x6ac4_613c_f9de_f177),
    ("a-label-of-its-own", 2, 135946, 0xd1f0_afef_078f_dbae),
    ("a-roar-at-night", 1, 123086, 0x2e3c_9af4_9dc9_b46c),
    ("a-roar-at-night", 2, 129736, 0x155b_cae0_3ec3_2f43),
    ("slow-half-of-winter", 1, 126076, 0x27a7_a8c5_1a2d_6925),
    ("slow-half-of-winter", 2, 138506, 0xe7b4_4013_2fb2_508d),
    ("a-hard-light", 1, 138866, 0x28fe_901a_6089_7f9c),
    ("a-hard-light", 2, 145566, 0xf3b3_e68b_22d1_1afb),
    ("two-meters-two-numbers", 1, 118826, 0x9ec1_f4e8_518f_50b1),
    ("two-meters-two-numbers", 2, 126396, 0xd991_f6c6_5cad_5a91),
    ("needle-in-no-hurry", 1, 145726, 0xcf6b_d149_895f_2701),
    ("needle-in-no-hurry", 2, 153606, 0xe763_d53e_2aaf_9b87),
    ("behind-the-cupboard", 1, 110566, 0x5b73_56a7_c5b3_1c7d),
    ("behind-the-cupboard", 2, 118466, 0x5e27_d915_a31c_bc72),
    ("the-new-dial", 1, 152506, 0xe9ff_eef5_9d30_e852),
    ("the-new-dial", 2, 166186, 0xedee_787b_be3a_223b),
    ("lukewarm-at-dawn", 1, 139986, 0x3554_5506_dee3_df8b),
    ("lukewarm-at-dawn", 2, 147886, 0x7256_d56c_c5dd_60da),
    ("stops-when-warm", 1, 109506, 0x483a_d631_6cb5_3201),
    ("stops-when-warm", 2, 117406, 0xbd37_5b49_de32_cc20),
    ("lights-and-quits", 1, 111246, 0xe762_50c1_26b9_1267),
    ("lights-and-quits", 2, 124926, 0x2a03_3428_2470_9475),
    ("hums-and-clicks", 1, 102946, 0x603c_e62c_0ad9_bfc5),
    ("hums-and-clicks", 2, 117406, 0x29bc_745c_849b_62cd),
    ("no-bite-on-high", 1, 179486, 0x086c_785b_509d_99d1),
    ("no-bite-on-high", 2, 193166, 0x4652_9a19_c8b4_8947),
    ("after-a-quiet-summer", 1, 111246, 0x4d58_c7f4_134e_791d),
    ("after-a-quiet-summer", 2, 124926, 0x3c22_f720_a26c_d921),
    ("leaves-on-the-lawn", 1, 109506, 0x17f1_ca99_04f3_8519),
    ("leaves-on-the-lawn", 2, 117406, 0x5706_b740_36d8_dbf8),
    ("first-monday-of-frost", 1, 179686, 0xa58c_ae91_dfa8_0272),
    ("first-monday-of-frost", 2, 118666, 0x21ba_5403_d53d_5fa6),
    ("house-on-the-pass", 1, 126836, 0x5f97_64b1_4651_90c6),
    ("house-on-the-pass", 2, 133486, 0x0a8f_65ba_20ce_46a0),
    ("thaw-week", 1, 122466, 0xefcc_c69f_ec8c_e2fb),
    ("thaw-week", 2, 135946, 0xf397_3c8f_26d1_5d95),
    ("the-helpful-cousin", 1, 126646, 0x79b0_36f8_aab7_84d1),
    ("the-helpful-cousin", 2, 134546, 0xde02_7750_ab7a_cbe4),
    ("the-second-kitchen", 1, 109506, 0x2a2d_fa86_0887_0a61),
    ("the-second-kitchen", 2, 117406, 0x86b2_3b6a_9fd5_fbc4),
    ("while-dinner-cooks", 1, 132336, 0x5e29_2bc0_9347_f55c),
    ("while-dinner-cooks", 2, 127186, 0x7019_dc90_7a98_d75f),
    ("wet-and-windy", 1, 168766, 0x6668_32d3_9caa_4a40),
    ("wet-and-windy", 2, 147366, 0x70d5_c54b_a16f_5e21),
    ("a-letter-about-the-yard", 1, 100391, 0xb793_dec0_76ee_21be),
    ("a-letter-about-the-yard", 2, 95211, 0xe4d6_55cb_6d94_3abb),
    ("end-of-the-month", 1, 54216, 0x6e4c_178e_6291_7ac5),
    ("end-of-the-month", 2, 67886, 0x65bf_7668_95be_f2b8),
    ("a-trace-by-the-door", 1, 162806, 0x60ae_368e_e3f4_a282),
    ("a-trace-by-the-door", 2, 170706, 0xc7e8_070f_c00f_b7ed),
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
