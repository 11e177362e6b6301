import { expect, test } from 'vitest'
import { decodeDpx } from '../../src/media/dpx/decodeDpx.ts'
import { channelsOf, type DpxForm, dpxOf } from '../media-layer/support/dpx.ts'
import { type Chance, chanceFrom, fuzzReader } from '../support/fuzzReader.ts'

const PLAIN: DpxForm = { width: 4, height: 3, depth: 10, packing: 1, descriptor: 50 }

const FORMS: readonly DpxForm[] = [
  PLAIN,
  { width: 3, height: 2, depth: 10, packing: 0, descriptor: 51, isLittleEndian: true },
  { width: 5, height: 2, depth: 12, packing: 2, descriptor: 52, linePadding: 4 },
  { width: 3, height: 3, depth: 16, packing: 0, descriptor: 6, orientation: 3 },
  { width: 3, height: 3, depth: 8, packing: 0, descriptor: 50, isUnaligned: true },
]

const madeFrom = (form: DpxForm, chance: Chance): Uint8Array => {
  const count = form.width * form.height * channelsOf(form)
  return dpxOf(
    Array.from({ length: count }, () => chance(2 ** form.depth)),
    form,
  )
}

/** Fields a reader decides by: bytes that are likely to be meant, and any others. */
const DECIDING = [4, 6, 660, 768, 769, 770, 771, 772, 774, 775, 776, 779, 780, 783, 800, 803]
const MORE = [804, 805, 806, 807, 808, 810, 811, 812, 815, 872, 1628, 1724, 1920, 1952, 1964]
const LIKELY = [0, 1, 2, 3, 4, 6, 8, 10, 12, 16, 50, 51, 52, 100, 255]

const makeUp = (chance: Chance): Uint8Array => {
  const bytes = madeFrom(FORMS[chance(FORMS.length)] ?? PLAIN, chance)
  const fields = [...DECIDING, ...MORE]
  for (let left = chance(3); left > 0; left--)
    bytes[fields[chance(fields.length)] ?? 0] = LIKELY[chance(LIKELY.length)] ?? chance(256)
  return bytes
}

test('DPX: no damage makes the reader throw, hang or fill memory, and refusals name a byte', async () => {
  const counts = await fuzzReader({
    seeds: FORMS.map((form) => madeFrom(form, chanceFrom(7))),
    makeUp,
    toInput: (bytes) => bytes,
    read: (bytes) => decodeDpx(bytes, 'a.dpx'),
  })
  expect(counts.read).toBeGreaterThan(2000)
  expect(counts.refused).toBeGreaterThan(2000)
})
