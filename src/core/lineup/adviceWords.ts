import type { Adjustment } from './adjustment.ts'
import type { Advice, SettingPlan, UnreachedReading } from './solveAdjustment.ts'
import { withUnit } from './withUnit.ts'

const settingLines = ({ controls, log }: Adjustment, { settings, rests }: SettingPlan) => {
  const now = log.at(-1)?.settings ?? []
  return controls.map(({ name, unit }, j) => {
    const rest =
      rests[j] === 'free' ? '' : `, its ${rests[j] === 'low' ? 'lower' : 'upper'} hard limit`
    return `  ${name}: ${withUnit(settings[j] ?? 0, unit)} (now ${withUnit(now[j] ?? 0, unit)})${rest}`
  })
}

const expectedLines = ({ readings, log }: Adjustment, { expected }: SettingPlan) => {
  const now = log.at(-1)?.values ?? []
  return readings.map(({ name, unit, low, high }, i) => {
    const value = expected[i] ?? 0
    const standing = value < low ? '▼ under' : value > high ? '▲ over' : '● inside'
    return `  ${name}: ${withUnit(value, unit)}, ${standing} (now ${withUnit(now[i] ?? 0, unit)}; ${withUnit(low, unit)} to ${withUnit(high, unit)})`
  })
}

const alikeLines = ({ controls }: Adjustment, { alike }: SettingPlan) =>
  alike.map(
    ({ first, second, cosine }) =>
      `${controls[first]?.name} and ${controls[second]?.name} do almost the same${cosine < 0 ? ', one against the other' : ''}: how they share the work is uncertain.`,
  )

const WHY: Readonly<Record<UnreachedReading['why'], string>> = {
  deaf: 'no control moves it',
  limits: 'the controls that move it end at their hard limits',
  trade: 'what brings it nearer takes another reading out',
}

/** What to do next with an adjustment, in lines for a person. */
export const adviceWords = (adjustment: Adjustment, advice: Advice): readonly string[] => {
  const { controls, readings } = adjustment
  if (advice.kind === 'done') return ['All readings are inside their limits.']
  if (advice.kind === 'exercise') {
    const { name = '', unit = '' } = controls[advice.control] ?? {}
    return [
      `Move ${name} alone, to ${withUnit(advice.to, unit)}, and read everything: it was not moved yet, and nothing is known of what it does.`,
    ]
  }
  const { plan } = advice
  const expected = [
    'Expected then:',
    ...expectedLines(adjustment, plan),
    ...alikeLines(adjustment, plan),
  ]
  if (advice.kind === 'set')
    return [
      'Set all of these, then read everything:',
      ...settingLines(adjustment, plan),
      ...expected,
    ]
  return [
    'It cannot be done with these controls inside their hard limits:',
    ...advice.unreached.map(({ reading, why }) => `  ${readings[reading]?.name}: ${WHY[why]}.`),
    'The nearest that can be reached:',
    ...settingLines(adjustment, plan),
    ...expected,
  ]
}
