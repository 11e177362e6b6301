import { type JsonNode, type JsonRecord, withMember } from '../../base/json/jsonNode.ts'
import type { Rate } from '../../time/rate.ts'
import { chooseLayer, clipsIn } from './chooseTrack.ts'
import { withoutItem } from './keptOtio.ts'
import { type Laid, type LaidClip, lengthOf, rangeOf, shifted, trimmed } from './laidClips.ts'
import { isSound, refusesNewer } from './otioForm.ts'
import { isOf, listOf, quoted } from './otioSchema.ts'
import type { Telling } from './otioTelling.ts'
import { timeInFrames } from './otioTime.ts'

/** Clips, then what each thing around them makes of them, from the inside out. */
export const layWithin = (
  items: readonly JsonNode[],
  around: readonly JsonRecord[],
  frameRate: Rate,
  telling: Telling,
): Laid =>
  around.reduceRight(
    (laid, holder) => trimmed(laid, holder, frameRate, telling),
    layClips(items, frameRate, telling),
  )

/** The clips of a stack or track that stands among clips. */
const layNested = (holder: JsonRecord, frameRate: Rate, telling: Telling): Laid => {
  const length = lengthOf(holder, frameRate)
  const layer = isOf(holder, 'Stack') ? chooseLayer(holder, telling) : holder
  if (layer?.kind !== 'record' || clipsIn(layer) === 0 || !isSound(layer, telling))
    return { clips: [], length, after: [holder] }
  telling.tell(
    'not-stated',
    `${quoted(holder)} stands among clips: its own clips are taken as if they stood there.`,
    holder,
  )
  const isTrack = isOf(layer, 'Track')
  const around = layer === holder ? [holder] : isTrack ? [holder, layer] : [holder]
  const items = isTrack ? listOf(layer, 'children') : [layer]
  const laid = layWithin(items, around, frameRate, telling)
  const [first, ...rest] = laid.clips
  if (!first) return { clips: [], length, after: [holder] }
  const kept = [
    ...(layer === holder ? [] : [withoutItem(holder, layer)]),
    ...(isTrack ? [withMember(layer, 'children', undefined)] : []),
  ]
  return { ...laid, length, clips: [{ ...first, before: [...kept, ...first.before] }, ...rest] }
}

/** How far the items of a track are laid. */
type Laying = {
  readonly clips: LaidClip[]
  /** Where the next item begins; undefined where that cannot be told. */
  at: number | undefined
  /** What stands before the next clip and is none, a transition into it too. */
  loose: JsonNode[]
  transition: JsonRecord | undefined
}

const later = (at: number | undefined, by: number | undefined): number | undefined =>
  at === undefined || by === undefined ? undefined : at + by

/** Lays clips that begin where the next item does; the first has what stands before it. */
const layOn = (laying: Laying, { clips: [first, ...rest], after }: Omit<Laid, 'length'>): void => {
  if (first) {
    const { transition, loose, at } = laying
    const before = loose.length === 0 ? first.before : [...loose, ...first.before]
    const led = { ...first, before, transition: transition ?? first.transition }
    for (const each of [led, ...rest]) laying.clips.push(shifted(each, at))
    laying.transition = undefined
    laying.loose = []
  }
  for (const node of after) laying.loose.push(node)
}

const leaveTransition = (laying: Laying, { tell }: Telling): void => {
  const { transition } = laying
  if (transition)
    tell('not-stated', `${quoted(transition)} leads into no clip, and is only kept.`, transition)
  laying.transition = undefined
}

const layClip = (
  laying: Laying,
  clip: JsonRecord,
  length: number | undefined,
  { tell }: Telling,
): void => {
  if (length === undefined)
    tell(
      'missing',
      `${quoted(clip)} does not say how long it is: where it ends and what follows cannot be told.`,
      clip,
    )
  const laid = { clip, from: 0, to: length, head: 0, transition: undefined, before: [] }
  layOn(laying, { clips: [laid], after: [] })
  laying.at = later(laying.at, length)
}

/** Clips one after another, as the items of a track lie. */
export const layClips = (items: readonly JsonNode[], frameRate: Rate, telling: Telling): Laid => {
  const laying: Laying = { clips: [], at: 0, loose: [], transition: undefined }
  for (const item of items) {
    if (refusesNewer(item, telling)) continue
    if (isOf(item, 'Stack') || isOf(item, 'Track')) {
      if (!isSound(item, telling)) continue
      const laid = layNested(item, frameRate, telling)
      if (laid.clips.length === 0) leaveTransition(laying, telling)
      layOn(laying, laid)
      laying.at = later(laying.at, laid.length)
      continue
    }
    const range = item.kind === 'record' ? rangeOf(item, telling) : undefined
    const length = range && timeInFrames(range.duration, frameRate)
    if (isOf(item, 'Clip')) {
      if (!isSound(item, telling)) continue
      layClip(laying, item, length, telling)
      continue
    }
    leaveTransition(laying, telling)
    laying.loose.push(item)
    if (isOf(item, 'Transition')) laying.transition = item
    else if (isOf(item, 'Gap')) laying.at = later(laying.at, length)
    else {
      telling.tell(
        'unknown-format',
        `${quoted(item)} is not known here, and is only kept${range ? '' : '; it is taken to last no time'}.`,
        item,
      )
      laying.at = later(laying.at, length ?? 0)
    }
  }
  leaveTransition(laying, telling)
  return { clips: laying.clips, length: laying.at, after: laying.loose }
}
