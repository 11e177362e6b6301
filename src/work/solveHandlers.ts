import { frameColours, gradedColours } from '../core/census/frameColours.ts'
import { type WeightedColours, weightedColours } from '../core/census/weightedColours.ts'
import { measureChart, measureProfiles } from '../core/chart/measureChart.ts'
import { decodePlanes } from '../core/picture/decodePlanes.ts'
import { bringInside } from '../core/solve/bringInside.ts'
import { matchTo } from '../core/solve/matchTo.ts'
import { neutralHere } from '../core/solve/neutralHere.ts'
import { restoreDye } from '../core/solve/restoreDye.ts'
import type { Kernel } from '../kernel/kernel.ts'
import { jpegAddress } from '../media/jpegAddress.ts'
import { makeStill } from './makeStill.ts'
import type { Handlers } from './rpc.ts'
import type { ColoursOf, SolveCalls } from './solveCalls.ts'

const coloursOf = (of: ColoursOf): WeightedColours =>
  of.kind === 'census'
    ? weightedColours(of.census)
    : frameColours(of.frame.planes, of.frame.coding, of.frame.framing)

/** The calls of the solve worker, given how the kernel is loaded there. */
export const solveHandlers = (loadKernel: () => Promise<Kernel>): Handlers<SolveCalls> => ({
  bringInside: async ({ census, grade, profile }) => {
    const read = (await loadKernel()).censusReader(census)
    return bringInside({
      colours: weightedColours(census),
      grade,
      matrix: census.coding.matrix,
      profile,
      shareOutside: (tried) => read(tried, profile).outsideAtMost / Math.max(1, census.pixels),
    })
  },
  neutralHere: ({ patches, grade }) => neutralHere(patches, grade),
  matchTo: ({ own, grade, reference, referenceGrade }) =>
    matchTo({
      colours: coloursOf(own),
      grade,
      reference: gradedColours(coloursOf(reference), referenceGrade),
    }),
  frameColours: ({ planes, coding, framing }) => frameColours(planes, coding, framing),
  restoreDye,
  chartPicture: ({ planes, coding }) => {
    const still = makeStill(planes, coding, planes.width, planes.height)
    return jpegAddress(still, coding.matrix)
  },
  chart: ({ planes, coding, kind, regions, wish }) =>
    measureChart(decodePlanes(planes, coding), kind, regions, wish),
  streak: ({ profiles, wish }) => measureProfiles(profiles, wish),
})
