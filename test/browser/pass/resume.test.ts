import { expect, test } from 'vitest'
import { filesChecksum } from '../../../src/media/filesChecksum.ts'
import { sha256OfBlob } from '../../../src/media/sha256OfBlob.ts'
import { namesIn } from '../../../src/work/pass/folderFiles.ts'
import type { PassNews, PassOrder } from '../../../src/work/passCalls.ts'
import { clipJob, makeHere, newFolder, orderOf, startWorker, storeOf, wrongIn } from './clipPass.ts'
import { decodedFrames } from './decoded.ts'

/** 60 frames of 128×96, 24 a second. */
const CLIP = 'numbered/h264-bframes-24.mp4'
/** With the clip, four segments. */
const HEAD = { bars: 2, slate: 0, leader: 2 }
const FILE = { kind: 'file', file: undefined } as const

const waitUntil = async (isSo: () => Promise<boolean>): Promise<void> => {
  while (!(await isSo())) await new Promise((resolve) => setTimeout(resolve, 5))
}

/** Begins a pass, and ends its worker without warning once one segment is written. */
const makeHalf = async (order: PassOrder): Promise<void> => {
  const { call, end } = startWorker()
  void call('make', order)
  const store = await storeOf(order)
  await waitUntil(async () => (await store.segment(0)) !== undefined)
  end()
  expect((await store.segments()).length).toBeLessThan(4)
}

/** Goes on with a pass; how many written frames it began with, and what it came to. */
const goOn = async (order: PassOrder) => {
  const { call, end } = startWorker()
  const news: PassNews[] = []
  const made = await call('make', { ...order, goesOn: true }, { onProgress: (n) => news.push(n) })
  end()
  if (!made.ok) throw new Error(made.problems[0].says)
  const writing = news.filter(({ phase }) => phase === 'writing')
  return { made: made.value, doneBefore: writing.at(-1)?.doneBefore ?? 0, news }
}

const pictureSum = async (folder: FileSystemDirectoryHandle): Promise<string> => {
  const sums: { name: string; sha256: string }[] = []
  for await (const name of namesIn(folder))
    if (name !== 'checksums.txt') {
      const file = await (await folder.getFileHandle(name)).getFile()
      sums.push({ name, sha256: await sha256OfBlob(file) })
    }
  return filesChecksum(sums)
}

test.each(['h264', 'vp9', 'av1'] as const)(
  'a %s pass whose worker died is gone on with, and comes to the same frames',
  async (format) => {
    const { plan, file } = await clipJob(CLIP, { format, head: HEAD })
    const order = orderOf(plan, file, FILE)
    await makeHalf(order)
    const { made, doneBefore } = await goOn(order)
    expect(doneBefore).toBeGreaterThanOrEqual(48)
    expect(wrongIn(made)).toEqual([])
    const again = await clipJob(CLIP, { format, head: HEAD })
    const whole = await makeHere(orderOf(again.plan, again.file, FILE))
    expect(await decodedFrames([made.file ?? new File([], '')])).toEqual(
      await decodedFrames([whole.file ?? new File([], '')]),
    )
  },
)

test('a sequence whose worker died is gone on with, and comes to the same bytes', async () => {
  const { plan, file } = await clipJob(CLIP, { format: 'dpx', head: HEAD })
  const folder = await newFolder()
  const order = orderOf(plan, file, { kind: 'folder', folder })
  await makeHalf(order)
  // What a browser may leave of a picture that it was writing when its worker died.
  await folder.getFileHandle('harbour_0000099.dpx.crswap', { create: true })
  await folder.getFileHandle('harbour.dpx.crswap', { create: true })
  const { made, doneBefore } = await goOn(order)
  expect(doneBefore).toBeGreaterThanOrEqual(48)
  expect(wrongIn(made)).toEqual([])
  await folder.removeEntry('harbour.dpx.crswap')
  const other = await newFolder()
  const again = await clipJob(CLIP, { format: 'dpx', head: HEAD })
  await makeHere(orderOf(again.plan, again.file, { kind: 'folder', folder: other }))
  expect(await pictureSum(folder)).toBe(await pictureSum(other))
})

test('a picture changed since it was written has its segment made again', async () => {
  const { plan, file } = await clipJob(CLIP, { format: 'dpx', head: HEAD })
  const folder = await newFolder()
  const order = orderOf(plan, file, { kind: 'folder', folder })
  const made = await makeHere(order)
  const handle = await folder.getFileHandle('harbour_0000060.dpx')
  const stream = await handle.createWritable({ keepExistingData: true })
  await stream.write({ type: 'write', position: 3000, data: Uint8Array.of(1, 2, 3) })
  await stream.close()
  const { made: after, doneBefore } = await goOn(order)
  expect(doneBefore).toBe(108)
  expect(after.output.sha256).toBe(made.output.sha256)
  expect(await pictureSum(folder)).toBe(made.output.sha256)
})

test('a job or a scan that changed is not gone on with, and what is kept stays', async () => {
  const { plan: early, file } = await clipJob(CLIP, { format: 'vp9', head: HEAD })
  const reel = { ...early.reel, media: { ...early.reel.media, checksum: 'a'.repeat(64) } }
  const plan = { ...early, reel }
  const order = orderOf(plan, file, FILE)
  await makeHalf(order)
  const [first, ...others] = plan.cues
  if (!first) throw new Error('there is no cue')
  const cues = [{ ...first, grade: { ...first.grade, saturation: 0.5 } }, ...others]
  const media = { ...plan.reel.media, checksum: 'f'.repeat(64) }
  const store = await storeOf(order)
  const kept = await store.segments()
  for (const changed of [
    { ...plan, cues },
    { ...plan, reel: { ...plan.reel, media } },
  ]) {
    const { call, end } = startWorker()
    const made = await call('make', { ...order, plan: changed, goesOn: true })
    end()
    expect(made.ok ? '' : made.problems[0].says).toMatch(/has changed since this pass was begun/u)
  }
  expect(await store.segments()).toEqual(kept)
  await store.discard()
  expect(await store.begun()).toBeUndefined()
})

test('that the checksum of the scan was taken meanwhile is no hindrance', async () => {
  const { plan, file } = await clipJob(CLIP, { format: 'dpx', head: HEAD })
  const order = orderOf(plan, file, { kind: 'folder', folder: await newFolder() })
  await makeHalf(order)
  const media = { ...plan.reel.media, checksum: 'a'.repeat(64) }
  const { made } = await goOn({ ...order, plan: { ...plan, reel: { ...plan.reel, media } } })
  expect(made.output.frames).toBe(plan.timeline.frames)
})

test('gone on with in another folder, a pass leaves the pictures that are there alone', async () => {
  const { plan, file } = await clipJob(CLIP, { format: 'dpx', head: HEAD })
  const order = orderOf(plan, file, { kind: 'folder', folder: await newFolder() })
  await makeHalf(order)
  const other = await newFolder()
  await other.getFileHandle('harbour_0000000.dpx', { create: true })
  const { call, end } = startWorker()
  const made = await call('make', {
    ...order,
    target: { kind: 'folder', folder: other },
    goesOn: true,
  })
  end()
  expect(made.ok ? '' : made.problems[0].says).toBe(
    `The folder ${other.name} holds harbour_0000000.dpx already; choose an empty folder.`,
  )
  expect((await (await other.getFileHandle('harbour_0000000.dpx')).getFile()).size).toBe(0)
  await (await storeOf(order)).discard()
})

test('two passes at once: of one reel, and to one output, the second is refused by name', async () => {
  const { plan, file } = await clipJob(CLIP, { format: 'dpx', head: HEAD })
  const folder = await newFolder()
  const order = orderOf(plan, file, { kind: 'folder', folder })
  const first = startWorker()
  const second = startWorker()
  const made = first.call('make', order)
  const store = await storeOf(order)
  await waitUntil(async () => (await store.begun()) !== undefined)
  const same = await second.call('make', order)
  expect(same.ok ? '' : same.problems[0].says).toMatch(/under way in another window/u)
  const other = await clipJob(CLIP, { format: 'dpx', head: HEAD })
  const otherOrder = orderOf(other.plan, other.file, { kind: 'folder', folder })
  const beside = await second.call('make', otherOrder)
  expect(beside.ok ? '' : beside.problems[0].says).toBe(
    `Another pass is writing to ${folder.name}; wait for it, or write somewhere else.`,
  )
  expect((await made).ok).toBe(true)
  first.end()
  second.end()
})

test('a pause stops the work, and is not counted in the pace', async () => {
  const { plan, file } = await clipJob(CLIP, { format: 'dpx', head: HEAD })
  const folder = await newFolder()
  const { call, end } = startWorker()
  const news: PassNews[] = []
  let paused: Promise<unknown> | undefined
  const made = call('make', orderOf(plan, file, { kind: 'folder', folder }), {
    onProgress: (each) => {
      news.push(each)
      if (each.pace.done > 0) paused ??= call('pause', true)
    },
  })
  await waitUntil(async () => paused !== undefined)
  await paused
  await new Promise((resolve) => setTimeout(resolve, 200))
  const told = news.length
  await new Promise((resolve) => setTimeout(resolve, 400))
  expect(news.length).toBe(told)
  await call('pause', false)
  expect((await made).ok).toBe(true)
  end()
})
