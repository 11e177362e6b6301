type PickerWindow = {
  readonly showSaveFilePicker?: (options: {
    suggestedName: string
  }) => Promise<FileSystemFileHandle>
}

/**
 * A picker that answers faster than a person can was not shown at all: some browsers have the
 * function but no window to show it in.
 */
const SOONEST_ANSWER_MS = 120

const isRefusal = (error: unknown): boolean =>
  error instanceof DOMException && (error.name === 'AbortError' || error.name === 'NotAllowedError')

/** The result of a picker; 'cancelled' when the person closed it, 'absent' when none was shown. */
export const fromPicker = async <Value>(
  show: (() => Promise<Value>) | undefined,
): Promise<Value | 'cancelled' | 'absent'> => {
  if (!show) return 'absent'
  const begun = performance.now()
  try {
    return await show()
  } catch (error) {
    if (!isRefusal(error)) throw error
    return performance.now() - begun < SOONEST_ANSWER_MS ? 'absent' : 'cancelled'
  }
}

/** Files by an input element. Resolves to none when the person cancels. */
const fromInput = (isMany: boolean, accept: string): Promise<readonly File[]> =>
  new Promise((resolve) => {
    const input = document.createElement('input')
    input.type = 'file'
    input.multiple = isMany
    input.accept = accept
    input.hidden = true
    const finish = () => {
      resolve([...(input.files ?? [])])
      input.remove()
    }
    input.addEventListener('change', finish)
    input.addEventListener('cancel', finish)
    document.body.append(input)
    input.click()
  })

const REEL_TYPES = 'video/*,.mp4,.m4v,.mov,.mkv,.webm,.ts,.m2ts,.dpx,.png,.tif,.tiff,.avi,.mpg,.mxf'

/** Asks for the file or files of a reel. None when the person cancels. */
export const pickReelFiles = (): Promise<readonly File[]> => fromInput(true, REEL_TYPES)

/** Asks for a still picture. */
export const pickStillFile = async (): Promise<File | undefined> =>
  (await fromInput(false, '.dpx,.png,.tif,.tiff,image/png,image/tiff'))[0]

/** Asks for a picture of a chart, or levels along a line. */
export const pickChartFile = async (): Promise<File | undefined> =>
  (await fromInput(false, '.dpx,.png,.tif,.tiff,.csv,.tsv,.txt,image/png,image/tiff,text/csv'))[0]

/** Asks for a job file. */
export const pickJobFile = async (): Promise<File | undefined> =>
  (await fromInput(false, '.json,application/json'))[0]

const LIST_TYPES = '.edl,.otio,.cc,.ccc,.cdl,.csv,.clf,.xml,.json,.txt'

/** Asks for a list made elsewhere. */
export const pickListFile = async (): Promise<File | undefined> =>
  (await fromInput(false, LIST_TYPES))[0]

/** The same, of one file or several. */
export const pickListFiles = (): Promise<readonly File[]> => fromInput(true, LIST_TYPES)

/** Asks for the answers of review packs. */
export const pickAnswerFiles = (): Promise<readonly File[]> =>
  fromInput(true, '.json,.txt,application/json,text/plain')

/** Asks for a sound file; a video gives its sound. */
export const pickSoundFile = async (): Promise<File | undefined> =>
  (await fromInput(false, 'audio/*,video/*,.wav,.flac,.mp3,.m4a,.ogg,.opus,.mov,.mp4,.mkv'))[0]

/** Asks for a process list. */
export const pickProcessFile = async (): Promise<File | undefined> =>
  (await fromInput(false, '.clf,.xml'))[0]

/** Gives the person a file as a download. */
export const download = (name: string, blob: Blob): void => {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(blob)
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000)
}

/**
 * Saves a file under a name the person can change; it is made once they have said where, as a
 * picker is shown only soon after a press. Returns false when they chose not to.
 */
export const saveFile = async (
  name: string,
  make: () => Blob | Promise<Blob>,
): Promise<boolean> => {
  const { showSaveFilePicker } = window as PickerWindow
  const handle = await fromPicker(
    showSaveFilePicker && (() => showSaveFilePicker.call(window, { suggestedName: name })),
  )
  if (handle === 'cancelled') return false
  const blob = await make()
  if (handle === 'absent') {
    download(name, blob)
    return true
  }
  const stream = await handle.createWritable()
  await stream.write(blob)
  await stream.close()
  return true
}

/** Saves text under a name the person can change. Returns false when they chose not to. */
export const saveTextFile = (name: string, text: string, type: string): Promise<boolean> =>
  saveFile(name, () => new Blob([text], { type }))
