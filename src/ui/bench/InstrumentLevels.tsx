import { useSyncExternalStore } from 'react'
import type { ToleranceProfile } from '../../core/tolerance/profile.ts'
import { drawHistogram } from '../../render/drawHistogram.ts'
import { drawOverlay } from '../../render/drawOverlay.ts'
import { drawParade } from '../../render/drawParade.ts'
import { drawWaveform } from '../../render/drawWaveform.ts'
import { type EndFigure, pastWords } from '../../render/pastWords.ts'
import { type LevelInstrument, setInstruments } from '../../store/instrumentSettings.ts'
import { useApp, useAppState } from '../appContext.ts'
import type { Reading } from '../services.ts'
import { InstrumentCanvas } from './InstrumentCanvas.tsx'
import { InstrumentChoice } from './InstrumentChoice.tsx'
import { INSTRUMENT_NAMES, MEASURES_SIGNAL, SIGNAL_NAMES, UNIT_NAMES } from './instrumentWords.ts'

const FIGURES: Readonly<Record<LevelInstrument, readonly EndFigure[]>> = {
  luma: ['y'],
  overlay: ['r', 'g', 'b'],
  parade: ['r', 'g', 'b'],
  histogram: ['y', 'r', 'g', 'b'],
}

/** How far the signal goes past the upper or lower edge, where it does. */
const PastEdge = ({ side }: { side: 'above' | 'below' }) => {
  const { services } = useApp()
  const { levels, unit } = useAppState((state) => state.instruments)
  const words = useSyncExternalStore(services.readings.subscribe, () =>
    pastWords(services.readings.current()?.past, FIGURES[levels], unit, side),
  )
  if (words === '') return null
  return (
    <span className={`past-edge is-${side} is-${levels}`} title="past what 10-bit video can carry">
      <span className="unseen">past the {side === 'above' ? 'upper' : 'lower'} edge </span>
      {words}
    </span>
  )
}

/** The instrument of levels that is chosen: waveform, parade or histogram. */
export const InstrumentLevels = ({ profile }: { profile: ToleranceProfile }) => {
  const { store, services } = useApp()
  const { levels, unit, signal } = useAppState((state) => state.instruments)
  const name = INSTRUMENT_NAMES.find(({ id }) => id === levels)?.label ?? ''

  const draw = (context: CanvasRenderingContext2D, width: number, height: number) => {
    const reading: Partial<Reading> = services.readings.current() ?? {}
    const style = { width, height, unit, limits: profile.rgb }
    if (levels === 'luma')
      drawWaveform(context, reading.waveform, { ...style, limits: profile.luma })
    else if (levels === 'overlay') drawOverlay(context, reading.channels, style)
    else if (levels === 'parade') drawParade(context, reading.channels, style)
    else
      drawHistogram(context, reading.histograms, {
        ...style,
        luma: profile.luma,
        rgb: profile.rgb,
      })
  }
  return (
    <div className="panel">
      <div className="instrument-head" title={MEASURES_SIGNAL}>
        <h2 className="unseen">Levels</h2>
        <InstrumentChoice
          label="Instrument of levels"
          options={INSTRUMENT_NAMES}
          value={levels}
          onChange={(id) => setInstruments(store, { levels: id })}
        />
        <span className="spacer" />
        <InstrumentChoice
          label="Unit of levels"
          options={UNIT_NAMES}
          value={unit}
          onChange={(id) => setInstruments(store, { unit: id })}
        />
        <InstrumentChoice
          label="Signal measured"
          options={SIGNAL_NAMES}
          value={signal}
          isUnusual={signal === 'scanned'}
          onChange={(id) => setInstruments(store, { signal: id })}
        />
      </div>
      <InstrumentCanvas label={`${name} of the ${signal} picture`} draw={draw}>
        <PastEdge side="above" />
        <PastEdge side="below" />
      </InstrumentCanvas>
    </div>
  )
}
