import type {
  ReconformOutcome,
  ReconformPlan,
  ReconformRow,
} from '../core/conform/reconformPlan.ts'
import type { AppStore } from './appStore.ts'
import { putNoticeAway } from './notices.ts'
import type { Progress } from './state.ts'

/** How far the question of another scan is: asked, pictures looked for, or a plan to be kept. */
export type RescanStage =
  | { readonly kind: 'asking' }
  | { readonly kind: 'looking'; readonly at: string; readonly progress: Progress | undefined }
  | { readonly kind: 'found'; readonly plan: ReconformPlan }

/** Which cues of a plan are listed. */
export type RescanFilter = ReconformOutcome | 'all'

/** Another scan or cut of the reel, opened in place of the one its cues were made on. */
export type Rescan = {
  /** The name of its file. */
  readonly name: string
  /** How it differs from the scan of the job, in sentences. */
  readonly says: string
  /** Whether the scan of the job can be read too, so that pictures can be looked for. */
  readonly canFollow: boolean
  readonly stage: RescanStage
  readonly filter: RescanFilter
}

export const RECONFORM_OUTCOMES: readonly ReconformOutcome[] = ['follows', 'doubtful', 'lost']

/** Asks what is to be done with another scan. */
export const offerRescan = (
  store: AppStore,
  name: string,
  says: string,
  canFollow: boolean,
): void => {
  putNoticeAway(store)
  store.setState({ rescan: { name, says, canFollow, stage: { kind: 'asking' }, filter: 'all' } })
}

export const setRescanStage = (store: AppStore, stage: RescanStage): void => {
  const { rescan } = store.getState()
  if (!rescan) return
  // Asked again, it is because of what the notice says.
  if (stage.kind !== 'asking') putNoticeAway(store)
  store.setState({ rescan: { ...rescan, stage, filter: 'all' } })
}

export const filterRescan = (store: AppStore, filter: RescanFilter): void => {
  const { rescan } = store.getState()
  if (rescan) store.setState({ rescan: { ...rescan, filter } })
}

export const closeRescan = (store: AppStore): void => store.setState({ rescan: undefined })

/** How many cues have each outcome. */
export const rescanCounts = ({
  rows,
}: ReconformPlan): Readonly<Record<ReconformOutcome, number>> => {
  const counts = { follows: 0, doubtful: 0, lost: 0 }
  for (const { outcome } of rows) counts[outcome]++
  return counts
}

/** The cues that are listed. */
export const rescanRows = (plan: ReconformPlan, filter: RescanFilter): readonly ReconformRow[] =>
  filter === 'all' ? plan.rows : plan.rows.filter(({ outcome }) => outcome === filter)

/** How many cues follow, are doubtful and are lost, in words; what there is none of is left out. */
export const rescanCountText = (plan: ReconformPlan): string => {
  const { follows, doubtful, lost } = rescanCounts(plan)
  return [
    ...(follows > 0 ? [`${follows} ${follows === 1 ? 'cue follows' : 'cues follow'}`] : []),
    ...(doubtful > 0 ? [`${doubtful} ${doubtful === 1 ? 'is' : 'are'} doubtful`] : []),
    ...(lost > 0 ? [`${lost} ${lost === 1 ? 'is' : 'are'} lost`] : []),
  ].join(', ')
}
