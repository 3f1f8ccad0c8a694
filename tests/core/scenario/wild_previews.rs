//! Shipped scenarios with numbers put out of joint and faults put in: each is refused with a place, or
//! previews to numbers, in good time.
//!
//! Time is that of the model, which no other work on the machine can stretch.

use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::measure::pattern::{Start, measure_on};
use quarterturn::rng::stream;
use quarterturn::scenario::{builtin, check, load};
use quarterturn::technician::proof::{LIMIT_S, Spoiling, prove_seed};
use quarterturn::units::TICKS_PER_S;

/// Variants tried.
const TRIED: u64 = 240;
/// Longest that a preview may go on: ten minutes at rest, twice the tries before a lockout (440 s),
/// four minutes burning, five at rest again, and as much once more for the ways between.
const LONGEST_S: u64 = 2 * (600 + 2 * 440 + 240 + 300);
/// What a number is multiplied by, or replaced with.
const FACTORS: [f64; 6] = [0.0, 0.5, 0.9, 1.1, 2.0, 10.0];
const WILD: [&str; 5] = ["NaN", "1e308", "-1", "inf", "1e-300"];

/// Where numbers that may vary stand in a text.
fn numbers(text: &str) -> Vec<(usize, usize)> {
    let bytes = text.as_bytes();
    let mut found = Vec::new();
    let mut i = 0;
    while i < bytes.len() {
        let starts = bytes[i].is_ascii_digit() && matches!(bytes[i - 1], b' ' | b'"' | b'(');
        if !starts {
            i += 1;
            continue;
        }
        let length = bytes[i..].iter().take_while(|b| b.is_ascii_digit() || **b == b'.').count();
        found.push((i, i + length));
        i += length;
    }
    found
}

fn variant(seed: u64) -> String {
    let mut chance = stream(seed, "wild previews");
    let all: Vec<_> = builtin::JOBS.iter().chain(&builtin::HEALTHY).collect();
    let mut text = all[chance.below(all.len() as u32) as usize].text.to_owned();
    // Remarks and the card hold numbers too, which change nothing.
    text = text[text.find("    site:").or(text.find("    gas:")).unwrap()..].to_owned();
    for _ in 0..=chance.below(3) {
        let found = numbers(&text);
        let (from, to) = found[chance.below(found.len() as u32) as usize];
        let new = if chance.below(12) == 0 {
            WILD[chance.below(WILD.len() as u32) as usize].to_owned()
        } else {
            let value: f64 = text[from..to].parse().unwrap_or(1.0);
            format!("{}", value * FACTORS[chance.below(FACTORS.len() as u32) as usize])
        };
        text.replace_range(from..to, &new);
    }
    let mut faults = Vec::new();
    for _ in 0..chance.below(4) {
        faults.push(Fault::ALL[chance.below(Fault::ALL.len() as u32) as usize].name());
    }
    let list = faults.join(", ");
    let head = "(\n    version: 1,\n    title: \"A\",\n    about: \"B\",\n";
    format!(
        "{head}{}",
        text.replacen("    card: (", &format!("    faults: [{list}],\n    card: ("), 1)
    )
}

/// Nothing panics, nothing hangs, no reading is without a number.
#[test]
fn slow_variants_preview_or_are_refused() {
    let (mut previewed, mut worst_s) = (0, 0);
    for seed in 0..TRIED {
        let text = variant(seed);
        let found = check("wild.ron", &text);
        match load(&text) {
            Err(_) => assert!(found.iter().all(|it| it.line >= 1), "seed {seed}: {found:#?}"),
            Ok(scenario) => {
                previewed += 1;
                for setup in [scenario.draw(seed), scenario.draw_healthy(seed)] {
                    let (pattern, bench) = measure_on(Bench::new(setup), Start::GasOn);
                    let took_s = bench.tick() / TICKS_PER_S;
                    assert!(took_s <= LONGEST_S, "seed {seed}: {took_s} s");
                    worst_s = worst_s.max(took_s);
                    for point in &pattern.points {
                        let it = &point.truth;
                        let all = [it.supply_pa, it.inlet_pa, it.manifold_pa, it.input_w];
                        assert!(all.iter().all(|it| it.is_finite()), "seed {seed}: {all:?}");
                    }
                }
            }
        }
    }
    println!("{previewed} of {TRIED} previewed, the longest in {worst_s} s of the model");
    assert!(previewed > TRIED / 5 && previewed < TRIED, "{previewed} of {TRIED}");
}

/// Every eighth of them that can be loaded is proven on one seed: the technician comes to an end, or
/// is stopped at the limit of simulated time, and its points are a number.
#[test]
fn variants_are_proven_or_told() {
    let loaded = (0..TRIED).step_by(8).filter_map(|seed| Some((seed, load(&variant(seed)).ok()?)));
    let mut proven = 0;
    for (seed, scenario) in loaded {
        let proof = prove_seed(&scenario, seed, Spoiling::No).unwrap();
        let points = proof.points;
        assert!(points.is_none_or(|it| (0.0..=100.0).contains(&it)), "seed {seed}: {proof:?}");
        assert_eq!(points.is_some(), proof.met, "seed {seed}: {proof:?}");
        assert!(proof.seconds <= LIMIT_S as f64 + 1.0, "seed {seed}: {proof:?}");
        assert_ne!(proof.ending.is_some(), proof.stopped.is_some(), "seed {seed}: {proof:?}");
        proven += 1;
    }
    assert!(proven >= 5, "{proven}");
}

/// As many faults as a list holds, and one more.
#[test]
fn very_many_faults_have_an_end() {
    let healthy = builtin::HEALTHY[0].text;
    let with = |count: usize| {
        let list = "kinked_connector(0.5), ".repeat(count);
        check(
            "many.ron",
            &healthy.replacen("    card: (", &format!("    faults: [{list}],\n    card: ("), 1),
        )
    };
    assert!(with(24).iter().all(|it| it.message.contains("twice")));
    assert!(with(25).iter().any(|it| it.expected == "at most 24"));
    assert!(with(9_000).iter().any(|it| it.expected == "at most 24"));
}
