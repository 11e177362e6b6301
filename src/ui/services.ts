import type { Grade } from '../core/colour/grade.ts'
import type { HandOverFormat } from '../core/formats/handOverFormats.ts'
import type { Loss } from '../core/formats/loss.ts'
import type { HeldId } from '../core/job/recordIds.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { Still } from '../core/picture/still.ts'
import type { Frame } from '../core/time/frame.ts'
import type { PictureLevels } from '../core/tolerance/pictureLevels.ts'
import type { ScreenPreview } from '../render/createWorkerPreview.ts'
import type { LevelHistograms } from '../render/drawHistogram.ts'
import type { VectorscopeCounts } from '../render/drawVectorscope.ts'
import type { ChannelColumns, LevelColumns } from '../render/levelCounts.ts'
import type { MeasuredSignal } from '../store/instrumentSettings.ts'
import type { CodingAnswer } from '../store/state.ts'
import type { Solvers } from './solvers.ts'

/** A frame on its way to the screen. */
export type ShownFrame = {
  readonly frame: Frame
  readonly planes: Planes
  readonly coding: Coding
}

/** Something that changes, with its present value. Listeners are told after each change. */
export type Feed<Value> = {
  readonly current: () => Value | undefined
  readonly subscribe: (listener: (value: Value) => void) => () => void
}

/** What the instruments read on the frame on screen: of levels, what is asked to be shown. */
export type Reading = {
  readonly signal: MeasuredSignal
  readonly waveform?: LevelColumns
  readonly channels?: ChannelColumns
  readonly histograms?: LevelHistograms
  readonly vectorscope: VectorscopeCounts
  /** The ends of the signal, where some of it lies past what 10-bit video can carry. */
  readonly past?: Pick<PictureLevels, 'r' | 'g' | 'b' | 'y'>
}

/** A still, and the frame it is of. */
export type PlacedStill = { readonly frame: Frame; readonly still: Still }

/** Small copies of frames; `request` fetches one that is not there yet and tells when it is. */
export type Stills = {
  readonly get: (frame: Frame) => Still | undefined
  /** The still nearest to a frame among those of its cue. */
  readonly nearest: (frame: Frame) => PlacedStill | undefined
  readonly request: (frame: Frame) => void
  readonly subscribe: (listener: () => void) => () => void
}

/** The pictures of held frames, and of stills opened as references; `request` reads one. */
export type HeldPictures = {
  readonly get: (id: HeldId) => ShownFrame | undefined
  readonly request: (id: HeldId) => void
  readonly subscribe: (listener: () => void) => () => void
}

/** A job kept in the browser's own storage. */
export type ShelvedJob = {
  readonly key: string
  readonly title: string
  readonly cues: number
  readonly at: number
}

/** One file to hand over, and what it cannot carry. */
export type HandOverFile = {
  readonly name: string
  readonly text: string
  readonly type: string
}

export type HandOver = {
  readonly format: HandOverFormat
  readonly files: readonly HandOverFile[]
  readonly losses: readonly Loss[]
}

/** What the screen asks of the program around it. Nothing here throws; problems become notices. */
export type Services = {
  readonly openReel: (files: readonly File[]) => Promise<void>
  readonly openJobFile: (file: File) => Promise<void>
  readonly openAny: (files: readonly File[]) => Promise<void>
  readonly openSample: () => Promise<void>
  readonly pickReel: () => Promise<void>
  readonly pickJob: () => Promise<void>
  readonly shelvedJobs: () => Promise<readonly ShelvedJob[]>
  readonly openShelved: (key: string) => Promise<void>
  readonly closeJob: () => Promise<void>
  readonly saveJobFile: () => Promise<void>
  readonly answerQuestion: (answer: CodingAnswer | undefined) => void
  readonly answerConfirmation: (isYes: boolean) => void

  readonly findShots: () => Promise<void>
  readonly stopFinding: () => void

  readonly play: (speed: number) => void
  readonly pause: () => void
  readonly seek: (frame: number) => void

  readonly frames: Feed<ShownFrame>
  readonly readings: Feed<Reading>
  /** Asks for the frame on screen to be measured under these values. */
  readonly measure: (grade: Grade, framing: Framing) => void
  /** Draws pictures on a canvas that nothing was drawn on yet, and that no one draws on again. */
  readonly attachPreview: (canvas: HTMLCanvasElement) => ScreenPreview
  readonly stills: Stills
  readonly held: HeldPictures
  /** Asks for a picture file and opens it as a reference for this session. */
  readonly openStill: () => Promise<void>
  /** Look for a change and show it, to be kept or left. */
  readonly solve: Solvers

  /** MIDI control surfaces: turning them on asks the browser, which may ask the person. */
  readonly midi: { readonly turnOn: () => Promise<void>; readonly turnOff: () => void }

  readonly prepareHandOver: () => readonly HandOver[]
  readonly saveHandOver: (file: HandOverFile) => Promise<void>
}
