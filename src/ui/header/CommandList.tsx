import {
  Autocomplete,
  Button,
  Dialog,
  Input,
  Label,
  Menu,
  MenuItem,
  Modal,
  ModalOverlay,
  SearchField,
  useFilter,
} from 'react-aria-components'
import { setOpened } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'
import { runByName } from '../commands/holds.ts'
import { keyLabel, keysOf } from '../commands/keys.ts'
import { COMMANDS, commandById } from '../commands/registry.ts'
import { IS_MAC } from '../parts/isMac.ts'

/** Opens the command finder. */
export const CommandListButton = () => {
  const { store } = useApp()
  const key = useAppState(({ preferences }) => keysOf('find-command', preferences)[0])
  return (
    <Button className="button" aria-label="Commands" onPress={() => setOpened(store, 'commands')}>
      Commands
      {key && <kbd>{keyLabel(key, IS_MAC)}</kbd>}
    </Button>
  )
}

/** Everything that can be done, by name, with its key: type a word to find it. */
export const CommandList = () => {
  const { store } = useApp()
  const isOpen = useAppState((state) => state.opened === 'commands')
  return (
    <ModalOverlay
      className="overlay"
      isDismissable
      isOpen={isOpen}
      onOpenChange={(isToBeOpen) => {
        if (!isToBeOpen) setOpened(store, undefined)
      }}
    >
      <Modal className="modal command-list">
        <Dialog aria-label="Commands">
          <Finder />
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

/** A dialog gives the focus back a frame after it closes; what may take it waits for that. */
const afterFocusIsBack = (run: () => void): void => {
  requestAnimationFrame(() => requestAnimationFrame(run))
}

const Finder = () => {
  const app = useApp()
  const preferences = useAppState((state) => state.preferences)
  const { contains } = useFilter({ sensitivity: 'base' })
  const impossible = useAppState((state) =>
    COMMANDS.filter((command) => !command.isPossible(state))
      .map(({ id }) => id)
      .join(' '),
  )
  return (
    <Autocomplete
      filter={(text, typed) => typed.split(/\s+/u).every((word) => contains(text, word))}
    >
      <SearchField autoFocus>
        <Label>Find a command</Label>
        <Input />
      </SearchField>
      <Menu
        aria-label="Commands"
        disabledKeys={impossible.split(' ')}
        renderEmptyState={() => <p className="dim">No command has these words.</p>}
        onAction={(id) => {
          setOpened(app.store, undefined)
          afterFocusIsBack(() => runByName(app, commandById(String(id))))
        }}
      >
        {COMMANDS.map((command) => (
          <MenuItem
            key={command.id}
            id={command.id}
            textValue={`${command.label} (${command.group})`}
          >
            <span className="dim">{command.group}</span>
            <span>{command.label}</span>
            <kbd>
              {keysOf(command.id, preferences)
                .map((key) => keyLabel(key, IS_MAC))
                .join(' or ')}
            </kbd>
          </MenuItem>
        ))}
      </Menu>
    </Autocomplete>
  )
}
