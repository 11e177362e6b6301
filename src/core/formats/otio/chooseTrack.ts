import { type JsonNode, type JsonRecord, memberOf, stringOf } from '../../base/json/jsonNode.ts'
import { isSound } from './otioForm.ts'
import { isOf, listOf, nameOf, quoted, schemaOf } from './otioSchema.ts'
import type { Telling } from './otioTelling.ts'

/** What of a document the decisions are read from. */
export type Chosen = {
  /** The record with the list's title: a timeline, or what stands for one. */
  readonly titled: JsonNode
  /** Where the list's time begins; undefined where it does not say. */
  readonly globalStart: JsonNode | undefined
  /** Records around the items that shift and trim them, from the outside in. */
  readonly around: readonly JsonRecord[]
  /** The record whose children, or some of them, are the items; undefined: the item is the root. */
  readonly holder: JsonRecord | undefined
  readonly items: readonly JsonNode[]
  /** Whether the items follow one another in time, as those of a collection do not. */
  readonly isInTime: boolean
}

const COMPOSITIONS = ['Stack', 'Track', 'SerializableCollection']

const counts = new WeakMap<JsonNode, number>()

/** Clips in it at any depth. Counted once, since each thing around it asks again. */
export const clipsIn = (node: JsonNode): number => {
  if (isOf(node, 'Clip')) return 1
  if (!COMPOSITIONS.includes(schemaOf(node)?.name ?? '')) return 0
  const known = counts.get(node)
  if (known !== undefined) return known
  const count = listOf(node, 'children').reduce((sum, child) => sum + clipsIn(child), 0)
  counts.set(node, count)
  return count
}

export const isDisabled = (node: JsonNode): boolean => {
  const enabled = memberOf(node, 'enabled')
  return enabled?.kind === 'word' && enabled.value === false
}

/** A track that does not say its kind is of video (from memory of the library's default). */
const isAudio = (node: JsonNode): boolean =>
  isOf(node, 'Track') && (stringOf(memberOf(node, 'kind')) ?? 'Video') !== 'Video'

const layerWords = (layer: JsonNode, number: number): string => {
  const name = nameOf(layer)
  return `${isAudio(layer) ? 'Audio layer' : 'Layer'} ${number}${name === '' ? '' : ` “${name}”`}`
}

/**
 * The layer of a stack that decisions are read from: the first with clips that is no sound,
 * one that is switched off only where there is no other. Tells of each other one with clips.
 */
export const chooseLayer = (stack: JsonRecord, { tell }: Telling): JsonNode | undefined => {
  const layers = listOf(stack, 'children')
  const candidates = layers.filter((layer) => clipsIn(layer) > 0 && !isAudio(layer))
  const chosen = candidates.find((layer) => !isDisabled(layer)) ?? candidates[0]
  for (const [index, layer] of layers.entries()) {
    const clips = clipsIn(layer)
    if (layer === chosen || clips === 0) continue
    tell(
      'not-stated',
      `${layerWords(layer, index + 1)} with ${clips === 1 ? '1 clip' : `${clips} clips`} is not taken: one layer of pictures makes the list. To take it, give it a file of its own.`,
      layer,
    )
  }
  if (chosen && isDisabled(chosen))
    tell('not-stated', 'The layer is switched off in the list, and is taken all the same.', chosen)
  return chosen
}

const chooseInTrack = (track: JsonRecord, titled: JsonNode, around: readonly JsonRecord[]) => ({
  titled,
  globalStart: memberOf(titled, 'global_start_time'),
  around: [...around, track],
  holder: track,
  items: listOf(track, 'children'),
  isInTime: true,
})

const chooseInStack = (
  stack: JsonRecord,
  titled: JsonNode,
  telling: Telling,
): Chosen | undefined => {
  const layer = chooseLayer(stack, telling)
  if (!isOf(layer, 'Track')) {
    const base = chooseInTrack(stack, titled, [])
    return { ...base, items: layer ? [layer] : [] }
  }
  return isSound(layer, telling) ? chooseInTrack(layer, titled, [stack]) : undefined
}

const chooseInCollection = (root: JsonRecord, telling: Telling): Chosen | undefined => {
  const children = listOf(root, 'children')
  const first = children.find(
    (child) => isOf(child, 'Timeline') || (!isOf(child, 'Clip') && clipsIn(child) > 0),
  )
  if (!first) return { ...chooseInTrack(root, root, []), around: [], isInTime: false }
  for (const child of children)
    if (child !== first)
      telling.tell(
        'not-stated',
        `${quoted(child)} of this collection is not taken: “${nameOf(first)}” makes the list. To take it, give it a file of its own.`,
        child,
      )
  return chooseTrack(first, telling)
}

/** What decisions are read from in a document; undefined where it was refused. */
export const chooseTrack = (root: JsonNode, telling: Telling): Chosen | undefined => {
  if (root.kind !== 'record') return undefined
  if (!isSound(root, telling)) return undefined
  switch (schemaOf(root)?.name) {
    case 'Timeline': {
      const stack = memberOf(root, 'tracks')
      if (isOf(stack, 'Stack'))
        return isSound(stack, telling) ? chooseInStack(stack, root, telling) : undefined
      telling.refuse('missing', 'The timeline has no stack of tracks.', stack ?? root)
      return undefined
    }
    case 'Stack':
      return chooseInStack(root, root, telling)
    case 'Track':
      return { ...chooseInTrack(root, root, []), ...(isAudio(root) ? { items: [] } : {}) }
    case 'Clip':
      return {
        ...chooseInTrack(root, root, []),
        around: [],
        holder: undefined,
        items: [root],
        isInTime: false,
      }
    case 'SerializableCollection':
      return chooseInCollection(root, telling)
    default:
      telling.refuse(
        'unknown-format',
        'This is JSON, but no OpenTimelineIO timeline, stack, track, clip or collection of these.',
        root,
      )
      return undefined
  }
}
