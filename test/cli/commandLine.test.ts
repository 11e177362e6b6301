import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { encode } from 'fast-png'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readCdl } from '../../src/core/formats/cdl/readCdl.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { readEventLines } from '../support/readEventLines.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'
import { MAIN, ROOT, reelwright } from './reelwright.ts'

/** A house profile that holds luma to less than any published one. */
const HOUSE = {
  id: 'house-night',
  name: 'Night room',
  source: 'A test',
  rgb: null,
  luma: [0, 1],
  composite: [-0.2, 1.2],
  area: 0,
  filtered: false,
}

const SAMPLE = join(ROOT, 'samples/slack-water-at-skerrow.reelwright.json')
const TRUTH = JSON.parse(readFileSync(join(ROOT, 'samples/truth.json'), 'utf8'))

/** Light of code 95 of 10-bit printing density before black is taken off it. */
const BLACK = 10 ** (-590 / 300)

let folder = ''

/** A job of two cues over the numbered pictures of `folder`. */
const pngJob = () => {
  const { media } = sampleReel()
  const reel = sampleReel({
    frames: 12,
    media: { ...media, width: 64, height: 48, depth: 16, layout: 'rgb', range: 'full' },
  })
  return sampleJob([0, 6], (cue) => cue, reel)
}

beforeAll(() => {
  if (!existsSync(MAIN)) throw new Error('Build first: npm run build')
  folder = mkdtempSync(join(tmpdir(), 'reelwright-cli-'))
  for (let n = 0; n < 12; n++) {
    const data = new Uint16Array(64 * 48 * 3)
    for (let i = 0; i < data.length; i++) {
      const column = Math.floor(i / 3) % 64
      const row = Math.floor(i / 3 / 64)
      const isLit = n < 6 ? (column >> 3) % 2 === 0 : (row >> 2) % 2 === 0
      data[i] = isLit ? 50_000 : 9000 + 100 * n
    }
    const png = encode({ width: 64, height: 48, data, depth: 16, channels: 3 })
    writeFileSync(join(folder, `scan_${String(n).padStart(4, '0')}.png`), png)
  }
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('reelwright grade', () => {
  it('takes one colour through a correction (facts asc-cdl.md §2, set 1)', async () => {
    const args = ['grade', '--slope', '1.35,1.1,0.071', '--offset', '0.05,-0.23,0.11']
    const rest = ['--power', '0.93,0.81,1.27', '--saturation', '1.23', '--json']
    const colour = ['-0.2', '0.5', '1.4']
    const clamped = await reelwright([...args, ...rest, '--style', 'clamp', ...colour])
    expect(clamped.status).toBe(0)
    const out: number[] = JSON.parse(clamped.out).out
    for (const [i, value] of [0, 0.421096, 0.101225].entries()) expect(out[i]).toBeCloseTo(value, 5)
    const free = await reelwright([...args, ...rest, '--style', 'noclamp', '1.25', '1.5', '1.75'])
    expect(JSON.parse(free.out).out[2]).toBeCloseTo(-0.108181, 5)
  })

  it('prints three numbers without --json', async () => {
    const { out } = await reelwright([
      'grade',
      '--slope',
      '2,2,2',
      '--offset',
      '-.5,-.5,-.5',
      '.9',
      '.1',
      '.4',
    ])
    expect(out).toBe('1.3 -0.3 0.3\n')
  })

  it.each([
    [['grade', '1', '2'], 'three numbers'],
    [['grade', '--power', '0,1,1', '1', '1', '1'], 'power'],
    [['grade', '--slope', '1,2', '1', '1', '1'], 'three numbers'],
    [['grade', '--colour', 'red', '1', '1', '1'], '--colour'],
    [['fly'], 'no command'],
    [['cues', '--fast', 'x'], 'There is no option --fast here.'],
    [['check', 'x', '--tolerance'], 'Give --tolerance as the usage has it.'],
    [['cues'], 'Give one reel'],
    [['export', SAMPLE, '--as', 'pdf', '--out', 'x'], '--as ccc'],
    [['check', SAMPLE, '--tolerance', 'strict'], 'no tolerance'],
  ])('%j is wrong use: status 2 and a sentence on standard error', async (args, words) => {
    const { status, out, error } = await reelwright(args)
    expect(status).toBe(2)
    expect(out).toBe('')
    expect(error).toContain(words)
  })
})

describe('reelwright cues', () => {
  it('finds the sample reel’s cuts to the frame, and takes flash and whip pan for none', async () => {
    const reel = join(ROOT, 'samples/slack-water-at-skerrow.mp4')
    const { status, out } = await reelwright(['cues', reel, '--json'])
    expect(status).toBe(0)
    const found = JSON.parse(out)
    expect(found).toMatchObject({ file: reel, frames: TRUTH.frames, rate: [25, 1] })
    const changes = TRUTH.shots.map(
      ({ change }: { change: { kind: string; first: number } }) => change,
    )
    const cuts = changes.filter(({ kind }: { kind: string }) => kind === 'cut')
    expect(found.cuts.map(({ frame }: { frame: number }) => frame)).toEqual(
      cuts.map(({ first }: { first: number }) => first),
    )
    for (const { kind, first, last } of changes) {
      if (kind === 'cut') continue
      const match = found.gradual.some(
        (gradual: { first: number; last: number }) =>
          gradual.first <= last && gradual.last >= first,
      )
      expect(match, `${kind} at ${first}`).toBe(true)
    }
  })

  it('reads a folder of numbered pictures without ffmpeg', async () => {
    const { status, out, error } = await reelwright(['cues', folder, '--json'], { PATH: '' })
    expect(status).toBe(0)
    expect(JSON.parse(out)).toMatchObject({ frames: 12, cuts: [{ frame: 6 }] })
    expect(error).toContain('states no rate')
  })

  it('says what is missing where there is no ffmpeg: status 3', async () => {
    const reel = join(ROOT, 'samples/slack-water-at-skerrow.mp4')
    const { status, out, error } = await reelwright(['cues', reel, '--json'], { PATH: '' })
    expect(status).toBe(3)
    expect(JSON.parse(out).problems[0].says).toContain('needs ffmpeg')
    expect(error).toContain('needs ffmpeg')
  })

  it.each(['no-such-file.mp4', join(ROOT, 'README.md')])(
    'cannot read %s: status 3',
    async (path) => {
      const { status, error } = await reelwright(['cues', path])
      expect(status).toBe(3)
      expect(error.trim()).toMatch(/\S/u)
    },
  )
})

describe('reelwright check', () => {
  it('measures the sample job: some cues outside, by name and number, status 1', async () => {
    const { status, out } = await reelwright(['check', SAMPLE, '--json'])
    expect(status).toBe(1)
    const report = JSON.parse(out)
    expect(report).toMatchObject({ tolerance: 'ebu-r103-v3', filtered: true, inside: false })
    expect(report.profile).toMatchObject({ id: 'ebu-r103-v3', area: 0.01, composite: null })
    expect(report.cues[0]).not.toHaveProperty('composite')
    expect(report.cues).toHaveLength(18)
    const outside = report.cues.filter(({ inside }: { inside: boolean }) => !inside)
    const numbers = outside.map(({ cue }: { cue: number }) => cue)
    expect(numbers).toContain(3)
    expect(numbers).toContain(8)
    expect(numbers).not.toContain(1)
  })

  it('measures pictures as they are: inside, status 0', async () => {
    const { status, out } = await reelwright(['check', folder, '--tolerance', 'EBU R103 v3'])
    expect(status).toBe(0)
    expect(out).toContain('EBU R 103 v3, levels and area after the filter: inside')
    expect(out).toMatch(/^cue 1 .* % {2}after the filter {2}worst frame \d+$/mu)
  })

  it('says luma plus chroma for a composite tolerance, and that it is unfiltered', async () => {
    const { status, out } = await reelwright(['check', folder, '--tolerance', 'composite 625'])
    expect(status).toBe(0)
    expect(out).toMatch(/luma plus chroma [\d.]+…[\d.]+ % {2}unfiltered/u)
    expect(out).toContain('Composite 625, levels and area unfiltered: inside')
  })

  it('measures a job by its house profile, which can be named like a published one', async () => {
    const path = join(folder, 'house.json')
    const job = JSON.parse(writeJob(pngJob()))
    const house = { ...HOUSE, luma: [0, 0.5] }
    const info = { ...job.info, profiles: [house], tolerance: house.id }
    writeFileSync(path, JSON.stringify({ ...job, info }))
    const own = await reelwright(['check', path, '--media', folder, '--json'])
    expect(own.status).toBe(1)
    expect(JSON.parse(own.out)).toMatchObject({ tolerance: house.id, profile: house })
    const other = ['check', path, '--media', folder, '--tolerance']
    expect((await reelwright([...other, 'EBU R103 v3'])).status).toBe(0)
    const named = await reelwright([...other, 'NIGHT ROOM'])
    expect(named.status).toBe(1)
    expect(named.out).toContain('Night room, levels and area unfiltered: 2 of 2 cues outside')
    const wrong = await reelwright([...other, 'day room'])
    expect(wrong.status).toBe(2)
    expect(wrong.error).toContain('Night room')
  })
})

describe('reelwright check --scan', () => {
  it('reads pictures as printing density: black and white are codes 95 and 685', async () => {
    const rest = ['--scan', 'printing-density', '--tolerance', 'ebu-r103-v3', '--json']
    const { out } = await reelwright(['check', folder, ...rest])
    // The lit columns are 50,000 of 65,535: code 780.5, light 2.093, and so signal 1.433.
    const light = (10 ** ((1023 * (50_000 / 65_535) - 685) / 300) - BLACK) / (1 - BLACK)
    expect(JSON.parse(out).cues[0].r.high).toBeCloseTo(1.099 * light ** 0.45 - 0.099, 3)
  })

  it.each([
    [['--scan', 'slide'], 'print or printing-density'],
    [['--scan', 'negative'], 'clear film'],
  ])('%j is wrong use', async (args, words) => {
    const { status, error } = await reelwright(['check', folder, ...args])
    expect(status).toBe(2)
    expect(error).toContain(words)
  })

  it('is refused with a job, which says itself what its scan is', async () => {
    const { status, error } = await reelwright(['check', SAMPLE, '--scan', 'print'])
    expect(status).toBe(2)
    expect(error).toContain('leave out --scan')
  })
})

describe('reelwright export', () => {
  it('writes lists that read back, and says what they cannot carry', async () => {
    const ccc = join(folder, 'list.ccc')
    const edl = join(folder, 'list.edl')
    const first = await reelwright(['export', SAMPLE, '--as', 'ccc', '--out', ccc, '--json'])
    expect(first.status).toBe(0)
    expect(JSON.stringify(JSON.parse(first.out).losses)).toContain('framing')
    const read = readCdl(readFileSync(ccc, 'utf8'))
    expect(read.ok && read.value.corrections).toHaveLength(18)
    const second = await reelwright(['export', SAMPLE, '--as', 'edl', '--out', edl])
    expect(second.status).toBe(0)
    expect(readEventLines(readFileSync(edl, 'utf8'))).toHaveLength(18)
  })

  it.each(['cues', 'check', 'export', 'grade', 'serve'])('tells how to use %s', async (name) => {
    const { status, out } = await reelwright([name, '--help'])
    expect(status).toBe(0)
    expect(out).toContain(`Usage: reelwright ${name} `)
  })

  it.each([
    ['text that is no JSON', 'x'],
    ['an empty file', ''],
    ['a job of a broken form', '{"format":"reelwright-job","version":3}'],
  ])('does not take %s for a reel outside tolerance: status 3', async (_, text) => {
    const path = join(folder, 'broken.json')
    writeFileSync(path, text)
    expect((await reelwright(['check', path])).status).toBe(3)
  })

  it('cannot read what is no job: status 3', async () => {
    const path = join(folder, 'not.json')
    writeFileSync(path, '{"format":"something"}')
    const { status, error } = await reelwright([
      'export',
      path,
      '--as',
      'edl',
      '--out',
      join(folder, 'x'),
    ])
    expect(status).toBe(3)
    expect(error).toContain('not a Reelwright job')
  })
})

describe('reelwright serve', () => {
  it('prints usage for --help, and refuses a port that is none', async () => {
    expect((await reelwright(['--help'])).out).toContain('reelwright cues MEDIA')
    expect((await reelwright(['serve', '--port', 'x'])).status).toBe(2)
  })

  it('is found by npx from the project', () => {
    const out = execFileSync('npx', ['--no', 'reelwright', 'grade', '1', '1', '1'], { cwd: ROOT })
    expect(out.toString()).toBe('1 1 1\n')
  })
})
