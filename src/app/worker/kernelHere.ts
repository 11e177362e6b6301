import kernelUrl from '../../../.cache/kernel/kernel.wasm?url'
import type { Kernel } from '../../kernel/kernel.ts'
import { loadKernel } from '../../kernel/loadKernel.ts'
import { MediaError } from '../../media/mediaError.ts'

let loading: Promise<Kernel> | undefined

/** The kernel of this worker, or of the page, fetched from the app's own origin once. */
export const kernelHere = (): Promise<Kernel> => {
  loading ??= (async () => {
    const response = await fetch(kernelUrl)
    const loaded = await loadKernel(await response.arrayBuffer())
    if (!loaded.ok) throw new MediaError(loaded.problems[0])
    return loaded.value
  })()
  return loading
}
