import { type DisplaySpace, displayMatrix } from '../core/colour/displaySignal.ts'
import { LUMA_WEIGHTS } from '../core/colour/lumaWeights.ts'
import { IDENTITY_MATRIX3, sameMatrix3 } from '../core/colour/matrix3.ts'
import { isPlainFilm, PRINT_BASE } from '../core/film/filmBase.ts'
import { framingMap } from '../core/picture/framing.ts'
import type { Coding, MatrixName } from '../core/picture/planes.ts'
import { createFloatTarget, type FloatTarget } from './floatTarget.ts'
import type { GlProgram } from './glProgram.ts'
import { createGradedShelf } from './gradedShelf.ts'
import { createListShelf, type ListTexture } from './listShelf.ts'
import { boxOfArea, fitInside, type PixelBox, shownAspect, wipeColumn } from './pixelBox.ts'
import { createPlaneShelf } from './planeTextures.ts'
import {
  type Compare,
  DIFFERENCE_GAIN,
  type ExcursionLimits,
  type PreviewView,
  type Side,
} from './previewView.ts'
import { createProgramSet } from './programSet.ts'
import { readPlanes } from './readPlanes.ts'
import { DIFFERENCE_FRAGMENT, DIRECT_FRAGMENT, GRADE_FRAGMENT, SHOW_FRAGMENT } from './shaders.ts'

/** Draws what a view asks for with one graphics context, as long as that lives. */
export type PreviewMachine = {
  /** On the canvas; or, unclipped and not made for any display, into a target of the main size. */
  readonly draw: (
    main: Pick<Side, 'planes' | 'coding'>,
    view: PreviewView,
    target?: FloatTarget,
  ) => void
  readonly dispose: () => void
}

/** Samples across a pixel where the canvas is smaller than the picture; more would not show. */
const MOST_TAPS = 3

/** Tiles in which a picture is smaller than this are sampled straight from the scan. */
const SMALL_TILE = 1.5

/** The surround of the picture, `--surround` of the style sheet. */
const SURROUND = 0x2b / 255

/** A limit as a shader can hold it: not every one knows infinity (GLSL ES 3.00 §4.5.1). */
const inReach = (limit: number): number => Math.min(1e30, Math.max(-1e30, limit))

/** What is drawn to: the canvas, whose rows run upwards, or a target, whose first row is the top. */
type Surface = {
  readonly width: number
  readonly height: number
  readonly isUpright: boolean
  readonly begin: () => void
}

type Pass = {
  readonly surface: Surface
  readonly display: DisplaySpace
  readonly excursions: ExcursionLimits | null
  readonly mainAspect: number
  readonly isMoving: boolean
  readonly isTiled: boolean
  /** Each pixel read once, at its middle, as the reference does. */
  readonly isExact: boolean
}

const othersOf = (compare: Compare): readonly Side[] =>
  compare.kind === 'none'
    ? []
    : compare.kind === 'tiles'
      ? compare.others.map(({ side }) => side)
      : [compare.other]

const displayDefines = (display: DisplaySpace, matrix: MatrixName): readonly string[] =>
  display === 'as-coded'
    ? []
    : sameMatrix3(displayMatrix(matrix, display), IDENTITY_MATRIX3)
      ? ['TO_SRGB']
      : ['TO_PRIMARIES']

const baseDefines = (
  { base = PRINT_BASE }: Coding,
  list: ListTexture | undefined,
): readonly string[] => [...(isPlainFilm(base) ? [] : ['HAS_FILM']), ...(list ? [list.define] : [])]

export const createPreviewMachine = (gl: WebGL2RenderingContext): PreviewMachine => {
  const programs = createProgramSet(gl)
  const textures = createPlaneShelf(gl)
  const lists = createListShelf(gl)
  const listOf = ({ base }: Coding): ListTexture | undefined =>
    base?.list ? lists.of(base.list) : undefined
  const graded = createGradedShelf(gl, (target, picture) => {
    target.begin(picture.planes.width, picture.planes.height)
    const list = listOf(picture.coding)
    const program = programs.of(GRADE_FRAGMENT, baseDefines(picture.coding, list))
    readPlanes(gl, program, textures.of(picture.planes), list, picture)
    gl.drawArrays(gl.TRIANGLES, 0, 3)
  })
  let apart: readonly [FloatTarget, FloatTarget] | undefined

  const lowerEdge = ({ height, isUpright }: Surface, box: PixelBox): number =>
    isUpright ? height - box.y - box.height : box.y

  const clipTo = (surface: Surface, box: PixelBox): void => {
    gl.enable(gl.SCISSOR_TEST)
    gl.scissor(box.x, lowerEdge(surface, box), box.width, box.height)
  }
  const setArea = ({ place }: GlProgram, surface: Surface, box: PixelBox): void => {
    gl.uniform2f(place('origin'), box.x, lowerEdge(surface, box))
    gl.uniform2f(place('targetSize'), box.width, box.height)
    gl.uniform1i(place('isUpright'), Number(surface.isUpright))
  }
  const setDisplay = ({ place }: GlProgram, matrix: MatrixName, display: DisplaySpace): void => {
    gl.uniformMatrix3fv(place('primaries'), true, displayMatrix(matrix, display).flat())
  }
  const setMarks = ({ place }: GlProgram, excursions: ExcursionLimits | null): void => {
    gl.uniform1i(place('marks'), Number(excursions !== null))
    if (!excursions) return
    const { rgb, luma, composite, matrix } = excursions
    gl.uniform4fv(place('limits'), [...rgb, ...luma].map(inReach))
    gl.uniform2fv(place('compositeLimits'), composite.map(inReach))
    gl.uniform3f(place('lumaWeights'), ...LUMA_WEIGHTS[matrix])
  }

  /** Draws one picture into a box, of which only `clip` is touched. */
  const drawSide = (side: Side, given: PixelBox, clip: PixelBox, pass: Pass): void => {
    const { surface, display } = pass
    const { planes, coding, framing } = side
    const { width, height } = planes
    const box = fitInside(given, pass.mainAspect, shownAspect(planes, coding.pixelAspect))
    const map = framingMap(framing, width, height, coding.pixelAspect)
    const scale = Math.max(Math.hypot(map.xx, map.yx), Math.hypot(map.xy, map.yy))
    const shrink = Math.max(width / box.width, height / box.height) * scale
    const taps = pass.isExact ? 1 : Math.min(MOST_TAPS, Math.max(1, Math.ceil(shrink - 0.01)))
    const isDirect = pass.isMoving || (pass.isTiled && shrink >= SMALL_TILE)
    const picture = isDirect ? undefined : graded.of(side)
    surface.begin()
    clipTo(surface, clip)
    if (box !== given) {
      gl.clearColor(0, 0, 0, 1)
      gl.clear(gl.COLOR_BUFFER_BIT)
    }
    gl.viewport(box.x, lowerEdge(surface, box), box.width, box.height)
    const list = isDirect ? listOf(coding) : undefined
    const fragment = isDirect ? DIRECT_FRAGMENT : SHOW_FRAGMENT
    const program = programs.of(fragment, [
      ...displayDefines(display, coding.matrix),
      ...(isDirect ? baseDefines(coding, list) : []),
      ...(isDirect && !pass.isMoving ? ['HAS_TAPS'] : []),
    ])
    const { place } = program
    if (picture) {
      program.use()
      picture.bind(0)
      gl.uniform1i(place('graded'), 0)
    } else readPlanes(gl, program, textures.of(planes), list, side)
    gl.uniform1i(place('taps'), taps)
    gl.uniform2f(place('pictureSize'), width, height)
    const { xx, xy, yx, yy, offsetX, offsetY, open } = map
    gl.uniformMatrix3x2fv(place('framing'), false, [xx, yx, xy, yy, offsetX, offsetY])
    gl.uniform4f(place('open'), open.left, open.top, open.right, open.bottom)
    setArea(program, surface, box)
    setDisplay(program, coding.matrix, display)
    setMarks(program, side.isMarked ? pass.excursions : null)
    gl.drawArrays(gl.TRIANGLES, 0, 3)
  }

  const drawDifference = (main: Side, other: Side, pass: Pass): void => {
    const { surface, display } = pass
    const { width, height } = surface
    const whole = { x: 0, y: 0, width, height }
    apart ??= [createFloatTarget(gl), createFloatTarget(gl)]
    const [one, two] = apart
    for (const [side, target] of [
      [main, one],
      [other, two],
    ] as const) {
      const begin = () => target.begin(width, height)
      const into = { width, height, isUpright: false, begin }
      const plain = { ...pass, surface: into, display: 'as-coded', excursions: null } as const
      drawSide(side, whole, whole, plain)
    }
    surface.begin()
    gl.disable(gl.SCISSOR_TEST)
    gl.viewport(0, 0, width, height)
    const program = programs.of(DIFFERENCE_FRAGMENT, displayDefines(display, main.coding.matrix))
    program.use()
    one.bind(0)
    two.bind(1)
    gl.uniform1i(program.place('one'), 0)
    gl.uniform1i(program.place('other'), 1)
    gl.uniform1f(program.place('differenceGain'), DIFFERENCE_GAIN)
    setArea(program, surface, whole)
    setDisplay(program, main.coding.matrix, display)
    gl.drawArrays(gl.TRIANGLES, 0, 3)
  }

  const drawCompared = (main: Side, compare: Compare, pass: Pass): void => {
    const { surface } = pass
    const { width, height } = surface
    const whole = { x: 0, y: 0, width, height }
    if (compare.kind === 'none') drawSide(main, whole, whole, pass)
    else if (compare.kind === 'difference') drawDifference(main, compare.other, pass)
    else if (compare.kind === 'wipe') {
      const column = wipeColumn(compare.at, width)
      const right = { ...whole, x: column, width: width - column }
      if (right.width > 0) drawSide(main, whole, right, pass)
      if (column > 0) drawSide(compare.other, whole, { ...whole, width: column }, pass)
    } else {
      surface.begin()
      gl.disable(gl.SCISSOR_TEST)
      gl.clearColor(SURROUND, SURROUND, SURROUND, 1)
      gl.clear(gl.COLOR_BUFFER_BIT)
      for (const { side, area } of [{ side: main, area: compare.main }, ...compare.others]) {
        const box = boxOfArea(area, width, height)
        drawSide(side, box, box, pass)
      }
    }
  }

  const draw: PreviewMachine['draw'] = ({ planes, coding }, view, target) => {
    const { compare, excursions, grade, framing } = view
    const display = target ? 'as-coded' : (view.display ?? 'as-coded')
    const main: Side = { planes, coding, grade, framing, isMarked: true }
    const pictures = [main, ...othersOf(compare)]
    const width = target ? planes.width : gl.drawingBufferWidth
    const height = target ? planes.height : gl.drawingBufferHeight
    if (!target) {
      const space = display === 'display-p3' ? 'display-p3' : 'srgb'
      if (gl.drawingBufferColorSpace !== space) gl.drawingBufferColorSpace = space
    }
    const begin = () =>
      target ? target.begin(width, height) : gl.bindFramebuffer(gl.FRAMEBUFFER, null)
    graded.begin(pictures)
    drawCompared(main, compare, {
      surface: { width, height, isUpright: target === undefined, begin },
      display,
      excursions,
      mainAspect: shownAspect(planes, coding.pixelAspect),
      isMoving: view.isMoving && target === undefined,
      isTiled: compare.kind === 'tiles',
      isExact: target !== undefined && compare.kind !== 'tiles',
    })
    gl.disable(gl.SCISSOR_TEST)
    graded.tidy()
    textures.keepOnly(new Set(pictures.map((picture) => picture.planes)))
    if (compare.kind !== 'difference') freeApart()
  }
  const freeApart = (): void => {
    for (const target of apart ?? []) target.dispose()
    apart = undefined
  }
  return {
    draw,
    dispose: () => {
      freeApart()
      for (const part of [programs, textures, lists, graded]) part.dispose()
    },
  }
}
