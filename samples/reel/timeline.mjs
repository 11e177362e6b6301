import { correctionOf } from './correction.mjs'
import { SHOTS } from './shots.mjs'

const FADE_AT_ENDS = 24

/**
 * Where every shot begins and which two shots each frame shows. A dissolve overlaps its shots; a
 * fade takes the first down to black and the second up from it, `over` frames each.
 */
export const layOut = () => {
  let first = 0
  const places = SHOTS.map((shot, index) => {
    const overlap = shot.change === 'dissolve' ? shot.over : 0
    const start = first - overlap
    first = start + shot.length
    return { shot, index, start, end: first }
  })
  return { places, frames: first }
}

/** How bright a shot is on a frame, 0…1, because of fades. */
export const fadeLevel = (places, place, frame) => {
  const { shot, index, start, end } = place
  const rise = shot.change === 'fade-in' ? FADE_AT_ENDS : shot.change === 'fade' ? shot.over : 0
  const next = places[index + 1]?.shot
  const fall = shot.change2 === 'fade-out' ? FADE_AT_ENDS : next?.change === 'fade' ? next.over : 0
  const up = rise > 0 ? Math.min(1, (frame - start) / rise) : 1
  const down = fall > 0 ? Math.min(1, (end - 1 - frame) / fall) : 1
  return Math.max(0, Math.min(up, down))
}

/** What is true of the reel, for tests and for whoever wants to compare. */
export const truthOf = ({ places, frames }, title, archive) => ({
  title,
  archive,
  rate: [25, 1],
  frames,
  shots: places.map(({ shot, index, start, end }) => ({
    shot: index + 1,
    first: start,
    end,
    about: shot.about,
    photograph: `${shot.photo}.jpg`,
    change: changeInto(places, index),
    move: moveOf(shot),
    fault: shot.fault,
    correction: correctionOf(shot.fault),
    outside: shot.outside ?? 'no frame',
  })),
  notCuts: places.flatMap(({ shot, start }) => [
    ...(shot.flash === undefined
      ? []
      : [
          {
            what: 'two frames of white flash',
            first: start + shot.flash,
            last: start + shot.flash + 1,
          },
        ]),
    ...(shot.whip === undefined
      ? []
      : [{ what: 'whip pan', first: start + shot.whip[0], last: start + shot.whip[1] }]),
  ]),
})

/** What the camera sees at both ends of a shot: centre and width, in fractions of the photograph. */
const moveOf = ({ view }) => {
  const [from, to] = view.map(([x, y, width]) => ({ x, y, width }))
  return { from, to }
}

/** The change that a shot begins with, its first and last frame that differ because of it. */
const changeInto = (places, index) => {
  const { shot, start } = places[index]
  if (index === 0) return { kind: 'fade-in', first: 1, last: FADE_AT_ENDS - 1 }
  if (shot.change === 'dissolve')
    return { kind: 'dissolve', first: start, last: start + shot.over - 1 }
  if (shot.change === 'fade')
    return { kind: 'fade', first: start - shot.over, last: start + shot.over - 1 }
  return { kind: 'cut', first: start, last: start }
}
