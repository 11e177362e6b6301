import { CARRIED_PARTS } from '../../core/job/commands/carryValues.ts'
import { setCarried } from '../../store/carrying.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'

/** What goes from this cue to others, and the parts of it that do. */
export const CarryPanel = () => {
  const { store } = useApp()
  const carried = useAppState((state) => state.carriedParts)
  return (
    <section aria-label="Carry" className="carry-panel">
      <h3>carry</h3>
      <fieldset className="carried-parts" aria-label="Parts that are carried">
        {CARRIED_PARTS.map((part) => (
          <label key={part}>
            <input
              type="checkbox"
              checked={carried.includes(part)}
              onChange={(event) => setCarried(store, part, event.currentTarget.checked)}
            />
            {part}
          </label>
        ))}
      </fieldset>
      <div className="button-row">
        <CommandButton isTerse id="copy-values" label="Copy" />
        <CommandButton isTerse id="paste-values" label="Paste" />
        <CommandButton isTerse id="carry-next" label="To next" />
        <CommandButton isTerse id="carry-scene" label="To scene" />
        <CommandButton isTerse id="carry-previous" label="From before" />
      </div>
    </section>
  )
}
