import { useState } from 'react'
import type { ButtonUse, StickUse } from '../../core/surface/padMapping.ts'
import { setSurface } from '../../store/surface.ts'
import { useApp, useAppState } from '../appContext.ts'
import { SurfaceUseSelect } from './SurfaceUseSelect.tsx'
import { BUTTON_OPTIONS, STICK_OPTIONS } from './surfaceUses.ts'

/** Gives something to the control that is moved next. */
export const SurfacePadLearn = () => {
  const { store } = useApp()
  const learning = useAppState(({ surface }) => surface.learning)
  const learnt = useAppState(({ surface }) => surface.learnt)
  const hasPad = useAppState(({ surface }) => surface.pad !== undefined)
  const [stickUse, setStickUse] = useState<StickUse>('lift-tint')
  const [buttonUse, setButtonUse] = useState<ButtonUse>({ kind: 'command', id: 'play' })
  const [of, setOf] = useState<'button' | 'stick'>('button')
  const isWaiting = learning?.of === 'button' || learning?.of === 'stick'
  const start = () =>
    setSurface(store, {
      learnt: undefined,
      learning: of === 'stick' ? { of, use: stickUse } : { of, use: buttonUse },
    })
  return (
    <div className="surface-learn">
      <span className="dim">Give</span>
      <select
        className="surface-use"
        aria-label="kind of control"
        value={of}
        onChange={(event) => setOf(event.currentTarget.value as 'button' | 'stick')}
      >
        <option value="button">a button or trigger</option>
        <option value="stick">a stick</option>
      </select>
      {of === 'stick' ? (
        <SurfaceUseSelect
          label="what the stick is to do"
          options={STICK_OPTIONS}
          value={stickUse}
          onChange={(use) => use && setStickUse(use)}
        />
      ) : (
        <SurfaceUseSelect
          label="what the button is to do"
          options={BUTTON_OPTIONS}
          value={buttonUse}
          onChange={(use) => use && setButtonUse(use)}
        />
      )}
      {isWaiting ? (
        <button
          type="button"
          className="button is-on"
          onClick={() => setSurface(store, { learning: undefined })}
        >
          Leave it
        </button>
      ) : (
        <button type="button" className="button" disabled={!hasPad} onClick={start}>
          Press the control…
        </button>
      )}
      <span role="status">
        {isWaiting &&
          `${learning.of === 'stick' ? 'Push the stick to its rim' : 'Press the control to use'}; hold the second use first to give that.`}
        {!isWaiting && learnt?.of === 'pad' && `Given to: ${learnt.name}.`}
      </span>
    </div>
  )
}
