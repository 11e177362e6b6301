import { buttonName, STANDARD_BUTTONS, STICKS } from '../../core/surface/padControls.ts'
import {
  type ButtonUse,
  type PadMapping,
  type StickUse,
  type Uses,
  withButtonUse,
  withStickUse,
} from '../../core/surface/padMapping.ts'
import { type PadReading, PRESSED_FROM } from '../../core/surface/padReading.ts'
import { setSurfaceSetup, stickName } from '../../store/surface.ts'
import { useApp, useAppState } from '../appContext.ts'
import { SurfaceUseSelect } from './SurfaceUseSelect.tsx'
import { BUTTON_OPTIONS, HOLDS, STICK_OPTIONS, type UseOption } from './surfaceUses.ts'

type TravelProps = { readonly travel: (reading: PadReading) => number }

/** How far a control is moved, as a sign: not at all, past the dead zone, pressed. */
const Travel = ({ travel }: TravelProps) => {
  const sign = useAppState(({ surface, preferences }) => {
    const moved = surface.reading ? travel(surface.reading) : 0
    if (moved >= PRESSED_FROM) return '●'
    return moved > preferences.surface.response.deadZone ? '◐' : '○'
  })
  return (
    <>
      <span className="surface-travel" aria-hidden="true">
        {sign}
      </span>
      {sign === '●' && <span className="unseen">pressed: </span>}
    </>
  )
}

type RowProps<Use> = TravelProps & {
  readonly name: string
  readonly uses: Uses<Use>
  readonly options: readonly UseOption<Use>[]
  readonly onChange: (which: 'first' | 'second', use: Use) => void
  readonly onNoSecond: () => void
}

const Row = <Use,>({ name, travel, uses, options, onChange, onNoSecond }: RowProps<Use>) => {
  const isLearnt = useAppState(({ surface }) => surface.learnt?.name === name)
  return (
    <tr className={isLearnt ? 'is-learnt' : ''}>
      <th scope="row">
        <Travel travel={travel} />
        {name}
      </th>
      <td>
        <SurfaceUseSelect
          label={name}
          options={options}
          value={uses.first}
          onChange={(use) => use !== undefined && onChange('first', use)}
        />
      </td>
      <td>
        <SurfaceUseSelect
          label={`${name}, second use`}
          options={options.filter(({ group }) => group !== HOLDS)}
          value={uses.second}
          none="the same"
          onChange={(use) => (use === undefined ? onNoSecond() : onChange('second', use))}
        />
      </td>
    </tr>
  )
}

const NOTHING: Uses<ButtonUse> = { first: { kind: 'nothing' } }

/** Standard buttons, and those beyond that were given something or that the pad in use has. */
const buttonsShown = (mapping: PadMapping, present: number): readonly number[] => {
  const given = Object.keys(mapping.buttons).map(Number)
  const count = Math.max(STANDARD_BUTTONS, present, ...given.map((index) => index + 1))
  return Array.from({ length: count }, (_, index) => index)
}

/** What each control of a pad does, and whether it is moved now. */
export const SurfacePadTable = () => {
  const { store } = useApp()
  const mapping = useAppState(({ preferences }) => preferences.surface.pad)
  const present = useAppState(({ surface }) => surface.reading?.buttons.length ?? 0)
  const change = (edit: (pad: PadMapping) => PadMapping) =>
    setSurfaceSetup(store, ({ pad }) => ({ pad: edit(pad) }))
  return (
    <table className="surface-table">
      <thead>
        <tr>
          <th scope="col">control</th>
          <th scope="col">does</th>
          <th scope="col">with the second use held</th>
        </tr>
      </thead>
      <tbody>
        {STICKS.map((stick) => {
          const uses = mapping.sticks[stick]
          return (
            <Row<StickUse>
              key={stick}
              name={stickName(stick)}
              travel={({ sticks }) => Math.hypot(sticks[stick].x, sticks[stick].y)}
              uses={uses}
              options={STICK_OPTIONS}
              onChange={(which, use) => change((pad) => withStickUse(pad, stick, which, use))}
              onNoSecond={() =>
                change((pad) => ({
                  ...pad,
                  sticks: { ...pad.sticks, [stick]: { first: uses.first } },
                }))
              }
            />
          )
        })}
        {buttonsShown(mapping, present).map((index) => {
          const uses = mapping.buttons[index] ?? NOTHING
          return (
            <Row<ButtonUse>
              key={index}
              name={buttonName(index)}
              travel={({ buttons }) => buttons[index] ?? 0}
              uses={uses}
              options={BUTTON_OPTIONS}
              onChange={(which, use) => change((pad) => withButtonUse(pad, index, which, use))}
              onNoSecond={() =>
                change((pad) => ({
                  ...pad,
                  buttons: { ...pad.buttons, [index]: { first: uses.first } },
                }))
              }
            />
          )
        })}
      </tbody>
    </table>
  )
}
