import { sameGrade } from '../core/colour/grade.ts'
import type { Triple } from '../core/colour/triple.ts'
import { PRINT_BASE } from '../core/film/filmBase.ts'
import { cueNumber } from '../core/job/cueList.ts'
import type { Cue } from '../core/job/job.ts'
import { windowColour } from '../core/picture/windowColour.ts'
import { changedNumbers } from '../core/solve/changedNumbers.ts'
import {
  insideWords,
  matchedWords,
  neutralWords,
  restoredDyeWords,
} from '../core/solve/changeWords.ts'
import { BEST_KEPT } from '../core/solve/restoreDye.ts'
import type { AppStore } from '../store/appStore.ts'
import { censusKeyOf, verdictOf } from '../store/checkKey.ts'
import type { ScanPoint } from '../store/pointing.ts'
import { cuesOf, currentCue, jobOf, profileOf, reelOf } from '../store/queries.ts'
import { editedCues } from '../store/selection.ts'
import type { Feed, HeldPictures, ShownFrame } from '../ui/services.ts'
import type { MatchReference, Solvers } from '../ui/solvers.ts'
import type { CensusDesk } from './censusDesk.ts'
import { createCueColours } from './cueColours.ts'
import { heldColours } from './heldColours.ts'
import { lookForInside } from './lookForInside.ts'
import { createProposalRun, type Found, foundNone, nothingFound } from './proposalRun.ts'
import type { Workers } from './workers.ts'

/** Pixels along each side of the square that is read where a place is picked. */
const PICK_SIZE = 9

/** What was picked: where, its colour before the grade, and the scanned one before the base. */
type Picked = { readonly based: Triple; readonly scanned: Triple }

/** What is said beside a grade where several cues are selected. */
const alsoSelected = (store: AppStore): readonly string[] => {
  const others = editedCues(store).length - 1
  return others > 0
    ? [`It is for the cue under the line only, not for the ${others} selected with it.`]
    : []
}

/** Looks for changes in a worker of its own, and shows what is found as a proposal. */
export const createSolveDesk = (
  store: AppStore,
  workers: Pick<Workers, 'stills' | 'solve'>,
  censuses: CensusDesk,
  frames: Feed<ShownFrame>,
  held: HeldPictures,
  pause: () => void,
): Solvers => {
  const run = createProposalRun(store)
  const colours = createCueColours(store, workers, censuses)
  const picked = new WeakMap<ScanPoint, Picked>()
  let bestKept = BEST_KEPT

  const here = () => {
    const state = store.getState()
    const [job, reel, cue] = [jobOf(state), reelOf(state), currentCue(state)]
    return job && reel && cue ? { state, job, reel, cue } : undefined
  }

  const lookInside = async (cue: Cue, signal: AbortSignal): Promise<Found> => {
    const at = here()
    const key = at && censusKeyOf(at.state, cue)
    if (!at || key === undefined) return nothingFound('There is no cue under the line.')
    const census = await censuses.whenKept(key, signal)
    const measured = verdictOf(store.getState(), cue)
    if (measured?.isInside)
      return nothingFound(insideWords(measured.areaOutside, profileOf(at.job)))
    if (!census)
      return nothingFound(
        'The cue is all ramp, so that no frame has its own grade; shorten the ramp.',
      )
    const worstFrame = measured?.worstFrame
    const found = await lookForInside({ ...at, census, worstFrame }, workers, signal)
    return found.change.kind === 'grade'
      ? { ...found, says: [...found.says, ...alsoSelected(store)] }
      : found
  }
  const bringInside = (): void => {
    const at = here()
    if (!at) return
    pause()
    const key = censusKeyOf(at.state, at.cue)
    const isCounted = key !== undefined && censuses.get(key) !== undefined
    void run({
      label: 'Bring inside',
      meanwhile: isCounted
        ? 'Looking for the smallest change that makes the cue pass…'
        : 'The cue’s colours are being counted; then the smallest change is looked for…',
      look: (signal) => lookInside(at.cue, signal),
    })
  }

  const lookMatch = async (
    cue: Cue,
    wanted: MatchReference,
    name: string,
    signal: AbortSignal,
  ): Promise<Found> => {
    const at = here()
    if (!at) return nothingFound('There is no cue under the line.')
    const { job, reel } = at
    const other = wanted.kind === 'cue' ? job.cues[wanted.id] : undefined
    const otherReel = other && job.reels[other.reel]
    const reference =
      other && otherReel
        ? { of: await colours.ofCue(other, otherReel), grade: other.grade }
        : wanted.kind === 'held'
          ? await heldColours(held, job, wanted.id, signal)
          : undefined
    if (!reference) return nothingFound(`There is no picture of ${name} to match to.`)
    const own = await colours.ofCue(cue, reel)
    const solved = await workers.solve(
      'matchTo',
      { own, grade: cue.grade, reference: reference.of, referenceGrade: reference.grade },
      { signal },
    )
    if (!solved.ok) return foundNone(solved.problems)
    const says = matchedWords(solved.value, name)
    if (solved.value.changed.length === 0) return nothingFound(...says)
    const byOneFrame = [
      ...(own.kind === 'frame' ? ['this cue'] : []),
      ...(reference.of.kind === 'frame' && wanted.kind === 'cue' ? [name] : []),
    ]
    return {
      says: [
        ...says,
        ...(byOneFrame.length > 0
          ? [`Judged by one frame from the middle of ${byOneFrame.join(' and of ')}.`]
          : []),
        ...alsoSelected(store),
      ],
      change: { kind: 'grade', cue: cue.id, grade: solved.value.grade },
    }
  }
  const matchTo = (wanted: MatchReference): void => {
    const at = here()
    if (!at) return
    pause()
    const other = wanted.kind === 'cue' ? at.job.cues[wanted.id] : undefined
    const name =
      wanted.kind === 'held'
        ? `“${wanted.name}”`
        : other
          ? `cue ${cueNumber(cuesOf(at.state), other)}`
          : 'that cue'
    void run({
      label: `Match to ${name}`,
      meanwhile: `Looking for the grade that brings the cue nearest to ${name}…`,
      look: (signal) => lookMatch(at.cue, wanted, name, signal),
    })
  }

  /** Reads the colour of a place on the frame on screen, when it is picked. */
  const read = (place: ScanPoint): Picked | undefined => {
    const known = picked.get(place)
    const shown = frames.current()
    if (known || !shown) return known
    const { planes, coding } = shown
    const found = {
      based: windowColour(planes, coding, place.x, place.y, PICK_SIZE),
      scanned: windowColour(planes, { ...coding, base: PRINT_BASE }, place.x, place.y, PICK_SIZE),
    }
    picked.set(place, found)
    return found
  }
  const followNeutral = (places: readonly Picked[]): void => {
    const at = here()
    if (!at) return
    const { cue } = at
    void run({
      label: 'Neutral here',
      look: async (signal) => {
        const patches = places.map(({ based }) => based)
        const args = { patches, grade: cue.grade }
        const solved = await workers.solve('neutralHere', args, { signal })
        if (!solved.ok) return foundNone(solved.problems)
        const { grade } = solved.value
        const says = neutralWords(solved.value, changedNumbers(cue.grade, grade))
        return sameGrade(grade, cue.grade)
          ? nothingFound(...says)
          : {
              says: [...says, ...alsoSelected(store)],
              change: { kind: 'grade', cue: cue.id, grade },
            }
      },
    })
  }
  const followDye = (places: readonly Picked[]): void => {
    const at = here()
    if (!at) return
    const { reel } = at
    const isFirst = at.state.proposal === undefined
    void run({
      label: 'Restore dye',
      ...(isFirst && { meanwhile: 'Reading a few frames of the reel for its densities…' }),
      look: async (signal) => {
        if (reel.base.scan !== 'print')
          return nothingFound(
            'Dyes are compared on the scan of a print; this reel’s scan is something else.',
          )
        const all = await colours.ofReel(reel)
        const neutrals = places.map(({ scanned }) => scanned)
        const args = { colours: all, neutrals, bestKept }
        const solved = await workers.solve('restoreDye', args, { signal })
        if (!solved.ok) return foundNone(solved.problems)
        return {
          says: [
            ...restoredDyeWords(solved.value),
            ...(reel.base.list ? ['All this is read before the base list, which stays.'] : []),
          ],
          change: {
            kind: 'base',
            reel: reel.id,
            base: { ...reel.base, dyes: solved.value.dyes },
          },
        }
      },
    })
  }
  const followPicks = (): void => {
    const { pointing } = store.getState()
    const places = pointing.picks.flatMap((place) => read(place) ?? [])
    if (places.length === 0) return
    if (pointing.mode === 'neutral') followNeutral(places)
    if (pointing.mode === 'dye') followDye(places)
  }
  store.subscribe((state, before) => {
    if (state.pointing.picks === before.pointing.picks || state.pointing.mode === 'read') return
    if (state.pointing.picks.length > 0) followPicks()
    else if (state.proposal && state.proposal === before.proposal)
      store.setState({ proposal: undefined })
  })
  return {
    bringInside,
    matchTo,
    assumeKept: (part) => {
      bestKept = part
      if (store.getState().pointing.mode === 'dye') followPicks()
    },
  }
}
