import type { Cue } from '../../core/job/job.ts'
import type { ToleranceProfile } from '../../core/tolerance/profile.ts'
import type { Verdict } from '../../core/tolerance/verdict.ts'
import type { Checked } from './measureTask.ts'

const percent = (level: number): string => (level * 100).toFixed(1)

const filterWords = ({ filtered }: ToleranceProfile): string =>
  filtered ? 'after the filter' : 'unfiltered'

const cueLine = (number: number, cue: Cue, verdict: Verdict, profile: ToleranceProfile): string => {
  const span = ({ low, high }: Verdict['r']) => `${percent(low)}…${percent(high)}`
  const composite = verdict.composite ? `  luma plus chroma ${span(verdict.composite)}` : ''
  return [
    `cue ${number}`,
    `frame ${cue.first}`,
    verdict.isInside ? 'inside' : 'OUTSIDE',
    `${(verdict.areaOutside * 100).toFixed(2)} % of area`,
    `R ${span(verdict.r)}  G ${span(verdict.g)}  B ${span(verdict.b)}  Y ${span(verdict.y)}${composite} %`,
    filterWords(profile),
    `worst frame ${verdict.worstFrame}`,
  ].join('  ')
}

/** A measured reel, a line a cue and one for all. */
export const checkedLines = ({ profile, measured, isInside }: Checked): readonly string[] => [
  ...measured.map(({ cue, verdict }, index) => cueLine(index + 1, cue, verdict, profile)),
  `${profile.name}, levels and area ${filterWords(profile)}: ${outcomeWords(measured, isInside)}`,
]

const outcomeWords = (measured: Checked['measured'], isInside: boolean): string => {
  const outside = measured.filter(({ verdict }) => !verdict.isInside).length
  return isInside ? 'inside' : `${outside} of ${measured.length} cues outside`
}

/** A measured reel in one line, among many. */
export const checkedLine = ({ task, profile, measured, isInside }: Checked): string =>
  [
    isInside ? 'inside' : 'OUTSIDE',
    task.path,
    task.reel,
    `${profile.name}: ${outcomeWords(measured, isInside)}`,
  ]
    .filter((part) => part !== '')
    .join('  ')

export const checkedJson = ({ task, profile, measured, isInside }: Checked) => ({
  file: task.path,
  tolerance: profile.id,
  filtered: profile.filtered,
  profile,
  inside: isInside,
  cues: measured.map(({ cue, verdict }, index) => ({
    cue: index + 1,
    id: cue.id,
    first: cue.first,
    frames: verdict.frames,
    inside: verdict.isInside,
    r: verdict.r,
    g: verdict.g,
    b: verdict.b,
    y: verdict.y,
    ...(verdict.composite && { composite: verdict.composite }),
    worstFrame: verdict.worstFrame,
    areaOutside: verdict.areaOutside,
    areaBelow: verdict.areaBelow,
    areaAbove: verdict.areaAbove,
    framesOutside: verdict.framesOutside,
  })),
})
