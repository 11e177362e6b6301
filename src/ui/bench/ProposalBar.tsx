import { useEffect, useRef } from 'react'
import { unpickLast } from '../../store/picking.ts'
import type { PointingMode } from '../../store/pointing.ts'
import { keepProposal, leaveProposal, type Proposal } from '../../store/proposal.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'

const HOW: Readonly<Record<Exclude<PointingMode, 'read'>, string>> = {
  neutral:
    'Press on one to three places of the picture that should be neutral grey; or Tab to the cross, arrow keys, Enter.',
  dye: 'Press on one to five places of the picture that should be neutral grey, not the clearest.',
}

const SIGN = { grade: '◇', base: '◇', none: '○' } as const

/** A sentence that is wrapped between numbers, not inside what is told of one. */
const unbroken = (sentence: string): string =>
  sentence.replaceAll(/ (−?[\d.]+) → /gu, '\u00a0$1\u00a0→\u00a0').replaceAll(' %', '\u00a0%')

/** What takes Enter and Escape for itself. */
const TAKES_KEYS =
  'input, textarea, select, button, a, [role="dialog"], [role="button"], [role="grid"], [contenteditable]'

/** Enter keeps and Escape leaves, wherever nothing else is meant by them. */
const useKeepAndLeave = (isOut: boolean): void => {
  const { store } = useApp()
  useEffect(() => {
    if (!isOut) return
    const onKeyDown = (event: KeyboardEvent) => {
      const target = event.target instanceof Element ? event.target : undefined
      const isUnderDialog = document.querySelector('[role="dialog"], [role="alertdialog"]') !== null
      if (event.defaultPrevented || isUnderDialog) return
      if (event.key === 'Escape' && !target?.matches('input, textarea, select'))
        leaveProposal(store)
      else if (event.key === 'Enter' && !target?.closest(TAKES_KEYS)) keepProposal(store)
      else return
      event.preventDefault()
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [store, isOut])
}

/** A change that waits to be kept or left, in plain sentences; not over the picture, which is to be judged. */
export const ProposalBar = () => {
  const proposal = useAppState((state) => state.proposal)
  const mode = useAppState(({ pointing }) => pointing.mode)
  useKeepAndLeave(proposal !== undefined || mode !== 'read')
  if (proposal) return <Offered proposal={proposal} mode={mode} />
  if (mode === 'read') return null
  return (
    <section className="proposal" aria-label="Proposal: picking places">
      <div className="proposal-words" role="status">
        <p>
          <span aria-hidden="true">+ </span>
          {HOW[mode]}
        </p>
      </div>
      <div className="button-row">
        <CommandButton id="leave-proposal" label="End picking" />
      </div>
    </section>
  )
}

type OfferedProps = { readonly proposal: Proposal; readonly mode: PointingMode }

const Offered = ({ proposal, mode }: OfferedProps) => {
  const { store } = useApp()
  const picks = useAppState(({ pointing }) => pointing.picks.length)
  const place = useRef<HTMLElement>(null)
  const { label, says, change } = proposal
  const isChange = change.kind !== 'none'
  // Asked for by a button: Enter then keeps, and does not ask again.
  useEffect(() => {
    const { activeElement } = document
    const isElsewhere = activeElement instanceof HTMLInputElement || mode !== 'read'
    if (isChange && !isElsewhere)
      place.current?.querySelector<HTMLElement>('button.primary')?.focus({ preventScroll: true })
  }, [isChange, mode])
  return (
    <section className="proposal" aria-label={`Proposal: ${label}`} ref={place}>
      <div className="proposal-words" role="status">
        <h2>
          <span aria-hidden="true">{SIGN[change.kind]} </span>
          {label}
          <span className="dim">
            {isChange
              ? ' shown, not kept yet'
              : change.isLooking
                ? ' looking…'
                : ' nothing is changed'}
          </span>
        </h2>
        {says.map((sentence) => (
          <p key={sentence}>{unbroken(sentence)}</p>
        ))}
      </div>
      <div className="button-row">
        {mode !== 'read' && picks > 0 && (
          <button
            type="button"
            className="button"
            aria-label={`Take back place ${picks}`}
            onClick={() => unpickLast(store)}
          >
            Take back {picks}
          </button>
        )}
        {isChange && <CommandButton id="keep-proposal" label="Keep" className="primary" />}
        <CommandButton id="leave-proposal" label="Leave" />
      </div>
    </section>
  )
}
