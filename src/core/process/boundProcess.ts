import { at } from '../base/assert.ts'
import { clamp01 } from '../colour/cdl.ts'
import { HIGHEST_LEVEL } from '../colour/grade.ts'
import { applyCurveStep } from './applyCurveStep.ts'
import { boundCube } from './boundCube.ts'
import { createCurveRange } from './curveRange.ts'
import type { LevelBox } from './levelBox.ts'
import type { CurveStep, ProcessList } from './processList.ts'
import {
  type LinesOperation,
  type PowerOperation,
  type ProcessOperation,
  processOperations,
} from './processOperations.ts'

type Bound = (box: LevelBox) => LevelBox

/** What sums in float64 differ by at most, in parts of their terms. */
const ROUNDING = 1e-12

const CHANNELS = [0, 1, 2] as const

/** A box from the low and high of each channel, a little wider for how sums are rounded. */
const boxOf = (
  ends: (channel: 0 | 1 | 2) => readonly [low: number, high: number, terms?: number],
): LevelBox => {
  const [r, g, b] = CHANNELS.map((channel): readonly [number, number] => {
    const [low, high, terms = Math.max(Math.abs(low), Math.abs(high))] = ends(channel)
    return [low - ROUNDING * terms, high + ROUNDING * terms]
  }) as [readonly [number, number], readonly [number, number], readonly [number, number]]
  return { low: [r[0], g[0], b[0]], high: [r[1], g[1], b[1]] }
}

const boundLines =
  ({ rows, offset, least, most }: LinesOperation): Bound =>
  ({ low, high }) =>
    boxOf((channel) => {
      let [from, to, terms] = [offset[channel], offset[channel], Math.abs(offset[channel])]
      for (const c of CHANNELS) {
        const factor = rows[channel][c]
        from += factor * (factor >= 0 ? low[c] : high[c])
        to += factor * (factor >= 0 ? high[c] : low[c])
        terms += Math.abs(factor) * Math.max(Math.abs(low[c]), Math.abs(high[c]))
      }
      const hold = (level: number) => Math.min(Math.max(level, least), most)
      return [hold(from), hold(to), terms]
    })

const boundPower = ({ power }: PowerOperation): Bound => {
  const powered = (level: number, exponent: number): number =>
    level > 0 ? Math.min(level ** exponent, HIGHEST_LEVEL) : level
  return ({ low, high }) => boxOf((c) => [powered(low[c], power[c]), powered(high[c], power[c])])
}

const boundCurve = (step: CurveStep): Bound => {
  const last = step.points - 1
  const ranges = CHANNELS.map((c) => createCurveRange(step, c))
  return ({ low, high }) => {
    const [ofLow, ofHigh] = [applyCurveStep(low, step), applyCurveStep(high, step)]
    return boxOf((c) => {
      const [from, to] = at(ranges, c)(
        Math.floor(clamp01(low[c]) * last) + 1,
        Math.ceil(clamp01(high[c]) * last) - 1,
      )
      return [Math.min(from, ofLow[c], ofHigh[c]), Math.max(to, ofLow[c], ofHigh[c])]
    })
  }
}

const boundOperation = (operation: ProcessOperation): Bound => {
  switch (operation.kind) {
    case 'lines':
      return boundLines(operation)
    case 'power':
      return boundPower(operation)
    case 'curve':
      return boundCurve(operation)
    case 'cube': {
      const bound = boundCube(operation)
      return (box) => {
        const { low, high } = bound(box)
        return boxOf((c) => [low[c], high[c]])
      }
    }
  }
}

/**
 * Where the colours of a box lie after a list: every colour of the box, taken through
 * `applyProcess`, is inside the box that is returned. It may be wider than it need be, as steps are
 * bounded one by one.
 */
export const boundProcess = (list: ProcessList): Bound => {
  const bounds = processOperations(list).map(boundOperation)
  return (box) => bounds.reduce((current, bound) => bound(current), box)
}
