import {
  FIRST_SURFACE_SETUP,
  SETUP_LIMITS,
  type SurfaceSetup,
} from '../../core/surface/surfaceSetup.ts'
import { setSurfaceSetup } from '../../store/surface.ts'
import { useApp, useAppState } from '../appContext.ts'
import { NumberField } from '../parts/NumberField.tsx'

type Field = {
  readonly label: string
  readonly unit: string
  readonly factor: number
  readonly step: number
  readonly decimals: number
  readonly limits: readonly [number, number]
  readonly read: (setup: SurfaceSetup) => number
  readonly write: (setup: SurfaceSetup, value: number) => Partial<SurfaceSetup>
}

const speedField = (label: string, of: keyof SurfaceSetup['speeds']): Field => ({
  label,
  unit: 'a second',
  factor: 1,
  step: 0.01,
  decimals: 2,
  limits: SETUP_LIMITS.speed,
  read: ({ speeds }) => speeds[of],
  write: ({ speeds }, value) => ({ speeds: { ...speeds, [of]: value } }),
})

const FIELDS: readonly Field[] = [
  {
    label: 'dead zone',
    unit: '% of the way',
    factor: 100,
    step: 1,
    decimals: 0,
    limits: SETUP_LIMITS.deadZone,
    read: ({ response }) => response.deadZone,
    write: ({ response }, deadZone) => ({ response: { ...response, deadZone } }),
  },
  {
    label: 'response exponent',
    unit: '1 is a line',
    factor: 1,
    step: 0.1,
    decimals: 1,
    limits: SETUP_LIMITS.exponent,
    read: ({ response }) => response.exponent,
    write: ({ response }, exponent) => ({ response: { ...response, exponent } }),
  },
  speedField('speed of tints', 'tint'),
  speedField('speed of levels', 'level'),
  speedField('speed of framing', 'framing'),
  {
    label: 'fine',
    unit: '% of the speed',
    factor: 100,
    step: 1,
    decimals: 0,
    limits: SETUP_LIMITS.fine,
    read: ({ fine }) => fine,
    write: (_, fine) => ({ fine }),
  },
]

/** How sticks and triggers respond, and how fast, as numbers. */
export const SurfaceFields = () => {
  const { store } = useApp()
  const setup = useAppState(({ preferences }) => preferences.surface)
  return (
    <div className="surface-fields">
      {FIELDS.map(({ label, unit, factor, step, decimals, limits: [low, high], read, write }) => (
        <div key={label}>
          <span aria-hidden="true">{label}</span>
          <NumberField
            label={label}
            value={read(setup) * factor}
            owner="surface"
            reset={read(FIRST_SURFACE_SETUP) * factor}
            step={step}
            decimals={decimals}
            low={low * factor}
            high={high * factor}
            onChange={(value) => setSurfaceSetup(store, (s) => write(s, value / factor))}
          />
          <span className="dim">{unit}</span>
        </div>
      ))}
    </div>
  )
}
