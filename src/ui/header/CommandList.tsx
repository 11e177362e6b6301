import { useState } from 'react'
import {
  Autocomplete,
  Button,
  Dialog,
  DialogTrigger,
  Input,
  Label,
  Menu,
  MenuItem,
  Modal,
  ModalOverlay,
  SearchField,
  useFilter,
} from 'react-aria-components'
import { useApp, useAppState } from '../appContext.ts'
import { keyLabel, keysOf } from '../commands/keys.ts'
import { COMMANDS, commandById } from '../commands/registry.ts'

const IS_MAC = /Mac|iPhone|iPad/u.test(navigator.userAgent)

/** Everything that can be done, by name, with its key: type a word to find it. */
export const CommandList = () => {
  const app = useApp()
  const [isOpen, setIsOpen] = useState(false)
  const preferences = useAppState((state) => state.preferences)
  const { contains } = useFilter({ sensitivity: 'base' })
  const impossible = useAppState((state) =>
    COMMANDS.filter((command) => !command.isPossible(state))
      .map(({ id }) => id)
      .join(' '),
  )
  return (
    <DialogTrigger isOpen={isOpen} onOpenChange={setIsOpen}>
      <Button className="button">Commands</Button>
      <ModalOverlay className="overlay" isDismissable>
        <Modal className="modal command-list">
          <Dialog aria-label="Commands">
            <Autocomplete filter={contains}>
              <SearchField autoFocus>
                <Label>Find a command</Label>
                <Input />
              </SearchField>
              <Menu
                aria-label="Commands"
                disabledKeys={impossible.split(' ')}
                onAction={(id) => {
                  setIsOpen(false)
                  commandById(String(id)).run(app)
                }}
              >
                {COMMANDS.map((command) => (
                  <MenuItem key={command.id} id={command.id} textValue={command.label}>
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
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  )
}
