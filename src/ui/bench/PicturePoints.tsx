import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react'
import { type PicturePoint, pointOnDelivered, pointOnScan } from '../../core/framing/pointOnScan.ts'
import { placeInTile, type TileArea } from '../../core/picture/tileLayout.ts'
import { pickPlace, pickReading } from '../../store/picking.ts'
import { dropPick, moveReading, pointOver, readAt } from '../../store/pointingChanges.ts'
import { reelOf } from '../../store/queries.ts'
import { shownFraming } from '../../store/shownFraming.ts'
import { useApp, useAppState } from '../appContext.ts'
import { formatNumber } from '../parts/numberText.ts'
import { coarseness } from '../parts/useDragNumber.ts'
import { useFrameLoop } from '../parts/useFrameLoop.ts'

/** How far an arrow key moves the place that is read, as a part of the picture's width. */
const NUDGE = 0.005

const DIRECTIONS: Readonly<Record<string, readonly [right: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

const percent = (part: number): string => `${formatNumber(part * 100, 0)} %`

/**
 * Where the picture is pointed at: the pointer's place is told as it moves, a press chooses the
 * place that is read or picks one, and the marks show what was chosen.
 */
export const PicturePoints = ({ areas }: { areas: readonly TileArea[] }) => {
  const { store } = useApp()
  const mode = useAppState(({ pointing }) => pointing.mode)
  const reading = useAppState(({ pointing }) => pointing.reading)
  const picks = useAppState(({ pointing }) => pointing.picks)
  const aspect = useAppState((state) => reelOf(state)?.media.displayAspect ?? 4 / 3)
  useAppState(({ history }) => history)
  useAppState(({ view }) => view)
  useAppState(({ playhead }) => playhead)
  const last = useRef<{ x: number; y: number } | undefined>(undefined)

  const placeAt = (event: PointerEvent<HTMLElement>): PicturePoint | undefined => {
    const box = event.currentTarget.getBoundingClientRect()
    const whole = {
      x: (event.clientX - box.left) / box.width,
      y: (event.clientY - box.top) / box.height,
    }
    const place = placeInTile(areas, whole)
    return place && pointOnScan(shownFraming(store.getState()), aspect, place)
  }
  const tellOver = useFrameLoop(() => pointOver(store, last.current))
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const place = placeAt(event)
    last.current = place
    tellOver()
    const isHeld = event.currentTarget.hasPointerCapture(event.pointerId)
    if (isHeld && place && mode === 'read') readAt(store, place)
  }
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    const place = placeAt(event)
    if (!place) return
    if (mode === 'read') readAt(store, place)
    else pickPlace(store, place)
  }
  const leave = () => {
    last.current = undefined
    tellOver()
  }
  useEffect(() => () => pointOver(store, undefined), [store])
  const framing = shownFraming(store.getState())
  const onScreen = (place: PicturePoint) =>
    onTile(pointOnDelivered(framing, aspect, place), areas.at(-1))
  return (
    <>
      <div
        className={`pointing ${mode === 'read' ? 'reads' : 'picks'}`}
        role="presentation"
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerLeave={leave}
      />
      {reading && <ReadingMark place={reading} style={onScreen(reading)} aspect={aspect} />}
      {picks.map((pick, index) => (
        <button
          type="button"
          // biome-ignore lint/suspicious/noArrayIndexKey: a place is known by its number
          key={index}
          className="pick-mark"
          style={onScreen(pick)}
          aria-label={`Picked place ${index + 1}; press to take it away`}
          title="press to take it away"
          onClick={() => dropPick(store, index)}
        >
          {index + 1}
        </button>
      ))}
    </>
  )
}

/** Where a place of the delivered picture is on the graded tile; not shown past its edges. */
const onTile = ({ x, y }: PicturePoint, main: TileArea | undefined) =>
  !main || x < 0 || x > 1 || y < 0 || y > 1
    ? { display: 'none' }
    : {
        left: `${(main.left + x * main.width) * 100}%`,
        top: `${(main.top + y * main.height) * 100}%`,
      }

type ReadingMarkProps = {
  readonly place: PicturePoint
  readonly style: ReturnType<typeof onTile>
  readonly aspect: number
}

/** The cross on the place that is read; chosen by a command, it takes the keys at once. */
const ReadingMark = ({ place, style, aspect }: ReadingMarkProps) => {
  const { store } = useApp()
  const mark = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (!store.getState().pointing.over) mark.current?.focus()
  }, [store])
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const direction = DIRECTIONS[event.key]
    const { mode } = store.getState().pointing
    if (direction) {
      const step = NUDGE * coarseness(event)
      moveReading(store, direction[0] * step, direction[1] * step * aspect)
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      event.currentTarget.parentElement?.focus()
      readAt(store, undefined)
    } else if ((event.key === 'Enter' || event.key === ' ') && mode !== 'read') pickReading(store)
    else return
    event.preventDefault()
  }
  return (
    <button
      ref={mark}
      type="button"
      className="reading-mark"
      style={style}
      aria-label={`Place that is read: ${percent(place.x)} across, ${percent(place.y)} down. Arrow keys move it, Delete takes it away`}
      onKeyDown={onKeyDown}
    />
  )
}
