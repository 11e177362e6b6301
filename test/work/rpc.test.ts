import { MessageChannel } from 'node:worker_threads'
import { expect, test } from 'vitest'
import { type FilmBase, PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { createCaller, type Port, serveCalls } from '../../src/work/rpc.ts'
import { MADE_LISTS } from '../support/madeLists.ts'

type Calls = {
  readonly base: {
    readonly args: { readonly base: FilmBase }
    readonly progress: never
    readonly answer: FilmBase
  }
}

/** Two ends of a channel that copies what crosses, as between threads. */
const ends = (): readonly [Port, Port] => {
  const { port1, port2 } = new MessageChannel()
  const portOf = (port: typeof port1): Port => ({
    postMessage: (message) => port.postMessage(message),
    addEventListener: (_, listener) => {
      port.on('message', (data: unknown) => listener({ data } as MessageEvent))
      port.unref()
    },
  })
  return [portOf(port1), portOf(port2)]
}

test('the list of a base is one object at either end, call after call', async () => {
  const [here, there] = ends()
  const got: FilmBase[] = []
  serveCalls<Calls>(there, {
    base: ({ base }) => {
      got.push(base)
      return base
    },
  })
  const call = createCaller<Calls>(here)
  const list = MADE_LISTS['a cube of 33 by tetrahedra'] ?? null
  const back: FilmBase[] = []
  for (const scan of ['print', 'negative'] as const)
    back.push(await call('base', { base: { ...PRINT_BASE, scan, list } }))
  expect(got.map(({ scan }) => scan)).toEqual(['print', 'negative'])
  expect(got[0]?.list).toEqual(list)
  expect(got[1]?.list).toBe(got[0]?.list)
  expect(back).toEqual(got)
  expect(back[1]?.list).toBe(back[0]?.list)
})
