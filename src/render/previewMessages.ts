import type { Problem } from '../core/base/problem.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { PreviewView, Side } from './previewView.ts'

/** A picture that is to be on a canvas, and with how many pixels. */
export type PreviewDrawing = {
  readonly width: number
  readonly height: number
  /** Whether half as many pixels each way will do where graphics are slow: while it is dragged. */
  readonly mayShrink: boolean
  readonly planes: Planes
  readonly coding: Coding
  readonly view: PreviewView
}

/** A drawing whose frames are named by where they stand in a list, to cross to a worker once. */
export type SentDrawing = {
  readonly width: number
  readonly height: number
  readonly mayShrink: boolean
  readonly coding: Coding
  readonly view: PreviewView<number>
}

/** A frame that the worker needs for a drawing: sent, or the one it had under this number. */
export type SentFrame = Planes | number

export type ToPreview =
  | { readonly kind: 'attach'; readonly id: number; readonly canvas: OffscreenCanvas }
  | {
      readonly kind: 'draw'
      readonly id: number
      /** The main frame first. All frames that are not among them are forgotten. */
      readonly frames: readonly SentFrame[]
      readonly drawing: SentDrawing
    }
  | { readonly kind: 'detach'; readonly id: number }

export type FromPreview =
  /** A drawing is on its canvas. */
  | { readonly kind: 'drawn'; readonly id: number }
  | { readonly kind: 'problems'; readonly id: number; readonly problems: readonly Problem[] }
  | { readonly kind: 'error'; readonly id: number; readonly message: string }

/** One end of a channel: a worker, or a worker's own scope. */
export type PreviewPort<Out, In> = {
  readonly postMessage: (message: Out, transfer: Transferable[]) => void
  readonly addEventListener: (
    type: 'message',
    listener: (event: { readonly data: In }) => void,
  ) => void
}

const sidesOf = <Frame>({ compare }: PreviewView<Frame>): readonly Side<Frame>[] =>
  compare.kind === 'none'
    ? []
    : compare.kind === 'tiles'
      ? compare.others.map(({ side }) => side)
      : [compare.other]

/** The same view with its frames named otherwise. */
export const withFrames = <From, To>(
  view: PreviewView<From>,
  rename: (frame: From) => To,
): PreviewView<To> => {
  const { compare } = view
  const renamed = (side: Side<From>): Side<To> => ({ ...side, planes: rename(side.planes) })
  if (compare.kind === 'none') return { ...view, compare }
  if (compare.kind === 'tiles') {
    const others = compare.others.map(({ side, area }) => ({ side: renamed(side), area }))
    return { ...view, compare: { ...compare, others } }
  }
  return { ...view, compare: { ...compare, other: renamed(compare.other) } }
}

/** All frames of a drawing, each once, the main one first. */
export const framesOf = ({ planes, view }: PreviewDrawing): readonly Planes[] => [
  ...new Set([planes, ...sidesOf(view).map((side) => side.planes)]),
]
