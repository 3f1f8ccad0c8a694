//! What is heard, as samples: every voice follows a figure of what is seen and heard.
//!
//! A [`soundscape::Soundscape`] is read off [`crate::senses::seen::Seen`], a
//! [`moment::Moment`] off an event, and [`synth::Synth`] makes buffers of them. It knows no device,
//! no clock and no thread: the same seed, soundscapes and moments give the same samples, however
//! the buffers are cut. `docs/sound.md` states each voice's law with its source.

mod alarm;
mod breath;
mod fan;
mod filter;
mod glide;
mod limit;
pub mod moment;
mod noise;
pub mod soundscape;
mod strike;
pub mod synth;
pub mod voice;
