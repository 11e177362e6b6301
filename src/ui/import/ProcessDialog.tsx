import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import {
  leaveProcess,
  type ProcessOffer,
  takeProcessAsBase,
  takeProcessAsGrade,
} from '../../store/processOffer.ts'
import { reelOf } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { useApp, useAppState } from '../appContext.ts'
import { counted } from './importWords.ts'
import { NotTaken } from './NotTaken.tsx'

/** Asks where a process list goes: after the base of the reel, or, where it is a grade, to cues. */
export const ProcessDialog = () => {
  const { store } = useApp()
  const offer = useAppState((state) => state.processOffer)
  return (
    <ModalOverlay
      className="overlay"
      isOpen={offer !== undefined}
      onOpenChange={(isToBeOpen) => {
        if (!isToBeOpen) leaveProcess(store)
      }}
    >
      <Modal className="modal process">
        <Dialog>{offer && <Places offer={offer} />}</Dialog>
      </Modal>
    </ModalOverlay>
  )
}

const Places = ({ offer }: { offer: ProcessOffer }) => {
  const { store } = useApp()
  const reel = useAppState(reelOf)
  const { name, list, grade, notTaken } = offer
  const cues = editedCues(store).length
  return (
    <div className="process-places">
      <Heading slot="title">Import {name}</Heading>
      <p>
        A process list{list.name === '' ? '' : `, “${list.name}”`}, of{' '}
        {counted(list.steps.length, 'step')}: {list.steps.map(({ kind }) => kind).join(', ')}.
      </p>
      <p>
        After the base, it works on every cue of {reel?.name} before its grade
        {reel?.base.list ? `, in place of “${reel.base.list.name}”` : ''}.
        {grade && ' It is nothing but a grade, so it can also be the grade of a cue.'}
      </p>
      {notTaken.length > 0 && (
        <>
          <p>▲ Not taken from the file:</p>
          <NotTaken problems={notTaken} />
        </>
      )}
      <div className="dialog-buttons">
        <Button className="button" onPress={() => leaveProcess(store)}>
          Cancel
        </Button>
        {grade && (
          <Button
            className="button"
            isDisabled={cues === 0}
            onPress={() => takeProcessAsGrade(store)}
          >
            Give it to {cues === 1 ? 'the cue under the line' : `the ${cues} cues selected`}
          </Button>
        )}
        <Button className="button primary" onPress={() => takeProcessAsBase(store)}>
          Put it after the base
        </Button>
      </div>
    </div>
  )
}
