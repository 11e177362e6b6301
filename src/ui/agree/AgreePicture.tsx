import { lastAnswer } from '../../core/agreement/agreementOf.ts'
import type { Mark } from '../../core/agreement/answer.ts'
import { setAgreeing } from '../../store/agreeing.ts'
import { currentCue } from '../../store/queries.ts'
import { setView } from '../../store/session.ts'
import type { View } from '../../store/view.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Picture } from '../bench/Picture.tsx'
import { CommandButton } from '../parts/CommandButton.tsx'
import { MissingMedia } from '../parts/MissingMedia.tsx'
import { DrawingSheet } from './DrawingSheet.tsx'

/** Ways to look at a picture, in words of no trade. */
const WAYS: readonly { readonly label: string; readonly view: Partial<View> }[] = [
  { label: 'After', view: { arrangement: 'alone' } },
  { label: 'Before and after', view: { arrangement: 'wipe', wipeAt: 0.5 } },
  { label: 'Before', view: { arrangement: 'wipe', wipeAt: 1 } },
]

const NO_MARKS: readonly Mark[] = []

/** The picture large, before and after; what is drawn on it. */
export const AgreePicture = () => {
  const { isPlaying } = useAppState((state) => state.playback)
  return (
    <>
      <div className="picture-place">
        <Picture>
          <Drawn />
        </Picture>
        <MissingMedia />
      </div>
      <div className="button-row agree-ways">
        <CommandButton isTerse id="cue-back" label="◁ Picture before" />
        <CommandButton isTerse id="play" label={isPlaying ? 'Stop' : 'Play'} />
        <CommandButton isTerse id="cue-on" label="Next picture ▷" />
        <span className="spacer" />
        <Ways />
      </div>
    </>
  )
}

const Ways = () => {
  const { store } = useApp()
  const shown = useAppState(({ view }) => `${view.arrangement} ${view.against.kind} ${view.wipeAt}`)
  return WAYS.map(({ label, view }) => (
    <button
      key={label}
      type="button"
      className="button"
      aria-pressed={
        shown ===
        `${view.arrangement} scanned ${view.arrangement === 'alone' ? shown.split(' ')[2] : view.wipeAt}`
      }
      onClick={() => setView(store, { ...view, against: { kind: 'scanned' } })}
    >
      {label}
    </button>
  ))
}

/** Lines of the answer that is being given, or of the one that holds, where its frame is shown. */
const Drawn = () => {
  const { store } = useApp()
  const drawing = useAppState(({ agreeing }) => agreeing.drawing)
  const given = useAppState((state) => {
    const cue = currentCue(state)
    const answer = cue && lastAnswer(cue)
    return answer?.frame === state.playhead ? answer.marks : NO_MARKS
  })
  const add = (mark: Mark) =>
    drawing && setAgreeing(store, { drawing: { ...drawing, marks: [...drawing.marks, mark] } })
  return <DrawingSheet marks={drawing?.marks ?? given} onMark={drawing?.isOpen ? add : undefined} />
}
