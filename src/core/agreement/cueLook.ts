import { canonicalJson, type Json } from '../base/canonicalJson.ts'
import { sha256OfText } from '../base/sha256.ts'
import { type Grade, sameGrade } from '../colour/grade.ts'
import { sameMatrix3 } from '../colour/matrix3.ts'
import { sameTriple } from '../colour/triple.ts'
import type { FilmBase } from '../film/filmBase.ts'
import { cueEnd } from '../job/cueList.ts'
import type { Cue, Media, RampShape, Reel } from '../job/job.ts'
import { type Framing, sameFraming } from '../picture/framing.ts'
import type { ProcessList } from '../process/processList.ts'
import type { Frame } from '../time/frame.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'

/** The scan as far as it decides a picture: what its file holds and how its samples are read. */
export type LookScan = Pick<
  Media,
  | 'bytes'
  | 'checksum'
  | 'width'
  | 'height'
  | 'displayAspect'
  | 'depth'
  | 'layout'
  | 'matrix'
  | 'range'
>

/** A base with the SHA-256 of its process list in the list's place. */
export type LookBase = Omit<FilmBase, 'list'> & { readonly list: string | null }

/** What a cue is held to: a profile that is only called otherwise is the same. */
export type LookTolerance = Pick<
  ToleranceProfile,
  'rgb' | 'luma' | 'composite' | 'area' | 'filtered'
>

/** All that decides the pictures of a cue, as plain numbers. */
export type CueLook = {
  readonly scan: LookScan
  readonly base: LookBase
  /** First frame, and the first after the cue. */
  readonly first: Frame
  readonly end: Frame
  readonly ramp: number
  readonly rampShape: RampShape
  /** What values ramp from: those of the cue before; null where nothing ramps. */
  readonly from: { readonly grade: Grade; readonly framing: Framing } | null
  readonly grade: Grade
  readonly framing: Framing
  readonly tolerance: LookTolerance
}

/** The reel a cue is on, with its cues in order, and the tolerance the job is held to. */
export type LookGround = {
  readonly reel: Reel
  readonly cues: readonly Cue[]
  readonly profile: ToleranceProfile
}

/** Nothing in a look but finite numbers and words of ours, so that it has a canonical form. */
const canonicalSum = (value: unknown): string => {
  const text = canonicalJson(value as Json)
  if (!text.ok) throw new Error(text.problems[0].says)
  return sha256OfText(text.value)
}

/** The SHA-256 of a look in the canonical form of RFC 8785. */
export const lookSum = (look: CueLook): string => canonicalSum(look)

const listSums = new WeakMap<ProcessList, string>()

/** Of its steps. A list can hold a million numbers: its checksum is taken once for each list. */
const listSum = (list: ProcessList | null): string | null => {
  if (list === null) return null
  const known = listSums.get(list)
  if (known !== undefined) return known
  const sum = canonicalSum(list.steps)
  listSums.set(list, sum)
  return sum
}

const lookTolerance = ({ rgb, luma, composite, area, filtered }: ToleranceProfile) => ({
  rgb,
  luma,
  composite,
  area,
  filtered,
})

const lookScan = (media: Media): LookScan => {
  const { bytes, checksum, width, height, displayAspect, depth, layout, matrix, range } = media
  return { bytes, checksum, width, height, displayAspect, depth, layout, matrix, range }
}

/** The look of the cue at `index` as it is now; of another grade than its own where one is given. */
export const cueLook = (
  { reel, cues, profile }: LookGround,
  index: number,
  grade?: Grade,
): CueLook | undefined => {
  const cue = cues[index]
  if (!cue) return undefined
  const before = cue.ramp > 0 ? cues[index - 1] : undefined
  return {
    scan: lookScan(reel.media),
    base: { ...reel.base, list: listSum(reel.base.list) },
    first: cue.first,
    end: cueEnd(cues, index, reel.frames),
    ramp: cue.ramp,
    rampShape: cue.rampShape,
    from: before ? { grade: before.grade, framing: before.framing } : null,
    grade: grade ?? cue.grade,
    framing: cue.framing,
    tolerance: lookTolerance(profile),
  }
}

/** A part of a look that may differ from another's. */
export type LookPart =
  | 'scan'
  | 'base'
  | 'beginning'
  | 'end'
  | 'ramp'
  | 'grade'
  | 'framing'
  | 'tolerance'

const sameScan = (was: LookScan, now: LookScan): boolean =>
  // A checksum that was taken since tells nothing else of the scan than was known.
  (was.checksum === null || was.checksum === now.checksum) &&
  was.bytes === now.bytes &&
  was.width === now.width &&
  was.height === now.height &&
  was.displayAspect === now.displayAspect &&
  was.depth === now.depth &&
  was.layout === now.layout &&
  was.matrix === now.matrix &&
  was.range === now.range

const sameLookBase = (was: LookBase, now: LookBase): boolean =>
  was.scan === now.scan &&
  was.list === now.list &&
  sameTriple(was.clear, now.clear) &&
  sameTriple(was.gamma, now.gamma) &&
  sameMatrix3(was.dyes, now.dyes)

const sameFrom = (was: CueLook['from'], now: CueLook['from']): boolean =>
  was === null || now === null
    ? was === now
    : sameGrade(was.grade, now.grade) && sameFraming(was.framing, now.framing)

const sameLimits = (was: readonly number[] | null, now: readonly number[] | null): boolean =>
  was === null || now === null ? was === now : was[0] === now[0] && was[1] === now[1]

const sameTolerance = (was: LookTolerance, now: LookTolerance): boolean =>
  was.area === now.area &&
  was.filtered === now.filtered &&
  sameLimits(was.rgb, now.rgb) &&
  sameLimits(was.luma, now.luma) &&
  sameLimits(was.composite, now.composite)

const SAME: Readonly<Record<LookPart, (was: CueLook, now: CueLook) => boolean>> = {
  scan: (was, now) => sameScan(was.scan, now.scan),
  base: (was, now) => sameLookBase(was.base, now.base),
  beginning: (was, now) => was.first === now.first,
  end: (was, now) => was.end === now.end,
  ramp: (was, now) =>
    was.ramp === now.ramp &&
    (was.ramp === 0 || was.rampShape === now.rampShape) &&
    sameFrom(was.from, now.from),
  grade: (was, now) => sameGrade(was.grade, now.grade),
  framing: (was, now) => sameFraming(was.framing, now.framing),
  tolerance: (was, now) => sameTolerance(was.tolerance, now.tolerance),
}

const PARTS = Object.keys(SAME) as LookPart[]

/** Whether two looks make the same pictures from the same scan, held to the same. */
export const sameLook = (was: CueLook, now: CueLook): boolean =>
  PARTS.every((part) => SAME[part](was, now))

/** The parts in which a look is another than it was. */
export const lookDifferences = (was: CueLook, now: CueLook): readonly LookPart[] =>
  PARTS.filter((part) => !SAME[part](was, now))
