import { type GuideTrack, guideSpeed } from '../../core/film/guideTrack.ts'
import { speedWords } from '../../core/film/runningTimes.ts'
import { setGuide } from '../../core/job/commands/setGuide.ts'
import type { Reel } from '../../core/job/job.ts'
import { findBeep } from '../../core/sound/findBeep.ts'
import type { SoundFacts } from '../../core/sound/measureSound.ts'
import { soundRows, soundWords } from '../../core/sound/soundWords.ts'
import { parsePosition } from '../../core/time/parsePosition.ts'
import { parseRate } from '../../core/time/parseRate.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { perform } from '../../store/document.ts'
import { LOW_PASSES, setGuiding } from '../../store/guiding.ts'
import { tell, tellProblems } from '../../store/notices.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { NumberCell } from '../parts/NumberCell.tsx'
import { formatNumber } from '../parts/numberText.ts'
import { TextField } from '../parts/TextField.tsx'
import { Tick } from '../parts/Tick.tsx'
import { SoundWave } from './SoundWave.tsx'
import { nearMark, wholeTrack } from './soundWave.ts'

const LOW_PASS_CHOICES = LOW_PASSES.map((hz) => ({
  id: String(hz),
  label: hz === null ? 'all of it' : `up to ${formatNumber(hz / 1000, 1)} kHz, as an optical track`,
}))

const OPEN_WORDS = {
  none: 'Open a sound file…',
  closed: 'Open it…',
  open: 'Open another…',
} as const

/** Sound to work by: opened, lined up by a sync mark, measured, and heard when the reel plays. */
export const GuideSection = ({ reel }: { readonly reel: Reel }) => {
  const { services } = useApp()
  const { name, measured } = useAppState(({ guiding }) => guiding)
  const { guide } = reel
  return (
    <section aria-label="Guide track">
      <h2>Guide track</h2>
      <p className="dim">
        Sound to work by: it runs with the picture and is not transferred with it.
      </p>
      {guide && (
        <p>
          {guide.name}
          {name === undefined && ' is not open; open it to hear it.'}
        </p>
      )}
      <div className="button-row">
        <button type="button" className="button" onClick={() => void services.guide.open()}>
          {OPEN_WORDS[guide === null ? 'none' : name === undefined ? 'closed' : 'open']}
        </button>
        {guide && (
          <button type="button" className="button" onClick={services.guide.takeOut}>
            Take it out
          </button>
        )}
      </div>
      {measured !== undefined && <p role="status">Measuring: {Math.floor(100 * measured)} %</p>}
      {guide && <GuidePlace reel={reel} guide={guide} />}
      {guide && <GuideHeard />}
    </section>
  )
}

type GuidePlaceProps = { readonly reel: Reel; readonly guide: GuideTrack }

/** Where picture and sound have their sync mark, and what speed the sound was made for. */
const GuidePlace = ({ reel, guide }: GuidePlaceProps) => {
  const { store } = useApp()
  const facts = useAppState(({ guiding }) => guiding.facts)
  const here = useAppState(({ playhead }) => playhead)
  const { mark, madeFor } = guide
  const put = (change: Partial<GuideTrack>): boolean =>
    perform(store, (job) => setGuide(job, reel.id, { ...guide, ...change }))
  const putSeconds = (seconds: number | undefined) =>
    seconds !== undefined && put({ mark: { ...mark, seconds } })
  const times = guideSpeed(guide, reel.rate)
  return (
    <>
      <TextField
        label="Made for, frames a second"
        value={speedWords(madeFor)}
        hint={
          times === 1
            ? 'its pitch is right'
            : `run at ${speedWords(reel.rate)}: pitch ${formatNumber(1200 * Math.log2(times), 1)} cents`
        }
        onCommit={(text) => {
          const rate = parseRate(text)
          if (rate.ok) return put({ madeFor: rate.value })
          tellProblems(store, rate.problems)
          return false
        }}
      />
      <TextField
        label="Sync mark on the picture"
        value={formatTimecode(reel.startCount + mark.frame, reel.rate, reel.isDropFrame)}
        onCommit={(text) => {
          const at = parsePosition(text, reel, here)
          if (at.ok) return put({ mark: { ...mark, frame: at.value } })
          tellProblems(store, at.problems)
          return false
        }}
      />
      <div className="inline-fields">
        <button
          type="button"
          className="button"
          onClick={() => put({ mark: { ...mark, frame: here } })}
        >
          It is the frame in the picture now
        </button>
      </div>
      <div className="inline-fields">
        <span>Sync mark in the sound, at</span>
        <NumberCell
          label="Sync mark in the sound, seconds"
          value={mark.seconds}
          onCommit={putSeconds}
        />
        <span>s</span>
        {facts && (
          <button
            type="button"
            className="button"
            onClick={() => {
              const at = findBeep(facts.envelope)
              if (at === undefined) tell(store, 'No short sound stands alone in this track.')
              else putSeconds(at)
            }}
          >
            Find the beep
          </button>
        )}
      </div>
      {facts && (
        <>
          <SoundWave
            label="The whole track; a click puts the sync mark there"
            envelope={facts.envelope}
            stretch={wholeTrack(facts.seconds)}
            mark={mark.seconds}
            onMark={putSeconds}
          />
          <SoundWave
            label="A second to each side of the sync mark; a click moves it"
            envelope={facts.envelope}
            stretch={nearMark(mark.seconds)}
            mark={mark.seconds}
            onMark={putSeconds}
          />
          <Measured facts={facts} />
        </>
      )}
    </>
  )
}

const Measured = ({ facts }: { readonly facts: SoundFacts }) => (
  <>
    <dl>
      {soundRows(facts).map(([what, value]) => [
        <dt key={what}>{what}</dt>,
        <dd key={`${what} is`}>{value}</dd>,
      ])}
    </dl>
    {soundWords(facts).map((words) => (
      <p key={words}>{words}</p>
    ))}
    <p className="dim">By ITU-R BS.1770 and EBU R 128; not the broadcaster’s approved test.</p>
  </>
)

const GuideHeard = () => {
  const { store } = useApp()
  const { isHeard, lowPass } = useAppState(({ guiding }) => guiding)
  return (
    <>
      <Tick isTicked={isHeard} onTick={(isOn) => setGuiding(store, { isHeard: isOn })}>
        heard when the reel plays
      </Tick>
      <Choice
        label="Listen to"
        options={LOW_PASS_CHOICES}
        value={String(lowPass)}
        onChange={(id) =>
          setGuiding(store, { lowPass: LOW_PASSES.find((hz) => String(hz) === id) ?? null })
        }
      />
    </>
  )
}
