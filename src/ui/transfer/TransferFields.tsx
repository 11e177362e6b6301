import { setTransfer } from '../../core/job/commands/setTransfer.ts'
import { formatSeconds } from '../../core/time/duration.ts'
import { mostBytes } from '../../core/transfer/mostBytes.ts'
import { HEAD_PARTS } from '../../core/transfer/outputTimeline.ts'
import {
  type Limiting,
  LONGEST_HEAD_PART,
  type OnDamage,
  TRANSFER_FORMAT_FACTS,
  TRANSFER_FORMATS,
  type TransferFormat,
  type TransferSettings,
} from '../../core/transfer/transferSettings.ts'
import { perform } from '../../store/document.ts'
import { reelOf } from '../../store/queries.ts'
import type { AppState } from '../../store/state.ts'
import { planHindrance, planOf } from '../../store/transferFacts.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { NumberField } from '../parts/NumberField.tsx'
import { sizeText } from '../parts/sizeText.ts'
import { Tick } from '../parts/Tick.tsx'
import { DAMAGE_TITLES, LIMITING_TITLES, LIMITING_WORDS } from './transferWords.ts'

const FORMATS = TRANSFER_FORMATS.map((id) => ({ id, label: TRANSFER_FORMAT_FACTS[id].title }))

const optionsOf = <Id extends string>(titles: Readonly<Record<Id, string>>) =>
  (Object.keys(titles) as Id[]).map((id) => ({ id, label: titles[id] }))

const HEAD_TITLES = { bars: 'Bars', slate: 'Slate', leader: 'Leader' } as const

const lengthText = (state: AppState): string => {
  const plan = planOf(state)
  if (!plan) return planHindrance(state) ?? ''
  const { timeline, reel } = plan
  return `${timeline.frames} frames, ${formatSeconds(timeline.frames, reel.rate)}; at most ${sizeText(mostBytes(plan))}.`
}

/** How the reel is transferred: kept with it. */
export const TransferFields = () => {
  const { store } = useApp()
  const reel = useAppState(reelOf)
  const length = useAppState(lengthText)
  if (!reel) return null
  const { transfer } = reel
  const set = (change: Partial<TransferSettings>, gesture?: string) =>
    perform(store, (job) => setTransfer(job, reel.id, change), gesture)
  return (
    <section aria-label="How it is transferred">
      <h2>How it is transferred</h2>
      <Choice
        label="Format"
        options={FORMATS}
        value={transfer.format}
        onChange={(format) => set({ format: format as TransferFormat })}
      />
      <Choice
        label="Limiting"
        options={optionsOf(LIMITING_TITLES)}
        value={transfer.limiting}
        onChange={(limiting) => set({ limiting: limiting as Limiting })}
      />
      <p className="dim">{LIMITING_WORDS[transfer.limiting]}</p>
      <fieldset className="head-parts">
        <legend>Before the reel, in seconds</legend>
        {HEAD_PARTS.map((part) => (
          <div className="field" key={part}>
            <span>{HEAD_TITLES[part]}</span>
            <NumberField
              label={`${HEAD_TITLES[part]}, seconds`}
              value={transfer.head[part]}
              owner={reel.id}
              reset={0}
              unit=" s"
              low={0}
              high={LONGEST_HEAD_PART}
              step={1}
              decimals={0}
              onChange={(seconds, gesture) =>
                set({ head: { ...transfer.head, [part]: Math.round(seconds) } }, gesture)
              }
            />
          </div>
        ))}
      </fieldset>
      <Tick isTicked={transfer.burnsTimecode} onTick={(burnsTimecode) => set({ burnsTimecode })}>
        timecode burnt into the picture
      </Tick>
      <Tick isTicked={transfer.carriesSound} onTick={(carriesSound) => set({ carriesSound })}>
        the scan’s sound goes along where the file can hold it
      </Tick>
      <Choice
        label="A frame that cannot be decoded"
        options={optionsOf(DAMAGE_TITLES)}
        value={transfer.onDamage}
        onChange={(onDamage) => set({ onDamage: onDamage as OnDamage })}
      />
      <p>{length}</p>
    </section>
  )
}
