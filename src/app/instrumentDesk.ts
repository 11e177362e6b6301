import type { Grade } from '../core/colour/grade.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { AppStore } from '../store/appStore.ts'
import { jobOf, profileOf } from '../store/queries.ts'
import type { Feed, Reading, ShownFrame } from '../ui/services.ts'
import type { InstrumentRequest } from '../work/instrumentCalls.ts'
import { createFeed } from './feed.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

const WAVEFORM_COLUMNS = 360
const VECTORSCOPE_SIZE = 256

/** While playing, instruments follow this often: the picture comes first. */
const PLAYING_EVERY_MS = 160

export type InstrumentDesk = {
  readonly readings: Feed<Reading>
  readonly measure: (grade: Grade, framing: Framing) => void
}

/** Keeps the instruments on the frame on screen; while one reading is made the latest waits. */
export const createInstrumentDesk = (
  store: AppStore,
  workers: Workers,
  frames: Feed<ShownFrame>,
): InstrumentDesk => {
  const readings = createFeed<Reading>()
  let isBusy = false
  let waiting: InstrumentRequest | undefined
  let held: ShownFrame | undefined
  let lastRun = 0

  const run = async (request: InstrumentRequest): Promise<void> => {
    isBusy = true
    try {
      const shown = frames.current()
      if (!shown) return
      if (shown !== held) {
        await workers.instruments('setFrame', { planes: shown.planes, coding: shown.coding })
        held = shown
      }
      const { waveform, vectorscope, levels } = await workers.instruments('measure', request)
      store.setState({ levels })
      readings.put({
        waveform,
        waveformColumns: WAVEFORM_COLUMNS,
        vectorscope,
        vectorscopeSize: VECTORSCOPE_SIZE,
      })
    } catch (error) {
      tellError(store, error)
    } finally {
      isBusy = false
      const next = waiting
      waiting = undefined
      if (next) void run(next)
    }
  }
  return {
    readings,
    measure: (grade, framing) => {
      const job = jobOf(store.getState())
      if (!job) return
      const request = {
        grade,
        framing,
        profile: profileOf(job),
        waveformColumns: WAVEFORM_COLUMNS,
        vectorscopeSize: VECTORSCOPE_SIZE,
      }
      const now = performance.now()
      const isPlaying = store.getState().playback.isPlaying
      if (isPlaying && now - lastRun < PLAYING_EVERY_MS) return
      lastRun = now
      if (isBusy) waiting = request
      else void run(request)
    },
  }
}
