import { formatTimecode } from '../../core/time/timecode.ts'
import { levelLimits } from '../../core/tolerance/levelLimits.ts'
import type { Extremes } from '../../core/tolerance/pictureLevels.ts'
import type { Limits } from '../../core/tolerance/profile.ts'
import { liveVerdictOf, shownVerdictOf } from '../../store/checkKey.ts'
import { currentCue, profileHere, reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import {
  filterWords,
  formatArea,
  formatLevel,
  formatPartOut,
  liveWords,
  verdictWords,
} from '../parts/words.ts'
import { STRINGS } from '../strings.ts'
import { MEASURES_SIGNAL } from './instrumentWords.ts'

const FIGURES = [
  { id: 'r', name: 'R′', limits: 'rgb' },
  { id: 'g', name: 'G′', limits: 'rgb' },
  { id: 'b', name: 'B′', limits: 'rgb' },
  { id: 'y', name: 'Y′', limits: 'luma' },
  { id: 'composite', name: 'Y±C', limits: 'composite' },
] as const

/** The span of levels the bars show, without composite peaks and with them. */
const SPAN: Limits = [-0.1, 1.15]
const COMPOSITE_SPAN: Limits = [-0.4, 1.4]

/** Where a level stands in a span, in percent of the bar. */
const place = (level: number, [low, high]: Limits): number =>
  Math.min(100, Math.max(0, ((level - low) / (high - low)) * 100))

type BarProps = {
  readonly name: string
  readonly levels: Extremes
  readonly limits: Limits
  readonly span: Limits
}

const LevelBar = ({ name, levels, limits, span }: BarProps) => {
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
        <i
          style={{
            left: `${place(levels.low, span)}%`,
            right: `${100 - place(levels.high, span)}%`,
          }}
        />
        {limits.filter(Number.isFinite).map((limit) => (
          <b key={limit} style={{ left: `${place(limit, span)}%` }} />
        ))}
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
    return cue && shownVerdictOf(state, cue)
  })
  const live = useAppState((state) => {
    const cue = currentCue(state)
    return cue && liveVerdictOf(state, cue)
  })
  const frameLevels = useAppState((state) => state.levels)
  const isReference = useAppState((state) => state.isReference)
  const profile = useAppState(profileHere)
  const reel = useAppState(reelOf)
  if (!profile || !reel) return null
  const levels = verdict ?? live?.verdict ?? frameLevels
  const words = verdict || !live ? verdictWords(verdict) : liveWords(live)
  const limits = levelLimits(profile)
  const filtered = filterWords(profile.filtered)
  const basisWords = verdict
    ? `whole cue, ${filtered}`
    : live
      ? 'whole cue, unfiltered, live'
      : levels
        ? `this frame, ${filtered}`
        : 'nothing to measure'
  const frameArea = frameLevels ? frameLevels.outside / frameLevels.pixels : undefined
  return (
    <div className="panel tolerance-panel">
      <h2 title={MEASURES_SIGNAL}>tolerance · {basisWords}</h2>
      {isReference && (
        <p className="one-line" title={STRINGS.slow.whole}>
          ▲ {STRINGS.slow.short}
        </p>
      )}
      {FIGURES.map(({ id, name, limits: figure }) => {
        const measured = levels?.[id]
        return (
          measured && (
            <LevelBar
              key={id}
              name={name}
              levels={measured}
              limits={limits[figure]}
              span={profile.composite ? COMPOSITE_SPAN : SPAN}
            />
          )
        )
      })}
      <p className="verdict" role="status" aria-label="Tolerance verdict">
        <span aria-hidden="true">{words.sign} </span>
        {verdict
          ? `${words.word} · ${formatArea(verdict.areaOutside)} out at worst`
          : [words.word, words.detail].filter((part) => part !== '').join(' · ')}
      </p>
      {verdict && live && (
        <p className="dim">
          Live: {formatPartOut(live.verdict)} of all pixels out
          {live.standing === 'inside' ? '; inside for certain' : ', unfiltered'}
        </p>
      )}
      <p className="dim">
        up to {formatArea(profile.area)} of area may be out, {filtered} · {profile.name}
      </p>
      <p className="dim">
        {frameArea !== undefined && <>this frame {formatArea(frameArea)}</>}
        {frameArea !== undefined && verdict && ' · '}
        {verdict && (
          <button type="button" className="link" onClick={() => services.seek(verdict.worstFrame)}>
            worst frame{' '}
            {formatTimecode(reel.startCount + verdict.worstFrame, reel.rate, reel.isDropFrame)}
          </button>
        )}
      </p>
    </div>
  )
}
