import { useState } from 'react'
import { setPreferences } from '../../store/setPreferences.ts'
import { useApp, useAppState } from '../appContext.ts'
import type { Command } from '../commands/command.ts'
import { giveKey, type Keymap, resetKeys, takeKey } from '../commands/keyEdits.ts'
import { keyLabel, keysOf } from '../commands/keys.ts'
import { COMMANDS } from '../commands/registry.ts'
import { IS_MAC } from '../parts/isMac.ts'
import { HandChoice } from './HandChoice.tsx'
import { KeyRow } from './KeyRow.tsx'

/** Whether a command has all words that were typed, in its name, its heading or its keys. */
const isFound = (command: Command, map: Keymap, typed: string): boolean => {
  const keys = keysOf(command.id, map).map((key) => keyLabel(key, IS_MAC))
  const text = [command.label, command.group, ...keys].join(' ').toLocaleLowerCase('en')
  return typed
    .toLocaleLowerCase('en')
    .split(/\s+/u)
    .every((word) => text.includes(word))
}

/** Every command with its keys: found by a word, given, taken away and reset. */
export const KeysSection = () => {
  const { store } = useApp()
  const map: Keymap = useAppState((state) => state.preferences)
  const [typed, setTyped] = useState('')
  const [listening, setListening] = useState<string>()
  const [says, setSays] = useState('')
  const found = COMMANDS.filter((command) => isFound(command, map, typed))
  const change = (keys: Keymap['keys'], words: string) => {
    setPreferences(store, { keys })
    setSays(words)
  }
  return (
    <>
      <HandChoice />
      <div className="keys-head">
        <label>
          Find{' '}
          <input
            type="search"
            value={typed}
            placeholder="a word, or a key"
            onChange={(event) => setTyped(event.currentTarget.value)}
          />
        </label>
        <span className="dim" role="status" aria-label="Keys">
          {says}
        </span>
        <span className="spacer" />
        <button
          type="button"
          className="button"
          disabled={Object.keys(map.keys).length === 0}
          onClick={() => change({}, 'All keys are the layout’s again.')}
        >
          Reset all keys
        </button>
      </div>
      <ul className="key-rows" aria-label="Commands and their keys">
        {found.map((command, i) => (
          <KeyRow
            key={command.id}
            command={command}
            map={map}
            isFirstOfGroup={command.group !== found[i - 1]?.group}
            isListening={listening === command.id}
            onListen={(isListening) => setListening(isListening ? command.id : undefined)}
            onGive={(key) => {
              setListening(undefined)
              const label = keyLabel(key, IS_MAC)
              change(giveKey(map, command.id, key), `${label} is now: ${command.label}.`)
            }}
            onTake={(key) => {
              const label = keyLabel(key, IS_MAC)
              change(takeKey(map, command.id, key), `${label} is free.`)
            }}
            onReset={() =>
              change(resetKeys(map, command.id), `As in the layout again: ${command.label}.`)
            }
          />
        ))}
      </ul>
      {found.length === 0 && <p className="dim">No command has these words or keys.</p>}
    </>
  )
}
