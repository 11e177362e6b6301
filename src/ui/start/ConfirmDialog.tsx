import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { useApp, useAppState } from '../appContext.ts'

/** A plain question before something that may not be meant; what is safe is stressed. */
export const ConfirmDialog = () => {
  const confirmation = useAppState((state) => state.confirmation)
  const { services } = useApp()
  return (
    <ModalOverlay
      className="overlay"
      isOpen={confirmation !== undefined}
      onOpenChange={(isOpen) => {
        if (!isOpen) services.answerConfirmation(false)
      }}
    >
      <Modal className="modal">
        <Dialog role="alertdialog">
          {confirmation && (
            <>
              <Heading slot="title">{confirmation.title}</Heading>
              <p>{confirmation.says}</p>
              <div className="dialog-buttons">
                <Button
                  className="button primary"
                  autoFocus
                  onPress={() => services.answerConfirmation(false)}
                >
                  Cancel
                </Button>
                <Button className="button" onPress={() => services.answerConfirmation(true)}>
                  {confirmation.yes}
                </Button>
              </div>
            </>
          )}
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
