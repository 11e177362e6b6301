/** A colour as R, G, B bytes. */
export type Ink = readonly [r: number, g: number, b: number]

const css = ([r, g, b]: Ink): string => `rgb(${r} ${g} ${b})`

/** The inks of channels: --red, --green and --blue of the style sheet. */
export const CHANNEL_INKS: readonly [r: Ink, g: Ink, b: Ink] = [
  [0xe0, 0x7a, 0x7a],
  [0x7f, 0xc0, 0x7f],
  [0x86, 0xa8, 0xea],
]
export const CHANNEL_CSS = [
  css(CHANNEL_INKS[0]),
  css(CHANNEL_INKS[1]),
  css(CHANNEL_INKS[2]),
] as const

export const CHANNEL_NAMES = ['R′', 'G′', 'B′'] as const

/** The inks of what stands behind a trace, and over it. */
export const LINE_CSS = '#3a3a3a'
export const MAIN_LINE_CSS = '#5c5c5c'
export const TEXT_CSS = '#a3a3a3'
export const LIMIT_CSS = '#d0d0d0'
export const BRIGHT_CSS = '#fafafa'

export const INSTRUMENT_FONT = '10px "Inter Variable", sans-serif'
