import { readFile } from 'node:fs/promises'
import type { Result } from '../core/base/result.ts'
import type { Kernel } from '../kernel/kernel.ts'
import { loadKernel } from '../kernel/loadKernel.ts'

/** The kernel that the build puts beside the command line. */
export const kernelHere = async (): Promise<Result<Kernel>> =>
  loadKernel(await readFile(new URL('./kernel.wasm', import.meta.url)))
