import * as v from 'valibot'
import {
  ASPECTS,
  MOST_SHRINKAGE,
  MOST_SOUND_AHEAD,
  MOST_SPLICES,
} from '../../film/checkParticulars.ts'
import {
  COLOURINGS,
  DEGREES,
  ELEMENTS,
  MARK_KINDS,
  SUPPORTS,
  TRACKS,
} from '../../film/particulars.ts'
import { MOST_FILM_MARKS, NAME_LIMIT, WORDS_LIMIT } from '../../job/limits.ts'
import { finite, text, wholeFrom } from './schemaParts.ts'

export const rateSchema = v.strictObject({ num: wholeFrom(1), den: wholeFrom(1) })

const between = (low: number, high: number) => v.pipe(finite, v.minValue(low), v.maxValue(high))

const degree = v.picklist(DEGREES)

export const particularsSchema = v.pipe(
  v.strictObject({
    element: v.picklist(ELEMENTS),
    colouring: v.picklist(COLOURINGS),
    support: v.picklist(SUPPORTS),
    shrinkage: v.pipe(
      v.nullable(between(0, MOST_SHRINKAGE)),
      v.description('Part by which it has shrunk; null: not measured.'),
    ),
    vinegar: degree,
    perforations: v.pipe(degree, v.description('How damaged the perforations are.')),
    fading: degree,
    mould: degree,
    splices: v.nullable(v.pipe(wholeFrom(0), v.maxValue(MOST_SPLICES))),
    sound: v.picklist(TRACKS),
    soundAhead: v.pipe(
      v.nullable(between(-MOST_SOUND_AHEAD, MOST_SOUND_AHEAD)),
      v.description('Frames by which sound runs ahead of its picture; null: not measured.'),
    ),
    speed: v.pipe(
      v.nullable(rateSchema),
      v.description('Frames a second it was made for; null: not known.'),
    ),
    aspect: v.pipe(
      v.nullable(between(...ASPECTS)),
      v.description('Width over height of the picture; null: not known.'),
    ),
    leader: text(WORDS_LIMIT),
    edgeNumbers: text(WORDS_LIMIT),
    notes: text(WORDS_LIMIT),
    marks: v.pipe(
      v.array(
        v.strictObject({
          frame: wholeFrom(0),
          kind: v.picklist(MARK_KINDS),
          says: text(WORDS_LIMIT),
        }),
      ),
      v.maxLength(MOST_FILM_MARKS),
    ),
  }),
  v.description('What is in the can, as it was found; nothing here decides a picture.'),
)

export const guideSchema = v.pipe(
  v.nullable(
    v.strictObject({
      name: text(NAME_LIMIT),
      madeFor: rateSchema,
      mark: v.pipe(
        v.strictObject({ frame: wholeFrom(0), seconds: finite }),
        v.description('What is heard there belongs to that frame.'),
      ),
    }),
  ),
  v.description('A sound file that runs with the picture; null: none.'),
)
