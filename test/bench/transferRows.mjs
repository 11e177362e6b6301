import { execFile, execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { promisify } from 'node:util'
import { buildForNode } from './buildForNode.mjs'
import { RGB_GRADE } from './kernelRows.mjs'

const MEMORY = existsSync('/dev/shm') ? '/dev/shm' : tmpdir()
/** Long enough that what a part costs to begin is what it is on a reel, not most of the part. */
const FRAMES = 900
const CLIP_FRAMES = 300
const ROUNDS = 2

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
      '-stream_loop',
      `${FRAMES / CLIP_FRAMES - 1}`,
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
    const place = join(here, 'out')
    const out = join(place, 'film')
    const ours = (...args) => run(process.execPath, [main, ...args])
    const part = (out, number, of) =>
      ours('transfer', job, '--out', out, '--part', `${number}/${of}`)
    const joinAll = (out, of) => {
      const name = `of-${String(of).padStart(4, '0')}`
      const parts = readdirSync(dirname(out)).filter((each) => each.endsWith(name))
      return ours('join', ...parts.map((each) => join(dirname(out), each)), '--out', out, '--move')
    }
    /** Two at a time, as two cores would take them. */
    const inParts = async (out, of) => {
      const left = Array.from({ length: of }, (_, i) => i + 1)
      const work = async () => {
        for (let next = left.shift(); next !== undefined; next = left.shift())
          await part(out, next, of)
      }
      await Promise.all([work(), work()])
    }
    const joined = async (out, of) => {
      await inParts(out, of)
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
    /** The files alone, with the checksum of each, on as many cores: what is left without pictures. */
    const filesAlone = async () => {
      const script = `import { createHash } from 'node:crypto'
import { writeFileSync } from 'node:fs'
const bytes = new Uint8Array(8 + 1920 * 1080 * 4)
for (let i = 0; i < ${FRAMES / 2}; i++) {
  bytes[0] = i
  createHash('sha256').update(bytes).digest()
  writeFileSync(process.argv[1] + i, bytes)
}`
      const half = (name) =>
        run(process.execPath, ['--input-type=module', '-e', script, join(place, name)])
      mkdirSync(place)
      const begun = performance.now()
      await Promise.all([half('a'), half('b')])
      const seconds = (performance.now() - begun) / 1000
      rmSync(place, { recursive: true, force: true })
      return seconds
    }
    const times = { decoding: [], files: [], theirs: [], written: [], two: [], eight: [] }
    for (let round = 0; round < ROUNDS; round++) {
      times.decoding.push(await decoded())
      times.files.push(await filesAlone())
      times.theirs.push(await timed(place, () => theirs(out)))
      times.written.push(await timed(place, () => inParts(out, 2)))
      times.two.push(await timed(place, () => joined(out, 2)))
      times.eight.push(await timed(place, () => joined(out, 8)))
    }
    const least = (all) => Math.min(...all)
    const [decoding, files, ffmpeg, written, two, eight] = [
      times.decoding,
      times.files,
      times.theirs,
      times.written,
      times.two,
      times.eight,
    ].map(least)
    const share = (seconds) => `${((100 * seconds) / written).toFixed(0)} %`
    const words = (seconds) => `${(FRAMES / seconds).toFixed(0)} frames/s`
    return [
      {
        row: 'sequence out: 1080p H.264 to DPX, graded, with the checksum of every file',
        reference: 'ffmpeg, the same chain of filters to DPX',
        result: `${(ffmpeg / written).toFixed(2)} × (${words(written)} against ${words(ffmpeg)}); both cores are bound: decoding alone takes ${share(decoding)}, files and checksums alone ${share(files)} of it, so that without any picture work it would be ${(ffmpeg / (decoding + files)).toFixed(2)} ×`,
        goal: 'at least 1.5 ×',
        isMet: ffmpeg / written >= 1.5,
      },
      {
        row: 'eight parts, two at a time',
        reference: 'two parts at once, the same frames, both joined',
        result: `${(eight / two).toFixed(2)} × (${eight.toFixed(1)} against ${two.toFixed(1)} s)`,
        goal: 'at most 1.15 ×',
        isMet: eight / two <= 1.15,
      },
    ]
  } finally {
    rmSync(here, { recursive: true, force: true })
  }
}
