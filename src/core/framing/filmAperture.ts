import type { Gauge } from '../time/footage.ts'

/** Where the size of an aperture was found. */
export type ApertureSource = 'secondary' | 'from memory'

/** A picture area of a film gauge, in millimetres. */
export type FilmAperture = {
  readonly id: string
  readonly name: string
  readonly gauges: readonly Gauge[]
  /** Whether it is an area that is exposed, so that a scan may have been made of it. */
  readonly isCamera: boolean
  readonly width: number
  readonly height: number
  /** How many times wider than on film it is shown. */
  readonly squeeze: 1 | 2
  /** The middle of it, in millimetres to the right of the middle of the film. */
  readonly offset: number
  /** The standard it is in, by name; '' where none is known. */
  readonly standard: string
  readonly source: ApertureSource
}

/**
 * The areas of a print with a sound track beside the picture lie 1.26 mm to the right (centre line
 * .738 in from the reference edge, middle of the film .6885 in): from memory.
 */
const BESIDE_TRACK = 1.26

const academy = (
  id: string,
  name: string,
  width: number,
  height: number,
  standard = '',
  squeeze: 1 | 2 = 1,
): FilmAperture => ({
  id,
  name,
  gauges: ['35mm-4perf'],
  isCamera: false,
  width,
  height,
  squeeze,
  offset: BESIDE_TRACK,
  standard,
  source: 'secondary',
})

/**
 * Sizes in inches × 25.4, as in facts/film.md §6: 'secondary' were read in publications about film
 * (a film-format summary page, the BKSTS dictionary's appendix B, a textbook), not in the standards
 * themselves, which are named from memory.
 */
export const FILM_APERTURES: readonly FilmAperture[] = [
  {
    ...academy('35-full', 'full aperture', 24.89, 18.67),
    isCamera: true,
    offset: 0,
  },
  {
    ...academy('35-sound', 'sound (Academy) camera aperture', 22, 16, 'SMPTE 59'),
    isCamera: true,
  },
  academy('35-137', 'projector aperture 1.37', 20.96, 15.29, 'SMPTE 195'),
  academy('35-166', 'projector aperture 1.66', 20.96, 12.62, 'SMPTE 195'),
  academy('35-185', 'projector aperture 1.85', 20.96, 11.33, 'SMPTE 195'),
  academy('35-239', 'projector aperture 2.39, squeezed 2 : 1', 20.96, 17.53, 'SMPTE 195', 2),
  academy('35-station', 'television station area', 20.73, 15.54),
  academy('35-transmitted', 'television transmitted area', 20.12, 15.09),
  {
    id: '16-camera',
    name: 'camera aperture',
    gauges: ['16mm'],
    isCamera: true,
    width: 10.26,
    height: 7.49,
    squeeze: 1,
    offset: 0,
    standard: 'SMPTE 7',
    source: 'from memory',
  },
  {
    id: '16-projector',
    name: 'projector aperture 1.33',
    gauges: ['16mm'],
    isCamera: false,
    width: 9.65,
    height: 7.26,
    squeeze: 1,
    offset: 0,
    standard: 'SMPTE 233',
    source: 'from memory',
  },
  {
    id: '16-transmitted',
    name: 'television transmitted area',
    gauges: ['16mm'],
    isCamera: false,
    width: 9.35,
    height: 7,
    squeeze: 1,
    offset: 0,
    standard: '',
    source: 'secondary',
  },
  {
    id: 'super16-camera',
    name: 'camera aperture',
    gauges: ['super16'],
    isCamera: true,
    width: 12.52,
    height: 7.42,
    squeeze: 1,
    offset: 0,
    standard: 'SMPTE 201 type W',
    source: 'from memory',
  },
  {
    id: '8-camera',
    name: 'camera aperture',
    gauges: ['standard8'],
    isCamera: true,
    width: 4.8,
    height: 3.51,
    squeeze: 1,
    offset: 0,
    standard: '',
    source: 'secondary',
  },
  {
    id: '8-projector',
    name: 'projector aperture',
    gauges: ['standard8'],
    isCamera: false,
    width: 4.3,
    height: 3.3,
    squeeze: 1,
    offset: 0,
    standard: '',
    source: 'secondary',
  },
]
