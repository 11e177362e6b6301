import { reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'

/** Shown in place of the picture while the job is open but its reel is not. */
export const MissingMedia = () => {
  const { services } = useApp()
  const state = useAppState((s) => s.media)
  const reel = useAppState(reelOf)
  if (!reel || state === 'ready') return null
  return (
    <div className="missing-media" role="status">
      {state === 'opening' ? (
        <p>Opening the reel…</p>
      ) : (
        <>
          <p>
            The list is here; the scan it was made from is not: <b>{reel.media.name}</b>.
          </p>
          <button type="button" className="button primary" onClick={() => void services.pickReel()}>
            Find the reel…
          </button>
        </>
      )}
    </div>
  )
}
