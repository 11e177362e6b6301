import { useState } from 'react'
import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components'
import type { Cue } from '../../core/job/job.ts'
import type { HeldId } from '../../core/job/recordIds.ts'
import { heldOfReel } from '../../store/comparing.ts'
import { alikeCues } from '../../store/looks.ts'
import { cueIndex, cuesOf, currentCue } from '../../store/queries.ts'
import { setOpened } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'
import { NumberField } from '../parts/NumberField.tsx'
import { formatNumber } from '../parts/numberText.ts'
import type { MatchReference } from '../solvers.ts'

type Offer = { readonly name: string; readonly about: string; readonly reference: MatchReference }

const offerHeld = (id: HeldId, name: string, about: string): Offer => ({
  name,
  about,
  reference: { kind: 'held', id, name },
})

/** What a cue can be matched to, chosen from a short list or by a cue's number. */
export const SolveMatch = () => {
  const { store, services } = useApp()
  const isOpen = useAppState(({ opened }) => opened === 'match-to')
  const isPossible = useAppState(({ media }) => media === 'ready')
  const setIsOpen = (opens: boolean) => setOpened(store, opens ? 'match-to' : undefined)
  const match = (reference: MatchReference) => {
    setIsOpen(false)
    services.solve.matchTo(reference)
  }
  return (
    <DialogTrigger isOpen={isOpen} onOpenChange={setIsOpen}>
      <Button className="button" isDisabled={!isPossible}>
        Match to…
      </Button>
      <Popover className="solve-popover" placement="top end">
        <Dialog aria-label="Match the cue to" className="solve-match">
          <MatchList onMatch={match} />
        </Dialog>
      </Popover>
    </DialogTrigger>
  )
}

const MatchList = ({ onMatch }: { onMatch: (reference: MatchReference) => void }) => {
  const cue = useAppState(currentCue)
  const cues = useAppState(cuesOf)
  const { nearest } = useAppState(alikeCues)
  const { store } = useApp()
  useAppState(({ history }) => history?.job.held)
  const held = heldOfReel(store.getState())
  const stills = useAppState(({ view }) => view.stills)
  if (!cue) return null
  const own = cueIndex(cues, cue)
  const offerOf = (other: Cue | undefined, about: string): readonly Offer[] =>
    other
      ? [
          {
            name: `cue ${cueIndex(cues, other) + 1}`,
            about,
            reference: { kind: 'cue', id: other.id },
          },
        ]
      : []
  const offers: readonly Offer[] = [
    ...offerOf(cues[own - 1], 'before this one'),
    ...offerOf(cues[own + 1], 'after this one'),
    ...offerOf(nearest?.cue, `looks most alike, ${formatNumber(nearest?.distance ?? 0, 2)} apart`),
    ...held.map(({ id, name }) => offerHeld(id, name, 'held frame')),
    ...stills.map(({ id, name }) => offerHeld(id, name, 'still')),
  ]
  return (
    <>
      <h2 className="solve-title">Match cue {own + 1} to</h2>
      <ul className="solve-offers">
        {offers.map(({ name, about, reference }) => (
          <li key={`${about} ${reference.id}`}>
            <Button className="button" onPress={() => onMatch(reference)}>
              {name} <span className="dim">{about}</span>
            </Button>
          </li>
        ))}
      </ul>
      <MatchByNumber cues={cues} own={own} onMatch={onMatch} />
    </>
  )
}

type ByNumberProps = {
  readonly cues: readonly Cue[]
  readonly own: number
  readonly onMatch: (reference: MatchReference) => void
}

const MatchByNumber = ({ cues, own, onMatch }: ByNumberProps) => {
  const [number, setNumber] = useState(Math.min(cues.length, own + 2))
  const wanted = cues[Math.round(number) - 1]
  return (
    <div className="solve-by-number">
      <span>or cue</span>
      <NumberField
        label="number of the cue to match to"
        value={number}
        owner="match"
        reset={1}
        step={1}
        decimals={0}
        low={1}
        high={cues.length}
        onChange={(value) => setNumber(Math.round(value))}
      />
      <Button
        className="button"
        isDisabled={!wanted || wanted === cues[own]}
        onPress={() => wanted && onMatch({ kind: 'cue', id: wanted.id })}
      >
        Match
      </Button>
    </div>
  )
}
