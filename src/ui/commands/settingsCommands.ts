import { setOpened } from '../../store/session.ts'
import type { Command } from './command.ts'

export const SETTINGS_COMMANDS: readonly Command[] = [
  {
    id: 'find-command',
    label: 'Find a command',
    group: 'Settings',
    isPossible: () => true,
    run: ({ store }) => setOpened(store, 'commands'),
  },
  {
    id: 'settings',
    label: 'Keys and controls…',
    group: 'Settings',
    isPossible: () => true,
    run: ({ store }) => setOpened(store, 'settings'),
  },
  {
    id: 'go-to',
    label: 'Go to a timecode, footage or frame',
    group: 'Play',
    isPossible: ({ history, step }) => history !== undefined && step === 'rehearse',
    run: ({ store }) => setOpened(store, 'go-to'),
  },
]
