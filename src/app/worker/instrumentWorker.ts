import type { InstrumentCalls } from '../../work/instrumentCalls.ts'
import { instrumentHandlers } from '../../work/instrumentHandlers.ts'
import { type Port, serveCalls } from '../../work/rpc.ts'
import { kernelHere } from './kernelHere.ts'

serveCalls<InstrumentCalls>(self as unknown as Port, instrumentHandlers(kernelHere))
