//! The page's opening chapter: which friction law rules where most house lines run, with its price.

use std::f64::consts::PI;

use quarterturn::physics::fluid::Gas;
use quarterturn::physics::pipe::{PipeMaterial, PipeSpec, friction_factor, schedule_40_id_m};
use quarterturn::units::{M_PER_FT, M3_S_PER_CFH, PA_PER_INWC, T_STD_K, W_PER_BTU_H};

pub const TITLE: &str = "Friction below Reynolds 4,000";

const WHAT: &str = "\
Most house lines run below a Reynolds number of 4,000, where flow in a pipe may be laminar, turbulent
or both in turn. So the law used there matters more than any other choice in the pipe model.
";

const LAW: &str = "\
**The law.** One formula from rest to fully rough flow:
`f¹⁶ = (64/Re)¹⁶ + (0.1388·Re^−0.152)¹⁶ + f_rough¹⁶`.
Up to Re ≈ 1,385 that is Hagen–Poiseuille's laminar law. From there on it is the friction inside the
fuel gas code's own sizing equation (IFGC 402.4, Eq. 4-1 and 4-2), also where a textbook would
still call the flow laminar (to about 2,300) or in transition (to about 4,000). There is no dip and
no jump.

**Why.**

1. The tables by which a line is sized and judged come from that equation, at whatever flow. A line
   in the model must drop what those tables say; who looks a line up and then measures it must find
   the two to agree. Only where laminar friction is the larger one, below Re ≈ 1,385, does the model
   leave the code.
2. Below Re ≈ 2,000 a disturbance dies out in a long straight run; up to 4,000 either kind of flow may
   be found. A house line has an elbow, a tee or a valve every few feet, and the equivalent lengths of
   these are figures for turbulent flow. So nobody can promise laminar flow there.
3. If the flow is laminar all the same, the model drops too much, not too little. If it is turbulent,
   Blasius's law for smooth pipe stands within 8 % of it.
4. Friction falls evenly with the Reynolds number, so a pressure drop has one flow. A law with a jump
   at 2,300 has two, and a line would flicker between them.

**What it costs.** Both tables are worked out from the model as it stands. Up to Re 2,300 undisturbed
laminar flow has up to 35 % less friction than the model.
";

const DROPS: &str = "\
**In inches of water**, for that furnace on natural gas at the end of 30 ft of new steel pipe. The
code's figure is Eq. 4-2 solved for the drop. From 3/4 in. up the gap to undisturbed laminar flow is
0.03 in. w.c. at most: three counts of a manometer that shows 0.01 in. At 1/2 in. laminar flow is not to be
expected.
";

/// Sizes that a furnace's own line has.
const SIZES: [&str; 4] = ["1/2", "3/4", "1", "1-1/4"];
/// Input of the furnace in the examples, in Btu/h.
const INPUT_BTU_H: f64 = 80_000.0;

/// The chapter.
pub fn write() -> String {
    [
        format!("\n## {TITLE}\n\n{WHAT}\n"),
        reynolds_table(),
        format!("\n{LAW}\n"),
        factor_table(),
        format!("\n{DROPS}\n"),
        drop_table(),
    ]
    .concat()
}

fn flow_m3_s(gas: &Gas) -> f64 {
    INPUT_BTU_H * W_PER_BTU_H / gas.heating_value_j_m3
}

fn id_m(size: &str) -> f64 {
    schedule_40_id_m(size).unwrap()
}

fn reynolds(gas: &Gas, id_m: f64) -> f64 {
    4.0 * gas.density_std_kg_m3() * flow_m3_s(gas) / (PI * id_m * gas.viscosity_pa_s)
}

/// 1,234 from 1234.
fn grouped(value: f64) -> String {
    let digits = format!("{value:.0}");
    let (front, back) = digits.split_at(digits.len().saturating_sub(3));
    if front.is_empty() { back.to_owned() } else { format!("{front},{back}") }
}

fn reynolds_table() -> String {
    let mut table = String::from("Reynolds number of the line to one furnace of 80,000 Btu/h:\n\n");
    table += &format!("| gas | {} in. |\n|---|---|---|---|---|\n", SIZES.join(" in. | "));
    for (name, gas) in [("natural gas", Gas::natural()), ("propane, 11 in. w.c.", Gas::propane())] {
        let cells = SIZES.map(|size| grouped(reynolds(&gas, id_m(size))));
        table += &format!("| {name} | {} |\n", cells.join(" | "));
    }
    table
}

/// Colebrook and White's friction factor, by its own iteration.
fn colebrook(re: f64, roughness_ratio: f64) -> f64 {
    let mut f: f64 = 0.03;
    for _ in 0..60 {
        f = (2.0 * (roughness_ratio / 3.7 + 2.51 / (re * f.sqrt())).log10()).powi(-2);
    }
    f
}

fn factor_table() -> String {
    let rough = PipeMaterial::Steel.roughness_m() / id_m("1/2");
    let mut table = String::from(
        "Darcy friction factor, 1/2 in. new steel pipe. Blasius and Colebrook–White speak of turbulent \
         flow only.\n\n\
         | Re | model | laminar 64/Re | code | Blasius | Colebrook–White |\n|---|---|---|---|---|---|\n",
    );
    for re in [500.0, 1_000.0, 1_385.0, 2_000.0, 2_300.0, 3_000.0, 4_000.0, 10_000.0, 30_000.0] {
        let laminar = if re <= 2_300.0 { format!("{:.4}", 64.0 / re) } else { "".into() };
        let turbulent = re >= 1_385.0;
        let cell = |value: f64| if turbulent { format!("{value:.4}") } else { "".into() };
        table += &format!(
            "| {} | {:.4} | {laminar} | {} | {} | {} |\n",
            grouped(re),
            friction_factor(re, rough),
            cell(0.1388 * f64::powf(re, -0.152)),
            cell(0.3164 * f64::powf(re, -0.25)),
            cell(colebrook(re, rough)),
        );
    }
    table
}

/// Drop by the model, in Pa: the driving term at which its curve carries the flow.
fn model_drop_pa(spec: &PipeSpec, gas: &Gas, flow_m3_s: f64) -> f64 {
    let curve = spec.curve(gas, T_STD_K);
    let (mut low, mut high) = (0.0, 10_000.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if curve.flow(middle).0 < flow_m3_s { low = middle } else { high = middle }
    }
    low
}

fn drop_table() -> String {
    let gas = Gas::natural();
    let flow = flow_m3_s(&gas);
    let length_ft = 30.0;
    let mut table = String::from(
        "| size | Re | model | code, Eq. 4-2 | undisturbed laminar |\n|---|---|---|---|---|\n",
    );
    for size in SIZES {
        let id_m = id_m(size);
        let length_m = length_ft * M_PER_FT;
        let spec = PipeSpec::new(PipeMaterial::Steel, id_m, length_m);
        let laminar_pa = 128.0 * gas.viscosity_pa_s * length_m * flow / (PI * id_m.powi(4));
        // Cr = 0.6094 for natural gas; Q in ft³/h, D in inches, ΔH in inches of water.
        let base = (flow / M3_S_PER_CFH).powf(0.381) / (19.17 * id_m / 0.0254);
        let code_inwc = 0.6094 * length_ft * base.powf(1.0 / 0.206);
        table += &format!(
            "| {size} in. | {} | {:.3} | {code_inwc:.3} | {:.3} |\n",
            grouped(reynolds(&gas, id_m)),
            model_drop_pa(&spec, &gas, flow) / PA_PER_INWC,
            laminar_pa / PA_PER_INWC,
        );
    }
    table
}
