import type { Problem } from '../core/base/problem.ts'
import { addPass } from '../core/job/commands/addPass.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import { passStanding } from '../core/transfer/passRecord.ts'
import type { AppStore } from '../store/appStore.ts'
import { endGesture, perform } from '../store/document.ts'
import { tell, tellProblems } from '../store/notices.ts'
import { setTransferring } from '../store/transferring.ts'
import type { MadePass } from '../work/passCalls.ts'
import { passRecordOf } from './passOutcome.ts'

/** Tells what a pass came to; only one with nothing wrong is called written as it should be. */
const tellOutcome = (store: AppStore, { output: { name }, findings }: MadePass): void => {
  const standing = passStanding(findings)
  setTransferring(store, { outcome: { name, standing, findings } })
  if (standing === 'right') {
    tell(store, `${name} is written, and was read back as it should be.`)
    return
  }
  const open = findings.filter((each) => each.standing === 'wrong' || each.standing === 'not known')
  tellProblems(
    store,
    open.map(({ says }): Problem => ({ code: 'conflict', says })),
  )
}

/**
 * Puts a finished pass into the job it was made of, where that is the one on screen by `shelfKey`.
 * Returns whether it was; if not, it can be gone on with to the same end.
 */
export const recordPass = (
  store: AppStore,
  plan: PassPlan,
  made: MadePass,
  shelfKey: string | undefined,
): boolean => {
  const { name } = made.output
  if (store.getState().shelfKey !== shelfKey) {
    tell(
      store,
      `${name} is written, but its job is not open any more: open it and go on with the pass to record it.`,
    )
    return false
  }
  const isRecorded = perform(store, (job) => addPass(job, passRecordOf(plan, made)))
  endGesture(store)
  if (isRecorded) tellOutcome(store, made)
  return isRecorded
}
