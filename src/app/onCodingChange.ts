import { codingOf, sameCoding } from '../core/job/codingOf.ts'
import type { Coding } from '../core/picture/planes.ts'
import type { AppStore } from '../store/appStore.ts'
import { reelOf } from '../store/queries.ts'

/** Tells when the reel on screen is to be read otherwise: by another matrix, range or base. */
export const onCodingChange = (store: AppStore, act: (coding: Coding) => void): void => {
  store.subscribe((state, before) => {
    const [reel, old] = [reelOf(state), reelOf(before)]
    if (!reel || !old || reel === old || reel.id !== old.id) return
    const coding = codingOf(reel)
    if (!sameCoding(coding, codingOf(old))) act(coding)
  })
}
