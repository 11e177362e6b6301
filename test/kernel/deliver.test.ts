import { describe, expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { type FilmBase, PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { encodePicture } from '../../src/core/picture/encodePicture.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Layout, Planes } from '../../src/core/picture/planes.ts'
import {
  type Limits,
  PUBLISHED_PROFILES,
  type ToleranceProfile,
} from '../../src/core/tolerance/profile.ts'
import {
  type Delivered,
  type DeliveredForm,
  deliveredBytes,
  type Overlay,
} from '../../src/core/transfer/deliveredForm.ts'
import type { DeliverOptions, KernelInput } from '../../src/kernel/kernel.ts'
import { referenceKernel } from '../../src/kernel/referenceKernel.ts'
import { MADE_LISTS } from '../support/madeLists.ts'
import { readStill, STILLS } from '../support/readStill.ts'
import { builtKernel } from './builtKernel.ts'
import {
  noisePlanes,
  planesOf,
  randomFraming,
  randomGrade,
  seeded,
  shadedPlanes,
} from './randomPictures.ts'

const kernel = await builtKernel()
const reference = referenceKernel()

const FORMS: readonly DeliveredForm[] = [
  { kind: 'words10' },
  { kind: 'rgb16', isLittleEndian: true },
  { kind: 'rgb16', isLittleEndian: false },
  ...(['420', '422', '444'] as const).flatMap((layout) =>
    ([8, 10] as const).map(
      (depth) => ({ kind: 'planes', matrix: 'bt709', depth, layout }) as const,
    ),
  ),
]
const BASES: Readonly<Record<string, FilmBase>> = {
  'printing density': { ...PRINT_BASE, scan: 'printing-density' },
  'a negative': {
    ...PRINT_BASE,
    scan: 'negative',
    clear: [0.25, 0.6, 0.85],
    gamma: [0.6, 0.65, 0.7],
  },
  'a process list': { ...PRINT_BASE, list: Object.values(MADE_LISTS)[0] ?? null },
}
const nameOf = (form: DeliveredForm): string => Object.values(form).join(' ')
const NAMED = FORMS.map((form) => [nameOf(form), form] as const)
const SIZES = [
  [37, 23],
  [1, 1],
  [2, 3],
  [16, 5],
  [19, 2],
] as const
const LAYOUTS: readonly Layout[] = ['420', '422', '444', 'rgb']

/** The codes that bytes of a form hold, read as its description has it. */
const codesOf = (bytes: Uint8Array, form: DeliveredForm): readonly number[] => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length)
  const each = (step: number, read: (at: number) => number) =>
    Array.from({ length: bytes.length / step }, (_, i) => read(i * step))
  if (form.kind === 'rgb16') return each(2, (at) => view.getUint16(at, form.isLittleEndian))
  if (form.kind === 'planes')
    return form.depth === 8 ? [...bytes] : each(2, (at) => view.getUint16(at, true))
  const words = each(4, (at) => view.getUint32(at))
  expect(words.every((word) => (word & 3) === 0)).toBe(true)
  return words.flatMap((word) => [word >>> 22, (word >>> 12) & 1023, (word >>> 2) & 1023])
}

const farthest = (ours: Delivered, theirs: Delivered, form: DeliveredForm): number => {
  const [a, b] = [codesOf(ours.bytes, form), codesOf(theirs.bytes, form)]
  expect(a.length).toBe(b.length)
  return a.reduce((most, code, i) => Math.max(most, Math.abs(code - (b[i] ?? Number.NaN))), 0)
}

/** The side a half falls on; of 16 bits with what the power stage adds, see `Kernel`. */
const mostCodes = (form: DeliveredForm): number => (form.kind === 'rgb16' ? 2 : 1)

/** Pixels whose level lies so near a threshold that f32 puts them on its other side. */
const MOST_COUNTED = 2

const compare = (input: KernelInput, options: DeliverOptions): Delivered => {
  const { form } = options
  const ours = kernel.deliver(input, options)
  const theirs = reference.deliver(input, options)
  const { planes, ...rest } = input
  const what = JSON.stringify({ ...rest, size: [planes.width, planes.height], form })
  expect(farthest(ours, theirs, form), what).toBeLessThanOrEqual(mostCodes(form))
  expect(Math.abs(ours.clipped - theirs.clipped), what).toBeLessThanOrEqual(MOST_COUNTED)
  expect(Math.abs(ours.limited - theirs.limited), what).toBeLessThanOrEqual(MOST_COUNTED)
  return ours
}

const inputOf = (planes: Planes, rest: Partial<KernelInput> = {}): KernelInput => ({
  planes,
  coding: { matrix: 'bt709', range: 'narrow' },
  grade: IDENTITY_GRADE,
  framing: IDENTITY_FRAMING,
  ...rest,
})

describe.each(NAMED)('%s', (_, form) => {
  test.each(LAYOUTS)('of %s pictures is that of the reference', (layout) => {
    const random = seeded(FORMS.indexOf(form) * 7 + LAYOUTS.indexOf(layout))
    for (const depth of [8, 10, 16] as const)
      for (const [width, height] of SIZES)
        for (const isFramed of [false, true])
          compare(
            inputOf(noisePlanes(random, layout, depth, width, height), {
              coding: { matrix: 'bt601', range: depth === 10 ? 'full' : 'narrow' },
              grade: randomGrade(random),
              framing: isFramed ? randomFraming(random) : IDENTITY_FRAMING,
            }),
            { form },
          )
  })

  test('crosses bands, whose first rows are even and odd', () => {
    const random = seeded(70)
    // Bands of 46, 45 and 20 rows.
    for (const width of [701, 720, 1601])
      for (const framing of [IDENTITY_FRAMING, { ...IDENTITY_FRAMING, zoom: 0.8, rotation: 9 }])
        compare(
          inputOf(shadedPlanes(random, '420', 8, width, 95), {
            grade: randomGrade(random),
            framing,
          }),
          { form },
        )
  })

  test.each(Object.entries(BASES))('on a base: %s', (__, base) => {
    const random = seeded(4)
    for (const layout of LAYOUTS) {
      const input = inputOf(shadedPlanes(random, layout, 10, 61, 34), {
        coding: { matrix: 'bt709', range: 'full', base },
        grade: randomGrade(random),
      })
      if (form.kind !== 'rgb16') {
        compare(input, { form })
        continue
      }
      // Curves of a base are of f32: a gamma magnifies their rounding where a level nears black.
      const theirs = codesOf(reference.deliver(input, { form }).bytes, form)
      const ours = codesOf(kernel.deliver(input, { form }).bytes, form)
      const far = ours.filter((code, i) => Math.abs(code - (theirs[i] ?? Number.NaN)) > 1)
      expect(far.length).toBeLessThan(ours.length / 200)
    }
  })

  test.each(PUBLISHED_PROFILES.map((profile) => [profile.name, profile] as const))(
    'limited to %s',
    (__, profile) => {
      const random = seeded(profile.id.length)
      for (const limiting of ['hard', 'soft'] as const)
        for (const [width, height] of [
          [64, 33],
          [5, 3],
        ] as const) {
          const { limited } = compare(
            inputOf(noisePlanes(random, '444', 10, width, height), {
              coding: { matrix: 'bt601', range: 'narrow' },
              grade: { ...randomGrade(random), gain: [1.4, 1.3, 1.2] },
            }),
            { form, limiter: { limiting, profile } },
          )
          if (width === 64) expect(limited).toBeGreaterThan(100)
        }
    },
  )

  test('carries an overlay, also past the edges, which saturation leaves as it is', () => {
    const random = seeded(8)
    for (const [left, top] of [
      [3, 4],
      [-6, -2],
      [30, 19],
      [-50, 5],
    ] as const)
      compare(
        inputOf(shadedPlanes(random, '420', 8, 37, 23), {
          grade: { ...IDENTITY_GRADE, saturation: 1.7 },
        }),
        { form, overlay: overlayAt(random, left, top) },
      )
  })
})

const overlayAt = (random: () => number, left: number, top: number): Overlay => ({
  left,
  top,
  width: 13,
  height: 7,
  coverage: Uint8Array.from({ length: 91 }, () => Math.floor(random() * 256)),
  ink: 0.9,
  ground: 0.05,
})

/** A photograph in R′G′B′ of 8 bits, and in Y′CbCr of 10. */
const photograph = (name: string): readonly Planes[] => {
  const { width, height, pixels } = readStill(name)
  const plane = (c: number) => Float64Array.from(pixels, (rgb) => rgb[c] ?? 0)
  const levels = { width, height, r: plane(0), g: plane(1), b: plane(2) }
  const rgb = planesOf('rgb', 8, width, height, (c, x, y) => {
    const level = pixels[y * width + x]?.[c] ?? 0
    return 16 + 219 * level
  })
  return [rgb, encodePicture(levels, 'bt709', 10)]
}

test.each(STILLS.slice(0, 3))(
  'the photograph %s is laid out as the reference does, and limited',
  (name) => {
    const random = seeded(name.length)
    for (const planes of photograph(name)) {
      const input = inputOf(planes, {
        grade: { ...randomGrade(random), gain: [1.2, 1.15, 1.25] },
        framing: { ...IDENTITY_FRAMING, zoom: 1.1, rotation: random() < 0.5 ? 0 : 3 },
      })
      // The reference is slow: a form has one of the profiles, another in the next photograph.
      for (const [i, form] of FORMS.entries()) {
        const profile = PUBLISHED_PROFILES[(i + STILLS.indexOf(name)) % PUBLISHED_PROFILES.length]
        compare(input, { form, ...(profile && { limiter: { limiting: 'soft', profile } }) })
      }
    }
  },
)

test.each(PUBLISHED_PROFILES.map((profile) => [profile.name, profile] as const))(
  'what was limited to %s is inside it when the codes are measured, but for their rounding',
  (_, profile) => {
    const form = { kind: 'planes', matrix: 'bt709', depth: 10, layout: '444' } as const
    const [width, height] = [96, 54]
    const coding = { matrix: 'bt709', range: 'narrow' } as const
    const graded = inputOf(shadedPlanes(seeded(3), '420', 8, width, height), {
      grade: { lift: [-0.2, -0.1, 0.1], gamma: [1, 1, 1], gain: [1.9, 1.6, 1.3], saturation: 2 },
    })
    for (const limiting of ['hard', 'soft'] as const) {
      const { bytes } = kernel.deliver(graded, { form, limiter: { limiting, profile } })
      const count = width * height
      const plane = (i: number) => new Uint16Array(bytes.buffer, 2 * i * count, count)
      const samples = [plane(0), plane(1), plane(2)] as const
      const planes: Planes = { width, height, layout: '444', depth: 10, samples }
      // Half a code of Y′ and of a colour difference is up to a code and a half of R′, G′ or B′.
      const slack = 1.5 / 876
      const wider = (limits: Limits): Limits => [limits[0] - slack, limits[1] + slack]
      const { rgb, luma, composite } = profile
      const rounded = {
        ...profile,
        rgb: rgb && wider(rgb),
        luma: wider(luma),
        composite: composite && wider(composite),
      }
      const measure = (input: KernelInput, by: ToleranceProfile) =>
        kernel.measureLevels(input, coding.matrix, by).outside
      expect(measure(graded, profile)).toBeGreaterThan(100)
      expect(measure(inputOf(planes), rounded)).toBe(0)
      expect(measure(inputOf(planes), { ...rounded, filtered: true })).toBe(0)
    }
  },
)

test('grades that are no numbers, endless or tiny end in codes, limited or not', () => {
  const random = seeded(3)
  const odd = [Number.NaN, Infinity, -Infinity, 5e-324, 1e-39, 1e300, -1e300, 0]
  for (const value of odd)
    for (const field of ['lift', 'gamma', 'gain'] as const)
      for (const form of FORMS)
        for (const profile of [undefined, ...PUBLISHED_PROFILES]) {
          const planes = noisePlanes(random, '420', 8, 19, 7)
          const grade = { ...IDENTITY_GRADE, [field]: [value, 1, value] }
          const laid = kernel.deliver(inputOf(planes, { grade }), {
            form,
            ...(profile && { limiter: { limiting: 'soft', profile } }),
          })
          const most =
            form.kind === 'rgb16' ? 65535 : form.kind === 'words10' ? 1023 : 2 ** form.depth - 1
          expect(Math.max(...codesOf(laid.bytes, form))).toBeLessThanOrEqual(most)
          expect(laid.clipped).toBeLessThanOrEqual(19 * 7)
          expect(laid.limited).toBeLessThanOrEqual(19 * 7)
        }
})

test('nearly all codes are those of the reference', () => {
  const input = inputOf(shadedPlanes(seeded(12), '422', 10, 240, 135), {
    grade: {
      lift: [0.02, 0.01, 0.015],
      gamma: [1.15, 1.1, 1.2],
      gain: [1.02, 1, 1.05],
      saturation: 1.1,
    },
  })
  for (const form of FORMS) {
    const theirs = codesOf(reference.deliver(input, { form }).bytes, form)
    const ours = codesOf(kernel.deliver(input, { form }).bytes, form)
    const different = ours.filter((code, i) => code !== theirs[i]).length
    const part = form.kind === 'rgb16' ? 1 / 10 : 1 / 300
    expect(different, nameOf(form)).toBeLessThan(part * ours.length)
  }
})

test('the kernel counts a pixel once, however many of its levels are clipped', () => {
  const planes: Planes = {
    width: 4,
    height: 1,
    layout: 'rgb',
    depth: 10,
    samples: [
      Uint16Array.of(0, 64, 940, 1023),
      Uint16Array.of(0, 64, 1023, 1023),
      Uint16Array.of(64, 64, 940, 1023),
    ],
  }
  expect(kernel.deliver(inputOf(planes), { form: { kind: 'words10' } }).clipped).toBe(3)
  const narrow = PUBLISHED_PROFILES.find(({ id }) => id === 'narrow-range')
  if (!narrow) throw new Error('no such profile')
  const limited = kernel.deliver(inputOf(planes), {
    form: { kind: 'words10' },
    limiter: { limiting: 'hard', profile: narrow },
  })
  expect(limited).toMatchObject({ clipped: 0, limited: 3 })
})

describe('the bytes', () => {
  const random = seeded(9)
  const form: DeliveredForm = { kind: 'planes', matrix: 'bt709', depth: 8, layout: '420' }
  const input = (width: number, height: number) =>
    inputOf(shadedPlanes(random, '420', 8, width, height), { grade: randomGrade(random) })

  test('are written into an array of their size, and no other', () => {
    const next = input(41, 21)
    const fresh = kernel.deliver(next, { form })
    const into = new Uint8Array(deliveredBytes(form, 41, 21)).fill(7)
    expect(kernel.deliver(next, { form }, into).bytes).toBe(into)
    expect(into).toEqual(fresh.bytes)
    expect(reference.deliver(next, { form }, into).bytes).toBe(into)
    const other = new Uint8Array(5)
    expect(kernel.deliver(next, { form }, other).bytes).not.toBe(other)
  })

  test('of one picture do not depend on the pictures before it', async () => {
    const wanted = input(33, 17)
    const alone = (await builtKernel()).deliver(wanted, { form })
    for (const each of FORMS)
      kernel.deliver(input(90, 70), {
        form: each,
        overlay: overlayAt(random, 0, 0),
        limiter: { limiting: 'soft', profile: PUBLISHED_PROFILES[3] as never },
      })
    expect(kernel.deliver(wanted, { form })).toEqual(alone)
  })
})
