import { writeJob } from '../core/formats/job/writeJob.ts'
import type { AppStore } from '../store/appStore.ts'
import { tell } from '../store/notices.ts'
import { leaveWhenStale } from '../store/proposal.ts'
import { jobOf } from '../store/queries.ts'
import { INITIAL_STATE, keptBetweenJobs } from '../store/state.ts'
import type { Services } from '../ui/services.ts'
import { startAutosave } from './autosave.ts'
import { pickBaseList } from './baseListDesk.ts'
import { createCensusDesk } from './censusDesk.ts'
import { createChartDesk } from './chartDesk.ts'
import { startChecker } from './checker.ts'
import { startControlSurfaces } from './controlSurfaces.ts'
import { startDecidedFeed } from './decidedFeed.ts'
import {
  pickAnswerFiles,
  pickChartFile,
  pickJobFile,
  pickReelFiles,
  pickSoundFile,
  pickStillFile,
  saveFile,
  saveTextFile,
} from './files.ts'
import { createFlashDesk } from './flashDesk.ts'
import { createFrameDesk } from './frameDesk.ts'
import { createGuideDesk } from './guideDesk.ts'
import { startGuidePlayer } from './guidePlayer.ts'
import { createGuideSound } from './guideSound.ts'
import { createHandOverDesk } from './handOver.ts'
import { createHeldDesk } from './heldDesk.ts'
import { createImportDesk } from './importDesk.ts'
import { createInspectionSaving } from './inspectionSaving.ts'
import { createInstrumentDesk } from './instrumentDesk.ts'
import { jobFileName } from './jobFileName.ts'
import { createLineUpDesk } from './lineUpDesk.ts'
import { createMachineDesk } from './machineDesk.ts'
import { createMediaDesk } from './mediaDesk.ts'
import { createPlayer } from './player.ts'
import { createPreviewDesk } from './previewDesk.ts'
import { createQuestions } from './questions.ts'
import { readStillFile } from './readStillFile.ts'
import { createReportSaving } from './report.ts'
import { createRescanDesk } from './rescanDesk.ts'
import { createReviewDesk } from './reviewDesk.ts'
import { SAMPLE } from './sample.ts'
import { openShelf } from './shelf.ts'
import { createShotDesk } from './shotDesk.ts'
import { createSolveDesk } from './solveDesk.ts'
import { createStillDesk } from './stillDesk.ts'
import { createStillSaving } from './stillSaving.ts'
import { tellError } from './tellError.ts'
import { createTick } from './tick.ts'
import { createTransferDesk } from './transferDesk.ts'
import { kernelHere } from './worker/kernelHere.ts'
import { startWorkers } from './workers.ts'

const today = (): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' }).format(new Date())

/** Puts the program together around its store. */
export const createServices = (store: AppStore): Services => {
  const workers = startWorkers()
  const shelf = openShelf()
  const questions = createQuestions(store)
  const desk = createFrameDesk(store, workers, () => player.pause())
  const player = createPlayer(store, workers, desk.show, createTick())
  const stills = createStillDesk(store, workers)
  const instruments = createInstrumentDesk(store, workers, desk.frames)
  const shots = createShotDesk(store, workers)
  const lists = createImportDesk(store)
  const rescan = createRescanDesk(store, workers.passes)
  const media = createMediaDesk(
    store,
    workers,
    shelf,
    questions,
    SAMPLE,
    () => {
      stills.forget()
      held.forget()
      desk.seek(store.getState().playhead)
    },
    lists.openLists,
    rescan.ask,
  )
  const held = createHeldDesk(store, workers, readStillFile)
  const censuses = createCensusDesk(store, kernelHere)
  startChecker(store, workers, censuses)
  leaveWhenStale(store)
  startDecidedFeed(store)
  const guideSound = createGuideSound()
  startGuidePlayer(store, guideSound)
  kernelHere().then(
    ({ isReference }) => store.setState({ isReference }),
    (error) => tellError(store, error),
  )
  const autosave = startAutosave(store, shelf, media.isSample)

  const save = async (name: string, text: string, type: string): Promise<void> => {
    try {
      if (await saveTextFile(name, text, type)) tell(store, `Saved ${name}.`)
    } catch (error) {
      tellError(store, error)
    }
  }
  const services: Services = {
    openReel: media.openReel,
    openAny: media.openAny,
    openSample: media.openSample,
    pickReel: async () => media.openReel(await pickReelFiles()),
    pickJob: async () => {
      const file = await pickJobFile()
      if (file) await media.openAny([file])
    },
    pickList: lists.pickList,
    pickRescan: async () => {
      const files = await pickReelFiles()
      player.pause()
      shots.stop()
      await media.openRescan(files)
    },
    rescan,
    pickBaseList: () => pickBaseList(store),
    shelvedJobs: () =>
      shelf.list().catch((error) => {
        tellError(store, error)
        return []
      }),
    openShelved: media.openShelved,
    closeJob: async () => {
      player.pause()
      shots.stop()
      await autosave.flush()
      store.setState((state) => ({ ...INITIAL_STATE, ...keptBetweenJobs(state) }))
    },
    saveJobFile: async () => {
      const job = jobOf(store.getState())
      if (!job) return
      await save(jobFileName(job), writeJob(job), 'application/json')
    },
    answerQuestion: questions.answerQuestion,
    findShots: shots.findShots,
    stopFinding: shots.stop,
    play: player.play,
    pause: player.pause,
    seek: desk.seek,
    frames: desk.frames,
    readings: instruments.readings,
    measure: instruments.measure,
    attachPreview: createPreviewDesk(store, workers),
    stills,
    held,
    openStill: async () => {
      const file = await pickStillFile()
      if (file) await held.openStill(file)
    },
    saveStill: createStillSaving(store, workers, saveFile),
    solve: createSolveDesk(store, workers, censuses, desk.frames, held, player.pause),
    midi: startControlSurfaces(store, () => services),
    handOver: createHandOverDesk(store, workers.handOver),
    transfer: createTransferDesk(store, workers, media.scanFiles),
    flashes: createFlashDesk(store, workers),
    lineUp: createLineUpDesk(store, pickJobFile, save),
    machines: createMachineDesk(store, pickJobFile, save),
    chart: createChartDesk(store, workers, pickChartFile, readStillFile),
    guide: createGuideDesk(store, workers, guideSound, pickSoundFile),
    review: createReviewDesk(store, workers, saveFile, pickAnswerFiles),
    saveReport: createReportSaving(store, workers, saveFile, today),
    saveInspection: createInspectionSaving(store, workers, saveFile, today),
  }
  return services
}
