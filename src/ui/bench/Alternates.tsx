import {
  dropAlternate,
  promoteAlternate,
  renameGrade,
} from '../../core/job/commands/keepAlternate.ts'
import type { Cue } from '../../core/job/job.ts'
import { perform } from '../../store/document.ts'
import { setView } from '../../store/session.ts'
import { useApp } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { GradeName } from './GradeName.tsx'

/** A cue's grades: the one in force and those kept beside it. */
export const Alternates = ({ cue }: { cue: Cue }) => {
  const { store } = useApp()
  const rename = (index: number) => (name: string) =>
    perform(store, (job) => renameGrade(job, cue.id, index, name))
  return (
    <section className="cue-part" aria-label="Alternates">
      <h3>alternates</h3>
      <ul className="alternates">
        <li>
          <GradeName
            label="name of the grade in force"
            name={cue.gradeName}
            onCommit={rename(-1)}
          />
          <span className="strong">● in force</span>
        </li>
        {cue.alternates.map(({ name }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an alternate is known by its place
          <li key={index}>
            <GradeName
              label={`name of alternate ${index + 1}`}
              name={name}
              onCommit={rename(index)}
            />
            <button
              type="button"
              className="button"
              title={`put ${name} in force`}
              onClick={() => perform(store, (job) => promoteAlternate(job, cue.id, index))}
            >
              Promote
            </button>
            <button
              type="button"
              className="button"
              title={`take ${name} away`}
              onClick={() => perform(store, (job) => dropAlternate(job, cue.id, index))}
            >
              Drop
            </button>
          </li>
        ))}
      </ul>
      <div className="button-row">
        <CommandButton id="keep-alternate" label="Keep as alternate" />
        {cue.alternates.length > 0 && (
          <button
            type="button"
            className="button"
            title="shows all grades of this cue side by side"
            onClick={() =>
              setView(store, { arrangement: 'side-by-side', against: { kind: 'alternates' } })
            }
          >
            Compare
          </button>
        )}
      </div>
    </section>
  )
}
