import { describe, expect, test } from 'vitest'
import { kernelHere } from '../../../src/app/worker/kernelHere.ts'
import { formOf } from '../../../src/core/transfer/formOf.ts'
import { encodeDelivered } from '../../../src/media/encodeDelivered.ts'
import { filesChecksum } from '../../../src/media/filesChecksum.ts'
import { sha256OfBlob } from '../../../src/media/sha256OfBlob.ts'
import { deliverFrames } from '../../../src/work/deliverFrames.ts'
import { headPicturesOf } from '../../../src/work/headPictures.ts'
import { namesIn } from '../../../src/work/pass/folderFiles.ts'
import { clipJob, makeHere, newFolder, orderOf, startWorker, storeOf, wrongIn } from './clipPass.ts'
import { openHere } from './decoded.ts'

const CLIP = 'sound/tone-aac-25.mp4'

const filesIn = async (folder: FileSystemDirectoryHandle): Promise<ReadonlyMap<string, File>> => {
  const names: string[] = []
  for await (const name of namesIn(folder)) names.push(name)
  const files = new Map<string, File>()
  for (const name of names.sort())
    files.set(name, await (await folder.getFileHandle(name)).getFile())
  return files
}

const sumsOf = async (folder: FileSystemDirectoryHandle) => {
  const sums: { name: string; sha256: string }[] = []
  for (const [name, file] of await filesIn(folder))
    if (name !== 'checksums.txt') sums.push({ name, sha256: await sha256OfBlob(file) })
  return sums
}

test.each(['dpx', 'tiff', 'png'] as const)(
  'a sequence of %s is, byte for byte, what the kernel makes of each frame',
  async (format) => {
    const head = { bars: 0, slate: 0, leader: 1 }
    const { plan, file } = await clipJob(CLIP, { format, head })
    const folder = await newFolder()
    const made = await makeHere(orderOf(plan, file, { kind: 'folder', folder }))
    expect(wrongIn(made)).toEqual([])
    expect(made.findings.find(({ check }) => check === 'sound')?.says).toBe(
      'A sequence of pictures carries no sound.',
    )
    const files = await filesIn(folder)
    expect(files.size).toBe(76)
    const source = await openHere([file])
    const work = {
      ...{ plan, source, kernel: await kernelHere(), form: formOf(plan) },
      ...headPicturesOf(plan),
    }
    for await (const { at, bytes } of deliverFrames(work, { first: 0, end: 75 })) {
      const name = `harbour_${String(at).padStart(7, '0')}.${format === 'tiff' ? 'tif' : format}`
      const written = files.get(name)
      expect(written, name).toBeDefined()
      const timecode =
        at < 25
          ? `09:59:59:${at < 10 ? '0' : ''}${at}`
          : `10:00:0${at < 50 ? 0 : 1}:${String(at % 25).padStart(2, '0')}`
      const encoded = await encodeDelivered(
        bytes,
        { width: 320, height: 180 },
        { name, signal: 'bt709', rate: plan.reel.rate, timecode, pixelAspect: 1 },
        format,
      )
      expect(await sha256OfBlob(written ?? new Blob()), name).toBe(
        await sha256OfBlob(new Blob([encoded])),
      )
    }
    source.close()
    const sums = await sumsOf(folder)
    expect(await files.get('checksums.txt')?.text()).toBe(
      sums.map(({ name, sha256 }) => `${sha256}  ${name}\n`).join(''),
    )
    expect(made.output).toMatchObject({ files: 75, frames: 75, sha256: filesChecksum(sums) })
  },
)

describe('a folder', () => {
  test('that holds such names already is refused, and left as it is', async () => {
    const { plan, file } = await clipJob(CLIP, { format: 'dpx' })
    const folder = await newFolder()
    await folder.getFileHandle('harbour_0000900.dpx', { create: true })
    const order = orderOf(plan, file, { kind: 'folder', folder })
    const { call, end } = startWorker()
    const made = await call('make', order)
    end()
    expect(made).toMatchObject({
      ok: false,
      problems: [
        {
          code: 'conflict',
          says: `The folder ${folder.name} holds harbour_0000900.dpx already; choose an empty folder.`,
        },
      ],
    })
    expect((await filesIn(folder)).size).toBe(1)
    expect(await (await storeOf(order)).begun()).toBeUndefined()
  })

  test('that goes while the pass runs stops it with a sentence', async () => {
    const { plan, file } = await clipJob(CLIP, { format: 'dpx' })
    const folder = await newFolder()
    const { call, end } = startWorker()
    const root = await navigator.storage.getDirectory()
    let gone: Promise<void> | undefined
    const takeAway = async (): Promise<void> => {
      await call('pause', true)
      // What is on its way to the folder is written first: it cannot go before.
      await new Promise((resolve) => setTimeout(resolve, 300))
      await root.removeEntry(folder.name, { recursive: true })
      await call('pause', false)
    }
    const made = await call('make', orderOf(plan, file, { kind: 'folder', folder }), {
      onProgress: ({ pace }) => {
        if (pace.done > 0) gone ??= takeAway()
      },
    })
    await gone
    end()
    expect(made).toMatchObject({ ok: false })
    expect(made.ok ? '' : made.problems[0].says).toMatch(/go on with the pass/u)
  })
})

test('the scan of another size is refused before anything is written', async () => {
  const { plan, file } = await clipJob(CLIP, { format: 'dpx' })
  const folder = await newFolder()
  const other = new File([file, 'more'], file.name)
  const { call, end } = startWorker()
  const made = await call('make', orderOf(plan, other, { kind: 'folder', folder }))
  end()
  expect(made.ok ? '' : made.problems[0].says).toMatch(/^The scan that is open has \d+ bytes/u)
  expect((await filesIn(folder)).size).toBe(0)
})
