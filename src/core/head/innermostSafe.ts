import { type SafeArea, safeAreas } from '../framing/safeAreas.ts'

/** The area that words keep to in a picture of a shape: the innermost of its own safe areas. */
export const innermostSafe = (aspect: number): Pick<SafeArea, 'width' | 'height'> =>
  safeAreas(aspect)
    .filter(({ name }) => /^(?:graphics|title) safe$/u.test(name))
    .at(-1) ?? { width: 0.9, height: 0.9 }
