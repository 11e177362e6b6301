import type { Grade } from '../colour/grade.ts'
import { allOf, type Tint, tintOf, withAll, withChannel, withTint } from '../colour/gradeViews.ts'
import type { Framing } from '../picture/framing.ts'

type Stage = 'lift' | 'gamma' | 'gain'
type Part = 'all' | 'r' | 'g' | 'b' | 'cb' | 'cr'

/** The name of a number of a cue that a control surface can move. */
export type SurfaceNumberId = `${Stage}-${Part}` | 'saturation' | 'zoom' | 'pan' | 'tilt'

/** Which of the speeds that a person sets holds for a number. */
export type SpeedOf = 'level' | 'tint' | 'framing'

type Common = {
  readonly id: SurfaceNumberId
  /** What the screen and the history call it. */
  readonly label: string
  readonly speed: SpeedOf
  /** From one end of a fader to the other: the range that is of use, in the number's own units. */
  readonly span: readonly [low: number, high: number]
  /** One step of an encoder. */
  readonly step: number
  /** How far it may be moved at all. */
  readonly limits: readonly [low: number, high: number]
}

/** A number of a cue that a control surface can move: where it is read and how it is set. */
export type SurfaceNumber =
  | (Common & {
      readonly of: 'grade'
      readonly read: (grade: Grade) => number
      readonly write: (grade: Grade, value: number) => Grade
    })
  | (Common & {
      readonly of: 'framing'
      readonly read: (framing: Framing) => number
      readonly write: (framing: Framing, value: number) => Framing
    })

const RANGES: Readonly<Record<Stage, Pick<Common, 'span' | 'step' | 'limits'>>> = {
  lift: { span: [-0.25, 0.25], step: 0.002, limits: [-1, 1] },
  gamma: { span: [0.5, 1.5], step: 0.005, limits: [0.1, 5] },
  gain: { span: [0.5, 1.5], step: 0.005, limits: [-1, 4] },
}

const TINT_RANGE: Pick<Common, 'span' | 'step' | 'limits'> = {
  span: [-0.15, 0.15],
  step: 0.001,
  limits: [-0.5, 0.5],
}

const levelOf = (stage: Stage): SurfaceNumber => ({
  ...RANGES[stage],
  id: `${stage}-all`,
  label: `${stage} all`,
  speed: 'level',
  of: 'grade',
  read: (grade) => allOf(grade[stage]),
  write: (grade, value) => ({ ...grade, [stage]: withAll(grade[stage], value) }),
})

const channelOf = (stage: Stage, channel: 0 | 1 | 2): SurfaceNumber => ({
  ...RANGES[stage],
  id: `${stage}-${(['r', 'g', 'b'] as const)[channel]}`,
  label: `${stage} ${'RGB'[channel]}`,
  speed: 'level',
  of: 'grade',
  read: (grade) => grade[stage][channel],
  write: (grade, value) => ({ ...grade, [stage]: withChannel(grade[stage], channel, value) }),
})

/** What a stage's tint colours most; the words of the tint pads. */
const TINT_NAMES: Readonly<Record<Stage, string>> = {
  lift: 'shadow tint',
  gamma: 'mid tint',
  gain: 'highlight tint',
}

const tintPartOf = (stage: Stage, part: keyof Tint): SurfaceNumber => ({
  ...TINT_RANGE,
  id: `${stage}-${part}`,
  label: `${TINT_NAMES[stage]} ${part === 'cb' ? 'Cb' : 'Cr'}`,
  speed: 'tint',
  of: 'grade',
  read: (grade) => tintOf(grade[stage])[part],
  write: (grade, value) => ({
    ...grade,
    [stage]: withTint(grade[stage], { ...tintOf(grade[stage]), [part]: value }),
  }),
})

const framingOf = (
  field: 'zoom' | 'pan' | 'tilt',
  ranges: Pick<Common, 'span' | 'step' | 'limits'>,
): SurfaceNumber => ({
  ...ranges,
  id: field,
  label: field,
  speed: 'framing',
  of: 'framing',
  read: (framing) => framing[field],
  write: (framing, value) => ({ ...framing, [field]: value }),
})

const ofStage = (stage: Stage): readonly SurfaceNumber[] => [
  levelOf(stage),
  channelOf(stage, 0),
  channelOf(stage, 1),
  channelOf(stage, 2),
  tintPartOf(stage, 'cb'),
  tintPartOf(stage, 'cr'),
]

/** Every number of a cue that a control surface can move. */
export const SURFACE_NUMBERS: readonly SurfaceNumber[] = [
  ...ofStage('lift'),
  ...ofStage('gamma'),
  ...ofStage('gain'),
  {
    id: 'saturation',
    label: 'saturation',
    speed: 'level',
    span: [0, 2],
    step: 0.005,
    limits: [0, 4],
    of: 'grade',
    read: (grade) => grade.saturation,
    write: (grade, saturation) => ({ ...grade, saturation }),
  },
  framingOf('zoom', { span: [1, 2], step: 0.005, limits: [0.25, 8] }),
  framingOf('pan', { span: [-0.5, 0.5], step: 0.001, limits: [-1, 1] }),
  framingOf('tilt', { span: [-0.5, 0.5], step: 0.001, limits: [-1, 1] }),
]

const byId = new Map(SURFACE_NUMBERS.map((number) => [number.id, number]))

export const surfaceNumber = (id: SurfaceNumberId): SurfaceNumber => {
  const number = byId.get(id)
  if (!number) throw new Error(`Bug: no control surface moves “${id}”`)
  return number
}

/** A value kept within how far its number may be moved. */
export const withinLimits = ({ limits: [low, high] }: SurfaceNumber, value: number): number =>
  Math.min(high, Math.max(low, value))

/** A value as it is kept: as fine as any eye or code, and short to read. */
export const roundedFor = ({ speed }: SurfaceNumber, value: number): number =>
  Number(value.toFixed(speed === 'level' ? 4 : 5))
