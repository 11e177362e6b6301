import { COMMON_SUBJECTS } from '../../core/formats/commonSubjects.ts'
import { HAND_OVER_FORMATS } from '../../core/formats/handOverFormats.ts'
import type { Loss, LossExtent } from '../../core/formats/loss.ts'
import { FORMATS_HANDED_OVER, type PreparedFormat } from '../../core/formats/prepareFormat.ts'
import { Scroller } from '../parts/Scroller.tsx'
import type { Prepared } from './usePrepared.ts'

/** How much is carried, as a shape beside the word. */
const SIGNS: Readonly<Record<LossExtent, string>> = {
  'left out': '○',
  'kept, not applied': '◐',
  rounded: '◐',
  'in part': '◐',
}

/** Every subject that some format loses: those that all are asked about first. */
const subjectsOf = (prepared: Prepared): readonly string[] => {
  const told = FORMATS_HANDED_OVER.flatMap(
    (format) => prepared.get(format)?.losses.map(({ subject }) => subject) ?? [],
  )
  const isCommon = (subject: string) => COMMON_SUBJECTS.has(subject)
  return [...new Set([...told.filter(isCommon), ...told])]
}

/** What each list carries of the reel and what not, subject by subject: all of it at a glance. */
export const FormatTable = ({ prepared }: { prepared: Prepared }) => {
  const formats = FORMATS_HANDED_OVER.flatMap((format) => prepared.get(format) ?? [])
  const subjects = subjectsOf(prepared)
  return (
    <section aria-label="All formats" className="whole-width">
      <h2>What each file carries of this reel</h2>
      <Scroller label="What each file carries">
        <table className="format-table">
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">Subject</span>
              </th>
              <th scope="col">
                The job itself <span className="dim">.json</span>
              </th>
              {formats.map(({ format }) => (
                <th scope="col" key={format}>
                  {HAND_OVER_FORMATS[format].title}{' '}
                  <span className="dim">.{HAND_OVER_FORMATS[format].extension}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {subjects.map((subject) => (
              <tr key={subject}>
                <th scope="row">{subject}</th>
                <td className="dim">{COMMON_SUBJECTS.has(subject) ? <Carried /> : <NotAsked />}</td>
                {formats.map((part) => (
                  <Cell key={part.format} part={part} subject={subject} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroller>
      {subjects.length === 0 && <p role="status">Looking at what each format carries…</p>}
    </section>
  )
}

const Carried = () => (
  <>
    <span aria-hidden="true">● </span>carried
  </>
)

/** A matter of another format. */
const NotAsked = () => (
  <>
    <span aria-hidden="true">–</span>
    <span className="unseen">does not arise</span>
  </>
)

const countOf = (losses: readonly Loss[]): number =>
  new Set(losses.flatMap(({ cues }) => cues)).size

const Cell = ({ part, subject }: { part: PreparedFormat; subject: string }) => {
  const losses = part.losses.filter((loss) => loss.subject === subject)
  const [first] = losses
  if (part.problems.length > 0) return <td className="dim">not written</td>
  if (!first)
    return <td className="dim">{COMMON_SUBJECTS.has(subject) ? <Carried /> : <NotAsked />}</td>
  const extents = losses.map(({ extent }) => extent)
  const extent = extents.includes('left out') ? 'left out' : (extents[0] ?? 'left out')
  const cues = countOf(losses)
  return (
    <td title={losses.map(({ says, done }) => `${says} ${done}`).join('\n')}>
      <span aria-hidden="true">{SIGNS[extent]} </span>
      {extent}
      {cues > 0 && (
        <span className="dim">
          {' '}
          {cues} {cues === 1 ? 'cue' : 'cues'}
        </span>
      )}
    </td>
  )
}
