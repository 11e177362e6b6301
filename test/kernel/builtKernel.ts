import { existsSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Kernel } from '../../src/kernel/kernel.ts'
import { loadKernel } from '../../src/kernel/loadKernel.ts'

const FILE = resolve(import.meta.dirname, '../../.cache/kernel/kernel.wasm')

export const kernelBytes = (): Uint8Array<ArrayBuffer> => {
  if (!existsSync(FILE)) throw new Error(`${FILE} is not there: run "npm run build:kernel" first.`)
  return new Uint8Array(readFileSync(FILE))
}

/** The kernel as built; a fresh one each time. */
export const builtKernel = async (): Promise<Kernel> => {
  const loaded = await loadKernel(kernelBytes())
  if (!loaded.ok) throw new Error(loaded.problems[0].says)
  return loaded.value
}
