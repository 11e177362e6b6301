import type { Planes } from '../core/picture/planes.ts'
import { createListReceiver } from '../core/process/sentLists.ts'
import { createPreview, type Preview } from './createPreview.ts'
import {
  type FromPreview,
  type PreviewDrawing,
  type PreviewPort,
  type ToPreview,
  withFrames,
} from './previewMessages.ts'
import { isSlowPicture, SLOW_PART } from './slowPicture.ts'

/** A canvas in the worker, what draws on it, the frames it has, and what waits to be drawn. */
type Attached = {
  readonly canvas: OffscreenCanvas
  readonly preview: Preview
  frames: readonly Planes[]
  waiting: PreviewDrawing | undefined
  /** Whether a picture of full size takes too long to follow a hand. */
  isSlow: boolean
}

const frameAt = (frames: readonly Planes[], index: number): Planes => {
  const planes = frames[index]
  if (!planes) throw new Error('Bug: a frame is drawn that was not sent')
  return planes
}

/**
 * Draws for `createWorkerPreview` on canvases that were handed over. `nextFrame` runs what it is
 * given when the screen is ready for another picture: of what came until then, the latest is drawn.
 */
export const servePreview = (
  port: PreviewPort<FromPreview, ToPreview>,
  nextFrame: (then: () => void) => void,
): void => {
  const attached = new Map<number, Attached>()
  const whole = createListReceiver()

  /** Does something for a canvas; what is thrown there is told. */
  const guarded = (id: number, run: () => void): void => {
    try {
      run()
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error)
      port.postMessage({ kind: 'error', id, message }, [])
    }
  }
  const attach = (id: number, canvas: OffscreenCanvas): void => {
    const made = createPreview(canvas)
    if (made.ok)
      attached.set(id, {
        canvas,
        preview: made.value,
        frames: [],
        waiting: undefined,
        isSlow: false,
      })
    else port.postMessage({ kind: 'problems', id, problems: made.problems }, [])
  }
  const drawWaiting = (id: number): void => {
    const own = attached.get(id)
    const drawing = own?.waiting
    if (!own || !drawing) return
    own.waiting = undefined
    const { canvas, preview } = own
    const part = drawing.mayShrink && own.isSlow ? SLOW_PART : 1
    const width = Math.ceil(drawing.width * part)
    const height = Math.ceil(drawing.height * part)
    if (canvas.width !== width) canvas.width = width
    if (canvas.height !== height) canvas.height = height
    const begun = performance.now()
    preview.setPlanes(drawing.planes, drawing.coding)
    preview.draw(drawing.view)
    if (drawing.mayShrink) {
      preview.finish()
      own.isSlow = isSlowPicture(performance.now() - begun, part, own.isSlow)
    }
    port.postMessage({ kind: 'drawn', id }, [])
  }
  const take = ({ id, frames, drawing: lean }: ToPreview & { readonly kind: 'draw' }): void => {
    const drawing = whole(lean)
    const own = attached.get(id)
    if (!own) return
    const named = frames.map((sent) =>
      typeof sent === 'number' ? frameAt(own.frames, sent) : sent,
    )
    own.frames = named
    if (!own.waiting) nextFrame(() => guarded(id, () => drawWaiting(id)))
    own.waiting = {
      ...drawing,
      planes: frameAt(named, 0),
      view: withFrames(drawing.view, (index) => frameAt(named, index)),
    }
  }
  const detach = (id: number): void => {
    const own = attached.get(id)
    attached.delete(id)
    if (!own) return
    own.preview.dispose()
    own.canvas.width = 1
    own.canvas.height = 1
  }
  port.addEventListener('message', ({ data }) =>
    guarded(data.id, () => {
      if (data.kind === 'attach') attach(data.id, data.canvas)
      else if (data.kind === 'draw') take(data)
      else detach(data.id)
    }),
  )
}
