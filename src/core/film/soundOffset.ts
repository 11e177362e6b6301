import type { Gauge } from '../time/footage.ts'

export type TrackKind = 'optical' | 'magnetic' | 'separate'

/** How sure a value of the trade is. */
export type FactStanding = 'verified' | 'secondary' | 'from memory'

/** By how many frames sound runs ahead of its picture on a print; below 0 it lies behind. */
export type SoundOffset = {
  readonly frames: number
  readonly source: string
  readonly standing: FactStanding
}

const of = (frames: number, source: string, standing: FactStanding): SoundOffset => ({
  frames,
  source,
  standing,
})

const OFFSETS: Readonly<Partial<Record<Gauge, Readonly<Partial<Record<TrackKind, SoundOffset>>>>>> =
  {
    '35mm-4perf': {
      optical: of(21, 'ISO 2939, SMPTE 40; other texts print 20 and 19.5', 'from memory'),
      magnetic: of(-28, 'SMPTE 137, four-track', 'from memory'),
    },
    '16mm': {
      optical: of(26, 'SMPTE 41 (preview of its text), ISO 4243: 26 ± ½', 'verified'),
      magnetic: of(28, 'SMPTE 112, ISO 490', 'from memory'),
    },
    super8: {
      magnetic: of(18, 'SMPTE 164, by a secondary page', 'secondary'),
      optical: of(22, 'one page says 16', 'from memory'),
    },
    standard8: { magnetic: of(56, 'SMPTE 148, by a secondary page', 'secondary') },
  }

/**
 * Where the sound of a print lies, as a value to begin from and to be read on the film itself; a
 * separate magnetic track lies level. Undefined where none is known for the gauge.
 */
export const soundOffset = (gauge: Gauge, track: TrackKind): SoundOffset | undefined =>
  track === 'separate'
    ? of(0, 'level with its picture; common practice', 'from memory')
    : OFFSETS[gauge]?.[track]
