import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import { type NamedProfile, REGIONS_OF } from '../core/chart/measureChart.ts'
import { readProfile } from '../core/formats/profile/readProfile.ts'
import type { AfterglowWish } from '../core/lineup/afterglow.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { AppStore } from '../store/appStore.ts'
import { setCharting } from '../store/charting.ts'
import { tellProblems } from '../store/notices.ts'
import type { ChartDesk } from '../ui/services.ts'
import type { ReadStill } from './readStillFile.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** What is open: a picture, or levels along a line. */
type Opened =
  | { readonly kind: 'picture'; readonly planes: Planes; readonly coding: Coding }
  | { readonly kind: 'profile'; readonly profiles: readonly NamedProfile[] }

/** The most bytes that a profile is read of. */
const LARGEST_PROFILE = 32 * 2 ** 20

const wishOf = (correctors: string): Result<AfterglowWish> => {
  if (correctors.trim() === '') return ok({})
  const constants = correctors
    .split(/[\s,;]+/u)
    .filter(Boolean)
    .map(Number)
  return constants.every((each) => each > 0)
    ? ok({ correctors: constants })
    : fail(
        problem('malformed', 'Time constants are numbers above 0 with spaces between, as 0.4 3.'),
      )
}

/** Opens pictures of charts and line profiles, and measures them; see `Charting` in the store. */
export const createChartDesk = (
  store: AppStore,
  workers: Pick<Workers, 'solve'>,
  pick: () => Promise<File | undefined>,
  readStill: ReadStill,
): ChartDesk => {
  let opened: Opened | undefined

  const openProfile = async (file: File): Promise<void> => {
    if (file.size > LARGEST_PROFILE)
      return tellProblems(store, [
        problem('too-large', `${file.name} is larger than a line profile is; give fewer samples.`),
      ])
    const profiles = readProfile(await file.text())
    if (!profiles.ok) return tellProblems(store, profiles.problems)
    opened = { kind: 'profile', profiles: profiles.value }
    const nothing = { picture: undefined, regions: [], measured: [] }
    setCharting(store, { name: file.name, kind: 'streak', ...nothing })
  }
  const openPicture = async (file: File): Promise<void> => {
    const { planes, coding } = await readStill(file)
    const address = await workers.solve('chartPicture', { planes, coding })
    opened = { kind: 'picture', planes, coding }
    const { width, height } = planes
    const picture = { address, width, height }
    setCharting(store, { name: file.name, picture, regions: [], measured: [] })
  }
  return {
    open: async () => {
      const file = await pick()
      if (!file) return
      try {
        await (/\.(?:csv|tsv|txt)$/iu.test(file.name) ? openProfile(file) : openPicture(file))
      } catch (error) {
        tellError(store, error)
      }
    },
    measure: async () => {
      const { kind, regions, correctors } = store.getState().charting
      const wish = wishOf(correctors)
      if (!opened || (opened.kind === 'picture' && regions.length !== REGIONS_OF[kind])) return
      if (!wish.ok) return tellProblems(store, wish.problems)
      try {
        const found =
          opened.kind === 'picture'
            ? await workers.solve('chart', {
                ...{ planes: opened.planes, coding: opened.coding },
                ...{ kind, regions, wish: wish.value },
              })
            : await workers.solve('streak', { profiles: opened.profiles, wish: wish.value })
        if (found.ok) setCharting(store, { measured: found.value })
        else tellProblems(store, found.problems)
      } catch (error) {
        tellError(store, error)
      }
    },
  }
}
