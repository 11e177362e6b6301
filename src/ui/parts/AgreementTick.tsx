import { setJobInfo } from '../../core/job/commands/setJobInfo.ts'
import { perform } from '../../store/document.ts'
import { jobOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Tick } from './Tick.tsx'

/** Whether the job asks that every cue is agreed before a transfer. */
export const AgreementTick = () => {
  const { store } = useApp()
  const asks = useAppState((state) => jobOf(state)?.info.job.asksAgreement ?? false)
  return (
    <Tick
      isTicked={asks}
      onTick={(asksAgreement) =>
        perform(store, (job) =>
          setJobInfo(job, (info) => ({ ...info, asksAgreement }), 'Whether agreement is asked for'),
        )
      }
    >
      every cue is to be agreed before a transfer
    </Tick>
  )
}
