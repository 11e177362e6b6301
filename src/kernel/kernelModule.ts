import { LAY_SETTING_NAMES } from './layNames.ts'

/** Settings of the WebAssembly module; what each means stands in `assembly/*Settings.ts`. */
export const SETTING_NAMES = [
  'width',
  'height',
  'layout',
  'isHalfHeight',
  'sampleBytes',
  'chromaColumns',
  'chromaRows',
  'firstPlane',
  'secondPlane',
  'thirdPlane',
  'rowBytes',
  'chromaRow',
  'gradedRows',
  'gradedCount',
  'mixedRow',
  'framedRow',
  'filteredRows',
  'isFramed',
  'tapsAcross',
  'tapsDown',
  'columnOffsets',
  'columnWeights',
  'rowFirsts',
  'rowWeights',
  'mixedFrom',
  'mixedEnd',
  'framedFrom',
  'framedEnd',
  'isTurned',
  'turnedRows',
  'turnXX',
  'turnXY',
  'turnYX',
  'turnYY',
  'turnX',
  'turnY',
  'widthAcross',
  'widthDown',
  'openLeft',
  'openRight',
  'openTop',
  'openBottom',
  'blackCode',
  'chromaZeroCode',
  'lumaToR',
  'lumaToG',
  'lumaToB',
  'crToR',
  'cbToG',
  'crToG',
  'cbToB',
  'liftR',
  'liftG',
  'liftB',
  'isLinear',
  'powerOfR',
  'powerOfG',
  'powerOfB',
  'isTabled',
  'codeMask',
  'gradedR',
  'gradedG',
  'gradedB',
  'hasBase',
  'hasFilm',
  'processAt',
  'hasDyes',
  'curveOfR',
  'curveOfG',
  'curveOfB',
  'lastCurveOfR',
  'lastCurveOfG',
  'lastCurveOfB',
  'dyeRR',
  'dyeRG',
  'dyeRB',
  'dyeGR',
  'dyeGG',
  'dyeGB',
  'dyeBR',
  'dyeBG',
  'dyeBB',
  'slopeR',
  'slopeG',
  'slopeB',
  'afterLiftR',
  'afterLiftG',
  'afterLiftB',
  'isPoweredAfter',
  'lumaBlack',
  'chromaMiddle',
  'codesPerLevel',
  'cbPerDifference',
  'crPerDifference',
  'yCodes',
  'cbCodes',
  'crCodes',
  'isSaturated',
  'saturation',
  'redShare',
  'greenShare',
  'blueShare',
  'redInLuma',
  'greenInLuma',
  'blueInLuma',
  'isFiltered',
  'isComposite',
  'rgbLow',
  'rgbHigh',
  'lumaLow',
  'lumaHigh',
  'compositeLow',
  'compositeHigh',
  'statistics',
  'keepsCodes',
  'rCodes',
  'gCodes',
  'bCodes',
  'firstDrop',
  'otherDrop',
  'firstShift',
  'secondShift',
  'chromaLines',
  'chromaLineBytes',
  'keyRow',
  'censusTable',
  'lineShift',
  'isDirect',
  'censusLevels',
  'censusCounts',
  'censusKeys',
  'isBoxed',
  'censusBoxes',
  'curvesAt',
  'weightsAt',
  'limitsAt',
  'hasPeaks',
  'openKeys',
  'openLimit',
  'endsAt',
  ...LAY_SETTING_NAMES,
  'cellColumns',
  'cellCount',
  'cellStarts',
  'cellRowEnds',
  'cellLanes',
  'laneMasks',
  'cellSums',
] as const

export type SettingName = (typeof SETTING_NAMES)[number]

/** The functions of the WebAssembly module: see `assembly/index.ts`. Addresses are bytes. */
export type KernelFunctions = {
  heapBase(): number
  beginPicture(): void
  gradeAll(): void
  deliverBand(first: number, end: number): void
  layBand(first: number, end: number): void
  measureBand(first: number, end: number): void
  countWaveform(codes: number, width: number, rows: number, starts: number): void
  moveCounts(from: number, to: number, count: number): void
  countVectorscope(cb: number, cr: number, pairs: number, size: number, counters: number): void
  countLevelPairs(first: number, second: number, count: number, counters: number): void
  sumLevelPairs(counters: number, toFirst: number, toSecond: number): void
  countColours(row: number, first: number, end: number): void
  clearCensus(): void
  censusColours(): number
  addCounts(from: number, pairs: number): void
  writeCounts(to: number): void
  findEnds(top: number): number
  countOutside(top: number): number
  pixelsOutside(): number
  pixelsNotInside(): number
}

const FUNCTION_NAMES: readonly (keyof KernelFunctions)[] = [
  'heapBase',
  'beginPicture',
  'gradeAll',
  'deliverBand',
  'layBand',
  'measureBand',
  'countWaveform',
  'moveCounts',
  'countVectorscope',
  'countLevelPairs',
  'sumLevelPairs',
  'countColours',
  'clearCensus',
  'censusColours',
  'addCounts',
  'writeCounts',
  'findEnds',
  'countOutside',
  'pixelsOutside',
  'pixelsNotInside',
]

/** An instance of the WebAssembly module. */
export type KernelModule = KernelFunctions &
  Readonly<Record<SettingName, WebAssembly.Global>> & { readonly memory: WebAssembly.Memory }

/** Whether the exports of an instance are those of the kernel. */
export const isKernelModule = (
  exports: WebAssembly.Exports,
): exports is WebAssembly.Exports & KernelModule =>
  exports.memory instanceof WebAssembly.Memory &&
  FUNCTION_NAMES.every((name) => typeof exports[name] === 'function') &&
  SETTING_NAMES.every((name) => exports[name] instanceof WebAssembly.Global)

export type Settings = { readonly [Name in SettingName]?: number | boolean }

export const applySettings = (module: KernelModule, settings: Settings): void => {
  for (const name of Object.keys(settings) as SettingName[])
    module[name].value = Number(settings[name])
}
