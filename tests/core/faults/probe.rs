use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::fault::Fault;
use quarterturn::bench::fault::pattern::{Hands, Pattern, measure};
use quarterturn::bench::part::Port;
use quarterturn::bench::seen::Display;
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::units::*;

fn show(name: &str, p: &Pattern) {
    println!("== {name}");
    for (i, pt) in p.points.iter().enumerate() {
        let t = &pt.truth;
        println!(
            "   {:5} in {:6.2} man {:5.2} ({:4.2}/{:4.2}) {:5.1}% ua {:4.2} ex {:5.2} co {:6.0} rise {:5.1} draft {:4.2} meter {:5.2} leak {:.3} vent {:.3} veg {:.3} fl {:.3} {}",
            ["rest", "low", "high", "other", "again"][i],
            t.inlet_pa / PA_PER_INWC,
            t.manifold_pa / PA_PER_INWC,
            (pt.swing_pa[0].1 - pt.swing_pa[0].0) / PA_PER_INWC,
            (pt.swing_pa[1].1 - pt.swing_pa[1].0) / PA_PER_INWC,
            t.input_w / W_PER_BTU_H / 800.0,
            t.flame_ua,
            t.excess_air.unwrap_or(9.99),
            t.co_air_free_ppm,
            t.rise_k * 1.8,
            t.draft_pa / PA_PER_INWC,
            t.burner_flow_m3_s / M3_S_PER_CFH,
            t.leak_m3_s.iter().sum::<f64>() / M3_S_PER_CFH,
            t.vented_m3_s / M3_S_PER_CFH,
            t.gas_fraction[0] * 100.0,
            t.gas_fraction[1] * 100.0,
            pt.missed.map(|m| format!("{m:?}")).unwrap_or_default(),
        );
    }
    println!("   {:?}", p.signs);
}

#[test]
fn probe() {
    let only = std::env::var("FAULT").unwrap_or_default();
    for fuel in [Fuel::Natural, Fuel::Propane] {
        let base = healthy_for(Fault::SupplySetLow, fuel).unwrap();
        show(&format!("healthy {fuel:?}"), &measure(base, Hands::AsFound, None));
        for &fault in Fault::ALL {
            if !fault.name().contains(&only) {
                continue;
            }
            let Some(mut setup) = healthy_for(fault, fuel) else { continue };
            let s = fault.entry().severity.typical(fuel);
            fault.apply(&mut setup, s);
            show(
                &format!("{fuel:?} {} {}", fault.name(), fault.entry().severity.show(s)),
                &measure(setup.clone(), Hands::AsFound, None),
            );
            if fault.name().contains("meter") || fault.name().contains("tap") {
                for port in [Port::Inlet, Port::Manifold] {
                    let p = measure(setup.clone(), Hands::AsFound, Some(port));
                    print!("   {port:?}");
                    for pt in p.points {
                        match pt.display {
                            Display::Number(n) => print!(" {}", n.value),
                            d => print!(" {d:?}"),
                        }
                    }
                    println!();
                }
            }
        }
    }
}
