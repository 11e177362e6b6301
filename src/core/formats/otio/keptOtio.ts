import {
  type JsonMember,
  type JsonNode,
  type JsonRecord,
  jsonList,
  jsonRecord,
  jsonString,
  jsonWord,
  memberAt,
  memberOf,
  stringOf,
  withMember,
} from '../../base/json/jsonNode.ts'
import { writeJsonTree } from '../../base/json/writeJsonTree.ts'
import { BLANK_CLIP, BLANK_TRACK, stackOf, timelineOf } from './blankOtio.ts'
import type { Chosen } from './chooseTrack.ts'
import { DEFAULT_KEY } from './clipMedia.ts'
import { listOf } from './otioSchema.ts'
import { isOfOurHand, OWN, OWN_OF_CLIP, OWN_OF_TIMELINE, ownOf } from './ownMetadata.ts'

/** A record with one of its children, told by being the very same, taken out. */
export const withoutItem = (holder: JsonRecord, item: JsonNode): JsonRecord =>
  withMember(
    holder,
    'children',
    jsonList(listOf(holder, 'children').filter((child) => child !== item)),
  )

/** A document with one record in it put in place of another, wherever in it that is. */
const withReplaced = (node: JsonNode, from: JsonNode, to: JsonNode): JsonNode => {
  if (node === from) return to
  if (node.kind !== 'record') return node
  return ['tracks', 'children'].reduce<JsonRecord>((record, name) => {
    const inside = memberOf(record, name)
    if (inside?.kind === 'list') {
      const items = inside.items.map((item) => withReplaced(item, from, to))
      const isSame = items.every((item, index) => item === inside.items[index])
      return isSame ? record : withMember(record, name, jsonList(items))
    }
    const replaced = inside && withReplaced(inside, from, to)
    return replaced === inside ? record : withMember(record, name, replaced)
  }, node)
}

/** A record with what is left in our namespace of its metadata; without it where nothing is. */
const withOwnLeft = (record: JsonRecord, left: JsonRecord): JsonRecord => {
  const metadata = memberOf(record, 'metadata')
  if (metadata?.kind !== 'record') return record
  const own = left.members.length > 0 ? left : undefined
  return withMember(record, 'metadata', withMember(metadata, OWN, own))
}

/** What stood in these fields before this program wrote its own there, put back. */
const withRestored = (record: JsonRecord, names: readonly string[]): JsonRecord => {
  const own = ownOf(record)
  const replaced = memberOf(own, 'replaced')
  if (!own || replaced?.kind !== 'record') return record
  const isRestored = ({ name }: JsonMember) => names.includes(name)
  const rest = { ...replaced, members: replaced.members.filter((each) => !isRestored(each)) }
  const left = withMember(own, 'replaced', rest.members.length > 0 ? rest : undefined)
  return replaced.members
    .filter(isRestored)
    .reduce((all, { name, value }) => withMember(all, name, value), withOwnLeft(record, left))
}

/** A record without those fields in our namespace that are read, or written anew. */
const withoutOwn = (record: JsonRecord, names: readonly string[]): JsonRecord => {
  const own = ownOf(record)
  return own
    ? withOwnLeft(record, {
        ...own,
        members: own.members.filter(({ name }) => !names.includes(name)),
      })
    : record
}

const unlessEmpty = (node: JsonRecord): JsonRecord | undefined =>
  node.members.length > 0 ? node : undefined

/** A clip's metadata without the numbers that its grade was taken from. */
const withoutCdl = (clip: JsonRecord): JsonRecord => {
  const metadata = memberOf(clip, 'metadata')
  const cdl = memberOf(metadata, 'cdl')
  if (metadata?.kind !== 'record' || cdl?.kind !== 'record') return clip
  const sop = memberOf(cdl, 'asc_sop')
  const restOfSop =
    sop?.kind === 'record'
      ? unlessEmpty(
          ['slope', 'offset', 'power'].reduce((all, name) => withMember(all, name, undefined), sop),
        )
      : undefined
  const rest = withMember(withMember(cdl, 'asc_sop', restOfSop), 'asc_sat', undefined)
  return withMember(clip, 'metadata', withMember(metadata, 'cdl', unlessEmpty(rest)))
}

/** Whether this program wrote a marker or a reference to media. */
export const isOurs = (node: JsonNode): boolean => memberAt(node, 'metadata', OWN) !== undefined

const hasOurName = (record: JsonRecord, own: JsonRecord): boolean => {
  const name = stringOf(memberOf(own, 'name'))
  return name !== undefined && name === stringOf(memberOf(record, 'name'))
}

/** A clip without the reference to the scan that this program put among its media. */
const withoutScan = (clip: JsonRecord): JsonRecord => {
  const references = memberOf(clip, 'media_references')
  if (references?.kind !== 'record') return clip
  const theirs = references.members.filter(({ value }) => !isOurs(value))
  const active = stringOf(memberOf(clip, 'active_media_reference_key')) ?? DEFAULT_KEY
  const isScanActive = theirs.every(({ name }) => name !== active)
  if (theirs.length === references.members.length) return clip
  const kept = withMember(clip, 'media_references', { ...references, members: theirs })
  if (!isScanActive) return kept
  const unset = withMember(
    withMember(kept, 'source_range', jsonWord(null)),
    'active_media_reference_key',
    jsonString(DEFAULT_KEY),
  )
  return withRestored(unset, ['source_range', 'active_media_reference_key'])
}

/** What stood around a clip and had no place any more when this program wrote it. */
const setAside = (clip: JsonRecord, name: 'before' | 'after'): readonly JsonNode[] =>
  listOf(ownOf(clip), name)

/** A clip that this program wrote, without what it writes anew from the cue. */
const withoutOurClip = (clip: JsonRecord, hasGrade: boolean): JsonRecord => {
  const own = ownOf(clip)
  if (!own || !isOfOurHand(own)) return clip
  const ungraded = hasGrade ? withoutCdl(clip) : clip
  const unnamed = hasOurName(clip, own) ? withMember(ungraded, 'name', jsonString('')) : ungraded
  const markers = listOf(clip, 'markers')
  const theirs = markers.filter((marker) => !isOurs(marker))
  const unmarked =
    theirs.length < markers.length ? withMember(unnamed, 'markers', jsonList(theirs)) : unnamed
  return withoutOwn(withoutScan(unmarked), [...OWN_OF_CLIP, 'before', 'after'])
}

const inOneLine = (node: JsonNode): string => writeJsonTree(node, 0)

const NOTHING_OF_CLIP = inOneLine(BLANK_CLIP)

/**
 * What is kept of a clip and of what stands around it that is none, as JSON text: the clip alone,
 * or a record of `before`, `clip` and `after` where there is more. undefined where all of it was
 * taken, as it is with a clip that this program wrote.
 */
export const keptOfClip = (
  clip: JsonRecord,
  before: readonly JsonNode[],
  after: readonly JsonNode[],
  hasGrade: boolean,
): string | undefined => {
  const kept = withoutOurClip(clip, hasGrade)
  const isOfOurs = kept !== clip
  const lead = isOfOurs ? [...setAside(clip, 'before'), ...before] : before
  const trail = isOfOurs ? [...setAside(clip, 'after'), ...after] : after
  if (lead.length > 0 || trail.length > 0)
    return inOneLine(
      jsonRecord([
        ['before', jsonList(lead)],
        ['clip', kept],
        ['after', jsonList(trail)],
      ]),
    )
  const text = inOneLine(kept)
  return text === NOTHING_OF_CLIP ? undefined : text
}

const NOTHING_OF_TIMELINE = inOneLine(timelineOf(stackOf([BLANK_TRACK])))

/** A timeline that this program wrote, without what it writes anew from the job. */
const withoutOurTimeline = (timeline: JsonRecord): JsonRecord => {
  const own = ownOf(timeline)
  if (!own || !isOfOurHand(own)) return timeline
  const unset = withMember(timeline, 'global_start_time', jsonWord(null))
  const unnamed = hasOurName(timeline, own) ? withMember(unset, 'name', jsonString('')) : unset
  return withoutOwn(withRestored(unnamed, ['global_start_time']), OWN_OF_TIMELINE)
}

/** What held the clips, without them and with its own range where this program set that aside. */
const emptied = ({ holder, items }: Chosen): JsonRecord | undefined => {
  if (!holder) return undefined
  const [only] = items
  const isAll = listOf(holder, 'children').length === items.length
  const empty =
    isAll || !only ? withMember(holder, 'children', undefined) : withoutItem(holder, only)
  return withRestored(empty, ['source_range'])
}

/**
 * What is kept of a document as a whole, as JSON text: all of it but the children of what its
 * decisions were read from. undefined where nothing is left.
 */
export const keptOfDocument = (root: JsonNode, chosen: Chosen): string | undefined => {
  const { titled, holder } = chosen
  const empty = emptied(chosen)
  if (!holder || !empty || titled.kind !== 'record') return undefined
  const stack = memberOf(titled, 'tracks')
  const timeline = withoutOurTimeline(titled)
  const stacked =
    stack?.kind === 'record' && stack !== holder
      ? withMember(
          timeline,
          'tracks',
          withReplaced(withRestored(stack, ['source_range']), holder, empty),
        )
      : withReplaced(timeline, holder, empty)
  const text = inOneLine(withReplaced(root, titled, holder === titled ? empty : stacked))
  return text === NOTHING_OF_TIMELINE ? undefined : text
}
