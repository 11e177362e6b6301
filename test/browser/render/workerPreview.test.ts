import { afterEach, expect, it } from 'vitest'
import { type Grade, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import type { Coding, Planes } from '../../../src/core/picture/planes.ts'
import { createPreview } from '../../../src/render/createPreview.ts'
import { createWorkerPreview } from '../../../src/render/createWorkerPreview.ts'
import type {
  FromPreview,
  PreviewDrawing,
  PreviewPort,
  ToPreview,
} from '../../../src/render/previewMessages.ts'
import type { Compare } from '../../../src/render/previewView.ts'
import { MADE_LISTS } from '../../support/madeLists.ts'
import { seeded } from '../../support/seeded.ts'

const WIDTH = 60
const HEIGHT = 40
const CODING: Coding = { matrix: 'bt709', range: 'narrow' }
const BRIGHT: Grade = { ...IDENTITY_GRADE, gain: [1.3, 1.1, 0.9], saturation: 1.2 }

const noise = (seed: number): Planes => {
  const random = seeded(seed)
  const plane = () =>
    Uint8Array.from({ length: WIDTH * HEIGHT }, () => 16 + Math.floor(random() * 220))
  const samples: Planes['samples'] = [plane(), plane(), plane()]
  return { width: WIDTH, height: HEIGHT, layout: 'rgb', depth: 8, samples }
}

const ONE = noise(1)
const OTHER = noise(2)

const drawing = (
  planes: Planes,
  grade: Grade,
  compare: Compare = { kind: 'none' },
  [width, height]: readonly [number, number] = [WIDTH, HEIGHT],
): PreviewDrawing => ({
  ...{ width, height, mayShrink: false, planes, coding: CODING },
  view: { grade, framing: IDENTITY_FRAMING, compare, excursions: null, isMoving: false },
})

const LISTED: Coding = {
  ...CODING,
  base: { ...PRINT_BASE, list: MADE_LISTS['a matrix, a curve and a cube'] ?? null },
}

const WIPED: Compare = {
  kind: 'wipe',
  at: 0.5,
  other: {
    ...{ planes: OTHER, coding: CODING, grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING },
    isMarked: false,
  },
}

const copy = (canvas: HTMLCanvasElement | OffscreenCanvas): Uint8ClampedArray => {
  const flat = new OffscreenCanvas(canvas.width, canvas.height)
  const context = flat.getContext('2d')
  context?.drawImage(canvas, 0, 0)
  return context?.getImageData(0, 0, flat.width, flat.height).data ?? new Uint8ClampedArray()
}

/** What the preview draws on the main thread. */
const direct = ({ width, height, planes, coding, view }: PreviewDrawing): Uint8ClampedArray => {
  const canvas = new OffscreenCanvas(width, height)
  const made = createPreview(canvas)
  if (!made.ok) throw new Error(made.problems[0].says)
  made.value.setPlanes(planes, coding)
  made.value.draw(view)
  const pixels = copy(canvas)
  made.value.dispose()
  return pixels
}

let worker: Worker | undefined
afterEach(() => {
  worker?.terminate()
  document.body.replaceChildren()
})

const setUp = () => {
  worker = new Worker(new URL('../../../src/app/worker/previewWorker.ts', import.meta.url), {
    type: 'module',
  })
  const sent: ToPreview[] = []
  const port: PreviewPort<ToPreview, FromPreview> = {
    postMessage: (message, transfer) => {
      sent.push(message)
      worker?.postMessage(message, transfer)
    },
    addEventListener: (type, listener) => worker?.addEventListener(type, listener),
  }
  const errors: Error[] = []
  const make = createWorkerPreview(port)
  const attach = () => {
    const canvas = document.createElement('canvas')
    document.body.append(canvas)
    const preview = make(canvas, {
      onProblems: (problems) => errors.push(new Error(problems[0]?.says)),
      onError: (error) => errors.push(error),
    })
    return { canvas, preview }
  }
  return { sent, errors, attach, port }
}

/** Waits until a canvas shows what the preview draws by itself. */
const toShow = (canvas: HTMLCanvasElement, wanted: PreviewDrawing) =>
  expect
    .poll(() => [canvas.width, canvas.height, copy(canvas).join()], { timeout: 20_000 })
    .toEqual([wanted.width, wanted.height, direct(wanted).join()])

it('draws what the preview draws, compared and at another size too', async () => {
  const { attach, errors } = setUp()
  const { canvas, preview } = attach()
  for (const wanted of [
    drawing(ONE, BRIGHT),
    drawing(ONE, BRIGHT, WIPED),
    drawing(ONE, IDENTITY_GRADE, WIPED, [WIDTH * 2, HEIGHT * 2]),
    drawing(OTHER, BRIGHT),
  ]) {
    preview.draw(wanted)
    await toShow(canvas, wanted)
  }
  expect(errors).toEqual([])
})

it('sends a frame once, as long as it is drawn', () => {
  const { attach, sent } = setUp()
  const { preview } = attach()
  preview.draw(drawing(ONE, IDENTITY_GRADE))
  preview.draw(drawing(ONE, BRIGHT))
  preview.draw(drawing(ONE, BRIGHT, WIPED))
  preview.draw(drawing(OTHER, BRIGHT))
  preview.draw(drawing(ONE, BRIGHT))
  const frames = sent.flatMap((message) => (message.kind === 'draw' ? [message.frames] : []))
  expect(frames).toEqual([[ONE], [0], [0, OTHER], [1], [ONE]])
})

it('draws by the list of a base, which crosses once', async () => {
  const { attach, errors, sent } = setUp()
  const { canvas, preview } = attach()
  for (const grade of [BRIGHT, IDENTITY_GRADE]) {
    const wanted = { ...drawing(ONE, grade, WIPED), coding: LISTED }
    preview.draw(wanted)
    await toShow(canvas, wanted)
  }
  const lists = sent.flatMap((message) =>
    message.kind === 'draw' ? [JSON.stringify(message.drawing.coding.base?.list)] : [],
  )
  expect(lists.map((text) => text.includes('cube'))).toEqual([true, false])
  expect(errors).toEqual([])
})

it('shows the last of many, on a canvas after another was given up', async () => {
  const { attach, errors } = setUp()
  const first = attach()
  first.preview.draw(drawing(ONE, BRIGHT))
  first.preview.dispose()
  first.canvas.remove()
  const { canvas, preview } = attach()
  for (let i = 0; i < 20; i++)
    preview.draw(drawing(i % 2 === 0 ? ONE : OTHER, { ...BRIGHT, saturation: i / 20 }))
  await toShow(canvas, drawing(OTHER, { ...BRIGHT, saturation: 19 / 20 }))
  expect(errors).toEqual([])
})

it('tells what goes wrong in the worker, and draws on', async () => {
  const { attach, errors, port } = setUp()
  const { canvas, preview } = attach()
  port.postMessage({ kind: 'draw', id: 0, frames: [7], drawing: drawing(ONE, BRIGHT) as never }, [])
  await expect
    .poll(() => errors.map(({ message }) => message))
    .toEqual([expect.stringMatching('sent')])
  const wanted = drawing(ONE, BRIGHT)
  preview.draw(wanted)
  await toShow(canvas, wanted)
})
