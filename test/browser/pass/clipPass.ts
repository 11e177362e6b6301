import { reelFromFacts } from '../../../src/app/reelFromFacts.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import type { Job, Reel } from '../../../src/core/job/job.ts'
import { newCue } from '../../../src/core/job/newCue.ts'
import { newJob } from '../../../src/core/job/newJob.ts'
import { newCueId } from '../../../src/core/job/recordIds.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { type PassPlan, passPlan } from '../../../src/core/transfer/passPlan.ts'
import {
  INITIAL_TRANSFER,
  TRANSFER_FORMAT_FACTS,
  type TransferSettings,
} from '../../../src/core/transfer/transferSettings.ts'
import { openMedia } from '../../../src/media/browser/openMedia.ts'
import { passKey } from '../../../src/work/pass/passIdentity.ts'
import { openPassStore, type PassStore } from '../../../src/work/pass/passStore.ts'
import type { MadePass, PassCalls, PassOrder, PassTarget } from '../../../src/work/passCalls.ts'
import { type Caller, createCaller } from '../../../src/work/rpc.ts'
import { fetchClip } from '../media/fetchClip.ts'

/** Files as a job of one reel and two cues, the second darker, and what its transfer writes. */
export const filesJob = async (
  files: readonly File[],
  change: Partial<TransferSettings>,
): Promise<{ readonly job: Job; readonly reel: Reel; readonly plan: PassPlan }> => {
  const opened = await openMedia(files)
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const { facts } = opened.value
  opened.value.close()
  const rate = facts.rate ?? { num: 25, den: 1 }
  const settings = { ...INITIAL_TRANSFER, ...change }
  const range = facts.range ?? 'narrow'
  const found = reelFromFacts(facts, { matrix: 'bt709', range, rate })
  const reel = { ...found, transfer: settings }
  const first = newJob('Harbour', reel, newCueId())
  const id = newCueId()
  const second = {
    ...newCue(id, reel.id, frame(20), { kind: 'by-hand', confidence: 1 }),
    grade: { ...IDENTITY_GRADE, gain: [0.8, 0.7, 0.75] as const },
  }
  const job = { ...first, cues: { ...first.cues, [id]: second } }
  const plan = passPlan(job, reel.id)
  if (!plan.ok) throw new Error(plan.problems[0].says)
  return { job, reel, plan: plan.value }
}

/** The same of a clip. */
export const clipJob = async (path: string, change: Partial<TransferSettings>) => {
  const file = await fetchClip(path)
  return { ...(await filesJob([file], change)), file }
}

export const orderOf = (
  plan: PassPlan,
  file: File,
  target: PassTarget,
  change: Partial<PassOrder> = {},
): PassOrder => ({
  ...{ plan, scan: [file], target, goesOn: false, stem: 'harbour' },
  key: passKey(plan.reel.id),
  fileName: `harbour.${TRANSFER_FORMAT_FACTS[plan.settings.format].extension}`,
  ...change,
})

/** A folder of its own in the browser's storage, empty. */
export const newFolder = async (): Promise<FileSystemDirectoryHandle> => {
  const root = await navigator.storage.getDirectory()
  return root.getDirectoryHandle(`out-${crypto.randomUUID()}`, { create: true })
}

export const storeOf = async ({ key }: PassOrder): Promise<PassStore> =>
  openPassStore(await navigator.storage.getDirectory(), key)

export type TestWorker = { readonly call: Caller<PassCalls>; readonly end: () => void }

export const startWorker = (): TestWorker => {
  const worker = new Worker(new URL('../../../src/app/worker/passWorker.ts', import.meta.url), {
    type: 'module',
  })
  return { call: createCaller<PassCalls>(worker), end: () => worker.terminate() }
}

/** Makes a pass in a worker of its own. */
export const makeHere = async (order: PassOrder): Promise<MadePass> => {
  const { call, end } = startWorker()
  try {
    const made = await call('make', order)
    if (!made.ok) throw new Error(made.problems[0].says)
    return made.value
  } finally {
    end()
  }
}

export const wrongIn = ({ findings }: MadePass): readonly string[] =>
  findings.filter(({ standing }) => standing === 'wrong').map(({ says }) => says)
