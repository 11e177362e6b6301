import type { Decision, DecisionList, Span } from '../formats/decisionList.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { Job } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { frame } from '../time/frame.ts'
import { cueNames, isSourceOfReel } from './cueNames.ts'
import type { ImportOptions } from './importPlan.ts'
import { placeSpan } from './placesOnReel.ts'

const hasValues = ({ values: { boundary: _, ...others } }: Decision): boolean =>
  Object.values(others).some((value) => value !== undefined)

/**
 * How a person would most likely import a list. A list whose sources name this reel goes by their
 * times; else one whose record times lie on the reel goes by these, or one whose source times
 * mostly do; any other list with times begins on the reel's first frame. A list without times goes
 * by name where a name is one of a cue, else in order. Of ASC CDL, whose places are what our own
 * files say in words, places are taken only where the reel has no cues but the first.
 */
export const suggestImport = (job: Job, reelId: ReelId, list: DecisionList): ImportOptions => {
  const reel = job.reels[reelId]
  const { decisions } = list
  const hasTimes = decisions.some((each) => each.recordSpan || each.sourceSpan)
  const base: ImportOptions = {
    matchBy: 'timecode',
    times: 'record',
    startsAt: null,
    takesPlaces: hasTimes,
    takesGrades: !hasTimes || decisions.some(hasValues),
  }
  if (!reel) return base
  const isOnReel = (span: Span | undefined): boolean =>
    span !== undefined && span.from < reel.frames && span.to > 0
  const onReel = (times: 'record' | 'source', among: readonly Decision[] = decisions): number => {
    const place = placeSpan(list, reel, times, null)
    return among.filter((each) => isOnReel(place(each))).length
  }
  if (list.format === 'cdl' && 2 * onReel('record') > decisions.length) {
    const takesPlaces = decisions.length > 1 && cuesOfReel(job, reelId).length === 1
    return { ...base, takesPlaces, takesGrades: true }
  }
  if (!hasTimes || list.format === 'cdl') {
    const names = cueNames(job, reelId)
    const isNamed = decisions.some(({ name }) => name !== '' && names(name).length > 0)
    return { ...base, matchBy: isNamed ? 'name' : 'order', takesPlaces: false, takesGrades: true }
  }
  const isOfReel = isSourceOfReel(job, reelId)
  const ofReel = decisions.filter(({ source }) => source !== '' && isOfReel(source))
  if (2 * onReel('source', ofReel) > ofReel.length)
    return { ...base, matchBy: 'name', times: 'source' }
  if (onReel('record') > 0) return base
  if (2 * onReel('source') > decisions.length) return { ...base, times: 'source' }
  const times = decisions.some(({ recordSpan }) => recordSpan) ? 'record' : 'source'
  return { ...base, times, startsAt: frame(0) }
}
