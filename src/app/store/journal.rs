//! Writes an attempt's record on a thread of its own, so that a slow disk never holds up the
//! drawing.

use std::fs::{File, OpenOptions};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

use super::Journal;
use crate::bench::Bench;
use crate::bench::run;
use crate::hands::action::Action;
use crate::record::{Ended, Header, Note, Recorder, Sink, SinkError, Writer};

/// Longest time between two moments at which the file is surely on the disk.
const SYNC_EVERY: Duration = Duration::from_secs(5);

/// A record that is being written.
pub struct RecordJournal {
    header: Header,
    folder: PathBuf,
    recorder: Option<Recorder<Lines>>,
    thread: Option<JoinHandle<()>>,
    trouble: Option<String>,
    /// The author's hints that were taken: what follows a way back keeps them.
    job_hints: usize,
}

impl RecordJournal {
    /// The same journal, so many of the author's hints having been taken.
    #[must_use]
    pub fn after_hints(mut self, job_hints: usize) -> Self {
        self.job_hints = job_hints;
        self
    }

    /// Begins a record in `folder`. A record that cannot be written is told as trouble; the job
    /// goes on all the same.
    #[must_use]
    pub fn begin(header: Header, folder: &Path) -> Self {
        let mut journal = Self {
            header,
            folder: folder.to_owned(),
            recorder: None,
            thread: None,
            trouble: None,
            job_hints: 0,
        };
        journal.open_new();
        journal
    }

    /// Goes on with the record in `file`, which is cut at `whole_bytes` first.
    ///
    /// # Errors
    /// When the file cannot be opened and cut.
    pub fn go_on(
        header: Header,
        file: &Path,
        whole_bytes: usize,
        writer: Writer,
    ) -> std::io::Result<Self> {
        let opened = OpenOptions::new().append(true).open(file)?;
        opened.set_len(u64::try_from(whole_bytes).unwrap_or(u64::MAX))?;
        let (lines, thread) = Lines::into_file(opened);
        Ok(Self {
            header,
            folder: file.parent().unwrap_or(Path::new(".")).to_owned(),
            recorder: Some(Recorder::go_on(writer, lines)),
            thread: Some(thread),
            trouble: None,
            job_hints: 0,
        })
    }

    fn open_new(&mut self) {
        self.close();
        let opened = new_file(&self.folder, &self.header);
        match opened {
            Ok(file) => {
                let (lines, thread) = Lines::into_file(file);
                self.thread = Some(thread);
                match Recorder::begin(&self.header, lines) {
                    Ok(recorder) => self.recorder = Some(recorder),
                    Err(error) => self.trouble = Some(error.to_string()),
                }
            }
            Err(error) => self.trouble = Some(format!("{}: {error}", self.folder.display())),
        }
    }

    /// Lets the thread write what is left and waits for it.
    fn close(&mut self) {
        self.recorder = None;
        if let Some(thread) = self.thread.take() {
            // A thread that came to grief has told its trouble already.
            let _came_to_grief = thread.join();
        }
    }
}

impl Journal for RecordJournal {
    fn acted(&mut self, bench: &Bench, action: &Action) {
        if let Some(recorder) = &mut self.recorder {
            recorder.acted(bench, action);
        }
    }

    fn ticked(&mut self, bench: &Bench) {
        if let Some(recorder) = &mut self.recorder {
            recorder.ticked(bench);
        }
    }

    fn ended(&mut self, bench: &Bench) {
        if let Some(recorder) = self.recorder.take()
            && let Err(error) = recorder.end(bench, Ended::of(bench.over()))
        {
            self.trouble = Some(error.to_string());
        }
        self.close();
    }

    fn hinted(&mut self, bench: &Bench) {
        if let Some(recorder) = &mut self.recorder {
            recorder.note(bench, Note::Hint);
        }
    }

    fn opened_cutaway(&mut self, bench: &Bench) {
        if let Some(recorder) = &mut self.recorder {
            recorder.note(bench, Note::Cutaway);
        }
    }

    fn job_hinted(&mut self, bench: &Bench) {
        self.job_hints += 1;
        if let Some(recorder) = &mut self.recorder {
            recorder.note(bench, Note::JobHint);
        }
    }

    fn went_back(&mut self, bench: &Bench, done: &[(u64, Action)]) {
        // The stopped attempt keeps its record; what follows is another, with the same beginning.
        self.open_new();
        let Some(recorder) = &mut self.recorder else { return };
        let mut again = Bench::new(bench.setup().clone());
        run::play_again(&mut again, done, bench.tick(), recorder);
        recorder.note(&again, Note::WentBack);
        for _ in 0..self.job_hints {
            recorder.note(&again, Note::JobHint);
        }
    }

    fn trouble(&self) -> Option<String> {
        let late = self.recorder.as_ref().and_then(Recorder::trouble).map(ToString::to_string);
        self.trouble.clone().or(late)
    }
}

impl Drop for RecordJournal {
    fn drop(&mut self) {
        self.close();
    }
}

/// A file that nobody else writes, named by scenario, seed and time.
fn new_file(folder: &Path, header: &Header) -> std::io::Result<File> {
    std::fs::create_dir_all(folder)?;
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default().as_secs();
    let id = super::results::safe(&header.scenario.id);
    let mut last = None;
    for attempt in 0..100 {
        let name = format!("{id}-{}-{since}-{attempt}.jsonl", header.seed);
        match OpenOptions::new().append(true).create_new(true).open(folder.join(name)) {
            Ok(file) => return Ok(file),
            Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => last = Some(error),
            Err(error) => return Err(error),
        }
    }
    Err(last.unwrap_or_else(|| std::io::ErrorKind::AlreadyExists.into()))
}

/// Hands lines to the thread that writes them.
struct Lines {
    to: Sender<String>,
    broken: Arc<Mutex<Option<String>>>,
}

impl Lines {
    fn into_file(file: File) -> (Self, JoinHandle<()>) {
        let (to, from) = channel();
        let broken = Arc::new(Mutex::new(None));
        let told = Arc::clone(&broken);
        let thread = std::thread::spawn(move || {
            if let Err(error) = write_lines(file, &from)
                && let Ok(mut told) = told.lock()
            {
                *told = Some(error.to_string());
            }
        });
        (Self { to, broken }, thread)
    }
}

impl Sink for Lines {
    fn line(&mut self, line: &str) -> Result<(), SinkError> {
        let broken = self.broken.lock().ok().and_then(|told| told.clone());
        if let Some(message) = broken {
            return Err(SinkError { message });
        }
        self.to
            .send(line.to_owned())
            .map_err(|_| SinkError { message: t!("desk-record-closed").to_owned() })
    }
}

fn write_lines(mut file: File, from: &Receiver<String>) -> std::io::Result<()> {
    let mut synced = Instant::now();
    while let Ok(line) = from.recv() {
        file.write_all(line.as_bytes())?;
        if synced.elapsed() >= SYNC_EVERY {
            file.sync_data()?;
            synced = Instant::now();
        }
    }
    file.sync_all()
}
