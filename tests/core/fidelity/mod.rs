//! x
#[test]
fn temp() {
    let mut all: Vec<_> = std::fs::read_dir("assets/reference").unwrap().map(|e| e.unwrap().path()).collect();
    all.sort();
    for path in all {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        
        let bytes = std::fs::read(&path).unwrap();
        match quarterturn::fidelity::tables::temp(&name, &bytes) {
            Ok(out) => for c in out.checks {
                let devs: Vec<f64> = c.rows.iter().map(|r| 100.0*(r.judged()/r.reference-1.0)).collect();
                let lo = devs.iter().copied().fold(9e9, f64::min); let hi = devs.iter().copied().fold(-9e9, f64::max);
                println!("{:60} n {:4} {:+.2} {:+.2} {:?}", c.id, c.rows.len(), lo, hi, c.verdict());
                for r in &c.rows { if c.verdict()==quarterturn::fidelity::Verdict::Fail && !c.holds(r) { println!("      {} ref {} got {:.2} dev {:+.2}", r.label, r.reference, r.result, 100.0*(r.judged()/r.reference-1.0)); } }
            },
            Err(e) => println!("{e}"),
        }
    }
}
