import { type Port, serveCalls } from '../../work/rpc.ts'
import type { SolveCalls } from '../../work/solveCalls.ts'
import { solveHandlers } from '../../work/solveHandlers.ts'
import { kernelHere } from './kernelHere.ts'

serveCalls<SolveCalls>(self as unknown as Port, solveHandlers(kernelHere))
