import { useEffect, useState } from 'react'
import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components'
import type { HeldFrame } from '../../core/job/job.ts'
import type { HeldId } from '../../core/job/recordIds.ts'
import {
  compareWith,
  dropHeldFrame,
  dropStill,
  heldOfReel,
  renameHeldFrame,
} from '../../store/comparing.ts'
import { jobOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'

/** The frames held as references and the stills opened, to compare with, name and drop. */
export const HeldFrames = () => {
  const count = useAppState((state) => heldOfReel(state).length + state.view.stills.length)
  return (
    <DialogTrigger>
      <Button className="button" aria-label={`Held frames: ${count}`}>
        {count} held <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="held-popover" placement="bottom start">
        <Dialog aria-label="Held frames" className="held-frames">
          <HeldList />
        </Dialog>
      </Popover>
    </DialogTrigger>
  )
}

const HeldList = () => {
  const { store } = useApp()
  useAppState((state) => jobOf(state)?.held)
  const stills = useAppState(({ view }) => view.stills)
  const against = useAppState(({ view }) => view.against)
  const held = heldOfReel(store.getState())
  const isCompared = (id: HeldId): boolean => against.kind === 'held' && against.id === id
  return (
    <>
      {held.length === 0 && (
        <p className="dim">No frame is held. Hold keeps the one under the line, with its grade.</p>
      )}
      <ul>
        {held.map((one) => (
          <HeldRow key={one.id} held={one} isCompared={isCompared(one.id)} />
        ))}
        {stills.map(({ id, name }) => (
          <li key={id}>
            <span
              className="held-still"
              title="a still is open for this session, not kept in the job"
            >
              {name} <span className="dim">this session only</span>
            </span>
            <CompareButton id={id} name={name} isCompared={isCompared(id)} />
            <Button
              className="button"
              aria-label={`Close ${name}`}
              onPress={() => dropStill(store, id)}
            >
              Close
            </Button>
          </li>
        ))}
      </ul>
      <div className="button-row">
        <CommandButton id="hold-frame" label="Hold this frame" />
        <CommandButton id="open-still" label="Open a still…" />
      </div>
    </>
  )
}

type CompareButtonProps = {
  readonly id: HeldId
  readonly name: string
  readonly isCompared: boolean
}

const CompareButton = ({ id, name, isCompared }: CompareButtonProps) => {
  const { store } = useApp()
  return (
    <Button
      className={isCompared ? 'button is-on' : 'button'}
      aria-label={`Compare with ${name}`}
      aria-pressed={isCompared}
      onPress={() => compareWith(store, { kind: 'held', id })}
    >
      Compare
    </Button>
  )
}

const HeldRow = ({ held, isCompared }: { held: HeldFrame; isCompared: boolean }) => {
  const { store, services } = useApp()
  const { id, name, frame } = held
  return (
    <li>
      <HeldName name={name} onCommit={(text) => renameHeldFrame(store, id, text)} />
      <CompareButton id={id} name={name} isCompared={isCompared} />
      <Button className="button" aria-label={`Go to ${name}`} onPress={() => services.seek(frame)}>
        Go to
      </Button>
      <Button
        className="button"
        aria-label={`Drop ${name}`}
        onPress={() => dropHeldFrame(store, id)}
      >
        Drop
      </Button>
    </li>
  )
}

type HeldNameProps = {
  readonly name: string
  /** Returns false where the name is refused; the field then shows the one before. */
  readonly onCommit: (name: string) => boolean
}

/** A held frame's name, to be typed over: it takes effect on Enter or on leaving it. */
const HeldName = ({ name, onCommit }: HeldNameProps) => {
  const [text, setText] = useState(name)
  useEffect(() => setText(name), [name])
  const commit = () => {
    if (text !== name && !onCommit(text)) setText(name)
  }
  return (
    <input
      aria-label={`Name of ${name}`}
      value={text}
      onChange={(event) => setText(event.currentTarget.value)}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur()
        else if (event.key === 'Escape') setText(name)
        else return
        event.stopPropagation()
      }}
    />
  )
}
