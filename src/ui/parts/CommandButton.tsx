import { memo, useEffect, useRef } from 'react'
import { Button, type PressEvent } from 'react-aria-components'
import { useApp, useAppState } from '../appContext.ts'
import { startHold } from '../commands/holds.ts'
import { keyLabel, keysOf } from '../commands/keys.ts'
import { commandById } from '../commands/registry.ts'
import { IS_MAC } from './isMac.ts'

export type CommandButtonProps = {
  readonly id: string
  /** Shorter words than the command's own, where the place makes them clear. */
  readonly label?: string
  readonly isPressed?: boolean
  readonly className?: string
  /** Leaves the key out where there is no room; the list of commands has it. */
  readonly isTerse?: boolean
  /** What is said of it on hovering, where the command's own words do not say enough. */
  readonly hint?: string
}

/**
 * A button that runs a command of the registry; it shows the key that does the same. A command
 * that holds does so as long as the button is pressed.
 */
export const CommandButton = memo((props: CommandButtonProps) => {
  const { id, label, isPressed, className, isTerse, hint } = props
  const app = useApp()
  const command = commandById(id)
  const isPossible = useAppState(command.isPossible)
  const key = useAppState(({ preferences }) => keysOf(id, preferences)[0])
  const hold = useHold(id)
  const isShort = label !== undefined
  const hinted = `${hint ?? command.label}${key ? ` (${keyLabel(key, IS_MAC)})` : ''}`
  return (
    <span className="hinted" title={hinted}>
      <Button
        className={`button ${className ?? ''}${isPressed ? ' is-on' : ''}`}
        isDisabled={!isPossible}
        {...(isShort ? { 'aria-label': `${command.label}` } : {})}
        {...(isPressed === undefined ? {} : { 'aria-pressed': isPressed })}
        {...(command.release ? hold : { onPress: () => command.run(app) })}
      >
        {label ?? command.label}
        {key && !isTerse && <kbd>{keyLabel(key, IS_MAC)}</kbd>}
      </Button>
    </span>
  )
})

/**
 * What holds a command while a button is pressed. A press by a screen reader has no length: it
 * holds until the next one.
 */
const useHold = (id: string) => {
  const app = useApp()
  const release = useRef<(() => void) | undefined>(undefined)
  useEffect(() => {
    const letGo = () => release.current?.()
    window.addEventListener('blur', letGo)
    return () => {
      letGo()
      window.removeEventListener('blur', letGo)
    }
  }, [])
  const letGo = () => {
    release.current?.()
    release.current = undefined
  }
  return {
    onPressStart: ({ pointerType }: PressEvent) => {
      const wasHeld = release.current !== undefined
      letGo()
      if (pointerType !== 'virtual' || !wasHeld) release.current = startHold(app, commandById(id))
    },
    onPressEnd: ({ pointerType }: PressEvent) => {
      if (pointerType !== 'virtual') letGo()
    },
  }
}
