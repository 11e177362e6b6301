import { useEffect, useRef, useState } from 'react'
import { type Aim, aimedAt, takeAim } from '../../store/selection.ts'
import { useApp } from '../appContext.ts'

export type DraftText = {
  readonly text: string
  readonly type: (text: string) => void
  /** Does what was typed, to the cues it was begun on. */
  readonly commit: () => void
  readonly drop: () => void
}

/**
 * Text that takes effect when its field is left, by whatever way: also when the field goes from the
 * screen. It goes to the cues it was begun on.
 */
export const useDraftText = (value: string, onCommit: (text: string) => void): DraftText => {
  const { store } = useApp()
  const [draft, setDraft] = useState<string>()
  const aim = useRef<Aim | undefined>(undefined)
  const pending = useRef<(() => void) | undefined>(undefined)
  const forget = () => {
    aim.current = undefined
    pending.current = undefined
    setDraft(undefined)
  }
  const commit = () => {
    const change = pending.current
    forget()
    change?.()
  }
  useEffect(() => () => pending.current?.(), [])
  return {
    text: draft ?? value,
    type: (text) => {
      const begunOn = aim.current ?? takeAim(store)
      aim.current = begunOn
      setDraft(text)
      pending.current = () => aimedAt(store, begunOn, () => onCommit(text))
    },
    commit,
    drop: forget,
  }
}
