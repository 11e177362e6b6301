import type { ProcessList, ProcessStep } from './processList.ts'

const rangeWords = (low: boolean, high: boolean): string =>
  low && high ? 'range' : low ? 'lower limit' : 'upper limit'

/** A step in a few words. */
const stepWords = (step: ProcessStep): string => {
  switch (step.kind) {
    case 'cdl':
      return step.style.startsWith('reverse') ? 'ASC CDL, reversed' : 'ASC CDL'
    case 'matrix':
      return 'matrix'
    case 'range':
      return rangeWords(step.low !== null, step.high !== null)
    case 'curve':
      return `${step.channels === 1 ? 'curve' : 'three curves'} of ${step.points} places`
    case 'cube':
      return `cube of ${step.points}³`
  }
}

/** The steps of a list in words, in their order: “matrix, curve of 4096 places, cube of 33³”. */
export const processWords = ({ steps }: ProcessList): string => steps.map(stepWords).join(', ')
