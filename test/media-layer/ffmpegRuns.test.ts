import { execFileSync, spawnSync } from 'node:child_process'
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join, resolve } from 'node:path'
import { afterAll, afterEach, expect, test } from 'vitest'
import { frame } from '../../src/core/time/frame.ts'
import type { FrameSource } from '../../src/media/frameSource.ts'
import { MediaError } from '../../src/media/mediaError.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { numberIn, seededFrames } from './support/numberedClips.ts'
import { orThrow } from './support/orThrow.ts'

const CLIPS = resolve(import.meta.dirname, '../media/numbered')
const LONG = resolve(import.meta.dirname, '../media/video/bbb-opening-480p24.mp4')
const PATH = process.env.PATH ?? ''
const temporary = mkdtempSync(join(tmpdir(), 'runs-'))

afterEach(() => {
  process.env.PATH = PATH
})
afterAll(() => rmSync(temporary, { recursive: true }))

const open = async (path = join(CLIPS, 'h264-bframes-24.mp4')): Promise<FrameSource> =>
  orThrow(await openMediaNode(path))

/** Programs this process has started that still run. */
const children = (): number => {
  const { stdout } = spawnSync('pgrep', ['-P', String(process.pid), '-x', 'ffmpeg'])
  return stdout.toString().split('\n').filter(Boolean).length
}

test('no ffmpeg is left behind by a range that is left early, aborted, or closed', async () => {
  const source = await open(LONG)
  for await (const step of source.readRange(frame(0), frame(700))) if (step.frame === 3) break
  await expect.poll(children).toBe(0)
  const stop = new AbortController()
  const range = source.readRange(frame(600), frame(700), stop.signal)
  const waiting = range.next()
  await expect.poll(children).toBe(1)
  stop.abort()
  expect((await waiting).done).toBe(true)
  await expect.poll(children).toBe(0)
  const reading = source.read(frame(700)).catch((error: unknown) => error)
  await expect.poll(children).toBe(1)
  source.close()
  expect(await reading).toBeInstanceOf(MediaError)
  await expect.poll(children).toBe(0)
  await expect(source.read(frame(0))).rejects.toBeInstanceOf(MediaError)
  expect(source.facts.frames).toBe(720)
})

test('ranges that follow each other go on with one run of ffmpeg', async () => {
  const source = await open()
  const read: number[] = []
  for (const [from, to] of [
    [0, 10],
    [10, 25],
    [30, 60],
  ] as const) {
    for await (const { planes } of source.readRange(frame(from), frame(to)))
      read.push(numberIn(planes))
    expect(children()).toBeLessThanOrEqual(1)
  }
  expect(read).toEqual(Array.from({ length: 60 }, (_, n) => n).filter((n) => n < 25 || n >= 30))
  source.close()
  await expect.poll(children).toBe(0)
})

test('ranges and single reads at once do not disturb each other', async () => {
  const source = await open()
  const collect = async (from: number): Promise<number[]> => {
    const read: number[] = []
    for await (const { planes } of source.readRange(frame(from), frame(60)))
      read.push(numberIn(planes))
    return read
  }
  const asked = seededFrames(12, 60, 3)
  const [whole, half, single] = await Promise.all([
    collect(0),
    collect(30),
    Promise.all(asked.map((n) => source.read(frame(n)))),
  ])
  source.close()
  expect(whole).toEqual(Array.from({ length: 60 }, (_, n) => n))
  expect(half).toEqual(Array.from({ length: 30 }, (_, n) => n + 30))
  expect(single.map(numberIn)).toEqual(asked)
})

test('a frame outside the reel is refused', async () => {
  const source = await open()
  await expect(source.read(frame(60))).rejects.toMatchObject({ problem: { code: 'not-found' } })
  for await (const step of source.readRange(frame(60), frame(70))) expect(step).toBeUndefined()
  source.close()
})

test('without ffmpeg the refusal says what to do, and pictures are read all the same', async () => {
  process.env.PATH = temporary
  const opened = await openMediaNode(join(CLIPS, 'h264-bframes-24.mp4'))
  expect(opened).toMatchObject({
    ok: false,
    problems: [{ says: expect.stringMatching(/needs ffmpeg.*PATH\. Install it/u) }],
  })
  expect((await openMediaNode(join(CLIPS, 'png8'))).ok).toBe(true)
})

/** Puts a program in front of ffmpeg on the PATH. */
const standIn = (script: string): void => {
  const path = join(temporary, 'ffmpeg')
  writeFileSync(path, `#!/bin/sh\n${script}\n`)
  chmodSync(path, 0o755)
  process.env.PATH = `${temporary}${delimiter}${PATH}`
}
const REAL = execFileSync('sh', ['-c', 'command -v ffmpeg']).toString().trim()

test('an ffmpeg from before 5.1, which has no -fps_mode, is asked in its own words', async () => {
  standIn(
    `case " $* " in *" -fps_mode "*) echo "Unrecognized option 'fps_mode'." >&2; exit 1;; esac; exec ${REAL} "$@"`,
  )
  const source = await open()
  const read: number[] = []
  for await (const { planes } of source.readRange(frame(0), frame(60))) read.push(numberIn(planes))
  source.close()
  expect(read).toEqual(Array.from({ length: 60 }, (_, n) => n))
})

test('a decoder that fails half way gives the frames before it, then tells what it said', async () => {
  standIn(`${REAL} "$@" | head -c 40000; echo 'the picture is broken' >&2; exit 1`)
  const source = await open()
  const read: number[] = []
  const failure = (async () => {
    for await (const step of source.readRange(frame(0), frame(60))) read.push(step.frame)
  })()
  await expect(failure).rejects.toMatchObject({
    problem: { code: 'cannot-decode', says: expect.stringContaining('the picture is broken') },
  })
  expect(read).toEqual([0, 1])
  expect(source.facts.frames).toBe(60)
  source.close()
})

test('where fewer pictures decode than were promised, the count is put right at the end', async () => {
  standIn(
    `last=; for each; do [ -n "$last" ] && set -- "$@" "$last"; last=$each; shift; done; exec ${REAL} "$@" -frames:v 41 "$last"`,
  )
  const source = await open()
  expect(source.facts.frames).toBe(60)
  let count = 0
  for await (const step of source.readRange(frame(0), frame(60))) expect(step.frame).toBe(count++)
  expect(count).toBe(41)
  expect(source.facts.frames).toBe(41)
  source.close()
})

test('a truncated transport stream gives what it holds', async () => {
  const path = join(temporary, 'short.mpegts')
  writeFileSync(path, readFileSync(join(CLIPS, 'h264-25.mpegts')).subarray(0, 188 * 60))
  const source = await open(path)
  let count = 0
  for await (const step of source.readRange(frame(0), frame(source.facts.frames)))
    expect(step.frame).toBe(count++)
  expect(count).toBe(source.facts.frames)
  expect(count).toBeGreaterThan(10)
  source.close()
})
