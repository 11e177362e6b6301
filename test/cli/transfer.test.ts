import { execFileSync, spawn } from 'node:child_process'
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import type { PassRecord } from '../../src/core/transfer/passRecord.ts'
import { orThrow } from '../media-layer/support/orThrow.ts'
import { bytesOf, putTransferJob } from '../support/transferJob.ts'
import { MAIN, reelwright } from './reelwright.ts'

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-transfer-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

let count = 0
/** A new folder with a job and its scan in it. */
const place = (
  ...wish: Parameters<typeof putTransferJob> extends [string, ...infer Rest] ? Rest : never
) => {
  const here = join(folder, String(count++))
  mkdirSync(here)
  return { here, ...putTransferJob(here, ...wish) }
}

const all = (path: string): Readonly<Record<string, string>> =>
  Object.fromEntries(readdirSync(path).map((name) => [name, bytesOf(join(path, name))]))

const partFolders = (here: string, name: string): readonly string[] =>
  readdirSync(here)
    .filter((each) => each.startsWith(`${name}.part-`) && !each.includes('unfinished'))
    .map((each) => join(here, each))

/** Runs the command until it has written something, then kills it as a lost machine would. */
const killedHalfWay = (args: readonly string[], watched: string, wanted: RegExp): Promise<void> =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, [MAIN, ...args], { stdio: 'ignore' })
    const look = setInterval(() => {
      const isBegun = readdirSync(watched, { recursive: true }).some((name) =>
        wanted.test(String(name)),
      )
      if (isBegun) child.kill('SIGKILL')
    }, 2)
    child.once('close', () => {
      clearInterval(look)
      resolve()
    })
  })

describe('a whole pass', () => {
  test('is a folder of pictures, read back, told, and kept in the job', async () => {
    const { here, path } = place({ head: { bars: 1, slate: 0, leader: 1 }, burnsTimecode: true })
    const out = join(here, 'film')
    const made = await reelwright(['transfer', path, '--out', out, '--json', '--record'])
    expect(made.error).not.toMatch(/cannot|wrong/iu)
    expect(made.status).toBe(0)
    const { pass } = JSON.parse(made.out) as { pass: PassRecord }
    expect(pass.output).toMatchObject({ name: 'film', files: 108, frames: 108 })
    expect(pass.findings.map(({ check, standing }) => [check, standing])).toEqual([
      ['frames', 'right'],
      ['cues', 'right'],
      ['tolerance', 'right'],
      ['limiting', 'told'],
      ['flashes', 'right'],
      ['tags', 'right'],
      ['duration', 'right'],
      ['sound', 'told'],
      ['checksum', 'right'],
    ])
    expect(readdirSync(out).length).toBe(109)
    execFileSync('sha256sum', ['-c', '--quiet', 'checksums.txt'], { cwd: out })
    expect(readdirSync(here).filter((name) => /unfinished|joining/u.test(name))).toEqual([])
    const kept = Object.values(orThrow(readJob(readFileSync(path, 'utf8'))).passes)
    expect(kept).toEqual([pass])
  })

  test('is never written over, and one begun is not begun again', async () => {
    const { here, path } = place()
    mkdirSync(join(here, 'film'))
    const taken = await reelwright(['transfer', path, '--out', join(here, 'film')])
    expect(taken.status).toBe(3)
    expect(taken.error).toContain('is already there')
    mkdirSync(join(here, 'other.unfinished'))
    const begun = await reelwright(['transfer', path, '--out', join(here, 'other')])
    expect(begun.status).toBe(3)
    expect(begun.error).toContain('--resume')
  })

  test('killed at any time leaves nothing by its name, and goes on to the same bytes', async () => {
    const { here, path } = place({ format: 'tiff' })
    const whole = join(here, 'whole')
    expect((await reelwright(['transfer', path, '--out', whole, '--workers', '1'])).status).toBe(0)
    const out = join(here, 'film')
    await killedHalfWay(['transfer', path, '--out', out], here, /film\.unfinished.*_\d{7}\.tif/u)
    expect(existsSync(out)).toBe(false)
    expect(existsSync(`${out}.unfinished`)).toBe(true)
    const resumed = await reelwright(['transfer', path, '--out', out, '--resume'])
    expect(resumed.status).toBe(0)
    expect(all(out)).toEqual(all(whole))
  })

  test('is refused while another works on the same output', async () => {
    const { here, path } = place()
    const out = join(here, 'film')
    mkdirSync(`${out}.unfinished`)
    const started = readFileSync('/proc/self/stat', 'utf8')
      .replace(/^.*\) /u, '')
      .split(' ')[19]
    const lock = { pid: process.pid, host: execFileSync('hostname').toString().trim(), started }
    writeFileSync(join(`${out}.unfinished`, 'lock.json'), JSON.stringify(lock))
    const second = await reelwright(['transfer', path, '--out', out, '--resume'])
    expect(second.status).toBe(3)
    expect(second.error).toContain(`process ${process.pid}`)
    // The same number, but begun at another time: a process that is no more.
    writeFileSync(join(`${out}.unfinished`, 'lock.json'), JSON.stringify({ ...lock, started: '1' }))
    expect((await reelwright(['transfer', path, '--out', out, '--resume'])).status).toBe(0)
  })

  test('of a job that has changed since does not go on from older parts', async () => {
    const { here, path } = place()
    const out = join(here, 'film')
    await reelwright(['transfer', path, '--out', out, '--part', '1/1'])
    mkdirSync(`${out}.unfinished`)
    const [part = ''] = partFolders(here, 'film')
    cpSync(part, join(`${out}.unfinished`, 'Orlop-reel-1.part-0001-of-0001'), { recursive: true })
    writeFileSync(path, readFileSync(path, 'utf8').replace('"saturation": 1', '"saturation": 0.5'))
    const changed = await reelwright(['transfer', path, '--out', out, '--resume'])
    expect(changed.status).toBe(3)
    expect(changed.error).toContain('parts of another pass')
  })
})

describe('before a pass', () => {
  test('what is wrong on the checklist stands in the way, until a reason is given', async () => {
    const { here, path } = place({}, { change: { lineUps: [] } })
    const out = join(here, 'film')
    const refused = await reelwright(['transfer', path, '--out', out])
    expect(refused.status).toBe(3)
    expect(refused.error).toContain('No line-up of the scanner is logged')
    const why = ['--override', 'The scanner was lined up for the reel before.']
    const made = await reelwright(['transfer', path, '--out', out, ...why, '--json'])
    expect(made.status).toBe(0)
    expect((JSON.parse(made.out) as { pass: PassRecord }).pass.overrides).toMatchObject([
      { check: 'line-up', reason: 'The scanner was lined up for the reel before.' },
    ])
  })

  test('another scan than the job was made on is refused by its bytes, or by its checksum', async () => {
    const { here, path, media } = place()
    truncateSync(media, 5000)
    const shorter = await reelwright(['transfer', path, '--out', join(here, 'film')])
    expect(shorter.error).toContain('5000 bytes')
    const marked = place({}, { change: {} })
    const text = readFileSync(marked.path, 'utf8')
    writeFileSync(marked.path, text.replace('"checksum": null', `"checksum": "${'0'.repeat(64)}"`))
    const other = await reelwright(['transfer', marked.path, '--out', join(marked.here, 'film')])
    expect(other.status).toBe(3)
    expect(other.error).toContain('its checksum is another')
  })

  test.each([
    [['--part', '9/8'], '--part is I/N'],
    [['--format', 'tape'], '--format is one of'],
    [['--workers', '0'], '--workers'],
    [['--format', 'h264'], 'ends in .mp4'],
  ])('%j is wrong use', async (options, says) => {
    const { here, path } = place()
    const outcome = await reelwright(['transfer', path, '--out', join(here, 'film'), ...options])
    expect(outcome.status).toBe(2)
    expect(outcome.error).toContain(says)
  })
})

describe('eight parts', () => {
  test('two killed half-way and made again, one made twice, joined: the same as one pass', async () => {
    const { here, path } = place({ head: { bars: 0, slate: 1, leader: 0 } })
    const whole = join(here, 'whole')
    expect((await reelwright(['transfer', path, '--out', whole])).status).toBe(0)
    const part = (n: number) => ['transfer', path, '--out', join(here, 'film'), '--part', `${n}/8`]
    for (const n of [3, 6]) {
      await killedHalfWay(part(n), here, new RegExp(`part-000${n}.*unfinished.*_\\d{7}\\.dpx`, 'u'))
      expect(partFolders(here, 'film')).toEqual([])
    }
    const early = await reelwright([
      'join',
      ...readdirSync(here)
        .filter((n) => n.includes('part'))
        .map((n) => join(here, n)),
      '--out',
      join(here, 'film'),
    ])
    expect(early.status).toBe(3)
    for (const n of [8, 2, 5, 5, 1, 7, 4]) expect((await reelwright(part(n))).status).toBe(0)
    const gaps = await reelwright([
      'join',
      ...partFolders(here, 'film'),
      '--out',
      join(here, 'film'),
    ])
    expect(gaps.status).toBe(3)
    expect(gaps.error).toContain('Parts 3, 6 of 8 are missing')
    for (const n of [3, 6]) expect((await reelwright(part(n))).status).toBe(0)
    const parts = partFolders(here, 'film')
    const twice = `${parts[4]}-again`
    cpSync(parts[4] ?? '', twice, { recursive: true })
    const order = [...parts.toReversed(), twice]
    const joined = await reelwright(['join', ...order, '--out', join(here, 'film'), '--json'])
    expect(JSON.parse(joined.out)).toMatchObject({ parts: 8, frames: 84, passedOver: [] })
    expect(all(join(here, 'film'))).toEqual(all(whole))
  })
})

describe('parts that are not right', () => {
  const made = async () => {
    const there = place()
    for (const n of [1, 2])
      await reelwright([
        'transfer',
        there.path,
        '--out',
        join(there.here, 'film'),
        '--part',
        `${n}/2`,
      ])
    return { ...there, parts: partFolders(there.here, 'film'), out: join(there.here, 'joined') }
  }

  test('a damaged file is found by its checksum, and its whole double taken instead', async () => {
    const { parts, out } = await made()
    const [first = '', second = ''] = parts
    cpSync(first, `${first}-double`, { recursive: true })
    const [name = ''] = readdirSync(first)
    const bytes = new Uint8Array(readFileSync(join(first, name)))
    bytes[bytes.length - 7] = (bytes[bytes.length - 7] ?? 0) ^ 4
    writeFileSync(join(first, name), bytes)
    const damaged = await reelwright(['join', first, second, '--out', out])
    expect(damaged.status).toBe(3)
    expect(damaged.error).toContain(`${name} is damaged`)
    const mended = await reelwright(['join', first, second, `${first}-double`, '--out', out])
    expect(mended.status).toBe(0)
    expect(mended.error).toContain('passed over')
  })

  test('a manifest that names files elsewhere, links or is cut short is refused', async () => {
    const { parts, out } = await made()
    const [first = '', second = ''] = parts
    const path = join(first, 'part.json')
    const text = readFileSync(path, 'utf8')
    const hostile = [
      text.replace(/"name": "[^"]+"/u, '"name": "../../job.reelwright.json"'),
      text.replace(/"name": "[^"]+"/u, '"name": "/etc/passwd"'),
      text.slice(0, text.length / 2),
      text.replace('"first": 0', '"first": 9'),
      '{"__proto__": {}}',
    ]
    for (const each of hostile) {
      writeFileSync(path, each)
      const outcome = await reelwright(['join', first, second, '--out', out])
      expect(outcome.status).toBe(3)
      expect(existsSync(out)).toBe(false)
    }
    writeFileSync(path, text)
    const [name = ''] = readdirSync(first)
    rmSync(join(first, name))
    symlinkSync('/etc/hostname', join(first, name))
    expect((await reelwright(['join', first, second, '--out', out])).error).toContain(name)
  })

  test('parts of another job do not join', async () => {
    const one = await made()
    const other = place({ limiting: 'hard' })
    await reelwright(['transfer', other.path, '--out', join(other.here, 'film'), '--part', '2/2'])
    const [second = ''] = partFolders(other.here, 'film')
    const outcome = await reelwright(['join', one.parts[0] ?? '', second, '--out', one.out])
    expect(outcome.status).toBe(3)
    expect(outcome.error).toContain('not of the same pass')
  })
})

describe('faults', () => {
  test('a frame that cannot be decoded stops the pass by name, or is held and told', async () => {
    const { here, path, media } = place()
    const bytes = new Uint8Array(readFileSync(media))
    for (let i = 0; i < 40; i++) bytes[4000 + i] = (bytes[4000 + i] ?? 0) ^ 0x5a
    writeFileSync(media, bytes)
    const stopped = await reelwright(['transfer', path, '--out', join(here, 'film')])
    expect(stopped.status).toBe(3)
    expect(stopped.error).toMatch(/Frame \d+ of h264-bframes-24\.mp4 cannot be decoded/u)
    expect(existsSync(join(here, 'film'))).toBe(false)
    writeFileSync(
      path,
      readFileSync(path, 'utf8').replace('"onDamage": "stop"', '"onDamage": "hold"'),
    )
    const held = await reelwright(['transfer', path, '--out', join(here, 'held'), '--json'])
    const { pass } = JSON.parse(held.out) as { pass: PassRecord }
    expect(pass.output.frames).toBe(60)
    expect(pass.heldFrames.length).toBeGreaterThan(0)
    expect(stopped.error).toContain(`Frame ${pass.heldFrames[0]} of`)
  })

  test('a folder that cannot be written to, and a disk that is full, are told', async () => {
    const { here, path } = place()
    const shut = join(here, 'shut')
    mkdirSync(shut)
    chmodSync(shut, 0o555)
    if (process.getuid?.() !== 0) {
      const outcome = await reelwright(['transfer', path, '--out', join(shut, 'film')])
      expect(outcome.status).toBe(3)
    }
    const missing = await reelwright(['transfer', path, '--out', join('/proc', 'film')])
    expect(missing.status).toBe(3)
    const small = join(here, 'small')
    mkdirSync(small)
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=400k', 'tmpfs', small], { stdio: 'ignore' })
    } catch {
      return
    }
    try {
      const full = await reelwright([
        ...['transfer', path, '--out', join(small, 'film'), '--part', '1/2'],
      ])
      expect(full.status).toBe(3)
      expect(full.error).toContain('the disk is full')
      expect(readdirSync(small)).toEqual([])
      const room = await reelwright(['transfer', path, '--out', join(small, 'film')])
      expect(room.error).toContain('there is room for')
    } finally {
      execFileSync('umount', [small])
    }
  })

  test('what is outside tolerance in the file is found after the pass', async () => {
    const { here, path } = place({ format: 'h264' })
    writeFileSync(path, readFileSync(path, 'utf8').replace(/"gain": \[\s*0\.9,/u, '"gain": [1.6,'))
    const out = join(here, 'film.mp4')
    const made = await reelwright(['transfer', path, '--out', out])
    expect(made.status).toBe(1)
    expect(made.out).toMatch(/tolerance: WRONG: .* frames of the file are outside EBU R 103 v3/u)
    const limited = join(here, 'limited.mp4')
    writeFileSync(
      path,
      readFileSync(path, 'utf8').replace('"limiting": "none"', '"limiting": "hard"'),
    )
    const inside = await reelwright(['transfer', path, '--out', limited])
    expect(inside.out).toMatch(
      /limiting: told: Limited hard to EBU R 103 v3, 1 % inside its limits: \d+ pixels changed/u,
    )
    expect(inside.status).toBe(0)
  })
})
