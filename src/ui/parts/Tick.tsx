import type { ReactNode } from 'react'

export type TickProps = {
  readonly isTicked: boolean
  readonly isDisabled?: boolean
  readonly onTick: (isTicked: boolean) => void
  readonly children: ReactNode
}

/** Something taken or left, with its words. */
export const Tick = ({ isTicked, isDisabled = false, onTick, children }: TickProps) => (
  <label className={isDisabled ? 'mark is-disabled' : 'mark'}>
    <input
      type="checkbox"
      checked={isTicked}
      disabled={isDisabled}
      onChange={(event) => onTick(event.currentTarget.checked)}
    />
    <span>{children}</span>
  </label>
)
