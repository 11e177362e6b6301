/** Channels of samples, −1 to 1, as a WAV file of 16 bits. */
export const wavOf = (channels: readonly Float32Array[], rate: number): Uint8Array<ArrayBuffer> => {
  const length = channels[0]?.length ?? 0
  const frame = 2 * channels.length
  const view = new DataView(new ArrayBuffer(44 + frame * length))
  const words = (at: number, text: string): void => {
    for (let i = 0; i < text.length; i++) view.setUint8(at + i, text.charCodeAt(i))
  }
  words(0, 'RIFF')
  view.setUint32(4, 36 + frame * length, true)
  words(8, 'WAVEfmt ')
  view.setUint32(16, 16, true)
  view.setUint16(20, 1, true)
  view.setUint16(22, channels.length, true)
  view.setUint32(24, rate, true)
  view.setUint32(28, rate * frame, true)
  view.setUint16(32, frame, true)
  view.setUint16(34, 16, true)
  words(36, 'data')
  view.setUint32(40, frame * length, true)
  for (let i = 0; i < length; i++)
    for (const [c, samples] of channels.entries())
      view.setInt16(44 + i * frame + 2 * c, Math.round((samples[i] ?? 0) * 32_767), true)
  return new Uint8Array(view.buffer)
}

/** Seconds of silence with a sine of 1 kHz in it, of an amplitude, from `at` for `long` seconds. */
export const beepOf = (
  seconds: number,
  at: number,
  long: number,
  amplitude = 0.5,
  rate = 48_000,
): Float32Array =>
  Float32Array.from({ length: seconds * rate }, (_, i) => {
    const t = i / rate
    return t >= at && t < at + long ? amplitude * Math.sin(2 * Math.PI * 1000 * t) : 0
  })
