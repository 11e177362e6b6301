import { useId, useState } from 'react'
import type { ImportOptions } from '../../core/conform/importPlan.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import { parsePosition } from '../../core/time/parsePosition.ts'
import { changeImport } from '../../store/importing.ts'
import { reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Radio } from '../parts/Radio.tsx'
import { placeText } from './importWords.ts'

export type ImportStartProps = {
  readonly options: ImportOptions
  readonly isDisabled: boolean
}

type Way = 'stated' | 'first-frame' | 'typed'

/** Where on the reel the first decision of a list begins. */
export const ImportStart = ({ options, isDisabled }: ImportStartProps) => {
  const { store } = useApp()
  const refusalId = useId()
  const reel = useAppState(reelOf)
  const playhead = useAppState((state) => state.playhead)
  const { startsAt } = options
  const [isTyped, setIsTyped] = useState(startsAt !== null && startsAt !== 0)
  const [text, setText] = useState<string>()
  const [refusal, setRefusal] = useState<string>()
  if (!reel) return null
  const way: Way = isTyped ? 'typed' : startsAt === null ? 'stated' : 'first-frame'
  const shown = text ?? placeText(reel, isTyped && startsAt !== null ? startsAt : playhead)
  const choose = (chosen: Frame | null) => {
    setIsTyped(false)
    setRefusal(undefined)
    changeImport(store, { startsAt: chosen })
  }
  const type = (typed: string) => {
    setIsTyped(true)
    const place = parsePosition(typed, reel, playhead)
    setRefusal(place.ok ? undefined : place.problems[0].says)
    if (!place.ok) return
    setText(undefined)
    changeImport(store, { startsAt: place.value })
  }
  const commit = () => {
    if (text !== undefined) type(text)
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
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal === undefined ? undefined : refusalId}
        title="a timecode (10:00:11:05), feet and frames (186+12) or a frame (279)"
        autoComplete="off"
        spellCheck={false}
        value={shown}
        onChange={(event) => {
          setText(event.currentTarget.value)
          setRefusal(undefined)
        }}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return
          event.preventDefault()
          commit()
        }}
      />
      {refusal !== undefined && (
        <p id={refusalId} role="status" className="import-refusal">
          {refusal}
        </p>
      )}
    </fieldset>
  )
}
