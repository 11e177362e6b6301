import type { Problem } from '../core/base/problem.ts'
import type { Planes } from '../core/picture/planes.ts'
import { createListSender } from '../core/process/sentLists.ts'
import {
  type FromPreview,
  framesOf,
  type PreviewDrawing,
  type PreviewPort,
  type ToPreview,
  withFrames,
} from './previewMessages.ts'

/** A canvas on screen on which pictures are drawn elsewhere. */
export type ScreenPreview = {
  /** Draws, soon: of what is asked while another picture is drawn, the latest alone. */
  readonly draw: (drawing: PreviewDrawing) => void
  readonly dispose: () => void
}

export type PreviewTroubles = {
  /** Why nothing can be drawn on this canvas. */
  readonly onProblems: (problems: readonly Problem[]) => void
  /** A bug in drawing, told by its message. */
  readonly onError: (error: Error) => void
}

/** Makes previews that the worker behind `port` draws, so that nothing here waits for graphics. */
export const createWorkerPreview = (
  port: PreviewPort<ToPreview, FromPreview>,
): ((canvas: HTMLCanvasElement, troubles: PreviewTroubles) => ScreenPreview) => {
  const listeners = new Map<number, (message: FromPreview) => void>()
  const withLists = createListSender()
  let nextId = 0
  port.addEventListener('message', ({ data }) => listeners.get(data.id)?.(data))

  return (canvas, { onProblems, onError }) => {
    const id = nextId++
    const offscreen = canvas.transferControlToOffscreen()
    /** The frames that the worker has of this canvas. */
    let sent: readonly Planes[] = []

    const draw = (drawing: PreviewDrawing): void => {
      const { width, height, mayShrink, coding, view } = drawing
      const needed = framesOf(drawing)
      const frames = needed.map((planes) => {
        const known = sent.indexOf(planes)
        return known < 0 ? planes : known
      })
      sent = needed
      const named = withFrames(view, (planes) => needed.indexOf(planes))
      const lean = withLists({ width, height, mayShrink, coding, view: named })
      port.postMessage({ kind: 'draw', id, frames, drawing: lean }, [])
    }
    listeners.set(id, (message) => {
      if (message.kind === 'problems') onProblems(message.problems)
      else if (message.kind === 'error') onError(new Error(message.message))
    })
    port.postMessage({ kind: 'attach', id, canvas: offscreen }, [offscreen])
    return {
      draw,
      dispose: () => {
        listeners.delete(id)
        port.postMessage({ kind: 'detach', id }, [])
      },
    }
  }
}
