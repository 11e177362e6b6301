import type { Problem } from '../core/base/problem.ts'
import type { CensusStanding } from '../core/census/censusStanding.ts'
import type { CensusVerdict } from '../core/census/censusVerdict.ts'
import type { Grade } from '../core/colour/grade.ts'
import type { GradeColumn } from '../core/colour/gradeColumns.ts'
import { type CarriedPart, GRADE_PARTS } from '../core/job/commands/carryValues.ts'
import type { History } from '../core/job/history.ts'
import type { CueId, ReelId } from '../core/job/recordIds.ts'
import type { MatrixName, RangeName } from '../core/picture/planes.ts'
import type { Frame } from '../core/time/frame.ts'
import type { Rate } from '../core/time/rate.ts'
import type { PictureLevels } from '../core/tolerance/pictureLevels.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import { type Agreeing, INITIAL_AGREEING } from './agreeing.ts'
import { type Charting, INITIAL_CHARTING } from './charting.ts'
import type { Clipboard } from './clipboard.ts'
import { type FlashWatch, INITIAL_FLASH_WATCH } from './flashWatch.ts'
import { type Guiding, INITIAL_GUIDING } from './guiding.ts'
import type { Importing } from './importing.ts'
import { INITIAL_INSTRUMENTS, type InstrumentSettings } from './instrumentSettings.ts'
import { INITIAL_LEDGER, type LedgerView } from './ledgerView.ts'
import { INITIAL_LINING_UP, type LiningUp } from './liningUp.ts'
import { type LookBook, NO_LOOKS } from './lookBook.ts'
import { INITIAL_MACHINE_HISTORY, type MachineHistory } from './machineHistory.ts'
import { INITIAL_POINTING, type Pointing } from './pointing.ts'
import { INITIAL_PREFERENCES, type Preferences } from './preferences.ts'
import type { ProcessOffer } from './processOffer.ts'
import type { Proposal } from './proposal.ts'
import type { Rescan } from './rescan.ts'
import { INITIAL_SURFACE, type Surface } from './surface.ts'
import { INITIAL_TRANSFERRING, type Transferring } from './transferring.ts'
import { NO_VERDICTS, type VerdictBook } from './verdictBook.ts'
import { INITIAL_VIEW, type View } from './view.ts'

/** The parts of the job that have a screen of their own. */
export type Step = 'prepare' | 'line-up' | 'rehearse' | 'agree' | 'transfer' | 'hand-over'

/** What the controls of the bench are for: one sheet of them is out at a time. */
export type Sheet = 'grade' | 'framing' | 'cue'

/** What lies over the bench, or is open to be typed in, by a command. */
export type Opened = 'settings' | 'commands' | 'go-to' | 'match-to' | 'save-frame'

export type Playback = {
  readonly isPlaying: boolean
  /** 1 forwards at the reel's rate, 2 twice as fast, −1 backwards. */
  readonly speed: number
  readonly isLooping: boolean
  readonly isTicking: boolean
  /** Frames that came too late to be shown since play began. */
  readonly late: number
}

/** How far a long job is. */
export type Progress = {
  readonly done: number
  readonly total: number
  readonly framesPerSecond: number
  readonly secondsLeft: number | undefined
}

/** News for the person, a sentence a line; a notice with a problem stays until it is put away. */
export type Notice = {
  readonly id: number
  readonly says: string
  readonly isProblem: boolean
  /** A change that was refused; the next one that is done puts the notice away. */
  readonly isRefusal: boolean
}

/** What a file leaves open and the person must say before it can be read as a signal. */
export type CodingQuestion = {
  readonly name: string
  readonly picture: string
  readonly asksMatrix: boolean
  readonly asksRange: boolean
  readonly asksRate: boolean
  readonly likely: CodingAnswer
}

export type CodingAnswer = {
  readonly matrix: MatrixName
  readonly range: RangeName
  readonly rate: Rate
}

export type MediaState = 'none' | 'opening' | 'ready' | 'missing'

export type Saving = {
  /** 'unsaved' while a change waits to be written to the browser's storage. */
  readonly state: 'saved' | 'unsaved' | 'failed'
  readonly at: number | undefined
}

/** A verdict on all pixels of a cue from its colours, and what it holds for. */
export type LiveVerdict = {
  readonly grade: Grade
  readonly profile: ToleranceProfile
  /** What the colours depend on: see `censusKeyOf`. */
  readonly colours: string
  readonly verdict: CensusVerdict
  readonly standing: CensusStanding
}

export type AppState = {
  readonly history: History | undefined
  /** The name under which the browser's storage keeps this job. */
  readonly shelfKey: string | undefined
  readonly saving: Saving
  readonly reelId: ReelId | undefined
  readonly media: MediaState
  readonly step: Step
  readonly playhead: Frame
  readonly selection: readonly CueId[]
  /** The cue a range selection starts from. */
  readonly anchor: CueId | undefined
  readonly view: View
  readonly sheet: Sheet
  readonly opened: Opened | undefined
  readonly instruments: InstrumentSettings
  readonly ledger: LedgerView
  readonly pointing: Pointing
  /** Whether a change to several cues adds to each (else it sets all alike). */
  readonly isTrimming: boolean
  readonly clipboard: Clipboard | undefined
  /** What is carried when values are pasted or carried on. */
  readonly carriedParts: readonly CarriedPart[]
  /** The curve whose handles the transfer plot shows. */
  readonly plotColumn: GradeColumn
  /** A change that is shown but not kept yet. */
  readonly proposal: Proposal | undefined
  /** A list made elsewhere that is looked at before it is taken. */
  readonly importing: Importing | undefined
  /** A process list that waits to be given a place. */
  readonly processOffer: ProcessOffer | undefined
  /** Another scan of the reel that waits to be used, followed or left. */
  readonly rescan: Rescan | undefined
  readonly transferring: Transferring
  readonly flashWatch: FlashWatch
  readonly agreeing: Agreeing
  readonly liningUp: LiningUp
  readonly guiding: Guiding
  readonly charting: Charting
  readonly machineHistory: MachineHistory
  /** What is being dragged or nudged now; pictures are drawn coarsely until it rests. */
  readonly gesture: string | undefined
  /** Cues that have been under the line on this computer. */
  readonly looked: ReadonlySet<CueId>
  /** What cues look like, by `censusKeyOf`, as far as their colours were counted. */
  readonly looks: LookBook
  readonly preferences: Preferences
  /** Game pad and MIDI control surfaces as they are now. */
  readonly surface: Surface
  readonly playback: Playback
  readonly finding: Progress | undefined
  readonly checking: Progress | undefined
  /** Verdicts by what they hold for, so that undo brings an old one back. */
  readonly verdicts: VerdictBook
  /** What the colours of cues in hand tell of their grade as it is; follows every change. */
  readonly live: ReadonlyMap<CueId, LiveVerdict>
  /** Levels of the frame on screen as it would be delivered. */
  readonly levels: PictureLevels | undefined
  /** Whether measuring is done by the reference, as this browser cannot run the kernel. */
  readonly isReference: boolean
  readonly notice: Notice | undefined
  /** Asked of the person when a reel is opened; answered through the services. */
  readonly question: CodingQuestion | undefined
}

export const INITIAL_STATE: AppState = {
  history: undefined,
  shelfKey: undefined,
  saving: { state: 'saved', at: undefined },
  reelId: undefined,
  media: 'none',
  step: 'rehearse',
  playhead: 0 as Frame,
  selection: [],
  anchor: undefined,
  view: INITIAL_VIEW,
  sheet: 'grade',
  opened: undefined,
  instruments: INITIAL_INSTRUMENTS,
  ledger: INITIAL_LEDGER,
  pointing: INITIAL_POINTING,
  isTrimming: true,
  clipboard: undefined,
  carriedParts: GRADE_PARTS,
  plotColumn: 'all',
  proposal: undefined,
  importing: undefined,
  processOffer: undefined,
  rescan: undefined,
  transferring: INITIAL_TRANSFERRING,
  flashWatch: INITIAL_FLASH_WATCH,
  agreeing: INITIAL_AGREEING,
  liningUp: INITIAL_LINING_UP,
  guiding: INITIAL_GUIDING,
  charting: INITIAL_CHARTING,
  machineHistory: INITIAL_MACHINE_HISTORY,
  gesture: undefined,
  looked: new Set(),
  looks: NO_LOOKS,
  preferences: INITIAL_PREFERENCES,
  surface: INITIAL_SURFACE,
  playback: { isPlaying: false, speed: 1, isLooping: false, isTicking: false, late: 0 },
  finding: undefined,
  checking: undefined,
  verdicts: NO_VERDICTS,
  live: new Map(),
  levels: undefined,
  isReference: false,
  notice: undefined,
  question: undefined,
}

/** What outlives a job: the person's own settings, and what this browser can do. */
export const keptBetweenJobs = (state: AppState) => ({
  isReference: state.isReference,
  preferences: state.preferences,
  liningUp: state.liningUp,
  machineHistory: state.machineHistory,
  charting: state.charting,
  surface: state.surface,
  instruments: state.instruments,
  carriedParts: state.carriedParts,
  isTrimming: state.isTrimming,
  ledger: { ...INITIAL_LEDGER, timing: state.ledger.timing },
  view: { ...INITIAL_VIEW, display: state.view.display },
  playback: { ...INITIAL_STATE.playback, isTicking: state.playback.isTicking },
})

/** The sentence shown for problems: the first, and how many more there are. */
export const sentenceOf = (problems: readonly Problem[]): string => {
  const [first, ...rest] = problems
  if (!first) return ''
  return rest.length === 0 ? first.says : `${first.says} (and ${rest.length} more)`
}
