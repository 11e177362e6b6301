import type { Mark, MarkPoint } from '../core/agreement/answer.ts'
import { markPath, markPoint } from '../core/agreement/marks.ts'
import { MOST_MARK_POINTS, MOST_MARKS } from '../core/job/limits.ts'
import { button, element } from './element.ts'

const SVG = 'http://www.w3.org/2000/svg'

const lineOf = (points: string, name: string): SVGPolylineElement => {
  const line = document.createElementNS(SVG, 'polyline')
  line.setAttribute('points', points)
  line.setAttribute('class', name)
  return line
}

/** Lines on a picture: white within black, so that they are seen on any picture. */
const drawn = (mark: Mark): readonly SVGPolylineElement[] => {
  const points = markPath(mark)
  return [lineOf(points, 'under'), lineOf(points, 'over')]
}

/** A sheet over a picture to draw on, and its buttons. `set` takes the lines as they become. */
export const drawingSheet = (get: () => readonly Mark[], set: (marks: readonly Mark[]) => void) => {
  const sheet = document.createElementNS(SVG, 'svg')
  sheet.setAttribute('viewBox', '0 0 1000 1000')
  sheet.setAttribute('preserveAspectRatio', 'none')
  sheet.setAttribute('class', 'sheet')
  sheet.setAttribute('aria-hidden', 'true')
  let points: MarkPoint[] | undefined
  const placeOf = ({ clientX, clientY }: PointerEvent): MarkPoint => {
    const { left, top, width, height } = sheet.getBoundingClientRect()
    return markPoint((clientX - left) / width, (clientY - top) / height)
  }
  const update = (): void =>
    sheet.replaceChildren(...[...get(), ...(points ? [points] : [])].flatMap(drawn))
  const isOpen = (): boolean => sheet.classList.contains('is-open')
  sheet.addEventListener('pointerdown', (event) => {
    if (!isOpen() || get().length >= MOST_MARKS) return
    event.preventDefault()
    sheet.setPointerCapture(event.pointerId)
    points = [placeOf(event)]
    update()
  })
  sheet.addEventListener('pointermove', (event) => {
    if (!points || points.length >= MOST_MARK_POINTS) return
    points.push(placeOf(event))
    update()
  })
  const end = (): void => {
    if (!points) return
    const mark = points
    points = undefined
    set([...get(), mark])
  }
  sheet.addEventListener('pointerup', end)
  sheet.addEventListener('pointercancel', end)
  const draw = button('Draw on the picture', () => {
    const opens = sheet.classList.toggle('is-open')
    draw.setAttribute('aria-pressed', String(opens))
  })
  draw.setAttribute('aria-pressed', 'false')
  const undo = button('Take the last line back', () => set(get().slice(0, -1)))
  const tools = element('div', { class: 'tools' }, draw, undo)
  return {
    sheet,
    tools,
    update: (): void => {
      undo.hidden = get().length === 0
      update()
    },
  }
}
