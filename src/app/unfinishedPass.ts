import type { PassPlan } from '../core/transfer/passPlan.ts'
import type { UnfinishedPass } from '../store/transferring.ts'
import { hindranceOf } from '../work/pass/beginPass.ts'
import { passIdentity, passKey } from '../work/pass/passIdentity.ts'
import { isPassUnderWay } from '../work/pass/passLocks.ts'
import { passSegments } from '../work/pass/passSegments.ts'
import { openPassStore } from '../work/pass/passStore.ts'

/** The pass of a reel that was begun on this computer and not finished. */
export const findUnfinished = async (plan: PassPlan): Promise<UnfinishedPass | undefined> => {
  const key = passKey(plan.reel.id)
  const store = openPassStore(await navigator.storage.getDirectory(), key)
  const begun = await store.begun()
  if (!begun) return undefined
  const ranges = passSegments(plan)
  const identity = passIdentity(plan)
  const done = (await store.segments()).reduce((sum, index) => {
    const range = ranges[index]
    return sum + (range ? range.end - range.first : 0)
  }, 0)
  const hindrance = (await isPassUnderWay(key))
    ? 'It is under way in another window.'
    : identity.ok
      ? hindranceOf(begun, identity.value)
      : identity.problems[0].says
  const { name, begunAt, total } = begun
  return { name, begunAt, done: Math.min(done, total), total, hindrance }
}
