import reelUrl from '../../samples/sample.mp4?url'
import jobUrl from '../../samples/sample.reelwright.json?url'
import type { Sample } from './mediaDesk.ts'

/** The demo reel that comes with the program, served from its own origin. */
export const SAMPLE: Sample = { reel: reelUrl, reelName: 'sample.mp4', job: jobUrl }
