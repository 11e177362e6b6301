import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components'
import { formatFootage } from '../../core/time/footage.ts'
import { parsePosition } from '../../core/time/parsePosition.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { reelOf } from '../../store/queries.ts'
import { setOpened } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'
import { NumberHint } from '../parts/NumberHint.tsx'

/** Where the line is, as timecode and footage. A press, or the key, lets another place be typed. */
export const Position = () => {
  const { store } = useApp()
  const isTyped = useAppState((state) => state.opened === 'go-to')
  const playhead = useAppState((state) => state.playhead)
  const reel = useAppState(reelOf)
  if (!reel) return null
  const timecode = formatTimecode(reel.startCount + playhead, reel.rate, reel.isDropFrame)
  const footage = formatFootage(playhead, reel.gauge)
  return (
    <div className="position">
      <span className="timecode" role="timer" aria-label="Timecode" aria-live="off">
        {timecode}
      </span>
      <span className="dim">{footage}</span>
      {isTyped ? (
        <GoTo first={timecode} />
      ) : (
        <Button
          className="position-button"
          aria-label="Go to a place"
          onPress={() => setOpened(store, 'go-to')}
        />
      )}
    </div>
  )
}

/** The field a place is typed in; it goes there on Enter, and stays as it was on Escape. */
const GoTo = ({ first }: { first: string }) => {
  const { store, services } = useApp()
  const [text, setText] = useState(first)
  const [refusal, setRefusal] = useState<string>()
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => {
    const before = document.activeElement
    field.current?.select()
    return () => {
      if (store.getState().opened === 'go-to') setOpened(store, undefined)
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [store])
  const close = () => setOpened(store, undefined)
  const go = () => {
    const state = store.getState()
    const reel = reelOf(state)
    if (!reel) return
    const place = parsePosition(text, reel, state.playhead)
    if (!place.ok) {
      setRefusal(place.problems[0].says)
      return
    }
    services.pause()
    services.seek(place.value)
    close()
  }
  return (
    <>
      <input
        className="go-to"
        ref={field}
        aria-label="Go to a timecode, feet and frames, or a frame"
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal === undefined ? undefined : 'go-to-refusal'}
        title="a timecode (10:00:11:05), feet and frames (186+12) or a frame (279)"
        autoComplete="off"
        spellCheck={false}
        value={text}
        onChange={(event) => {
          setText(event.currentTarget.value)
          setRefusal(undefined)
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') go()
          if (event.key === 'Escape') close()
        }}
        onBlur={close}
      />
      {refusal !== undefined && <NumberHint id="go-to-refusal" by={field} says={refusal} />}
    </>
  )
}
