import { sameGrade } from '../core/colour/grade.ts'
import { sameCoding } from '../core/job/codingOf.ts'
import { createFloatTarget, type FloatTarget } from './floatTarget.ts'
import type { Side } from './previewView.ts'

/** What a graded picture depends on. */
type Graded = Pick<Side, 'planes' | 'coding' | 'grade'>

/** Graded pictures at the scan's own size, kept as long as they are of use. */
export type GradedShelf = {
  /** Begins a drawing for which all of these may be asked. */
  readonly begin: (wanted: readonly Graded[]) => void
  /** The picture, graded unless it is there already. May take the place of one that was drawn. */
  readonly of: (picture: Graded) => FloatTarget
  /** Frees what the drawing had no use for, but for the last two: one may soon be wanted back. */
  readonly tidy: () => void
  readonly dispose: () => void
}

const KEPT = 2

/** With four floats a pixel, seven pictures of 1920×1080 or two larger ones. */
const MOST_BYTES = 240 * 2 ** 20

const isSame = (a: Graded, b: Graded): boolean =>
  a.planes === b.planes && sameGrade(a.grade, b.grade) && sameCoding(a.coding, b.coding)

export const createGradedShelf = (
  gl: WebGL2RenderingContext,
  gradeInto: (target: FloatTarget, picture: Graded) => void,
): GradedShelf => {
  type Entry = { readonly target: FloatTarget; picture: Graded; isWanted: boolean }
  /** The longest unused first. */
  const entries: Entry[] = []

  const moveLast = (entry: Entry): void => {
    const index = entries.indexOf(entry)
    if (index >= 0) entries.splice(index, 1)
    entries.push(entry)
  }
  const freeEntry = ({ planes }: Graded): Entry | undefined => {
    if (entries.length < KEPT) return undefined
    const unwanted = entries.find(({ isWanted }) => !isWanted)
    const most = Math.max(KEPT, Math.floor(MOST_BYTES / (planes.width * planes.height * 16)))
    return unwanted ?? (entries.length < most ? undefined : entries[0])
  }
  return {
    begin: (wanted) => {
      for (const entry of entries)
        entry.isWanted = wanted.some((picture) => isSame(picture, entry.picture))
    },
    of: (picture) => {
      const known = entries.find((entry) => isSame(entry.picture, picture))
      const entry = known ??
        freeEntry(picture) ?? { target: createFloatTarget(gl), picture, isWanted: true }
      moveLast(entry)
      if (entry !== known) {
        entry.picture = picture
        entry.isWanted = true
        gradeInto(entry.target, picture)
      }
      return entry.target
    },
    tidy: () => {
      for (let i = 0; i < entries.length - KEPT; ) {
        if (entries[i]?.isWanted) i++
        else for (const { target } of entries.splice(i, 1)) target.dispose()
      }
    },
    dispose: () => {
      for (const { target } of entries) target.dispose()
    },
  }
}
