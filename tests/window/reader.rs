//! What a screen reader gets of each place, as text: `docs/reader.md`.

use quarterturn::hands::action::Action;
use quarterturn::parts::{Door, Fitted, OnOff, Place};

use super::rig::{Pixels, Rig};
use super::store::TestStore;

const PAGE: &str = "docs/reader.md";
const HEAD: &str = "# What a screen reader gets\n\n\
    Every place on arrival as it is read out: the strip on top, the drawing, the sheet, each from the \
    top down, with what each line is; the clock is left out. Tab goes through what can be pressed, F6 from the drawing to the sheet and back.\n\
    `UPDATE_DOCS=1 cargo test --features ui-tests --test window reader` writes this page anew.\n";

fn place(job: &str, title: &str, acts: &[Action]) -> String {
    let before: Vec<(u64, Action)> = acts.iter().map(|act| (0, act.clone())).collect();
    let store = TestStore { before: (before, 1), ..TestStore::default() };
    let mut rig = Rig::open(store, Some(job), (1280, 720), Pixels::None);
    rig.frames(4);
    let mut page = format!("\n## {title}\n\n| what | name |\n|---|---|\n");
    for (role, label) in rig.read_out() {
        let is_clock = label.len() == 8 && label.split(':').count() == 3;
        if !is_clock {
            page.push_str(&format!("| {role} | {} |\n", label.replace(['\n', '|'], " ")));
        }
    }
    page
}

fn page() -> String {
    let open = [
        Action::Go(Place::PlantRoom),
        Action::FurnaceSwitch(OnOff::Off),
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::Go(Place::GasValve),
    ];
    let propane = "propane-cold-morning";
    [
        HEAD.to_owned(),
        place(propane, "Yard with a propane tank", &[]),
        place("natural-gas-busy-kitchen", "Yard with a meter", &[]),
        place(propane, "Furnace room", &[Action::Go(Place::PlantRoom)]),
        place(propane, "Gas valve", &open),
        place(propane, "Hall", &[Action::Go(Place::Hall)]),
    ]
    .concat()
}

/// The page is what the program says now.
#[test]
fn the_page_is_fresh() {
    let now = page();
    if std::env::var_os("UPDATE_DOCS").is_some() {
        std::fs::write(PAGE, &now).expect("the page can be written");
    }
    let kept = std::fs::read_to_string(PAGE).expect("the page is there");
    let differs = kept.lines().zip(now.lines()).find(|(kept, now)| kept != now);
    assert!(kept == now, "{PAGE} is stale; run with UPDATE_DOCS=1: {differs:?}");
}

/// Everything that can be pressed has a name.
#[test]
fn what_can_be_pressed_has_a_name() {
    let store =
        TestStore { before: (vec![(0, Action::Go(Place::PlantRoom))], 1), ..TestStore::default() };
    let mut rig = Rig::open(store, Some("propane-cold-morning"), (1280, 720), Pixels::None);
    rig.frames(4);
    let read = rig.read_out();
    assert!(read.len() > 60, "{}", read.len());
    assert!(rig.nameless().is_empty(), "{:?}", rig.nameless());
}
