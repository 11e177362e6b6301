import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { isSequence } from '../../core/transfer/transferSettings.ts'
import type { VideoEncoding, VideoTools } from '../../media/videoTools.ts'
import type { PassOrder } from '../passCalls.ts'
import { checkFolder } from './passFolder.ts'
import { type PassIdentity, passIdentity } from './passIdentity.ts'
import type { BegunPass, PassStore } from './passStore.ts'
import type { PassTools } from './passTools.ts'

/** A pass that may run: nothing of it stands in the way. */
export type ReadyPass = {
  readonly begun: BegunPass
  readonly decided: string
  readonly video: { readonly tools: VideoTools; readonly encoding: VideoEncoding } | undefined
}

/** The name of what an order writes; a file of the browser's own is named by the reel. */
export const outputName = ({ target, fileName }: PassOrder): string => {
  if (target.kind === 'folder') return target.folder.name
  return target.file?.name ?? fileName
}

const checkScan = ({ plan, scan }: PassOrder): Result<undefined> => {
  const { name, bytes } = plan.reel.media
  const there = scan.reduce((sum, { size }) => sum + size, 0)
  return there === bytes
    ? ok(undefined)
    : fail(
        problem(
          'conflict',
          `The scan that is open has ${there} bytes, and the job was made on ${name} with ${bytes}; open that one.`,
        ),
      )
}

/** Pictures that are not this pass's own stay as they are. */
const checkTarget = async ({ target, stem, plan }: PassOrder): Promise<Result<undefined>> =>
  target.kind === 'folder' ? checkFolder(target.folder, stem, plan) : ok(undefined)

const videoFor = async (
  { plan }: PassOrder,
  tools: PassTools,
): Promise<Result<ReadyPass['video']>> => {
  if (isSequence(plan.settings.format)) return ok(undefined)
  const video = await tools.loadVideo()
  const encoding = await video.chooseEncoding(plan)
  return encoding.ok ? ok({ tools: video, encoding: encoding.value }) : encoding
}

/** Why a pass is not begun where another is kept. */
export const BEGUN_BEFORE = problem(
  'conflict',
  'A pass of this reel was begun and not finished: go on with it, or discard it first.',
)

/**
 * Why an unfinished pass cannot be gone on with; undefined where it can. That the checksum of the
 * scan was taken meanwhile is no hindrance.
 */
export const hindranceOf = (
  begun: BegunPass,
  { identity, identityBefore }: PassIdentity,
): string | undefined =>
  begun.identity === identity || begun.identity === identityBefore
    ? undefined
    : 'The job, its scan or the way of transfer has changed since this pass was begun; bring it back as it was, or discard the pass and begin anew.'

/** Looks whether an order can run, and notes that it is begun; nothing is written before that. */
export const beginPass = async (
  order: PassOrder,
  tools: PassTools,
  store: PassStore,
): Promise<Result<ReadyPass>> => {
  const scan = checkScan(order)
  if (!scan.ok) return scan
  const known = passIdentity(order.plan)
  if (!known.ok) return known
  const video = await videoFor(order, tools)
  if (!video.ok) return video
  const { decided, identity } = known.value
  const encoding = video.value?.encoding.words ?? ''
  const kept = await store.begun()
  if (order.goesOn) {
    if (!kept) return fail(problem('not-found', 'There is no unfinished pass of this reel.'))
    const hindrance =
      hindranceOf(kept, known.value) ??
      (kept.encoding === encoding
        ? undefined
        : 'This browser encodes otherwise than when the pass was begun; discard it and begin anew.')
    if (hindrance !== undefined) return fail(problem('conflict', hindrance))
    const free = kept.name === outputName(order) ? ok(undefined) : await checkTarget(order)
    return free.ok ? ok({ begun: kept, decided, video: video.value }) : free
  }
  if (kept) return fail(BEGUN_BEFORE)
  const free = await checkTarget(order)
  if (!free.ok) return free
  const { stem, plan } = order
  const begun: BegunPass = {
    ...{ identity, encoding, stem, name: outputName(order) },
    begunAt: new Date().toISOString(),
    total: plan.timeline.frames,
  }
  await store.begin(begun)
  return ok({ begun, decided, video: video.value })
}
