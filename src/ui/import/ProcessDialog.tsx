import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { processWords } from '../../core/process/processWords.ts'
import {
  leaveProcess,
  type ProcessOffer,
  takeProcessAsBase,
  takeProcessAsGrade,
} from '../../store/processOffer.ts'
import { cuesOf, reelOf } from '../../store/queries.ts'
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
  const [only, ...others] = editedCues(store)
  const all = useAppState(cuesOf)
  const number = all.findIndex(({ id }) => id === only) + 1
  return (
    <div className="process-places">
      <Heading slot="title">Import {name}</Heading>
      <p>
        A process list{list.name === '' ? '' : `, “${list.name}”`}, of{' '}
        {counted(list.steps.length, 'step')}: {processWords(list)}.
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
            isDisabled={only === undefined}
            onPress={() => takeProcessAsGrade(store)}
          >
            Give its grade to{' '}
            {others.length === 0 ? `cue ${number}` : `the ${others.length + 1} cues selected`}
          </Button>
        )}
        <Button className="button primary" onPress={() => takeProcessAsBase(store)}>
          Put it after the base
        </Button>
      </div>
    </div>
  )
}
