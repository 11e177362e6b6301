import { useEffect, useSyncExternalStore } from 'react'
import type { PointFigure, PointSize } from '../../core/picture/pointReading.ts'
import { setInstruments } from '../../store/instrumentSettings.ts'
import { heldAgainst, readPoint } from '../../store/readPoint.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { formatNumber } from '../parts/numberText.ts'
import { InstrumentChoice } from './InstrumentChoice.tsx'

/** By rows: R′G′B′ down the left, Y′CbCr down the right. */
const FIGURES = [
  { id: 'r', name: 'R′' },
  { id: 'y', name: 'Y′' },
  { id: 'g', name: 'G′' },
  { id: 'cb', name: 'Cb' },
  { id: 'b', name: 'B′' },
  { id: 'cr', name: 'Cr' },
] as const

const SIZES: readonly { readonly id: '1' | '5'; readonly label: string }[] = [
  { id: '1', label: '1 × 1 px' },
  { id: '5', label: '5 × 5 px' },
]

const PAST = { [-1]: '▼', 0: '', 1: '▲' } as const

const Figure = ({ name, figure }: { name: string; figure: PointFigure | undefined }) => (
  <span className="point-figure">
    <span className="dim">{name}</span>
    <b>
      {figure ? figure.code : '–'}
      {figure && figure.past !== 0 && (
        <span title="past the 10-bit codes">{PAST[figure.past]}</span>
      )}
    </b>
    <span className="point-percent">
      {figure ? `${formatNumber(figure.value * 100, 1)} %` : ''}
    </span>
  </span>
)

/** What the pixel under the pointer measures, or the one that was chosen. */
export const PointReading = () => {
  const { store, services } = useApp()
  const pointing = useAppState((state) => state.pointing)
  const settings = useAppState((state) => state.instruments)
  useAppState((state) => state.history)
  useAppState((state) => state.proposal)
  const heldId = useAppState(heldAgainst)
  const shown = useSyncExternalStore(services.frames.subscribe, services.frames.current)
  const held = useSyncExternalStore(services.held.subscribe, () =>
    heldId === undefined ? undefined : services.held.get(heldId),
  )
  useEffect(() => {
    if (heldId !== undefined && !held) services.held.request(heldId)
  }, [services, heldId, held])

  const place = pointing.over ?? pointing.reading
  const reading = shown && place && readPoint(store.getState(), shown, held, place)
  const isScanned = settings.signal === 'scanned'
  const where = `${isScanned ? 'scanned, ' : ''}${pointing.over ? 'at' : 'kept'}`
  return (
    <section className="point-reading" aria-label="Point reading">
      <div className="point-head">
        {reading ? (
          <span
            className={isScanned ? 'point-place strong' : 'point-place'}
            title={`The ${settings.signal} picture at ${pointing.over ? 'the pointer' : 'the kept point'}: pixel ${reading.pixel.x}, ${reading.pixel.y} of the scan`}
          >
            {where}{' '}
            <span className="dim">
              {reading.pixel.x}, {reading.pixel.y}
            </span>
          </span>
        ) : (
          <span
            className="point-place dim"
            title="Move the pointer over the picture to read it; press to keep the place"
          >
            no point read
          </span>
        )}
        <span className="spacer" />
        <InstrumentChoice
          label="Point read as the mean of"
          options={SIZES}
          value={settings.pointSize === 1 ? '1' : '5'}
          onChange={(id) => setInstruments(store, { pointSize: Number(id) as PointSize })}
        />
        <CommandButton id="point-reset" label="×" className="point-reset" isTerse />
      </div>
      {FIGURES.map(({ id, name }) => (
        <Figure key={id} name={name} figure={reading?.figures[id]} />
      ))}
      <span
        className="point-figure point-difference"
        title={
          heldId === undefined
            ? 'Colour difference CIEDE2000: compare the picture with a held frame to read it'
            : 'Colour difference CIEDE2000 from the held frame, at this place of its scan'
        }
      >
        <span className="dim">ΔE00</span>
        <b>{reading?.difference === undefined ? '–' : formatNumber(reading.difference, 1)}</b>
      </span>
    </section>
  )
}
