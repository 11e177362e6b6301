import { useRef, useState } from 'react'
import type { Command } from '../commands/command.ts'
import { hasOwnKeys, isModifier, type Keymap, refusalOfKey } from '../commands/keyEdits.ts'
import { commandWithKey, keyLabel, keyName, keysOf } from '../commands/keys.ts'
import { COMMANDS } from '../commands/registry.ts'
import { IS_MAC } from '../parts/isMac.ts'

export type KeyRowProps = {
  readonly command: Command
  readonly map: Keymap
  readonly isFirstOfGroup: boolean
  /** Whether the next key pressed is for this command. */
  readonly isListening: boolean
  readonly onListen: (isListening: boolean) => void
  readonly onGive: (key: string) => void
  readonly onTake: (key: string) => void
  readonly onReset: () => void
}

/** One command: its keys, and what can be done with them. */
export const KeyRow = (props: KeyRowProps) => {
  const { command, map, isListening, onListen } = props
  const give = useRef<HTMLButtonElement>(null)
  /** A key that was pressed and that another command has. */
  const [asked, setAsked] = useState<string>()
  const [refusal, setRefusal] = useState<string>()
  const owner = asked === undefined ? undefined : commandWithKey(COMMANDS, asked, map)
  const label = (key: string) => keyLabel(key, IS_MAC)
  const settle = () => {
    setAsked(undefined)
    setRefusal(undefined)
    give.current?.focus()
  }
  const hear = (key: string) => {
    const reason = refusalOfKey(key)
    const holder = commandWithKey(COMMANDS, key, map)
    setRefusal(reason && `${label(key)} ${reason}; press another.`)
    if (reason) return
    if (holder && holder.id !== command.id) {
      setAsked(key)
      onListen(false)
    } else props.onGive(key)
  }
  return (
    <li className="key-row">
      <span className="dim">{props.isFirstOfGroup && command.group}</span>
      <span>{command.label}</span>
      <span className="key-chips">
        {keysOf(command.id, map).map((key) => (
          <span key={key} className="key-chip">
            <kbd>{label(key)}</kbd>
            <button
              type="button"
              aria-label={`Take ${label(key)} away from: ${command.label}`}
              title="take this key away"
              onClick={() => {
                props.onTake(key)
                settle()
              }}
            >
              ×
            </button>
          </span>
        ))}
        <button
          type="button"
          ref={give}
          className={`button${isListening ? ' is-on' : ''}`}
          aria-label={`Give a key to: ${command.label}`}
          aria-pressed={isListening}
          onClick={() => {
            setAsked(undefined)
            setRefusal(undefined)
            onListen(!isListening)
          }}
          onBlur={() => {
            if (isListening) onListen(false)
          }}
          onKeyDown={(event) => {
            if (!isListening || event.key === 'Tab') return
            event.preventDefault()
            event.stopPropagation()
            if (event.key === 'Escape') onListen(false)
            else if (!isModifier(event.key) && !event.repeat) hear(keyName(event.nativeEvent))
          }}
          onKeyUp={(event) => {
            // A space that was given must not press the button as it comes up.
            if (event.key === ' ' && event.nativeEvent.isTrusted) event.preventDefault()
          }}
        >
          {isListening ? 'press the key…' : '+'}
        </button>
      </span>
      <button
        type="button"
        className="button"
        disabled={!hasOwnKeys(map, command.id)}
        aria-label={`Reset the keys of: ${command.label}`}
        onClick={() => {
          props.onReset()
          settle()
        }}
      >
        Reset
      </button>
      {refusal !== undefined && (
        <p className="key-question" role="alert">
          ▲ {refusal}
        </p>
      )}
      {asked !== undefined && owner && (
        <div
          className="key-question"
          role="alert"
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return
            event.stopPropagation()
            settle()
          }}
        >
          <span>
            ▲ {label(asked)} is “{owner.label}” now.
          </span>
          <button
            type="button"
            className="button"
            // biome-ignore lint/a11y/noAutofocus: the question follows from the key just pressed
            autoFocus
            onClick={() => {
              props.onGive(asked)
              settle()
            }}
          >
            Take it from there
          </button>
          <button type="button" className="button" onClick={settle}>
            Leave it there
          </button>
        </div>
      )}
    </li>
  )
}
