import { type CSSProperties, useEffect, useReducer } from 'react'
import type { HeldId } from '../../core/job/recordIds.ts'
import type { TileArea } from '../../core/picture/tileLayout.ts'
import { DIFFERENCE_GAIN } from '../../render/previewView.ts'
import { arrangementOf, comparedAt, picturesShown } from '../../store/compared.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'

type Word = { readonly says: string; readonly side: 'left' | 'right'; readonly area: TileArea }

const WHOLE: TileArea = { left: 0, top: 0, width: 1, height: 1 }

/** Why there is nothing to compare with, where a comparison was asked for. */
const absence = ({ view }: AppState): string =>
  view.against.kind === 'held'
    ? 'nothing to compare with: this held frame is not there'
    : 'nothing to compare with: this cue has no alternates'

const wordsOf = (state: AppState, areas: readonly TileArea[]): readonly Word[] => {
  const arrangement = arrangementOf(state)
  const names = picturesShown(state)
  const [other = '', graded] = names
  const word = (says: string, side: Word['side'] = 'left', area = WHOLE) => [{ says, side, area }]
  if (state.view.isPeeking) return word('scanned, whole')
  if (arrangement === 'alone') return []
  if (graded === undefined) return word(absence(state))
  if (arrangement === 'difference') return word(`${DIFFERENCE_GAIN} × difference from ${other}`)
  if (arrangement === 'wipe') return [...word(other), ...word(graded, 'right')]
  return names.flatMap((says, index) => {
    const area = areas[index]
    return area ? word(says, 'left', area) : []
  })
}

/** The pictures of which one is still being read. */
const isReading = (state: AppState, has: (id: HeldId) => boolean): boolean =>
  comparedAt(state, state.playhead).some(({ of }) => of !== 'frame' && !has(of))

/** The name of each picture on it: which is graded, which is scanned, held or an alternate. */
export const PictureWords = ({ areas }: { areas: readonly TileArea[] }) => {
  const { store, services } = useApp()
  const [, redraw] = useReducer((count: number) => count + 1, 0)
  useEffect(() => services.held.subscribe(redraw), [services])
  useAppState(({ view }) => view)
  useAppState((state) => picturesShown(state).join('\n'))
  const state = store.getState()
  const words = wordsOf(state, areas)
  const waits = isReading(state, (id) => services.held.get(id) !== undefined)
  return (
    <>
      {words.map(({ says, side, area }, index) => (
        <span
          // biome-ignore lint/suspicious/noArrayIndexKey: a word is known by its place
          key={index}
          className={`picture-word ${side}`}
          style={styleOf(area, side, words.length > 1)}
        >
          {says}
        </span>
      ))}
      {waits && <span className="picture-word waits">reading the held frame…</span>}
    </>
  )
}

/** At the foot of its picture, and no wider than it or, on a wipe, its half. */
const styleOf = (
  { left, top, width, height }: TileArea,
  side: Word['side'],
  isOneOfMany: boolean,
): CSSProperties => ({
  [side]: `calc(${(side === 'left' ? left : 1 - left - width) * 100}% + 6px)`,
  bottom: `calc(${(1 - top - height) * 100}% + 6px)`,
  maxWidth: `calc(${(width === 1 && isOneOfMany ? 0.5 : width) * 100}% - 12px)`,
})
