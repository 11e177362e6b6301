import { memo, useMemo, useRef } from 'react'
import { type AgreeRow, agreeRows, middleFrame, unsaidOf } from '../../store/agreeRows.ts'
import { sayHere } from '../../store/answering.ts'
import { cuesOf, currentCue, previousCue, reelOf } from '../../store/queries.ts'
import { selectCue } from '../../store/selection.ts'
import { standingOf } from '../../store/standing.ts'
import { useApp, useAppState } from '../appContext.ts'
import { StillPair } from '../ledger/StillPair.tsx'
import { useWindow } from '../parts/useWindow.ts'
import { STRINGS } from '../strings.ts'

const SCENE_HEIGHT = 52
const CUE_HEIGHT = 92

const heightOf = ({ kind }: AgreeRow): number => (kind === 'scene' ? SCENE_HEIGHT : CUE_HEIGHT)

/** The reel as scenes and pictures, each with how it stands; one is looked at. */
export const AgreeList = () => {
  const { store } = useApp()
  const scroller = useRef<HTMLElement>(null)
  const standing = useAppState(standingOf)
  const cues = useAppState(cuesOf)
  // biome-ignore lint/correctness/useExhaustiveDependencies: these two decide the rows
  const rows = useMemo(() => agreeRows(store.getState()), [store, cues, standing])
  const view = useWindow(scroller, rows, heightOf)
  const { notAgreed } = standing
  return (
    <nav
      className="agree-list"
      aria-label="Pictures of the reel"
      ref={scroller}
      onScroll={view.onScroll}
    >
      <p role="status" className="agree-count">
        {cues.length - notAgreed} of {cues.length} agreed
      </p>
      <div style={{ height: view.before }} />
      {rows
        .slice(view.from, view.to)
        .map((row) =>
          row.kind === 'scene' ? (
            <SceneHead key={`scene ${row.cues[0]}`} row={row} />
          ) : (
            <CueRow key={row.cue.id} row={row} />
          ),
        )}
      <div style={{ height: view.after }} />
    </nav>
  )
}

const SceneHead = ({ row: { scene, cues } }: { row: AgreeRow & { kind: 'scene' } }) => {
  const { store } = useApp()
  const left = useAppState((state) => unsaidOf(state, cues).length)
  return (
    <div className="agree-scene" style={{ height: SCENE_HEIGHT }}>
      <h2>{scene === '' ? 'No scene' : `Scene ${scene}`}</h2>
      <button
        type="button"
        className="button"
        disabled={left === 0}
        onClick={() => sayHere(store, unsaidOf(store.getState(), cues), 'agreed')}
      >
        Agree to {left === cues.length ? 'all of it' : 'the rest'}
      </button>
    </div>
  )
}

const CueRow = memo(({ row: { cue, number, standing } }: { row: AgreeRow & { kind: 'cue' } }) => {
  const { store, services } = useApp()
  const aspect = useAppState((state) => reelOf(state)?.media.displayAspect ?? 4 / 3)
  const isCurrent = useAppState((state) => currentCue(state)?.id === cue.id)
  const state = store.getState()
  const middle = middleFrame(state, cue)
  const go = () => {
    selectCue(store, cue, 'only')
    services.seek(middle)
  }
  return (
    <button
      type="button"
      className="agree-row"
      style={{ height: CUE_HEIGHT }}
      aria-current={isCurrent ? 'true' : undefined}
      onClick={go}
    >
      <span className="agree-stills" aria-hidden="true">
        <StillPair
          cue={cue}
          previous={previousCue(cuesOf(state), cue)}
          frame={middle}
          aspect={aspect}
        />
      </span>
      <span>
        <b>Picture {number}</b>
        <br />
        {STRINGS.agreement[standing]}
      </span>
    </button>
  )
})
