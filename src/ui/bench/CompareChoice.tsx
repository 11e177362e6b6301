import { comparable, compareWith, heldOfReel, sameAgainst } from '../../store/comparing.ts'
import { currentCue } from '../../store/queries.ts'
import type { AppState } from '../../store/state.ts'
import type { Against, Arrangement } from '../../store/view.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'

/** Each is the command of the same name. */
const ARRANGEMENTS: readonly { readonly id: Arrangement; readonly label: string }[] = [
  { id: 'alone', label: 'Alone' },
  { id: 'wipe', label: 'Wipe' },
  { id: 'side-by-side', label: 'Beside' },
  { id: 'difference', label: 'Difference' },
]

/** What a choice is called in the list. */
const nameOf = (state: AppState, against: Against): string => {
  if (against.kind === 'scanned') return 'scanned'
  if (against.kind === 'alternates') return 'all alternates'
  if (against.kind === 'alternate')
    return `alternate ${currentCue(state)?.alternates[against.index]?.name ?? ''}`
  const { id } = against
  const held = heldOfReel(state).find((one) => one.id === id)
  return held?.name ?? state.view.stills.find((one) => one.id === id)?.name ?? 'not there any more'
}

/** How pictures stand to each other, and what the graded one is compared with. */
export const CompareChoice = () => {
  const { store } = useApp()
  const view = useAppState((state) => state.view)
  const isPossible = useAppState(({ media }) => media === 'ready')
  useAppState(({ history }) => history)
  useAppState(currentCue)
  const state = store.getState()
  const listed = comparable(state)
  const chosen = listed.findIndex((one) => sameAgainst(one, view.against))
  const options = chosen < 0 ? [...listed, view.against] : listed
  return (
    <>
      <fieldset className="arrangements" aria-label="Arrangement">
        {ARRANGEMENTS.map(({ id, label }) => (
          <CommandButton key={id} id={id} label={label} isPressed={view.arrangement === id} />
        ))}
      </fieldset>
      <select
        className="compare-with"
        aria-label="Compared with"
        title="what the graded picture is compared with"
        disabled={!isPossible}
        value={chosen < 0 ? listed.length : chosen}
        onChange={(event) => {
          const against = options[Number(event.currentTarget.value)]
          if (against) compareWith(store, against)
        }}
      >
        {options.map((against, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a choice is known by its place
          <option key={index} value={index}>
            {nameOf(state, against)}
          </option>
        ))}
      </select>
    </>
  )
}
