import type { ReactNode, RefObject } from 'react'

export type ScrollerProps = {
  readonly label: string
  readonly place?: RefObject<HTMLElement | null>
  readonly onScroll?: () => void
  readonly children: ReactNode
}

/** A part that scrolls by itself, also by the keyboard. */
export const Scroller = ({ label, place, onScroll, children }: ScrollerProps) => (
  <section
    className="scroller"
    aria-label={label}
    ref={place}
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the keyboard scrolls only what has the focus
    tabIndex={0}
    onScroll={onScroll}
  >
    {children}
  </section>
)
