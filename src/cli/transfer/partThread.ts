import { isMainThread, parentPort, workerData } from 'node:worker_threads'
import type { Problem } from '../../core/base/problem.ts'
import { MediaError } from '../../media/mediaError.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { kernelHere } from '../kernelHere.ts'
import { makePart } from './makePart.ts'
import { type TransferNames, transferTask } from './transferTask.ts'

/** One part to be made. */
export type PartOrder = { readonly part: number; readonly of: number; readonly folder: string }

export type ToPartThread = { readonly kind: 'part'; readonly order: PartOrder }

export type FromPartThread =
  | { readonly kind: 'ready' }
  /** Frames done since the last news. */
  | { readonly kind: 'frames'; readonly frames: number }
  | { readonly kind: 'made'; readonly folder: string }
  | { readonly kind: 'failed'; readonly problems: readonly Problem[] }

const NEWS_EVERY = 5

/** Whether this is a thread that makes parts, not the program itself. */
export const isPartThread = (): boolean =>
  !isMainThread && typeof workerData === 'object' && workerData !== null && 'names' in workerData

/** Makes the parts it is told to, one after another, with one open scan and one kernel. */
export const servePartThread = async (): Promise<void> => {
  const port = parentPort
  if (!port) throw new Error('Bug: no thread to serve')
  const { names } = workerData as { readonly names: TransferNames }
  const post = (message: FromPartThread): void => port.postMessage(message)
  const task = await transferTask(names)
  if (!task.ok) return post({ kind: 'failed', problems: task.problems })
  const kernel = await kernelHere()
  if (!kernel.ok) return post({ kind: 'failed', problems: kernel.problems })
  const source = await openMediaNode(names.mediaPath)
  if (!source.ok) return post({ kind: 'failed', problems: source.problems })
  const tools = { source: source.value, kernel: kernel.value }
  const make = async (order: PartOrder): Promise<void> => {
    let pending = 0
    const tell = (): void => {
      post({ kind: 'frames', frames: pending })
      pending = 0
    }
    try {
      const made = await makePart(task.value, tools, order, () => {
        pending++
        if (pending >= NEWS_EVERY) tell()
      })
      tell()
      if (made.ok) post({ kind: 'made', folder: made.value })
      else post({ kind: 'failed', problems: made.problems })
    } catch (error) {
      if (!(error instanceof MediaError)) throw error
      post({ kind: 'failed', problems: [error.problem] })
    }
  }
  port.on('message', ({ order }: ToPartThread) => void make(order))
  post({ kind: 'ready' })
}
