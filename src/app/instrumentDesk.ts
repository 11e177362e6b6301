import type { Grade } from '../core/colour/grade.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Planes } from '../core/picture/planes.ts'
import type { PictureWants } from '../kernel/kernel.ts'
import type { AppStore } from '../store/appStore.ts'
import type { InstrumentSettings, LevelInstrument } from '../store/instrumentSettings.ts'
import { measuredCoding } from '../store/pointValues.ts'
import { jobOf, profileOf } from '../store/queries.ts'
import type { Feed, Reading, ShownFrame } from '../ui/services.ts'
import type { InstrumentReading } from '../work/instrumentCalls.ts'
import { createFeed } from './feed.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** Columns that a level instrument has across; a parade has them three times. */
const COLUMNS: Readonly<Record<LevelInstrument, number>> = {
  luma: 360,
  overlay: 300,
  parade: 180,
  histogram: 1,
}
/** Enlarged, it shows half as much of the plane, and tells colours apart twice as finely. */
const vectorscopeSize = (isEnlarged: boolean): number => (isEnlarged ? 512 : 256)

/** While playing, instruments follow this often: the picture comes first. */
const PLAYING_EVERY_MS = 160

export type InstrumentDesk = {
  readonly readings: Feed<Reading>
  readonly measure: (grade: Grade, framing: Framing) => void
}

type Values = { readonly grade: Grade; readonly framing: Framing }

type Wants = PictureWants & { readonly vectorscopeSize: number }

/** What is to be counted for what is shown, and nothing else. */
const wantsOf = (settings: InstrumentSettings, { width }: Planes): Wants => {
  const { levels, isVectorscopeEnlarged } = settings
  const columns = Math.min(width, COLUMNS[levels])
  return {
    vectorscopeSize: vectorscopeSize(isVectorscopeEnlarged),
    ...(levels === 'luma' && { waveformColumns: columns }),
    ...((levels === 'overlay' || levels === 'parade') && { paradeColumns: columns }),
    ...(levels === 'histogram' && { histograms: true }),
  }
}

const readingOf = (
  { shown, past }: InstrumentReading,
  { waveformColumns = 0, paradeColumns = 0, vectorscopeSize: size }: Wants,
  signal: Reading['signal'],
): Reading => {
  const { waveform, parade, histograms, vectorscope = new Uint32Array() } = shown
  return {
    signal,
    vectorscope: { counts: vectorscope, size },
    ...(waveform && { waveform: { counts: waveform, columns: waveformColumns } }),
    ...(parade && { channels: { counts: parade, columns: paradeColumns } }),
    ...(histograms && { histograms }),
    ...(past && { past }),
  }
}

/** Whether one reading serves both: units and sizes of points are not measured. */
const isMeasuredAlike = (a: InstrumentSettings, b: InstrumentSettings): boolean =>
  a.levels === b.levels &&
  a.signal === b.signal &&
  a.isVectorscopeEnlarged === b.isVectorscopeEnlarged

/**
 * Keeps the instruments on the frame on screen; while one reading is made the latest waits. What
 * the person asks to see instead is measured at once. While something is dragged every second pair
 * of lines is measured, so that the instruments keep up; the whole picture once it rests.
 */
export const createInstrumentDesk = (
  store: AppStore,
  workers: Pick<Workers, 'instruments'>,
  frames: Feed<ShownFrame>,
): InstrumentDesk => {
  const readings = createFeed<Reading>()
  let isBusy = false
  let waiting: Values | undefined
  let last: Values | undefined
  let held: Planes | undefined
  let lastRun = 0

  const run = async (values: Values): Promise<void> => {
    isBusy = true
    try {
      const shown = frames.current()
      const job = jobOf(store.getState())
      if (!shown || !job) return
      const { instruments, gesture } = store.getState()
      const { signal } = instruments
      const wants = wantsOf(instruments, shown.planes)
      const coding = measuredCoding(store.getState(), shown.coding)
      if (shown.planes !== held) {
        await workers.instruments('setFrame', shown.planes)
        held = shown.planes
      }
      const isCoarse = gesture !== undefined
      const request = { ...values, coding, profile: profileOf(job), signal, wants, isCoarse }
      const reading = await workers.instruments('measure', request)
      store.setState({ levels: reading.levels })
      readings.put(readingOf(reading, wants, signal))
    } catch (error) {
      tellError(store, error)
    } finally {
      isBusy = false
      const next = waiting
      waiting = undefined
      if (next) void run(next)
    }
  }
  const ask = (values: Values): void => {
    if (isBusy) waiting = values
    else void run(values)
  }
  store.subscribe((after, before) => {
    if (after.instruments === before.instruments || !last) return
    if (!isMeasuredAlike(after.instruments, before.instruments)) ask(last)
  })
  return {
    readings,
    measure: (grade, framing) => {
      last = { grade, framing }
      const now = performance.now()
      if (store.getState().playback.isPlaying && now - lastRun < PLAYING_EVERY_MS) return
      lastRun = now
      ask(last)
    },
  }
}
