import reelUrl from '../../samples/slack-water-at-skerrow.mp4?url'
import jobUrl from '../../samples/slack-water-at-skerrow.reelwright.json?url'
import type { Sample } from './mediaDesk.ts'

/** The demo reel that comes with the program, served from its own origin. */
export const SAMPLE: Sample = { reel: reelUrl, reelName: 'slack-water-at-skerrow.mp4', job: jobUrl }
