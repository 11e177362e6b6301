import { framesPerSecond } from '../../core/time/rate.ts'
import { jobOf, profileOf, reelOf } from '../../store/queries.ts'
import { setStep } from '../../store/session.ts'
import type { AppState, Step } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { STRINGS } from '../strings.ts'
import { CommandListButton } from './CommandList.tsx'

const STEPS: readonly Step[] = ['prepare', 'rehearse', 'hand-over']

const savingText = ({ saving }: AppState): string => {
  if (saving.state === 'failed') return '▲ not kept: this browser’s storage refused'
  if (saving.state === 'unsaved') return 'keeping…'
  return saving.at === undefined ? '' : `kept ${new Date(saving.at).toLocaleTimeString('en-GB')}`
}

const rateText = (fps: number): string => `${Number.isInteger(fps) ? fps : fps.toFixed(3)} frames/s`

/** The head of the screen: the job, the steps, and what holds for the whole of it. */
export const Header = () => {
  const { store } = useApp()
  const job = useAppState(jobOf)
  const reel = useAppState(reelOf)
  const step = useAppState((state) => state.step)
  const saving = useAppState(savingText)
  const undoCount = useAppState((state) => state.history?.past.length ?? 0)
  if (!job || !reel) return null
  const profile = profileOf(job)
  return (
    <header className="header">
      <h1>{job.info.job.title}</h1>
      <span className="dim">
        {reel.name} · {reel.gauge.replace('-', ' ').replace('mm', ' mm')} ·{' '}
        {rateText(framesPerSecond(reel.rate))}
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
      <span className="dim" role="status" aria-label="Keeping in this browser">
        {saving}
      </span>
      <CommandButton id="undo" label={undoCount > 0 ? `Undo ${undoCount}` : 'Undo'} />
      <CommandButton id="redo" label="Redo" />
      <CommandButton id="save" label="Save" />
      <CommandButton isTerse id="settings" label="Keys" />
      <CommandListButton />
    </header>
  )
}
