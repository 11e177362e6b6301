import type { Grade } from '../core/colour/grade.ts'
import type { HandOverFormat } from '../core/formats/handOverFormats.ts'
import type { PreparedFormat } from '../core/formats/prepareFormat.ts'
import type { StillStage } from '../core/formats/stillFileName.ts'
import type { StillFormat } from '../core/formats/stillFormats.ts'
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
import type { PackShape } from '../store/agreeing.ts'
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

/** What is handed over: prepared format by format, and written when it is saved. */
export type HandOverDesk = {
  /** Tells of each format which files there would be and what it loses. */
  readonly prepare: (onPart: (part: PreparedFormat) => void, signal: AbortSignal) => Promise<void>
  readonly saveFile: (format: HandOverFormat, name: string) => Promise<void>
  /** All files of a format in one .zip. */
  readonly saveFormat: (format: HandOverFormat) => Promise<void>
  /** The statement of losses as plain text. */
  readonly saveStatement: () => Promise<void>
  /** The job, every list and the statement in one .zip; `onFormat` tells which is being written. */
  readonly saveWhole: (onFormat: (format: HandOverFormat) => void) => Promise<void>
}

/** How the frame under the line is saved as a picture file. */
export type StillChoice = { readonly stage: StillStage; readonly format: StillFormat }

/** What a report is to have in it; `onProgress` tells in words how far it is. */
export type ReportOptions = {
  readonly wantsChecksum: boolean
  readonly onProgress: (words: string) => void
  readonly signal: AbortSignal
}

/** What can be done with another scan of the reel that was opened. */
export type RescanChoices = {
  /** Uses it with the cues where they are. */
  readonly use: () => void
  /** Goes back to the scan before. */
  readonly leave: () => void
  /** Looks for the pictures of each cue on it. */
  readonly follow: () => Promise<void>
  /** Asks for the list the reel was cut anew by, and lets the cues follow that. */
  readonly followList: () => Promise<void>
  readonly stop: () => void
  /** Does what was found, as one step of the history. */
  readonly apply: () => void
  readonly saveReport: () => Promise<void>
}

/** The transfer of the reel on screen; what comes of it stands in the store (`Transferring`). */
export type TransferDesk = {
  /** Takes the checksum of the open scan, and puts it into the job where that has none yet. */
  readonly takeChecksum: () => Promise<void>
  /** Asks the browser how much room there is, and looks for an unfinished pass of this reel. */
  readonly look: () => Promise<void>
  /** Asks where to write, and makes the pass; resolves once it is done, refused or stopped. */
  readonly start: () => Promise<void>
  /** Goes on with the unfinished pass without doing again what is done. */
  readonly goOn: () => Promise<void>
  readonly pause: () => void
  readonly unpause: () => void
  /** Stops the pass; what is done stays and can be gone on with. */
  readonly stop: () => void
  /** Throws away what the unfinished pass has done. */
  readonly discard: () => Promise<void>
}

/** The check of the whole reel for flashes; what it finds stands in the store (`FlashWatch`). */
export type FlashDesk = {
  readonly watch: () => Promise<void>
  readonly stop: () => void
}

/** What a review pack is to have in it. */
export type PackOptions = PackShape & { readonly madeFor: string }

/** Review packs of the reel on screen and their answers; see `Agreeing` in the store. */
export type ReviewDesk = {
  /** Reckons about how large a pack would be. */
  readonly estimate: (shape: PackShape) => Promise<void>
  /** Asks where to save a pack, makes it, and keeps its record in the job. */
  readonly make: (options: PackOptions) => Promise<void>
  readonly stop: () => void
  /** Asks for answer files, and shows what taking them in would do. */
  readonly pickAnswers: () => Promise<void>
  /** The same of an answer as text, as from a mail. */
  readonly readAnswer: (text: string) => Promise<void>
  /** Takes in what was read, as one step of the history. */
  readonly apply: () => void
  readonly leave: () => void
}

/** The guide track of the reel on screen; see `Guiding` in the store. */
export type GuideDesk = {
  /** Asks for a sound file, puts it beside the reel, and measures it. */
  readonly open: () => Promise<void>
  readonly takeOut: () => void
}

/** Line-ups of machines as a file (docs/readings.md). */
export type MachineDesk = {
  readonly open: () => Promise<void>
  readonly save: () => Promise<void>
}

/** Pictures of charts and line profiles at the line-up; see `Charting` in the store. */
export type ChartDesk = {
  readonly open: () => Promise<void>
  /** Measures what is chosen in what is marked out. */
  readonly measure: () => Promise<void>
}

/** Readings and controls of a line-up as a file (docs/readings.md). */
export type ReadingsDesk = {
  readonly open: () => Promise<void>
  readonly save: () => Promise<void>
}

/** What the screen asks of the program around it. Nothing here throws; problems become notices. */
export type Services = {
  readonly openReel: (files: readonly File[]) => Promise<void>
  readonly openAny: (files: readonly File[]) => Promise<void>
  readonly openSample: () => Promise<void>
  readonly pickReel: () => Promise<void>
  readonly pickJob: () => Promise<void>
  /** Asks for a list made elsewhere and lays it over the job to be looked at. */
  readonly pickList: () => Promise<void>
  /** Asks for a process list and puts it into the base of the reel. */
  readonly pickBaseList: () => Promise<void>
  /** Asks for another scan or cut of the reel on screen, whose cues are to stay. */
  readonly pickRescan: () => Promise<void>
  readonly rescan: RescanChoices
  readonly shelvedJobs: () => Promise<readonly ShelvedJob[]>
  readonly openShelved: (key: string) => Promise<void>
  readonly closeJob: () => Promise<void>
  readonly saveJobFile: () => Promise<void>
  readonly answerQuestion: (answer: CodingAnswer | undefined) => void

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
  /** Saves the frame under the line as a picture file; resolves once that is done or left. */
  readonly saveStill: (choice: StillChoice) => Promise<void>
  /** Look for a change and show it, to be kept or left. */
  readonly solve: Solvers

  /** MIDI control surfaces: turning them on asks the browser, which may ask the person. */
  readonly midi: { readonly turnOn: () => Promise<void>; readonly turnOff: () => void }

  readonly handOver: HandOverDesk
  readonly transfer: TransferDesk
  readonly flashes: FlashDesk
  readonly review: ReviewDesk
  readonly guide: GuideDesk
  readonly chart: ChartDesk
  /** The history of machines, as a file. */
  readonly machines: MachineDesk
  /** Readings of a line-up, as a file. */
  readonly lineUp: ReadingsDesk
  /** Saves the report of the reel; resolves once that is done, refused or stopped. */
  readonly saveReport: (options: ReportOptions) => Promise<void>
  /** Saves the inspection report of the reel's film. */
  readonly saveInspection: () => Promise<void>
}
