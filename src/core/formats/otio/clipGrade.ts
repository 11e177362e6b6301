import { isNull, type JsonNode, memberAt, memberOf, numberOf } from '../../base/json/jsonNode.ts'
import { type Cdl, cdlToGrade, checkCdl, gradeToCdl } from '../../colour/cdl.ts'
import { type Grade, IDENTITY_GRADE } from '../../colour/grade.ts'
import { sameTriple, type Triple } from '../../colour/triple.ts'
import { checkGrade } from '../../job/checkGrade.ts'
import { quoted } from './otioSchema.ts'
import type { Telling } from './otioTelling.ts'

/** Three numbers; undefined where this is no list of three. */
const tripleOf = (node: JsonNode | undefined): Triple | undefined => {
  if (node?.kind !== 'list' || node.items.length !== 3) return undefined
  const [r, g, b] = node.items.map(numberOf)
  return r === undefined || g === undefined || b === undefined ? undefined : [r, g, b]
}

const sameCdl = (a: Cdl, b: Cdl): boolean =>
  sameTriple(a.slope, b.slope) &&
  sameTriple(a.offset, b.offset) &&
  sameTriple(a.power, b.power) &&
  a.saturation === b.saturation

const IDENTITY = gradeToCdl(IDENTITY_GRADE)

/**
 * The correction in a clip's `metadata.cdl`: `asc_sop` with slope, offset and power of three
 * numbers each, and `asc_sat` (as the event list adapter of OpenTimelineIO writes them). One of
 * the two may be missing. What is amiss is told, and nothing is taken of it.
 */
const readCdl = (clip: JsonNode, { tell }: Telling): Cdl | 'amiss' | undefined => {
  const node = memberAt(clip, 'metadata', 'cdl')
  const sop = memberOf(node, 'asc_sop')
  const sat = memberOf(node, 'asc_sat')
  if (!node || isNull(node)) return undefined
  if (node.kind === 'record' && isNull(sop) && isNull(sat)) return undefined
  const slope = isNull(sop) ? IDENTITY.slope : tripleOf(memberOf(sop, 'slope'))
  const offset = isNull(sop) ? IDENTITY.offset : tripleOf(memberOf(sop, 'offset'))
  const power = isNull(sop) ? IDENTITY.power : tripleOf(memberOf(sop, 'power'))
  const saturation = isNull(sat) ? 1 : numberOf(sat)
  if (node.kind !== 'record' || !slope || !offset || !power || saturation === undefined) {
    tell(
      'malformed',
      `${quoted(clip)}: its “cdl” needs three numbers each for slope, offset and power and one for saturation; its grade is not taken.`,
      node,
    )
    return 'amiss'
  }
  const cdl = { slope, offset, power, saturation }
  const checked = checkCdl(cdl)
  const grade = checked.ok ? checkGrade(cdlToGrade(cdl)) : checked
  if (grade.ok) return cdl
  tell('out-of-range', `${quoted(clip)}: ${grade.problems[0].says} Its grade is not taken.`, node)
  return 'amiss'
}

/**
 * A clip's grade. Our own numbers are exact where the correction beside them is still theirs; where
 * it is another, someone has changed it since, and it counts.
 */
export const readClipGrade = (
  clip: JsonNode,
  own: Grade | undefined,
  telling: Telling,
): Grade | undefined => {
  const cdl = readCdl(clip, telling)
  if (cdl === undefined) return own
  if (cdl === 'amiss') return undefined
  if (own && sameCdl(gradeToCdl(own), cdl)) return own
  if (own)
    telling.tell(
      'conflict',
      `${quoted(clip)}: its “cdl” is not the grade that this program wrote beside it; the “cdl” is taken.`,
      clip,
    )
  return cdlToGrade(cdl)
}
