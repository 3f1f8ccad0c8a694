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
    ("healthy-natural", 1, 113806, 0xe793_bc50_4d32_955e),
    ("healthy-natural", 2, 113806, 0xe793_bc50_4d32_955e),
    ("healthy-propane", 1, 114466, 0x1be0_2b65_961b_3e15),
    ("healthy-propane", 2, 114466, 0x1be0_2b65_961b_3e15),
    ("borrowed-bag", 1, 105946, 0x3ffd_e9d5_afa5_2277),
    ("borrowed-bag", 2, 119206, 0xac27_ee98_d6c7_4e5b),
    ("first-call-of-the-day", 1, 174626, 0x9ef1_524c_3d3e_b3a4),
    ("first-call-of-the-day", 2, 165906, 0x546e_6614_afb7_b254),
    ("after-the-painters", 1, 105946, 0x8d3f_c198_cafa_04c5),
    ("after-the-painters", 2, 119206, 0x7eba_c887_a275_fee0),
    ("no-heat-after-cleaning", 1, 114446, 0x76f0_a230_1f45_e590),
    ("no-heat-after-cleaning", 2, 126726, 0x8377_1c72_befd_f198),
    ("propane-cold-morning", 1, 124686, 0xa536_ee72_884d_77f3),
    ("propane-cold-morning", 2, 136946, 0xbad1_a591_4558_e7ca),
    ("natural-gas-busy-kitchen", 1, 141646, 0x4c91_c950_a53e_ad47),
    ("natural-gas-busy-kitchen", 2, 154906, 0xc6d1_03f7_70bd_b1a9),
    ("an-order-without-a-fuel", 1, 128416, 0xe215_ad8a_188e_7330),
    ("an-order-without-a-fuel", 2, 135826, 0x2e8b_a9db_1c1b_5e32),
    ("short-spells", 1, 121166, 0x949c_b326_575f_e229),
    ("short-spells", 2, 135676, 0x877e_e52d_c80f_8635),
    ("a-label-of-its-own", 1, 125916, 0xba37_2c6d_1f8b_ff43),
    ("a-label-of-its-own", 2, 138196, 0x8310_5aaa_2bd8_2fe3),
    ("a-roar-at-night", 1, 120066, 0xce1a_1ee5_5de2_f0a6),
    ("a-roar-at-night", 2, 133326, 0x5ff8_8eee_abc6_ce01),
    ("slow-half-of-winter", 1, 129816, 0xefbc_13f2_400d_f55a),
    ("slow-half-of-winter", 2, 140846, 0x8e37_2e2e_8f5f_a684),
    ("a-hard-light", 1, 135406, 0x69cc_de44_47df_79fe),
    ("a-hard-light", 2, 147466, 0xf47f_8491_f72e_8e5b),
    ("two-meters-two-numbers", 1, 136866, 0xbf8e_3b1c_95e7_a676),
    ("two-meters-two-numbers", 2, 121316, 0x5499_718d_3d54_d25f),
    ("needle-in-no-hurry", 1, 142646, 0xde5d_9791_25f6_7cd7),
    ("needle-in-no-hurry", 2, 155926, 0xe31d_4577_5a89_14ae),
    ("behind-the-cupboard", 1, 106886, 0xa4b5_0a02_1586_7719),
    ("behind-the-cupboard", 2, 120166, 0x10b5_1d9c_4059_74e4),
    ("the-new-dial", 1, 155096, 0x21d1_dc81_ce6d_8218),
    ("the-new-dial", 2, 167376, 0x04f9_0501_0c79_1e38),
    ("lukewarm-at-dawn", 1, 137206, 0xf331_9229_d1fc_491c),
    ("lukewarm-at-dawn", 2, 150486, 0x9553_d0c6_f337_07ba),
    ("stops-when-warm", 1, 105946, 0x6265_91f6_18e5_3426),
    ("stops-when-warm", 2, 119206, 0xce65_c061_3cf1_8b3a),
    ("lights-and-quits", 1, 114646, 0x77fd_2170_14a8_ac2b),
    ("lights-and-quits", 2, 126726, 0x7bce_30b1_e728_688a),
    ("hums-and-clicks", 1, 106146, 0xe7e9_e446_c466_c127),
    ("hums-and-clicks", 2, 119206, 0xebac_276d_1fed_eeab),
    ("no-bite-on-high", 1, 184586, 0xa2c0_21e3_da5d_0e6b),
    ("no-bite-on-high", 2, 196866, 0x18fa_a63a_e883_7f19),
    ("after-a-quiet-summer", 1, 114646, 0x1bc4_07bb_25be_f7db),
    ("after-a-quiet-summer", 2, 126726, 0x14ed_7040_c18a_33ee),
    ("leaves-on-the-lawn", 1, 105946, 0xe19b_5abd_8a12_aa1f),
    ("leaves-on-the-lawn", 2, 119206, 0x2a9f_2392_a4cd_ce34),
    ("first-monday-of-frost", 1, 184586, 0xdb08_55e4_af77_077c),
    ("first-monday-of-frost", 2, 120166, 0x246a_1b73_1cbe_4e93),
    ("house-on-the-pass", 1, 123816, 0x97e2_7f15_df47_7280),
    ("house-on-the-pass", 2, 135826, 0x6b72_47a0_fb13_7682),
    ("thaw-week", 1, 126116, 0x71d8_57bc_f175_b7eb),
    ("thaw-week", 2, 138196, 0x76ae_8c04_43e0_5991),
    ("the-helpful-cousin", 1, 123506, 0xa748_7776_1bac_3681),
    ("the-helpful-cousin", 2, 136786, 0x5f2a_77c5_8b45_efae),
    ("the-second-kitchen", 1, 105946, 0x2015_cc5f_582b_4cf9),
    ("the-second-kitchen", 2, 119206, 0xf870_0382_4715_3db3),
    ("while-dinner-cooks", 1, 134676, 0x24cf_acb4_e1dc_3821),
    ("while-dinner-cooks", 2, 122586, 0x3751_2ca2_5a0b_800f),
    ("wet-and-windy", 1, 171006, 0x23de_1883_0e58_33f8),
    ("wet-and-windy", 2, 142646, 0x6259_7d0b_0f69_f421),
    ("a-letter-about-the-yard", 1, 86071, 0x1b06_f2af_3b90_39f9),
    ("a-letter-about-the-yard", 2, 112211, 0x3348_c585_12de_0186),
    ("end-of-the-month", 1, 56216, 0x023d_bf44_2f82_6670),
    ("end-of-the-month", 2, 68486, 0x021e_3f77_25d8_14ec),
    ("a-trace-by-the-door", 1, 162826, 0xaea1_5e7c_2da5_2bd2),
    ("a-trace-by-the-door", 2, 176086, 0xe4b9_7205_9ef3_153f),
    ("moved-with-the-house", 1, 2550, 0xa2bb_3bee_ec76_567c),
    ("moved-with-the-house", 2, 2550, 0xd060_dac4_8006_8898),
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
