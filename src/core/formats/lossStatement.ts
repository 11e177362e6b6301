import type { Job } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import type { Loss } from './loss.ts'

/** What one file or set of files of a hand-over loses. */
export type LossesOfFiles = {
  readonly title: string
  readonly files: readonly string[]
  readonly losses: readonly Loss[]
}

const lossLines = ({ subject, cues, says, done }: Loss): readonly string[] => [
  `  ${subject}: ${says}`,
  ...(cues.length > 0 ? [`    Cues: ${cues.join(', ')}`] : []),
  `    Done about it: ${done}`,
]

/** The statement of losses of a hand-over as plain text: every cue by its number. */
export const lossStatement = (
  job: Job,
  reelId: ReelId,
  parts: readonly LossesOfFiles[],
): string => {
  const lines = [
    `Statement of losses: ${job.info.job.title}, reel ${job.reels[reelId]?.name ?? ''}`,
    '',
    'What the files handed over cannot carry, and what was done about it. The job file loses nothing.',
    ...parts.flatMap(({ title, files, losses }) => [
      '',
      `${title} (${files.join(', ')})`,
      ...(losses.length === 0 ? ['  Nothing is lost.'] : losses.flatMap(lossLines)),
    ]),
  ]
  return `${lines.join('\n')}\n`
}
