import type { Hand } from '../../store/preferences.ts'
import { setPreferences } from '../../store/setPreferences.ts'
import { useApp, useAppState } from '../appContext.ts'

const HANDS: readonly { readonly hand: Hand; readonly says: string }[] = [
  { hand: 'left', says: 'left hand on the keys, right hand on the pointer' },
  { hand: 'right', says: 'right hand on the keys, left hand on the pointer' },
]

/** Which of the two layouts the keys come from. */
export const HandChoice = () => {
  const { store } = useApp()
  const chosen = useAppState((state) => state.preferences.hand)
  return (
    <fieldset className="hand-choice">
      <legend>Layout</legend>
      {HANDS.map(({ hand, says }) => (
        <label key={hand}>
          <input
            type="radio"
            name="hand"
            checked={hand === chosen}
            onChange={() => setPreferences(store, { hand })}
          />
          {says}
        </label>
      ))}
      <span className="dim">Keys you have given yourself stay as they are.</span>
    </fieldset>
  )
}
