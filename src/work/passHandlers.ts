import { createGate } from './pass/gate.ts'
import { makePass } from './pass/makePass.ts'
import type { PassTools } from './pass/passTools.ts'
import type { PassCalls } from './passCalls.ts'
import type { Handlers } from './rpc.ts'

/** What the pass worker answers, given what passes are made with there. */
export const passHandlers = (tools: PassTools): Handlers<PassCalls> => {
  const gate = createGate()
  return {
    make: (order, { progress, signal }) => makePass({ order, tools, gate, tell: progress, signal }),
    pause: (isPaused) => {
      gate.pause(isPaused)
      return undefined
    },
    hold: (name) =>
      new Promise((resolve) => {
        void navigator.locks.request(name, () => {
          resolve(undefined)
          return new Promise(() => {})
        })
      }),
  }
}
