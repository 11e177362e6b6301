import { FRAMING_STEPS } from '../../core/framing/dragFrame.ts'
import { FRAMING_LIMITS } from '../../core/job/commands/setFraming.ts'
import type { Cue } from '../../core/job/job.ts'
import { type Framing, IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import { changeFraming } from '../../store/grading.ts'
import { useApp } from '../appContext.ts'
import { NumberField } from '../parts/NumberField.tsx'

/** How each number is written: times its factor, with its unit. */
export const FRAMING_UNITS: Readonly<
  Record<
    keyof Framing,
    { readonly unit: string; readonly factor: number; readonly decimals: number }
  >
> = {
  zoom: { unit: '×', factor: 1, decimals: 3 },
  pan: { unit: ' %', factor: 100, decimals: 1 },
  tilt: { unit: ' %', factor: 100, decimals: 1 },
  rotation: { unit: '°', factor: 1, decimals: 2 },
  squeeze: { unit: '×', factor: 1, decimals: 3 },
  blanking: { unit: ' %', factor: 100, decimals: 1 },
}

/** One number of the cue's framing, with its name. */
export const FramingNumber = ({ cue, field }: { cue: Cue; field: keyof Framing }) => {
  const { store } = useApp()
  const { unit, factor, decimals } = FRAMING_UNITS[field]
  const [low, high] = FRAMING_LIMITS[field]
  return (
    <>
      <span className="dim" aria-hidden="true">
        {field}
      </span>
      <NumberField
        label={field}
        value={cue.framing[field] * factor}
        owner={cue.id}
        reset={IDENTITY_FRAMING[field] * factor}
        step={FRAMING_STEPS[field] * factor}
        decimals={decimals}
        low={low * factor}
        high={high * factor}
        unit={unit}
        onChange={(value, gesture) =>
          changeFraming(
            store,
            field,
            (framing) => ({ ...framing, [field]: value / factor }),
            gesture,
          )
        }
      />
    </>
  )
}
