import { formatTimecode } from '../../core/time/timecode.ts'
import type { Extremes } from '../../core/tolerance/pictureLevels.ts'
import { verdictOf } from '../../store/checkKey.ts'
import { currentCue, jobOf, profileOf, reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { formatArea, formatLevel, verdictWords } from '../parts/words.ts'

const CHANNELS = ['r', 'g', 'b', 'y'] as const

/** The span of levels the bars show, −10 % … 115 %. */
const LOW = -0.1
const HIGH = 1.15

const place = (level: number): number =>
  Math.min(100, Math.max(0, ((level - LOW) / (HIGH - LOW)) * 100))

type BarProps = {
  readonly name: string
  readonly levels: Extremes
  readonly limits: readonly [number, number]
}

const LevelBar = ({ name, levels, limits }: BarProps) => {
  const isUnder = levels.low < limits[0]
  const isOver = levels.high > limits[1]
  return (
    <div className="level-row">
      <span className="level-name">{name}</span>
      <span className={isUnder ? 'level strong' : 'level'}>
        {isUnder ? '▼ ' : ''}
        {formatLevel(levels.low)}
      </span>
      <span className="level-bar" aria-hidden="true">
        <i style={{ left: `${place(levels.low)}%`, right: `${100 - place(levels.high)}%` }} />
        <b style={{ left: `${place(limits[0])}%` }} />
        <b style={{ left: `${place(limits[1])}%` }} />
      </span>
      <span className={isOver ? 'level strong' : 'level'}>
        {isOver ? '▲ ' : ''}
        {formatLevel(levels.high)}
      </span>
    </div>
  )
}

/** The verdict on the whole cue, with the levels it rests on; the frame's own until it is there. */
export const TolerancePanel = () => {
  const { services } = useApp()
  const verdict = useAppState((state) => {
    const cue = currentCue(state)
    return cue && verdictOf(state, cue)
  })
  const frameLevels = useAppState((state) => state.levels)
  const job = useAppState(jobOf)
  const reel = useAppState(reelOf)
  if (!job || !reel) return null
  const profile = profileOf(job)
  const levels = verdict ?? frameLevels
  const words = verdictWords(verdict)
  const basisWords = verdict
    ? 'whole cue'
    : levels
      ? 'this frame, cue being measured'
      : 'nothing to measure'
  const frameArea = frameLevels ? frameLevels.outside / frameLevels.pixels : undefined
  return (
    <div className="panel tolerance-panel">
      <h2>tolerance · {basisWords}</h2>
      {levels &&
        CHANNELS.map((channel) => (
          <LevelBar
            key={channel}
            name={channel.toUpperCase()}
            levels={levels[channel]}
            limits={channel === 'y' ? profile.luma : profile.rgb}
          />
        ))}
      <p className="verdict" role="status" aria-label="Tolerance verdict">
        <span aria-hidden="true">{words.sign} </span>
        {verdict ? `${words.word} · ${formatArea(verdict.areaOutside)} of area out` : words.word}
      </p>
      <p className="dim">
        {profile.name}, levels {profile.filtered ? 'after its filter' : 'unfiltered'}, up to{' '}
        {formatArea(profile.area)} may be out
        {frameArea !== undefined && <>. This frame: {formatArea(frameArea)}</>}
      </p>
      {verdict && (
        <button type="button" className="link" onClick={() => services.seek(verdict.worstFrame)}>
          worst frame{' '}
          {formatTimecode(reel.startCount + verdict.worstFrame, reel.rate, reel.isDropFrame)}
        </button>
      )}
    </div>
  )
}
