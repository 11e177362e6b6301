import {
  isNull,
  type JsonNode,
  type JsonRecord,
  memberAt,
  memberOf,
  stringOf,
} from '../../base/json/jsonNode.ts'
import { isOf, nameOf } from './otioSchema.ts'

/** The key of a clip's media where it names none (from memory of the library). */
export const DEFAULT_KEY = 'DEFAULT_MEDIA'

/** The media a clip shows: of Clip.1 its one reference, of Clip.2 the active one. */
export const activeMedia = (clip: JsonRecord): JsonNode | undefined => {
  const only = memberOf(clip, 'media_reference')
  if (only) return only
  const key = stringOf(memberOf(clip, 'active_media_reference_key')) ?? DEFAULT_KEY
  return memberAt(clip, 'media_references', key)
}

/** The stretch of its media that a clip shows: its own range, or all there is of the media. */
export const clipRangeNode = (clip: JsonRecord): JsonNode | undefined => {
  const own = memberOf(clip, 'source_range')
  const range = isNull(own) ? memberOf(activeMedia(clip), 'available_range') : own
  return isNull(range) ? undefined : range
}

/** Escapes of a URL taken back, where they are well formed. */
const unescaped = (url: string): string => {
  try {
    return decodeURIComponent(url)
  } catch {
    return url
  }
}

const fileOfUrl = (url: string): string =>
  unescaped(
    url
      .replace(/[?#].*$/su, '')
      .split(/[/\\]/u)
      .at(-1) ?? '',
  )

/** Reel names as translators of event lists put them into metadata. */
const reelName = (clip: JsonRecord): string =>
  ['edl', 'cmx_3600']
    .map((space) => stringOf(memberAt(clip, 'metadata', space, 'reel')) ?? '')
    .find((name) => name !== '') ?? ''

/** The file or reel that a clip's picture comes from; '' where nothing tells. */
export const clipSource = (clip: JsonRecord): string => {
  const media = activeMedia(clip)
  const url = isOf(media, 'ExternalReference') ? stringOf(memberOf(media, 'target_url')) : undefined
  return (url && fileOfUrl(url)) || reelName(clip) || nameOf(media)
}
