//! The way out to the sound server of a Linux desktop (PulseAudio, or PipeWire, which speaks its
//! protocol), in a thread of its own and without a library to install.
//!
//! Without a server there is silence; one that comes later, or comes back, is taken up within
//! [`TRY_AGAIN`].

use std::io::{BufRead, BufReader, ErrorKind, Read};
use std::os::unix::net::UnixStream;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::Duration;

use pulseaudio::protocol::{
    self, AuthParams, AuthReply, ChannelMap, ChannelVolume, Command, CommandReply,
    CreatePlaybackStreamReply, MAX_VERSION, PlaybackStreamParams, Prop, Props, ProtocolError,
    Request, SampleFormat, SampleSpec, SetClientNameReply, stream::BufferAttr, stream::StreamFlags,
};

/// How long nobody looks for a server after one was not there, or went.
const TRY_AGAIN: Duration = Duration::from_secs(3);
/// Longest wait for the server's word before the end is looked for.
const LISTEN: Duration = Duration::from_millis(250);
/// Longest wait for a server that does not take up what is sent.
const SEND: Duration = Duration::from_secs(2);
/// Sound that the server keeps ahead, in milliseconds: what happens is heard that much later.
const AHEAD_MS: u32 = 60;
/// Samples made at once.
const CHUNK: usize = 1024;
/// Bytes of a sample.
const BYTES: usize = size_of::<f32>();
/// Longest message of the server that is taken for one, in bytes.
const LONGEST: u32 = 1 << 20;
/// Channel of a message that is a command.
const COMMANDS: u32 = u32::MAX;

/// Makes what is played.
pub trait Source: Send + 'static {
    /// A device has come: what was meant for before is past.
    fn begin(&mut self);

    /// Fills a buffer with the next samples, each within −1 to 1.
    fn fill(&mut self, samples: &mut [f32]);
}

/// Playing goes on until this is dropped.
pub struct Playing(Arc<AtomicBool>);

impl Drop for Playing {
    fn drop(&mut self) {
        self.0.store(true, Ordering::Relaxed);
    }
}

/// Plays a source, one channel at a sample rate, whenever there is a server. `None` where no
/// thread can be had.
pub fn play(mut source: impl Source, rate_hz: u32) -> Option<Playing> {
    let ended = Arc::new(AtomicBool::new(false));
    let end = Arc::clone(&ended);
    let run = move || {
        while !end.load(Ordering::Relaxed) {
            // Whatever went wrong, silence is no trouble of the trainee's.
            let _ = play_on_server(&mut source, rate_hz, &end);
            wait(TRY_AGAIN, &end);
        }
    };
    thread::Builder::new().name("sound".into()).spawn(run).ok()?;
    Some(Playing(ended))
}

fn wait(whole: Duration, end: &AtomicBool) {
    let mut left = whole;
    while !left.is_zero() && !end.load(Ordering::Relaxed) {
        let part = left.min(LISTEN);
        thread::sleep(part);
        left -= part;
    }
}

/// Plays until the server or the source's owner ends it.
fn play_on_server(
    source: &mut impl Source,
    rate_hz: u32,
    end: &AtomicBool,
) -> Result<(), ProtocolError> {
    let Some(mut server) = Server::connect()? else { return Ok(()) };
    let stream = server.open_stream(rate_hz)?;
    source.begin();
    let mut chunk = [0.0; CHUNK];
    let mut bytes = [0; CHUNK * BYTES];
    let mut owed = stream.requested_bytes;
    let mut message = Vec::new();
    loop {
        while owed as usize >= BYTES {
            let count = (owed as usize / BYTES).min(CHUNK);
            source.fill(&mut chunk[..count]);
            for (four, sample) in bytes.chunks_exact_mut(BYTES).zip(&chunk[..count]) {
                four.copy_from_slice(&sample.to_le_bytes());
            }
            let sent = &bytes[..count * BYTES];
            protocol::write_memblock(server.socket.get_mut(), stream.channel, sent, 0)?;
            owed -= sent.len() as u32;
        }
        if !server.hears_something(end)? {
            return Ok(());
        }
        match server.command(&mut message)? {
            Some(Command::Request(Request { channel, length })) if channel == stream.channel => {
                owed = owed.saturating_add(length);
            }
            Some(Command::PlaybackStreamKilled(channel)) if channel == stream.channel => {
                return Ok(());
            }
            // Started, moved to another device, run dry and the like: the server goes on asking.
            _ => {}
        }
    }
}

/// A connection to the sound server.
struct Server {
    socket: BufReader<UnixStream>,
    version: u16,
    asked: u32,
}

impl Server {
    /// Connects and says who plays; `None` without a server.
    fn connect() -> Result<Option<Self>, ProtocolError> {
        let Some(path) = pulseaudio::socket_path_from_env() else { return Ok(None) };
        let socket = UnixStream::connect(path)?;
        socket.set_read_timeout(Some(SEND))?;
        socket.set_write_timeout(Some(SEND))?;
        let mut server = Self { socket: BufReader::new(socket), version: MAX_VERSION, asked: 0 };
        let cookie = pulseaudio::cookie_path_from_env().and_then(|path| std::fs::read(path).ok());
        let auth: AuthReply = server.ask(Command::Auth(AuthParams {
            version: MAX_VERSION,
            supports_shm: false,
            supports_memfd: false,
            cookie: cookie.unwrap_or_default(),
        }))?;
        server.version = MAX_VERSION.min(auth.version);
        let mut props = Props::new();
        props.set(Prop::ApplicationName, c"Quarterturn");
        let _: SetClientNameReply = server.ask(Command::SetClientName(props))?;
        Ok(Some(server))
    }

    fn open_stream(&mut self, rate_hz: u32) -> Result<CreatePlaybackStreamReply, ProtocolError> {
        let mut props = Props::new();
        props.set(Prop::MediaName, c"Quarterturn");
        props.set(Prop::MediaRole, c"game");
        let target_length = rate_hz / 1000 * AHEAD_MS * BYTES as u32;
        self.ask(Command::CreatePlaybackStream(PlaybackStreamParams {
            sample_spec: SampleSpec {
                format: SampleFormat::Float32Le,
                channels: 1,
                sample_rate: rate_hz,
            },
            channel_map: ChannelMap::mono(),
            sink_name: Some(c"@DEFAULT_SINK@".to_owned()),
            buffer_attr: BufferAttr {
                max_length: u32::MAX,
                target_length,
                pre_buffering: u32::MAX,
                minimum_request_length: u32::MAX,
                ..BufferAttr::default()
            },
            cvolume: Some(ChannelVolume::norm(1)),
            props,
            flags: StreamFlags { adjust_latency: true, ..StreamFlags::default() },
            ..PlaybackStreamParams::default()
        }))
    }

    fn ask<R: CommandReply>(&mut self, command: Command) -> Result<R, ProtocolError> {
        let asked = self.asked;
        self.asked += 1;
        protocol::write_command_message(self.socket.get_mut(), asked, command, self.version)?;
        protocol::read_reply_message(&mut self.socket, self.version).map(|(_, reply)| reply)
    }

    /// Waits until the server says something. `false` at the end of playing or of the server.
    fn hears_something(&mut self, end: &AtomicBool) -> Result<bool, ProtocolError> {
        self.socket.get_ref().set_read_timeout(Some(LISTEN))?;
        let heard = loop {
            if end.load(Ordering::Relaxed) {
                break false;
            }
            match self.socket.fill_buf() {
                Ok(bytes) => break !bytes.is_empty(),
                Err(error) => match error.kind() {
                    ErrorKind::WouldBlock | ErrorKind::TimedOut | ErrorKind::Interrupted => {}
                    _ => return Err(error.into()),
                },
            }
        };
        self.socket.get_ref().set_read_timeout(Some(SEND))?;
        Ok(heard)
    }

    /// The server's next command, read to its end whether it is understood or not; none for
    /// anything else.
    fn command(&mut self, message: &mut Vec<u8>) -> Result<Option<Command>, ProtocolError> {
        let head = protocol::read_descriptor(&mut self.socket)?;
        if head.length > LONGEST {
            return Err(std::io::Error::from(ErrorKind::InvalidData).into());
        }
        message.resize(head.length as usize, 0);
        self.socket.read_exact(message)?;
        if head.channel != COMMANDS {
            return Ok(None);
        }
        let read = Command::read_tag_prefixed(&mut message.as_slice(), self.version);
        Ok(read.ok().map(|(_, command)| command))
    }
}
