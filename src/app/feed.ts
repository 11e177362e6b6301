import type { Feed } from '../ui/services.ts'

export type Source<Value> = Feed<Value> & { readonly put: (value: Value | undefined) => void }

/** A value that changes, and those who listen to it. */
export const createFeed = <Value>(): Source<Value> => {
  let value: Value | undefined
  const listeners = new Set<(value: Value) => void>()
  return {
    current: () => value,
    put: (next) => {
      value = next
      if (next !== undefined) for (const listener of listeners) listener(next)
    },
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}
