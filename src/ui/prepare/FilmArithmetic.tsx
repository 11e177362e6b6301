import { useId, useState } from 'react'
import { metresOf, parseFilmLength } from '../../core/film/filmLength.ts'
import { speedChange } from '../../core/film/filmSpeed.ts'
import { runningTimes, speedWords } from '../../core/film/runningTimes.ts'
import { type SoundOffset, soundOffset, type TrackKind } from '../../core/film/soundOffset.ts'
import type { Reel } from '../../core/job/job.ts'
import { formatFootage } from '../../core/time/footage.ts'
import { parseRate } from '../../core/time/parseRate.ts'
import { type Rate, sameRate, secondsAt } from '../../core/time/rate.ts'
import { formatNumber } from '../parts/numberText.ts'

const TRACKS: readonly { readonly track: TrackKind; readonly title: string }[] = [
  { track: 'optical', title: 'Optical track' },
  { track: 'magnetic', title: 'Magnetic stripe' },
  { track: 'separate', title: 'Separate magnetic' },
]

/** Lengths, running times, pitch and where sound lies, for the reel's gauge. */
export const FilmArithmetic = ({ reel }: { readonly reel: Reel }) => {
  const ids = { length: useId(), speed: useId() }
  const [lengthText, setLengthText] = useState('')
  const [speedText, setSpeedText] = useState('')
  const madeFor = parseRate(speedText === '' ? `${reel.rate.num}/${reel.rate.den}` : speedText)
  const rate = madeFor.ok ? madeFor.value : reel.rate
  const length = parseFilmLength(
    lengthText === '' ? `${reel.frames} fr` : lengthText,
    reel.gauge,
    rate,
  )
  const frames = length.ok ? length.value : undefined
  return (
    <section aria-label="Film arithmetic">
      <h2>Film arithmetic</h2>
      <div className="field">
        <label htmlFor={ids.length}>Length (the reel’s where empty)</label>
        <input
          id={ids.length}
          value={lengthText}
          placeholder={formatFootage(reel.frames, reel.gauge)}
          aria-invalid={!length.ok}
          onChange={(event) => setLengthText(event.currentTarget.value)}
          onKeyDown={(event) => event.stopPropagation()}
        />
        <span className="dim">186 ft 12 fr, 2988 fr, 121.9 m, or 2:04 at the speed below</span>
      </div>
      <div className="field">
        <label htmlFor={ids.speed}>Speed it was made for, frames a second</label>
        <input
          id={ids.speed}
          value={speedText}
          placeholder={speedWords(reel.rate)}
          aria-invalid={!madeFor.ok}
          onChange={(event) => setSpeedText(event.currentTarget.value)}
          onKeyDown={(event) => event.stopPropagation()}
        />
      </div>
      <div role="status">
        {!length.ok && <p>▲ {length.problems[0].says}</p>}
        {!madeFor.ok && <p>▲ {madeFor.problems[0].says}</p>}
      </div>
      {frames !== undefined && <Lengths reel={reel} frames={frames} rate={rate} />}
      {!sameRate(rate, reel.rate) && <Pitch madeFor={rate} runAt={reel.rate} />}
      <Sound reel={reel} />
    </section>
  )
}

const Lengths = ({ reel, frames, rate }: { reel: Reel; frames: number; rate: Rate }) => (
  <>
    <p>
      {frames} frames, {formatFootage(frames, reel.gauge)},{' '}
      {formatNumber(metresOf(frames, reel.gauge), 2)} m
    </p>
    <table className="limits">
      <thead>
        <tr>
          <th scope="col">frames/s</th>
          <th scope="col">runs</th>
          <th scope="col">ft a minute</th>
        </tr>
      </thead>
      <tbody>
        {runningTimes(frames, reel.gauge, rate).map(({ words, time, feetPerMinute }) => (
          <tr key={words}>
            <th scope="row">{words}</th>
            <td>{time}</td>
            <td>{formatNumber(feetPerMinute, 2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </>
)

const signed = (value: number, decimals: number): string =>
  `${value > 0 ? '+' : ''}${formatNumber(value, decimals)}`

const Pitch = ({ madeFor, runAt }: { readonly madeFor: Rate; readonly runAt: Rate }) => {
  const { cents, length } = speedChange(madeFor, runAt)
  return (
    <p>
      Made for {speedWords(madeFor)} and run at {speedWords(runAt)}: length{' '}
      {signed(100 * (length - 1), 2)} %, pitch {signed(cents, 1)} cents.
    </p>
  )
}

const whereWords = ({ frames }: SoundOffset, { rate }: Reel): string => {
  if (frames === 0) return 'level with its picture'
  const seconds = formatNumber(Math.abs(secondsAt(frames, rate)), 3)
  return `${Math.abs(frames)} frames ${frames > 0 ? 'ahead of' : 'behind'} its picture, ${seconds} s`
}

/** Where sound lies on a print of the gauge, each with how sure that is. */
const Sound = ({ reel }: { readonly reel: Reel }) => (
  <>
    <h3>Where sound lies on a print</h3>
    <ul>
      {TRACKS.map(({ track, title }) => {
        const offset = soundOffset(reel.gauge, track)
        return (
          <li key={track}>
            {title}:{' '}
            {offset ? (
              <>
                {whereWords(offset, reel)}{' '}
                <span className="dim">
                  ({offset.standing}: {offset.source})
                </span>
              </>
            ) : (
              'not known here; measure it on the film'
            )}
          </li>
        )
      })}
    </ul>
    <p className="dim">Values to begin from: read them on the film itself.</p>
  </>
)
