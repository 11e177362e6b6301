import { execFile, execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { promisify } from 'node:util'
import { buildForNode } from './buildForNode.mjs'
import { RGB_GRADE } from './kernelRows.mjs'

const MEMORY = existsSync('/dev/shm') ? '/dev/shm' : tmpdir()
const FRAMES = 200
const ROUNDS = 3

const run = promisify(execFile)

/** Wall time in seconds of some work whose output is then taken away. */
const timed = async (folder, work) => {
  mkdirSync(folder)
  const begun = performance.now()
  await work()
  const seconds = (performance.now() - begun) / 1000
  const files = readdirSync(folder, { recursive: true }).filter((name) => name.endsWith('.dpx'))
  rmSync(folder, { recursive: true, force: true })
  if (files.length < FRAMES)
    throw new Error(`Only ${files.length} of ${FRAMES} frames were written`)
  return seconds
}

/**
 * The rows of writing a sequence of DPX pictures from a 1080p clip in H.264, on the cores there
 * are: reading, grading, writing, and of ours the checksums of all files and the joining.
 */
export const transferRows = async (root, folder, clip) => {
  const { putBenchJob } = await import(await buildForNode(root, folder, 'transferBench'))
  const here = mkdtempSync(join(MEMORY, 'reelwright-bench-'))
  const scan = join(here, 'scan.mp4')
  const job = join(here, 'job.json')
  try {
    execFileSync('ffmpeg', [
      '-v',
      'error',
      '-i',
      clip,
      '-frames:v',
      `${FRAMES}`,
      '-c',
      'copy',
      scan,
    ])
    putBenchJob(job, scan, FRAMES)
    const main = join(root, 'dist/cli/main.js')
    const ours = (...args) => run(process.execPath, [main, ...args])
    const part = (out, number, of) =>
      ours('transfer', job, '--out', out, '--part', `${number}/${of}`)
    const joinAll = (out, of) => {
      const name = `of-${String(of).padStart(4, '0')}`
      const parts = readdirSync(dirname(out)).filter((each) => each.endsWith(name))
      return ours('join', ...parts.map((each) => join(dirname(out), each)), '--out', out)
    }
    /** Two at a time, as two cores would take them. */
    const inParts = async (out, of) => {
      const left = Array.from({ length: of }, (_, i) => i + 1)
      const work = async () => {
        for (let next = left.shift(); next !== undefined; next = left.shift())
          await part(out, next, of)
      }
      await Promise.all([work(), work()])
      await joinAll(out, of)
    }
    const toRgb = 'zscale=matrix=gbr:range=full:matrixin=709:rangein=limited,format=gbrp10le'
    const theirs = (out) =>
      run('ffmpeg', [
        ...['-v', 'error', '-i', scan, '-vf', `${toRgb},${RGB_GRADE},format=gbrp10be`],
        ...['-c:v', 'dpx', join(dirname(out), 'film_%07d.dpx')],
      ])
    /** What both wait for: the clip decoded, and nothing done with it. */
    const decoded = async () => {
      const begun = performance.now()
      await run('ffmpeg', ['-v', 'error', '-i', scan, '-f', 'null', '-'])
      return (performance.now() - begun) / 1000
    }
    const times = { decoding: [], theirs: [], two: [], eight: [] }
    const place = join(here, 'out')
    const out = join(place, 'film')
    for (let round = 0; round < ROUNDS; round++) {
      times.decoding.push(await decoded())
      times.theirs.push(await timed(place, () => theirs(out)))
      times.two.push(await timed(place, () => inParts(out, 2)))
      times.eight.push(await timed(place, () => inParts(out, 8)))
    }
    const least = (all) => Math.min(...all)
    const [decoding, ffmpeg, two, eight] = [
      times.decoding,
      times.theirs,
      times.two,
      times.eight,
    ].map(least)
    const words = (seconds) => `${(FRAMES / seconds).toFixed(0)} frames/s`
    return [
      {
        row: 'sequence out: 1080p H.264 to DPX, graded, with checksums, joined',
        reference: 'ffmpeg, the same chain of filters to DPX',
        result: `${(ffmpeg / two).toFixed(2)} × (${words(two)} against ${words(ffmpeg)}; decoding alone ${words(decoding)})`,
        goal: 'at least 1.5 ×',
        isMet: ffmpeg / two >= 1.5,
      },
      {
        row: 'eight parts, two at a time',
        reference: 'two parts at once, the same frames',
        result: `${(eight / two).toFixed(2)} × (${eight.toFixed(1)} against ${two.toFixed(1)} s)`,
        goal: 'at most 1.15 ×',
        isMet: eight / two <= 1.15,
      },
    ]
  } finally {
    rmSync(here, { recursive: true, force: true })
  }
}
