/** The span of signal a waveform monitor shows, −8 % … 112 %. */
export const WAVEFORM_LOW = -0.08
export const WAVEFORM_HIGH = 1.12

/** Lines across the waveform, as signal levels; 700 mV is nominal peak (EBU N10 scale). */
export const WAVEFORM_LINES = [0, 0.25, 0.5, 0.75, 1] as const

/** How far down a picture of this height a signal level is drawn. */
export const waveformY = (level: number, height: number): number =>
  height * (1 - (level - WAVEFORM_LOW) / (WAVEFORM_HIGH - WAVEFORM_LOW))

/** Luma bins are four 10-bit codes wide; the level in the middle of one. */
export const waveformBinLevel = (bin: number): number => (bin * 4 + 1.5 - 64) / 876
