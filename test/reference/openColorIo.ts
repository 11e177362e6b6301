import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import type { Cdl, CdlStyle } from '../../src/core/colour/cdl.ts'
import type { Triple } from '../../src/core/colour/triple.ts'

const SCRIPT = join(import.meta.dirname, 'openColorIo.py')

const ask = (args: readonly string[], input: Uint8Array): Buffer =>
  execFileSync(process.env.REFERENCE_PYTHON ?? 'python3', [SCRIPT, ...args], {
    input,
    maxBuffer: 2 ** 28,
  })

/** A correction and the colours, as many for each, that are to go through it. */
export type CdlCase = { readonly cdl: Cdl; readonly colours: readonly Triple[] }

export type CdlDirection = 'forward' | 'reverse'

/** A colour of a case through its correction by others. */
export type CdlAnswer = {
  readonly cdl: Cdl
  readonly style: CdlStyle
  readonly direction: CdlDirection
  readonly colour: Triple
  /** By the formula of ASC CDL v1.2 in Python's float64. */
  readonly formula: Triple
  /** By OpenColorIO's processor, without optimisation: float32. */
  readonly openColorIo: Triple
}

const tripleAt = (values: Float64Array, i: number): Triple => [
  values[3 * i] ?? Number.NaN,
  values[3 * i + 1] ?? Number.NaN,
  values[3 * i + 2] ?? Number.NaN,
]

const WAYS: readonly (readonly [CdlStyle, CdlDirection])[] = [
  ['clamp', 'forward'],
  ['clamp', 'reverse'],
  ['noclamp', 'forward'],
  ['noclamp', 'reverse'],
]

/** Every colour of every case in both styles and directions. */
export const askCdl = (cases: readonly CdlCase[]): readonly CdlAnswer[] => {
  const each = cases[0]?.colours.length ?? 0
  const numbers = cases.flatMap(({ cdl, colours }) => [
    ...cdl.slope,
    ...cdl.offset,
    ...cdl.power,
    cdl.saturation,
    ...colours.flat(),
  ])
  const bytes = ask(['cdl', String(each)], new Uint8Array(Float64Array.from(numbers).buffer))
  const values = new Float64Array(new Uint8Array(bytes).buffer)
  return cases.flatMap(({ cdl, colours }, nth) =>
    WAYS.flatMap(([style, direction], way) => {
      const start = (nth * WAYS.length + way) * 2 * each
      return colours.map((colour, i) => ({
        cdl,
        style,
        direction,
        colour,
        formula: tripleAt(values, start + i),
        openColorIo: tripleAt(values, start + each + i),
      }))
    }),
  )
}

export type ReadCorrection = Cdl & { readonly id: string }

/** The corrections that OpenColorIO finds in each of some .ccc files. */
export const readCollections = (files: readonly string[]): readonly (readonly ReadCorrection[])[] =>
  JSON.parse(ask(['ccc', ...files], new Uint8Array()).toString())

/** A file, and the id of the correction meant in it; '' for all that is in it. */
export type FileAndId = { readonly file: string; readonly id: string }

/** Colours as each of some files makes them: by OpenColorIO, without optimisation, in float32. */
export const applyFiles = (
  pairs: readonly FileAndId[],
  colours: readonly Triple[],
): readonly (readonly Triple[])[] => {
  const input = new Uint8Array(Float64Array.from(colours.flat()).buffer)
  const args = pairs.flatMap(({ file, id }) => [file, id])
  const values = new Float64Array(new Uint8Array(ask(['apply', ...args], input)).buffer)
  return pairs.map((_, nth) => colours.map((_, i) => tripleAt(values, nth * colours.length + i)))
}

/** The largest difference of a channel; of values above 1, in parts of the value. */
export const largestDifference = (
  ours: readonly Triple[],
  theirs: readonly (Triple | undefined)[] = [],
): number =>
  ours.reduce(
    (most, colour, i) =>
      colour.reduce((so, value, c) => {
        const apart = Math.abs(value - (theirs[i]?.[c] ?? Number.POSITIVE_INFINITY))
        return Math.max(so, apart / Math.max(1, Math.abs(value)))
      }, most),
    0,
  )
