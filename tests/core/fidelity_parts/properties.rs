//! The invariants on networks that nobody chose.

use proptest::prelude::*;
use quarterturn::fidelity::invariants::nets::{
    fall_on_opening, imbalance, order_effect, overshoot_pa, turning_effect,
};
use quarterturn::fidelity::invariants::shape::{Link, LinkKind, Shape, Volume};

fn kind() -> impl Strategy<Value = LinkKind> {
    prop_oneof![
        4 => (-8.0..-4.0_f64).prop_map(|power| LinkKind::Hole(10_f64.powf(power))),
        2 => (0.006..0.06_f64, 0.2..40.0_f64).prop_map(|(id_m, length_m)| LinkKind::Pipe(id_m, length_m)),
        1 => (prop::sample::select(vec![13_u16, 15, 18, 19, 23, 25, 30, 37]), 0.3..30.0_f64)
            .prop_map(|(ehd, length_m)| LinkKind::Tubing(ehd, length_m)),
        1 => (250.0..3_000.0_f64, 1e-4..2e-3_f64).prop_map(|(set_pa, flow)| LinkKind::Regulator(set_pa, flow)),
    ]
}

/// Any network of up to nine volumes; volumes may hang together anyhow, or on nothing.
fn shape() -> impl Strategy<Value = Shape> {
    (prop::collection::vec(0.0..7e4_f64, 1..4), 1..10_usize).prop_flat_map(|(sources, count)| {
        let places = sources.len() + count;
        let first = sources.len();
        let volume = (-5.5..-1.5_f64, -500.0..7e4_f64)
            .prop_map(|(power, start_pa)| Volume { m3: 10_f64.powf(power), start_pa });
        let link = (0..places, 0..places, kind())
            .prop_filter("two sources need no link", move |&(from, to, _)| {
                from != to && (from >= first || to >= first)
            })
            .prop_map(|(from, to, kind)| Link { from, to, kind });
        (Just(sources), prop::collection::vec(volume, count), prop::collection::vec(link, 1..16))
            .prop_map(|(sources, volumes, links)| Shape { sources, volumes, links })
    })
}

/// A shape and another order of its places and links.
fn shape_and_order() -> impl Strategy<Value = (Shape, Vec<usize>, Vec<usize>)> {
    shape().prop_flat_map(|shape| {
        let places: Vec<usize> = (0..shape.places()).collect();
        let links: Vec<usize> = (0..shape.links.len()).collect();
        (Just(shape), Just(places).prop_shuffle(), Just(links).prop_shuffle())
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    /// Gas is conserved within 1e-9 of the throughput.
    #[test]
    fn gas_is_conserved(shape in shape()) {
        let found = imbalance(&shape);
        prop_assert!(found <= 1e-9, "{found:e}");
    }

    /// Pressures stay between their own past and their neighbours' present.
    #[test]
    fn pressures_stay_between(shape in shape()) {
        let found = overshoot_pa(&shape);
        prop_assert!(found <= 1e-3, "{found:e} Pa");
    }

    /// An opening that is opened more never passes less (regulators fed from behind apart).
    #[test]
    fn opening_more_never_passes_less(shape in shape()) {
        let found = fall_on_opening(&shape);
        prop_assert!(found <= 1e-9, "{found:e}");
    }

    /// Numbering changes nothing.
    #[test]
    fn order_changes_nothing((shape, places, links) in shape_and_order()) {
        let found = order_effect(&shape, &places, &links);
        prop_assert!(found <= 1e-9, "{found:e}");
    }

    /// Ways turned round carry the same flow.
    #[test]
    fn turning_changes_the_sign_only(shape in shape()) {
        let found = turning_effect(&shape);
        prop_assert!(found <= 1e-9, "{found:e}");
    }
}

/// A net that ends in a regulator fed through nothing but itself comes to rest slowly.
#[test]
fn opening_a_dead_end_passes_no_less() {
    let volume = |m3| Volume { m3, start_pa: 0.0 };
    let hole = |from, to| Link { from, to, kind: LinkKind::Hole(1e-4) };
    let large = 10_f64.powf(-1.5);
    let mut volumes = vec![volume(large); 8];
    volumes[1] = volume(5.076_753_790_290_026e-6);
    let regulator = LinkKind::Regulator(2_936.473_588_457_543, 1e-4);
    let shape = Shape {
        sources: vec![61_383.924_646_803_294, 33_453.416_077_551_53, 44_309.191_088_896_8],
        volumes,
        links: vec![hole(8, 4), hole(0, 5), Link { from: 0, to: 4, kind: regulator }, hole(3, 0)],
    };
    let found = fall_on_opening(&shape);
    assert!(found <= 1e-9, "{found:e}");
}
