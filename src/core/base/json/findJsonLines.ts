import { linePlaces } from './linePlaces.ts'
import { speltString } from './readJsonTree.ts'
import { scanJson } from './scanJson.ts'

/** What is looked for below a place, and where that was found. */
type Wanted = { at: number | undefined; readonly inside: Map<string, Wanted> }

const newWanted = (): Wanted => ({ at: undefined, inside: new Map() })

/** A record or list that is open: what is wanted of it, and the step to what comes next in it. */
type Open = {
  readonly wanted: Wanted | undefined
  readonly isRecord: boolean
  step: string | number
}

/**
 * The line, from 1, of each of these paths (such as `cues.3.grade.gain.0`, lists counted from 0) in
 * a JSON text; where there is nothing at a path, the line of the last of its steps that is there.
 * Of a name that is there twice the last counts, as it does for `JSON.parse`. Goes through the text
 * once, whatever the number of paths, and builds no tree of it.
 */
export const findJsonLines = (text: string, paths: readonly string[]): readonly number[] => {
  const root = newWanted()
  for (const path of paths) {
    let wanted = root
    for (const step of path.split('.')) {
      const next = wanted.inside.get(step) ?? newWanted()
      wanted.inside.set(step, next)
      wanted = next
    }
  }
  const open: Open[] = []
  const found = (at: number): Wanted | undefined => {
    const inside = open.at(-1)
    const wanted = inside ? inside.wanted?.inside.get(String(inside.step)) : root
    if (inside && typeof inside.step === 'number') inside.step++
    if (wanted) wanted.at = at
    return wanted
  }
  scanJson(text, {
    open: (isRecord, at) => {
      const wanted = found(at)
      open.push({ wanted, isRecord, step: isRecord ? '' : 0 })
      return undefined
    },
    close: () => {
      open.pop()
    },
    name: (spelt) => {
      const record = open.at(-1)
      if (record?.wanted) record.step = speltString(spelt)
      return undefined
    },
    scalar: (_, at) => {
      found(at)
      return undefined
    },
  })
  const placeOf = linePlaces(text)
  return paths.map((path) => {
    let { at, inside } = root
    for (const step of path.split('.')) {
      const next = inside.get(step)
      if (next?.at === undefined) break
      ;({ at, inside } = next)
    }
    return placeOf(at ?? 0).line
  })
}
