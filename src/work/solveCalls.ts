import type { Result } from '../core/base/result.ts'
import type { CensusData } from '../core/census/censusData.ts'
import type { WeightedColours } from '../core/census/weightedColours.ts'
import type { ChartKind, Measured, NamedProfile } from '../core/chart/measureChart.ts'
import type { Region } from '../core/chart/region.ts'
import type { Grade } from '../core/colour/grade.ts'
import type { Triple } from '../core/colour/triple.ts'
import type { AfterglowWish } from '../core/lineup/afterglow.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { BroughtInside } from '../core/solve/bringInside.ts'
import type { Matched } from '../core/solve/matchTo.ts'
import type { NeutralGrade } from '../core/solve/neutralHere.ts'
import type { RestoredDye } from '../core/solve/restoreDye.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'

/** One frame as it is to be read for its colours, before the grade. */
export type FrameOfColours = {
  readonly planes: Planes
  readonly coding: Coding
  readonly framing: Framing
}

/** A picture's colours before the grade: a cue's, all counted, or those of one frame. */
export type ColoursOf =
  | { readonly kind: 'census'; readonly census: CensusData }
  | { readonly kind: 'frame'; readonly frame: FrameOfColours }

/** A picture of a chart, and how it is coded. */
export type ChartPicture = { readonly planes: Planes; readonly coding: Coding }

type Call<Args, Answer> = {
  readonly args: Args
  readonly progress: never
  readonly answer: Answer
}

/** What the solve worker does: it looks for grades and bases, one question after the other. */
export type SolveCalls = {
  readonly bringInside: Call<
    {
      readonly census: CensusData
      readonly grade: Grade
      readonly profile: ToleranceProfile
    },
    Result<BroughtInside>
  >
  readonly neutralHere: Call<
    { readonly patches: readonly Triple[]; readonly grade: Grade },
    Result<NeutralGrade>
  >
  readonly matchTo: Call<
    {
      readonly own: ColoursOf
      readonly grade: Grade
      /** The reference, and the grade it is delivered with. */
      readonly reference: ColoursOf
      readonly referenceGrade: Grade
    },
    Result<Matched>
  >
  readonly frameColours: Call<FrameOfColours, WeightedColours>
  readonly restoreDye: Call<
    {
      readonly colours: WeightedColours
      readonly neutrals: readonly Triple[]
      readonly bestKept: number
    },
    Result<RestoredDye>
  >
  /** A picture of a chart as a `data:` address, in its own size. */
  readonly chartPicture: Call<ChartPicture, string>
  readonly chart: Call<
    ChartPicture & {
      readonly kind: ChartKind
      readonly regions: readonly Region[]
      readonly wish: AfterglowWish
    },
    Result<readonly Measured[]>
  >
  /** The streak in captured line profiles. */
  readonly streak: Call<
    { readonly profiles: readonly NamedProfile[]; readonly wish: AfterglowWish },
    Result<readonly Measured[]>
  >
}
