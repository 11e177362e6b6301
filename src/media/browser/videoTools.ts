import type { VideoTools } from '../videoTools.ts'
import { beginVideoRun } from './beginVideoRun.ts'
import { chooseEncoding } from './chooseEncoding.ts'
import { joinVideo } from './joinVideo.ts'

/** Video as this browser makes it. Loaded only where one is written. */
export const browserVideoTools: VideoTools = {
  chooseEncoding,
  beginRun: beginVideoRun,
  join: joinVideo,
}
