//! Eight reference pictures, drawn off-screen by the software renderer, and beside each what must
//! be in it whatever the pixels are.
//!
//! `UPDATE_PICTURES=1` writes them anew and fails, so that it cannot be left on. Without a Vulkan
//! software driver the tests say so and pass, unless `CI=true`.

use std::path::{Path, PathBuf};

use bevy::prelude::*;
use bevy::render::renderer::RenderAdapterInfo;
use quarterturn::app::boxes::Boxes;
use quarterturn::app::hose::hoses;
use quarterturn::app::page::OnPage;
use quarterturn::app::scene::Drawings;
use quarterturn::hands::action::Action;
use quarterturn::parts::{Door, Fitted, HandValve, OnOff, Place};

use super::rig::{Pixels, Rig};
use super::store::TestStore;
use super::strips::fed;

/// A channel may differ by this much.
const CHANNEL: u8 = 12;
/// Share of pixels that may differ by more: what soft edges differ by between driver versions.
const SHARE: f64 = 0.001;

fn folder() -> PathBuf {
    Path::new(".").join("tests/window/pictures")
}

/// Whether there is a software driver; says so if not.
pub fn has_driver() -> bool {
    let named = std::env::var_os("VK_DRIVER_FILES").is_some();
    let installed = std::fs::read_dir("/usr/share/vulkan/icd.d").is_ok_and(|entries| {
        entries.flatten().any(|e| e.file_name().to_string_lossy().starts_with("lvp_icd"))
    });
    if named || installed {
        return true;
    }
    assert!(std::env::var("CI").as_deref() != Ok("true"), "CI needs a Vulkan software driver");
    eprintln!("skipped: no Vulkan software driver is installed");
    false
}

fn open(job: Option<&str>, before: Vec<(u64, Action)>, until: u64) -> Rig {
    open_at((1280, 720), job, before, until)
}

fn open_at(size: (u32, u32), job: Option<&str>, before: Vec<(u64, Action)>, until: u64) -> Rig {
    let store = TestStore { before: (before, until), ..TestStore::default() };
    let mut rig = Rig::open(store, job, size, Pixels::Drawn);
    let adapter = &rig.app.world().resource::<RenderAdapterInfo>().name;
    eprintln!("drawn by {adapter}");
    rig.frames(30);
    rig
}

fn compare(rig: &mut Rig, name: &str) {
    let picture = rig.picture();
    let (width, height) = (picture.width(), picture.height());
    let mut pixels = picture.data.expect("pixels");
    pixels.chunks_exact_mut(4).for_each(|p| p[3] = 255);
    let file = folder().join(format!("{name}.png"));
    if std::env::var_os("UPDATE_PICTURES").is_some() {
        write(&file, width, height, &pixels);
        panic!("{name}.png was written anew; look at it, then run without UPDATE_PICTURES");
    }
    let (w, h, wanted) = read(&file);
    assert_eq!((w, h), (width, height), "{name}: size");
    let differs = |(a, b): (&[u8], &[u8])| a.iter().zip(b).any(|(a, b)| a.abs_diff(*b) > CHANNEL);
    let pairs = || pixels.chunks_exact(4).zip(wanted.chunks_exact(4));
    let count = pairs().filter(|pair| differs(*pair)).count();
    let share = count as f64 / f64::from(width * height);
    if share > SHARE {
        write(&file.with_extension("new.png"), width, height, &pixels);
        let marks: Vec<u8> = pairs()
            .flat_map(|pair| if differs(pair) { [200, 0, 0, 255] } else { [255, 255, 255, 255] })
            .collect();
        write(&file.with_extension("diff.png"), width, height, &marks);
        panic!("{name}: {count} pixels ({:.2} %) differ; see {name}.diff.png", share * 100.0);
    }
}

pub fn write(file: &Path, width: u32, height: u32, pixels: &[u8]) {
    std::fs::create_dir_all(file.parent().expect("in a folder")).expect("a folder");
    let out = std::io::BufWriter::new(std::fs::File::create(file).expect("a file"));
    let mut encoder = png::Encoder::new(out, width, height);
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_compression(png::Compression::High);
    encoder.write_header().expect("a header").write_image_data(pixels).expect("pixels");
}

fn read(file: &Path) -> (u32, u32, Vec<u8>) {
    let data = std::fs::File::open(file).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
    let mut reader = png::Decoder::new(std::io::BufReader::new(data)).read_info().expect("a PNG");
    let mut pixels = vec![0; reader.output_buffer_size().expect("a size")];
    let info = reader.next_frame(&mut pixels).expect("a frame");
    pixels.truncate(info.buffer_size());
    (info.width, info.height, pixels)
}

fn page(rig: &Rig) -> Option<&'static str> {
    rig.app.world().resource::<OnPage>().0
}

fn has_box(rig: &Rig, id: &str) -> bool {
    rig.app
        .world()
        .resource::<Boxes>()
        .0
        .iter()
        .any(|part| part.id == id && part.rect.is_positive())
}

/// The opening page: nothing of the drawing, the caution in words.
#[test]
fn opening_page() {
    if !has_driver() {
        return;
    }
    let mut rig = open(None, Vec::new(), 0);
    assert_eq!(page(&rig), None);
    compare(&mut rig, "opening");
    assert!(rig.named().iter().any(|(label, ..)| label.contains("practice simulator")));
}

/// The choice of a job, with everything that ships.
#[test]
fn choosing_a_job() {
    choosing((1280, 720), "choosing");
}

/// The same in the smallest window.
#[test]
fn choosing_a_job_at_1024() {
    choosing((1024, 768), "choosing_1024");
}

fn choosing(size: (u32, u32), name: &str) {
    if !has_driver() {
        return;
    }
    let mut rig = open_at(size, None, Vec::new(), 0);
    rig.click_on("I have read this");
    rig.frames(10);
    compare(&mut rig, name);
}

/// The yard on arrival.
#[test]
fn yard_on_arrival() {
    if !has_driver() {
        return;
    }
    let mut rig = open(Some("propane-cold-morning"), Vec::new(), 0);
    assert_eq!(page(&rig), Some("yard_propane"));
    assert!(has_box(&rig, "tank-gauge") && has_box(&rig, "supply-cock"));
    compare(&mut rig, "yard");
}

/// Both doors off, the furnace shut off and tagged: everything behind the doors can be named.
#[test]
fn plant_room_with_the_doors_off() {
    if !has_driver() {
        return;
    }
    let acts = [
        Action::Go(Place::PlantRoom),
        Action::FurnaceSwitch(OnOff::Off),
        Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 },
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::Door { door: Door::Blower, to: Fitted::Off },
        Action::Tag(Fitted::On),
    ];
    let mut rig = open(Some("propane-cold-morning"), acts.map(|a| (0, a)).to_vec(), 50 * 120);
    for id in ["inducer", "blower", "control-board", "gas-valve", "burners", "filter"] {
        assert!(has_box(&rig, id), "{id}");
    }
    compare(&mut rig, "plant_room");
}

/// A furnace that lies in an attic, in the smallest window: both doors off, everything behind them
/// can be named as behind those of an upright one.
#[test]
fn attic_with_the_doors_off() {
    if !has_driver() {
        return;
    }
    let acts = [
        Action::Go(Place::PlantRoom),
        Action::FurnaceSwitch(OnOff::Off),
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::Door { door: Door::Blower, to: Fitted::Off },
    ];
    let before = acts.map(|a| (0, a)).to_vec();
    let mut rig = open_at((1024, 768), Some("short-spells"), before, 50 * 120);
    assert_eq!(page(&rig), Some("attic"));
    for id in ["inducer", "blower", "control-board", "gas-valve", "burners", "filter", "exit-door"]
    {
        assert!(has_box(&rig, id), "{id}");
    }
    compare(&mut rig, "attic");
}

/// The furnace fires on high with the hose on the manifold port.
#[test]
fn gas_valve_while_it_fires() {
    if !has_driver() {
        return;
    }
    let mut rig = open(Some("propane-cold-morning"), fed(), 3011 + 50 * 400);
    let seen = rig.seen();
    let burners = seen.furnace.as_ref().and_then(|f| f.burners.as_ref()).expect("in view");
    assert!(burners.flames.iter().all(|flame| flame.height > 0.3), "{:?}", burners.flames);
    let drawings = &rig.app.world().resource::<Drawings>().0;
    assert_eq!(hoses(&seen, "gas_valve", drawings, None).len(), 1);
    assert!(has_box(&rig, "meter.display"));
    compare(&mut rig, "gas_valve");
}

/// The hall.
#[test]
fn hall() {
    if !has_driver() {
        return;
    }
    let acts = vec![(0, Action::Go(Place::Hall))];
    let mut rig = open(Some("natural-gas-busy-kitchen"), acts, 5);
    for id in ["thermostat", "thermostat-up", "co-alarm", "range", "householder"] {
        assert!(has_box(&rig, id), "{id}");
    }
    compare(&mut rig, "hall");
}
