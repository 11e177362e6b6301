import type { HandOverCalls } from '../../work/handOverCalls.ts'
import { handOverHandlers } from '../../work/handOverHandlers.ts'
import { type Port, serveCalls } from '../../work/rpc.ts'
import { zipFiles } from './zipFiles.ts'

serveCalls<HandOverCalls>(self as unknown as Port, handOverHandlers(zipFiles))
