import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { findStretches } from '../../src/core/conform/findStretches.ts'
import { PRINT_CELLS } from '../../src/core/conform/reelPrints.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { findShots } from '../../src/work/findShots.ts'
import type { Pace } from '../../src/work/pace.ts'
import { fingerprintReel } from '../../src/work/reconformScan.ts'

const VIDEO = resolve(import.meta.dirname, '../media/video')
const CLIP = `${VIDEO}/nasa-13013-multistream.mp4`
const TRAILER = `${VIDEO}/bbb-trailer-360p25.webm`

/** Frames of the trailer that a new cut is made of. */
const CUT = [
  [280, 330],
  [0, 140],
  [420, 470],
  [650, 749],
  [500, 600],
] as const

/** What another scanner and coder would do: cropped, of another size, other levels, noise. */
const RESCAN =
  'crop=iw*0.97:ih*0.97:8:6,scale=480:272,eq=contrast=0.85:brightness=0.04:gamma=1.2,noise=alls=12:allf=t'

const writeRecut = (path: string): void => {
  const parts = CUT.map(
    ([from, to], k) => `[0:v]trim=start_frame=${from}:end_frame=${to},setpts=PTS-STARTPTS[p${k}]`,
  )
  const joined = CUT.map((_, k) => `[p${k}]`).join('')
  const filter = `${parts.join(';')};${joined}concat=n=${CUT.length}:v=1:a=0,${RESCAN}[out]`
  const coding = ['-r', '25', '-c:v', 'mpeg4', '-q:v', '9', path]
  const args = ['-v', 'error', '-i', TRAILER, '-filter_complex', filter, '-map', '[out]', ...coding]
  execFileSync('ffmpeg', args)
}

const opened = async (path = CLIP) => {
  const source = await openMediaNode(path)
  if (!source.ok) throw new Error(source.problems[0].says)
  return source.value
}

describe('fingerprints of a reel', () => {
  it('are of every frame, with the shots that the shot finder finds', async () => {
    const source = await opened()
    const paces: Pace[] = []
    const prints = await fingerprintReel(source, (pace) => paces.push(pace))
    const shots = await findShots(source, () => undefined)
    source.close()
    expect(prints.frames).toBe(shots.frames)
    expect(prints.boundaries).toEqual(shots.boundaries)
    expect(prints.cells.length).toBe(prints.frames * PRINT_CELLS)
    expect(prints.means.length).toBe(prints.frames)
    expect(paces.at(-1)?.done).toBe(prints.frames)
    expect(findStretches(prints, prints)).toMatchObject([{ from: 0, to: prints.frames, shift: 0 }])
  })

  it('stop when told to', async () => {
    const source = await opened()
    const stop = new AbortController()
    const reading = fingerprintReel(source, () => undefined, stop.signal)
    stop.abort()
    await expect(reading).rejects.toThrow()
    source.close()
  })

  it('find every part of a new cut that was scanned and coded otherwise, to the frame', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'recut-'))
    try {
      const path = join(folder, 'recut.mp4')
      writeRecut(path)
      const [old, fresh] = [await opened(TRAILER), await opened(path)]
      const [before, after] = [
        await fingerprintReel(old, () => undefined),
        await fingerprintReel(fresh, () => undefined),
      ]
      old.close()
      fresh.close()
      let at = 0
      const right = CUT.map(([from, to]) => {
        const begin = at
        at += to - from
        return [begin, at, from]
      })
      expect(
        findStretches(before, after).map(({ from, to, shift }) => [from, to, from - shift]),
      ).toEqual(right)
    } finally {
      rmSync(folder, { recursive: true })
    }
  }, 120_000)
})
