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
    ("healthy-natural", 1, 113806, 0x09fc_94c3_cbd6_5f7e),
    ("healthy-natural", 2, 113806, 0x09fc_94c3_cbd6_5f7e),
    ("healthy-propane", 1, 114466, 0x838c_7cd6_e233_a0ad),
    ("healthy-propane", 2, 114466, 0x838c_7cd6_e233_a0ad),
    ("borrowed-bag", 1, 105946, 0xab91_9b7d_9fcc_4a77),
    ("borrowed-bag", 2, 119206, 0x4f2c_aa8d_6aa6_3cdb),
    ("first-call-of-the-day", 1, 174626, 0x9f8f_1e7b_9106_6e5c),
    ("first-call-of-the-day", 2, 165906, 0xbdb9_a983_a67c_497c),
    ("after-the-painters", 1, 105946, 0xd249_22ca_1c9b_d7a5),
    ("after-the-painters", 2, 119206, 0x67d9_343d_1a71_87b0),
    ("no-heat-after-cleaning", 1, 114446, 0xe728_15c0_af06_9c00),
    ("no-heat-after-cleaning", 2, 126726, 0x3170_17dc_2ceb_74e0),
    ("propane-cold-morning", 1, 124686, 0xadad_dd62_34f6_6da3),
    ("propane-cold-morning", 2, 136946, 0x3aa6_f105_7017_d4a2),
    ("natural-gas-busy-kitchen", 1, 141646, 0x770d_6cf9_389e_d547),
    ("natural-gas-busy-kitchen", 2, 154906, 0x3fe9_a0d5_d5b6_2ab9),
    ("an-order-without-a-fuel", 1, 128416, 0xd006_d841_64bb_abc8),
    ("an-order-without-a-fuel", 2, 135826, 0x405a_b4cc_cf73_39b2),
    ("short-spells", 1, 121166, 0x6f73_8d63_f973_ebb9),
    ("short-spells", 2, 135676, 0x0321_7344_4c4a_06dd),
    ("a-label-of-its-own", 1, 125916, 0x5a78_ab79_90cd_4abb),
    ("a-label-of-its-own", 2, 138196, 0x89c7_e677_f0ee_2dcb),
    ("a-roar-at-night", 1, 120066, 0xb907_7816_ae04_363e),
    ("a-roar-at-night", 2, 133326, 0x8961_cbc0_8b99_3ce1),
    ("slow-half-of-winter", 1, 129816, 0xfeed_8edf_e1bd_d8b2),
    ("slow-half-of-winter", 2, 140846, 0xa1c5_6f84_0cdd_1674),
    ("a-hard-light", 1, 135406, 0x0c86_017c_5ef5_8026),
    ("a-hard-light", 2, 147466, 0xe46f_96f3_908f_5b8b),
    ("two-meters-two-numbers", 1, 136866, 0x9375_8fdd_01d2_9ce6),
    ("two-meters-two-numbers", 2, 121316, 0x5b1e_32a4_bfca_e4bf),
    ("needle-in-no-hurry", 1, 142646, 0x7671_2503_5c0e_7fa7),
    ("needle-in-no-hurry", 2, 155926, 0xbf19_28b0_08af_9c2e),
    ("behind-the-cupboard", 1, 106886, 0x2757_37c4_df7a_0b69),
    ("behind-the-cupboard", 2, 120166, 0x2262_13e9_10de_de44),
    ("the-new-dial", 1, 155096, 0x2836_2d22_6fb9_6468),
    ("the-new-dial", 2, 167376, 0xcb00_9ab4_9cd1_b0e8),
    ("lukewarm-at-dawn", 1, 137206, 0x5fc5_3542_92e7_21cc),
    ("lukewarm-at-dawn", 2, 150486, 0xa566_a093_9540_ca3a),
    ("stops-when-warm", 1, 105946, 0x4e8a_9390_e1bc_5cc6),
    ("stops-when-warm", 2, 119206, 0x1b39_3ca9_f470_c8ca),
    ("lights-and-quits", 1, 138786, 0x3435_23e8_697a_6cc7),
    ("lights-and-quits", 2, 151246, 0x3ad1_d532_5b9b_6254),
    ("hums-and-clicks", 1, 136786, 0x56d8_b904_d2cb_4329),
    ("hums-and-clicks", 2, 150046, 0xe1f3_0802_fad7_aed3),
    ("no-bite-on-high", 1, 184586, 0xf0dd_bd46_4933_a4d3),
    ("no-bite-on-high", 2, 196866, 0x5ea5_31f8_480e_1851),
    ("after-a-quiet-summer", 1, 114646, 0x5246_a8e2_158e_d673),
    ("after-a-quiet-summer", 2, 126726, 0xdffc_1445_8ce0_e8e6),
    ("leaves-on-the-lawn", 1, 105946, 0x418e_bedd_e24b_0a27),
    ("leaves-on-the-lawn", 2, 119206, 0x1cf9_e178_665c_8924),
    ("first-monday-of-frost", 1, 184586, 0xb707_23ab_bbd6_b34c),
    ("first-monday-of-frost", 2, 120166, 0x4245_2a47_baf4_f413),
    ("house-on-the-pass", 1, 123816, 0x1e2b_2bcf_f9aa_9110),
    ("house-on-the-pass", 2, 135826, 0xccb9_54e2_cf76_45f2),
    ("thaw-week", 1, 156756, 0xb0f3_cdd0_d63e_9db5),
    ("thaw-week", 2, 169036, 0xa4a3_e6cd_a729_d91b),
    ("the-helpful-cousin", 1, 123506, 0x559b_2f85_bed4_e5a1),
    ("the-helpful-cousin", 2, 136786, 0xe69b_1852_7419_8826),
    ("the-second-kitchen", 1, 105946, 0xb059_0052_cdad_a339),
    ("the-second-kitchen", 2, 119206, 0xfa46_c400_119c_df83),
    ("while-dinner-cooks", 1, 134676, 0xb057_7882_4f99_1b31),
    ("while-dinner-cooks", 2, 122586, 0x8688_9595_62bf_6fff),
    ("a-letter-about-the-yard", 1, 86071, 0xf5a1_b051_7499_d7e1),
    ("a-letter-about-the-yard", 2, 112211, 0x50a1_f8b4_5e3f_1c43),
    ("end-of-the-month", 1, 56216, 0xce65_9599_0ac9_1b9a),
    ("end-of-the-month", 2, 68486, 0xd01d_b61e_4dcb_e2a6),
    ("a-trace-by-the-door", 1, 162826, 0xb74a_2c20_e357_3332),
    ("a-trace-by-the-door", 2, 176086, 0x6e80_1955_ff74_eabf),
    ("moved-with-the-house", 1, 2550, 0x3966_4fcf_b149_948c),
    ("moved-with-the-house", 2, 2550, 0x30b2_aa77_f7f0_0b88),
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
