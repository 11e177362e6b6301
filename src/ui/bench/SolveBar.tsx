import { useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { SolveMatch } from './SolveMatch.tsx'

/** What looks for a grade by itself, each shown before it is kept. */
export const SolveBar = () => {
  const isPicking = useAppState(({ pointing }) => pointing.mode === 'neutral')
  return (
    <div className="solve-bar" role="toolbar" aria-label="Look for a grade">
      <CommandButton id="bring-inside" label="Bring inside" isTerse />
      <CommandButton id="neutral-here" label="Neutral here" isPressed={isPicking} isTerse />
      <SolveMatch />
    </div>
  )
}
