import { framesPerSecond } from '../../core/time/rate.ts'
import { jobOf, profileHere, reelOf } from '../../store/queries.ts'
import { setStep } from '../../store/session.ts'
import type { AppState, Step } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { STRINGS } from '../strings.ts'
import { CommandListButton } from './CommandList.tsx'

const STEPS: readonly Step[] = ['prepare', 'line-up', 'rehearse', 'agree', 'transfer', 'hand-over']

const savingText = ({ saving }: AppState): string => {
  if (saving.state === 'failed') return '▲ not kept: this browser’s storage refused'
  if (saving.state === 'unsaved') return 'keeping…'
  return saving.at === undefined ? '' : `kept ${new Date(saving.at).toLocaleTimeString('en-GB')}`
}

const rateText = (fps: number): string => `${Number.isInteger(fps) ? fps : fps.toFixed(3)} frames/s`

/** The head of the screen: the job, the steps, and what holds for the whole of it. */
export const Header = () => {
  const { store } = useApp()
  const title = useAppState((state) => jobOf(state)?.info.job.title)
  const profile = useAppState(profileHere)
  const reel = useAppState(reelOf)
  const step = useAppState((state) => state.step)
  const saving = useAppState(savingText)
  const undoCount = useAppState((state) => state.history?.past.length ?? 0)
  const undone = useAppState((state) => state.history?.past.at(-1)?.label)
  const redone = useAppState((state) => state.history?.future[0]?.label)
  if (title === undefined || !profile || !reel) return null
  return (
    <header className="header">
      <h1>{title}</h1>
      <span className="dim reel-words">
        {reel.name !== title && `${reel.name} · `}
        {reel.gauge.replace('-', ' ').replace('mm', ' mm')} · {rateText(framesPerSecond(reel.rate))}
      </span>
      <nav aria-label="Steps" className="steps">
        {STEPS.map((name) => (
          <button
            type="button"
            key={name}
            aria-current={step === name ? 'step' : undefined}
            onClick={() => setStep(store, name)}
          >
            {STRINGS.steps[name]}
          </button>
        ))}
      </nav>
      <span className="spacer" />
      <span className="dim" title="the tolerance the job is held to">
        {profile.name}, {profile.filtered ? 'filtered' : 'unfiltered'}
      </span>
      <span className="dim saving" role="status" aria-label="Keeping in this browser">
        {saving}
      </span>
      <CommandButton
        id="undo"
        label={undoCount > 0 ? `Undo ${undoCount}` : 'Undo'}
        {...(undone !== undefined && { hint: `Undo: ${undone}` })}
        className="undo"
      />
      <CommandButton
        id="redo"
        label="Redo"
        {...(redone !== undefined && { hint: `Redo: ${redone}` })}
      />
      <CommandButton id="save" label="Save" />
      <CommandButton isTerse id="settings" label="Keys" />
      <CommandListButton />
    </header>
  )
}
