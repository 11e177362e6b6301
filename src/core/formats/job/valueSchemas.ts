import * as v from 'valibot'
import { finite, gammaTriple, triple } from './schemaParts.ts'

export const gradeSchema = v.strictObject({
  lift: v.pipe(triple, v.description('Black level of R, G, B as signal: 0 black, 1 peak.')),
  gamma: v.pipe(gammaTriple, v.description('Gamma of R, G, B; above 1 brightens.')),
  gain: v.pipe(triple, v.description('Peak white of R, G, B as signal; not below lift.')),
  saturation: v.pipe(finite, v.minValue(0)),
})

export const framingSchema = v.strictObject({
  zoom: v.pipe(finite, v.minValue(0.25), v.maxValue(8)),
  pan: v.pipe(finite, v.minValue(-1), v.maxValue(1)),
  tilt: v.pipe(finite, v.minValue(-1), v.maxValue(1)),
  rotation: v.pipe(
    finite,
    v.minValue(-180),
    v.maxValue(180),
    v.description('Degrees clockwise, about the middle of the view.'),
  ),
  squeeze: v.pipe(
    finite,
    v.minValue(0.25),
    v.maxValue(4),
    v.description('How many times wider than scanned the picture is shown.'),
  ),
  blanking: v.pipe(
    finite,
    v.minValue(-0.95),
    v.maxValue(0.95),
    v.description('Part of the height that is black; below 0, of the width.'),
  ),
})
