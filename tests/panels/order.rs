//! What stands where in a part's list, and what is not in it.

use quarterturn::catalogue::repair::{Nature, Repair};
use quarterturn::hands::action::Action;
use quarterturn::panels::actions::choices;
use quarterturn::parts::{Fitted, Place, PortFill, Subject, job_order};
use quarterturn::senses::seen::Seen;

use crate::fixture::{seen, seen_open};

fn actions(part: &str, seen: &Seen) -> Vec<Action> {
    choices(part, seen).into_iter().map(|choice| choice.action).collect()
}

fn mends(part: &str, seen: &Seen) -> Vec<Repair> {
    let repair = |action: &Action| match action {
        Action::Mend(repair) => Some(*repair),
        _ => None,
    };
    actions(part, seen).iter().filter_map(repair).collect()
}

/// At every part looking comes first and repairs last; among repairs those that clean come before
/// those that swap, and those that harm are the last of all.
#[test]
fn looks_come_first_and_repairs_last() {
    let mut open = seen_open(PortFill::Open);
    open.place = Place::PlantRoom;
    let mut all: Vec<Seen> = Place::ALL.iter().map(|&place| seen(place)).collect();
    all.extend([seen_open(PortFill::Open), seen_open(PortFill::Snug), open]);
    let (mut looks, mut repairs) = (0, 0);
    for seen in &all {
        for part in job_order(seen.place) {
            let order: Vec<u8> = actions(part, seen)
                .iter()
                .map(|action| match action {
                    Action::Look(_) => 0,
                    Action::Mend(repair) => match repair.nature() {
                        Nature::Care => 2,
                        Nature::Part => 3,
                        Nature::Danger | Nature::Bypass => 4,
                    },
                    _ => 1,
                })
                .collect();
            assert!(order.is_sorted(), "{part}: {order:?}");
            looks += order.iter().filter(|&&rank| rank == 0).count();
            repairs += order.iter().filter(|&&rank| rank > 1).count();
        }
    }
    assert!(looks > 10 && repairs > 20, "{looks} looks, {repairs} repairs");
    let orifices = actions("orifices", &seen_open(PortFill::Snug));
    assert_eq!(orifices.first(), Some(&Action::Look(Subject::Orifices)));
    assert_eq!(orifices.last(), Some(&Action::Mend(Repair::DrillOrifices)));
}

/// The low gas switch belongs to the propane kit; with natural gas there is none to mend, but one
/// can look for it. What belongs to a tank is not mended at a meter.
#[test]
fn what_is_not_fitted_is_not_mended() {
    let mut open = seen_open(PortFill::Snug);
    let both = [Repair::ReplaceLowGasSwitch, Repair::BypassLowGasSwitch];
    assert_eq!(mends("low-gas-switch", &open), both);
    let burners = open.furnace.as_mut().and_then(|furnace| furnace.burners.as_mut()).unwrap();
    burners.low_gas_switch = Fitted::Off;
    assert_eq!(mends("low-gas-switch", &open), []);
    let look = Action::Look(Subject::LowGasSwitch);
    assert!(actions("low-gas-switch", &open).contains(&look));

    let mut yard = seen(Place::Yard);
    assert!(mends("supply-regulator", &yard).contains(&Repair::ThawRegulator));
    yard.yard.as_mut().unwrap().tank_percent = None;
    assert_eq!(mends("supply-regulator", &yard), [Repair::ReplaceSupplyRegulator]);
}
