import { useMemo } from 'react'
import { checklistOf } from '../../store/transferFacts.ts'
import { useApp, useAppState } from '../appContext.ts'
import { ChecklistLine } from './ChecklistLine.tsx'

/** What stands before a transfer: worked out, not ticked. */
export const Checklist = () => {
  const { store } = useApp()
  // The list as one text, so that it is drawn anew only where something in it differs.
  const told = useAppState((state) => JSON.stringify(checklistOf(state)))
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text stands for what is worked out
  const items = useMemo(() => checklistOf(store.getState()), [store, told])
  return (
    <section aria-label="Before the pass">
      <h2>Before the pass</h2>
      <ul className="checklist">
        {items.map((item) => (
          <ChecklistLine key={item.check} item={item} />
        ))}
      </ul>
    </section>
  )
}
