import { expect, test } from 'vitest'
import { kernelHere } from '../../../src/app/worker/kernelHere.ts'
import type { TransferSettings } from '../../../src/core/transfer/transferSettings.ts'
import { openMedia } from '../../../src/media/browser/openMedia.ts'
import { browserVideoTools } from '../../../src/media/browser/videoTools.ts'
import { namesIn } from '../../../src/work/pass/folderFiles.ts'
import { createGate } from '../../../src/work/pass/gate.ts'
import { makePass } from '../../../src/work/pass/makePass.ts'
import type { PassNews, PassOrder } from '../../../src/work/passCalls.ts'
import { clipJob, filesJob, makeHere, newFolder, orderOf, wrongIn } from './clipPass.ts'

const CLIP = 'numbered/h264-bframes-24.mp4'

/** Makes a pass on the page, where its folders can be made to refuse. */
const makeOnPage = (order: PassOrder, onNews: (news: PassNews) => void = () => {}) => {
  const gate = createGate()
  const tools = {
    ...{ openMedia, loadKernel: kernelHere, loadVideo: async () => browserVideoTools },
    storage: () => navigator.storage.getDirectory(),
  }
  const { signal } = new AbortController()
  return { gate, made: makePass({ order, tools, gate, tell: onNews, signal }) }
}

/** A folder like another that refuses to write files whose names end so. */
const refusing = (
  folder: FileSystemDirectoryHandle,
  ending: string,
  error: DOMException,
): FileSystemDirectoryHandle =>
  new Proxy(folder, {
    get: (target, name) => {
      if (name === 'getFileHandle')
        return async (file: string, options?: FileSystemGetFileOptions) => {
          if (options?.create && file.endsWith(ending)) throw error
          return target.getFileHandle(file, options)
        }
      const value: unknown = Reflect.get(target, name, target)
      return typeof value === 'function' ? value.bind(target) : value
    },
  })

test.each([
  ['QuotaExceededError', /^There is no room left to write/u],
  ['NotAllowedError', /may no longer write/u],
  ['NoModificationAllowedError', /is in use or cannot be changed/u],
] as const)('%s while writing is told, and the pass is gone on with', async (name, says) => {
  const { plan, file } = await clipJob(CLIP, { format: 'dpx' })
  const folder = await newFolder()
  const refused = refusing(folder, '_0000055.dpx', new DOMException('no', name))
  const { made } = makeOnPage(orderOf(plan, file, { kind: 'folder', folder: refused }))
  const result = await made
  expect(result.ok ? '' : result.problems[0].says).toMatch(says)
  const names: string[] = []
  for await (const each of namesIn(folder)) names.push(each)
  expect(names).not.toContain('checksums.txt')
  const target = { kind: 'folder', folder } as const
  const after = await makeHere(orderOf(plan, file, target, { goesOn: true }))
  expect(wrongIn(after)).toEqual([])
  expect(after.output.files).toBe(60)
})

/** A scan of pictures in the browser's storage: the clip, transferred. */
const pictureScan = async () => {
  const { plan, file } = await clipJob(CLIP, { format: 'dpx' })
  const folder = await newFolder()
  await makeHere(orderOf(plan, file, { kind: 'folder', folder }))
  await folder.removeEntry('checksums.txt')
  const names: string[] = []
  for await (const name of namesIn(folder)) names.push(name)
  names.sort()
  const files = async (): Promise<File[]> =>
    Promise.all(names.map(async (name) => (await folder.getFileHandle(name)).getFile()))
  return { folder, names, files }
}

const damagedScan = async (change: Partial<TransferSettings>) => {
  const { files } = await pictureScan()
  const whole = await files()
  const { plan } = await filesJob(whole, { format: 'png', ...change })
  const scan = whole.map((file, at) =>
    at === 30 || at === 31 ? new File([new Uint8Array(file.size)], file.name) : file,
  )
  return { plan, scan }
}

test('a damaged frame of the scan stops the pass, named', async () => {
  const { plan, scan } = await damagedScan({ onDamage: 'stop' })
  const folder = await newFolder()
  const [first] = scan
  if (!first) throw new Error('there is no scan')
  const { made } = makeOnPage(orderOf(plan, first, { kind: 'folder', folder }, { scan }))
  const result = await made
  expect(result.ok ? '' : result.problems[0].says).toMatch(/0000030\.dpx/u)
})

test('or, by choice, the frame before is shown and it is listed', async () => {
  const { plan, scan } = await damagedScan({ onDamage: 'hold' })
  const folder = await newFolder()
  const [first] = scan
  if (!first) throw new Error('there is no scan')
  const told: PassNews[] = []
  const order = orderOf(plan, first, { kind: 'folder', folder }, { scan })
  const { made } = makeOnPage(order, (news) => told.push(news))
  const result = await made
  expect(result.ok && result.value.heldFrames).toEqual([30, 31])
  expect(told.at(-1)?.heldFrames).toEqual([30, 31])
  const bytes = async (at: number) => {
    const name = `harbour_00000${at}.png`
    const opened = await openMedia([await (await folder.getFileHandle(name)).getFile()])
    if (!opened.ok) throw new Error(opened.problems[0].says)
    return (await opened.value.read(0 as never)).samples
  }
  expect(await bytes(31)).toEqual(await bytes(29))
})

test('a scan that goes while the pass runs stops it, though damaged frames are to be held', async () => {
  const { folder: scanFolder, names, files } = await pictureScan()
  const scan = await files()
  const { plan } = await filesJob(scan, { format: 'png', onDamage: 'hold' })
  const [first] = scan
  if (!first) throw new Error('there is no scan')
  const folder = await newFolder()
  let gone: Promise<void> | undefined
  const order = orderOf(plan, first, { kind: 'folder', folder }, { scan })
  const { gate, made } = makeOnPage(order, ({ pace }) => {
    if (pace.done === 0 || gone) return
    gate.pause(true)
    gone = (async () => {
      for (const name of names.slice(20)) await scanFolder.removeEntry(name)
      gate.pause(false)
    })()
  })
  const result = await made
  await gone
  expect(result.ok ? '' : result.problems[0].says).toMatch(/has gone or was changed/u)
})
