import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { hostname, tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { hasFiles, killedHalfWay } from './interrupted.ts'
import { reelwright } from './reelwright.ts'
import { dpxScan, frameSums, sumsOf, videoScan } from './transferScan.ts'

let folder = ''
let job = ''
let single: Readonly<Record<string, string>> = {}
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-two-'))
  job = dpxScan(folder, 60)
  await reelwright(['transfer', job, '--out', join(folder, 'single')])
  single = sumsOf(join(folder, 'single'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('passes at once on one output', () => {
  it('are one that is made and others that are refused, though a dead one left its lock', async () => {
    const out = join(folder, 'film')
    mkdirSync(`${out}.unfinished`)
    const dead = { pid: 2 ** 22 + 1, host: hostname(), started: '1' }
    writeFileSync(join(`${out}.unfinished`, 'lock.json'), JSON.stringify(dead))
    const all = await Promise.all(
      [1, 2, 3].map(() => reelwright(['transfer', job, '--out', out, '--resume'])),
    )
    const refused = all.filter(({ status }) => status === 3)
    expect(all.filter(({ status }) => status === 0)).toHaveLength(1)
    expect(refused).toHaveLength(2)
    for (const { error } of refused)
      expect(error).toMatch(
        /Another pass (works on this|has just begun or ended)|is already there/u,
      )
    expect(sumsOf(out)).toEqual(single)
    expect(readdirSync(folder).filter((name) => name.includes('unfinished'))).toEqual([])
  })
})

describe('a video pass', () => {
  it('killed at its second stretch goes on to the same frames, with sound', async () => {
    const place = join(folder, 'video')
    mkdirSync(place)
    const video = videoScan(place, 300, { format: 'h264', head: { bars: 0, slate: 1, leader: 0 } })
    const whole = join(place, 'whole.mp4')
    expect((await reelwright(['transfer', video, '--out', whole])).status).toBe(0)
    const out = join(place, 'film.mp4')
    const inParts = () => hasFiles(`${out}.unfinished`, '.nut', 1)
    await killedHalfWay(['transfer', video, '--out', out, '--workers', '1'], inParts, out)
    expect(existsSync(out)).toBe(false)
    const resumed = await reelwright(['transfer', video, '--out', out, '--resume', '--json'])
    expect(resumed.status).toBe(0)
    expect(frameSums(out)).toBe(frameSums(whole))
    expect(JSON.parse(resumed.out).pass.findings).toContainEqual(
      expect.objectContaining({ check: 'sound', standing: 'right' }),
    )
  })

  it('is not begun where the ffmpeg there is has no encoder for it, told by name', async () => {
    const bin = join(folder, 'bin')
    mkdirSync(bin)
    const place = join(folder, 'none')
    mkdirSync(place)
    const video = videoScan(place, 20)
    // An ffmpeg that reads, but was built without encoders.
    const real = (process.env.PATH ?? '').split(':').map((each) => join(each, 'ffmpeg'))
    const ffmpeg = real.find((path) => existsSync(path)) ?? 'ffmpeg'
    const script = `#!/bin/sh\ncase "$*" in *-encoders*) exit 0;; esac\nexec ${ffmpeg} "$@"\n`
    writeFileSync(join(bin, 'ffmpeg'), script, { mode: 0o755 })
    const args = ['transfer', video, '--format', 'av1', '--out', join(place, 'film.webm')]
    const { status, error } = await reelwright(args, { PATH: `${bin}:${process.env.PATH}` })
    expect(status).toBe(3)
    expect(error).toContain('has no encoder libsvtav1 or libaom-av1')
  })
})
