import {
  chmodSync,
  copyFileSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { encode } from 'fast-png'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { sameGrade } from '../../src/core/colour/grade.ts'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import type { Cue, Job, Reel } from '../../src/core/job/job.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'
import { MAIN, ROOT, reelwright } from './reelwright.ts'

const SAMPLE = join(ROOT, 'samples/slack-water-at-skerrow.reelwright.json')
const INTERCHANGE = resolve(import.meta.dirname, '../media/interchange')

let folder = ''
let path = ''

beforeAll(() => {
  if (!existsSync(MAIN)) throw new Error('Build first: npm run build')
})
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-formats-'))
  path = join(folder, 'job.json')
  copyFileSync(SAMPLE, path)
  return () => rmSync(folder, { recursive: true })
})

const jobAt = (file: string): Job => {
  const job = readJob(readFileSync(file, 'utf8'))
  if (!job.ok) throw new Error(job.problems[0].says)
  return job.value
}
const cuesAt = (file: string): readonly Cue[] => {
  const job = jobAt(file)
  const reel = Object.values<Reel>(job.reels)[0]
  return reel ? cuesOfReel(job, reel.id) : []
}

/** The sample's reel with one cue that changes nothing: what an import has to fill. */
const bareJob = (): string => {
  const { reels } = jobAt(SAMPLE)
  const reel = Object.values<Reel>(reels)[0]
  if (!reel) throw new Error('The sample has no reel.')
  const bare = join(folder, 'bare.json')
  writeFileSync(bare, writeJob(sampleJob([0], (cue) => cue, reel)))
  return bare
}

describe('reelwright export and import', () => {
  it.each(['edl', 'otio', 'csv'])(
    'bring cues and grades back into a bare job by %s, to the frame',
    async (format) => {
      const list = join(folder, `list.${format}`)
      expect((await reelwright(['export', path, '--as', format, '--out', list])).status).toBe(0)
      const bare = bareJob()
      const { status, error } = await reelwright(['import', list, '--into', bare])
      expect(error).toBe('')
      expect(status).toBe(0)
      const before = cuesAt(path)
      const after = cuesAt(bare)
      expect(after.map(({ first }) => first)).toEqual(before.map(({ first }) => first))
      if (format === 'edl') return
      for (const [index, cue] of before.entries())
        expect(after[index] && sameGrade(after[index].grade, cue.grade)).toBe(true)
    },
  )

  it('brings places from one list and grades from another in one go', async () => {
    const [edl, ccc] = [join(folder, 'list.edl'), join(folder, 'list.ccc')]
    await reelwright(['export', path, '--as', 'edl', '--out', edl])
    await reelwright(['export', path, '--as', 'ccc', '--out', ccc])
    const bare = bareJob()
    expect((await reelwright(['import', edl, ccc, '--into', bare])).status).toBe(0)
    const before = cuesAt(path)
    expect(cuesAt(bare).map(({ first }) => first)).toEqual(before.map(({ first }) => first))
  })

  it('of its own lists changes nothing in the job they came from', async () => {
    const text = readFileSync(path, 'utf8')
    const job = writeJob(jobAt(path))
    for (const format of ['edl', 'otio', 'csv', 'ccc', 'cdl']) {
      const list = join(folder, `own.${format}`)
      await reelwright(['export', path, '--as', format, '--out', list])
      await reelwright(['import', list, '--into', path, '--take', 'places'])
      expect(cuesAt(path).map(({ first }) => first)).toEqual(
        cuesAt(SAMPLE).map(({ first }) => first),
      )
      writeFileSync(path, text)
    }
    expect(writeJob(jobAt(path))).toBe(job)
  })

  it('a dry run says what would be done and writes nothing', async () => {
    const list = join(folder, 'list.edl')
    await reelwright(['export', path, '--as', 'edl', '--out', list])
    const bare = bareJob()
    const text = readFileSync(bare, 'utf8')
    const { status, out } = await reelwright([
      'import',
      list,
      '--into',
      bare,
      '--dry-run',
      '--json',
    ])
    expect(status).toBe(0)
    const told = JSON.parse(out)
    expect(told.written).toBe(false)
    expect(told.files[0].rows).toHaveLength(cuesAt(path).length)
    expect(readFileSync(bare, 'utf8')).toBe(text)
  })

  it('refuses a broken list by its line and leaves the job as it was', async () => {
    const list = join(folder, 'broken.edl')
    writeFileSync(list, 'TITLE: X\n001  REEL V C 10:00:00:00 10:00:61:00 10:00:00:00 10:00:01:00\n')
    const text = readFileSync(path, 'utf8')
    const { status, error } = await reelwright(['import', list, '--into', path])
    expect(status).toBe(3)
    expect(error).toContain('line 2')
    expect(readFileSync(path, 'utf8')).toBe(text)
  })

  it.each([
    ['export', ['--as', 'csv', '--out']],
    ['export', ['--as', 'edl', '--out', 'list.edl', '--losses']],
  ])('never writes over the job it reads: %s %j', async (command, args) => {
    const text = readFileSync(path, 'utf8')
    const inFolder = args.map((arg) => (arg === 'list.edl' ? join(folder, arg) : arg))
    const { status, error } = await reelwright([command, path, ...inFolder, path])
    expect(status).toBe(2)
    expect(error).toContain('write to another file')
    expect(readFileSync(path, 'utf8')).toBe(text)
  })

  it('never writes over the list it reads, and leaves no part behind where it cannot write', async () => {
    const list = join(folder, 'list.edl')
    await reelwright(['export', path, '--as', 'edl', '--out', list])
    const over = await reelwright(['import', list, '--into', path, '--out', list])
    expect(over.status).toBe(2)
    const cannot = await reelwright(['import', list, '--into', path, '--out', folder])
    expect(cannot.status).toBe(3)
    expect(cannot.error).toContain('it is a folder')
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([])
    expect(existsSync(`${folder}.part`)).toBe(false)
  })

  it('follows a link to a job and keeps the file’s mode', async () => {
    const list = join(folder, 'list.edl')
    await reelwright(['export', path, '--as', 'edl', '--out', list])
    const [bare, link] = [bareJob(), join(folder, 'link.json')]
    chmodSync(bare, 0o600)
    symlinkSync(bare, link)
    expect((await reelwright(['import', list, '--into', link])).status).toBe(0)
    expect(lstatSync(link).isSymbolicLink()).toBe(true)
    expect(statSync(bare).mode & 0o777).toBe(0o600)
    expect(cuesAt(bare)).toHaveLength(cuesAt(path).length)
  })

  it('refuses a job that is not UTF-8 rather than change its letters', async () => {
    const list = join(folder, 'list.edl')
    await reelwright(['export', path, '--as', 'edl', '--out', list])
    const latin = Buffer.from(readFileSync(path, 'utf8').replace('Slack', 'Zoë'), 'latin1')
    writeFileSync(path, latin)
    const { status, error, out } = await reelwright(['import', list, '--into', path, '--json'])
    expect(status).toBe(3)
    expect(error).toContain('not UTF-8')
    expect(JSON.parse(out).problems[0].code).toBe('malformed')
    expect(readFileSync(path).equals(latin)).toBe(true)
  })

  it.each(['cc', 'clf'])('writes a file of each cue as %s into a folder', async (format) => {
    const out = join(folder, 'cues')
    expect((await reelwright(['export', path, '--as', format, '--out', out])).status).toBe(0)
    expect(readdirSync(out)).toHaveLength(cuesAt(path).length)
  })

  it('writes the statement of losses as text where it is asked for', async () => {
    const losses = join(folder, 'losses.txt')
    const edl = join(folder, 'list.edl')
    await reelwright(['export', path, '--as', 'edl', '--out', edl, '--losses', losses])
    const text = readFileSync(losses, 'utf8')
    expect(text).toContain('Statement of losses')
    expect(text).toMatch(/Framing: The framing of cue/u)
    expect(text).toContain('Done about it:')
  })

  it('takes a job down to an earlier version, and says what that loses', async () => {
    const out = join(folder, 'old.json')
    const asked = ['export', path, '--as', 'job', '--job-version', '2', '--out', out]
    const { status } = await reelwright(asked)
    expect(status).toBe(0)
    expect(JSON.parse(readFileSync(out, 'utf8')).version).toBe(2)
    expect(cuesAt(out).map(({ first }) => first)).toEqual(cuesAt(path).map(({ first }) => first))
    expect((await reelwright([...asked.with(5, '99')])).status).toBe(2)
  })

  it.each([
    [['import', 'x.edl']],
    [['import', '--into', 'x']],
    [['export', 'x', '--as', 'pdf', '--out', 'y']],
    [['validate']],
  ])('%j is wrong use', async (args) => {
    expect((await reelwright(args)).status).toBe(2)
  })

  it('puts a process list after the base, or its grade on a cue', async () => {
    const clf = join(INTERCHANGE, 'clf/cdl_missing_sat.clf')
    const { status, out } = await reelwright(['import', clf, '--into', path])
    expect(status).toBe(0)
    expect(out).toContain('base list')
    const reel = Object.values<Reel>(jobAt(path).reels)[0]
    expect(reel?.base.list?.steps.map(({ kind }) => kind)).toEqual(['cdl'])
  })
})

describe('reelwright import of another scan', () => {
  const picture = encode({
    width: 16,
    height: 16,
    depth: 8,
    channels: 3,
    data: new Uint8Array(3 * 256).fill(90),
  })

  /** A reel of numbered pictures of so many frames, in a folder of its own. */
  const scanOf = (name: string, frames: number): string => {
    const scan = join(folder, name)
    mkdirSync(scan)
    for (let n = 0; n < frames; n++) writeFileSync(join(scan, `scan_${1000 + n}.png`), picture)
    return join(scan, 'scan_1000.png')
  }

  it('lets cues follow the list by which the reel was cut anew', async () => {
    const job = join(folder, 'pictures.json')
    writeFileSync(job, writeJob(sampleJob([0, 6], (cue) => cue, sampleReel({ frames: 12 }))))
    const list = join(folder, 'recut.edl')
    const event = (number: string, times: string) => `${number}  ORLOP_RE V     C        ${times}`
    writeFileSync(
      list,
      [
        'TITLE: RECUT',
        event('001', '10:00:00:06 10:00:00:12 10:00:00:00 10:00:00:06'),
        event('002', '10:00:00:00 10:00:00:02 10:00:00:06 10:00:00:08'),
        '',
      ].join('\r\n'),
    )
    const { status, out, error } = await reelwright([
      ...['import', scanOf('fresh', 8), '--into', job, '--by', list],
    ])
    expect(error).toBe('')
    expect(status).toBe(0)
    expect(out).toContain('2 follow')
    expect(cuesAt(job).map(({ id, first }) => [id, first])).toEqual([
      ['cue-2', 0],
      ['cue-1', 6],
    ])
    expect(Object.values<Reel>(jobAt(job).reels)[0]?.frames).toBe(8)
  })

  it('asks for the scan as it was where it is not beside the job, and changes nothing', async () => {
    const job = join(folder, 'pictures.json')
    const text = writeJob(sampleJob([0, 6], (cue) => cue, sampleReel({ frames: 12 })))
    writeFileSync(job, text)
    const { status, error } = await reelwright(['import', scanOf('fresh', 8), '--into', job])
    expect(status).toBe(3)
    expect(error).toContain('--media')
    expect(readFileSync(job, 'utf8')).toBe(text)
  })
})

describe('reelwright validate', () => {
  const files = ['cdl', 'edl', 'otio', 'clf'].flatMap((kind) =>
    readdirSync(join(INTERCHANGE, kind)).map((name) => [kind, name] as const),
  )

  /** Refused: two are illegal; these hold operators that no job carries (Log, Exponent). */
  const REFUSED = ['illegal-cdl_bad_sat.clf', 'illegal-cdl_bad_slope.clf', 'multiple_ops.clf']

  it.each(files)('tells what a %s file is: %s', async (kind, name) => {
    const { status, out, error } = await reelwright([
      'validate',
      join(INTERCHANGE, kind, name),
      '--json',
    ])
    const told = JSON.parse(out)
    if (REFUSED.includes(name)) {
      expect(status).toBe(3)
      expect(told.problems[0].at.line).toBeGreaterThan(0)
      expect(error).toMatch(/line \d+/u)
    } else {
      expect(error).toBe('')
      expect(status).toBe(0)
      expect(told).toMatchObject({ format: kind })
    }
  })

  it('tells of a job what each format would lose', async () => {
    const { status, out } = await reelwright(['validate', path])
    expect(status).toBe(0)
    expect(out).toMatch(/as edl would lose: .*framing/u)
  })

  it('refuses what it does not know: status 3', async () => {
    const other = join(folder, 'other.txt')
    writeFileSync(other, 'Dear colleague,\n')
    const { status, error } = await reelwright(['validate', other])
    expect(status).toBe(3)
    expect(error).toContain('nothing this program reads')
  })
})
