import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import { createFloatTarget } from './floatTarget.ts'
import { createPreviewMachine, type PreviewMachine } from './previewMachine.ts'
import type { PreviewView } from './previewView.ts'

/** Draws frames as they will be delivered. */
export type Preview = {
  readonly setPlanes: (planes: Planes, coding: Coding) => void
  /** Draws the last frame set, filling the canvas. Nothing is drawn before one is set. */
  readonly draw: (view: PreviewView) => void
  /**
   * The delivered R′G′B′ at the picture's own size, unclipped and not made for any display: RGBA
   * floats, top row first.
   */
  readonly readDelivered: (view: PreviewView) => Float32Array
  /** Waits until what was drawn is there. */
  readonly finish: () => void
  readonly dispose: () => void
}

/**
 * A preview on a canvas by WebGL2. Refuses where the browser has no WebGL2 or cannot draw into
 * float pictures. A lost context is set up again by itself when the browser gives it back.
 */
export const createPreview = (canvas: HTMLCanvasElement | OffscreenCanvas): Result<Preview> => {
  const gl = canvas.getContext('webgl2', {
    alpha: false,
    antialias: false,
    depth: false,
  }) as WebGL2RenderingContext | null
  if (!gl?.getExtension('EXT_color_buffer_float'))
    return fail(
      problem(
        'missing',
        'This browser cannot draw graded pictures: it lacks WebGL2 with float targets. Use a current browser with graphics switched on.',
      ),
    )
  let machine: PreviewMachine | undefined = createPreviewMachine(gl)
  let main: { readonly planes: Planes; readonly coding: Coding } | undefined
  let last: PreviewView | undefined

  const onLost = (event: Event): void => {
    event.preventDefault()
    machine = undefined
  }
  const onRestored = (): void => {
    gl.getExtension('EXT_color_buffer_float')
    machine = createPreviewMachine(gl)
    if (main && last) machine.draw(main, last)
  }
  canvas.addEventListener('webglcontextlost', onLost)
  canvas.addEventListener('webglcontextrestored', onRestored)
  return ok({
    setPlanes: (planes, coding) => {
      main = { planes, coding }
    },
    draw: (view) => {
      last = view
      if (main) machine?.draw(main, view)
    },
    readDelivered: (view) => {
      if (!main || !machine) return new Float32Array()
      const { width, height } = main.planes
      const target = createFloatTarget(gl)
      machine.draw(main, view, target)
      target.begin(width, height)
      const pixels = new Float32Array(width * height * 4)
      gl.readPixels(0, 0, width, height, gl.RGBA, gl.FLOAT, pixels)
      target.dispose()
      return pixels
    },
    finish: () => {
      gl.bindFramebuffer(gl.FRAMEBUFFER, null)
      gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4))
    },
    dispose: () => {
      canvas.removeEventListener('webglcontextlost', onLost)
      canvas.removeEventListener('webglcontextrestored', onRestored)
      machine?.dispose()
    },
  })
}
