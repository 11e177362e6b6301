import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import { codeScale } from '../core/colour/codeValues.ts'
import { type Grade, IDENTITY_GRADE, sameGrade } from '../core/colour/grade.ts'
import { LUMA_WEIGHTS } from '../core/colour/lumaWeights.ts'
import { triple } from '../core/colour/triple.ts'
import { yCbCrToRgbFactors } from '../core/colour/yCbCr.ts'
import { isPlainBase, PRINT_BASE } from '../core/film/filmBase.ts'
import { NEGATIVE_GAMMA } from '../core/film/printingDensity.ts'
import { framingMap, IDENTITY_FRAMING } from '../core/picture/framing.ts'
import { type Coding, chromaHeight, chromaWidth, type Planes } from '../core/picture/planes.ts'
import { createFloatTarget, type FloatTarget } from './floatTarget.ts'
import { createGlProgram, type GlProgram } from './glProgram.ts'
import { createPlaneTextures } from './planeTextures.ts'
import type { PreviewView } from './previewView.ts'
import {
  COVER_VERTEX,
  GRADE_FRAGMENT,
  MOVING_FRAGMENT,
  SCANS,
  SHOW_FRAGMENT,
  withBase,
} from './shaders.ts'

/** Draws frames as they will be delivered. */
export type Preview = {
  readonly setPlanes: (planes: Planes, coding: Coding) => void
  /** Draws the last frame set, filling the canvas. Nothing is drawn before one is set. */
  readonly draw: (view: PreviewView) => void
  /** The delivered R′G′B′ at the picture's own size, unclipped: RGBA floats, top row first. */
  readonly readDelivered: (view: PreviewView) => Float32Array
  readonly dispose: () => void
}

/** Samples across a pixel where the canvas is smaller than the picture; more would not show. */
const MOST_TAPS = 3

/** A limit as a shader can hold it: not every one knows infinity (GLSL ES 3.00 §4.5.1). */
const inReach = (limit: number): number => Math.min(1e30, Math.max(-1e30, limit))

type Held = { readonly planes: Planes; readonly coding: Coding }

type Machine = {
  readonly upload: (planes: Planes) => void
  readonly draw: (held: Held, view: PreviewView, target: FloatTarget | undefined) => void
  readonly target: () => FloatTarget
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
  let machine: Machine | undefined = createMachine(gl)
  let held: Held | undefined
  let last: PreviewView | undefined

  const onLost = (event: Event): void => {
    event.preventDefault()
    machine = undefined
  }
  const onRestored = (): void => {
    gl.getExtension('EXT_color_buffer_float')
    machine = createMachine(gl)
    if (held) machine.upload(held.planes)
    if (held && last) machine.draw(held, last, undefined)
  }
  canvas.addEventListener('webglcontextlost', onLost)
  canvas.addEventListener('webglcontextrestored', onRestored)
  return ok({
    setPlanes: (planes, coding) => {
      held = { planes, coding }
      machine?.upload(planes)
    },
    draw: (view) => {
      last = view
      if (held) machine?.draw(held, view, undefined)
    },
    readDelivered: (view) => {
      if (!held || !machine) return new Float32Array()
      const { width, height } = held.planes
      const target = machine.target()
      machine.draw(held, view, target)
      const pixels = new Float32Array(width * height * 4)
      gl.readPixels(0, 0, width, height, gl.RGBA, gl.FLOAT, pixels)
      target.dispose()
      return pixels
    },
    dispose: () => {
      canvas.removeEventListener('webglcontextlost', onLost)
      canvas.removeEventListener('webglcontextrestored', onRestored)
      machine?.dispose()
    },
  })
}

/** A grading program without the base stage, and one with it from when it is first needed. */
const createBasePrograms = (gl: WebGL2RenderingContext, fragment: string) => {
  const plain = createGlProgram(gl, COVER_VERTEX, fragment)
  let based: GlProgram | undefined
  return {
    of: ({ base = PRINT_BASE }: Coding): GlProgram => {
      if (isPlainBase(base)) return plain
      based ??= createGlProgram(gl, COVER_VERTEX, withBase(fragment))
      return based
    },
    dispose: (): void => {
      plain.dispose()
      based?.dispose()
    },
  }
}

const createMachine = (gl: WebGL2RenderingContext): Machine => {
  const showProgram = createGlProgram(gl, COVER_VERTEX, SHOW_FRAGMENT)
  const gradePrograms = createBasePrograms(gl, GRADE_FRAGMENT)
  const movingPrograms = createBasePrograms(gl, MOVING_FRAGMENT)
  const textures = createPlaneTextures(gl)
  const graded = createFloatTarget(gl)
  const scanned = createFloatTarget(gl)
  const drawn = new Map<FloatTarget, { held: Held; grade: Grade }>()

  /** Gives a grading program its planes, their coding with its base, and the grade. */
  const readPlanes = ({ use, place }: GlProgram, { planes, coding }: Held, grade: Grade): void => {
    const { width, height, layout, depth } = planes
    const { black, peak, chromaZero, chromaHalf } = codeScale(depth, coding.range)
    const { crToR, cbToG, crToG, cbToB } = yCbCrToRgbFactors(coding.matrix)
    use()
    textures.bind()
    gl.uniform1i(place('first'), 0)
    gl.uniform1i(place('second'), 1)
    gl.uniform1i(place('third'), 2)
    gl.uniform2i(place('chromaSize'), chromaWidth(layout, width), chromaHeight(layout, height))
    const isHalfWide = layout === '420' || layout === '422'
    gl.uniform2i(place('isSubsampled'), Number(isHalfWide), Number(layout === '420'))
    gl.uniform1i(place('isRgb'), Number(layout === 'rgb'))
    gl.uniform2f(place('lumaCodes'), black, 1 / (peak - black))
    gl.uniform2f(place('chromaCodes'), chromaZero, 1 / (2 * chromaHalf))
    gl.uniform4f(place('toRgb'), crToR, cbToG, crToG, cbToB)
    const { base = PRINT_BASE } = coding
    const isNegative = base.scan === 'negative'
    gl.uniform1i(place('scan'), SCANS[base.scan])
    gl.uniform3f(place('clearDensity'), ...(isNegative ? base.clear : triple(0)))
    gl.uniform3f(place('filmGamma'), ...(isNegative ? base.gamma : triple(NEGATIVE_GAMMA)))
    gl.uniformMatrix3fv(place('dyes'), true, base.dyes.flat())
    gl.uniform3f(place('lift'), ...grade.lift)
    gl.uniform3f(place('gain'), ...grade.gain)
    const [r, g, b] = grade.gamma
    gl.uniform3f(place('power'), 1 / r, 1 / g, 1 / b)
    gl.uniform1f(place('saturation'), grade.saturation)
  }

  /** Grades the planes into a target, unless it holds just that already. */
  const gradeInto = (target: FloatTarget, held: Held, grade: Grade): void => {
    const before = drawn.get(target)
    if (before?.held === held && sameGrade(before.grade, grade)) return
    drawn.set(target, { held, grade })
    target.begin(held.planes.width, held.planes.height)
    readPlanes(gradePrograms.of(held.coding), held, grade)
    gl.drawArrays(gl.TRIANGLES, 0, 3)
  }

  const draw = (held: Held, view: PreviewView, target: FloatTarget | undefined): void => {
    const { width, height } = held.planes
    const { compare, excursions } = view
    const isMoving = view.isMoving && target === undefined
    if (!isMoving && compare.kind !== 'scanned') gradeInto(graded, held, view.grade)
    if (!isMoving && compare.kind !== 'none') gradeInto(scanned, held, IDENTITY_GRADE)
    if (target) target.begin(width, height)
    else {
      gl.bindFramebuffer(gl.FRAMEBUFFER, null)
      gl.viewport(0, 0, gl.drawingBufferWidth, gl.drawingBufferHeight)
    }
    const targetWidth = target ? width : gl.drawingBufferWidth
    const targetHeight = target ? height : gl.drawingBufferHeight
    const framing = compare.kind === 'scanned' ? IDENTITY_FRAMING : view.framing
    const map = framingMap(framing, width, height, held.coding.pixelAspect)
    const program = isMoving ? movingPrograms.of(held.coding) : showProgram
    const { place } = program
    if (isMoving) readPlanes(program, held, view.grade)
    else {
      const scale = Math.max(Math.hypot(map.xx, map.yx), Math.hypot(map.xy, map.yy))
      const shrink = Math.max(width / targetWidth, height / targetHeight) * scale
      const taps = target ? 1 : Math.min(MOST_TAPS, Math.max(1, Math.ceil(shrink - 0.01)))
      program.use()
      graded.bind(0)
      scanned.bind(1)
      gl.uniform1i(place('graded'), 0)
      gl.uniform1i(place('scanned'), 1)
      gl.uniform1i(place('isUpright'), Number(target === undefined))
      gl.uniform1i(place('taps'), taps)
    }
    gl.uniform2f(place('pictureSize'), width, height)
    gl.uniform2f(place('targetSize'), targetWidth, targetHeight)
    const { xx, xy, yx, yy, offsetX, offsetY, open } = map
    gl.uniformMatrix3x2fv(place('framing'), false, [xx, yx, xy, yy, offsetX, offsetY])
    gl.uniform4f(place('open'), open.left, open.top, open.right, open.bottom)
    const wipeAt = compare.kind === 'wipe' ? compare.at : compare.kind === 'scanned' ? 1 : 0
    gl.uniform1f(place('wipeAt'), wipeAt)
    gl.uniform1i(place('marks'), Number(excursions !== null))
    if (excursions) {
      const { rgb, luma, composite, matrix } = excursions
      gl.uniform4fv(place('limits'), [...rgb, ...luma].map(inReach))
      gl.uniform2fv(place('compositeLimits'), composite.map(inReach))
      gl.uniform3f(place('lumaWeights'), ...LUMA_WEIGHTS[matrix])
    }
    gl.drawArrays(gl.TRIANGLES, 0, 3)
  }
  return {
    upload: textures.upload,
    draw,
    target: () => createFloatTarget(gl),
    dispose: () => {
      for (const part of [gradePrograms, showProgram, movingPrograms, textures, graded, scanned])
        part.dispose()
    },
  }
}
