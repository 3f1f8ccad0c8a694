//! The real program on a virtual screen, by mouse and keys; and on none.
//!
//! Without `Xvfb` and `xdotool` the first test says so and passes, unless `CI=true`.

use std::io::Read;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

const PROGRAM: &str = env!("CARGO_BIN_EXE_quarterturn");

/// A process that ends with the test.
struct Running(Child);

impl Drop for Running {
    fn drop(&mut self) {
        let _gone = self.0.kill();
        let _waited = self.0.wait();
    }
}

fn has(program: &str) -> bool {
    let paths = std::env::var_os("PATH").unwrap_or_default();
    std::env::split_paths(&paths).any(|folder| folder.join(program).is_file())
}

/// A virtual screen of its own: the process, its name, and the file its pixels are in.
fn screen(folder: &Path) -> (Running, String) {
    let mut server = Command::new("Xvfb")
        .args(["-displayfd", "1", "-screen", "0", "1280x800x24", "-nolisten", "tcp", "-fbdir"])
        .arg(folder)
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("Xvfb starts");
    let mut out = server.stdout.take().expect("its answer");
    let mut number = String::new();
    let mut byte = [0];
    while out.read(&mut byte).is_ok_and(|n| n == 1) && byte[0] != b'\n' {
        number.push(char::from(byte[0]));
    }
    (Running(server), format!(":{number}"))
}

fn xdotool(display: &str, args: &[&str]) -> String {
    let out =
        Command::new("xdotool").env("DISPLAY", display).args(args).output().expect("xdotool runs");
    String::from_utf8_lossy(&out.stdout).trim().to_owned()
}

/// The pixels of the screen, as rows of blue, green, red and a spare byte.
fn pixels(folder: &Path) -> Vec<u8> {
    let file = std::fs::read(folder.join("Xvfb_screen0")).expect("the screen's file");
    let field = |i: usize| {
        let bytes: [u8; 4] = file[4 * i..4 * i + 4].try_into().expect("four bytes");
        u32::from_be_bytes(bytes) as usize
    };
    let (header, height, stride, colors) = (field(0), field(5), field(12), field(19));
    let start = header + colors * 12;
    file[start..start + height * stride].to_vec()
}

fn wait_until(what: &str, mut holds: impl FnMut() -> bool) {
    let start = Instant::now();
    while !holds() {
        assert!(start.elapsed() < Duration::from_secs(60), "{what} did not come");
        std::thread::sleep(Duration::from_millis(100));
    }
}

/// Opens, shows the caution, takes keys and the mouse, grows and shrinks, and closes by itself.
#[test]
fn the_program_runs_on_a_screen() {
    if !(has("Xvfb") && has("xdotool")) {
        assert!(std::env::var("CI").as_deref() != Ok("true"), "CI needs Xvfb and xdotool");
        eprintln!("skipped: Xvfb or xdotool is not installed");
        return;
    }
    let folder = tempfile::tempdir().expect("a folder");
    let (_server, display) = screen(folder.path());
    let child = Command::new(PROGRAM)
        .env("DISPLAY", &display)
        .env_remove("WAYLAND_DISPLAY")
        .env("XDG_CONFIG_HOME", folder.path())
        .env("XDG_DATA_HOME", folder.path())
        .spawn()
        .expect("the program starts");
    let mut program = Running(child);
    let mut window = String::new();
    wait_until("the window", || {
        window = xdotool(&display, &["search", "--name", "^Quarterturn$"]);
        !window.is_empty()
    });
    // Ink on paper: the caution is on the screen.
    let dark = |picture: &[u8]| picture.chunks_exact(4).filter(|p| p[1] > 40 && p[1] < 60).count();
    wait_until("the first page", || {
        let picture = pixels(folder.path());
        let paper = picture.chunks_exact(4).filter(|p| p[1] > 200).count();
        paper > 400_000 && dark(&picture) > 200
    });
    std::thread::sleep(Duration::from_millis(600));
    let caution = pixels(folder.path());
    xdotool(&display, &["windowfocus", "--sync", &window]);
    xdotool(&display, &["key", "Tab"]);
    std::thread::sleep(Duration::from_millis(400));
    xdotool(&display, &["key", "Return"]);
    let changed = |from: &[u8]| {
        let now = pixels(folder.path());
        now.chunks_exact(4).zip(from.chunks_exact(4)).filter(|(a, b)| a[..3] != b[..3]).count()
    };
    wait_until("the choice of a job, by keys", || changed(&caution) > 10_000);
    std::thread::sleep(Duration::from_millis(600));
    let choice = pixels(folder.path());
    xdotool(&display, &["windowsize", &window, "1024", "720"]);
    wait_until("the smaller window", || changed(&choice) > 10_000);
    assert!(program.0.try_wait().expect("its state").is_none(), "the program ended by itself");
}

/// Without a screen: one line that says what to do instead, exit code 3, no trace of a panic.
#[test]
fn without_a_screen_it_says_what_to_do() {
    let no_screen = |set: &dyn Fn(&mut Command)| {
        let mut command = Command::new(PROGRAM);
        command.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY").env("RUST_BACKTRACE", "1");
        set(&mut command);
        command.output().expect("it runs")
    };
    let unset = no_screen(&|_| {});
    let nobody = no_screen(&|command| {
        command.env("DISPLAY", ":4711");
    });
    for out in [unset, nobody] {
        let said = String::from_utf8_lossy(&out.stderr);
        assert_eq!(out.status.code(), Some(3), "{said}");
        assert_eq!(said.lines().count(), 1, "{said}");
        for command in ["run", "mark", "preview", "check"] {
            assert!(said.contains(&format!("`quarterturn {command}`")), "{said}");
        }
    }
}
