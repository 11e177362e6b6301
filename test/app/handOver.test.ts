import { execFileSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { strFromU8, unzipSync } from 'fflate'
import { afterEach, describe, expect, it } from 'vitest'
import { createHandOverDesk } from '../../src/app/handOver.ts'
import { zipFiles } from '../../src/app/worker/zipFiles.ts'
import { handOverFiles } from '../../src/core/formats/handOverFiles.ts'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import {
  FORMATS_HANDED_OVER,
  isFileACue,
  type PreparedFormat,
} from '../../src/core/formats/prepareFormat.ts'
import type { Job } from '../../src/core/job/job.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob } from '../../src/store/document.ts'
import type { HandOverCalls } from '../../src/work/handOverCalls.ts'
import { handOverHandlers } from '../../src/work/handOverHandlers.ts'
import { createCaller, type Port, serveCalls } from '../../src/work/rpc.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

const ports: MessagePort[] = []

afterEach(() => {
  for (const port of ports.splice(0)) port.close()
})

/** A desk over handlers that answer through a channel, as a worker does, and what it saved. */
const desk = (job: Job = sampleJob()) => {
  const { port1, port2 } = new MessageChannel()
  ports.push(port1, port2)
  serveCalls<HandOverCalls>(port1 as unknown as Port, handOverHandlers(zipFiles))
  port1.start()
  const call = createCaller<HandOverCalls>(port2 as unknown as Port)
  port2.start()
  const store = createAppStore()
  showJob(store, job, 'shelf')
  const saved = new Map<string, Blob>()
  const handOver = createHandOverDesk(store, call, async (name, make) => {
    saved.set(name, await make())
    return true
  })
  const bytesOf = async (name: string) =>
    new Uint8Array((await saved.get(name)?.arrayBuffer()) ?? new ArrayBuffer(0))
  return { store, handOver, saved, bytesOf }
}

describe('the whole hand-over', () => {
  it('is one .zip of the job, every file of every format, and the statement', async () => {
    const { handOver, bytesOf } = desk()
    const written: string[] = []
    await handOver.saveWhole((format) => written.push(format))
    expect(written).toEqual(FORMATS_HANDED_OVER)
    const files = unzipSync(await bytesOf('Orlop-reel-1-hand-over.zip'))
    const text = (name: string): string => strFromU8(files[name] ?? new Uint8Array())
    const job = readJob(text('Orlop.reelwright.json'))
    expect(job.ok && job.value).toEqual(sampleJob())
    const names = ['Orlop.reelwright.json', 'Orlop-reel-1-losses.txt']
    for (const format of FORMATS_HANDED_OVER) {
      const made = handOverFiles(sampleJob(), REEL_ID, format)
      if (!made.ok) throw new Error(made.problems[0].says)
      for (const file of made.value.files) {
        const name = isFileACue(format) ? `${format}/${file.name}` : file.name
        names.push(name)
        expect(text(name), name).toBe(file.text)
      }
    }
    expect(Object.keys(files).sort()).toEqual(names.sort())
    expect(text('Orlop-reel-1-losses.txt')).toMatch(/^Statement of losses: Orlop/u)
  })

  it('is the same bytes whenever and wherever it is made', async () => {
    const [one, two] = [desk(), desk()]
    await one.handOver.saveWhole(() => undefined)
    await two.handOver.saveWhole(() => undefined)
    const name = 'Orlop-reel-1-hand-over.zip'
    expect(await two.bytesOf(name)).toEqual(await one.bytesOf(name))
    // .zip files state local time: 1980-01-01 0:00 in whatever zone, as date word 0x0021, time 0.
    const [low = 0, high = 0] = (await one.bytesOf(name)).subarray(10, 12)
    expect([low, high]).toEqual([0, 0])
  })

  it('opens in another program', async () => {
    const { handOver, bytesOf } = desk()
    await handOver.saveWhole(() => undefined)
    const folder = mkdtempSync(join(tmpdir(), 'hand-over-'))
    const path = join(folder, 'all.zip')
    writeFileSync(path, await bytesOf('Orlop-reel-1-hand-over.zip'))
    const script =
      'import sys,zipfile; z=zipfile.ZipFile(sys.argv[1]); print(z.testzip(), len(z.namelist()))'
    const told = execFileSync('python3', ['-c', script, path], { encoding: 'utf8' })
    expect(told).toMatch(/^None \d+/u)
  })
})

it('each format is told as it is ready, with its files and what it loses', async () => {
  const { handOver } = desk(sampleJob(undefined, (cue) => ({ ...cue, ramp: 5 })))
  const parts: PreparedFormat[] = []
  await handOver.prepare((part) => parts.push(part), new AbortController().signal)
  expect(parts.map(({ format }) => format)).toEqual(FORMATS_HANDED_OVER)
  const edl = parts.find(({ format }) => format === 'edl')
  expect(edl?.names).toEqual(['Orlop-reel-1.edl'])
  const ramps = edl?.losses.find(({ subject }) => subject === 'Ramps')
  expect(ramps?.cues).toEqual([1, 2, 3, 4])
})

it('preparing that is no longer wanted ends without a word', async () => {
  const { handOver, store } = desk()
  const stop = new AbortController()
  const parts: PreparedFormat[] = []
  await handOver.prepare((part) => {
    parts.push(part)
    stop.abort()
  }, stop.signal)
  expect(parts).toHaveLength(1)
  expect(store.getState().notice).toBeUndefined()
})

it('one file, a format of a file a cue, and the statement are saved by themselves', async () => {
  const { handOver, saved, store } = desk()
  await handOver.saveFile('edl', 'Orlop-reel-1.edl')
  const made = handOverFiles(sampleJob(), REEL_ID, 'edl')
  expect(await saved.get('Orlop-reel-1.edl')?.text()).toBe(made.ok && made.value.files[0]?.text)
  await handOver.saveStatement()
  expect(await saved.get('Orlop-reel-1-losses.txt')?.text()).toContain('Edit decision list')
  await handOver.saveFormat('ccc')
  expect(saved.get('Orlop-reel-1-ccc.zip')?.type).toBe('application/zip')
  expect(store.getState().notice?.says).toBe('Saved Orlop-reel-1-ccc.zip.')
})
