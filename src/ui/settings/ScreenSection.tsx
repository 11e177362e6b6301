import { TEXT_SIZES, type TextSize } from '../../store/preferences.ts'
import { setPreferences } from '../../store/setPreferences.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'

/** How large everything is, and whether hints are shown. */
export const ScreenSection = () => {
  const { store } = useApp()
  const { textSize, showsHints, hintsSeen } = useAppState((state) => state.preferences)
  return (
    <div className="screen-section">
      <Choice
        label="Size of text and controls"
        options={TEXT_SIZES.map((size) => ({ id: String(size), label: `${size} %` }))}
        value={String(textSize)}
        onChange={(id) => setPreferences(store, { textSize: Number(id) as TextSize })}
      />
      <label>
        <input
          type="checkbox"
          checked={showsHints}
          onChange={(event) => setPreferences(store, { showsHints: event.currentTarget.checked })}
        />
        Show hints
      </label>
      <div>
        <button
          type="button"
          className="button"
          disabled={hintsSeen.length === 0}
          onClick={() => setPreferences(store, { hintsSeen: [], showsHints: true })}
        >
          Show all hints again
        </button>
      </div>
      <p className="dim">
        What is set here is kept in this browser, not in the job. Motion follows the setting of the
        system.
      </p>
    </div>
  )
}
