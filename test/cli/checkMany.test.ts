import { execFile } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { MAIN, reelwright } from './reelwright.ts'
import { dpxScan } from './transferScan.ts'

const JOBS = 300

let folder = ''
/** Three hundred jobs on one small scan: number 17 is outside tolerance, number 40 no job at all. */
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-library-'))
  const job = dpxScan(folder, 2)
  const text = readFileSync(job, 'utf8')
  const loud = text.replaceAll(/"gain": \[[^\]]*\]/gu, '"gain": [2, 2, 2]')
  for (let n = 1; n <= JOBS; n++)
    writeFileSync(join(folder, `reel-${n}.json`), n === 17 ? loud : n === 40 ? '{' : text)
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const paths = () => Array.from({ length: JOBS }, (_, i) => join(folder, `reel-${i + 1}.json`))

type Answer = { readonly file: string; readonly inside?: boolean; readonly problems?: unknown[] }

const answersIn = (out: string): readonly Answer[] =>
  out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))

describe('reelwright check over many jobs', () => {
  it('tells of each in a line of JSON; one that fails stops no other', async () => {
    const list = join(folder, 'list.txt')
    writeFileSync(list, `${paths().join('\n')}\n`)
    const { status, out, error } = await reelwright(['check', '--files-from', list, '--json'])
    expect(status).toBe(3)
    const answers = answersIn(out)
    expect(answers.map(({ file }) => file)).toEqual(paths())
    expect(answers.filter(({ inside }) => inside)).toHaveLength(JOBS - 2)
    expect(answers[16]).toMatchObject({ inside: false, reel: 'Orlop reel 1' })
    expect(answers[39]?.problems).toHaveLength(1)
    expect(error).toMatch(/300 checked: 298 inside, 1 outside, 1 could not be measured/u)
  })

  it('needs no more memory for three hundred than for ten, and reads names from a pipe', async () => {
    const peakOf = (count: number): Promise<number> =>
      new Promise((done) => {
        // Standard error ends with the most memory that was held, in kB.
        const watch = `process.on('exit', () => process.stderr.write('peak ' + process.resourceUsage().maxRSS))`
        const watcher = join(folder, 'watch.cjs')
        writeFileSync(watcher, watch)
        const args = ['--require', watcher, MAIN, 'check', '--files-from', '-', '--json']
        const child = execFile(process.execPath, args, (_, out, error) => {
          expect(answersIn(out)).toHaveLength(count)
          done(Number(/peak (\d+)/u.exec(error)?.[1]))
        })
        child.stdin?.end(paths().slice(0, count).join('\n'))
      })
    const few = await peakOf(10)
    const many = await peakOf(JOBS)
    expect(few).toBeGreaterThan(1000)
    // What is held at the peak goes by when garbage is taken away, by half as much again and more.
    expect(many).toBeLessThan(2.5 * few)
  })

  it('is a line a job in words; the worst of them is the exit status', async () => {
    const [first = '', second = ''] = paths()
    const fine = await reelwright(['check', first, second])
    expect([fine.status, fine.out.trim().split('\n')]).toEqual([
      0,
      [first, second].map((path) => `inside  ${path}  Orlop reel 1  EBU R 103 v3: inside`),
    ])
    const outside = await reelwright(['check', first, join(folder, 'reel-17.json')])
    expect(outside.status).toBe(1)
    expect(outside.out).toContain(`OUTSIDE  ${join(folder, 'reel-17.json')}`)
    const moved = join(folder, 'elsewhere')
    mkdirSync(moved)
    copyFileSync(first, join(moved, 'job.json'))
    const gone = await reelwright(['check', join(moved, 'job.json'), first])
    expect(gone.status).toBe(3)
    expect(gone.out).toMatch(/^FAILED .*\ninside /u)
  })

  it('is told where a list is not there, and that --media is of one', async () => {
    const none = await reelwright(['check', '--files-from', join(folder, 'none.txt')])
    expect(none.status).toBe(3)
    expect(none.error).toContain('none.txt cannot be read')
    expect((await reelwright(['check', 'a.json', 'b.json', '--media', 'c'])).status).toBe(2)
  })
})
