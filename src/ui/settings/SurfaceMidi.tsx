import { useState } from 'react'
import {
  type MidiBinding,
  type MidiCoding,
  type MidiUse,
  withBinding,
  withoutControl,
} from '../../core/surface/midiBinding.ts'
import { controlName } from '../../core/surface/midiMessage.ts'
import { type MidiState, setSurface, setSurfaceSetup } from '../../store/surface.ts'
import { useApp, useAppState } from '../appContext.ts'
import { SurfaceUseSelect } from './SurfaceUseSelect.tsx'
import { CODING_OPTIONS, MIDI_OPTIONS } from './surfaceUses.ts'

const WORDS: Readonly<Record<Exclude<MidiState, 'on'>, string>> = {
  off: '○ Off. Turning it on asks the browser, which may ask you.',
  asking: '◌ The browser is asked. It may ask you beside its address bar.',
  refused:
    '△ The browser refused. Allow MIDI for this page in the browser’s settings for it, then turn it on again.',
  missing:
    '△ This browser has no Web MIDI. Game pad, keys and pointer reach the same numbers; a MIDI surface needs a browser that has it.',
}

const MidiStateLine = () => {
  const { services } = useApp()
  const state = useAppState(({ surface }) => surface.midi)
  const inputs = useAppState(({ surface }) => surface.inputs)
  const heard = inputs.length > 0 ? `hears ${inputs.join(', ')}` : 'no MIDI input is connected yet'
  return (
    <div className="surface-learn">
      {state === 'on' ? (
        <button type="button" className="button" onClick={() => services.midi.turnOff()}>
          Turn MIDI off
        </button>
      ) : (
        <button
          type="button"
          className="button"
          disabled={state === 'asking'}
          onClick={() => void services.midi.turnOn()}
        >
          Turn MIDI on
        </button>
      )}
      <p role="status">{state === 'on' ? `● On: ${heard}.` : WORDS[state]}</p>
    </div>
  )
}

/** Gives a number or a command to the control that is moved next. */
const LearnMidi = () => {
  const { store } = useApp()
  const isOn = useAppState(({ surface }) => surface.midi === 'on')
  const isWaiting = useAppState(({ surface }) => surface.learning?.of === 'midi')
  const learnt = useAppState(({ surface }) => surface.learnt)
  const [use, setUse] = useState<MidiUse>({ kind: 'number', id: 'lift-all' })
  const [coding, setCoding] = useState<MidiCoding>('position')
  return (
    <div className="surface-learn">
      <span className="dim">Give</span>
      <SurfaceUseSelect
        label="what the MIDI control is to do"
        options={MIDI_OPTIONS}
        value={use}
        onChange={(chosen) => chosen && setUse(chosen)}
      />
      <span className="dim">to a control that sends</span>
      <select
        className="surface-use"
        aria-label="what the MIDI control sends"
        value={coding}
        onChange={(event) => setCoding(event.currentTarget.value as MidiCoding)}
      >
        {CODING_OPTIONS.map(({ id, label }) => (
          <option key={id} value={id}>
            {label}
          </option>
        ))}
      </select>
      {isWaiting ? (
        <button
          type="button"
          className="button is-on"
          onClick={() => setSurface(store, { learning: undefined })}
        >
          Leave it
        </button>
      ) : (
        <button
          type="button"
          className="button"
          disabled={!isOn}
          onClick={() =>
            setSurface(store, { learnt: undefined, learning: { of: 'midi', use, coding } })
          }
        >
          Move the control…
        </button>
      )}
      <span role="status">
        {isWaiting && 'Move the control to use, or press its key.'}
        {!isWaiting && learnt?.of === 'midi' && `Given to: ${learnt.name}.`}
      </span>
    </div>
  )
}

const codingLabel = (coding: MidiCoding): string =>
  CODING_OPTIONS.find(({ id }) => id === coding)?.label ?? coding

const BindingRow = ({ binding }: { binding: MidiBinding }) => {
  const { store } = useApp()
  const name = controlName(binding.control)
  const isLearnt = useAppState(({ surface }) => surface.learnt?.name === name)
  const isWaiting = useAppState(({ surface }) => surface.waiting.includes(name))
  const change = (edit: (bindings: readonly MidiBinding[]) => readonly MidiBinding[]) =>
    setSurfaceSetup(store, ({ midi }) => ({ midi: { ...midi, bindings: edit(midi.bindings) } }))
  return (
    <tr className={isLearnt ? 'is-learnt' : ''}>
      <th scope="row">{name}</th>
      <td>
        <SurfaceUseSelect
          label={name}
          options={MIDI_OPTIONS}
          value={binding.use}
          onChange={(use) => use && change((all) => withBinding(all, { ...binding, use }))}
        />
      </td>
      <td className="dim">
        {codingLabel(binding.coding)}
        {isWaiting && ' · ◌ waits to pass the number'}
      </td>
      <td>
        <button
          type="button"
          className="button"
          aria-label={`Forget ${name}`}
          onClick={() => change((all) => withoutControl(all, binding.control))}
        >
          Forget
        </button>
      </td>
    </tr>
  )
}

/** MIDI control surfaces: whether they are heard, and what their controls do. */
export const SurfaceMidi = () => {
  const bindings = useAppState(({ preferences }) => preferences.surface.midi.bindings)
  return (
    <section className="surface-part" aria-label="MIDI control surfaces">
      <h3>MIDI control surfaces</h3>
      <MidiStateLine />
      <p className="dim">
        A fader or knob takes over when it passes the number as it is, so that nothing jumps; an
        encoder adds steps. A key that is given a number resets it.
      </p>
      <LearnMidi />
      {bindings.length > 0 && (
        <table className="surface-table">
          <thead>
            <tr>
              <th scope="col">control</th>
              <th scope="col">does</th>
              <th scope="col">sends</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {bindings.map((binding) => (
              <BindingRow key={controlName(binding.control)} binding={binding} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}
