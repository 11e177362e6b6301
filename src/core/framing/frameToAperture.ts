import type { Framing } from '../picture/framing.ts'
import type { Gauge } from '../time/footage.ts'
import { FILM_APERTURES, type FilmAperture } from './filmAperture.ts'
import { framingOfBox } from './frameBox.ts'
import { tidyFraming, withinLimit } from './framingLimit.ts'
import { blankingFor } from './openRatio.ts'

/** An area that was scanned, and one inside it that is to be delivered. */
export type AperturePreset = { readonly scanned: FilmAperture; readonly wanted: FilmAperture }

/** The presets of a gauge: each area that a camera exposes with each that lies inside it. */
export const aperturePresets = (gauge: Gauge): readonly AperturePreset[] => {
  const own = FILM_APERTURES.filter(({ gauges }) => gauges.includes(gauge))
  return own
    .filter(({ isCamera }) => isCamera)
    .flatMap((scanned) =>
      own
        .filter(
          (area) =>
            area !== scanned && area.width <= scanned.width && area.height <= scanned.height,
        )
        .map((wanted) => ({ scanned, wanted })),
    )
}

/** Shapes this near are taken as one: an area whose ratio is rounded needs no hair of blanking. */
const SAME_SHAPE = 0.005

/**
 * The framing that delivers one area of the film from the scan of another: the wanted area whole,
 * unsqueezed, and blanked to its ratio. The scanned area is taken to lie in the middle of the scan,
 * as large as it fits; sideways the areas lie as their offsets say, up and down in the middle
 * (common practice, no published source). Rotation stays.
 */
export const frameToAperture = (
  from: Framing,
  aspect: number,
  { scanned, wanted }: AperturePreset,
): Framing => {
  const scale = Math.min(aspect / scanned.width, 1 / scanned.height)
  const { squeeze } = wanted
  const ratio = (wanted.width * squeeze) / wanted.height
  const isSameShape = Math.abs(ratio / aspect - 1) < SAME_SHAPE
  const height = scale * Math.max(wanted.height, (wanted.width * squeeze) / aspect)
  const box = {
    middle: [aspect / 2 + (wanted.offset - scanned.offset) * scale, 0.5] as const,
    width: (aspect * height) / squeeze,
    height,
    rotation: from.rotation,
  }
  const framing = framingOfBox(box, aspect, isSameShape ? 0 : blankingFor(ratio, aspect))
  return tidyFraming({ ...framing, zoom: withinLimit('zoom', framing.zoom) })
}
