import type { RampShape } from '../../job/job.ts'
import type { EdlEvent } from './edlEvent.ts'
import type { Sop } from './edlNumbers.ts'

/**
 * An event as it is being read: its lines, and what the comments under them have said so far. Lists
 * within it are made when there is something for them: a list has many events, most of them plain.
 */
export type EdlDraft = {
  event: EdlEvent
  /** Further lines of the same event: the outgoing source of an effect, what is keyed over. */
  besides: EdlEvent[] | undefined
  fromClip: string
  toClip: string
  sourceFile: string
  reelName: string
  sop: Sop | undefined
  saturation: number | undefined
  /** The line of the first comment with the numbers of a grade; 0 for none. */
  gradeLine: number
  ramp: number | undefined
  rampShape: RampShape
  note: string | undefined
  hasMotion: boolean
  /** Event lines of the list that a list of ours was made from, where its comments say them. */
  earlier: string[] | undefined
  comments: string[] | undefined
  /** Comments that look like values but could not be taken for them. */
  notTaken: string[] | undefined
}

export const newEdlDraft = (event: EdlEvent): EdlDraft => ({
  event,
  besides: undefined,
  fromClip: '',
  toClip: '',
  sourceFile: '',
  reelName: '',
  sop: undefined,
  saturation: undefined,
  gradeLine: 0,
  ramp: undefined,
  rampShape: 'linear',
  note: undefined,
  hasMotion: false,
  earlier: undefined,
  comments: undefined,
  notTaken: undefined,
})
