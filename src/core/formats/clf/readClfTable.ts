import type { ReadElement } from '../../base/xmlReader.ts'
import { MOST_CUBE_POINTS, MOST_CURVE_POINTS } from '../../job/limits.ts'
import type { CubeStep, CurveStep } from '../../process/processList.ts'
import { type ClfOperator, choiceOf, neededChild, numbersOf, refuse } from './clfOperator.ts'

const LINEAR: ReadonlyMap<string, true> = new Map([['linear', true]])

const INTERPOLATIONS: ReadonlyMap<string, CubeStep['interpolation']> = new Map([
  ['trilinear', 'trilinear'],
  ['tetrahedral', 'tetrahedral'],
])

/** The whole numbers of a dim; none where it is anything else. */
const dimensions = (array: ReadElement): readonly number[] => {
  const words = (array.attributes.get('dim') ?? '').trim().split(/\s+/u)
  return words.every((word) => /^\d+$/u.test(word)) ? words.map(Number) : []
}

/** The numbers of a table of so many places, as signal; refused where there are too many places. */
const tableOf = (
  operator: ClfOperator,
  array: ReadElement,
  [points, most]: readonly [points: number, most: number],
  count: number,
): readonly number[] | undefined => {
  if (points < 2 || points > most)
    return refuse(
      operator,
      array,
      'too-large',
      `has ${Number.isSafeInteger(points) ? points : 'far too many'} places along an edge; 2 to ${most} can be carried, so make a table of fewer`,
    )
  const values = numbersOf(operator, array, count)
  const { outScale } = operator
  return outScale === 1 ? values : values?.map((value) => value / outScale)
}

/** A LUT1D over 0…1: one curve for all channels or one each. Over half floats it is refused. */
export const readClfCurve = (operator: ClfOperator): CurveStep | undefined => {
  const { element } = operator
  for (const attribute of ['halfDomain', 'rawHalfs'])
    if ((element.attributes.get(attribute) ?? 'false') !== 'false')
      return refuse(
        operator,
        element,
        'cannot-decode',
        `with ${attribute} has a place for every half float, which cannot be carried; make a table over 0…1 of it`,
      )
  const isLinear = choiceOf(operator, 'interpolation', LINEAR, 'linear')
  const array = neededChild(operator, element, 'Array')
  if (!array || !isLinear) return undefined
  const [points = 0, channels, ...more] = dimensions(array)
  if ((channels !== 1 && channels !== 3) || more.length > 0)
    return refuse(operator, array, 'malformed', 'of a LUT1D must have the dim “N 1” or “N 3”')
  const values = tableOf(operator, array, [points, MOST_CURVE_POINTS], points * channels)
  return values && { kind: 'curve', channels, points, values }
}

/** A LUT3D over 0…1, blue fastest. */
export const readClfCube = (operator: ClfOperator): CubeStep | undefined => {
  const { element } = operator
  const interpolation = choiceOf(operator, 'interpolation', INTERPOLATIONS, 'trilinear')
  const array = neededChild(operator, element, 'Array')
  if (!array || !interpolation) return undefined
  const [points = 0, green, blue, channels, ...more] = dimensions(array)
  if (green !== points || blue !== points || channels !== 3 || more.length > 0)
    return refuse(
      operator,
      array,
      'malformed',
      'of a LUT3D must have the dim “N N N 3”, alike along all three edges',
    )
  const values = tableOf(operator, array, [points, MOST_CUBE_POINTS], 3 * points ** 3)
  return values && { kind: 'cube', interpolation, points, values }
}
