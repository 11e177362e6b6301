import { useRef, useState } from 'react'
import type { ImportOptions } from '../../core/conform/importPlan.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import { parsePosition } from '../../core/time/parsePosition.ts'
import { changeImport, refuseStart } from '../../store/importing.ts'
import { reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Radio } from '../parts/Radio.tsx'
import { placeText } from './importWords.ts'

export type ImportStartProps = {
  readonly options: ImportOptions
  readonly isDisabled: boolean
  /** The element that says why a place is none. */
  readonly reasonId: string
}

type Way = 'stated' | 'first-frame' | 'typed'

/** Where on the reel the first decision of a list begins. */
export const ImportStart = ({ options, isDisabled, reasonId }: ImportStartProps) => {
  const { store } = useApp()
  const reel = useAppState(reelOf)
  const playhead = useAppState((state) => state.playhead)
  const isRefused = useAppState((state) => state.importing?.startRefusal !== undefined)
  const { startsAt } = options
  const [isTyped, setIsTyped] = useState(startsAt !== null && startsAt !== 0)
  const [text, setText] = useState<string>()
  /** The place before what is being typed. */
  const settled = useRef(startsAt)
  if (!reel) return null
  const way: Way = isTyped ? 'typed' : startsAt === null ? 'stated' : 'first-frame'
  const shown = text ?? placeText(reel, isTyped && startsAt !== null ? startsAt : playhead)
  const choose = (chosen: Frame | null) => {
    setIsTyped(false)
    setText(undefined)
    settled.current = chosen
    changeImport(store, { startsAt: chosen })
  }
  /** The rows follow each key, so that what is imported is what is seen. */
  const type = (typed: string) => {
    setIsTyped(true)
    setText(typed)
    const place = parsePosition(typed, reel, playhead)
    changeImport(store, { startsAt: place.ok ? place.value : settled.current })
    if (!place.ok) refuseStart(store, place.problems[0].says)
  }
  /** A place that was understood is shown as its timecode. */
  const settle = () => {
    if (isRefused) return
    settled.current = startsAt
    setText(undefined)
  }
  return (
    <fieldset disabled={isDisabled}>
      <legend>Its first decision begins</legend>
      <Radio name="starts" isChosen={way === 'stated'} onChoose={() => choose(null)}>
        where its times say
      </Radio>
      <Radio name="starts" isChosen={way === 'first-frame'} onChoose={() => choose(frame(0))}>
        on the first frame of the reel
      </Radio>
      <Radio name="starts" isChosen={way === 'typed'} onChoose={() => type(shown)}>
        on the frame
      </Radio>
      <input
        className="import-start"
        aria-label="Timecode, feet and frames, or frame it begins on"
        aria-invalid={isRefused}
        aria-describedby={isRefused ? reasonId : undefined}
        title="a timecode (10:00:11:05), feet and frames (186+12) or a frame (279)"
        autoComplete="off"
        spellCheck={false}
        value={shown}
        onChange={(event) => type(event.currentTarget.value)}
        onBlur={settle}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return
          event.preventDefault()
          settle()
        }}
      />
    </fieldset>
  )
}
