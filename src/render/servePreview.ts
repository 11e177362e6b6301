import type { Planes } from '../core/picture/planes.ts'
import { createPreview, type Preview } from './createPreview.ts'
import {
  type FromPreview,
  type PreviewPort,
  type ToPreview,
  withFrames,
} from './previewMessages.ts'

/** A canvas in the worker, what draws on it, and the frames of its last drawing. */
type Attached = {
  readonly canvas: OffscreenCanvas
  readonly preview: Preview
  frames: readonly Planes[]
}

/**
 * Draws for `createWorkerPreview` on canvases that were handed over. `nextFrame` runs what it is
 * given when the screen is ready for another picture.
 */
export const servePreview = (
  port: PreviewPort<FromPreview, ToPreview>,
  nextFrame: (then: () => void) => void,
): void => {
  const attached = new Map<number, Attached>()

  const attach = (id: number, canvas: OffscreenCanvas): void => {
    const made = createPreview(canvas)
    if (made.ok) attached.set(id, { canvas, preview: made.value, frames: [] })
    else port.postMessage({ kind: 'problems', id, problems: made.problems }, [])
  }
  const draw = ({ id, frames, drawing }: ToPreview & { readonly kind: 'draw' }): void => {
    const own = attached.get(id)
    if (!own) return
    const { canvas, preview } = own
    own.frames = frames.map((sent) => {
      const planes = typeof sent === 'number' ? own.frames[sent] : sent
      if (!planes) throw new Error('Bug: a frame is drawn that was not sent')
      return planes
    })
    const planesOf = (index: number): Planes => {
      const planes = own.frames[index]
      if (!planes) throw new Error('Bug: a frame is drawn that was not sent')
      return planes
    }
    if (canvas.width !== drawing.width) canvas.width = drawing.width
    if (canvas.height !== drawing.height) canvas.height = drawing.height
    preview.setPlanes(planesOf(0), drawing.coding)
    preview.draw(withFrames(drawing.view, planesOf))
    nextFrame(() => port.postMessage({ kind: 'drawn', id }, []))
  }
  const detach = (id: number): void => {
    const own = attached.get(id)
    attached.delete(id)
    if (!own) return
    own.preview.dispose()
    own.canvas.width = 1
    own.canvas.height = 1
  }
  port.addEventListener('message', ({ data }) => {
    try {
      if (data.kind === 'attach') attach(data.id, data.canvas)
      else if (data.kind === 'draw') draw(data)
      else detach(data.id)
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error)
      port.postMessage({ kind: 'error', id: data.id, message }, [])
    }
  })
}
