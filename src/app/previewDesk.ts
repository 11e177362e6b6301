import { createPreview } from '../render/createPreview.ts'
import {
  createWorkerPreview,
  type PreviewTroubles,
  type ScreenPreview,
} from '../render/createWorkerPreview.ts'
import type { PreviewDrawing } from '../render/previewMessages.ts'
import type { AppStore } from '../store/appStore.ts'
import { tellProblems } from '../store/notices.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** Whether workers of this browser can draw what `createPreview` needs. */
const canDrawInWorker = (): boolean => {
  if (!('transferControlToOffscreen' in HTMLCanvasElement.prototype)) return false
  const gl = new OffscreenCanvas(1, 1).getContext('webgl2')
  const isAble = Boolean(gl?.getExtension('EXT_color_buffer_float'))
  gl?.getExtension('WEBGL_lose_context')?.loseContext()
  return isAble
}

/** Draws where the canvas is: on the main thread, which then waits for graphics. */
const previewHere = (canvas: HTMLCanvasElement, { onProblems }: PreviewTroubles): ScreenPreview => {
  const made = createPreview(canvas)
  if (!made.ok) {
    onProblems(made.problems)
    return { draw: () => undefined, dispose: () => undefined }
  }
  return {
    draw: ({ width, height, planes, coding, view }: PreviewDrawing) => {
      if (canvas.width !== width) canvas.width = width
      if (canvas.height !== height) canvas.height = height
      made.value.setPlanes(planes, coding)
      made.value.draw(view)
    },
    dispose: made.value.dispose,
  }
}

/**
 * Takes a canvas that nothing was drawn on yet and draws pictures on it: in a worker where the
 * browser can, else here.
 */
export const createPreviewDesk = (
  store: AppStore,
  { preview }: Pick<Workers, 'preview'>,
): ((canvas: HTMLCanvasElement) => ScreenPreview) => {
  const inWorker = createWorkerPreview(preview)
  let isAble: boolean | undefined
  const troubles: PreviewTroubles = {
    onProblems: (problems) => tellProblems(store, problems),
    onError: (error) => tellError(store, error),
  }
  return (canvas) => {
    isAble ??= canDrawInWorker()
    return isAble ? inWorker(canvas, troubles) : previewHere(canvas, troubles)
  }
}
