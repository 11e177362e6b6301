/** What a tenth of a second of one channel is like. */
export type Slice = {
  readonly rms: number
  readonly peak: number
  /** Times it goes up through 0. */
  readonly crossings: number
}

/** A steady tone, as a track has it for alignment. */
export type Tone = {
  /** Where it begins and how long it is, in seconds. */
  readonly at: number
  readonly seconds: number
  readonly hz: number
  /** Level of the sine in dBFS, 0 for one that just reaches full scale. */
  readonly level: number
}

const SLICE_SECONDS = 0.1

/** A sine's peak is √2 of its rms; this part off is still one. */
const SHAPE = 0.03

/** As much as a steady level goes up and down. */
const STEADY = 0.03

/** As much as the times a steady tone goes through 0 differ from slice to slice. */
const CROSSINGS = 2

/** Shorter is no tone for alignment. */
const LEAST_SECONDS = 2

/** Below this, −60 dBFS, there is nothing to align by. */
const QUIETEST = 0.001

const isSine = ({ rms, peak }: Slice): boolean =>
  rms > QUIETEST && Math.abs(peak / (rms * Math.SQRT2) - 1) < SHAPE

/** The first steady tone of at least 2 s in slices of 0.1 s; undefined where there is none. */
export const findTone = (slices: readonly Slice[]): Tone | undefined => {
  let from = 0
  while (from < slices.length) {
    const first = slices[from]
    if (!first || !isSine(first)) {
      from++
      continue
    }
    let end = from
    const isLike = (each: Slice | undefined): boolean =>
      each !== undefined &&
      isSine(each) &&
      Math.abs(each.rms / first.rms - 1) < STEADY &&
      Math.abs(each.crossings - first.crossings) <= CROSSINGS
    while (isLike(slices[end])) end++
    const seconds = (end - from) * SLICE_SECONDS
    if (seconds >= LEAST_SECONDS - 1e-9) {
      const tone = slices.slice(from, end)
      const sum = (of: (slice: Slice) => number) => tone.reduce((all, each) => all + of(each), 0)
      const rms = Math.sqrt(sum((each) => each.rms ** 2) / tone.length)
      return {
        ...{ at: from * SLICE_SECONDS, seconds, hz: sum((each) => each.crossings) / seconds },
        level: 20 * Math.log10(rms * Math.SQRT2),
      }
    }
    from = Math.max(end, from + 1)
  }
  return undefined
}
