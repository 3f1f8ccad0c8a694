//! Tables that are right, wrong, or no tables.

use proptest::prelude::*;
use quarterturn::fidelity::tables::{self, Found, Outcome, TABLES, TableError};
use quarterturn::fidelity::{Truth, Verdict};

const PIPE: &str =
    "gas,material,nominal_in,id_in,inlet,drop,length_ft,capacity,unit,source,confidence\n";

fn table(file: &str, text: &str) -> Outcome {
    match tables::read(file, text.as_bytes()).unwrap() {
        Found::Table(outcome) => outcome,
        other => panic!("{file}: {other:?}"),
    }
}

fn error(file: &str, bytes: &[u8]) -> TableError {
    tables::read(file, bytes).unwrap_err()
}

fn text_of(file: &str) -> &'static str {
    TABLES.iter().find(|(name, _)| *name == file).unwrap().1
}

fn worst(outcome: &Outcome) -> Verdict {
    let verdicts = outcome.checks.iter().map(|check| check.verdict());
    if verdicts.clone().any(|verdict| verdict == Verdict::Fail) {
        Verdict::Fail
    } else {
        Verdict::Pass
    }
}

/// Gas, material, inlet and drop come out of the columns, whatever the file is called: 6 in. w.c. of
/// drop over twelve times the length is 0.5 in., so the figures of IFGC 2018 Table 402.4(2) hold.
#[test]
fn the_columns_say_what_a_table_is() {
    let text = format!(
        "{PIPE}natural gas SG 0.60,Schedule 40 metallic,1/2,0.622,<2 psi,6.0 in w.c.,120,172,ft3/h,x,found\n\
         natural gas SG 0.60,Schedule 40 metallic,12,11.938,<2 psi,6.0 in w.c.,120,399000,ft3/h,x,found\n"
    );
    for file in ["pipe_ng_sch40_6p0inwc.csv", "anything.csv", "csst.csv"] {
        let outcome = table(file, &text);
        let ids: Vec<&str> = outcome.checks.iter().map(|check| check.id.as_str()).collect();
        assert!(ids.contains(&"pipe.steel.natural.drop-6-inwc"), "{file}: {ids:?}");
        assert_eq!(worst(&outcome), Verdict::Pass, "{file}");
    }
}

/// CRLF, a byte-order mark, columns in another order and further columns change nothing.
#[test]
fn spelling_of_the_file_does_not_matter() {
    for file in ["pipe_ng_sch40_0p5inwc.csv", "csst_ng_3p0inwc.csv", "gas_properties.csv"] {
        let plain = table(file, text_of(file));
        let other = format!("\u{feff}{}", text_of(file).replace('\n', "\r\n"));
        assert_eq!(table(file, &other).checks, plain.checks, "{file}");
    }
    let text = "unit,capacity,length_ft,drop,inlet,id_in,nominal_in,material,gas,more\n\
                ft3/h,172,10,0.5 in w.c.,<2 psi,0.622,1/2,Schedule 40 metallic,natural gas,\"a, b\"\n";
    assert_eq!(worst(&table("x.csv", text)), Verdict::Pass);
}

/// The checks can fail: in every table, figures made 5 % larger than they are break a check that
/// holds as they stand; a pass is no accident.
#[test]
fn a_wrong_figure_fails() {
    let cases = [
        ("pipe_ng_sch40_0p5inwc.csv", ",399000,", ",419000,"),
        ("pipe_ng_copper_2psi_drop1psi.csv", ",1030,", ",1090,"),
        ("pipe_lp_sch40_10psi_drop1psi_unrounded.csv", ",3339,", ",3459,"),
        ("csst_ng_3p0inwc.csv", ",277,", ",290,"),
        ("csst_lp_11inwc_drop0p5.csv", ",355,", ",375,"),
        ("csst_lp_5psi_drop3p5psi.csv", ",826,", ",926,"),
        ("orifice_drill_sizes.csv", "#43,0.089", "#43,0.089001"),
        ("orifice_nfpa54_utility_rows.csv", "#76,0.02,7,1.61", "#76,0.02,7,1.69"),
        ("orifice_nfpa54_propane_11inwc.csv", ",13008,", ",13658,"),
        ("orifice_capacity_computed.csv", ",0.516,", ",0.542,"),
        ("leak_orifice_flow.csv", ",4.138,", ",4.338,"),
        ("appliance_firing_ratio.csv", ",75.6,", ",79.4,"),
        ("meter_clocking.csv", ",100.0,200.0,", ",105.0,200.0,"),
        ("meter_clocking_published.csv", ",120,240,", ",117,240,"),
        ("gas_properties.csv", "70F 127", "70F 134"),
        ("altitude_derate.csv", ",0.9283,", ",0.9747,"),
        ("altitude_examples.csv", "= 0.842", "= 0.884"),
        ("combustion_products.csv", ",6.47,", ",6.79,"),
        ("combustion_facts.csv", "-> 75;", "-> 79;"),
        ("dilution_test_vectors.csv", "0.4866,", "0.5109,"),
        ("dilution_equations.csv", "steady 4.76", "steady 5.00"),
        ("regulator_force_balance_examples.csv", ",1.11,", ",1.17,"),
        ("regulator_worked_examples.csv", "0.889 psig", "0.933 psig"),
        ("airside.csv", "50.0 F", "52.5 F"),
        ("manometer_conversions.csv", "2.4908891", "2.6154336"),
        ("pipe_fitting_equivalent_lengths.csv", ",5.17,", ",5.43,"),
        ("pipe_sg_multipliers.csv", ",0.93,", ",0.98,"),
        ("pipe_gas_factors.csv", ",0.6094,", ",0.6399,"),
        ("csst_flow_law_fit.csv", ",835.7,", ",877.5,"),
        ("csst_rules.csv", "= 1.58 *", "= 1.66 *"),
        ("test_vectors.csv", "27.40 mbar", "28.77 mbar"),
    ];
    for (file, right, wrong) in cases {
        let text = text_of(file);
        assert!(text.contains(right), "{file}: {right}");
        assert_eq!(worst(&table(file, text)), Verdict::Pass, "{file}");
        let spoiled = text.replacen(right, wrong, 1);
        assert_eq!(worst(&table(file, &spoiled)), Verdict::Fail, "{file}: {right} for {wrong}");
    }
}

/// A column of a transcribed table that stands 2 % off fails though each cell is within what a
/// transcription is trusted to.
#[test]
fn a_drift_of_a_whole_column_fails() {
    let mut text = PIPE.to_owned();
    for (feet, capacity) in [(10, 360), (20, 247), (30, 199), (40, 170), (60, 137), (80, 117)] {
        let off = f64::from(capacity) * 0.98;
        text.push_str(&format!(
            "natural gas,Schedule 40 metallic,3/4,0.824,<2 psi,0.5 in w.c.,{feet},{off:.0},ft3/h,S3,found\n"
        ));
    }
    let outcome = table("x.csv", &text);
    let columns = outcome.checks.iter().find(|check| check.id.ends_with(".columns")).unwrap();
    assert_eq!(columns.verdict(), Verdict::Fail, "{columns:?}");
}

/// Rows from memory are kept apart from published ones.
#[test]
fn memory_is_kept_apart() {
    let outcome = table("orifice_drill_sizes.csv", text_of("orifice_drill_sizes.csv"));
    for check in &outcome.checks {
        assert_eq!(check.id.ends_with(".memory"), check.truth == Truth::Memory, "{}", check.id);
    }
    assert_eq!(outcome.checks.len(), 2);
}

/// Whatever is wrong is told with file, line and field.
#[test]
fn errors_tell_the_place() {
    let row =
        "natural gas,Schedule 40 metallic,1/2,0.622,<2 psi,0.5 in w.c.,10,172,ft3/h,x,found\n";
    let with = |from: &str, to: &str| format!("{PIPE}{row}{}", row.replacen(from, to, 1));
    let cases: [(String, u64, usize, &str); 15] = [
        (String::new(), 1, 1, "empty"),
        ("\r\n\r\n".to_owned(), 1, 1, "empty"),
        (PIPE.to_owned(), 2, 1, "no row"),
        (format!("{PIPE}{}", row.replace(",found", "")), 2, 11, "10 fields"),
        (with("172", "NaN"), 3, 8, "outside"),
        (with("172", "inf"), 3, 8, "outside"),
        (with("172", "1e999"), 3, 8, "outside"),
        (with("172", "many"), 3, 8, "not a number"),
        (with(",10,", ",-10,"), 3, 7, "outside"),
        (with(",10,", ",1e300,"), 3, 7, "outside"),
        (with("0.622", "0"), 3, 4, "outside"),
        (with("natural gas", "helium"), 3, 1, "neither"),
        (with("Schedule 40 metallic", "clay"), 3, 2, "neither"),
        (with("0.5 in w.c.", "0.5"), 3, 6, "psi"),
        (with("ft3/h", "kBtu/h"), 3, 9, "natural gas"),
    ];
    for (text, line, column, words) in cases {
        let found = error("pipe_ng_sch40_x.csv", text.as_bytes());
        assert_eq!((found.line, found.column), (line, column), "{found}");
        assert!(found.to_string().starts_with(&format!("pipe_ng_sch40_x.csv:{line}:{column}: ")));
        assert!(found.message.contains(words), "{found}");
    }
    let missing = PIPE.replace("drop,", "");
    let found = error(
        "pipe_ng_sch40_x.csv",
        format!("{missing}{}", row.replace("0.5 in w.c.,", "")).as_bytes(),
    );
    assert!(found.message.contains("`drop`") && found.line == 1, "{found}");
    let twice = error("x.csv", b"a,b,a\n1,2,3\n");
    assert_eq!((twice.line, twice.column), (1, 3), "{twice}");
    let bytes = [PIPE.as_bytes(), &row.as_bytes()[..30], &[0xff, 0xfe]].concat();
    assert_eq!(error("x.csv", &bytes).line, 2);
    assert_eq!(error("x.csv", b"a,b\n1,\0\n").column, 2);
    assert!(error("x.csv", &vec![b'a'; tables::MAX_BYTES + 1]).message.contains("larger"));
}

/// A strange table is passed over, a known document is named with the reason.
#[test]
fn strange_tables_are_passed_over() {
    assert!(matches!(tables::read("x.csv", b"a,b\n1,2\n").unwrap(), Found::Unknown));
    let header = "item,value,source,confidence\nx,y,z,found\n";
    assert!(matches!(tables::read("y.csv", header.as_bytes()).unwrap(), Found::Unknown));
    assert!(matches!(tables::read("leak_rules.csv", b"anything").unwrap(), Found::NotUsed(_)));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// No bytes and no change to a table make the reader panic.
    #[test]
    fn nothing_panics(
        which in 0..TABLES.len(),
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6),
    ) {
        let (name, text) = TABLES[which];
        // The head of a table holds every kind of cell, and is quick.
        let mut bytes: Vec<u8> = text.lines().take(6).collect::<Vec<_>>().join("\n").into_bytes();
        for (at, byte) in changes {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        let _ = tables::read(name, &bytes);
        let _ = tables::read("other.csv", &bytes);
    }

    #[test]
    fn no_bytes_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let _ = tables::read("pipe_ng_x.csv", &bytes);
        let _ = tables::read("test_vectors.csv", &bytes);
    }
}
