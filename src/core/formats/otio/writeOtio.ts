import { agreementOf } from '../../agreement/agreementOf.ts'
import {
  type JsonNode,
  type JsonRecord,
  jsonList,
  jsonString,
  memberOf,
  withMember,
} from '../../base/json/jsonNode.ts'
import { writeJsonTree } from '../../base/json/writeJsonTree.ts'
import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { cueEnd, cuesOfReel } from '../../job/cueList.ts'
import type { HeldFrame, Job, Reel } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { profileById } from '../../tolerance/findProfile.ts'
import { fileNameOf } from '../listNames.ts'
import { BLANK_TRACK, stackOf, timelineOf } from './blankOtio.ts'
import { keptDocument } from './keptParts.ts'
import { isOf, listOf, nameOf } from './otioSchema.ts'
import { timeNode } from './otioTime.ts'
import { withOwn, withReplacing, withWholeCharacters } from './ourMetadata.ts'
import { OWN_VERSION } from './ownMetadata.ts'
import { writeClip } from './writeClip.ts'

const clipsOf = (job: Job, reel: Reel): readonly JsonNode[] => {
  const cues = cuesOfReel(job, reel.id)
  const held = Object.values<HeldFrame>(job.held)
    .filter((each) => each.reel === reel.id)
    .map(withWholeCharacters)
  return cues.flatMap((cue, index) => {
    const end = cueEnd(cues, index, reel.frames)
    return writeClip({
      reel,
      cue: { ...withWholeCharacters({ ...cue, foreign: [] }), foreign: cue.foreign },
      number: index + 1,
      end,
      framesBefore: cue.first - (cues[index - 1]?.first ?? cue.first),
      isLast: index === cues.length - 1,
      agreement: agreementOf(job, cue),
      held: held
        .filter(({ frame }) => frame >= cue.first && frame < end)
        .toSorted((a, b) => a.frame - b.frame || (a.id < b.id ? -1 : 1)),
    })
  })
}

/** Whether this is the track whose items became the cues: what is kept of it has no children. */
const isOpenTrack = (node: JsonNode): node is JsonRecord =>
  isOf(node, 'Track') && memberOf(node, 'children') === undefined

/** A track with the cues in it. Its own range would shift and cut them, and is set aside. */
const filledTrack = (track: JsonRecord, clips: readonly JsonNode[]): JsonRecord =>
  withMember(withReplacing(track, 'source_range', undefined), 'children', jsonList(clips))

/** A stack with the cues in its open track, or in a track put first where it has none. */
const filledStack = (stack: JsonRecord, clips: readonly JsonNode[]): JsonRecord => {
  const layers = listOf(stack, 'children')
  const open = layers.find(isOpenTrack)
  const filled = filledTrack(open ?? BLANK_TRACK, clips)
  const children = open
    ? layers.map((layer) => (layer === open ? filled : layer))
    : [filled, ...layers]
  return withMember(withReplacing(stack, 'source_range', undefined), 'children', jsonList(children))
}

type OurTimeline = (stack: JsonRecord, timeline?: JsonRecord) => JsonRecord

const holdsOpenTrack = (node: JsonNode): boolean =>
  isOpenTrack(node) ||
  [memberOf(node, 'tracks'), ...listOf(node, 'children')].some(
    (inside) => inside !== undefined && holdsOpenTrack(inside),
  )

/** The kept document with our timeline where the list's own was. */
const documentWith = (kept: JsonRecord | undefined, timelineWith: OurTimeline): JsonRecord => {
  if (isOf(kept, 'Stack')) return timelineWith(kept)
  if (isOf(kept, 'Track')) return timelineWith(stackOf([kept]))
  if (isOf(kept, 'Timeline')) {
    const stack = memberOf(kept, 'tracks')
    return timelineWith(isOf(stack, 'Stack') ? stack : stackOf([BLANK_TRACK]), kept)
  }
  if (!isOf(kept, 'SerializableCollection')) return timelineWith(stackOf([BLANK_TRACK]))
  const children = listOf(kept, 'children')
  const place = children.findIndex(holdsOpenTrack)
  const inside = children[place]
  const ours = documentWith(inside?.kind === 'record' ? inside : undefined, timelineWith)
  const all = place < 0 ? [ours, ...children] : children.with(place, ours)
  return withMember(kept, 'children', jsonList(all))
}

const toleranceOf = ({ info }: Job): unknown => {
  const { tolerance, profiles } = info.job
  return withWholeCharacters(profileById(tolerance, profiles) ?? { id: tolerance })
}

/**
 * A reel's cues as an OpenTimelineIO timeline (Timeline.1, Clip.2, Marker.2: what releases up to
 * 0.18.1 write): one track of pictures, a clip a cue, each with the scan as its media, its grade as
 * ASC CDL in `metadata.cdl`, and everything else of it in `metadata.reelwright` (reel, base and
 * tolerance in that of the timeline). Where the reel's
 * list was read from OpenTimelineIO, all that was in it is written back around that.
 */
export const writeOtio = (
  job: Job,
  reelId: ReelId,
): Result<{ readonly files: readonly { readonly name: string; readonly text: string }[] }> => {
  const there = job.reels[reelId]
  if (!there) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  const reel = { ...withWholeCharacters({ ...there, foreign: [] }), foreign: there.foreign }
  const title = withWholeCharacters(job.info.job.title)
  const clips = clipsOf(job, reel)
  const start = timeNode(reel.startCount, reel.rate)
  const document = documentWith(keptDocument(reel.foreign), (stack, timeline) => {
    const filled = filledStack(stack, clips)
    const base = timeline ? withMember(timeline, 'tracks', filled) : timelineOf(filled)
    const named = nameOf(base) === '' ? withMember(base, 'name', jsonString(title)) : base
    const { foreign: _, ...ofReel } = reel
    return withOwn(withReplacing(named, 'global_start_time', start), {
      version: OWN_VERSION,
      name: title,
      reel: ofReel,
      tolerance: toleranceOf(job),
    })
  })
  return ok({ files: [{ name: `${fileNameOf(reel)}.otio`, text: `${writeJsonTree(document)}\n` }] })
}
