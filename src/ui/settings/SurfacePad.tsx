import { FIRST_SURFACE_SETUP } from '../../core/surface/surfaceSetup.ts'
import { setSurfaceSetup } from '../../store/surface.ts'
import { useApp, useAppState } from '../appContext.ts'
import { SurfaceFields } from './SurfaceFields.tsx'
import { SurfacePadLearn } from './SurfacePadLearn.tsx'
import { SurfacePadTable } from './SurfacePadTable.tsx'
import { SurfacePlots } from './SurfacePlots.tsx'
import { stickUseLabel } from './surfaceUses.ts'

const PadState = () => {
  const pad = useAppState(({ surface }) => surface.pad)
  return (
    <p role="status">
      {pad ? (
        <>
          <span className="strong">● {pad.name}</span>
          {!pad.isStandard &&
            ' △ The browser does not know where its controls are: names may not fit. Press the control to find it.'}
        </>
      ) : (
        '○ No game pad seen. Connect one and press a button on it.'
      )}
    </p>
  )
}

/** The game pad: what its controls do and how they respond, shown live. */
export const SurfacePad = () => {
  const { store } = useApp()
  const sticks = useAppState(({ preferences }) => preferences.surface.pad.sticks)
  const putBack = () => {
    const { response, speeds, fine, pad } = FIRST_SURFACE_SETUP
    setSurfaceSetup(store, () => ({ response, speeds, fine, pad }))
  }
  return (
    <section className="surface-part" aria-label="Game pad">
      <h3>Game pad</h3>
      <PadState />
      <p className="dim">
        A stick or trigger moves its number for as long as it is held, the further the faster, on
        the cue under the line; from rest to rest is one step of undo.
      </p>
      <div className="surface-response">
        <SurfacePlots
          uses={{
            left: stickUseLabel(sticks.left.first),
            right: stickUseLabel(sticks.right.first),
          }}
        />
        <SurfaceFields />
      </div>
      <SurfacePadLearn />
      <SurfacePadTable />
      <button type="button" className="button" onClick={putBack}>
        Game pad as it was at first
      </button>
    </section>
  )
}
