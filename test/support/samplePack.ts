import { cueLook, lookSum } from '../../src/core/agreement/cueLook.ts'
import type { PackContents, PackCue } from '../../src/core/agreement/pack/packContents.ts'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import { toleranceOf } from '../../src/core/tolerance/findProfile.ts'
import { PACK_ID } from './sampleAnswerFile.ts'
import { REEL_ID, sampleJob } from './sampleJob.ts'

const WARM = { ...IDENTITY_GRADE, gain: [1.05, 1, 0.95] as const }

/** A plain picture of one grey, as SVG. */
export const greyPicture = (level: number): string =>
  `data:image/svg+xml,${encodeURIComponent(`<svg xmlns="http://www.w3.org/2000/svg" width="960" height="720"><rect width="960" height="720" fill="rgb(${level},${level},${level})"/></svg>`)}`

/** The job the sample pack is of: two cues of a scene, and two of none, one with an alternate. */
export const packJob = () =>
  sampleJob(undefined, (cue, i) => ({
    ...cue,
    scene: i < 2 ? '12' : '',
    alternates: i === 2 ? [{ name: 'warm', grade: WARM }] : [],
  }))

export const samplePack = (
  change: Partial<PackContents> = {},
  editCue: (cue: PackCue, index: number) => PackCue = (cue) => cue,
): PackContents => {
  const job = packJob()
  const reel = job.reels[REEL_ID]
  if (!reel) throw new Error('no reel')
  const cues = cuesOfReel(job, REEL_ID)
  const ground = { reel, cues, profile: toleranceOf(job.info.job) }
  return {
    format: 'reelwright-pack',
    version: 1,
    id: PACK_ID,
    madeAt: '2026-11-27T09:00:00.000Z',
    madeFor: 'Ines',
    title: 'Orlop',
    reel: { id: REEL_ID, name: 'Orlop 1' },
    key: null,
    ...change,
    cues: cues.map((cue, index) => {
      const look = cueLook(ground, index)
      if (!look) throw new Error('no look')
      const made: PackCue = {
        cue: cue.id,
        number: index + 1,
        scene: cue.scene,
        timecode: '10:00:04:00',
        seconds: 1,
        look,
        sha256: lookSum(look),
        frame: cue.first + 3,
        before: greyPicture(60),
        after: greyPicture(120 + 20 * index),
        alternates: cue.alternates.map(({ name, grade }) => {
          const other = cueLook(ground, index, grade)
          if (!other) throw new Error('no look')
          return { name, grade, sha256: lookSum(other), picture: greyPicture(240) }
        }),
        clip: null,
      }
      return editCue(made, index)
    }),
  }
}
