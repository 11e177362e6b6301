import { useState } from 'react'
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import type { StillStage } from '../../core/formats/stillFileName.ts'
import { STILL_FORMATS, type StillFormat } from '../../core/formats/stillFormats.ts'
import { setOpened } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'

const STAGES: readonly { readonly id: StillStage; readonly label: string }[] = [
  { id: 'graded', label: 'Graded and framed, as delivered' },
  { id: 'scanned', label: 'As scanned, before base and grade' },
]

const FORMATS = (Object.keys(STILL_FORMATS) as StillFormat[]).map((id) => ({
  id,
  label: STILL_FORMATS[id].title,
}))

/** Asks what of the frame under the line is saved, and as what. */
export const SaveFrameDialog = () => {
  const { store } = useApp()
  const isOpen = useAppState((state) => state.opened === 'save-frame')
  const close = () => {
    if (store.getState().opened === 'save-frame') setOpened(store, undefined)
  }
  return (
    <ModalOverlay
      className="overlay"
      isDismissable
      isOpen={isOpen}
      onOpenChange={(isToBeOpen) => {
        if (!isToBeOpen) close()
      }}
    >
      <Modal className="modal">
        <Dialog>
          <SaveFrameForm onDone={close} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

const SaveFrameForm = ({ onDone }: { onDone: () => void }) => {
  const { services } = useApp()
  const [stage, setStage] = useState<StillStage>('graded')
  const [format, setFormat] = useState<StillFormat>('png')
  const [isSaving, setIsSaving] = useState(false)
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        setIsSaving(true)
        void services.saveStill({ stage, format }).finally(onDone)
      }}
    >
      <Heading slot="title">Save this frame</Heading>
      <Choice
        label="What"
        options={STAGES}
        value={stage}
        onChange={(id) => setStage(id as StillStage)}
      />
      <Choice
        label="As"
        options={FORMATS}
        value={format}
        onChange={(id) => setFormat(id as StillFormat)}
      />
      <p>Codes are full range: 0 is black, the largest code is peak white.</p>
      <div className="dialog-buttons">
        <Button className="button" onPress={onDone}>
          Cancel
        </Button>
        <Button className="button primary" type="submit" autoFocus isDisabled={isSaving}>
          {isSaving ? 'Saving…' : 'Save'}
        </Button>
      </div>
    </form>
  )
}
