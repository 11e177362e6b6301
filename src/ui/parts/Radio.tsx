import type { ReactNode } from 'react'

export type RadioProps = {
  /** The group it belongs to. */
  readonly name: string
  readonly isChosen: boolean
  readonly isDisabled?: boolean
  readonly onChoose: () => void
  readonly children: ReactNode
}

/** One of a few that exclude each other, with its words. */
export const Radio = ({ name, isChosen, isDisabled = false, onChoose, children }: RadioProps) => (
  <label className={isDisabled ? 'mark is-disabled' : 'mark'}>
    <input type="radio" name={name} checked={isChosen} disabled={isDisabled} onChange={onChoose} />
    <span>{children}</span>
  </label>
)
