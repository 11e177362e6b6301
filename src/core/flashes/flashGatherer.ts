import { assert, at } from '../base/assert.ts'
import type { Frame } from '../time/frame.ts'
import { nominalFramesPerSecond, type Rate } from '../time/rate.ts'
import { FLASH_CAUTION } from './caution.ts'
import { cellFigures, FIGURES } from './cellFigures.ts'
import { type CellMeans, createCellMeans } from './cellMeans.ts'
import { createChangeCounter } from './changeCounter.ts'
import { MOST_CHANGES } from './flashLimits.ts'
import type { FlashKind, FlashReport } from './flashReport.ts'
import { createFlashRuns } from './flashRuns.ts'
import { createGeneralTurns, type Turns } from './generalTurns.ts'
import { gridLines } from './gridLines.ts'
import { createPictureChanges } from './pictureChanges.ts'
import { createRedTurns } from './redTurns.ts'
import { createSeriesRoom } from './seriesRoom.ts'
import { createStripeRuns } from './stripeRuns.ts'
import { findStripes, type Stripes } from './stripes.ts'

/** Looks for stripes a second. */
const LOOKS = 5

/** One kind of flash, followed from frame to frame. */
const createWatch = (
  kind: FlashKind,
  turnsOf: (figures: Float64Array) => Turns,
  pixels: Int32Array,
  whole: number,
  rate: Rate,
) => {
  const cells = createChangeCounter(pixels, rate)
  const picture = createPictureChanges(whole, rate)
  const runs = createFlashRuns(kind, rate)
  return {
    runs,
    counts: cells.counts,
    add: (now: Frame, figures: Float64Array) => {
      const { up, down, changes, over } = cells.add(now, turnsOf(figures))
      const { first, area, ...all } = picture(now, up, down)
      runs.add(now, {
        places: changes,
        placesArea: over / whole,
        picture: all.changes,
        pictureArea: area / whole,
        isChanging: up + down > 0,
        since: () =>
          Math.min(
            changes > MOST_CHANGES ? cells.since(now) : now,
            all.changes > MOST_CHANGES ? first : now,
          ),
      })
      return { up: up / whole, down: down / whole, changes: Math.max(changes, all.changes) }
    },
  }
}

/** Gathers the frames of a picture, in their order, into a report of its flashes. */
export type FlashGatherer = {
  /** To be written with the means of a frame's picture, before it is added. */
  readonly cells: CellMeans
  /** Takes what `cells` hold. The first frame may be any, the others come one after another. */
  readonly add: (now: Frame) => void
  /** What was found so far; undefined until a frame was added. */
  readonly report: () => FlashReport | undefined
}

/**
 * Watches delivered pictures of width × height pixels for flashes and stripes by ITU-R BT.1702-3
 * and WCAG 2.2, as their cells show them. No more than a second of what cells did is held, and a few
 * bytes for each frame to plot.
 */
export const createFlashGatherer = (width: number, height: number, rate: Rate): FlashGatherer => {
  const cells = createCellMeans(width, height)
  const { pixels } = cells
  const whole = width * height
  const figures = new Float64Array(pixels.length * FIGURES)
  const general = createWatch('general', createGeneralTurns(pixels.length), pixels, whole, rate)
  const red = createWatch('red', createRedTurns(pixels.length), pixels, whole, rate)
  const every = Math.ceil(nominalFramesPerSecond(rate) / LOOKS)
  const stripes = createStripeRuns(every)
  const lines = gridLines(cells.columns, cells.rows)
  const series = createSeriesRoom()
  let first: Frame | undefined

  /** Stripes keep still unless more than a quarter of what they cover changed within a second. */
  const keepStill = ({ area, marks }: Stripes): boolean => {
    let moved = 0
    for (let cell = 0; cell < marks.length; cell++)
      if (marks[cell] === 1 && at(general.counts, cell) > 0) moved += at(pixels, cell)
    return moved * 4 <= area
  }
  return {
    cells,
    add: (now) => {
      first ??= now
      assert(now === first + series.frames(), 'frames are watched for flashes one after another')
      cellFigures(cells, figures)
      const ofGeneral = general.add(now, figures)
      const ofRed = red.add(now, figures)
      if ((now - first) % every === 0) {
        const found = findStripes(figures, cells, lines)
        if (found.area > 0)
          stripes.add(now, {
            pairs: found.pairs,
            area: found.area / whole,
            isStill: keepStill(found),
          })
      }
      series.add({
        up: ofGeneral.up,
        down: ofGeneral.down,
        redUp: ofRed.up,
        redDown: ofRed.down,
        changes: ofGeneral.changes,
        redChanges: ofRed.changes,
      })
    },
    report: () =>
      first === undefined
        ? undefined
        : {
            caution: FLASH_CAUTION,
            rate,
            first,
            frames: series.frames(),
            breaches: [
              ...general.runs.breaches(),
              ...red.runs.breaches(),
              ...stripes.breaches(),
            ].sort((a, b) => a.first - b.first),
            long: [...general.runs.long(), ...red.runs.long()],
            series: series.series(),
          },
  }
}
