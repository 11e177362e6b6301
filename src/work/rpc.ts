import { createListReceiver, createListSender } from '../core/process/sentLists.ts'

/**
 * Typed calls to a worker: request and answer, progress on the way, cancelling by AbortSignal.
 * A worker serves a map of handlers; a client calls them by name. An error crosses as its message
 * (and its problem, where it carries one). Process lists in what crosses cross once.
 */

/** The calls a worker offers: argument, progress and answer of each. */
export type CallMap = Readonly<
  Record<string, { readonly args: unknown; readonly progress: unknown; readonly answer: unknown }>
>

export type CallContext<Progress> = {
  readonly progress: (news: Progress) => void
  readonly signal: AbortSignal
  /** Buffers to move to the caller with the answer or the next progress news, not copy. */
  readonly transfer: (...buffers: ArrayBufferLike[]) => void
}

export type Handlers<Calls extends CallMap> = {
  readonly [Name in keyof Calls]: (
    args: Calls[Name]['args'],
    context: CallContext<Calls[Name]['progress']>,
  ) => Promise<Calls[Name]['answer']> | Calls[Name]['answer']
}

type ToWorker =
  | { readonly kind: 'call'; readonly id: number; readonly name: string; readonly args: unknown }
  | { readonly kind: 'cancel'; readonly id: number }

type FromWorker =
  | { readonly kind: 'progress'; readonly id: number; readonly news: unknown }
  | { readonly kind: 'answer'; readonly id: number; readonly answer: unknown }
  | {
      readonly kind: 'error'
      readonly id: number
      readonly message: string
      readonly problem: unknown
    }

/** Either end of a message channel: a Worker, or a worker's own global scope. */
export type Port = {
  postMessage: (message: unknown, transfer: Transferable[]) => void
  addEventListener: (type: 'message', listener: (event: MessageEvent) => void) => void
}

/** What a call rejects with when the worker failed; `problem` as the worker gave it. */
export class CallError extends Error {
  readonly problem: unknown
  constructor(message: string, problem: unknown) {
    super(message)
    this.name = 'CallError'
    this.problem = problem
  }
}

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error)

const problemOf = (error: unknown): unknown =>
  error instanceof Error && 'problem' in error ? error.problem : undefined

/** Answers the calls that come in on `port`. */
export const serveCalls = <Calls extends CallMap>(port: Port, handlers: Handlers<Calls>): void => {
  const running = new Map<number, AbortController>()
  const lean = createListSender()
  const whole = createListReceiver()
  const answer = async (id: number, name: string, args: unknown): Promise<void> => {
    const controller = new AbortController()
    running.set(id, controller)
    let moving: Transferable[] = []
    const post = (message: FromWorker) => {
      const transfer = moving
      moving = []
      port.postMessage(lean(message), transfer)
    }
    try {
      const handler = handlers[name]
      if (!handler) throw new Error(`Bug: the worker has no call “${name}”`)
      const result = await handler(args, {
        progress: (news) => post({ kind: 'progress', id, news }),
        signal: controller.signal,
        transfer: (...buffers) => moving.push(...(buffers as ArrayBuffer[])),
      })
      post({ kind: 'answer', id, answer: result })
    } catch (error) {
      moving = []
      post({ kind: 'error', id, message: messageOf(error), problem: problemOf(error) })
    } finally {
      running.delete(id)
    }
  }
  port.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
    if (data.kind === 'cancel') running.get(data.id)?.abort()
    else void answer(data.id, data.name, whole(data.args))
  })
}

export type CallOptions<Progress> = {
  readonly onProgress?: (news: Progress) => void
  readonly signal?: AbortSignal
}

/** Calls a worker's handlers. A cancelled call rejects with the signal's reason at once. */
export type Caller<Calls extends CallMap> = <Name extends keyof Calls & string>(
  name: Name,
  args: Calls[Name]['args'],
  options?: CallOptions<Calls[Name]['progress']>,
) => Promise<Calls[Name]['answer']>

type Waiting = {
  readonly resolve: (answer: never) => void
  readonly reject: (reason: unknown) => void
  readonly onProgress: ((news: never) => void) | undefined
}

export const createCaller = <Calls extends CallMap>(port: Port): Caller<Calls> => {
  const waiting = new Map<number, Waiting>()
  const lean = createListSender()
  const whole = createListReceiver()
  let nextId = 0
  port.addEventListener('message', ({ data: sent }: MessageEvent<FromWorker>) => {
    const data = whole(sent)
    const call = waiting.get(data.id)
    if (!call) return
    if (data.kind === 'progress') {
      call.onProgress?.(data.news as never)
      return
    }
    waiting.delete(data.id)
    if (data.kind === 'answer') call.resolve(data.answer as never)
    else call.reject(new CallError(data.message, data.problem))
  })
  return (name, args, options = {}) =>
    new Promise((resolve, reject) => {
      const { signal, onProgress } = options
      if (signal?.aborted) {
        reject(signal.reason)
        return
      }
      const id = nextId++
      waiting.set(id, { resolve, reject, onProgress })
      port.postMessage({ kind: 'call', id, name, args: lean(args) } satisfies ToWorker, [])
      signal?.addEventListener(
        'abort',
        () => {
          if (!waiting.delete(id)) return
          port.postMessage({ kind: 'cancel', id } satisfies ToWorker, [])
          reject(signal.reason)
        },
        { once: true },
      )
    })
}
