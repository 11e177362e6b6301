import type { Job } from '../../src/core/job/job.ts'
import type { Planes } from '../../src/core/picture/planes.ts'
import { formatTimecode } from '../../src/core/time/timecode.ts'
import { formOf } from '../../src/core/transfer/formOf.ts'
import { frameFileName } from '../../src/core/transfer/frameFileName.ts'
import type { PassPlan } from '../../src/core/transfer/passPlan.ts'
import type { PassFinding } from '../../src/core/transfer/passRecord.ts'
import type { TransferSettings } from '../../src/core/transfer/transferSettings.ts'
import type { Kernel } from '../../src/kernel/kernel.ts'
import { encodeDelivered } from '../../src/media/encodeDelivered.ts'
import type { FrameSource } from '../../src/media/frameSource.ts'
import { checkWritten, type WrittenPass } from '../../src/work/checkWritten.ts'
import { deliverFrames } from '../../src/work/deliverFrames.ts'
import { headPicturesOf } from '../../src/work/headPictures.ts'
import { planesOf } from '../kernel/randomPictures.ts'
import { madeSource } from './madeSource.ts'
import { sampleJob, sampleReel } from './sampleJob.ts'
import { samplePlan } from './samplePlan.ts'

export const WIDTH = 128
export const HEIGHT = 72
export const FRAMES = 24

/** Cues begin on these frames: at 8 the shot changes, at 16 only the grade does. */
export const FIRSTS = [0, 8, 16]

/** A slow pan over soft bars of colour, another picture from frame 8 on, with steady grain. */
const picture = (at: number): Planes => {
  const shot = at < 8 ? 0 : 1
  return planesOf('420', 8, WIDTH, HEIGHT, (plane, x, y) => {
    const step = plane === 0 ? 1 : 2
    const across = (x * step + 2 * at) / (shot === 0 ? 9 : 13)
    const down = (y * step) / (shot === 0 ? 15 : 7)
    const wave = Math.sin(across) * Math.cos(down + shot)
    const grain = plane === 0 ? (((x * 7 + y * 13 + at * 5) * 2654435761) % 7) - 3 : 0
    return plane === 0 ? 118 + 60 * wave + grain : 128 + 24 * Math.sin(across + plane)
  })
}

const job = (): Job => {
  const reel = sampleReel()
  const small = {
    ...reel,
    frames: FRAMES,
    media: { ...reel.media, width: WIDTH, height: HEIGHT },
  }
  return sampleJob(
    FIRSTS,
    (cue, index) => ({
      ...cue,
      ramp: index === 2 ? 3 : 0,
      grade: {
        ...cue.grade,
        gain: index === 2 ? [0.82, 0.86, 0.8] : cue.grade.gain,
        saturation: index === 1 ? 0.9 : 1,
      },
    }),
    small,
  )
}

export const reelPlan = (change: Partial<TransferSettings> = {}): PassPlan =>
  samplePlan({ onDamage: 'stop', ...change }, job())

export const reelScan = (plan: PassPlan, damaged?: ReadonlySet<number>): FrameSource => {
  const { reel } = plan
  const { displayAspect, bytes, container, codec, name } = reel.media
  const facts = {
    ...{ name, container, codec, width: WIDTH, height: HEIGHT, displayAspect, depth: 8, bytes },
    ...{ layout: '420' as const, frames: FRAMES, rate: reel.rate },
    ...{ matrix: 'bt709' as const, range: 'narrow' as const },
  }
  return madeSource(facts, picture, damaged)
}

/** All frames of a plan, laid out. */
export const delivered = async (plan: PassPlan, kernel: Kernel, scan = reelScan(plan)) => {
  const frames: Uint8Array<ArrayBuffer>[] = []
  const held: number[] = []
  const work = { plan, source: scan, kernel, form: formOf(plan), ...headPicturesOf(plan) }
  for await (const each of deliverFrames(work, { first: 0, end: plan.timeline.frames })) {
    frames.push(each.bytes)
    if (each.damage && each.reelFrame !== undefined) held.push(each.reelFrame)
  }
  return { frames, held }
}

/** The files of a sequence, by name. */
export const sequenceFiles = async (
  plan: PassPlan,
  frames: readonly Uint8Array<ArrayBuffer>[],
): Promise<ReadonlyMap<string, Uint8Array>> => {
  const { reel, coding, settings, timeline } = plan
  const { format } = settings
  if (format !== 'dpx' && format !== 'tiff' && format !== 'png') throw new Error('not a sequence')
  const files = new Map<string, Uint8Array>()
  for (const [at, bytes] of frames.entries()) {
    const name = frameFileName('orlop', at, format)
    const count = reel.startCount - timeline.headFrames + at
    const words = {
      ...{ name, signal: coding.matrix, rate: reel.rate, pixelAspect: coding.pixelAspect ?? 1 },
      timecode: formatTimecode(count, reel.rate, reel.isDropFrame),
    }
    files.set(name, await encodeDelivered(bytes, { width: WIDTH, height: HEIGHT }, words, format))
  }
  return files
}

export type Findings = Readonly<Record<string, PassFinding | undefined>>

/** What is found of a written pass, by the name of the check. */
export const findingsOf = async (
  pass: Pick<WrittenPass, 'plan' | 'written' | 'kernel'> & Partial<WrittenPass>,
): Promise<Findings> => {
  const { plan, written } = pass
  const findings = await checkWritten(
    {
      scan: reelScan(plan),
      ...headPicturesOf(plan),
      output: {
        name: 'orlop',
        files: plan.timeline.frames,
        frames: plan.timeline.frames,
        bytes: written.facts.bytes,
        sha256: 'a'.repeat(64),
      },
      tally: { limitedPixels: 0, limitedFrames: 0, clippedPixels: 0 },
      heldFrames: [],
      sound: { check: 'sound', standing: 'told', says: 'None.' },
      ...pass,
    },
    () => {},
  )
  return Object.fromEntries(findings.map((found) => [found.check, found]))
}

export const standings = (findings: Findings) =>
  Object.fromEntries(Object.entries(findings).map(([check, found]) => [check, found?.standing]))
