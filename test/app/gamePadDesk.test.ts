import { describe, expect, it } from 'vitest'
import { type Pad, startGamePadDesk } from '../../src/app/gamePadDesk.ts'
import { createSurfaceChanges } from '../../src/app/surfaceChanges.ts'
import { allOf, tintOf } from '../../src/core/colour/gradeViews.ts'
import type { Cue } from '../../src/core/job/job.ts'
import { FIRST_SURFACE_SETUP } from '../../src/core/surface/surfaceSetup.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob, undo } from '../../src/store/document.ts'
import { currentCue } from '../../src/store/queries.ts'
import { movePlayhead } from '../../src/store/session.ts'
import { setSurface, setSurfaceSetup, watchSurface } from '../../src/store/surface.ts'
import { cueId, REEL_ID, sampleJob } from '../support/sampleJob.ts'

/** A turn of the simulated browser, in milliseconds. */
const TURN = 20

/** A store with a job, and a browser with a pad that the test moves. */
const setUp = () => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  store.setState({ reelId: REEL_ID })
  setSurfaceSetup(store, () => ({
    response: { deadZone: 0.1, exponent: 1 },
    speeds: { tint: 0.1, level: 0.2, framing: 0.2 },
  }))
  const axes = [0, 0, 0, 0]
  const values: number[] = Array.from({ length: 17 }, () => 0)
  const ran: string[] = []
  let now = 1000
  let frames = 0
  let pad: Pad | undefined
  let next: (() => void) | undefined
  let connect = () => {}
  let isBlocked = false
  startGamePadDesk(
    store,
    {
      getGamepads: () => [null, pad ?? null],
      now: () => now,
      requestFrame: (turn) => {
        frames++
        next = turn
      },
      listen: (onConnected) => {
        connect = onConnected
      },
    },
    createSurfaceChanges(store),
    (id, isDown) => ran.push(`${id} ${isDown ? 'down' : 'up'}`),
    () => isBlocked,
  )
  return {
    store,
    ran,
    frames: () => frames,
    axis: (index: number, value: number) => {
      axes[index] = value
    },
    button: (index: number, value: number) => {
      values[index] = value
    },
    block: (value: boolean) => {
      isBlocked = value
    },
    plugIn: (mapping = 'standard') => {
      pad = {
        id: 'a pad',
        mapping,
        connected: true,
        timestamp: 1,
        axes,
        get buttons() {
          return values.map((value) => ({ value, pressed: value > 0.1 }))
        },
      }
      connect()
    },
    plugOut: () => {
      pad = undefined
    },
    /** Lets time pass without the browser drawing. */
    holdUp: (milliseconds: number) => {
      now += milliseconds
    },
    /** Lets the browser draw for so long. */
    pass: (milliseconds: number) => {
      for (let t = 0; t < milliseconds; t += TURN) {
        now += TURN
        const turn = next
        next = undefined
        turn?.()
      }
    },
    cue: (): Cue => {
      const cue = currentCue(store.getState())
      if (!cue) throw new Error('no cue')
      return cue
    },
    steps: () => store.getState().history?.past.map(({ label }) => label) ?? [],
  }
}

describe('sticks', () => {
  it('the left one tints the shadows, the further the faster, and keeps their luma', () => {
    const { axis, plugIn, pass, cue } = setUp()
    plugIn()
    pass(TURN)
    axis(0, 1)
    pass(1000)
    expect(tintOf(cue().grade.lift).cb).toBeCloseTo(0.1, 4)
    expect(allOf(cue().grade.lift)).toBeCloseTo(0, 9)
    expect(cue().grade.gain).toEqual([1, 1, 1])
    axis(0, -0.55)
    pass(1000)
    expect(tintOf(cue().grade.lift).cb).toBeCloseTo(0.05, 4)
  })

  it('the right one tints the highlights: up is Cr', () => {
    const { axis, plugIn, pass, cue } = setUp()
    plugIn()
    pass(TURN)
    axis(3, -1)
    pass(500)
    expect(tintOf(cue().grade.gain).cr).toBeCloseTo(0.05, 4)
  })

  it('nothing moves inside the dead zone', () => {
    const { axis, plugIn, pass, steps } = setUp()
    plugIn()
    axis(0, 0.09)
    axis(1, 0.04)
    pass(1000)
    expect(steps()).toEqual([])
  })

  it('very slow movement still arrives', () => {
    const { axis, plugIn, pass, cue } = setUp()
    plugIn()
    pass(TURN)
    axis(0, 0.101)
    pass(10_000)
    expect(tintOf(cue().grade.lift).cb).toBeCloseTo(0.001 / 0.9, 4)
  })
})

describe('undo', () => {
  it('from rest to rest is one step', () => {
    const { store, axis, button, plugIn, pass, cue, steps } = setUp()
    plugIn()
    pass(TURN)
    axis(0, 1)
    pass(300)
    axis(0, 0)
    pass(200)
    button(5, 1)
    pass(300)
    expect(store.getState().gesture).toBeDefined()
    button(5, 0)
    pass(400)
    expect(store.getState().gesture).toBeUndefined()
    expect(steps()).toEqual(['shadow tint and gain all'])
    button(5, 1)
    pass(100)
    button(5, 0)
    pass(400)
    expect(steps()).toEqual(['shadow tint and gain all', 'gain all'])
    undo(store)
    undo(store)
    expect(cue().grade.gain).toEqual([1, 1, 1])
    expect(cue().grade.lift).toEqual([0, 0, 0])
  })

  it('a cue that comes under the line in play is graded from there on, as a step of its own', () => {
    const { store, button, plugIn, pass, steps } = setUp()
    plugIn()
    pass(TURN)
    store.setState(({ playback }) => ({ playback: { ...playback, isPlaying: true } }))
    movePlayhead(store, 98)
    button(7, 1)
    pass(500)
    movePlayhead(store, 101)
    pass(500)
    button(7, 0)
    pass(400)
    const cues = store.getState().history?.job.cues ?? {}
    expect(cues[cueId(1)]?.grade.gain[0]).toBeCloseTo(0.9, 3)
    expect(cues[cueId(2)]?.grade.gain[0]).toBeCloseTo(0.9, 3)
    expect(steps()).toEqual(['gain all', 'gain all'])
  })
})

describe('ends', () => {
  it('white held down stops at black, without a word, and comes back at once', () => {
    const { store, button, plugIn, pass, cue } = setUp()
    plugIn()
    pass(TURN)
    button(7, 1)
    pass(10_000)
    expect(cue().grade.gain[0]).toBeCloseTo(0, 2)
    expect(cue().grade.gain[0]).toBeGreaterThanOrEqual(0)
    expect(store.getState().notice).toBeUndefined()
    button(7, 0)
    button(5, 1)
    pass(100)
    expect(cue().grade.gain[0]).toBeGreaterThan(0.01)
  })

  it('what the job refuses is told once, and the way back is open', () => {
    const { store, button, plugIn, pass } = setUp()
    // The second cue, trimmed with the first, has its white just above black.
    const low = sampleJob(undefined, (cue, i) =>
      i === 1 ? { ...cue, grade: { ...cue.grade, gain: [0.05, 0.05, 0.05] } } : cue,
    )
    showJob(store, low, 'shelf')
    store.setState({ selection: [cueId(1), cueId(2)], isTrimming: true })
    plugIn()
    pass(TURN)
    button(7, 1)
    pass(1000)
    const notice = store.getState().notice
    expect(notice?.isProblem).toBe(true)
    pass(1000)
    expect(store.getState().notice?.id).toBe(notice?.id)
    button(7, 0)
    button(5, 1)
    pass(200)
    expect(store.getState().notice).toBeUndefined()
    expect(store.getState().history?.job.cues[cueId(2)]?.grade.gain[0]).toBeGreaterThan(0.02)
  })

  it('a browser that was held up makes no leap', () => {
    const { button, plugIn, pass, holdUp, cue } = setUp()
    plugIn()
    pass(TURN)
    button(5, 1)
    holdUp(5000)
    pass(TURN)
    expect(cue().grade.gain[0]).toBeCloseTo(1 + 0.2 * 0.2, 6)
  })
})

describe('buttons', () => {
  it('run commands once a press and let them go', () => {
    const { ran, button, plugIn, pass } = setUp()
    plugIn()
    button(1, 1)
    pass(200)
    button(1, 0)
    pass(100)
    expect(ran).toEqual(['scanned down', 'scanned up'])
  })

  it('give the second use while held', () => {
    const { button, plugIn, pass, cue } = setUp()
    plugIn()
    pass(TURN)
    button(2, 1)
    button(4, 1)
    pass(500)
    expect(cue().grade.gamma[0]).toBeCloseTo(1.1, 3)
    expect(cue().grade.lift).toEqual([0, 0, 0])
  })

  it('do nothing while a dialog is open, but what was held is let go', () => {
    const { ran, button, axis, block, plugIn, pass, steps } = setUp()
    plugIn()
    button(1, 1)
    pass(40)
    block(true)
    button(1, 0)
    button(0, 1)
    axis(0, 1)
    pass(400)
    expect(ran).toEqual(['scanned down', 'scanned up'])
    expect(steps()).toEqual([])
  })
})

describe('coming and going', () => {
  it('nothing is looked at until a pad is there, nor after it has gone', () => {
    const { store, frames, button, plugIn, plugOut, pass, ran } = setUp()
    pass(200)
    expect(frames()).toBe(0)
    plugIn()
    button(1, 1)
    pass(200)
    expect(store.getState().surface.pad).toEqual({ name: 'a pad', isStandard: true })
    plugOut()
    pass(100)
    const after = frames()
    pass(400)
    expect(frames()).toBe(after)
    expect(store.getState().surface.pad).toBeUndefined()
    expect(ran).toEqual(['scanned down', 'scanned up'])
    plugIn('')
    pass(100)
    expect(store.getState().surface.pad).toEqual({ name: 'a pad', isStandard: false })
  })

  it('a movement under way is closed when the pad goes', () => {
    const { store, button, plugIn, plugOut, pass, steps } = setUp()
    plugIn()
    pass(TURN)
    button(4, 1)
    pass(200)
    plugOut()
    pass(TURN)
    expect(store.getState().gesture).toBeUndefined()
    expect(steps()).toEqual(['lift all'])
  })

  it('positions are told only while somebody watches', () => {
    const { store, axis, plugIn, pass } = setUp()
    plugIn()
    axis(0, 0.501)
    pass(100)
    expect(store.getState().surface.reading).toBeUndefined()
    watchSurface(store, true)
    pass(100)
    expect(store.getState().surface.reading?.sticks.left).toEqual({ x: 0.5, y: 0 })
    watchSurface(store, false)
    expect(store.getState().surface.reading).toBeUndefined()
  })
})

describe('learning', () => {
  it('the button that is pressed is given the use', () => {
    const { store, ran, button, block, plugIn, pass } = setUp()
    plugIn()
    pass(TURN)
    block(true)
    const use = { kind: 'command', id: 'loop' } as const
    setSurface(store, { learning: { of: 'button', use } })
    button(0, 1)
    pass(100)
    const { surface, preferences } = store.getState()
    expect(surface.learning).toBeUndefined()
    expect(surface.learnt).toEqual({ of: 'pad', name: 'right cluster, bottom' })
    expect(preferences.surface.pad.buttons[0]).toEqual({ first: use })
    expect(ran).toEqual([])
    expect(FIRST_SURFACE_SETUP.pad.buttons[0]?.first).toEqual({ kind: 'command', id: 'play' })
  })

  it('the stick that is pushed is given the use', () => {
    const { store, axis, plugIn, pass } = setUp()
    plugIn()
    setSurface(store, { learning: { of: 'stick', use: 'pan-tilt' } })
    axis(2, 0.5)
    pass(100)
    expect(store.getState().surface.learning).toBeDefined()
    axis(2, 0.9)
    pass(100)
    expect(store.getState().preferences.surface.pad.sticks.right.first).toBe('pan-tilt')
    expect(store.getState().surface.learnt?.name).toBe('right stick')
  })

  it('with the second use held, that is given', () => {
    const { store, button, plugIn, pass } = setUp()
    plugIn()
    button(2, 1)
    pass(TURN)
    const use = { kind: 'number', id: 'zoom', direction: 1 } as const
    setSurface(store, { learning: { of: 'button', use } })
    button(4, 1)
    pass(TURN)
    const given = store.getState().preferences.surface.pad.buttons[4]
    expect(given?.second).toEqual(use)
    expect(given?.first).toMatchObject({ id: 'lift-all' })
  })
})
