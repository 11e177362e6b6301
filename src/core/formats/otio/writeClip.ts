import type { Agreement } from '../../agreement/agreementOf.ts'
import {
  type JsonNode,
  type JsonRecord,
  jsonList,
  jsonRecord,
  jsonString,
  memberAt,
  memberOf,
  stringOf,
  withMember,
} from '../../base/json/jsonNode.ts'
import { jsonNumber } from '../../base/json/plainJson.ts'
import { gradeToCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'
import type { Cue, HeldFrame, Reel } from '../../job/job.ts'
import { BLANK_CLIP } from './blankOtio.ts'
import { DEFAULT_KEY } from './clipMedia.ts'
import { keptParts } from './keptParts.ts'
import { isOf, listOf, nameOf, schemaOf } from './otioSchema.ts'
import { rangeNode } from './otioTime.ts'
import { recordOf, withOwn, withOwnNodes, withReplacing } from './ourMetadata.ts'
import { OWN_VERSION } from './ownMetadata.ts'
import { fromItsFirstFrame, transitionTimes } from './transitionTimes.ts'

/** A cue to be written, and where it lies. Its texts and its reel's have no half characters. */
export type CuePlace = {
  readonly reel: Reel
  readonly cue: Cue
  /** From 1. */
  readonly number: number
  readonly end: number
  /** Frames of the cue before it; 0 before the first. */
  readonly framesBefore: number
  readonly isLast: boolean
  readonly agreement: Agreement
  readonly held: readonly HeldFrame[]
}

const triple = (values: Triple): JsonNode => jsonList(values.map(jsonNumber))

/** The grade as others read it: ASC CDL in metadata, as the event list adapter writes it. */
const withCdl = (clip: JsonRecord, cue: Cue): JsonRecord => {
  const { slope, offset, power, saturation } = gradeToCdl(cue.grade)
  const metadata = recordOf(clip, 'metadata')
  const cdl = recordOf(metadata, 'cdl')
  let sop = recordOf(cdl, 'asc_sop')
  for (const [name, values] of Object.entries({ slope, offset, power }))
    sop = withMember(sop, name, triple(values))
  const whole = withMember(withMember(cdl, 'asc_sop', sop), 'asc_sat', jsonNumber(saturation))
  return withMember(clip, 'metadata', withMember(metadata, 'cdl', whole))
}

/** Everything of the cue in our namespace, exact and as the job file has it. */
const withCue = (clip: JsonRecord, { cue, reel, number, agreement }: CuePlace): JsonRecord =>
  withOwn(clip, {
    version: OWN_VERSION,
    cue: cue.id,
    name: ourName(reel, number),
    grade: cue.grade,
    gradeName: cue.gradeName,
    alternates: cue.alternates,
    ramp: cue.ramp,
    rampShape: cue.rampShape,
    framing: cue.framing,
    scene: cue.scene,
    note: cue.note,
    boundary: cue.boundary,
    agreement,
    answers: cue.answers.map(({ says, by, at, note, sha256 }) => ({ says, by, at, note, sha256 })),
  })

const ourName = (reel: Reel, number: number): string =>
  `${reel.name} cue ${String(number).padStart(4, '0')}`

const scanReference = (reel: Reel): JsonNode =>
  withOwn(
    jsonRecord([
      ['OTIO_SCHEMA', jsonString('ExternalReference.1')],
      ['name', jsonString(reel.name)],
      ['metadata', jsonRecord([])],
      ['target_url', jsonString(encodeURIComponent(reel.media.name))],
      ['available_range', rangeNode(reel.startCount, reel.frames, reel.rate)],
      ['available_image_bounds', { kind: 'word', value: null, at: 0 }],
    ]),
    { reel: reel.id },
  )

/** The references of Clip.2, of which Clip.1 had one. */
const referencesOf = (clip: JsonRecord): JsonRecord => {
  const only = memberOf(clip, 'media_reference')
  return only?.kind === 'record'
    ? jsonRecord([[DEFAULT_KEY, only]])
    : recordOf(clip, 'media_references')
}

/** Whether a reference says nothing, as one for media that is missing often does. */
const isBlankReference = (node: JsonNode | undefined): boolean =>
  isOf(node, 'MissingReference') &&
  nameOf(node) === '' &&
  node.members.every(
    ({ name, value }) =>
      ['OTIO_SCHEMA', 'name'].includes(name) ||
      (value.kind === 'word' && value.value === null) ||
      (value.kind === 'record' && value.members.length === 0),
  )

/** The clip with the scan for the media it shows; references to other media stay beside it. */
const withScan = (clip: JsonRecord, { reel, cue, end }: CuePlace): JsonRecord => {
  const references = referencesOf(clip)
  const there = memberOf(references, DEFAULT_KEY)
  const isFree = there === undefined || isBlankReference(there)
  let key = isFree ? DEFAULT_KEY : 'reelwright'
  while (!isFree && memberOf(references, key)) key = `${key}_scan`
  const active = stringOf(memberOf(clip, 'active_media_reference_key')) ?? DEFAULT_KEY
  const current = withMember(clip, 'OTIO_SCHEMA', jsonString('Clip.2'))
  const newer = withMember(current, 'media_reference', undefined)
  const source = rangeNode(reel.startCount + cue.first, end - cue.first, reel.rate)
  const ranged = withReplacing(newer, 'source_range', source)
  const referred = withMember(
    ranged,
    'media_references',
    withMember(references, key, scanReference(reel)),
  )
  const told = withMember(referred, 'active_media_reference_key', jsonString(active))
  return active === key ? told : withReplacing(told, 'active_media_reference_key', jsonString(key))
}

const marker = (
  name: string,
  comment: string,
  frame: number,
  reel: Reel,
  own: Readonly<Record<string, unknown>>,
): JsonNode =>
  withOwn(
    jsonRecord([
      ['OTIO_SCHEMA', jsonString('Marker.2')],
      ['name', jsonString(name)],
      ['metadata', jsonRecord([])],
      ['color', jsonString('WHITE')],
      ['marked_range', rangeNode(reel.startCount + frame, 1, reel.rate)],
      ['comment', jsonString(comment)],
    ]),
    own,
  )

/** The clip with a marker for its note and for each frame held of it. */
const withMarkers = (clip: JsonRecord, { reel, cue, held }: CuePlace): JsonRecord => {
  const ours = [
    ...(cue.note === '' ? [] : [marker('Note', cue.note, cue.first, reel, { note: cue.id })]),
    ...held.map(({ id, name, frame, grade, framing }) =>
      marker(name, '', frame, reel, { held: id, grade, framing }),
    ),
  ]
  const there = listOf(clip, 'markers')
  return ours.length === 0 ? clip : withMember(clip, 'markers', jsonList([...there, ...ours]))
}

/** Whether something can stand among the clips again without moving one of them. */
const hasPlace = (node: JsonNode, { reel, cue, end, framesBefore }: CuePlace): boolean => {
  if (isOf(node, 'Transition')) {
    const times = transitionTimes(node, reel.rate)
    return times !== undefined && framesBefore > 0 && times.frames <= end - cue.first
  }
  const isKnown = ['Clip', 'Gap', 'Stack', 'Track'].includes(schemaOf(node)?.name ?? '')
  return !isKnown && memberAt(node, 'source_range', 'duration') === undefined
}

/** A transition lies over the first frames of its cue, where reading it placed the cue. */
const placed = (node: JsonNode): JsonNode =>
  node.kind === 'record' && isOf(node, 'Transition') ? fromItsFirstFrame(node) : node

/**
 * A cue as a Clip.2 with what stands before and after it. It is made of what the cue keeps of the
 * list it came from, if anything: only what is the cue's own is written anew. What stood around it
 * and has no place now is kept in our namespace.
 */
export const writeClip = (place: CuePlace): readonly JsonNode[] => {
  const { before, clip, after } = keptParts(place.cue.foreign) ?? {
    before: [],
    clip: BLANK_CLIP,
    after: [],
  }
  const stands = (node: JsonNode) => hasPlace(node, place)
  const follows = (node: JsonNode) => place.isLast && !isOf(node, 'Transition') && stands(node)
  const named =
    nameOf(clip) === ''
      ? withMember(clip, 'name', jsonString(ourName(place.reel, place.number)))
      : clip
  const whole = withMarkers(withCue(withCdl(withScan(named, place), place.cue), place), place)
  const left = withOwnNodes(
    whole,
    'before',
    before.filter((node) => !stands(node)),
  )
  return [
    ...before.filter(stands).map(placed),
    withOwnNodes(
      left,
      'after',
      after.filter((node) => !follows(node)),
    ),
    ...after.filter(follows),
  ]
}
