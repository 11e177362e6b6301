import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { buildForNode } from './buildForNode.mjs'
import { ocioRow } from './ocioRow.mjs'

export const WIDTH = 1920
export const HEIGHT = 1080
export const FRAMES = 24
/** The least disturbed run counts, as of our own rounds. */
const RUNS = 3
const MEMORY = existsSync('/dev/shm') ? '/dev/shm' : undefined

/** The grade of the kernel's passes as ffmpeg has it, on R'G'B'. */
export const RGB_GRADE = [
  "lutrgb=r='clip(maxval*pow(1.10*(val/maxval)+0.02*(1-val/maxval),1/1.15),0,maxval)':" +
    "g='clip(maxval*pow(1.05*(val/maxval)+0.01*(1-val/maxval),1/1.10),0,maxval)':" +
    "b='clip(maxval*pow(1.02*(val/maxval)+0.03*(1-val/maxval),1/1.20),0,maxval)'",
  'colorchannelmixer=rr=1.157480:rg=-0.143040:rb=-0.014440:gr=-0.042520:gg=1.056960:' +
    'gb=-0.014440:br=-0.042520:bg=-0.143040:bb=1.185560',
].join(',')

/** From R'G'B' to Y'CbCr of BT.709 in narrow range. */
export const TO_NARROW = 'zscale=matrix=709:range=limited:matrixin=gbr:rangein=full'

/** The chain of the kernel's fused pass. */
const GRADE = `${RGB_GRADE},${TO_NARROW},format=yuv444p10le`

/** Milliseconds of processor time a frame that ffmpeg needs for a chain of filters, at best. */
export const ffmpegTime = (file, format, filters) => {
  const size = `${WIDTH}x${HEIGHT}`
  const run = (chain) => {
    const { stderr } = spawnSync(
      'ffmpeg',
      [
        ...['-v', 'info', '-nostats', '-benchmark', '-filter_threads', '1'],
        ...['-f', 'rawvideo', '-s', size, '-r', '25', '-pix_fmt', format, '-threads', '1'],
        ...['-i', file, '-vf', chain, '-f', 'null', '-'],
      ],
      { encoding: 'utf8' },
    )
    const [, user, system] = /bench: utime=([\d.]+)s stime=([\d.]+)s/u.exec(stderr) ?? []
    if (user === undefined) throw new Error(`ffmpeg did not run: ${stderr}`)
    return Number(user) + Number(system)
  }
  const least = (chain) => Math.min(...Array.from({ length: RUNS }, () => run(chain)))
  return ((least(filters) - least('null')) * 1000) / FRAMES
}

/** Frames of a clip, filtered, as a file of raw pictures. */
export const raw = (clip, format, filters, file) =>
  execFileSync('ffmpeg', [
    ...['-v', 'error', '-y', '-ss', '2', '-i', clip, '-frames:v', String(FRAMES)],
    ...['-vf', filters, '-pix_fmt', format, '-f', 'rawvideo', file],
  ])

const planesOf = (file) => {
  const bytes = readFileSync(file)
  const plane = WIDTH * HEIGHT * 2
  return Array.from({ length: FRAMES }, (_, i) => {
    const [g, b, r] = [0, 1, 2].map((p) => {
      const from = bytes.byteOffset + (3 * i + p) * plane
      return new Uint16Array(bytes.buffer.slice(from, from + plane))
    })
    return { width: WIDTH, height: HEIGHT, layout: 'rgb', depth: 10, samples: [r, g, b] }
  })
}

/** The rows of the kernel against ffmpeg, a copy in memory and itself: one thread each. */
export const kernelRows = async (root, folder, clip) => {
  const { kernelTimes } = await import(await buildForNode(root, folder, 'kernelBench'))
  const place = MEMORY ?? folder
  const rgb = join(place, 'reelwright-bench-rgb.raw')
  const yuv = join(place, 'reelwright-bench-yuv.raw')
  try {
    raw(clip, 'gbrp10le', 'null', rgb)
    raw(clip, 'yuv444p10le', 'null', yuv)
    const ours = await kernelTimes(root, planesOf(rgb))
    const theirs = {
      chain: ffmpegTime(rgb, 'gbrp10le', `${GRADE},signalstats`),
      waveform: ffmpegTime(yuv, 'yuv444p10le', 'waveform'),
      parade: ffmpegTime(rgb, 'gbrp10le', 'waveform=components=7:display=parade'),
      vectorscope: ffmpegTime(yuv, 'yuv444p10le', 'vectorscope'),
    }
    const faster = (row, own, other, goal, reference) => ({
      row,
      reference,
      result: `${(other / own).toFixed(1)} × (${own.toFixed(1)} against ${other.toFixed(1)} ms a frame)`,
      goal: `at least ${goal} ×`,
      isMet: other / own >= goal,
    })
    const reread = (ours.levels * 250) / ours.verdict
    return [
      faster(
        'grade, encode, count, histograms, 1080p 10 bit',
        ours.fused,
        theirs.chain,
        6,
        'ffmpeg with signalstats',
      ),
      ocioRow(root, clip, ours.fused),
      {
        row: 'the same against a copy of the frame in memory',
        reference: 'copying the frame',
        result: `${(ours.fused / ours.copy).toFixed(1)} ×; with the R 103 filter ${(ours.filtered / ours.copy).toFixed(1)} ×`,
        goal: 'at most 9 ×',
        isMet: ours.fused / ours.copy <= 9,
      },
      {
        row: 'the same of a framed picture: zoomed, panned',
        reference: 'of one that is not framed',
        result: `${(ours.framed / ours.fused).toFixed(2)} × (${ours.framed.toFixed(1)} against ${ours.fused.toFixed(1)} ms a frame); turned as well ${(ours.turned / ours.fused).toFixed(1)} ×`,
        goal: 'at most 2.5 ×',
        isMet: ours.framed / ours.fused <= 2.5,
      },
      faster(
        'luma waveform, a column a pixel',
        ours.waveform,
        theirs.waveform,
        4,
        'ffmpeg waveform',
      ),
      faster(
        'RGB parade, a column a pixel',
        ours.parade,
        theirs.parade,
        3,
        'ffmpeg waveform, parade',
      ),
      faster('vectorscope 4:4:4', ours.vectorscope, theirs.vectorscope, 2, 'ffmpeg vectorscope'),
      {
        row: `live verdict, ${ours.colours} ${ours.isExact ? 'colours' : 'boxes of colours'}`,
        reference: 'measuring 250 frames again',
        result: `median ${ours.verdict.toFixed(2)} ms, 95 % within ${ours.verdictOf95.toFixed(2)} ms, ${Math.round(reread)} × sooner`,
        goal: 'median 0.5 ms, 95 % within 2 ms, 1000 × sooner',
        isMet: ours.verdict <= 0.5 && ours.verdictOf95 <= 2 && reread >= 1000,
      },
      {
        row: 'counting colours adds to the filtered pass with histograms',
        reference: 'that pass',
        result: `+ ${(((ours.levelsAndColours - ours.levels) / ours.filtered) * 100).toFixed(0)} %`,
        goal: 'at most + 50 %',
        isMet: (ours.levelsAndColours - ours.levels) / ours.filtered <= 0.5,
      },
      {
        row: 'watching for flashes adds to a check',
        reference: 'measuring levels and counting colours, without reading',
        result: `+ ${(((ours.levelsAndFlashes - ours.levels) / ours.levelsAndColours) * 100).toFixed(0)} %; of levels alone + ${((ours.levelsAndFlashes / ours.levels - 1) * 100).toFixed(0)} %`,
        goal: 'at most + 15 %',
        isMet: (ours.levelsAndFlashes - ours.levels) / ours.levelsAndColours <= 0.15,
      },
    ]
  } finally {
    for (const file of [rgb, yuv]) rmSync(file, { force: true })
  }
}
