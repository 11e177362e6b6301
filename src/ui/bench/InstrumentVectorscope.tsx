import { useSyncExternalStore } from 'react'
import { ToggleButton } from 'react-aria-components'
import type { MatrixName } from '../../core/picture/planes.ts'
import { drawVectorscope, isVectorscopeCut } from '../../render/drawVectorscope.ts'
import { setInstruments } from '../../store/instrumentSettings.ts'
import { useApp, useAppState } from '../appContext.ts'
import { STRINGS } from '../strings.ts'
import { InstrumentCanvas } from './InstrumentCanvas.tsx'
import { MEASURES_SIGNAL } from './instrumentWords.ts'

/** The vectorscope, with the colours of bars for the picture's luma equation. */
export const InstrumentVectorscope = ({ matrix }: { matrix: MatrixName }) => {
  const { store, services } = useApp()
  const { signal, isVectorscopeEnlarged: isEnlarged } = useAppState((state) => state.instruments)
  const isCut = useSyncExternalStore(services.readings.subscribe, () => {
    const scope = services.readings.current()?.vectorscope
    return scope !== undefined && isVectorscopeCut(scope, isEnlarged)
  })
  return (
    <div className="panel">
      <div className="instrument-head" title={MEASURES_SIGNAL}>
        <h2>vectorscope</h2>
        <span className={signal === 'scanned' ? 'strong' : ''}>{signal}</span>
        <span className="spacer" />
        <ToggleButton
          className="instrument-toggle"
          aria-label="Vectorscope enlarged twice"
          isSelected={isEnlarged}
          onChange={(isSelected) => setInstruments(store, { isVectorscopeEnlarged: isSelected })}
        >
          ×2
        </ToggleButton>
      </div>
      <InstrumentCanvas
        label={`Vectorscope of the ${signal} picture, with 75 % and 100 % bars by ${STRINGS.matrices[matrix]}`}
        draw={(context, width, height) =>
          drawVectorscope(context, services.readings.current()?.vectorscope, {
            width,
            height,
            matrix,
            isEnlarged,
          })
        }
      >
        {isCut && (
          <span className="past-edge is-below" title="Some colours lie past the edge">
            ◆ past edge
          </span>
        )}
      </InstrumentCanvas>
    </div>
  )
}
