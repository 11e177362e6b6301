import { Button } from 'react-aria-components'
import { useApp, useAppState } from '../appContext.ts'
import { keyLabel, keysOf } from '../commands/keys.ts'
import { commandById } from '../commands/registry.ts'

const IS_MAC = /Mac|iPhone|iPad/u.test(navigator.userAgent)

export type CommandButtonProps = {
  readonly id: string
  /** Shorter words than the command's own, where the place makes them clear. */
  readonly label?: string
  readonly isPressed?: boolean
  readonly className?: string
  /** Leaves the key out where there is no room; the list of commands has it. */
  readonly isTerse?: boolean
}

/** A button that runs a command of the registry; it shows the key that does the same. */
export const CommandButton = ({ id, label, isPressed, className, isTerse }: CommandButtonProps) => {
  const app = useApp()
  const command = commandById(id)
  const isPossible = useAppState(command.isPossible)
  const key = useAppState(({ preferences }) => keysOf(id, preferences)[0])
  const isShort = label !== undefined
  return (
    <Button
      className={`button ${className ?? ''}${isPressed ? ' is-on' : ''}`}
      isDisabled={!isPossible}
      {...(isShort ? { 'aria-label': `${command.label}` } : {})}
      {...(isPressed === undefined ? {} : { 'aria-pressed': isPressed })}
      onPress={() => command.run(app)}
    >
      {label ?? command.label}
      {key && !isTerse && <kbd>{keyLabel(key, IS_MAC)}</kbd>}
    </Button>
  )
}
