//! A WAV file: one channel of 16 bits (RIFF WAVE, format 1).

/// The bytes of a file with these samples.
pub(super) fn bytes(samples: &[f32], rate_hz: u32) -> Vec<u8> {
    let length = 2 * u32::try_from(samples.len()).unwrap_or(u32::MAX / 4);
    let mut out = Vec::with_capacity(44 + 2 * samples.len());
    out.extend(b"RIFF");
    out.extend((36 + length).to_le_bytes());
    out.extend(b"WAVEfmt ");
    out.extend(16_u32.to_le_bytes());
    // Format 1 (whole numbers), one channel; then bytes a second, bytes a sample, bits a sample.
    out.extend([1_u16, 1].iter().flat_map(|it| it.to_le_bytes()));
    out.extend(rate_hz.to_le_bytes());
    out.extend((2 * rate_hz).to_le_bytes());
    out.extend([2_u16, 16].iter().flat_map(|it| it.to_le_bytes()));
    out.extend(b"data");
    out.extend(length.to_le_bytes());
    for sample in samples {
        let whole = (sample * f32::from(i16::MAX)).round() as i16;
        out.extend(whole.to_le_bytes());
    }
    out
}
