import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { type Rescan, rescanCounts, rescanCountText } from '../../store/rescan.ts'
import { useApp, useAppState } from '../appContext.ts'
import { paceText } from '../parts/paceText.ts'
import { RescanFound } from './RescanFound.tsx'

/** Another scan or cut of the reel: used as it is, or followed by the cues, or left. */
export const RescanDialog = () => {
  const { services } = useApp()
  const rescan = useAppState((state) => state.rescan)
  return (
    <ModalOverlay
      className="overlay"
      isOpen={rescan !== undefined}
      onOpenChange={(isToBeOpen) => {
        if (!isToBeOpen) services.rescan.leave()
      }}
    >
      <Modal className={rescan?.stage.kind === 'found' ? 'modal import rescan' : 'modal process'}>
        <Dialog>{rescan && <Stage rescan={rescan} />}</Dialog>
      </Modal>
    </ModalOverlay>
  )
}

const Stage = ({ rescan }: { rescan: Rescan }) => {
  const { services } = useApp()
  const { stage } = rescan
  if (stage.kind === 'asking')
    return (
      <div className="process-places">
        <Heading slot="title">This is not the same scan</Heading>
        <p>{rescan.says}</p>
        <p>
          {rescan.canFollow
            ? 'Cues can follow their pictures: both scans are looked at, and each cue is found again where its picture is now.'
            : 'Cues can follow their pictures only while the scan they were made on can be read too: find that one first, and then this one under Prepare.'}{' '}
          They can also follow the list by which the reel was cut anew: its source times are those
          of the reel as it was. Nothing is changed until you have seen what was found.
        </p>
        <div className="dialog-buttons">
          <Button className="button" onPress={services.rescan.leave}>
            Cancel
          </Button>
          <Button className="button" onPress={services.rescan.use}>
            Use it all the same
          </Button>
          <Button className="button" onPress={() => void services.rescan.followList()}>
            Follow a list…
          </Button>
          {rescan.canFollow && (
            <Button className="button primary" onPress={() => void services.rescan.follow()}>
              Follow the pictures…
            </Button>
          )}
        </div>
      </div>
    )
  if (stage.kind === 'looking')
    return (
      <div className="process-places">
        <Heading slot="title">Following the pictures</Heading>
        <p role="status">{stage.progress ? paceText(stage.at, stage.progress) : stage.at}</p>
        <progress
          aria-label={stage.at}
          {...(stage.progress && { value: stage.progress.done, max: stage.progress.total })}
        />
        <div className="dialog-buttons">
          <Button className="button" autoFocus onPress={services.rescan.stop}>
            Stop
          </Button>
        </div>
      </div>
    )
  const { plan } = stage
  const { doubtful, lost } = rescanCounts(plan)
  return (
    <>
      <div className="import-head">
        <Heading slot="title">Cues on {rescan.name}</Heading>
        <p className="dim">
          {plan.rows.length} cues on {plan.reel.frames} frames before, {plan.frames} frames now.
          Timecode counts from the first frame of the reel as it was.
        </p>
      </div>
      <RescanFound plan={plan} filter={rescan.filter} />
      <div className="import-foot">
        <p role="status">
          {doubtful + lost > 0
            ? `▲ ${rescanCountText(plan)}.${lost > 0 ? ' A lost cue leaves the reel; the report keeps its numbers.' : ''}`
            : 'Nothing is changed until it is applied.'}
        </p>
        <Button className="button" onPress={() => void services.rescan.saveReport()}>
          Save the report
        </Button>
        <Button className="button" onPress={services.rescan.leave}>
          Cancel
        </Button>
        <Button className="button primary" onPress={services.rescan.apply}>
          Apply
        </Button>
      </div>
    </>
  )
}
