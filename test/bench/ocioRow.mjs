import { execFileSync, spawnSync } from 'node:child_process'
import { join } from 'node:path'

const WIDTH = 1920
const HEIGHT = 1080
/** The grade of `benchGrade.ts`: lift, gamma and gain of R′, G′, B′, and saturation. */
const CHANNELS = [
  [0.02, 1.15, 1.1],
  [0.01, 1.1, 1.05],
  [0.03, 1.2, 1.02],
]
const SATURATION = 1.2
/** OpenColorIO's default takes a faster power: far below one code, far above what went wrong. */
const SAME = 1e-3

const ROW = {
  row: 'grade, saturate, encode, R 103 count, extremes, histograms, 1080p 10 bit',
  reference: 'OpenColorIO, CDL and matrix on float32, one thread',
  goal: 'at least 4 ×',
}

const python = () =>
  ['python3', '/usr/bin/python3'].find(
    (command) => spawnSync(command, ['-c', 'import PyOpenColorIO']).status === 0,
  )

/** A frame of the clip as R′, G′, B′, R′, …: 0…1. */
const frameOf = (clip) => {
  const codes = execFileSync(
    'ffmpeg',
    [
      ...['-v', 'error', '-ss', '2', '-i', clip, '-frames:v', '1'],
      ...['-pix_fmt', 'rgb48le', '-f', 'rawvideo', '-'],
    ],
    { maxBuffer: WIDTH * HEIGHT * 6 },
  )
  return Float32Array.from(
    { length: WIDTH * HEIGHT * 3 },
    (_, i) => codes.readUInt16LE(2 * i) / 65_535,
  )
}

/** Y′, Cb, Cr of a graded colour: `gradeColour`, then BT.709-6 §3.2 and §3.3. */
const expected = (colour) => {
  const luma = ([r, g, b]) => 0.2126 * r + 0.7152 * g + 0.0722 * b
  const powered = CHANNELS.map(([lift, gamma, gain], i) => {
    const level = lift + (gain - lift) * colour[i]
    return level > 0 ? level ** (1 / gamma) : level
  })
  const y = luma(powered)
  const [r, , b] = powered.map((value) => y + SATURATION * (value - y))
  return [y, (b - y) / 1.8556, (r - y) / 1.5748]
}

/**
 * The fused pass (`kernelRows`: milliseconds of processor time a frame) against what OpenColorIO
 * needs for its share of it. `npm run test:reference` installs OpenColorIO where it can.
 */
export const ocioRow = (root, clip, fused) => {
  const command = python()
  if (command === undefined)
    return { ...ROW, result: 'not measured: no Python 3 with PyOpenColorIO here', isMet: false }
  const frame = frameOf(clip)
  const { status, stdout, stderr } = spawnSync(
    command,
    [join(root, 'test/bench/ocioBench.py'), String(WIDTH)],
    { input: new Uint8Array(frame.buffer), encoding: 'utf8' },
  )
  if (status !== 0) throw new Error(`OpenColorIO did not run: ${stderr}`)
  const { times, first } = JSON.parse(stdout)
  const wanted = expected([...frame.slice(0, 3)])
  if (wanted.some((value, i) => Math.abs(value - first[i]) > SAME))
    throw new Error(`OpenColorIO made ${first} of a colour that is to become ${wanted}`)
  const ways = Object.entries(times).map(([name, rounds]) => ({ name, time: Math.min(...rounds) }))
  const fastest = ways.reduce((a, b) => (b.time < a.time ? b : a))
  return {
    ...ROW,
    reference: `${ROW.reference}, ${fastest.name}, the fastest of ${ways.length} ways`,
    result: `${(fastest.time / fused).toFixed(1)} × (${fused.toFixed(1)} against ${fastest.time.toFixed(1)} ms a frame)`,
    isMet: fastest.time / fused >= 4,
  }
}
