import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parentPort, workerData } from 'node:worker_threads'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Planes } from '../../src/core/picture/planes.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { loadKernel } from '../../src/kernel/loadKernel.ts'
import { BENCH_GRADE } from './benchGrade.ts'

/** What `workersRow.mjs` hands each worker: its own pictures, and a counter that they share. */
type Handed = {
  readonly root: string
  readonly pictures: readonly Planes[]
  /** How many pictures of this round are taken, by whichever worker. */
  readonly taken: Int32Array
}

const UNFILTERED = { ...EBU_R103_V3, filtered: false }

const { root, pictures, taken } = workerData as Handed
const loaded = await loadKernel(readFileSync(join(root, '.cache/kernel/kernel.wasm')))
if (!loaded.ok) throw new Error(loaded.problems[0].says)
const kernel = loaded.value

/** Takes pictures until all workers together have had `wanted`; answers how many it had. */
const run = (wanted: number): number => {
  let had = 0
  for (let i = Atomics.add(taken, 0, 1); i < wanted; i = Atomics.add(taken, 0, 1)) {
    const planes = pictures[i % pictures.length] as Planes
    const input = {
      planes,
      coding: { matrix: 'bt709', range: 'full' },
      grade: BENCH_GRADE,
      framing: IDENTITY_FRAMING,
    } as const
    kernel.measurePicture(input, 'bt709', UNFILTERED, { histograms: true })
    had++
  }
  return had
}

parentPort?.on('message', (wanted: number) => parentPort?.postMessage(run(wanted)))
parentPort?.postMessage('ready')
